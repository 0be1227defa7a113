"""A second, independent evaluator: postfix order, on a stack, in decimals of eighty figures."""

from collections.abc import Iterator
from decimal import Context, Decimal, DivisionByZero, InvalidOperation, Overflow
from typing import Literal, TypeAlias

from paperaudit.errors import BudgetExceeded, NoValue
from paperaudit.model.expression import (
    Absolute,
    Euler,
    Expression,
    Function,
    FunctionName,
    Letter,
    Logarithm,
    Measured,
    Negative,
    Number,
    Of,
    Power,
    Product,
    Quotient,
    Root,
    Sum,
)

DIGITS = 80
CLOSE = Decimal("1e-50")
"""Two values of the same thing, worked on eighty figures, differ by less, relative to their size."""

_MAX_EXPONENT = 5000
_PI = Decimal("3.14159265358979323846264338327950288419716939937510582097494459230781640628620899862803482534211706798")
_E = Decimal("2.71828182845904523536028747135266249775724709369995957496696762772407663035354759457138217852516642743")
Operation: TypeAlias = Literal["+", "×", "÷", "^", "√", "−", "log", "|"] | FunctionName
Token: TypeAlias = Decimal | tuple[Operation, int]


def postfix(expression: Expression) -> Iterator[Token]:
    """Numbers and operations, each operation behind its operands and with their count.

    >>> from fractions import Fraction
    >>> [str(token) for token in postfix(Negative(Number(Fraction(2))))]
    ['2', "('−', 1)"]
    """
    match expression:
        case Number(value):
            yield _context().divide(Decimal(value.numerator), Decimal(value.denominator))
        case Letter("π"):
            yield _PI
        case Euler():
            yield _E
        case Logarithm(argument, base):
            yield from postfix(argument)
            yield from postfix(base)
            yield "log", 2
        case Absolute(operand):
            yield from postfix(operand)
            yield "|", 1
        case Negative(operand):
            yield from postfix(operand)
            yield "−", 1
        case Sum(parts) | Product(parts):
            for part in parts:
                yield from postfix(part)
            yield "+" if isinstance(expression, Sum) else "×", len(parts)
        case Of(left, right) | Quotient(left, right) | Power(left, right):
            yield from postfix(left)
            yield from postfix(right)
            yield "×" if isinstance(expression, Of) else "÷" if isinstance(expression, Quotient) else "^", 2
        case Root(radicand, degree):
            yield from postfix(radicand)
            yield Decimal(degree)
            yield "√", 2
        case Function(name, argument):
            degrees = isinstance(argument, Measured) and argument.unit == "°"
            yield from postfix(argument.amount if isinstance(argument, Measured) and degrees else argument)
            yield name, 1
        case _:
            raise NoValue("a letter, a quantity or a unit in a calculation")


def decimal_value(expression: Expression) -> Decimal:
    """The value of an expression of numbers to some seventy figures; raises NoValue and BudgetExceeded.

    >>> from fractions import Fraction
    >>> str(decimal_value(Root(Number(Fraction(16)))))
    '4'
    """
    stack: list[Decimal] = []
    try:
        for token in postfix(expression):
            if isinstance(token, Decimal):
                stack.append(token)
                continue
            operation, count = token
            operands = stack[-count:]
            del stack[-count:]
            stack.append(_apply(operation, operands))
    except DivisionByZero:
        raise NoValue("a division by nought") from None
    except InvalidOperation:
        raise NoValue("an even root of a negative number, or nought over nought") from None
    except Overflow:
        raise BudgetExceeded("a number with thousands of digits") from None
    return stack[-1]


def _apply(operation: Operation, operands: list[Decimal]) -> Decimal:
    context = _context()
    first = operands[0]
    match operation:
        case "−":
            return context.minus(first)
        case "+":
            for other in operands[1:]:
                first = context.add(first, other)
            return first
        case "×":
            for other in operands[1:]:
                first = context.multiply(first, other)
            return first
        case "÷":
            return context.divide(first, operands[1])
        case "|":
            return abs(first)
        case "log":
            if first <= 0 or operands[1] <= 0:
                raise NoValue("a logarithm of a number, or to a base, that is not positive")
            return context.divide(context.ln(first), context.ln(operands[1]))
        case "^":
            if abs(operands[1]) > _MAX_EXPONENT:
                raise BudgetExceeded("a power with hundreds of digits")
            return context.power(first, operands[1])
    if len(operands) == 1:
        return _function(operation, first)
    degree = operands[1]
    if degree == 2:
        return context.sqrt(first)
    if first < 0 and degree % 2:
        return -context.power(-first, context.divide(Decimal(1), degree))
    return context.power(first, context.divide(Decimal(1), degree))


def _function(name: str, value: Decimal) -> Decimal:
    """A sine, cosine or tangent of degrees, or the degrees that have one; mpmath works it out."""
    import mpmath

    with mpmath.workdps(DIGITS):
        number, turn = mpmath.mpf(str(value)), mpmath.pi / 180
        if name in ("sin", "cos", "tan"):
            result = getattr(mpmath, name)(number * turn)
        else:
            result = {"sin⁻¹": mpmath.asin, "cos⁻¹": mpmath.acos, "tan⁻¹": mpmath.atan}[name](number) / turn
        if not isinstance(result, mpmath.mpf):
            raise NoValue(f"{name} of a number beyond 1")
        return Decimal(mpmath.nstr(result, DIGITS))


def agree(one: Decimal, other: Decimal) -> bool:
    """Whether two results can be the same number."""
    return abs(one - other) <= CLOSE * max(abs(one), abs(other), Decimal(1))


def _context() -> Context:
    return Context(prec=DIGITS, Emax=100_000, Emin=-100_000)
