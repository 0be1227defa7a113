"""Products of prime factors as answers: 2³ × 3² × 5, or 2 × 2 × 2 × 3 × 3 × 5 where no index form is asked for."""

from math import prod

from paperaudit.errors import ExpressionNotRead
from paperaudit.maths.parse import read_expression
from paperaudit.maths.primes import is_prime, powers
from paperaudit.model.ask import Ask
from paperaudit.model.derivation import Agreement, Answer, Comparison
from paperaudit.model.expression import Expression, Number, Power, Product

_HIGHEST = 60


def compare_product(stated: str, derived: tuple[Answer, ...], ask: Ask) -> Comparison:
    """A product of primes in either form."""
    return _compare(stated, derived[0], index=False)


def compare_powers(stated: str, derived: tuple[Answer, ...], ask: Ask) -> Comparison:
    """A product of primes that was asked for in index form."""
    return _compare(stated, derived[0], index=True)


def _compare(stated: str, answer: Answer, index: bool) -> Comparison:
    text = stated.strip().rstrip(".").rpartition("=")[2]
    try:
        theirs = _factors(read_expression(text.replace(" x ", " × ")))
        ours = _factors(read_expression(answer.text))
    except ExpressionNotRead as error:
        return Comparison(Agreement.CANNOT_TELL, f"the stated answer was not read: {error}")
    if theirs is None or ours is None:
        return Comparison(Agreement.CANNOT_TELL, f"“{stated.strip()}” is not read as a product of numbers")
    if prod(theirs) != prod(ours):
        return Comparison(Agreement.DIFFERS, f"{prod(theirs)} is what it multiplies to, not {prod(ours)}")
    if not all(map(is_prime, theirs)):
        return Comparison(Agreement.DIFFERS, "it is equal, but not every factor is prime")
    written = read_expression(text.replace(" x ", " × "))
    if index and len(powers(theirs)) < _count(written):
        return Comparison(Agreement.DIFFERS, "it is equal, but a repeated factor is not written as a power")
    return Comparison(Agreement.AGREES)


def _count(expression: Expression) -> int:
    return sum(map(_count, expression.factors)) if isinstance(expression, Product) else 1


def _factors(expression: Expression) -> tuple[int, ...] | None:
    """The factors of a product of whole numbers and their powers; None where it is something else."""
    match expression:
        case Number(value) if value.denominator == 1 and value > 0:
            return (int(value),)
        case Power(Number(base), Number(times)) if base.denominator == times.denominator == 1 and 0 < times <= _HIGHEST:
            return (int(base),) * int(times)
        case Product(pieces):
            found = [_factors(piece) for piece in pieces]
            known = [one for one in found if one is not None]
            return tuple(number for one in known for number in one) if len(known) == len(found) else None
    return None
