"""Polynomial equations in one letter brought to nought and solved, line by line."""

from dataclasses import dataclass, field
from fractions import Fraction
from math import gcd, lcm
from typing import Literal, TypeAlias

from paperaudit.maths.algebra.expanding import expanded_lines
from paperaudit.maths.algebra.factorising import NoFactors, factorised_lines, factors_of
from paperaudit.maths.algebra.terms import (
    NotTerms,
    Terms,
    added,
    coefficients,
    collected,
    degree,
    expression_of,
    from_coefficients,
    negated,
    scaled,
    terms_of,
    written,
)
from paperaudit.maths.exact import rational_value, whole_root
from paperaudit.maths.linear_terms import NotLinear
from paperaudit.maths.number_forms import whole_or_fraction
from paperaudit.maths.solving import solve_linear
from paperaudit.maths.write import write
from paperaudit.model.expression import (
    Expression,
    Negative,
    Number,
    Power,
    Product,
    Relation,
    Root,
    Sum,
    letters_of,
)
from paperaudit.strands.algebra.squares import by_completing, by_formula, by_square_root
from paperaudit.strands.algebra.working import Working

Method: TypeAlias = Literal["", "factorising", "completing the square", "formula"]
ZERO = Number(Fraction(0))


@dataclass(slots=True)
class Roots:
    """The real roots found, the smallest first; `everything` where every number is one."""

    values: list[Expression] = field(default_factory=list)
    everything: bool = False


def solve_polynomial(relation: Relation, letter: str, working: Working, method: Method = "") -> Roots:
    """The lines from an equation to its real roots. Raises NotTerms, NoValue and BudgetExceeded."""
    linear = _by_linear_moves(relation, letter, working)
    found = linear if linear is not None or method else _at_once(relation, letter, working)
    if found is not None:
        return found
    terms = brought_to_nought(relation, letter, working)
    if not terms:
        return Roots(everything=True)
    if degree(terms) == 0:
        return Roots()
    return roots_of(terms, letter, working, method)


def _by_linear_moves(relation: Relation, letter: str, working: Working) -> Roots | None:
    """An equation that is of the first degree as it stands."""
    try:
        solution = solve_linear(relation, letter)
    except NotLinear:
        return None
    for line in solution.lines:
        working.given(line)
    if isinstance(solution.value, str):
        return Roots(everything=solution.value == "all")
    return Roots([whole_or_fraction(solution.value)])


def _at_once(relation: Relation, letter: str, working: Working) -> Roots | None:
    """A product that is nought, or a bracket whose power is a number."""
    left, right = relation.left, relation.right
    if rational_value_of(left) is not None and rational_value_of(right) is None:
        left, right = right, left
    value = rational_value_of(right)
    if value is None:
        return None
    if value == 0 and isinstance(left, Product) and any(isinstance(factor, Sum) for factor in left.factors):
        working.given(relation)
        return _each_factor(terms_of(left), letter, working)
    front, base = Fraction(1), left
    terms = _terms_or_none(left)
    if terms is not None and len(terms) == 1 and not isinstance(left, Sum) and degree(terms) > 1 and value:
        working.given(relation)
        numbers = coefficients(terms, letter)
        return Roots(_pure_power([-value, *numbers[1:]], letter, working))
    if isinstance(left, Product) and len(left.factors) == 2 and isinstance(left.factors[0], Number):
        front, base = left.factors[0].value, left.factors[1]
    if isinstance(base, Power) and isinstance(base.base, Sum) and base.exponent == Number(Fraction(2)) and front:
        inside = terms_of(base.base)
        if degree(inside) != 1 or value / front < 0:
            return None
        working.given(relation)
        if front != 1:
            working.say(Relation(base, "=", whole_or_fraction(value / front)))
        return Roots(by_square_root(inside, value / front, letter, working))
    return None


def _terms_or_none(expression: Expression) -> Terms | None:
    try:
        return terms_of(expression)
    except NotTerms:
        return None


def rational_value_of(expression: Expression) -> Fraction | None:
    """The value of a number, None for anything with letters."""
    return None if letters_of(expression) else rational_value(expression)


def brought_to_nought(relation: Relation, letter: str, working: Working) -> Terms:
    """Everything on one side, collected, with whole coefficients in lowest terms and the first one positive."""
    working.given(relation)
    one, other = terms_of(relation.left), terms_of(relation.right)
    scale = lcm(*(term.coefficient.denominator for term in (*one, *other)))
    if scale == 1:
        expanded_sides(relation, working)
    else:
        one, other = scaled(one, scale), scaled(other, scale)
        working.say(Relation(expression_of(one), "=", expression_of(other)))
    terms = added(one, negated(other))
    if terms and terms[0].coefficient < 0:
        terms = negated(terms)
    if other or one != terms:
        working.say(Relation(expression_of(terms), "=", ZERO))
    common = gcd(*(term.coefficient.numerator for term in terms)) if terms else 1
    if common > 1 and degree(terms) > 0:
        terms = scaled(terms, Fraction(1, common))
        working.say(Relation(expression_of(terms), "=", ZERO))
    return terms


def expanded_sides(relation: Relation, working: Working) -> None:
    """The lines in which both sides are multiplied out side by side."""
    left, right = expanded_lines(relation.left), expanded_lines(relation.right)
    for place in range(1, max(len(left), len(right))):
        one, other = (lines[min(place, len(lines) - 1)] for lines in (left, right))
        before = (lines[min(place - 1, len(lines) - 1)] for lines in (left, right))
        if not all(map(_reordered, before, (one, other))):
            working.say(Relation(one, relation.sign, other))


