"""Inequalities with absolute values: between two bounds, beyond two bounds, or squared where both sides have bars."""

from collections.abc import Callable
from fractions import Fraction

from paperaudit.maths.algebra.intervals import EVERYTHING, Interval, Intervals, both, interval_text, joined, text_of
from paperaudit.maths.algebra.terms import (
    NotTerms,
    Terms,
    coefficients,
    degree,
    expression_of,
    letters_in,
    negated,
    scaled,
    terms_of,
)
from paperaudit.maths.number_forms import whole_or_fraction
from paperaudit.maths.write import write
from paperaudit.model.expression import Absolute, Expression, Number, Power, Relation, RelationSign
from paperaudit.strands.algebra.absolutes import absolutes_in, isolated
from paperaudit.strands.algebra.working import Working

Solve = Callable[[Relation, str, Working], Intervals]
"""How an inequality without bars is solved."""

_TURNED: dict[RelationSign, RelationSign] = {"<": ">", ">": "<", "≤": "≥", "≥": "≤"}
TWO = Number(Fraction(2))


def absolute_set(relation: Relation, letter: str, working: Working, solve: Solve) -> Intervals:
    """The lines to the set. Raises NotTerms where the form is another."""
    working.say(relation, uses=working.used)
    absolutes = list(dict.fromkeys((*absolutes_in(relation.left), *absolutes_in(relation.right))))
    if len(absolutes) == 2 and {relation.left, relation.right} == set(absolutes):
        squared = Relation(_squared(relation.left), relation.sign, _squared(relation.right))
        return solve(squared, letter, working)
    if len(absolutes) != 1:
        raise NotTerms(f"{write(relation)}, with several bars")
    (absolute,) = absolutes
    front, rest = isolated(relation, absolute, letter)
    sign = relation.sign if front > 0 else _TURNED[relation.sign]
    other = scaled(rest, 1 / front)
    working.say(Relation(absolute, sign, expression_of(other)))
    if not letters_in(other):
        size = other[0].coefficient if other else Fraction(0)
        if size < 0 or (not size and sign in "<≥"):
            holds = sign in ">≥"
            truth = "always true" if holds else "never true"
            working.say(f"an absolute value is never negative, so this is {truth}")
            return EVERYTHING if holds else ()
    if sign in "<≤":
        return _between(absolute.operand, sign, other, letter, working, solve)
    return _beyond(absolute.operand, sign, other, letter, working, solve)


def _squared(side: Expression) -> Expression:
    return Power(side.operand if isinstance(side, Absolute) else side, TWO)


def _between(
    inside: Expression, sign: RelationSign, other: Terms, letter: str, working: Working, solve: Solve
) -> Intervals:
    """|A| < B is −B < A < B."""
    low, high = expression_of(negated(other)), expression_of(other)
    if letters_in(other) or degree(terms_of(inside)) != 1:
        line = working.say(f"{write(low)} {sign} {write(inside)} and {write(inside)} {sign} {write(high)}")
        sets = _each([Relation(low, sign, inside), Relation(inside, sign, high)], letter, working, solve, line)
        found = both(*sets)
        working.say(f"both hold: {text_of(found, letter)}")
        return found
    bound = other[0].coefficient if other else Fraction(0)
    constant, slope = coefficients(terms_of(inside), letter)
    working.say(f"{write(low)} {sign} {write(inside)} {sign} {write(high)}")
    ends = [(-bound - constant), (bound - constant)]
    if constant and slope != 1:
        middle = expression_of(tuple(term for term in terms_of(inside) if term.powers))
        working.say(
            f"{write(whole_or_fraction(ends[0]))} {sign} {write(middle)} {sign} {write(whole_or_fraction(ends[1]))}"
        )
    shares = sorted(end / slope for end in ends)
    closed = sign == "≤"
    interval = Interval(whole_or_fraction(shares[0]), whole_or_fraction(shares[1]), closed, closed)
    working.say(interval_text(interval, letter))
    return (interval,)


def _beyond(
    inside: Expression, sign: RelationSign, other: Terms, letter: str, working: Working, solve: Solve
) -> Intervals:
    """|A| > B is A < −B or A > B."""
    low, high = expression_of(negated(other)), expression_of(other)
    relations = [Relation(inside, _TURNED[sign], low), Relation(inside, sign, high)]
    line = working.say(" or ".join(map(write, relations)))
    sets = _each(relations, letter, working, solve, line)
    return joined([interval for found in sets for interval in found])


def _each(
    relations: list[Relation], letter: str, working: Working, solve: Solve, line: str
) -> tuple[Intervals, Intervals]:
    """Both inequalities solved from the line that names them."""
    sets: list[Intervals] = []
    for relation in relations:
        inner = Working(working.skill)
        sets.append(solve(relation, letter, inner))
        for place, step in enumerate(inner.steps):
            working.say(step.statement, uses=(line,) if not place else None)
    return sets[0], sets[1]
