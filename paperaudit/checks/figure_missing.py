"""The text speaks of a figure, and there is none."""

import re
from collections.abc import Iterator

from paperaudit.checks.check import Check
from paperaudit.checks.grounds.labels import points_of_fact
from paperaudit.model.audited import AuditedPaper, AuditedPart
from paperaudit.model.finding import Finding, Severity
from paperaudit.model.paper import Question

_SPEAKS_OF_A_FIGURE = re.compile(
    r"""
    \b(?:in|on|from|of|to)\ (?:the|this)\ (?:diagram|figure|sketch|drawing)\b   # in the diagram
    | \b(?:the|this)\ (?:diagram|figure|sketch|drawing)\ (?:below|above|alongside|shows|is|represents)\b
    | \b(?:diagram|figure|sketch|drawing)\ (?:below|above|alongside)\b
    | \b(?:shown|drawn)\ (?:below|above|alongside)\b
    """,
    re.IGNORECASE | re.VERBOSE,
)


_BY_NUMBER = re.compile(r"\b(fig|figure|diagram|sketch|table)(?:\.|\b)\s*(\d{1,2}(?:\.\d{1,2})?)\b", re.IGNORECASE)


def find(audited: AuditedPaper) -> Iterator[Finding]:
    """One finding a question that speaks of a figure, has none, and says nothing from which one follows.

    In a draft, whose captions are known, a figure or table that is named by a number has to be there.
    """
    known = {_named(caption) for caption in audited.paper.captions}
    for question in audited.paper.questions():
        absent = [name for name in _numbered(question) if name not in known] if audited.paper.printed else []
        for name in absent:
            yield CHECK.found(
                f"Question {question.number} speaks of {' '.join(name).title()}, which is nowhere in the paper.",
                part=question.number,
                places=(question.text.place if question.text else question.place, question.place),
                suggestion="Put it in with its caption, or correct its number.",
            )
        words = _words_for_a_figure(question)
        parts = [audited_part for audited_part in audited.parts if audited_part.question == question]
        if words and not question.table and not question.sketch and not any(_has_figure(one) for one in parts):
            yield CHECK.found(
                f"Question {question.number} says “{words}”, but there is no figure.",
                part=question.number,
                places=(question.text.place if question.text else question.place, question.place),
                suggestion="Put the figure in, under “figure” or “given”, or take the words out.",
            )


def _numbered(question: Question) -> list[tuple[str, str]]:
    """The figures and tables that a question names by a number, each once."""
    texts = [line.text for line in (question.text, *(part.text for part in question.parts)) if line]
    return list(dict.fromkeys(name for text in texts for match in _BY_NUMBER.finditer(text) for name in [_name(match)]))


def _named(caption: str) -> tuple[str, str]:
    match = _BY_NUMBER.match(caption.strip())
    return _name(match) if match else ("", caption)


def _name(match: re.Match[str]) -> tuple[str, str]:
    """The kind and the number; figures, diagrams and sketches are counted as one kind."""
    kind = match[1].lower()
    return ("table" if kind == "table" else "figure"), match[2]


def _words_for_a_figure(question: Question) -> str:
    for line in (question.text, *(part.text for part in question.parts)):
        match = _SPEAKS_OF_A_FIGURE.search(" ".join(line.text.split())) if line else None
        if match:
            return match[0]
    return ""


def _has_figure(audited_part: AuditedPart) -> bool:
    """Whether statements of the part speak of points: these are its figure."""
    part, question = audited_part.part, audited_part.question
    stated = bool(part.figure or question.figure)
    return stated or any(
        True for given in audited_part.reading.givens for fact in given.facts for _ in points_of_fact(fact)
    )


CHECK = Check(
    name="figure-missing",
    severity=Severity.ERROR,
    title="The text speaks of a figure that is not there",
    meaning="The words point to a diagram, and the question has no figure, nor statements from which one follows.",
    matters="Without the figure the question cannot be answered, and the mistake shows only when the papers are on the "
    "desks.",
    mend="Put the figure in. Where the words are left over from an earlier version, take them out.",
    faulty="""
questions:
  - {number: 1, text: The sketch below shows a buoy., ask: 12 + 5, answer: "17", marks: 1}
""",
    clean="""
questions:
  - {number: 1, text: A loft counts its buoys., ask: 12 + 5, answer: "17", marks: 1}
""",
    find=find,
)