def _reordered(one: Expression, other: Expression) -> bool:
    """Whether two lines have the same terms, in another order at most."""
    sides = [side.terms if isinstance(side, Sum) else (side,) for side in (one, other)]
    return sorted(map(write, sides[0])) == sorted(map(write, sides[1]))


def roots_of(terms: Terms, letter: str, working: Working, method: Method = "") -> Roots:
    """The real roots of terms that are nought."""
    numbers = coefficients(terms, letter)
    if degree(terms) == 1:
        return Roots([_linear(terms, letter, working)])
    low = next(place for place, number in enumerate(numbers) if number)
    if len(terms) == 1:
        return Roots([whole_or_fraction(0)])
    if degree(terms) == 2 and method == "completing the square":
        return Roots(by_completing(numbers, letter, working))
    if degree(terms) == 2 and method == "formula":
        return Roots(by_formula(numbers, letter, working))
    if len(terms) == 2 and low == 0:
        return (
            Roots(_pure_power(numbers, letter, working))
            if method != "factorising"
            else _factored(terms, letter, working)
        )
    try:
        return _factored(terms, letter, working)
    except NoFactors:
        if method == "factorising":
            raise
    if degree(terms) == 2:
        return Roots(by_formula(numbers, letter, working))
    if degree(terms) == 4 and not numbers[1] and not numbers[3]:
        return _in_squares(numbers, letter, working)
    raise NotTerms(f"{written(terms)} = 0, which has no rational root and is not quadratic")


def _factored(terms: Terms, letter: str, working: Working) -> Roots:
    lines, _ = factorised_lines(expression_of(terms))
    for line in lines[1:]:
        if isinstance(line, str):
            working.say(line)
        else:
            working.say(Relation(line, "=", ZERO))
    return _each_factor(terms, letter, working)


def _each_factor(terms: Terms, letter: str, working: Working) -> Roots:
    """Each factor is nought in turn."""
    found = factors_of(terms)
    factors = list(dict.fromkeys(found.factors))
    if dict(found.front.powers).get(letter):
        factors.insert(0, terms_of_letter(letter))
    values: list[Expression] = []
    cases = [write(Relation(expression_of(factor), "=", ZERO)) for factor in factors]
    if len(factors) > 1 or len(found.factors) > 1:
        working.say(" or ".join(cases))
    before = working.steps[-1].statement
    for factor in factors:
        if degree(factor) == 1:
            values.extend(_linear_root(factor, letter))
            continue
        working.say(f"{cases[factors.index(factor)]}:", uses=(before,))
        values.extend(roots_of(collected(factor), letter, working).values)
    return Roots(values)


def terms_of_letter(letter: str) -> Terms:
    """The letter alone."""
    return from_coefficients([Fraction(0), Fraction(1)], letter)


def _linear_root(factor: Terms, letter: str) -> list[Expression]:
    numbers = coefficients(collected(factor), letter)
    return [whole_or_fraction(-numbers[0] / numbers[1])]


def _linear(terms: Terms, letter: str, working: Working) -> Expression:
    numbers = coefficients(terms, letter)
    if numbers[0] and numbers[1] != 1:
        alone = from_coefficients([Fraction(0), numbers[1]], letter)
        working.say(Relation(expression_of(alone), "=", whole_or_fraction(-numbers[0])))
    (value,) = _linear_root(terms, letter)
    working.say(f"{letter} = {write(value)}")
    return value


def _pure_power(numbers: list[Fraction], letter: str, working: Working) -> list[Expression]:
    """axⁿ = k."""
    exponent, value = len(numbers) - 1, -numbers[0] / numbers[-1]
    alone = from_coefficients([Fraction(0)] * exponent + [numbers[-1]], letter)
    right = whole_or_fraction(-numbers[0])
    power = expression_of(from_coefficients([Fraction(0)] * exponent + [Fraction(1)], letter))
    working.say(Relation(expression_of(alone), "=", right))
    if numbers[-1] != 1:
        working.say(Relation(power, "=", whole_or_fraction(value)))
    if exponent == 2 and value >= 0:
        return list(by_square_root(terms_of_letter(letter), value, letter, working))
    if exponent % 2 == 0 and value < 0:
        working.say(f"{write(power)} is never negative, so there are no real roots")
        return []
    size = abs(value)
    above, below = whole_root(size.numerator, exponent), whole_root(size.denominator, exponent)
    root: Expression = (
        whole_or_fraction(Fraction(above, below)) if above is not None and below is not None
        else Root(whole_or_fraction(size), exponent)
    )  # fmt: skip
    if exponent % 2 == 0:
        working.say(f"{letter} = ±{write(root)}")
        return [Negative(root), root]
    signed = Negative(root) if value < 0 else root
    working.say(f"{letter} = {write(signed)}")
    return [_plain(signed)]


def _plain(value: Expression) -> Expression:
    if isinstance(value, Negative) and isinstance(value.operand, Number):
        return Number(-value.operand.value, value.operand.form)
    return value


def _in_squares(numbers: list[Fraction], letter: str, working: Working) -> Roots:
    """ax⁴ + bx² + c = 0 as a quadratic in u = x²."""
    name = next(other for other in "utvw" if other != letter)
    quadratic = from_coefficients(numbers[::2], name)
    working.say(f"let {name} = {letter}²: {written(quadratic)} = 0")
    values: list[Expression] = []
    for square in by_formula(numbers[::2], name, working):
        size = rational_value(square)
        if size is None:
            raise NotTerms(f"{letter}² = {write(square)}, a root within a root")
        if size >= 0:
            values.extend(by_square_root(terms_of_letter(letter), size, letter, working))
    return Roots(values)
