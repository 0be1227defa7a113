"""The audit, stage by stage: read, derive, compare, judge, propose, check."""

import logging
import signal
import threading
from collections.abc import Callable, Iterator, Sequence
from contextlib import contextmanager
from dataclasses import replace
from types import FrameType
from typing import TypeVar

from paperaudit.errors import BudgetExceeded, Complaint, ExpressionNotRead, InputError
from paperaudit.model.audited import AuditedPaper, AuditedPart, Verdict
from paperaudit.model.derivation import (
    Agreement,
    Comparison,
    Derivation,
    Derived,
    Impossible,
    NotDetermined,
    NotRead,
    Outcome,
    Several,
)
from paperaudit.model.finding import Severity
from paperaudit.model.paper import Paper
from paperaudit.model.place import NOWHERE
from paperaudit.model.reading import Reading, Unread
from paperaudit.readers.question_file import PaperRead

SECONDS_A_PART = 20
"""After this long a part counts as not read; the engines' own budgets end nearly everything long before."""

_LATER = "not yet known"
"""How the wording layer says that it knows of a thing and cannot treat it yet: the part is left, the paper goes on."""

_Result = TypeVar("_Result")
_log = logging.getLogger(__name__)


def audit_file(source: str, answers: str | None = None) -> AuditedPaper:
    """The audit of a file, or of standard input for "-", with the setter's own answers from another one.

    Raises InputError with every complaint about both files and about statements that cannot be read.
    """
    from paperaudit.readers.answers import with_answers
    from paperaudit.readers.source import read_answers, read_paper

    read = read_paper(source)
    return audit_read(read if answers is None else with_answers(read, read_answers(answers)))


def audit(paper: Paper) -> AuditedPaper:
    """The audit of a paper. Raises InputError, with all of them, for statements that cannot be read."""
    return audit_read(PaperRead(paper))


def audit_read(read: PaperRead) -> AuditedPaper:
    """The audit of a paper that a reader gave; its complaints and those about statements are raised together."""
    from paperaudit.checks import find_all
    from paperaudit.wording.reading import read as read_part

    if read.paper is None:
        raise InputError(*read.complaints)
    readings = [read_part(question, part) for question, part in read.paper.parts()]
    complaints = (*read.complaints, *_unreadable(readings))
    if complaints:
        raise InputError(*dict.fromkeys(complaints))
    parts = _audit_parts(readings)
    audited = AuditedPaper(read.paper, parts)
    return replace(audited, findings=find_all(audited))


def has_errors(audited: AuditedPaper) -> bool:
    """Whether something was found that stops the print run."""
    return any(finding.severity is Severity.ERROR for finding in audited.findings)


def _unreadable(readings: Sequence[Reading]) -> Iterator[Complaint]:
    """A complaint about each statement under figure, given or ask that the grammar cannot read.

    Prose that cannot be read is no complaint: the part is left unaudited, and a finding says so.
    """
    for reading in readings:
        for unread in reading.unread:
            if unread.where in ("figure", "given", "ask") and not unread.expected.startswith(_LATER):
                yield Complaint(f"{_owner(reading, unread)}: {_not_understood(unread)}", unread.place)


def _owner(reading: Reading, unread: Unread) -> str:
    """The part that an unread statement belongs to, or its question where all parts share it."""
    shared = {line.text.strip() for line in (*reading.question.figure, *reading.question.given)}
    return f"question {reading.question.number}" if unread.text.strip() in shared else f"part {reading.part.id}"


def _not_understood(unread: Unread) -> str:
    rest = unread.text[unread.start :].strip()
    stopped = f" from '{rest[:40]}' on" if unread.start and rest else ""
    expected = f", expected {unread.expected}" if unread.expected else ""
    nearest = f"; did you mean '{unread.nearest}'?" if unread.nearest else ""
    return f"{unread.where}: '{unread.text[:120]}' was not understood{stopped}{expected}{nearest}"


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
    from paperaudit.marking.level import propose_level

    strand, outcome = _within_limits(lambda: _derive(reading, before), lambda why: ("", NotRead(why)))
    comparison = _within_limits(
        lambda: _compare(reading, outcome), lambda why: Comparison(Agreement.CANNOT_TELL, why)
    )
    part = reading.part
    derivation = _first_derivation(outcome)
    skills = part.skills or _skills_shown(derivation)
    level = part.level or (propose_level(derivation) if derivation else "routine")
    return AuditedPart(
        question=reading.question,
        part=part,
        reading=reading,
        outcome=outcome,
        verdict=_verdict(reading, outcome, comparison),
        comparison=comparison,
        strand=strand,
        skills=skills,
        level=level,
        proposed=tuple(
            word for word, own in (("skills", part.skills), ("level", part.level)) if not own
        ),
    )


