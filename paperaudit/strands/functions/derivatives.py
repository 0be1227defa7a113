"""Derivatives, from first principles too; tangents and normals; stationary points."""

from fractions import Fraction
from itertools import pairwise

from paperaudit.errors import NoValue
from paperaudit.maths.exact import ExactValue, NotSurd, exact_expression, exact_value
from paperaudit.maths.number_forms import whole_or_fraction
from paperaudit.maths.plane_curves import decimal_of, zeros
from paperaudit.maths.polynomial import ONE, Polynomial, algebraic_fraction
from paperaudit.maths.powers import PowerSum, power_sum, put_in
from paperaudit.maths.surd import Surd
from paperaudit.maths.write import write
from paperaudit.model.derivation import Answer, Outcome
from paperaudit.model.expression import Expression, Letter, Negative, Number, Power, Product, Sum, letters_of
from paperaudit.model.function_task import Derivative, Function, Stationary, Touching
from paperaudit.model.reading import Reading
from paperaudit.strands.algebra.root_lines import say_to_roots
from paperaudit.strands.functions.formulas import (
    at,
    confirm_derivative,
    defined,
    formula_of,
    label,
    numeric,
    slope_near,
)
from paperaudit.strands.numbers.working import Working, exact, require, with_givens
from paperaudit.strands.plane.lines import say_line, say_turned
from paperaudit.strands.plane.places import Place, fraction_text, pair_text
from paperaudit.strands.refusals import impossible

SKILL = "differentiation"
_NEAR = "gradients worked out from values close by"
_CLOSE = Fraction(1, 10**9)


def derivative(task: Derivative, reading: Reading) -> Outcome:
    """A derivative, or its value at a number."""
    function, used = defined(task.function, reading)
    if task.function.formula is None and function.letter != task.function.letter and not task.function.name:
        raise NoValue("a derivative with respect to another letter")
    working = Working(SKILL, used)
    if task.first_principles:
        result = _from_first_principles(function, working)
    elif len([name for name in letters_of(formula_of(function)) if name != "π"]) > 1:
        return _in_several_letters(function, task.order, working)
    else:
        result = say_derivatives(function, task.order, working)
    if task.at is None:
        text = write(result)
        return working.derived(Answer(text, result, kind="function"), confirmed_by=_NEAR)
    place, _ = with_givens(task.at, reading)
    value = exact_value(put_in(result, function.letter, place))
    text = write(exact_expression(value))
    put = at(Function(function.name, function.letter, result), place)
    name = label(function, task.order).replace(f"({function.letter})", f"({write(place)})")
    said = f"{function.letter} = {write(place)}: " if function.name in ("", "y") else ""
    working.say(f"{said}{name} = {write(put)} = {text}" if write(put) != text else f"{said}{name} = {text}", text)
    if task.order == 1 and isinstance(value, Fraction):
        near = slope_near(formula_of(function), function.letter, exact(place))
        require(abs(near - value) <= _CLOSE * max(Fraction(1), abs(value)), "the derivative at the number")
    return working.derived(Answer(text, exact_expression(value)), confirmed_by=_NEAR)


def say_derivatives(function: Function, order: int, working: Working) -> Expression:
    """The derivatives up to an order, each with its line, and the last of them."""
    formula, letter = formula_of(function), function.letter
    form = power_sum(formula, letter)
    result = form.expression(letter)
    if write(result) != write(formula):
        working.say(f"{label(function)} = {write(result)}", write(result))
    for count in range(1, order + 1):
        before, form = form, form.derivative()
        result = form.expression(letter)
        working.say(f"{label(function, count)} = {write(result)}", write(result))
        confirm_derivative(formula if count == 1 else before.expression(letter), result, letter)
    return result


def _in_several_letters(function: Function, order: int, working: Working) -> Outcome:
    """The derivative of a polynomial in which the other letters are constants."""
    whole = algebraic_fraction(formula_of(function))
    if whole.below != ONE:
        raise NotSurd("a quotient in several letters")
    form = whole.above
    for count in range(1, order + 1):
        form = derivative_of(form, function.letter)
        text = write(polynomial_expression(form, function.letter))
        working.say(f"{label(function, count) if function.name else 'derivative'} = {text}", text)
    result = polynomial_expression(form, function.letter)
    _confirm_several(formula_of(function), result, function.letter, order)
    return working.derived(Answer(write(result), result, kind="function"), confirmed_by=_NEAR)


