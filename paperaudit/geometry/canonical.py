"""Expressions with every size under the one name that the theorems use for it."""

from paperaudit.geometry.arrangement import Arrangement
from paperaudit.geometry.figure import length
from paperaudit.model.expression import AngleOf, ArcOf, Expression, LengthOf, PerimeterOf, Sum, with_leaves


def canonical(expression: Expression, arrangement: Arrangement) -> Expression:
    """The expression with every angle and length under the name that the theorems use, perimeters as sums of sides."""

    def named(leaf: Expression) -> Expression:
        match leaf:
            case AngleOf() | ArcOf():
                return arrangement.known_as(leaf)
            case LengthOf(start, end):
                return length(start, end)
            case PerimeterOf(points):
                sides = zip(points, points[1:] + points[:1], strict=True)
                return Sum(tuple(length(start, end) for start, end in sides))
        return leaf

    return with_leaves(expression, named)
