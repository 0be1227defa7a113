"""The laws of logarithms: several brought to one, one taken apart, and a number that makes one of several."""

from dataclasses import replace
from fractions import Fraction

from paperaudit.errors import BudgetExceeded, NoValue
from paperaudit.maths.algebra.logarithms import (
    LogTerm,
    log_terms,
    one_base,
    parted,
    powers_in_front,
    powers_inside,
    raised,
    signed_terms,
    single_argument,
    total_of,
    worked_out,
)
from paperaudit.maths.algebra.terms import NotTerms
from paperaudit.maths.euler import means_euler, with_euler
from paperaudit.maths.exact import NotSurd
from paperaudit.maths.near import near_value
from paperaudit.maths.write import write
from paperaudit.model.algebra_task import InForm, LogarithmsApart, SingleLogarithm
from paperaudit.model.derivation import Answer, Derived, Step, StepKind
from paperaudit.model.expression import Expression, Letter, Logarithm, letters_of
from paperaudit.model.reading import Reading
from paperaudit.strands.algebra.working import Working
from paperaudit.strands.finishing import ChecksDisagree

SKILL = "laws of logarithms"
CONFIRMED = "every line worked out to fifty figures by decimal arithmetic"
_TRIED, _ENOUGH, _CLOSE = 30, 5, Fraction(1, 10**40)


def single_logarithm(task: SingleLogarithm, reading: Reading | None) -> Derived:
    """A sum of logarithms as one: 2 log x + log y = log x²y."""
    expression = with_euler(task.expression) if means_euler(task.expression) else task.expression
    working = Working(SKILL)
    terms, number = log_terms(expression)
    base = one_base(terms)
    start = total_of(terms, number)
    if number:
        whole = Logarithm(raised(base, abs(number)), base)
        terms = sorted([*terms, LogTerm(Fraction(1 if number > 0 else -1), whole)], key=lambda term: term.size < 0)
        say_equal(working, expression, total_of(terms))
    if len(terms) > 1 and terms[0].size < 0:
        terms = sorted(terms, key=lambda term: term.size < 0)
    inside = powers_inside(terms)
    say_equal(working, expression, total_of(inside))
    log: Expression = Logarithm(single_argument(inside), base)
    say_equal(working, expression, log)
    if not working.steps:
        working.say(write(log), write(log))
    confirm_value(start, log)
    answer = Answer(write(log), log, kind="single logarithm")
    return working.derived(answer, confirmed_by=CONFIRMED)


def in_logarithm_form(task: InForm) -> Derived:
    """2 log 3 + log 4 in the form log k: the number k."""
    match task.form:
        case Logarithm(Letter(name), base) if task.values in ((), (name,)):
            found = single_logarithm(SingleLogarithm(task.expression), None)
        case _:
            raise NotTerms(f"{write(task.expression)} in the form {write(task.form)}")
    log = found.answers[0].value
    if not isinstance(log, Logarithm) or log.base != base:
        raise NotTerms(f"{write(task.expression)} in the form {write(task.form)}")
    if not task.values:
        return found
    derivation = found.derivations[0]
    said = f"{name} = {write(log.argument)}"
    step = Step(said, StepKind.CONCLUSION, None, (derivation.steps[-1].statement,), said, SKILL)
    answer = Answer(said, log.argument, name)
    return Derived((answer,), (replace(derivation, steps=(*derivation.steps, step)),))


def logarithms_apart(task: LogarithmsApart, reading: Reading) -> Derived:
    """One logarithm as a sum: log (x²y/z) = 2 log x + log y − log z."""
    expression = with_euler(task.expression) if means_euler(task.expression) else task.expression
    working = Working(SKILL)
    terms = [LogTerm(sign * piece.size, piece.log) for sign, term in signed_terms(expression) for piece in _apart(term)]
    say_equal(working, expression, total_of(terms))
    terms = powers_in_front(terms)
    say_equal(working, expression, total_of(terms))
    number = Fraction(0)
    kept: list[LogTerm] = []
    for term in terms:
        size = worked_out(term.log)
        if size is None:
            kept.append(term)
        else:
            number += term.size * size
    value = total_of(kept, number)
    say_equal(working, expression, value)
    if not working.steps:
        raise NotTerms(f"{write(expression)}, which does not come apart")
    confirm_value(expression, value)
    return working.derived(Answer(write(value), value, kind="logarithms apart"), confirmed_by=CONFIRMED)


def _apart(term: Expression) -> list[LogTerm]:
    logs, number = log_terms(term)
    if number or len(logs) != 1:
        raise NotTerms(f"{write(term)}, which is no logarithm")
    return [LogTerm(logs[0].size * piece.size, piece.log) for piece in parted(logs[0].log)]


def say_equal(working: Working, first: Expression, line: Expression) -> None:
    """The next line: "log 5 + log 20 = log 100", then "= 2"."""
    text = write(line)
    if not working.steps:
        if text != write(first):
            working.say(f"{write(first)} = {text}", text)
    elif working.steps[-1].value != text:
        working.say(f"= {text}", text)


def confirm_value(one: Expression, other: Expression) -> None:
    """Both must have one value wherever both have one; raises ChecksDisagree."""
    letters = tuple(dict.fromkeys((*letters_of(one), *letters_of(other))))
    compared = 0
    for place in range(_TRIED if letters else 1):
        values = {
            name: Fraction(5 + (7 * place + 11 * at) % 43, 1 + (place + at) % 3) for at, name in enumerate(letters)
        }
        try:
            sizes = [Fraction(near_value(side, values)) for side in (one, other)]
        except (NoValue, NotSurd, BudgetExceeded):
            continue
        compared += 1
        if abs(sizes[0] - sizes[1]) > _CLOSE * max(abs(sizes[0]), Fraction(1)):
            raise ChecksDisagree(f"{write(other)} is not {write(one)}")
    if compared < (_ENOUGH if letters else 1):
        raise ChecksDisagree(f"{write(one)} could not be worked out at enough numbers")