def _confirm_several(before: Expression, after: Expression, letter: str, order: int) -> None:
    """Finite differences of the formula with primes put in for the other letters."""
    others = [name for name in dict.fromkeys((*letters_of(before), *letters_of(after))) if name != letter]
    for name, prime in zip(others, (2, 3, 5, 7, 11, 13, 17, 19), strict=False):
        number = whole_or_fraction(prime)
        before, after = put_in(before, name, number), put_in(after, name, number)
    for value in (Fraction(1), Fraction(3)):
        step = Fraction(1, 10**9)
        rows = [
            Fraction(numeric(before, letter, value + (place - Fraction(order, 2)) * step)) for place in range(order + 1)
        ]
        for _ in range(order):
            rows = [other - one for one, other in pairwise(rows)]
        stated = Fraction(numeric(after, letter, value))
        require(
            abs(rows[0] / step**order - stated) <= Fraction(1, 10**6) * max(Fraction(1), abs(stated)), "the derivative"
        )


def derivative_of(form: Polynomial, letter: str) -> Polynomial:
    """The derivative of a polynomial with respect to one of its letters."""
    terms = {}
    for monomial, share in form.terms.items():
        exponents = dict(monomial)
        count = exponents.pop(Letter(letter), 0)
        if count:
            if count > 1:
                exponents[Letter(letter)] = count - 1
            key = tuple(sorted(exponents.items(), key=lambda pair: write(pair[0])))
            terms[key] = share * Surd.rational(count)
    return Polynomial(terms)


def polynomial_expression(form: Polynomial, first: str) -> Expression:
    """A polynomial in several letters as it is written, the highest power of one letter first."""
    ordered = sorted(form.terms.items(), key=lambda term: (-dict(term[0]).get(Letter(first), 0), -len(term[0])))
    terms: list[Expression] = []
    for monomial, share in ordered:
        size = share.fraction
        if size is None:
            raise NotSurd("a root before a letter")
        factors: list[Expression] = [
            unknown if count == 1 else Power(unknown, Number(Fraction(count))) for unknown, count in monomial
        ]
        if abs(size) != 1 or not factors:
            factors.insert(0, whole_or_fraction(abs(size)))
        term = factors[0] if len(factors) == 1 else Product(tuple(factors))
        terms.append(Negative(term) if size < 0 else term)
    return Number(Fraction(0)) if not terms else terms[0] if len(terms) == 1 else Sum(tuple(terms))


def _from_first_principles(function: Function, working: Working) -> Expression:
    """The derivative as the limit of the gradient of a chord, for polynomials up to the third degree."""
    formula, x = formula_of(function), function.letter
    form = power_sum(formula, x)
    if not form.is_polynomial or form.degree > 3:
        raise NotSurd("first principles beyond polynomials of the third degree")
    name = function.name if function.name not in ("", "y") else "f"
    moved = put_in(formula, x, Sum((Letter(x), Letter("h"))))
    whole = algebraic_fraction(moved).above
    working.say(f"{name}({x} + h) = {write(moved)}")
    if write(polynomial_expression(whole, x)) != write(moved):
        working.say(f"= {write(polynomial_expression(whole, x))}")
    rise = whole - algebraic_fraction(formula).above
    working.say(f"{name}({x} + h) − {name}({x}) = {write(polynomial_expression(rise, x))}")
    chord = _over_h(rise)
    working.say(f"[{name}({x} + h) − {name}({x})]/h = {write(polynomial_expression(chord, x))}")
    limit = Polynomial({key: share for key, share in chord.terms.items() if Letter("h") not in dict(key)})
    result = polynomial_expression(limit, x)
    working.say(f"{name}′({x}) = limit for h → 0 = {write(result)}", write(result))
    confirm_derivative(formula, result, x)
    require(power_sum(result, x) == form.derivative(), "the derivative")
    return result


def _over_h(rise: Polynomial) -> Polynomial:
    terms = {}
    for monomial, share in rise.terms.items():
        exponents = dict(monomial)
        count = exponents.pop(Letter("h"))
        if count > 1:
            exponents[Letter("h")] = count - 1
        terms[tuple(sorted(exponents.items(), key=lambda pair: write(pair[0])))] = share
    return Polynomial(terms)


