"""The key gives a part other marks than the paper does."""

from collections.abc import Iterator

from paperaudit.checks.check import Check
from paperaudit.checks.grounds.words import called, counted
from paperaudit.marking.split import read_split
from paperaudit.model.audited import AuditedPaper
from paperaudit.model.finding import Finding, Severity
from paperaudit.model.paper import Part


def find(audited: AuditedPaper) -> Iterator[Finding]:
    """One finding a part whose key, or whose own split, comes to other marks than are printed."""
    for question, part in audited.paper.parts():
        if part.marks is None:
            continue
        for source, marks, because in _elsewhere(part):
            if marks != part.marks:
                yield CHECK.found(
                    f"{called(question, part)} is printed with {counted(part.marks, 'mark')}, "
                    f"but the {source} gives {marks}.",
                    part=part.id,
                    places=(part.place, question.place),
                    because=because,
                    suggestion="Bring the paper and the key to the same marks.",
                )


def _elsewhere(part: Part) -> Iterator[tuple[str, int, tuple[str, ...]]]:
    """Every other place that says what the part is worth: its name, its marks, the sum behind them."""
    if part.key_marks is not None:
        yield "key", part.key_marks, ()
    split = read_split(part.split)
    if split:
        marks = sum(mark.worth for mark in split)
        yield "split", marks, (f"{' + '.join(mark.printed() for mark in split)} = {counted(marks, 'mark')}",)


CHECK = Check(
    name="key-marks-differ",
    severity=Severity.ERROR,
    title="The key's marks are not the paper's",
    meaning="The setter's key, or the setter's own split of the marks, comes to another number than is printed "
    "beside the part.",
    matters="Two markers then mark out of different numbers, one by the paper and one by the key.",
    mend="Settle what the part is worth and print the same in both places. A split must add up to the part's marks.",
    faulty="""
questions:
  - {number: 1, ask: solve 2x + 3 = 11, answer: x = 4, marks: 2, split: [M1, M1, A1]}
""",
    clean="""
questions:
  - {number: 1, ask: solve 2x + 3 = 11, answer: x = 4, marks: 2, split: [M1, A1]}
""",
    find=find,
)
