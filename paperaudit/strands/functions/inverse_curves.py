"""Inverses of exponential functions and of logarithms: x = 2^y is y = log₂ x."""

from decimal import Decimal
from fractions import Fraction

from paperaudit.maths.near import near_value
from paperaudit.maths.powers import put_in
from paperaudit.maths.write import write
from paperaudit.model.expression import Expression, Letter, Logarithm, Number, Power
from paperaudit.model.function_task import Function
from paperaudit.strands.functions.formulas import formula_of
from paperaudit.strands.numbers.working import Working, require

_TRIED = (Fraction(1, 2), Fraction(2), Fraction(7, 3))
_CLOSE = Decimal("1e-15")


def swapped(function: Function) -> Expression | None:
    """The formula of the inverse of bˣ or log_b x; None for any other function."""
    match formula_of(function):
        case Power(Number(value) as base, Letter(name)) if name == function.letter and 0 < value != 1:
            return Logarithm(Letter(name), base)
        case Logarithm(Letter(name), Number() as base) if name == function.letter:
            return Power(base, Letter(name))
    return None


def say_swapped(function: Function, result: Expression, working: Working) -> Expression:
    """The lines from y = f(x) to the inverse: the letters change places, and y is made the subject."""
    formula, x = formula_of(function), function.letter
    y = "y" if x != "y" else "x"
    working.say(f"{y} = {write(formula)}")
    working.say(f"{x} = {write(put_in(formula, x, Letter(y)))}")
    working.say(f"{y} = {write(result)}", write(result))
    for number in _TRIED:
        forth = near_value(formula, {x: number})
        back = near_value(result, {x: Fraction(forth)})
        require(abs(back - Decimal(number.numerator) / number.denominator) < _CLOSE, "the inverse")
    return result
