"""Reasons are asked for, and no mark rewards one."""

from collections.abc import Collection, Iterator

from paperaudit.checks.check import Check
from paperaudit.checks.grounds.words import called, counted
from paperaudit.marking.allocation import allocate, reasons_required
from paperaudit.marking.carried import established
from paperaudit.marking.convention import Convention, load
from paperaudit.marking.mark import Mark
from paperaudit.marking.split import read_split
from paperaudit.model.audited import AuditedPaper, AuditedPart
from paperaudit.model.finding import Finding, Severity

_REASON_CODES = frozenset({"R", "S/R", "C", "E"})
"""Codes by which published schemes reward a reason, for splits in another convention than the paper's."""


def find(audited: AuditedPaper) -> Iterator[Finding]:
    """One finding a part that asks for reasons, where its split, or its few marks, leave none for them."""
    convention = load(audited.paper.marking)
    for audited_part in audited.parts:
        part = audited_part.part
        if not part.marks or not reasons_required(audited_part):
            continue
        marks = _marks(audited_part, convention, established(audited.parts, audited_part))
        if marks and not any(_rewards_a_reason(mark, convention) for mark in marks):
            yield CHECK.found(
                f"{called(audited_part.question, part)} asks for reasons, but its {counted(part.marks, 'mark')} "
                f"{'does' if part.marks == 1 else 'do'} not reward one.",
                part=part.id,
                places=(part.place, audited_part.question.place),
                because=(f"the marks are {' '.join(mark.printed() for mark in marks)}",),
                suggestion="Give a mark for a reason, or do not ask for reasons.",
            )


def _marks(audited_part: AuditedPart, convention: Convention, known: Collection[str]) -> tuple[Mark, ...]:
    """The setter's split, else the marks that the working's lines get."""
    own = read_split(audited_part.part.split)
    return own or allocate(audited_part, convention, known).allocation.marks


def _rewards_a_reason(mark: Mark, convention: Convention) -> bool:
    kind = convention.kinds.get(mark.kind)
    return mark.kind in _REASON_CODES or (kind is not None and kind.rewards_reason)


CHECK = Check(
    name="reasons-not-rewarded",
    severity=Severity.WARNING,
    title="Reasons are asked for and not rewarded",
    meaning="The part asks for reasons, and none of its marks is for one: the split names none, or the marks are too "
    "few to have one left over.",
    matters="Learners spend time on reasons that nobody counts, or the marker takes marks off for what carries none.",
    mend="Add a mark for a reason to the split, raise the marks, or take “giving reasons” out of the question.",
    faulty="""
questions:
  - number: 1
    figure: [triangle ABC, BC is produced to D]
    given: ∠ACD = 112°
    ask: ∠ACB
    answer: 68°
    reasons: required
    marks: 2
    split: [M1, A1]
""",
    clean="""
questions:
  - number: 1
    figure: [triangle ABC, BC is produced to D]
    given: ∠ACD = 112°
    ask: ∠ACB
    answer: 68°
    reasons: required
    marks: 2
    split: [S1, R1]
""",
    find=find,
)
