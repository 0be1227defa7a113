"""Values made by hand for tests: audited parts and papers without a file behind them."""

from collections.abc import Sequence
from itertools import groupby

from paperaudit.model.audited import AuditedPaper, AuditedPart, Verdict
from paperaudit.model.derivation import NotRead, Outcome
from paperaudit.model.paper import CognitiveLevel, Line, Paper, Part, Question, Section
from paperaudit.model.reading import Reading


def audited_part(
    id: str,
    marks: int | None,
    skills: Sequence[str] = (),
    level: CognitiveLevel | None = "routine",
    *,
    ask: str = "",
    strand: str = "",
    proposed: Sequence[str] = (),
    outcome: Outcome | None = None,
    verdict: Verdict = "not-read",
) -> AuditedPart:
    """A part of question `id` up to its first dot; `audited_paper` puts parts into their questions."""
    number, _, behind = id.partition(".")
    part = Part(
        id=id,
        number=behind or number,
        ask=Line(ask) if ask else None,
        marks=marks,
        skills=() if "skills" in proposed else tuple(skills),
        level=None if "level" in proposed else level,
    )
    question = Question(number=number, parts=(part,))
    return AuditedPart(
        question,
        part,
        Reading(question, part, (), None),
        outcome or NotRead("made by hand"),
        verdict,
        strand=strand,
        skills=tuple(skills),
        level=level,
        proposed=tuple(proposed),
    )


def audited_paper(
    *parts: AuditedPart,
    title: str = "Sails and spars",
    blueprint: str = "",
    total: int | None = None,
    question_totals: dict[str, int] | None = None,
) -> AuditedPaper:
    """A paper of one untitled section: neighbouring parts with the same question number are one question."""
    grouped: list[AuditedPart] = []
    for number, run in groupby(parts, key=lambda part: part.question.number):
        members = list(run)
        question = Question(
            number=number,
            parts=tuple(member.part for member in members),
            total=(question_totals or {}).get(number),
        )
        for member in members:
            reading = Reading(question, member.part, member.reading.givens, member.reading.ask, member.reading.unread)
            grouped.append(
                AuditedPart(
                    question,
                    member.part,
                    reading,
                    member.outcome,
                    member.verdict,
                    member.comparison,
                    member.strand,
                    member.skills,
                    member.level,
                    member.proposed,
                )
            )
    questions = tuple(dict.fromkeys(part.question for part in grouped))
    paper = Paper(title=title, sections=(Section(questions),), total=total, blueprint=blueprint)
    return AuditedPaper(paper, tuple(grouped))
