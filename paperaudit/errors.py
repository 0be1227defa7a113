"""Exceptions, for unreadable input and for our own bugs only; faults of a paper are findings.

PaperauditError
├── InputError        the input cannot be read, or the command is wrong: exit status 2
│   └── ExpressionNotRead   mathematics that is not an expression, or one beyond the limits
├── OutputError       an output cannot be written: exit status 2
├── NoValue           an expression without a value; caught where it started, never shown
└── BudgetExceeded    a computation ran out of its budget; caught where it started, never shown
"""

from dataclasses import dataclass

from paperaudit.model.place import NOWHERE, Place


class PaperauditError(Exception):
    """The root of what this program raises on purpose."""


@dataclass(frozen=True, slots=True)
class Complaint:
    """One thing that is wrong with an input: where, what was read, what was expected.

    >>> Complaint("part 1.a: marks is 'three', expected a whole number").describe()
    "part 1.a: marks is 'three', expected a whole number"
    """

    message: str
    place: Place = NOWHERE

    def describe(self) -> str:
        """The complaint with its place in front."""
        where = self.place.describe()
        return f"{where}: {self.message}" if where else self.message


class InputError(PaperauditError):
    """The input cannot be read; carries every complaint, not only the first."""

    def __init__(self, *complaints: Complaint) -> None:
        self.complaints = complaints
        super().__init__("\n".join(complaint.describe() for complaint in complaints))


class ExpressionNotRead(InputError):
    """Text that is no expression; `start` is the offset where reading stopped."""

    def __init__(self, message: str, start: int = 0, expected: str = "") -> None:
        super().__init__(Complaint(message))
        self.start = start
        self.expected = expected


class OutputError(PaperauditError):
    """A file or folder that cannot be written."""


class NoValue(PaperauditError):
    """A division by nought, a root of a negative number, a letter without a value."""


class BudgetExceeded(PaperauditError):
    """A computation passed its step or time budget."""
