"""An expression in sines, cosines and tangents, rewritten line by line as a pupil does it."""

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from itertools import product

from paperaudit.errors import NoValue
from paperaudit.maths.angle_values import exact_function
from paperaudit.maths.exact import exact_expression
from paperaudit.maths.parts import with_parts
from paperaudit.maths.polynomial import algebraic_fraction
from paperaudit.maths.surd import Surd
from paperaudit.maths.trig.angles import Angle, angle_of, functions_in, reduced_ratio, with_functions
from paperaudit.maths.trig.quotients import cancelled_powers, shortenings
from paperaudit.maths.trig.sums import COSINES, base_angles, thrice_lines, without_multiples, without_sums
from paperaudit.maths.trig.writing import as_written
from paperaudit.maths.write import write
from paperaudit.model.expression import Expression, Function, Number, Power, Product, Quotient, Root, Sum

_HALF_RIGHT = 45
MOST_POWERS = 8
Lines = tuple[Expression, ...]


@dataclass(frozen=True, slots=True)
class Chain:
    """Lines from an expression to what it comes to."""

    lines: Lines

    @property
    def end(self) -> Expression:
        """What the last line says."""
        return self.lines[-1]


def chains(expression: Expression, beside: Expression | None = None) -> tuple[Chain, ...]:
    """Ways to rewrite an expression, the shortest end first; `beside` has angles that it shall come down to too.

    Raises NotSurd and BudgetExceeded for what school identities do not reach, NoValue for tan 90°.

    >>> from paperaudit.maths.parse import read_expression
    >>> [write(line) for line in chains(read_expression("(1 - cos² x)/cos² x"))[0].lines]
    ['(1 − cos² x)/cos² x', 'sin² x/cos² x', 'tan² x']
    """
    found: dict[str, Chain] = {}
    for lines in _in_sines(expression, functions_in(beside) if beside is not None else []):
        fraction = algebraic_fraction(_multiplied_powers(lines[-1]))
        joined = _put(lines, as_written(fraction))
        fraction = cancelled_powers(fraction)
        joined = _put(joined, as_written(fraction))
        for short in shortenings(fraction):
            whole = joined
            for line in short.lines:
                whole = _put(whole, line)
            key = write(whole[-1])
            if key not in found or len(whole) < len(found[key].lines):
                found[key] = Chain(whole)
    return tuple(sorted(found.values(), key=lambda chain: (_size(chain.end), len(chain.lines))))


def _size(expression: Expression) -> tuple[int, int]:
    return len(functions_in(expression)), len(write(expression))


def _in_sines(expression: Expression, beside: list[Function]) -> Iterator[Lines]:
    """The lines up to plain sines and cosines of the base angles and numbers, by each form of cos 2x."""
    lines: Lines = (expression,)
    for change in (_with_reduced, without_sums):
        lines = _put(lines, change(lines[-1]))
    bases = base_angles([*functions_in(lines[-1]), *beside])
    halved = {name: share / 2 if share.denominator == 1 and share % 2 == 0 else share for name, share in bases.items()}
    tried: set[str] = set()
    for cosine, base in product(COSINES, (bases, halved)):
        flat = without_multiples(lines[-1], base, cosine)
        if write(flat) in tried:
            continue
        tried.add(write(flat))
        whole = lines
        for line in thrice_lines(lines[-1], base):
            whole = _put(whole, line)
        whole = _put(whole, flat)
        for change in (_with_values, _with_quotients):
            whole = _put(whole, change(whole[-1]))
        yield whole


def _put(lines: Lines, line: Expression) -> Lines:
    """The lines with one more, where it is more than the last one in another order."""
    return lines if sorted_text(line) == sorted_text(lines[-1]) else (*lines, line)


def sorted_text(expression: Expression) -> str:
    """The expression with its terms and factors in the order of the alphabet, for comparing."""
    match expression:
        case Sum(terms):
            return f"({' + '.join(sorted(map(sorted_text, terms)))})"
        case Product(factors):
            return "·".join(sorted(map(sorted_text, factors)))
        case Quotient(above, below):
            return f"{sorted_text(above)}/{sorted_text(below)}"
    return write(expression)


def _multiplied_powers(expression: Expression) -> Expression:
    """Powers of functions of numbers as products, so that sin 20° counts like a letter."""
    changed = with_parts(expression, _multiplied_powers)
    match changed:
        case Power(base, Number(count)) if functions_in(base) and count.denominator == 1 and 0 < count <= MOST_POWERS:
            return Product((base,) * int(count))
    return changed


def _with_reduced(expression: Expression) -> Expression:
    return with_functions(expression, lambda function: _to_half_right(reduced_ratio(function)))


def _to_half_right(expression: Expression) -> Expression:
    """A function of 70° as one of 20°, where neither has a value that a pupil knows."""

    def change(function: Function) -> Expression:
        angle = angle_of(function.argument)
        if angle.shares or angle.degrees <= _HALF_RIGHT or angle.degrees % 15 == 0:
            return function
        other = Angle(90 - angle.degrees).expression()
        if function.name == "tan":
            return Quotient(Number(Fraction(1)), Function("tan", other))
        return Function("cos" if function.name == "sin" else "sin", other)

    return with_functions(expression, change)


def value_of(function: Function) -> Surd | None:
    """The exact value of a function of a special angle; raises NoValue for tan 90°."""
    angle = angle_of(function.argument)
    if angle.shares or angle.degrees.denominator != 1:
        return None
    if function.name == "tan" and angle.degrees % 180 == 90:
        raise NoValue(f"{write(function)} is not defined")
    return exact_function(function.name, int(angle.degrees))


def _with_values(expression: Expression) -> Expression:
    """Special angles by their values, × between the factors of a product of numbers."""

    def change(function: Function) -> Expression:
        value = value_of(function)
        return function if value is None else exact_expression(value if value.fraction is None else value.fraction)

    changed = with_functions(expression, change)
    return _multiplied(changed) if write(changed) != write(expression) else expression


def _multiplied(expression: Expression) -> Expression:
    expression = with_parts(expression, _multiplied)
    if isinstance(expression, Product) and not expression.sign and _needs_a_sign(expression):
        return Product(expression.factors, "×")
    return expression


def _needs_a_sign(product_of: Product) -> bool:
    later = product_of.factors[1:]
    return not functions_in(product_of) or any(isinstance(factor, Quotient | Number | Root) for factor in later)


def _with_quotients(expression: Expression) -> Expression:
    """Tangents as sine over cosine."""

    def change(function: Function) -> Expression:
        if function.name != "tan":
            return function
        return Quotient(Function("sin", function.argument), Function("cos", function.argument))

    return _multiplied(with_functions(expression, change))
