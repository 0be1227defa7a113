"""Expressions with letters under roots or in exponents compared for positive values of their letters."""

from decimal import Decimal
from fractions import Fraction

from paperaudit.errors import BudgetExceeded, NoValue
from paperaudit.maths.algebra.indices import monomial_of
from paperaudit.maths.algebra.terms import NotTerms
from paperaudit.maths.approximate import to_decimal
from paperaudit.maths.exact import NotSurd
from paperaudit.maths.same_value import same_value
from paperaudit.model.expression import Expression, Letter, Number, letters_of, with_leaves

_CLOSE = Decimal("1e-38")
_TRIED, _ENOUGH = 24, 8


def same_for_positive(one: Expression, other: Expression) -> bool | None:
    """Whether two expressions are equal for positive letters, None where too few values could be compared.

    >>> from paperaudit.maths.parse import read_expression
    >>> same_for_positive(read_expression("√(4x^2 y)"), read_expression("2x√y"))
    True
    """
    same = same_value(one, other)
    if same is not None:
        return same
    try:
        return monomial_of(one) == monomial_of(other)
    except (NotTerms, NoValue, BudgetExceeded, NotSurd):
        pass
    letters = sorted({*letters_of(one), *letters_of(other)} - {"π"})
    tried = 0
    for place in range(_TRIED):
        values = {
            name: Fraction(3 + (5 * place + 13 * at) % 37, 2 + (place + at) % 4) for at, name in enumerate(letters)
        }
        sizes = [_size(side, values) for side in (one, other)]
        if sizes[0] is None or sizes[1] is None:
            continue
        tried += 1
        if abs(sizes[0] - sizes[1]) > _CLOSE * max(Decimal(1), abs(sizes[0])):
            return False
    return True if tried >= _ENOUGH else None


def _size(expression: Expression, values: dict[str, Fraction]) -> Decimal | None:
    def put_in(leaf: Expression) -> Expression:
        return Number(values[leaf.name]) if isinstance(leaf, Letter) and leaf.name in values else leaf

    try:
        return to_decimal(with_leaves(expression, put_in))
    except (NoValue, NotSurd, BudgetExceeded):
        return None
