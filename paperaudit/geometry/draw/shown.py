"""A question's figure with the coordinates of one outcome: what is marked, how it stands, and its layout."""

import re
from collections.abc import Iterator, Sequence
from dataclasses import replace

from paperaudit.geometry.arrangement import Arrangement, Triangle
from paperaudit.geometry.build import FigureBuilder
from paperaudit.geometry.draw.circles import circles_of, outlines, with_centres
from paperaudit.geometry.draw.elements import Layout
from paperaudit.geometry.draw.given_marks import marks_of
from paperaudit.geometry.draw.layout import Endless, lay_out
from paperaudit.geometry.draw.orientation import oriented
from paperaudit.geometry.draw.proportions import well_proportioned
from paperaudit.geometry.draw.redrawn import resized, well_spaced
from paperaudit.geometry.draw.unscaled import opened, unscaled
from paperaudit.geometry.figure import Figure, SameWay, TangentAt, angle
from paperaudit.geometry.incidence import Unclear
from paperaudit.geometry.realise import Drawing
from paperaudit.geometry.sizes import NotLinear
from paperaudit.geometry.sketch import FROM_SKETCH
from paperaudit.model.ask import Establish, Find
from paperaudit.model.derivation import Position
from paperaudit.model.expression import AngleAt, AngleOf, Expression, LengthOf, leaves
from paperaudit.model.fact import Drawn, Fact, Given, Parallel
from paperaudit.model.reading import Reading

_EARLIER = re.compile(r"\banswer\s+to\b", re.IGNORECASE)


class NotDrawable(Exception):
    """A figure whose statements or coordinates are not enough to draw it; caught where a drawing was asked for."""


class ShownFigure:
    """The figure of a reading, at given positions (y up), with what is `asked` marked. Raises NotDrawable."""

    def __init__(self, reading: Reading, positions: Sequence[Position], asked: bool = True) -> None:
        self.reading = reading
        self.builder, figure = _built(reading)
        at = with_centres(figure, {name: (x, y) for name, x, y in positions if name in figure.points})
        if not figure.lines or at.keys() != set(figure.points):
            raise NotDrawable("not every point has a position")
        self.arrangement = Arrangement(figure, Drawing(at, {}))
        self.marks = marks_of(self.builder, own_givens(reading), self.arrangement, wanted(reading) if asked else ())

    def to_scale(self, keep_lengths: bool, triangle_sides: bool, note: str = "") -> Layout:
        """The layout true to scale. Lengths that the givens leave open are chosen, unless `keep_lengths`."""
        kept = keep_lengths and self._asks_for_lengths()
        if circles_of(self.arrangement.figure) and not kept:
            at = well_spaced(self.arrangement, self.asked_angles())
        else:
            at = well_proportioned(self.arrangement, kept)
        return self._laid_out(oriented(self.arrangement, at), triangle_sides, note)

    def as_sketch(self, triangle_sides: bool, note: str) -> Layout:
        """A layout with the same order and turning, whose sizes are visibly other ones."""
        if circles_of(self.arrangement.figure):
            at = oriented(self.arrangement, well_spaced(self.arrangement, self.asked_angles()))
            return self._laid_out(resized(self.arrangement, at, self.asked_angles()), triangle_sides, note)
        at = oriented(self.arrangement, well_proportioned(self.arrangement))
        return self._laid_out(unscaled(self.arrangement, at, self.marks, self.asked_angles()), triangle_sides, note)

    def as_skeleton(self, triangle_sides: bool, note: str) -> Layout:
        """The layout of positions that stand for no true sizes, opened up as far as their order allows."""
        at = oriented(self.arrangement, well_proportioned(self.arrangement))
        is_round = bool(outlines(self.arrangement.figure, at))
        return self._laid_out(at if is_round else opened(self.arrangement, at), triangle_sides, note)

    def _laid_out(self, at: dict[str, tuple[float, float]], triangle_sides: bool, note: str) -> Layout:
        triangle = self._asked_triangle() if triangle_sides else None
        return lay_out(self.arrangement, at, self.marks, self._endless(), triangle, note)

    def _asks_for_lengths(self) -> bool:
        return any(isinstance(leaf, LengthOf) for one in wanted(self.reading) for leaf in leaves(one))

    def asked_angles(self) -> list[AngleOf]:
        """The angles whose sizes are asked for, by their three points."""
        found = []
        for one in wanted(self.reading):
            for leaf in leaves(one):
                if isinstance(leaf, AngleOf | AngleAt):
                    size = self.builder.resolved(leaf)
                    assert isinstance(size, AngleOf)
                    found.append(angle(size.arm, size.vertex, size.other, size.reflex))
        return found

    def _asked_triangle(self) -> tuple[str, str, str] | None:
        """The triangle that the question is about: of the angle asked for, else at its vertex, named ones first."""
        named = [
            Triangle((a, b, c))
            for shape, _ in self.arrangement.figure.shapes
            if len(shape.points) == 3
            for a, b, c in (shape.points,)
        ]
        triangles = [one.corners for one in (*named, *self.arrangement.triangles)]
        for one in self.asked_angles():
            spanned = [corners for corners in triangles if {one.arm, one.vertex, one.other} == set(corners)]
            touched = [corners for corners in triangles if one.vertex in corners]
            if spanned or touched:
                return (spanned + touched)[0]
        return triangles[0] if triangles else None

    def _endless(self) -> Endless:
        return Endless(frozenset((*self._open_ends(), *self._touching_ends())))

    def _touching_ends(self) -> Iterator[tuple[int, str]]:
        """Tangents run on beyond the point where they touch."""
        for condition in self.arrangement.figure.conditions:
            if isinstance(condition, TangentAt):
                number = self.arrangement.figure.line_of(*condition.path)
                if condition.at in (self.arrangement.lines[number][0], self.arrangement.lines[number][-1]):
                    yield number, condition.at

    def _open_ends(self) -> Iterator[tuple[int, str]]:
        for given in own_givens(self.reading):
            for fact in given.facts:
                if isinstance(fact, Drawn) and fact.kind != "segment":
                    number = self.arrangement.figure.line_of(*fact.path)
                    line = self.arrangement.lines[number]
                    forwards = line.index(fact.path[0]) < line.index(fact.path[1])
                    ends = (line[-1] if forwards else line[0], line[0] if forwards else line[-1])
                    yield from ((number, end) for end in (ends if fact.kind == "line" else ends[:1]))


