"""Inequalities in one letter: linear, double, quadratic and rational, with the set that solves them."""

from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction
from math import ceil, floor, lcm

from paperaudit.errors import BudgetExceeded, NoValue
from paperaudit.maths.algebra.intervals import (
    EVERYTHING,
    Interval,
    Intervals,
    both,
    end_size,
    text_of,
)
from paperaudit.maths.algebra.logarithms import has_absolute, has_logarithm
from paperaudit.maths.algebra.ratios import has_letters_below, ratio_of
from paperaudit.maths.algebra.terms import (
    NotTerms,
    Terms,
    added,
    coefficients,
    degree,
    expression_of,
    from_coefficients,
    letters_in,
    negated,
    number_terms,
    product,
    scaled,
    terms_of,
    value_at,
)
from paperaudit.maths.measure import unit_of
from paperaudit.maths.number_forms import whole_or_fraction
from paperaudit.maths.write import write
from paperaudit.model.ask import Accuracy
from paperaudit.model.derivation import Answer, Derived
from paperaudit.model.expression import Expression, Number, Quotient, Relation, RelationSign, letters_of
from paperaudit.strands.algebra.absolute_inequalities import absolute_set
from paperaudit.strands.algebra.by_critical_values import set_by_critical_values
from paperaudit.strands.algebra.confirming import number_at
from paperaudit.strands.algebra.roots import expanded_sides, roots_of
from paperaudit.strands.algebra.signs import by_signs, compare_sizes
from paperaudit.strands.algebra.solving import has_letter_in_exponent
from paperaudit.strands.algebra.working import Working
from paperaudit.strands.finishing import ChecksDisagree, rounded_number

TRIED = "the inequality as given tried at numbers in every interval, at its ends and beside them"
TURNED: dict[RelationSign, RelationSign] = {"<": ">", ">": "<", "≤": "≥", "≥": "≤", "=": "=", "≠": "≠"}
_BESIDE = Fraction(1, 1000)
_MOST_INTEGERS = 60
_LEAST_TRIED = 60


def solve_inequalities(
    relations: Sequence[Relation],
    letter: str,
    integers: bool = False,
    used: tuple[str, ...] = (),
    accuracy: Accuracy | None = None,
) -> Derived:
    """The set that satisfies every one of the relations; `integers` asks for the whole numbers in it.

    Raises NotTerms, NoValue, BudgetExceeded, ChecksDisagree.
    """
    if any(unit_of(side) for relation in relations for side in (relation.left, relation.right)):
        raise NotTerms("an inequality with units")
    working = Working("inequalities", used)
    found = _chain(relations, letter, working) if _is_chain(relations) else None
    if found is None:
        found = EVERYTHING
        for relation in relations:
            found = both(found, _solved(relation, letter, working))
        if len(relations) > 1:
            working.say(
                f"both hold: {text_of(found, letter)}", uses=tuple(step.statement for step in working.steps[-2:])
            )
    _confirm(relations, letter, found)
    if integers:
        return _whole_numbers(found, letter, working)
    text = text_of(found, letter)
    working.conclude(text)
    if accuracy is not None:
        text = text_of(_rounded(found, accuracy), letter)
        working.conclude(text)
    return working.derived(Answer(text, None, letter, kind="solution set"), confirmed_by=TRIED)


def _rounded(found: Intervals, accuracy: Accuracy) -> Intervals:
    """The intervals with their ends rounded."""

    def rounded(end: Expression | None) -> Expression | None:
        return None if end is None else rounded_number(end, accuracy, "")

    return tuple(replace(one, low=rounded(one.low), high=rounded(one.high)) for one in found)


def _is_chain(relations: Sequence[Relation]) -> bool:
    return len(relations) == 2 and relations[0].right == relations[1].left and bool(letters_of(relations[0].right))


