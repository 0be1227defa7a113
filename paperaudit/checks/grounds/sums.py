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

    >>> from paperaudit.model.paper import Part
    >>> mismatch_in(Question("1", (Part("1.a", "a", marks=3), Part("1.b", "b", marks=2)), total=9)).because()
    ('1.a (3) + 1.b (2) = 5', 'printed total: 9')
    """
    return _mismatch(question.total, [question], tuple((part.id, part.marks or 0) for part in question.parts))


def mismatch_over(printed: int | None, questions: Iterable[Question]) -> Mismatch | None:
    """A section's or the paper's printed total against the marks of its questions."""
    asked = list(questions)
    rows = tuple((f"Q{question.number}", sum(part.marks or 0 for part in question.parts)) for question in asked)
    return _mismatch(printed, asked, rows)


def _mismatch(
    printed: int | None, questions: Iterable[Question], rows: tuple[tuple[str, int], ...]
) -> Mismatch | None:
    """Where a part has no marks and the rest do not overrun the total, that is the fault, not the total."""
    if printed is None:
        return None
    compared = Mismatch(printed, rows)
    some_missing = any(part.marks is None for question in questions for part in question.parts)
    if some_missing and compared.total() <= printed:
        return None
    return compared if compared.total() != printed else None
