"""A paper as its setter wrote it: sections, questions, parts, marks and stated answers."""

from collections.abc import Iterator
from dataclasses import dataclass, field
from typing import Literal, TypeAlias

from paperaudit.model.place import NOWHERE, Place
from paperaudit.model.printed import PrintedPage

CognitiveLevel: TypeAlias = Literal["knowledge", "routine", "complex", "problem solving"]
"""The four levels that a department weighs a paper by; blueprints give their shares."""


Sketch: TypeAlias = tuple[tuple[str, float, float], ...]
"""Rough positions of points as drawn: any unit, y up."""


@dataclass(frozen=True, slots=True)
class Line:
    """A statement or a sentence with the place that it was read from."""

    text: str
    place: Place = field(default=NOWHERE, compare=False)


@dataclass(frozen=True, slots=True)
class Part:
    """What one mark allocation is for; a question without parts has a single one.

    `number` is as printed without brackets; `id` joins the levels by dots ("3.b.ii"). `figure`,
    `given` and `text` of the question come first, the part's own behind them. `marks` is None where
    none are printed. `options` keeps the order of the paper, letter first. `page` is the one that it is
    printed on, `space` the number of lines to write on; 0 and None where that is not known. `sketch` is that of
    a figure of its own; `drawn` and `doubts` as at the question, whose doubts are among the part's.
    """

    id: str
    number: str
    text: Line | None = None
    figure: tuple[Line, ...] = ()
    given: tuple[Line, ...] = ()
    ask: Line | None = None
    answer: Line | None = None
    marks: int | None = None
    split: tuple[str, ...] = ()
    reasons: bool | None = None
    skills: tuple[str, ...] = ()
    level: CognitiveLevel | None = None
    options: tuple[tuple[str, Line], ...] = ()
    key_marks: int | None = None
    page: int = 0
    space: int | None = None
    sketch: Sketch = ()
    drawn: bool = False
    doubts: tuple[str, ...] = ()
    place: Place = field(default=NOWHERE, compare=False)


@dataclass(frozen=True, slots=True)
class Subtotal:
    """The marks that are printed for a part which has parts of its own, as their total; `id` as of a part."""

    id: str
    total: int
    place: Place = field(default=NOWHERE, compare=False)


@dataclass(frozen=True, slots=True)
class Question:
    """A numbered question: shared text, figure and givens, then its parts.

    `sketch` gives rough positions of points as drawn (any unit, y up); nothing is measured on it.
    `table` holds named columns of cell texts. `figure_page` is the page that its figure is on, 0 for none.
    `subtotals` are those of parts that have parts.
    `drawn` where figure and givens were read off a drawing, so that the text states things of its own beside
    them. `doubts` says what of a printed page could not be read for certain; a part with doubts is not audited.
    """

    number: str
    parts: tuple[Part, ...]
    text: Line | None = None
    figure: tuple[Line, ...] = ()
    given: tuple[Line, ...] = ()
    total: int | None = None
    sketch: Sketch = ()
    table: tuple[tuple[str, tuple[str, ...]], ...] = ()
    not_to_scale: bool = False
    figure_page: int = 0
    subtotals: tuple[Subtotal, ...] = ()
    drawn: bool = False
    doubts: tuple[str, ...] = ()
    place: Place = field(default=NOWHERE, compare=False)


def sketch_of(question: Question, part: Part) -> Sketch:
    """The rough positions that a part goes by: its own figure's, with the question's where no letter is in both."""
    shared, own = question.sketch, part.sketch
    return own if {name for name, *_ in shared} & {name for name, *_ in own} else shared + own


@dataclass(frozen=True, slots=True)
class Section:
    """A run of questions under a heading; a paper without sections has one, untitled."""

    questions: tuple[Question, ...]
    title: str = ""
    total: int | None = None
    place: Place = field(default=NOWHERE, compare=False)


@dataclass(frozen=True, slots=True)
class Paper:
    """A whole test. `total` and `minutes` are what the cover prints.

    `printed` and `captions` ("Figure 2", "Table 1") are there where the paper was read from a draft's pages.
    """

    title: str
    sections: tuple[Section, ...]
    level: str = ""
    minutes: int | None = None
    total: int | None = None
    marking: str = "statement-reason"
    reasons: str = "full"
    blueprint: str = ""
    claims: tuple[tuple[str, int], ...] = ()
    printed: tuple[PrintedPage, ...] = ()
    captions: tuple[str, ...] = ()
    place: Place = field(default=NOWHERE, compare=False)

    def questions(self) -> Iterator[Question]:
        """Every question in order of print."""
        for section in self.sections:
            yield from section.questions

    def parts(self) -> Iterator[tuple[Question, Part]]:
        """Every part in order of print, with its question."""
        for question in self.questions():
            for part in question.parts:
                yield question, part

    def marks_sum(self) -> int:
        """The marks of all parts that have any, added up."""
        return sum(part.marks or 0 for _, part in self.parts())
