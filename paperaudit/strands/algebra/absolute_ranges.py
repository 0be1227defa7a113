"""Equations with absolute values that hold for a whole interval: |x| = x, |x − 2| + |x + 1| = 3."""

from collections.abc import Callable
from fractions import Fraction
from itertools import pairwise

from paperaudit.maths.algebra.intervals import Interval, Intervals, joined, text_of
from paperaudit.maths.algebra.terms import NotTerms
from paperaudit.maths.exact import rational_value
from paperaudit.maths.number_forms import whole_or_fraction
from paperaudit.maths.write import write
from paperaudit.model.derivation import Answer, Derived
from paperaudit.model.expression import Relation
from paperaudit.strands.algebra.absolutes import (
    absolutes_in,
    critical_values,
    inside,
    interval_name,
    without_bars,
)
from paperaudit.strands.algebra.roots import solve_polynomial
from paperaudit.strands.algebra.working import Working

TRIED = "the equation as given tried at numbers in every interval, at its ends and beside them"
Confirm = Callable[[Relation, str, Intervals], None]


def holds_in_a_range(relation: Relation, letter: str, used: tuple[str, ...], confirm: Confirm) -> Derived:
    """The numbers that satisfy it, found between the critical values; raises NotTerms where these are unknown."""
    working = Working("absolute values", used)
    working.given(relation)
    bars = list(dict.fromkeys((*absolutes_in(relation.left), *absolutes_in(relation.right))))
    ends = critical_values(bars, letter)
    working.say(f"critical values: {', '.join(f'{letter} = {write(whole_or_fraction(end))}' for end in ends)}")
    start = working.steps[-1].statement
    found: list[Interval] = []
    for low, high in pairwise([None, *ends, None]):
        without = [without_bars(side, letter, inside(low, high)) for side in (relation.left, relation.right)]
        said = interval_name(low, high, letter)
        following = Relation(without[0], "=", without[1])
        working.say(f"for {said}: {write(following)}", uses=(start,))
        found.extend(_between(following, letter, low, high, said, working))
    answer = joined(found)
    confirm(relation, letter, answer)
    text = text_of(answer, letter)
    working.conclude(text)
    return working.derived(Answer(text, None, letter, kind="solution set"), confirmed_by=TRIED)


def _between(
    equation: Relation, letter: str, low: Fraction | None, high: Fraction | None, said: str, working: Working
) -> list[Interval]:
    """What solves the equation without bars in one interval."""
    inner = Working(working.skill)
    roots = solve_polynomial(equation, letter, inner)
    if roots.everything:
        working.say("both sides are equal for every number there")
        ends = [None if end is None else whole_or_fraction(end) for end in (low, high)]
        # The sides are continuous, so that they are equal at the ends too.
        return [Interval(ends[0], ends[1], low is not None, high is not None)]
    for step in inner.steps[1:]:
        working.say(step.statement)
    found = []
    for value in roots.values:
        size = rational_value(value)
        if size is None:
            raise NotTerms(f"{letter} = {write(value)} between bars")
        if (low is None or size >= low) and (high is None or size <= high):
            found.append(Interval(value, value, True, True))
        else:
            working.say(f"{letter} = {write(value)} is rejected: it is not in {said}")
    if not roots.values:
        working.say("no solution there")
    return found
