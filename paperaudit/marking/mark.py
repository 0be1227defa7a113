"""Marks, how they are spread over the lines of a derivation, and the scheme of one part."""

from dataclasses import dataclass
from enum import Enum

from paperaudit.marking.usual import NO_MARKS, UsualMarks
from paperaudit.model.audited import AuditedPart
from paperaudit.model.derivation import Derivation


@dataclass(frozen=True, slots=True)
class Mark:
    """Marks of one kind at one line: M1 or M2 at `step`, an index into the derivation's steps.

    `note` is the name of one of the convention's notes ("ft"), or "".
    """

    kind: str
    step: int
    note: str = ""
    worth: int = 1

    def printed(self) -> str:
        """The mark as a scheme prints it, without its note.

        >>> Mark("M", 0, worth=2).printed()
        'M2'
        """
        return f"{self.kind}{self.worth}"


@dataclass(frozen=True, slots=True)
class Allocation:
    """Marks in the order of their lines."""

    marks: tuple[Mark, ...] = ()

    def total(self) -> int:
        """The marks added up."""
        return sum(mark.worth for mark in self.marks)

    def at(self, step: int) -> tuple[Mark, ...]:
        """The marks of one line."""
        return tuple(mark for mark in self.marks if mark.step == step)

    def printed(self) -> str:
        """The marks in a row.

        >>> Allocation((Mark("M", 0), Mark("A", 1))).printed()
        'M1 A1'
        """
        return " ".join(mark.printed() for mark in self.marks)


class Fit(Enum):
    """How a part's own marks compare with what its derivation earns by itself."""

    NATURAL = "the usual marks of these lines"
    MERGED = "fewer than usual: marks merged"
    SPLIT = "more than usual: marks split"
    TOO_MANY = "more than these lines can bear"
    SETTER = "as the setter split them"
    UNMARKED = "the part prints no marks: the usual ones are shown"
    NOT_DERIVED = "no derivation to rest marks on"


@dataclass(frozen=True, slots=True)
class Alternative:
    """Another derivation of the same answer, with the part's marks given to its lines."""

    derivation: Derivation
    allocation: Allocation


@dataclass(frozen=True, slots=True)
class PartScheme:
    """One part's marks given to its lines.

    `unplaced` counts marks that no line can bear: `allocation` and they always add up to the part's
    own marks, where it has any. `natural` is what the lines earn by themselves, `usual` what an ordinary
    paper gives for them. `remark` says in words what an examiner should settle.
    """

    audited: AuditedPart
    fit: Fit
    allocation: Allocation = Allocation()
    natural: Allocation = Allocation()
    usual: UsualMarks = NO_MARKS
    unplaced: int = 0
    alternatives: tuple[Alternative, ...] = ()
    remark: str = ""

    def fits(self) -> bool:
        """Whether the part's marks raise no eyebrow, or there is no derivation to judge them by."""
        marks = self.allocation.total() + self.unplaced
        return self.fit is Fit.NOT_DERIVED or self.usual.fewest <= marks <= self.usual.most
