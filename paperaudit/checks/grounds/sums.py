"""Sums of marks against printed totals: the difference and the sum written out."""

from collections.abc import Iterable
from dataclasses import dataclass, replace

from paperaudit.checks.grounds.words import as_printed, counted, listed
from paperaudit.model.paper import Question, Subtotal


@dataclass(frozen=True, slots=True)
class Mismatch:
    """A printed total that is not the sum of `rows`, each a name with its marks; `unmarked` parts have none."""

    printed: int
    rows: tuple[tuple[str, int], ...]
    unmarked: tuple[str, ...] = ()

    def total(self) -> int:
        """What the rows add up to."""
        return sum(marks for _, marks in self.rows)

    def because(self) -> tuple[str, ...]:
        """The sum and the printed total, a line each: ("1.a (3) + 1.b (2) = 5", "printed total: 9")."""
        terms = " + ".join(f"{name} ({marks})" for name, marks in self.rows)
        without = (f"without marks: {', '.join(self.unmarked)}",) if self.unmarked else ()
        return (f"{terms} = {self.total()}", *without, f"printed total: {self.printed}")

    def gap(self) -> str:
        """How far off the sum is, in words."""
        gap = self.total() - self.printed
        return f"{counted(abs(gap), 'mark')} {'more' if gap > 0 else 'fewer'}"

    def mend(self, where: str, part_of_it: str) -> str:
        """What would mend it: "Print 30 on the cover, or change the marks of a question."."""
        change = f"print {self.total()} {where}, or change the marks of {part_of_it}."
        if self.unmarked:
            verb = "its" if len(self.unmarked) == 1 else "their"
            return f"Give {listed(self.unmarked)} {verb} marks first; then print the new sum {where}."
        return change[0].upper() + change[1:]


def mismatch_in(question: Question) -> Mismatch | None:
    """A question's printed total against the marks of its parts; None where they agree or nothing is printed.

    Where a part has no marks and the others do not overrun the total, that is the fault, not the total.

    >>> from paperaudit.model.paper import Part
    >>> mismatch_in(Question("1", (Part("1.a", "a", marks=3), Part("1.b", "b", marks=2)), total=9)).because()
    ('1.a (3) + 1.b (2) = 5', 'printed total: 9')
    """
    rows = tuple((as_printed(part.id), part.marks or 0) for part in question.parts if part.marks is not None)
    return _mismatch(question.total, rows, _unmarked(question), bool(_unmarked(question)))


def mismatch_below(question: Question, subtotal: Subtotal) -> Mismatch | None:
    """The total printed at a part against the marks of the parts below it."""
    below = tuple(part for part in question.parts if f"{part.id}.".startswith(f"{subtotal.id}."))
    return mismatch_in(replace(question, parts=below, total=subtotal.total))


def mismatch_over(printed: int | None, questions: Iterable[Question]) -> Mismatch | None:
    """A section's or the paper's printed total against the marks of its questions.

    The sum is that of the marks that are there. Where parts have none, it is a fault of its own only if the
    total would be missed with what the questions' printed totals leave for these parts, too.
    """
    asked = tuple(questions)
    rows = tuple((f"Q{question.number}", sum(part.marks or 0 for part in question.parts)) for question in asked)
    unmarked = tuple(name for question in asked for name in _unmarked(question))
    expected, is_open = 0, False
    for question, (_, marks) in zip(asked, rows, strict=True):
        left = (question.total or 0) - marks if _unmarked(question) else 0
        is_open = is_open or (bool(_unmarked(question)) and left <= 0)
        expected += max(left, 0)
    marked = tuple(
        row for row, question in zip(rows, asked, strict=True) if len(_unmarked(question)) < len(question.parts)
    )
    return _mismatch(printed, marked, unmarked, is_open, expected)


def _unmarked(question: Question) -> tuple[str, ...]:
    """The parts without marks."""
    return tuple(as_printed(part.id) for part in question.parts if part.marks is None)


def _mismatch(
    printed: int | None, rows: tuple[tuple[str, int], ...], unmarked: tuple[str, ...], is_open: bool, expected: int = 0
) -> Mismatch | None:
    """`expected` are the marks that parts without marks are sure to get; `is_open`, that they may get more."""
    if printed is None:
        return None
    compared = Mismatch(printed, rows, unmarked)
    sure = compared.total() + expected
    return compared if sure > printed or (sure < printed and not is_open) else None
