"""Inequalities with the letter in an exponent or a logarithm: the equation solved, each interval between tried."""

from collections.abc import Callable
from fractions import Fraction
from itertools import pairwise

from paperaudit.maths.algebra.intervals import (
    EVERYTHING,
    Interval,
    Intervals,
    both,
    end_size,
    interval_text,
    joined,
    text_of,
)
from paperaudit.maths.algebra.terms import NotTerms
from paperaudit.maths.number_forms import whole_or_fraction
from paperaudit.maths.write import write
from paperaudit.model.ask import Ask, Solve
from paperaudit.model.expression import Expression, Number, Relation, letters_of
from paperaudit.strands.algebra.confirming import number_at
from paperaudit.strands.algebra.logarithm_equations import logarithms_in
from paperaudit.strands.algebra.signs import compare_sizes
from paperaudit.strands.algebra.solving import solve_one
from paperaudit.strands.algebra.working import Working
from paperaudit.strands.substitution import substituted

SolveSet = Callable[[Relation, str, Working], Intervals]
NOUGHT = Number(Fraction(0))


def set_by_critical_values(relation: Relation, letter: str, working: Working, solve: SolveSet) -> Intervals:
    """The lines to the set; `solve` finds where the logarithms exist. Raises NotTerms where the equation is unknown."""
    working.say(relation, uses=working.used)
    domain = _domain(relation, letter, working, solve)
    equation = Relation(relation.left, "=", relation.right)
    roots = _roots(equation, letter, working)
    ends = [end for interval in domain for end in (interval.low, interval.high) if end is not None]
    critical = sorted({end_size(one): one for one in (*roots, *ends)}.items(), key=lambda pair: pair[0] or 0)
    found: list[Interval] = []
    for (low, low_end), (high, high_end) in pairwise([(None, None), *critical, (None, None)]):
        at = _inside(low, high)
        if not any(interval.holds(at) for interval in domain):
            continue
        between = Interval(low_end, high_end)
        if _say_tried(relation, letter, at, between, working):
            found.append(between)
    if relation.sign in "≤≥":
        found.extend(Interval(one, one, True, True) for one in roots)
    return both(domain, joined(found))


def _domain(relation: Relation, letter: str, working: Working, solve: SolveSet) -> Intervals:
    """Where every logarithm has a value."""
    domain = EVERYTHING
    arguments: list[Expression] = []
    for side in (relation.left, relation.right):
        for log in logarithms_in(side):
            if letter in letters_of(log.base):
                raise NotTerms(f"{write(log)} in an inequality, a base with a letter")
            if letter in letters_of(log.argument):
                arguments.append(log.argument)
    start = working.steps[-1].statement
    for argument in dict.fromkeys(arguments):
        inner = Working(working.skill)
        domain = both(domain, solve(Relation(argument, ">", NOUGHT), letter, inner))
        for place, step in enumerate(inner.steps):
            working.say(step.statement, uses=(start,) if not place else None)
    if len(dict.fromkeys(arguments)) > 1:
        working.say(f"the logarithms exist for {text_of(domain, letter)}")
    return domain


def _roots(equation: Relation, letter: str, working: Working) -> list[Expression]:
    """The critical values, with the lines of the equation."""
    outcome = solve_one(equation, letter, Ask(Solve((equation,), (letter,)), write(equation)))
    if any(answer.text.startswith("infinitely") for answer in outcome.answers):
        raise NotTerms(f"{write(equation)}, whose sides are equal")
    start = working.steps[0].statement
    for place, step in enumerate(outcome.derivations[0].steps):
        working.say(step.statement, step.value, uses=(start,) if not place else None)
    return [answer.value for answer in outcome.answers if answer.value is not None]


def _inside(low: Fraction | None, high: Fraction | None) -> Fraction:
    """A number between, a whole one where there is one."""
    if low is None:
        return Fraction(0) if high is None else Fraction(high.__ceil__() - 1)
    if high is None:
        return Fraction(low.__floor__() + 1)
    middle = (low + high) / 2
    whole = Fraction(round(middle))
    return whole if low < whole < high else middle.limit_denominator(10**6)


def _say_tried(relation: Relation, letter: str, at: Fraction, between: Interval, working: Working) -> bool:
    """The line that tries a number; whether the inequality holds there."""
    left, right = (Fraction(number_at(side, {letter: at})) for side in (relation.left, relation.right))
    holds = compare_sizes(left, relation.sign, right)
    value: dict[str, Expression] = {letter: whole_or_fraction(at)}
    put = Relation(substituted(relation.left, value), relation.sign, substituted(relation.right, value))
    where = interval_text(between, letter)
    working.say(f"{letter} = {write(whole_or_fraction(at))}: {write(put)} is {str(holds).lower()}, so {where} is "
                f"{'part of the solution' if holds else 'left out'}", uses=(working.steps[0].statement,))  # fmt: skip
    return holds
