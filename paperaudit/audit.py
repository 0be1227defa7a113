"""The audit, stage by stage: read, derive, compare, judge, propose, check."""

from collections.abc import Iterator, Sequence
from dataclasses import replace

from paperaudit.checks import find_all
from paperaudit.checks.grounds.unread import is_for_later, why_not_read
from paperaudit.errors import Complaint, ExpressionNotRead, InputError
from paperaudit.marking.level import propose_level
from paperaudit.model.audited import AuditedPaper, AuditedPart
from paperaudit.model.derivation import Agreement, Comparison, Derivation, Derived, NotRead, Outcome, Several
from paperaudit.model.finding import Severity
from paperaudit.model.paper import Paper, Part, Question
from paperaudit.model.place import NOWHERE
from paperaudit.model.reading import Reading, Unread
from paperaudit.readers.answers import with_answers
from paperaudit.readers.files import Told
from paperaudit.readers.question_file import PaperRead, in_order
from paperaudit.readers.source import read_answers, read_paper
from paperaudit.strands import registry
from paperaudit.strands.earlier import NoEarlierAnswer, names_a_part_alone, with_earlier_answers
from paperaudit.strands.left_aside import unless_left_aside
from paperaudit.strands.limits import within_limits
from paperaudit.strands.verdict import compare_with_key, verdict_on
from paperaudit.wording.reading import read as read_part


def audit_file(source: str, answers: str | None = None, told: Told | None = None) -> AuditedPaper:
    """The audit of a file, or of standard input for "-", with the setter's own answers from another one.

    `told` is called with each page of a draft before it is read.
    Raises InputError with every complaint about both files and about statements that cannot be read.
    """
    read = read_paper(source, told)
    return audit_read(read if answers is None else with_answers(read, read_answers(answers, told)))


def audit(paper: Paper) -> AuditedPaper:
    """The audit of a paper. Raises InputError, with all of them, for statements that cannot be read."""
    return audit_read(PaperRead(paper))


def audit_read(read: PaperRead) -> AuditedPaper:
    """The audit of a paper that a reader gave; its complaints and those about statements are raised together."""
    if read.paper is None:
        raise InputError(*read.complaints)
    readings = [_read(question, part) for question, part in read.paper.parts()]
    complaints = (*read.complaints, *_unreadable(readings))
    if complaints:
        raise InputError(*in_order(complaints))
    parts = _audit_parts(readings)
    audited = AuditedPaper(read.paper, parts)
    return replace(audited, findings=find_all(audited))


def has_errors(audited: AuditedPaper) -> bool:
    """Whether something was found that stops the print run."""
    return any(finding.severity is Severity.ERROR for finding in audited.findings)


def _read(question: Question, part: Part) -> Reading:
    """The part as read; a fault of our own while reading leaves it unread, and the paper goes on."""
    return within_limits(
        lambda: read_part(question, part),
        lambda why: Reading(question, part, (), None, (Unread(why, "text", place=part.place),)),
    )


def _unreadable(readings: Sequence[Reading]) -> Iterator[Complaint]:
    """A complaint about each statement under figure, given or ask that the grammar cannot read.

    Prose that cannot be read, or asks for nothing, is no complaint: the part is left unaudited, and a finding
    says so.
    """
    for reading in readings:
        if reading.question.drawn or reading.part.drawn:
            # What a drawing seemed to state is nothing that its author wrote wrongly.
            continue
        for unread in reading.unread:
            stated = unread.where in ("figure", "given") or (unread.where == "ask" and reading.part.ask is not None)
            if stated and not names_a_part_alone(unread) and not is_for_later(unread):
                yield Complaint(f"{_owner(reading, unread)}: {why_not_read(unread)}", unread.place)


def _owner(reading: Reading, unread: Unread) -> str:
    """The part that an unread statement belongs to, or its question where all parts share it."""
    shared = {line.text.strip() for line in (*reading.question.figure, *reading.question.given)}
    return f"question {reading.question.number}" if unread.text.strip() in shared else f"part {reading.part.id}"


def _audit_parts(readings: Sequence[Reading]) -> tuple[AuditedPart, ...]:
    """Every part in order. Raises InputError where mathematics that was read turns out to be beyond the limits."""
    parts: list[AuditedPart] = []
    complaints = []
    for reading in readings:
        try:
            parts.append(_audit_part(reading, parts))
        except ExpressionNotRead as error:
            place = reading.ask.place if reading.ask and reading.ask.place != NOWHERE else reading.part.place
            complaints.append(Complaint(f"part {reading.part.id}: {error}", place))
    if complaints:
        raise InputError(*complaints)
    return tuple(parts)


def _audit_part(reading: Reading, before: Sequence[AuditedPart]) -> AuditedPart:
    """One part through every stage; `before` are the audited parts that stand above it."""
    reading, strand, outcome = _derive(reading, before)
    comparison = within_limits(
        lambda: compare_with_key(reading, outcome), lambda why: Comparison(Agreement.CANNOT_TELL, why)
    )
    part = reading.part
    derivation = _first_derivation(outcome)
    skills = part.skills or _skills_shown(derivation)
    level = part.level or (propose_level(derivation) if derivation else None)
    return AuditedPart(
        question=reading.question,
        part=part,
        reading=reading,
        outcome=outcome,
        verdict=verdict_on(reading, outcome, comparison),
        comparison=comparison,
        strand=strand,
        skills=skills,
        level=level,
        proposed=tuple(
            word
            for word, own, found in (("skills", part.skills, skills), ("level", part.level, level))
            if found and not own
        ),
    )


def _derive(reading: Reading, before: Sequence[AuditedPart]) -> tuple[Reading, str, Outcome]:
    """The reading with the earlier answers that it names, the strand that takes it, and what comes of it."""
    obstacle = _obstacle(reading)
    try:
        whole = with_earlier_answers(reading, before)
    except NoEarlierAnswer as error:
        unread = tuple(one for one in reading.unread if not names_a_part_alone(one))
        return replace(reading, unread=unread), "", NotRead(str(error))
    if obstacle is not None:
        return whole, "", obstacle
    strand, outcome = within_limits(lambda: registry.derive(whole), lambda why: ("", NotRead(why)))
    return whole, strand, unless_left_aside(whole, outcome)


def _obstacle(reading: Reading) -> NotRead | None:
    """What keeps a part from being derived before any strand has seen it, or None."""
    if reading.part.doubts:
        return NotRead("the printed page leaves doubts: " + "; ".join(reading.part.doubts))
    unread = [one for one in reading.unread if not names_a_part_alone(one)]
    if unread:
        return NotRead("; ".join(map(why_not_read, unread)))
    return NotRead("nothing that is asked was read") if reading.ask is None else None


def _first_derivation(outcome: Outcome) -> Derivation | None:
    if isinstance(outcome, Derived | Several) and outcome.derivations:
        return outcome.derivations[0]
    return None


def _skills_shown(derivation: Derivation | None) -> tuple[str, ...]:
    """The skills of the derivation's lines, each once, in the order in which a pupil needs them."""
    steps = derivation.steps if derivation else ()
    return tuple(dict.fromkeys(step.skill for step in steps if step.skill))