def _chain(relations: Sequence[Relation], letter: str, working: Working) -> Intervals | None:
    """−3 < 2x + 1 ≤ 7, the same done to all three sides."""
    first, second = relations
    if letters_of(first.left) or letters_of(second.right):
        return None
    try:
        sides = [terms_of(side) for side in (first.left, first.right, second.right)]
    except NotTerms:
        return None
    numbers = coefficients(sides[1], letter)
    upward = first.sign in "<≤" and second.sign in "<≤"
    if len(numbers) != 2 or not (upward or (first.sign in ">≥" and second.sign in ">≥")):
        return None
    signs = [first.sign, second.sign]

    def line() -> None:
        low, middle, high = map(expression_of, sides)
        working.say(f"{write(low)} {signs[0]} {write(middle)} {signs[1]} {write(high)}")

    working.given(f"{write(first.left)} {signs[0]} {write(first.right)} {signs[1]} {write(second.right)}")
    scale = lcm(*(term.coefficient.denominator for side in sides for term in side))
    if scale > 1:
        sides = [scaled(side, scale) for side in sides]
    line()
    numbers = coefficients(sides[1], letter)
    if numbers[0]:
        sides = [added(side, number_terms(-numbers[0])) for side in sides]
        line()
    sides = [scaled(side, 1 / numbers[1]) for side in sides]
    if numbers[1] < 0:
        signs = [TURNED[sign] for sign in signs]
    line()
    low, high = sides[0], sides[2]
    if signs[0] in ">≥":
        low, high, signs = high, low, [TURNED[signs[1]], TURNED[signs[0]]]
        sides = [low, sides[1], high]
        line()
    ends = [expression_of(low), expression_of(high)]
    return both(
        (Interval(ends[0], None, signs[0] == "≤"),),
        (Interval(None, ends[1], False, signs[1] == "≤"),),
    )


def _solved(relation: Relation, letter: str, working: Working) -> Intervals:
    if relation.sign in ("=", "≠"):
        raise NotTerms(f"{write(relation)} among inequalities")
    if any(has_absolute(side) for side in (relation.left, relation.right)):
        return absolute_set(relation, letter, working, _solved)
    if any(has_logarithm(side) or has_letter_in_exponent(side) for side in (relation.left, relation.right)):
        return set_by_critical_values(relation, letter, working, _solved)
    if any(has_letters_below(side) for side in (relation.left, relation.right)):
        return _rational(relation, letter, working)
    left, right = terms_of(relation.left), terms_of(relation.right)
    difference = added(left, negated(right))
    if degree(difference) <= 1:
        return _linear(relation, left, right, letter, working)
    working.say(relation, uses=working.used)
    expanded_sides(relation, working)
    sign = relation.sign
    if difference[0].coefficient < 0:
        difference, sign = negated(difference), TURNED[sign]
    scale = lcm(*(term.coefficient.denominator for term in difference))
    difference = scaled(difference, scale)
    working.say(Relation(expression_of(difference), sign, Number(Fraction(0))))
    inner = Working(working.skill)
    inner.say(Relation(expression_of(difference), "=", Number(Fraction(0))))
    roots = roots_of(difference, letter, inner).values
    working.steps.extend(inner.steps)
    return by_signs(roots, [], sign, letter, lambda at: value_at(difference, {letter: at}), working)


def _linear(relation: Relation, left: Terms, right: Terms, letter: str, working: Working) -> Intervals:
    sign = relation.sign
    working.say(relation, uses=working.used)
    scale = lcm(*(term.coefficient.denominator for term in (*left, *right)))
    if scale == 1:
        expanded_sides(relation, working)
    left, right = scaled(left, scale), scaled(right, scale)
    if scale > 1:
        working.say(Relation(expression_of(left), sign, expression_of(right)))
    own = [coefficients(side, letter) + [Fraction(0)] * 2 for side in (left, right)]
    slope, constant = own[0][1] - own[1][1], own[1][0] - own[0][0]
    if not slope:
        holds = compare_sizes(Fraction(0), sign, constant)
        working.say(f"0 {sign} {write(whole_or_fraction(constant))} is {'true for every number' if holds else 'false'}")
        return EVERYTHING if holds else ()
    if slope < 0 and own[0][1] >= 0:
        # The letter is collected where it has more, on the right, and read from there.
        slope, constant = -slope, -constant
        alone = scaled(_letter(letter), slope)
        working.say(Relation(expression_of(number_terms(constant)), sign, expression_of(alone)))
        sign = TURNED[sign]
        if slope != 1:
            working.say(Relation(whole_or_fraction(constant / slope), TURNED[sign], expression_of(_letter(letter))))
    else:
        working.say(
            Relation(expression_of(scaled(_letter(letter), slope)), sign, expression_of(number_terms(constant)))
        )
        sign = TURNED[sign] if slope < 0 else sign
    end = whole_or_fraction(constant / slope)
    working.say(f"{letter} {sign} {write(end)}")
    if sign in "<≤":
        return (Interval(None, end, False, sign == "≤"),)
    return (Interval(end, None, sign == "≥", False),)


