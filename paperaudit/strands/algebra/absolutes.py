"""Equations with absolute values of the letter: both signs of what stands between the bars, every root tried."""

from collections.abc import Sequence
from fractions import Fraction
from itertools import pairwise

from paperaudit.maths.algebra.logarithms import has_absolute
from paperaudit.maths.algebra.terms import (
    NotTerms,
    Terms,
    added,
    coefficients,
    degree,
    expression_of,
    letters_in,
    negated,
    scaled,
    terms_of,
)
from paperaudit.maths.exact import rational_value
from paperaudit.maths.number_forms import whole_or_fraction
from paperaudit.maths.parts import with_parts
from paperaudit.maths.write import write
from paperaudit.model.expression import Absolute, Expression, Letter, Negative, Relation, Sum, parts_of
from paperaudit.strands.algebra.confirming import number_at, put_in, same_number
from paperaudit.strands.algebra.roots import Roots, solve_polynomial
from paperaudit.strands.algebra.working import Working
from paperaudit.strands.finishing import ChecksDisagree

_MOST = 3


class HoldsInRange(NotTerms):
    """An equation that every number of an interval satisfies."""


def solve_absolute(relation: Relation, letter: str, working: Working) -> Roots:
    """The lines to the roots. Raises NotTerms where the form is another."""
    working.given(relation)
    absolutes = list(dict.fromkeys((*absolutes_in(relation.left), *absolutes_in(relation.right))))
    if len(absolutes) > _MOST or any(has_absolute(one.operand) for one in absolutes):
        raise NotTerms(f"{write(relation)}, with many bars")
    if len(absolutes) == 1:
        found = _one(relation, absolutes[0], letter, working)
    else:
        found = _two_alone(relation, absolutes, letter, working) or _by_intervals(relation, absolutes, letter, working)
    _confirm_all(relation, absolutes, letter, found.values)
    return found


def absolutes_in(expression: Expression) -> list[Absolute]:
    """Every absolute value of an expression, from left to right."""
    own = [expression] if isinstance(expression, Absolute) else []
    return [*own, *(one for part in parts_of(expression) for one in absolutes_in(part))]


def isolated(relation: Relation, absolute: Expression, letter: str) -> tuple[Fraction, Terms]:
    """The number in front of the bars, or of another part, on the left, and the other terms on the right."""
    name = next(other for other in "utvw" if other != letter)

    def replaced(part: Expression) -> Expression:
        return Letter(name) if part == absolute else with_parts(part, replaced)

    whole = added(terms_of(replaced(relation.left)), negated(terms_of(replaced(relation.right))))
    front = [term for term in whole if term.exponent(name)]
    if len(front) != 1 or front[0].powers != ((name, 1),):
        raise NotTerms(f"{write(relation)}, in which {write(absolute)} is not added alone")
    return front[0].coefficient, negated(tuple(term for term in whole if not term.exponent(name)))


def _one(relation: Relation, absolute: Absolute, letter: str, working: Working) -> Roots:
    """a|A| + b = c, the bars alone first; |A| = B with a letter in B is tried at every root."""
    front, rest = isolated(relation, absolute, letter)
    other = scaled(rest, 1 / front)
    if other and len(other) > 1 and other[0].coefficient < 0:
        other = tuple(sorted(other, key=lambda term: term.coefficient < 0))
    right = expression_of(other)
    working.say(Relation(absolute, "=", right))
    if not letters_in(other):
        value = other[0].coefficient if other else Fraction(0)
        if value < 0:
            working.say("an absolute value is never negative, so there are no real solutions")
            return Roots()
        if not value:
            return _both([Relation(absolute.operand, "=", right)], letter, working)
        return _both(_signs(absolute.operand, right), letter, working)
    found = _both(_signs(absolute.operand, right), letter, working)
    return _tried(relation, letter, found, working)


def _signs(inside: Expression, right: Expression) -> list[Relation]:
    opposite = expression_of(negated(terms_of(right)))
    return [Relation(inside, "=", right), Relation(inside, "=", opposite)]


def _both(relations: Sequence[Relation], letter: str, working: Working) -> Roots:
    """Each of the equations solved from the line that names both."""
    if len(relations) > 1:
        working.say(" or ".join(map(write, relations)))
    start = working.steps[-1].statement
    values: list[Expression] = []
    for relation in relations:
        inner = Working(working.skill)
        found = solve_polynomial(relation, letter, inner)
        if found.everything:
            raise HoldsInRange(f"{write(relation)}, which holds for a whole range of numbers")
        for place, step in enumerate(inner.steps):
            if place or len(inner.steps) > 1 < len(relations):
                working.say(step.statement, uses=(start,) if not place else None)
        values.extend(found.values)
    return Roots(list(dict.fromkeys(values)))


def _two_alone(relation: Relation, absolutes: list[Absolute], letter: str, working: Working) -> Roots | None:
    """|A| = |B|; None for other equations."""
    if len(absolutes) != 2 or {relation.left, relation.right} != set(absolutes):
        return None
    right = relation.right.operand if isinstance(relation.right, Absolute) else relation.right
    left = relation.left.operand if isinstance(relation.left, Absolute) else relation.left
    minus = Negative(right)
    return _both([Relation(left, "=", right), Relation(left, "=", minus)], letter, working)


