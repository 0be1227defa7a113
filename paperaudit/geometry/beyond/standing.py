"""How a size stands in the equation of a theorem: inside a sine, cosine or tangent, or squared."""

from collections.abc import Collection, Iterator

from paperaudit.geometry.figure.figure import Size
from paperaudit.geometry.theorems.theorem import Equation, Instance
from paperaudit.model.expression import Expression, Function, Power, parts_of


def functions_in(expression: Expression) -> Iterator[Function]:
    """Every sine, cosine and tangent of an expression.

    >>> from paperaudit.model.expression import AngleAt, Function, Number, Product
    >>> [one.name for one in functions_in(Product((Number(2), Function("sin", AngleAt("A")))))]
    ['sin']
    """
    if isinstance(expression, Function):
        yield expression
    for part in parts_of(expression):
        yield from functions_in(part)


def has_function_of(source: Instance | Equation | None, angles: Collection[object]) -> bool:
    """Whether a theorem has the sine, cosine or tangent of one of these angles.

    Of an angle in letters no pupil solves that for the letters: the angle itself comes out as a number first.
    """
    if not angles or not isinstance(source, Equation):
        return False
    return any(one.argument in angles for side in (source.left, source.right) for one in functions_in(side))


def is_squared(unknown: Size, source: Instance | Equation | None) -> bool:
    """Whether a theorem has the square of a size."""

    def squared(expression: Expression) -> bool:
        if isinstance(expression, Power) and expression.base == unknown:
            return True
        return any(map(squared, parts_of(expression)))

    return isinstance(source, Equation) and (squared(source.left) or squared(source.right))