def _letter(letter: str) -> Terms:
    return from_coefficients([Fraction(0), Fraction(1)], letter)


def _rational(relation: Relation, letter: str, working: Working) -> Intervals:
    """Everything on one side over one denominator; critical values are the roots of both."""
    working.say(relation, uses=working.used)
    one, other = ratio_of(relation.left), ratio_of(relation.right)
    above = added(product(one.above, other.below), negated(product(other.above, one.below)))
    below = product(one.below, other.below)
    if letters_in(below) != (letter,):
        raise NotTerms(write(relation))
    shown = expression_of(above) if degree(below) == 0 else Quotient(expression_of(above), expression_of(below))
    working.say(Relation(shown, relation.sign, Number(Fraction(0))))
    quiet = Working(working.skill)
    roots = roots_of(above, letter, quiet).values if degree(above) else []
    poles = roots_of(below, letter, quiet).values

    def value_of(at: Fraction) -> Fraction:
        return value_at(above, {letter: at}) * value_at(below, {letter: at})

    if not above:
        raise NotTerms(f"{write(relation)}, whose sides are equal")
    return by_signs(roots, poles, relation.sign, letter, value_of, working)


def _confirm(relations: Sequence[Relation], letter: str, found: Intervals) -> None:
    """Tried at the ends, beside them, between them, and at a spread of other numbers."""
    ends = [end_size(end) for interval in found for end in (interval.low, interval.high)]
    tried = {Fraction(place, 3) for place in range(-60, 61)}
    for end in ends:
        if end is not None:
            tried |= {end, end - _BESIDE, end + _BESIDE, end + 10**6, end - 10**6}
    tried_at = 0
    for at in tried:
        try:
            holds = all(_holds(relation, letter, at) for relation in relations)
        except NoValue:
            holds = False
        except BudgetExceeded:
            # 2^x a million beyond an end has too many digits.
            continue
        tried_at += 1
        if holds != any(interval.holds(at) for interval in found) and not _is_irrational_end(at, found):
            raise ChecksDisagree(f"{letter} = {float(at):.3f} decides against {text_of(found, letter)}")
    if tried_at < _LEAST_TRIED:
        raise ChecksDisagree(f"{text_of(found, letter)}, which could be tried at {tried_at} numbers only")


def confirm_equation_set(relation: Relation, letter: str, found: Intervals) -> None:
    """An equation that holds in intervals, tried like an inequality; raises ChecksDisagree."""
    _confirm((relation,), letter, found)


def _is_irrational_end(at: Fraction, found: Intervals) -> bool:
    """Whether the number stands for an irrational end, at which nothing can be tried exactly."""
    ends = [end for interval in found for end in (interval.low, interval.high) if end is not None]
    return any(end_size(end) == at and not isinstance(end, Number) for end in ends)


def _holds(relation: Relation, letter: str, at: Fraction) -> bool:
    left, right = (Fraction(number_at(side, {letter: at})) for side in (relation.left, relation.right))
    return compare_sizes(left, relation.sign, right)


def _whole_numbers(found: Intervals, letter: str, working: Working) -> Derived:
    """The whole numbers of a bounded set."""
    values: list[int] = []
    for interval in found:
        low, high = end_size(interval.low), end_size(interval.high)
        if low is None or high is None:
            raise NotTerms(f"{text_of(found, letter)}, which holds for endlessly many integers")
        start = ceil(low) if interval.has_low or ceil(low) != low else ceil(low) + 1
        stop = floor(high) if interval.has_high or floor(high) != high else floor(high) - 1
        if stop - start > _MOST_INTEGERS:
            raise BudgetExceeded("a list of dozens of integers")
        tried = range(floor(low) - 1, ceil(high) + 2)
        if [value for value in tried if interval.holds(Fraction(value))] != list(range(start, stop + 1)):
            raise ChecksDisagree("the integers between the ends, tried one by one")
        values.extend(range(start, stop + 1))
    text = ", ".join(write(Number(Fraction(value))) for value in values) or "none"
    working.say(text_of(found, letter))
    working.conclude(f"integers: {text}", text)
    return working.derived(Answer(text, kind="numbers"), confirmed_by=TRIED)
