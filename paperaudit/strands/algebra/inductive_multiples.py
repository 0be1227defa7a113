"""Multiples proved by induction: g(k + 1) less a multiple of g(k) is a multiple itself."""

from collections.abc import Iterator
from fractions import Fraction

from paperaudit.maths.algebra.exponential_terms import ExponentialTerms, exponential_terms
from paperaudit.maths.algebra.terms import NotTerms, Terms, added, coefficients, degree, negated, scaled
from paperaudit.maths.number_forms import whole_or_fraction
from paperaudit.maths.write import write
from paperaudit.model.derivation import Answer, Derived
from paperaudit.model.expression import Letter
from paperaudit.model.proof_task import InductiveMultiple
from paperaudit.model.reading import Reading
from paperaudit.strands.algebra.induction import CASES, SKILL, after, conclude, other_letter, put, value_at
from paperaudit.strands.algebra.working import Working
from paperaudit.strands.finishing import ChecksDisagree

CONFIRMED = f"worked out for the first {CASES} integers, and the divisions done"


def inductive_multiple(task: InductiveMultiple, reading: Reading) -> Derived:
    """The claim proved, or refuted by the first integer at which it fails."""
    working = Working(SKILL)
    for number in range(task.start, task.start + CASES):
        value = value_at(task.expression, task.letter, number)
        if value.denominator != 1 or value.numerator % task.divisor:
            said = (
                f"for {task.letter} = {number} it is {write(whole_or_fraction(value))}, no multiple of {task.divisor}"
            )
            working.conclude(said, "false")
            return working.derived(Answer(f"false: {said}"), confirmed_by="the division done")
    first = value_at(task.expression, task.letter, task.start)
    quotient = write(whole_or_fraction(first / task.divisor))
    working.say(f"f({task.letter}) = {write(task.expression)}", uses=())
    working.say(f"f({task.start}) = {write(whole_or_fraction(first))} = {task.divisor} × {quotient}")
    name = other_letter(task.letter)
    working.say(f"assume that f({name}) is a multiple of {task.divisor}", uses=())
    here = exponential_terms(put(task.expression, task.letter, Letter(name)), name)
    there = exponential_terms(put(task.expression, task.letter, after(name)), name)
    times, rest = _step(here, there, task.divisor)
    _say_step(task, name, times, there, rest, working)
    conclude(task.start, task.letter, name, working)
    return working.derived(Answer("proved"), confirmed_by=CONFIRMED)


def _step(here: ExponentialTerms, there: ExponentialTerms, divisor: int) -> tuple[int, Terms]:
    """How often f(k) is taken from f(k + 1), and what is left, which is a multiple; raises NotTerms without one."""
    if here.bases != there.bases:
        raise NotTerms("powers that change with k")
    for times in _multiples(here):
        rest = added(there.terms, negated(scaled(here.terms, times)))
        if _is_multiple(rest, divisor) or _by_neighbours(rest, here, divisor):
            return times, rest
    raise NotTerms("a step from k to k + 1 that is no multiple at sight")


def _multiples(here: ExponentialTerms) -> Iterator[int]:
    yield 1
    yield from sorted(int(base) for base in here.bases.values() if base.denominator == 1 and base > 1)


def _is_multiple(rest: Terms, divisor: int) -> bool:
    return all((term.coefficient / divisor).denominator == 1 for term in rest)


def _by_neighbours(rest: Terms, here: ExponentialTerms, divisor: int) -> bool:
    """Whether ak² + ak + c is a multiple because k(k + 1) is even."""
    if here.bases or degree(rest) != 2:
        return False
    constant, slope, front = coefficients(rest, here.letter)
    return slope == front and (2 * front / divisor).denominator == 1 and (constant / divisor).denominator == 1


def _say_step(
    task: InductiveMultiple, name: str, times: int, there: ExponentialTerms, rest: Terms, working: Working
) -> None:
    """The lines of the step."""
    divisor = task.divisor
    front = "" if times == 1 else str(times)
    moved, own = put(task.expression, task.letter, after(name)), put(task.expression, task.letter, Letter(name))
    left = there.expression(rest)
    bracket = f"{front}({write(own)})" if front else f"({write(own)})"
    working.say(f"f({name} + 1) − {front}f({name}) = {write(moved)} − {bracket}", uses=())
    working.say(f"= {write(left)}", write(left))
    for number in range(task.start, task.start + CASES):
        here, following = (value_at(task.expression, task.letter, number + more) for more in (0, 1))
        if following - times * here != (value_at(left, name, number) if rest else 0) or following % divisor:
            raise ChecksDisagree(f"the step from {number} to {number + 1}")
    if _is_multiple(rest, divisor):
        inside = there.expression(scaled(rest, Fraction(1, divisor)))
        plain = len(rest) == 1 and rest[0].coefficient > 0
        said = f"= {divisor} × {write(inside)}" if plain else f"= {divisor}({write(inside)})"
        if rest and said != working.steps[-1].statement:
            working.say(said)
    else:
        constant, _, size = coefficients(rest, name)
        pair = f"{write(whole_or_fraction(size)) if size != 1 else ''}{name}({name} + 1)"
        tail = f" + {write(whole_or_fraction(constant))}" if constant else ""
        working.say(f"= {pair}{tail}")
        working.say(f"{name}({name} + 1) is even, so this is a multiple of {divisor}")
    working.say(f"f({name} + 1) = {front}f({name}) + a multiple of {divisor}, which is a multiple of {divisor}")