def wanted(reading: Reading) -> tuple[Expression, ...]:
    """The sizes that are asked for; none where a claim is to be shown."""
    task = reading.ask.task if reading.ask else None
    return task.wanted if isinstance(task, Find) else ()


def own_givens(reading: Reading) -> tuple[Given, ...]:
    """The givens of the paper, without what earlier parts were found to be."""
    return tuple(given for given in reading.givens if not _EARLIER.search(given.text))


def skeleton(reading: Reading) -> tuple[Position, ...]:
    """Positions that keep order and incidence where no figure meets the givens; none where these have no skeleton."""
    from paperaudit.geometry.refute import skeletons

    _, figure = _built(reading)
    found = skeletons(figure) if figure.lines else []
    return tuple((name, x, y) for name, (x, y) in found[0].at.items()) if found else ()


def drawn(reading: Reading) -> tuple[Position, ...]:
    """Positions that meet the givens of a part that was not derived; none where no drawing was found."""
    from paperaudit.geometry.drawn import FIRST_SEEDS
    from paperaudit.geometry.realise import realise

    _, figure = _built(reading)
    found = realise(figure, FIRST_SEEDS) if figure.lines else []
    return tuple((name, x, y) for name, (x, y) in found[0].at.items()) if found else ()


def _built(reading: Reading) -> tuple[FigureBuilder, Figure]:
    """The figure as the geometry strand built it."""
    task = reading.ask.task if reading.ask else None
    asked: tuple[Expression | Fact, ...] = task.claims if isinstance(task, Establish) else wanted(reading)
    try:
        builder = FigureBuilder(reading.givens, asked)
        figure = builder.figure(reading.question.sketch, wanted(reading))
    except (Unclear, NotLinear) as obstacle:
        raise NotDrawable(str(obstacle)) from None
    # Lines that are claimed to be parallel stand as parallels do, but nothing marks them.
    claimed = [fact for fact in asked if isinstance(fact, Parallel)]
    named = [SameWay(fact.paths[0], other, FROM_SKETCH) for fact in claimed for other in fact.paths[1:]]
    return builder, replace(figure, conditions=(*figure.conditions, *named))