def _within_limits(work: Callable[[], _Result], otherwise: Callable[[str], _Result]) -> _Result:
    """The result of a stage; what goes wrong inside leaves the part unread, and the paper goes on.

    Raises ExpressionNotRead for mathematics beyond the limits: that is bad input.
    """
    try:
        with _time_limit(SECONDS_A_PART):
            return work()
    except BudgetExceeded as error:
        return otherwise(str(error) or "the search was longer than allowed")
    except ExpressionNotRead:
        raise
    except Exception as error:
        _log.debug("a part could not be audited", exc_info=True)
        return otherwise(f"internal error: {type(error).__name__}")


@contextmanager
def _time_limit(seconds: int) -> Iterator[None]:
    """Raises BudgetExceeded inside after `seconds`, on the main thread of a system that has alarms."""
    if not hasattr(signal, "SIGALRM") or threading.current_thread() is not threading.main_thread():
        yield
        return

    def stop(_signal: int, _frame: FrameType | None) -> None:
        raise BudgetExceeded(f"the search took longer than {seconds} seconds")

    before = signal.signal(signal.SIGALRM, stop)
    signal.setitimer(signal.ITIMER_REAL, seconds)
    try:
        yield
    finally:
        signal.setitimer(signal.ITIMER_REAL, 0)
        signal.signal(signal.SIGALRM, before)


def _derive(reading: Reading, before: Sequence[AuditedPart]) -> tuple[str, Outcome]:
    """The strand that takes the part and what it makes of it."""
    from paperaudit.strands.registry import derive

    if reading.unread:
        return "", NotRead("; ".join(_not_understood(unread) for unread in reading.unread))
    if reading.ask is None:
        return "", NotRead("nothing that is asked was read")
    return derive(reading)


def _compare(reading: Reading, outcome: Outcome) -> Comparison | None:
    """The stated answer against the derived one, or None where one of the two is missing."""
    from paperaudit.maths.equality import compare
    from paperaudit.maths.options import key_letter, match_options

    part, ask = reading.part, reading.ask
    if part.answer is None or ask is None or not isinstance(outcome, Derived | Several):
        return None
    letter = key_letter(part)
    if not letter:
        return compare(part.answer.text, outcome.answers, ask)
    option = dict(part.options)[letter].text
    matched = match_options(part, outcome.answers, ask)
    if letter in matched.right:
        return Comparison(Agreement.AGREES)
    if letter in matched.unclear:
        return Comparison(Agreement.CANNOT_TELL, f"the option {letter}, {option}, was not read")
    answers = " and ".join(answer.text for answer in outcome.answers)
    return Comparison(Agreement.DIFFERS, f"the option {letter} says {option}, and the answer is {answers}")


def _verdict(reading: Reading, outcome: Outcome, comparison: Comparison | None) -> Verdict:
    """The verdict on a part; two right options are several answers, however the key chooses."""
    match outcome:
        case NotRead():
            return "not-read"
        case Impossible():
            return "impossible"
        case NotDetermined():
            return "not-determined"
    if comparison is None:
        return "several" if isinstance(outcome, Several) else "derived"
    if comparison.agreement is Agreement.CANNOT_TELL:
        return "not-read"
    if comparison.agreement is Agreement.DIFFERS:
        return "several" if isinstance(outcome, Several) else "differs"
    return "several" if _has_two_right_options(reading, outcome) else "confirmed"


def _has_two_right_options(reading: Reading, outcome: Derived | Several) -> bool:
    from paperaudit.maths.options import match_options

    if reading.ask is None or not reading.part.options:
        return False
    return len(match_options(reading.part, outcome.answers, reading.ask).right) > 1


def _first_derivation(outcome: Outcome) -> Derivation | None:
    if isinstance(outcome, Derived | Several) and outcome.derivations:
        return outcome.derivations[0]
    return None


def _skills_shown(derivation: Derivation | None) -> tuple[str, ...]:
    """The skills of the derivation's lines, each once, in the order in which a pupil needs them."""
    steps = derivation.steps if derivation else ()
    return tuple(dict.fromkeys(step.skill for step in steps if step.skill))