def touching(task: Touching, reading: Reading) -> Outcome:
    """The gradient of a curve at a point, or the tangent or the normal there."""
    function, used = defined(task.function, reading)
    working = Working(SKILL, used)
    x = exact(with_givens(task.x, reading)[0])
    height = exact_value(put_in(formula_of(function), function.letter, whole_or_fraction(x)))
    if not isinstance(height, Fraction):
        raise NotSurd("a point with an irrational height")
    if task.y is not None and exact(task.y) != height:
        point = pair_text(x, exact(task.y))
        lines = f"{function.letter} = {fraction_text(x)}: {label(function)} = {fraction_text(height)}"
        raise impossible((*used, point), lines, f"that {point} is on the curve is false")
    result = say_derivatives(function, 1, working)
    slope = exact_value(put_in(result, function.letter, whole_or_fraction(x)))
    if not isinstance(slope, Fraction):
        raise NotSurd("an irrational gradient")
    near = slope_near(formula_of(function), function.letter, x)
    require(abs(near - slope) <= _CLOSE * max(Fraction(1), abs(slope)), "the gradient")
    working.say(f"{function.letter} = {fraction_text(x)}: m = {fraction_text(slope)}", fraction_text(slope))
    if task.what == "gradient":
        return working.derived(Answer(fraction_text(slope), whole_or_fraction(slope)), confirmed_by=_NEAR)
    working.say(f"{function.letter} = {fraction_text(x)}: y = {fraction_text(height)}", fraction_text(height))
    turned = say_turned(slope, working) if task.what == "normal" else slope
    text = say_line(Place("", x, height), turned, working)
    return working.derived(Answer(text, kind="equation"), confirmed_by=f"{_NEAR}; the point put into the equation")


def stationary(task: Stationary, reading: Reading) -> Outcome:
    """The points where the gradient is 0, with their kind where it is asked for."""
    function, used = defined(task.function, reading)
    working = Working(SKILL, used)
    formula, x = formula_of(function), function.letter
    result = say_derivatives(function, 1, working)
    form = power_sum(result, x)
    if not form.is_polynomial:
        raise NotSurd("stationary points of a curve that is no polynomial")
    found = zeros(form)
    working.say(f"{write(result)} = 0")
    if not found:
        working.conclude("no real solution, so there are no stationary points", "none")
        return working.derived(Answer("none", kind="points"), confirmed_by="the gradient has no zero")
    say_to_roots(form.expression(x), x, working.say)
    working.say(" or ".join(f"{x} = {write(exact_expression(value))}" for value in found))
    pieces = []
    for value in found:
        at_value = exact_expression(value)
        height = exact_expression(exact_value(put_in(formula, x, at_value)))
        require(exact_value(put_in(result, x, at_value)) == 0, "a stationary point")
        working.say(f"{x} = {write(at_value)}: y = {write(height)}", write(height))
        pieces.append((pair_text(at_value, height), _nature(form, formula, x, value)))
    if not task.nature:
        text = " and ".join(pair for pair, _ in pieces)
        working.conclude(f"stationary points: {text}", text)
        return working.derived(Answer(text, kind="points"), confirmed_by=_NEAR)
    second = form.derivative().text(x)
    working.say(f"{label(function, 2)} = {second}", second)
    for value, (pair, kind) in zip(found, pieces, strict=True):
        bend = write(exact_expression(form.derivative().at(exact_expression(value), x)))
        working.say(f"{x} = {write(exact_expression(value))}: {label(function, 2)} = {bend}, {_WORDS[kind]}")
        del pair
    text = " and ".join(f"{pair} {_WORDS[kind]}" for pair, kind in pieces)
    working.conclude(text, text)
    return working.derived(Answer(text, kind="stationary points"), confirmed_by="heights on both sides of each point")


_WORDS = {"max": "maximum", "min": "minimum", "flat": "point of inflection"}


def _nature(slope: PowerSum, formula: Expression, letter: str, place: ExactValue) -> str:
    """Maximum, minimum or neither, from heights close by on both sides, compared with the second derivative."""
    middle = decimal_of(place)
    step = Fraction(1, 10**4)
    left, here, right = (Fraction(numeric(formula, letter, middle + side)) for side in (-step, Fraction(0), step))
    kind = "max" if left < here > right else "min" if left > here < right else "flat"
    bend = slope.derivative().value(middle)
    if abs(bend) > Fraction(1, 10**6):
        require(kind == ("max" if bend < 0 else "min"), "the nature of a stationary point")
    return kind
