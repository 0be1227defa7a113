"""What kind of equation or expression something is, in the words in which a part is refused."""

from paperaudit.errors import BudgetExceeded, NoValue
from paperaudit.maths.exact import NotSurd
from paperaudit.maths.measure import UnitClash, unit_of, without_units
from paperaudit.maths.polynomial import ONE, AlgebraicFraction, algebraic_fraction
from paperaudit.model.expression import Expression, Relation

_DEGREES = {2: "quadratic", 3: "cubic"}


def refusal_of_relation(relation: Relation) -> str:
    """Why an equation is not solved: "quadratic equations are not solved yet"; "" for a linear one.

    >>> from paperaudit.maths.parse import read_relation
    >>> refusal_of_relation(read_relation("x^2 = 9"))
    'quadratic equations are not solved yet'
    """
    if relation.sign != "=":
        return "inequalities are not solved yet"
    fractions = [_fraction(side) for side in (relation.left, relation.right)]
    if any(fraction is None for fraction in fractions):
        return "equations with a letter under a root or in an exponent are not solved yet"
    left, right = (fraction for fraction in fractions if fraction is not None)
    if left.below != ONE or right.below != ONE:
        return "equations with a letter under a fraction bar are not solved yet"
    degree = max(left.above.degree, right.above.degree)
    return f"{_named(degree)} equations are not solved yet" if degree > 1 else ""


def refusal_of_expression(expression: Expression) -> str:
    """Why an expression is not rewritten; "" for one of the first degree."""
    fraction = _fraction(expression)
    if fraction is None:
        return "expressions with a letter under a root or in an exponent are not rewritten yet"
    if fraction.below != ONE:
        return "algebraic fractions are not rewritten yet"
    degree = fraction.above.degree
    return f"{_named(degree)} expressions are not rewritten yet" if degree > 1 else ""


def _named(degree: int) -> str:
    return _DEGREES.get(degree, f"degree-{degree}")


def _fraction(side: Expression) -> AlgebraicFraction | None:
    try:
        return algebraic_fraction(without_units(side, unit_of(side)))
    except (NotSurd, NoValue, UnitClash, BudgetExceeded):
        return None
