"""Sums of marks against printed totals: the difference and the sum written out."""

from collections.abc import Iterable
from dataclasses import dataclass

from paperaudit.checks.grounds.words import counted
from paperaudit.model.paper import Question


@dataclass(frozen=True, slots=True)
class Mismatch:
    """A printed total that is not the sum of `rows`, each a name with its marks."""

    printed: int
    rows: tuple[tuple[str, int], ...]

    def total(self) -> int:
        """What the rows add up to."""
        return sum(marks for _, marks in self.rows)

    def because(self) -> tuple[str, ...]:
        """The sum and the printed total, a line each: ("1.a (3) + 1.b (2) = 5", "printed total: 9")."""
        terms = " + ".join(f"{name} ({marks})" for name, marks in self.rows)
        return (f"{terms} = {self.total()}", f"printed total: {self.printed}")

    def gap(self) -> str:
        """How far off the sum is, in words."""
        gap = self.total() - self.printed
        return f"{counted(abs(gap), 'mark')} {'more' if gap > 0 else 'fewer'}"


def mismatch_in(question: Question) -> Mismatch | None:
    """A question's printed total against the marks of its parts; None where they agree or nothing is printed.

    Where a part has no marks and the others do not overrun the total, that is the fault, not the total.

    >>> from paperaudit.model.paper import Part
    >>> mismatch_in(Question("1", (Part("1.a", "a", marks=3), Part("1.b", "b", marks=2)), total=9)).because()
    ('1.a (3) + 1.b (2) = 5', 'printed total: 9')
    """
    rows = tuple((part.id, part.marks or 0) for part in question.parts)
    return _mismatch(question.total, rows, _is_complete(question))


def mismatch_over(printed: int | None, questions: Iterable[Question]) -> Mismatch | None:
    """A section's or the paper's printed total against the marks of its questions.

    A question with a part without marks counts with its own total, where that is printed and has room.
    """
    rows, complete = [], True
    for question in questions:
        marks = sum(part.marks or 0 for part in question.parts)
        if not _is_complete(question):
            complete = complete and question.total is not None and question.total > marks
            marks = max(marks, question.total or 0)
        rows.append((f"Q{question.number}", marks))
    return _mismatch(printed, tuple(rows), complete)


def _is_complete(question: Question) -> bool:
    return all(part.marks is not None for part in question.parts)


def _mismatch(printed: int | None, rows: tuple[tuple[str, int], ...], complete: bool) -> Mismatch | None:
    if printed is None:
        return None
    compared = Mismatch(printed, rows)
    differs = compared.total() != printed if complete else compared.total() > printed
    return compared if differs else None
