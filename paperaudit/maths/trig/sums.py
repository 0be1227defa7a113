"""Functions of sums and multiples of angles by the compound-angle and double-angle formulas."""

from fractions import Fraction
from math import gcd

from paperaudit.errors import BudgetExceeded
from paperaudit.maths.trig.angles import Angle, angle_of, functions_in, with_functions
from paperaudit.model.expression import Expression, Function, Negative, Number, Power, Product, Quotient, Sum

MOST_TIMES = 4
"""A sine of more than four times an angle is no school question."""
COSINES = ("difference", "cosines", "sines")
"""cos 2x as cos² x − sin² x, as 2 cos² x − 1 or as 1 − 2 sin² x."""
_SPLIT = {15: (45, -30), 75: (45, 30), 105: (60, 45)}
_ONE, _TWO, _THREE, _FOUR = (Number(Fraction(count)) for count in (1, 2, 3, 4))


def without_sums(expression: Expression) -> Expression:
    """Every function of a sum or difference of angles by its formula; 15° and 75° as 45° ± 30°."""
    return with_functions(expression, _split)


def _split(function: Function) -> Expression:
    angle = angle_of(function.argument)
    pieces = angle.pieces()
    if len(pieces) > 1:
        first, rest = pieces[0], Angle(angle.degrees, angle.shares[1:])
    elif not angle.shares and (parts := _SPLIT.get(int(angle.degrees) if angle.degrees.denominator == 1 else -1)):
        first, rest = Angle(Fraction(parts[0])), Angle(Fraction(parts[1]))
    else:
        return function
    minus = all(share < 0 for _, share in rest.shares) and rest.degrees <= 0
    other = rest.scaled(Fraction(-1)) if minus else rest
    made = _by_formula(function.name, first, other, minus)
    return without_sums(made) if len(pieces) > 2 else made


def _by_formula(name: str, first: Angle, other: Angle, minus: bool) -> Expression:
    def of(ratio: str, angle: Angle) -> Function:
        return Function(ratio, angle.expression())  # type: ignore[arg-type]

    def joined(one: Expression, two: Expression, less: bool) -> Expression:
        return Sum((one, Negative(two) if less else two))

    if name == "tan":
        tangents = of("tan", first), of("tan", other)
        return Quotient(joined(*tangents, minus), joined(_ONE, Product(tangents), not minus))
    crossed = (("sin", "cos"), ("cos", "sin")) if name == "sin" else (("cos", "cos"), ("sin", "sin"))
    one, two = (Product((of(left, first), of(right, other))) for left, right in crossed)
    return joined(one, two, minus if name == "sin" else not minus)


def base_angles(functions: list[Function]) -> dict[str, Fraction]:
    """For each letter the angle of which all arguments are multiples: x of sin 2x and cos x, 2x of sin 2x alone."""
    found: dict[str, list[Fraction]] = {}
    for function in functions:
        for name, share in angle_of(function.argument).shares:
            found.setdefault(name, []).append(abs(share))
    return {name: _common(shares) for name, shares in found.items()}


def _common(shares: list[Fraction]) -> Fraction:
    result = shares[0]
    for share in shares[1:]:
        below = result.denominator * share.denominator
        result = Fraction(gcd(int(result * below), int(share * below)), below)
    return result


def without_multiples(expression: Expression, bases: dict[str, Fraction], cosine: str) -> Expression:
    """Functions of 2, 3 or 4 times the base angle by the formulas; `cosine` says which one of cos 2x."""

    def change(function: Function) -> Expression:
        angle = angle_of(function.argument)
        if len(angle.shares) != 1 or angle.degrees:
            return function
        ((name, share),) = angle.shares
        count = share / bases[name]
        if count == 1:
            return function
        if count.denominator != 1 or not 1 < count <= MOST_TIMES:
            raise BudgetExceeded("a large multiple of an angle")
        if count == 4:
            halved = _multiple(function.name, 2, angle.scaled(Fraction(1, 2)), cosine)
            return without_multiples(halved, bases, cosine)
        return _multiple(function.name, int(count), angle.scaled(1 / count), cosine)

    return with_functions(expression, change)


def thrice_lines(expression: Expression, bases: dict[str, Fraction]) -> tuple[Expression, ...]:
    """The lines to functions of three times an angle: as 2x + x, by the compound angle, by the double angle, in one.

    >>> from paperaudit.maths.parse import read_expression
    >>> from paperaudit.maths.write import write
    >>> [write(line) for line in thrice_lines(read_expression("sin 3x"), {"x": Fraction(1)})][:2]
    ['sin(2x + x)', 'sin 2x cos x + cos 2x sin x']
    """

    def part_of(function: Function) -> Angle | None:
        angle = angle_of(function.argument)
        if len(angle.shares) != 1 or angle.degrees or angle.shares[0][1] / bases[angle.shares[0][0]] != 3:
            return None
        return angle.scaled(Fraction(1, 3))

    def apart(function: Function) -> Expression:
        part = part_of(function)
        if part is None:
            return function
        return Function(function.name, Sum((part.scaled(_TWO.value).expression(), part.expression())))

    def joined(function: Function) -> Expression:
        part = part_of(function)
        return function if part is None else _by_formula(function.name, part.scaled(_TWO.value), part, False)

    def in_one(function: Function) -> Expression:
        part = part_of(function)
        if part is None or function.name == "tan":
            return function
        own = Function(function.name, part.expression())
        square = Power(own, _TWO)
        rest = Sum((_ONE, Negative(square)))
        if function.name == "sin":
            return Sum((Product((_TWO, own, rest)), Product((Sum((_ONE, Negative(Product((_TWO, square))))), own))))
        double = Sum((Product((_TWO, square)), Negative(_ONE)))
        return Sum((Product((double, own)), Negative(Product((_TWO, own, rest)))))

    names = {function.name for function in functions_in(expression) if part_of(function) is not None}
    if len(names) != 1:
        return ()
    second = with_functions(expression, joined)
    third = without_multiples(second, bases, "sines" if names == {"sin"} else "cosines")
    lines = (with_functions(expression, apart), second, third)
    return lines if names == {"tan"} else (*lines, with_functions(expression, in_one))


def _multiple(name: str, count: int, angle: Angle, cosine: str) -> Expression:
    sine, cosine_of, tangent = (Function(ratio, angle.expression()) for ratio in ("sin", "cos", "tan"))
    own = sine if name == "sin" else cosine_of if name == "cos" else tangent
    square, cube = Power(own, _TWO), Power(own, _THREE)
    if count == 3:
        if name == "tan":
            above = Sum((Product((_THREE, own)), Negative(cube)))
            return Quotient(above, Sum((_ONE, Negative(Product((_THREE, square))))))
        thrice, fourfold = Product((_THREE, own)), Product((_FOUR, cube))
        return Sum((thrice, Negative(fourfold)) if name == "sin" else (fourfold, Negative(thrice)))
    if name == "sin":
        return Product((_TWO, sine, cosine_of))
    if name == "tan":
        return Quotient(Product((_TWO, tangent)), Sum((_ONE, Negative(square))))
    match cosine:
        case "cosines":
            return Sum((Product((_TWO, Power(cosine_of, _TWO))), Negative(_ONE)))
        case "sines":
            return Sum((_ONE, Negative(Product((_TWO, Power(sine, _TWO))))))
    return Sum((Power(cosine_of, _TWO), Negative(Power(sine, _TWO))))
