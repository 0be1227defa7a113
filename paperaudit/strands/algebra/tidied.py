"""Signs, noughts and ones of an expression in which numbers were put for letters."""

from fractions import Fraction

from paperaudit.model.expression import Expression, Negative, Number, Power, Product, Quotient, Sum


def tidied(expression: Expression) -> Expression:
    """1(x + −3)² + 0 as (x − 3)².

    >>> from paperaudit.maths.parse import read_expression
    >>> from paperaudit.maths.write import write
    >>> write(tidied(read_expression("1(x + (-3))^2 + 0")))
    '(x − 3)²'
    """
    match expression:
        case Sum(terms):
            kept = [term for term in map(tidied, terms) if term != Number(Fraction(0))]
            return Sum(tuple(kept)) if len(kept) > 1 else kept[0] if kept else Number(Fraction(0))
        case Number(value, form, places) if value < 0:
            return Negative(Number(-value, form, places))
        case Negative(operand):
            inner = tidied(operand)
            if inner == Number(Fraction(0)):
                return inner
            return inner.operand if isinstance(inner, Negative) else Negative(inner)
        case Product(factors, sign):
            return _product([tidied(factor) for factor in factors], sign)
        case Power(base, exponent):
            return Power(tidied(base), exponent)
        case Quotient(above, below, sign):
            return Quotient(tidied(above), below, sign)
    return expression


def _product(factors: list[Expression], sign: str) -> Expression:
    if any(factor == Number(Fraction(0)) for factor in factors):
        return Number(Fraction(0))
    minus = sum(isinstance(factor, Negative) for factor in factors) % 2
    plain = [factor.operand if isinstance(factor, Negative) else factor for factor in factors]
    plain = [factor for factor in plain if factor != Number(Fraction(1))] or [Number(Fraction(1))]
    plain.sort(key=lambda factor: not isinstance(factor, Number))
    result = (
        plain[0]
        if len(plain) == 1
        else Product(tuple(plain), "×" if sign == "×" and isinstance(plain[-1], Number) else "")
    )
    return Negative(result) if minus else result
