"""A symbol that can be read in two ways."""

import re
from collections.abc import Iterator

from paperaudit.checks.check import Check
from paperaudit.checks.grounds.words import called
from paperaudit.model.audited import AuditedPaper
from paperaudit.model.finding import Finding, Severity
from paperaudit.model.paper import Line, Part, Question

_DOUBTFUL = (
    (re.compile(r"(?<![A-Za-z])\d+[Oo](?=\d|[°%]|\b)"), "the letter O beside a digit, where a nought or ° is meant"),
    (re.compile(r"∠[A-Z]?0[A-Z]|\b[A-Z]0[A-Z]\b|\b0[A-Z]\b|\bcentre 0\b"), "a nought where the point O is meant"),
    (re.compile(r"\d[Il]\d"), "the letter I or l between digits, where a 1 is meant"),
)
_X_BETWEEN_NUMBERS = re.compile(r"\d\s+[xX]\s+\d")
_X_AS_A_LETTER = re.compile(r"(?<![A-Za-z])[xX](?![A-Za-z])(?!\s+\d)")


def find(audited: AuditedPaper) -> Iterator[Finding]:
    """One finding a spot that a reader must guess at; keyboard forms with one meaning (3 x 4, 2 - 5) pass."""
    said: set[int] = set()
    for question, part in audited.paper.parts():
        shared = () if id(question) in said else (question.text, *question.figure, *question.given)
        said.add(id(question))
        for line in (*shared, *_own_lines(part)):
            for spot, doubt in _doubts(line, question, part):
                yield CHECK.found(
                    f"{called(question, part)}: “{spot}” can be read in two ways: {doubt}.",
                    part=part.id,
                    places=(line.place if line else part.place, part.place, question.place),
                    because=(line.text,) if line else (),
                    suggestion="Write the symbol that is meant.",
                )


def _own_lines(part: Part) -> tuple[Line | None, ...]:
    return (part.text, *part.figure, *part.given, part.ask, part.answer, *(line for _, line in part.options))


def _doubts(line: Line | None, question: Question, part: Part) -> Iterator[tuple[str, str]]:
    """The doubtful spots of a line, each with the two readings."""
    if line is None:
        return
    for pattern, doubt in _DOUBTFUL:
        for match in pattern.finditer(line.text):
            yield match[0], doubt
    for match in _X_BETWEEN_NUMBERS.finditer(line.text):
        everything = " ".join(one.text for one in (question.text, *question.given, *_own_lines(part)) if one)
        if _X_AS_A_LETTER.search(everything):
            yield match[0], "the letter x, which this question uses, or a multiplication sign"


CHECK = Check(
    name="symbol-doubtful",
    severity=Severity.WARNING,
    title="A symbol can be read in two ways",
    meaning="A letter stands where a figure or a sign is likely meant: O for 0, l for 1, 30o for 30°, or x between "
    "numbers in a question that also has the unknown x.",
    matters="In print the two look alike, and some learners will read the other one.",
    mend="Type the symbol that is meant: the figure 0, the sign ×, the degree sign °.",
    faulty="""
questions:
  - {number: 1, ask: 2 + 8, answer: 1O, marks: 1}
""",
    clean="""
questions:
  - {number: 1, ask: 2 + 8, answer: "10", marks: 1}
""",
    find=find,
    alongside=("answer-differs",),
)