def _by_intervals(relation: Relation, absolutes: list[Absolute], letter: str, working: Working) -> Roots:
    """Sums of absolute values: the bars dropped with their signs in each interval between the critical values."""
    ends = critical_values(absolutes, letter)
    working.say(f"critical values: {', '.join(f'{letter} = {write(whole_or_fraction(end))}' for end in ends)}")
    start = working.steps[-1].statement
    values: list[Expression] = []
    bounds: list[Fraction | None] = [None, *ends, None]
    for low, high in pairwise(bounds):
        without = [without_bars(side, letter, inside(low, high)) for side in (relation.left, relation.right)]
        said = interval_name(low, high, letter)
        following = Relation(without[0], "=", without[1])
        working.say(f"for {said}: {write(following)}", uses=(start,))
        inner = Working(working.skill)
        found = solve_polynomial(following, letter, inner)
        if found.everything:
            raise HoldsInRange(f"{write(relation)}, which holds for a whole range of numbers")
        for step in inner.steps[1:]:
            working.say(step.statement)
        for value in found.values:
            size = rational_value(value)
            if size is None:
                raise NotTerms(f"{letter} = {write(value)} between bars")
            if (low is None or size >= low) and (high is None or size <= high):
                values.append(value)
            else:
                working.say(f"{letter} = {write(value)} is rejected: it is not in {said}")
        if not found.values:
            working.say("no solution there")
    return Roots(list(dict.fromkeys(values)))


def critical_values(absolutes: Sequence[Absolute], letter: str) -> list[Fraction]:
    """Where what stands between bars is 0; raises NotTerms unless it is of the first degree."""
    found: set[Fraction] = set()
    for one in absolutes:
        terms = terms_of(one.operand)
        if degree(terms) != 1 or letters_in(terms) != (letter,):
            raise NotTerms(f"{write(one)} among several bars")
        constant, slope = coefficients(terms, letter)
        found.add(-constant / slope)
    return sorted(found)


def inside(low: Fraction | None, high: Fraction | None) -> Fraction:
    """A number between two ends, None for no end."""
    if low is None:
        return (high or Fraction(0)) - 1
    return low + 1 if high is None else (low + high) / 2


def interval_name(low: Fraction | None, high: Fraction | None, letter: str) -> str:
    """An interval between critical values, as it is named in a line."""
    names = [write(whole_or_fraction(end)) if end is not None else "" for end in (low, high)]
    if low is None:
        return f"{letter} < {names[1]}"
    return f"{letter} ≥ {names[0]}" if high is None else f"{names[0]} ≤ {letter} < {names[1]}"


def without_bars(side: Expression, letter: str, at: Fraction) -> Expression:
    """The side as it is near a number: |x − 3| is −(x − 3) below 3."""
    if isinstance(side, Absolute):
        positive = Fraction(number_at(side.operand, {letter: at})) > 0
        return side.operand if positive else Negative(side.operand)
    return with_parts(side, lambda part: without_bars(part, letter, at))


def _tried(relation: Relation, letter: str, found: Roots, working: Working) -> Roots:
    """Every root put into the equation: |A| = B has only those where B is not negative."""
    kept: list[Expression] = []
    last = working.steps[-1].statement
    for value in found.values:
        left, right = (number_at(put_in(side, letter, value), {}) for side in (relation.left, relation.right))
        shown = [
            write(whole_or_fraction(side)) if isinstance(side, Fraction) else f"{side:.4f}" for side in (left, right)
        ]
        verdict = "" if same_number(left, right) else " is rejected"
        working.say(f"{letter} = {write(value)}{verdict}: left side {shown[0]}, right side {shown[1]}", uses=(last,))
        if not verdict:
            kept.append(value)
    return Roots(kept)


def _confirm_all(relation: Relation, absolutes: list[Absolute], letter: str, values: list[Expression]) -> None:
    """Between critical values the difference of the sides is linear: two numbers of it show where it is 0.

    Shares nothing with the derivation; equations with other than linear terms are left to the changes of sign.
    """
    try:
        ends = critical_values(absolutes, letter)
    except NotTerms:
        return
    difference = Sum((relation.left, Negative(relation.right)))
    expected: set[Fraction] = {end for end in ends if not number_at(difference, {letter: end})}
    for low, high in pairwise([None, *ends, None]):
        width = Fraction(1, 4) if low is None or high is None else (high - low) / 8
        start = (high - 1 if high is not None else Fraction(0)) if low is None else low + width
        at = [start, start + width, start + 2 * width]
        sizes = [Fraction(number_at(difference, {letter: one})) for one in at]
        if sizes[2] - sizes[1] != sizes[1] - sizes[0]:
            return
        slope = (sizes[1] - sizes[0]) / width
        if not slope:
            if not sizes[0]:
                raise ChecksDisagree(f"{write(relation)} holds for a whole range of numbers")
            continue
        root = at[0] - sizes[0] / slope
        if (low is None or root > low) and (high is None or root < high):
            expected.add(root)
    found = {rational_value(value) for value in values}
    if found != expected:
        raise ChecksDisagree(f"the solutions of {write(relation)}")
