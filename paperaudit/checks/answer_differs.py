"""The key's answer is not the derived one."""

from collections.abc import Iterator

from paperaudit.checks.check import Check
from paperaudit.checks.grounds.options import key_names_an_option, right_options
from paperaudit.checks.grounds.units import only_the_unit_clashes
from paperaudit.checks.grounds.words import called, listed, stated_by_key, valued
from paperaudit.checks.several_answers import answers_not_all_stated
from paperaudit.marking.expected_errors.wrong_answers import probable_errors
from paperaudit.marking.reasons import word
from paperaudit.model.audited import AuditedPaper, AuditedPart
from paperaudit.model.derivation import Agreement
from paperaudit.model.finding import Finding, Severity
from paperaudit.model.paper import Line
from paperaudit.strands.verdict import claims_what_is_false


def find(audited: AuditedPaper) -> Iterator[Finding]:
    """One finding a part whose key differs, or that asks to show what is false.

    A key that has some of several answers is left to `several-answers`, one with the right number in a unit of
    another kind to `unit-clash`, one that names no option to `key-not-an-option`.
    """
    for audited_part in audited.parts:
        comparison, part = audited_part.comparison, audited_part.part
        if claims_what_is_false(audited_part.reading, audited_part.outcome):
            yield _false_claim(audited_part, audited.paper.reasons)
        elif comparison is None or comparison.agreement is not Agreement.DIFFERS or part.answer is None:
            continue
        elif not _is_told_elsewhere(audited_part):
            yield _wrong_key(audited_part, part.answer, audited.paper.reasons)


def _is_told_elsewhere(audited_part: AuditedPart) -> bool:
    """Whether another finding says what is wrong with the key, and more precisely: one slip is one finding."""
    part = audited_part.part
    names_no_option = bool(part.options) and not key_names_an_option(part)
    return names_no_option or bool(answers_not_all_stated(audited_part)) or only_the_unit_clashes(audited_part)


def _wrong_key(audited_part: AuditedPart, key: Line, system: str) -> Finding:
    part, derived = audited_part.part, _derived(audited_part)
    return CHECK.found(
        f"{called(audited_part.question, part)}: the key says {stated_by_key(part)}, "
        f"but {derived if '=' in derived else f'the answer is {derived}'}.",
        part=part.id,
        places=(key.place, part.place, audited_part.question.place),
        because=(*_working(audited_part, system), *_beyond_the_value(audited_part), *_probable_error(audited_part)),
        suggestion=f"Change the key to {_in_key(audited_part) or derived}.",
    )


def _false_claim(audited_part: AuditedPart, system: str) -> Finding:
    part, ask = audited_part.part, audited_part.reading.ask
    found = _derived(audited_part).removeprefix("false").removeprefix(": ")
    return CHECK.found(
        f"{called(audited_part.question, part)}: “{ask.text if ask else ''}” asks for what is false"
        + (f"; in truth {found}." if found else "."),
        part=part.id,
        places=(part.ask.place if part.ask else part.place, part.place, audited_part.question.place),
        because=_working(audited_part, system),
        suggestion="Change the claim, or the given in which it would hold.",
    )


def _beyond_the_value(audited_part: AuditedPart) -> tuple[str, ...]:
    """Why the key is wrong where that is not plain from the two values: its form, its unit, its rounding."""
    why = audited_part.comparison.why if audited_part.comparison else ""
    plain = any(why.endswith(f" is not {answer.text}") for answer in getattr(audited_part.outcome, "answers", ()))
    return (why,) if why and not plain else ()


def _probable_error(audited_part: AuditedPart) -> tuple[str, ...]:
    """Which documented errors lead to what the key says."""
    errors = probable_errors(audited_part)
    if not errors:
        return ()
    return (f"the key's answer is what a learner gets who {listed([error.says for error in errors], 'or')}",)


def _in_key(audited_part: AuditedPart) -> str:
    """The letter that the key should name, "" where the part has no options or none of them is right."""
    return listed([letter for letter, _ in right_options(audited_part)], "or")


def _derived(audited_part: AuditedPart) -> str:
    """The derived answers in a sentence: "∠ABC = 68°", "x = 5 and y = 2"."""
    outcome, ask = audited_part.outcome, audited_part.reading.ask
    answers = getattr(outcome, "answers", ())
    asked = ask.text if ask and len(answers) == 1 else ""
    return listed([valued(asked, answer) for answer in answers])


def _working(audited_part: AuditedPart, system: str) -> tuple[str, ...]:
    derivation = audited_part.derivation()
    if derivation is None:
        return ()
    return tuple(
        f"{step.statement} ({word(step.reason, system)})" if step.reason else step.statement
        for step in derivation.steps
    )


CHECK = Check(
    name="answer-differs",
    severity=Severity.ERROR,
    title="The stated answer is wrong",
    meaning="The answer in the key is not the one that follows from the question. The program derived the answer line "
    "by line and confirmed it in a second, independent way. Other forms of the same answer (0.5 for 1/2) agree. A part "
    "that asks to show something false is told here too.",
    matters="Right answers are marked wrong and wrong ones right. If the scripts are back before it is noticed, every "
    "one must be marked again.",
    mend="Follow the lines of the working. Correct the key, or the given in which the key's answer would hold.",
    faulty="""
questions:
  - number: 1
    figure: [triangle ABC, BC is produced to D]
    given: ∠ACD = 112°
    ask: ∠ACB
    answer: 62°
    marks: 1
""",
    clean="""
questions:
  - number: 1
    figure: [triangle ABC, BC is produced to D]
    given: ∠ACD = 112°
    ask: ∠ACB
    answer: 68°
    marks: 1
""",
    find=find,
)
