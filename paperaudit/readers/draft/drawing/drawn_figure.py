"""A figure as its drawing shows it: points with letters, lines, circles, marks, and the statements they make."""

from dataclasses import dataclass

from paperaudit.model.place import Box


@dataclass(frozen=True, slots=True)
class DrawnFact:
    """A statement of the statement language that a mark or a label makes, with where it stands on the page."""

    text: str
    box: Box


@dataclass(frozen=True, slots=True)
class DrawnFigure:
    """One figure of a page.

    `points` are letters with their places on the page (across, down); `figure` says what is drawn (segments,
    orders on lines, circles), `given` what labels and marks state (∠ABC = 40°, AB = AC, AB ∥ CD, AB ⊥ CD,
    AB = 7 cm). `glyphs` and `paths` are the indexes that belong to it and are no part of the text.
    `named_here` are the letters of `points` that the drawing has not and the reader gave.
    `doubts` says in words what could not be told; a figure that cannot be read has `unread` with the reason.
    """

    page: int
    box: Box
    points: tuple[tuple[str, float, float], ...] = ()
    figure: tuple[DrawnFact, ...] = ()
    given: tuple[DrawnFact, ...] = ()
    glyphs: frozenset[int] = frozenset()
    paths: frozenset[int] = frozenset()
    not_to_scale: bool = False
    caption: str = ""
    doubts: tuple[str, ...] = ()
    unread: str = ""
    named_here: tuple[str, ...] = ()
