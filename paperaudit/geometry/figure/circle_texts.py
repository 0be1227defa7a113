"""What is shown about circles, in words: four points on one, a tangent, a diameter."""

from paperaudit.geometry.coordinates.arrangement import Arrangement
from paperaudit.geometry.figure.plane import side
from paperaudit.geometry.theorems.tangents import line_name
from paperaudit.geometry.theorems.theorem import Concyclic, IsDiameter, SegmentsEqual, Touches


def circle_text(arrangement: Arrangement, predicate: object, named: tuple[str, ...] = ()) -> str:
    """ABCD is a cyclic quadrilateral; PT is a tangent; AB is a diameter; "" for what is not about a circle.

    `named` are the points in the order in which the question names them.
    """
    match predicate:
        case SegmentsEqual():
            one, two = predicate.first, predicate.second
            return f"{one.start}{one.end} = {two.start}{two.end}"
        case Concyclic(points):
            orders = [named, *(shape.points for shape, _ in arrangement.figure.shapes)]
            for order in orders:
                if set(order) == set(points) and len(order) == 4 and _goes_round(arrangement, order):
                    return f"{''.join(order)} is a cyclic quadrilateral"
            return f"{', '.join(points[:-1])} and {points[-1]} lie on one circle"
        case IsDiameter(_, start, end):
            return f"{start}{end} is a diameter"
        case Touches(line, at, _):
            return f"{line_name(arrangement, line, at)} is a tangent to the circle at {at}"
    return ""


def _goes_round(arrangement: Arrangement, points: tuple[str, ...]) -> bool:
    """Whether the points are the corners of a convex figure in the order in which they are named."""
    spots = [arrangement.at[point] for point in points]
    turns = {side(spots[(i + 1) % len(spots)], spots[i - 1], spots[i]) > 0 for i in range(len(spots))}
    return len(turns) == 1
