"""What the wording layer made of a part: typed givens, the ask, and what it could not read."""

from dataclasses import dataclass, field
from typing import Literal

from paperaudit.model.ask import Ask
from paperaudit.model.fact import Given
from paperaudit.model.paper import Part, Question, Sketch, sketch_of
from paperaudit.model.place import NOWHERE, Place


@dataclass(frozen=True, slots=True)
class Unread:
    """A statement or sentence that holds mathematics and was not understood.

    `start` is the offset in `text` where reading stopped; `expected` what could have stood there;
    `nearest` a known word close to the one found, or "".
    """

    text: str
    where: Literal["figure", "given", "ask", "text", "answer"]
    start: int = 0
    expected: str = ""
    nearest: str = ""
    place: Place = field(default=NOWHERE, compare=False)


@dataclass(frozen=True, slots=True)
class Reading:
    """One part, read. A part is derived only if `unread` is empty and `ask` is there."""

    question: Question
    part: Part
    givens: tuple[Given, ...]
    ask: Ask | None
    unread: tuple[Unread, ...] = ()

    @property
    def sketch(self) -> Sketch:
        """The rough positions of points that the question's and the part's own figure show."""
        return sketch_of(self.question, self.part)
