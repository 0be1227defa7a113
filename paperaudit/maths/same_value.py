"""Whether two values are equal, exactly, in whatever form they are written."""

from decimal import Decimal
from fractions import Fraction

from paperaudit.errors import BudgetExceeded, NoValue
from paperaudit.maths.approximate import has_function, to_decimal
from paperaudit.maths.exact import NotSurd, exact_value
from paperaudit.maths.polynomial import algebraic_fraction
from paperaudit.model.expression import Expression, Letter, leaves, letters_of

APART = Decimal("1e-40")
"""Two values that differ by more, worked to 60 figures, are different; closer ones need a proof."""


def same_value(one: Expression, other: Expression) -> bool | None:
    """Whether two expressions without units have the same value for every value of their letters.

    None where it cannot be told: letters under roots, roots within roots that no proof was found for.

    >>> from paperaudit.model.expression import Number, Quotient
    >>> same_value(Quotient(Number(Fraction(1)), Number(Fraction(2))), Number(Fraction(1, 2)))
    True
    """
    if one == other:
        return True
    try:
        if has_function(one) or has_function(other):
            # A sine stands for itself in algebra, and it may be a root: 4 sin 15° = √6 − √2.
            return algebraic_fraction(one).same_as(algebraic_fraction(other)) or _same_number(one, other)
        return algebraic_fraction(one).same_as(algebraic_fraction(other))
    except NotSurd:
        return _same_number(one, other)
    except (NoValue, BudgetExceeded):
        return None


def _same_number(one: Expression, other: Expression) -> bool | None:
    if any(set(letters_of(side)) - {"π"} for side in (one, other)):
        return _same_powers(one, other)
    if any(not isinstance(leaf, Letter) and letters_of(leaf) for side in (one, other) for leaf in leaves(side)):
        return None
    try:
        apart = abs(to_decimal(one) - to_decimal(other))
        return _proved(one, other) if apart < APART else False
    except (NoValue, BudgetExceeded):
        return None


def _same_powers(one: Expression, other: Expression) -> bool | None:
    """Whether two single terms with fractions as exponents are the same; None for anything else."""
    from paperaudit.maths.algebra.indices import monomial_of
    from paperaudit.maths.algebra.terms import NotTerms

    try:
        return monomial_of(one) == monomial_of(other)
    except (NotTerms, NotSurd, NoValue, BudgetExceeded):
        return None


def _proved(one: Expression, other: Expression) -> bool | None:
    """True where algebra shows that two values with the same first 40 decimals are equal."""
    from sympy import log, radsimp, sqrtdenest, together

    from paperaudit.maths.symbolic import symbolic_value

    difference = symbolic_value(one) - symbolic_value(other)
    if difference.has(log):
        return True if together(difference).as_numer_denom()[0].expand() == 0 else None
    difference = radsimp(sqrtdenest(difference))
    return True if difference.expand() == 0 else None


def number_of(expression: Expression) -> Fraction | Decimal | None:
    """The value of a number: a fraction where it is rational, else 60 figures; None where it is no number."""
    try:
        value = exact_value(expression)
        return value if isinstance(value, Fraction) else value.to_decimal()
    except NotSurd:
        pass
    except (NoValue, BudgetExceeded):
        return None
    try:
        return to_decimal(expression)
    except (NoValue, BudgetExceeded, NotSurd):
        return None
