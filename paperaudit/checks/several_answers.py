"""There is more than one answer, and the key has not all of them."""

from collections.abc import Iterator

from paperaudit.checks.check import Check
from paperaudit.checks.grounds.words import called, counted, listed
from paperaudit.model.ask import Solve
from paperaudit.model.audited import AuditedPaper, AuditedPart
from paperaudit.model.derivation import Agreement, Answer, Derived, Several
from paperaudit.model.finding import Finding, Severity


def find(audited: AuditedPaper) -> Iterator[Finding]:
    """One finding a part with several answers of which the key has some or, for a size, none is stated."""
    for audited_part in audited.parts:
        answers = answers_not_all_stated(audited_part)
        if not answers:
            continue
        part = audited_part.part
        yield CHECK.found(
            f"{called(audited_part.question, part)} has {counted(len(answers), 'answer')}, "
            f"{listed([answer.text for answer in answers])}; {_what_the_key_has(audited_part)}.",
            part=part.id,
            places=(part.answer.place if part.answer else part.place, part.place, audited_part.question.place),
            because=_cases(audited_part),
            suggestion="Give all answers in the key, or add a given that leaves one of them only.",
        )


def answers_not_all_stated(audited_part: AuditedPart) -> tuple[Answer, ...]:
    """The answers of a part that has several, where the key states only some of them; else none.

    A key that states none of several solutions of an equation is only missing. A size that has several
    values is a fault of the question even without a key.
    """
    outcome, comparison = audited_part.outcome, audited_part.comparison
    if not isinstance(outcome, Derived | Several) or not _are_alternatives(audited_part):
        return ()
    if comparison is None:
        return () if _is_solving(audited_part) else outcome.answers
    some_missing = 0 < len(comparison.missing) < len(outcome.answers)
    return outcome.answers if comparison.agreement is Agreement.DIFFERS and some_missing else ()


def _are_alternatives(audited_part: AuditedPart) -> bool:
    """Whether the answers stand in place of each other (x = 3 or x = −3), not side by side (x = 3 and y = 1)."""
    outcome = audited_part.outcome
    if not isinstance(outcome, Derived | Several) or len(outcome.answers) < 2:
        return False
    one_letter = len({answer.letter for answer in outcome.answers}) == 1
    return isinstance(outcome, Several) or (_is_solving(audited_part) and one_letter)


def _is_solving(audited_part: AuditedPart) -> bool:
    ask = audited_part.reading.ask
    return ask is not None and isinstance(ask.task, Solve)


def _what_the_key_has(audited_part: AuditedPart) -> str:
    if audited_part.comparison is None or audited_part.part.answer is None:
        return "no key says which are meant"
    missing = listed([answer.text for answer in audited_part.comparison.missing])
    return f"the key says {audited_part.part.answer.text}, without {missing}"


def _cases(audited_part: AuditedPart) -> tuple[str, ...]:
    """A line an answer: how it comes about where there is a working for each, else the case that shows it."""
    outcome = audited_part.outcome
    if not isinstance(outcome, Several):
        return ()
    if len(outcome.derivations) != len(outcome.answers):
        return tuple(case.description for case in outcome.cases)
    workings = ("; ".join(step.statement for step in derivation.steps) for derivation in outcome.derivations)
    return tuple(f"{answer.text}: {working}" for answer, working in zip(outcome.answers, workings, strict=True))


CHECK = Check(
    name="several-answers",
    severity=Severity.ERROR,
    title="More than one answer, and the key has not all of them",
    meaning="The question has finitely many answers, more than one, and the key does not list them all.",
    matters="A learner who finds the other answer is right and loses the marks.",
    mend="Complete the key, or add the given that excludes the answers that are not meant (an angle is acute, a "
    "number is positive).",
    faulty="""
questions:
  - {number: 1, figure: isosceles triangle ABC, given: ∠A = 40°, ask: ∠B, answer: 70°, marks: 2}
""",
    clean="""
questions:
  - {number: 1, figure: triangle ABC, given: [AB = AC, ∠A = 40°], ask: ∠B, answer: 70°, marks: 2}
""",
    find=find,
)
