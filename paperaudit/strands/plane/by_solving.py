"""Intercepts and asymptotes of curves that are no polynomials: hyperbolas, exponentials and the like."""

from collections.abc import Iterator
from dataclasses import replace
from decimal import Decimal
from fractions import Fraction

from paperaudit.errors import NoValue
from paperaudit.maths.exact import NotSurd, exact_expression, exact_value, rational_value
from paperaudit.maths.postfix import decimal_value
from paperaudit.maths.powers import power_sum, put_in
from paperaudit.maths.write import write
from paperaudit.model.ask import Solve
from paperaudit.model.derivation import Answer, Derived, Step, StepKind
from paperaudit.model.expression import (
    Expression,
    Letter,
    Negative,
    Number,
    Power,
    Product,
    Quotient,
    Relation,
    Sum,
    letters_of,
)
from paperaudit.model.reading import Reading
from paperaudit.strands.numbers.working import Working, require
from paperaudit.strands.plane.places import fraction_text, pair_text

SKILL = "graphs of functions"
_NOUGHT = Number(Fraction(0))
_CLOSE = Decimal("1e-40")
_FAR = 200


def intercepts_by_solving(relation: Relation, used: tuple[str, ...], reading: Reading, axis: str = "x") -> Derived:
    """Where a curve meets an axis: its equation with 0 for the other letter, solved as an equation."""
    from paperaudit.strands.registry import derive

    assert reading.ask is not None
    other = "y" if axis == "x" else "x"
    left, right = (put_in(side, other, _NOUGHT) for side in (relation.left, relation.right))
    at_nought = Relation(left, "=", right)
    turned = at_nought if letters_of(at_nought.left) else Relation(at_nought.right, at_nought.sign, at_nought.left)
    ask = replace(reading.ask, task=Solve((turned,), (axis,)), accuracy=None)
    _, outcome = derive(replace(reading, ask=ask, givens=()))
    if not isinstance(outcome, Derived):
        raise NotSurd(f"the solutions of {write(turned.left)} = {write(turned.right)}")
    found = [one.value for one in outcome.answers]
    head = Step(
        f"{other} = 0: {write(turned.left)} = {write(turned.right)}", StepKind.CALCULATION, None, used, "", SKILL
    )
    ways = tuple(
        replace(one, steps=(head, *_but_first(one.steps, write(turned.left))), givens_used=used)
        for one in outcome.derivations[:1]
    )
    if found == [None]:
        return Derived((Answer("none", kind="points"),), ways)
    xs = [value for value in found if value is not None]
    for x in xs:
        put = [decimal_value(put_in(put_in(side, axis, x), other, _NOUGHT)) for side in (relation.left, relation.right)]
        require(abs(put[0] - put[1]) < _CLOSE, "an intercept")
    text = " and ".join(pair_text(x, Fraction(0)) if axis == "x" else pair_text(Fraction(0), x) for x in xs)
    if len(xs) == 1:
        return Derived((Answer(text, xs[0], axis, kind="intercept"),), ways)
    return Derived((Answer(text, kind="points"),), ways)


def _but_first(steps: tuple[Step, ...], left: str) -> Iterator[Step]:
    """The lines of solving without the equation itself, which the line before has."""
    for at, step in enumerate(steps):
        if at or not step.statement.startswith(left):
            yield step


def y_intercept_by_value(relation: Relation, used: tuple[str, ...]) -> Derived:
    """Where the curve y = … meets the y-axis: its right side with 0 for x."""
    if relation.left != Letter("y"):
        raise NotSurd("an equation that is not solved for y")
    put = put_in(relation.right, "x", _NOUGHT)
    y = exact_expression(exact_value(put))
    working = Working(SKILL, used)
    working.say(f"x = 0: y = {write(put)}" + ("" if write(put) == write(y) else f" = {write(y)}"), write(y))
    require(abs(decimal_value(put) - decimal_value(y)) < _CLOSE, "the y-intercept")
    return working.derived(
        Answer(pair_text(Fraction(0), y), y, "y", kind="intercept"), confirmed_by="worked out again in decimals"
    )


def exponential_asymptote(relation: Relation, used: tuple[str, ...]) -> Derived:
    """The asymptote y = q of y = a × bˣ⁺ᵖ + q."""
    if relation.left != Letter("y"):
        raise NotSurd("an equation that is not solved for y")
    terms = relation.right.terms if isinstance(relation.right, Sum) else (relation.right,)
    growing = [term for term in terms if letters_of(term)]
    if len(growing) != 1:
        raise NoValue(f"{write(relation)} has not one term in x")
    base, slope = _base_and_slope(growing[0])
    level = sum((_number(term) for term in terms if not letters_of(term)), Fraction(0))
    working = Working(SKILL, used)
    way = "−∞" if (base > 1) == (slope > 0) else "∞"
    working.say(f"{write(growing[0]).removeprefix('−')} comes close to 0 as x → {way}")
    text = f"y = {fraction_text(level)}"
    working.conclude(text, text)
    far = Number(Fraction(-_FAR if way == "−∞" else _FAR) / slope * (1 if slope > 0 else -1))
    near = decimal_value(put_in(relation.right, "x", far))
    other = decimal_value(put_in(relation.right, "x", Number(-far.value)))
    aside = Decimal(level.numerator) / level.denominator
    require(abs(near - aside) < Decimal("1e-6") < abs(other - aside), "the asymptote")
    return working.derived(Answer(text, kind="equations"), confirmed_by="values far out on either side")


def has_x_in_exponent(expression: Expression) -> bool:
    """Whether a letter stands in an exponent."""
    match expression:
        case Power(_, exponent):
            return bool(letters_of(exponent))
        case Sum(terms):
            return any(map(has_x_in_exponent, terms))
        case Product(factors):
            return any(map(has_x_in_exponent, factors))
        case Negative(inner):
            return has_x_in_exponent(inner)
        case Quotient(above, below):
            return has_x_in_exponent(above) or has_x_in_exponent(below)
        case _:
            return False


def _number(term: Expression) -> Fraction:
    value = rational_value(term)
    if value is None:
        raise NoValue(f"{write(term)} is irrational")
    return value


def _base_and_slope(term: Expression) -> tuple[Fraction, Fraction]:
    """The base of a × bᵐˣ⁺ᵖ and the slope m of its exponent."""
    match term:
        case Negative(inner):
            return _base_and_slope(inner)
        case Product(factors):
            growing = [one for one in factors if letters_of(one)]
            if len(growing) == 1 and all(_number(one) for one in factors if one not in growing):
                return _base_and_slope(growing[0])
        case Quotient(above, below) if not letters_of(below) and _number(below):
            return _base_and_slope(above)
        case Power(base, exponent) if not letters_of(base) and letters_of(exponent) == ("x",):
            size, line = _number(base), power_sum(exponent, "x")
            if line.degree == 1 and size > 0 and size != 1 and abs(size - 1) >= Fraction(1, 10):
                return size, line.share(1)
    raise NoValue(f"{write(term)} is not of the form a × bˣ")
