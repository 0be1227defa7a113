"""A fact back in words, for reports: what the program took a statement to mean."""

from collections.abc import Sequence

from paperaudit.maths.write import write
from paperaudit.model.fact import (
    AngleName,
    Between,
    BisectsAngle,
    BisectsSegment,
    Centre,
    Circle,
    CirclesTouch,
    Collinear,
    Congruent,
    Crossing,
    Diameter,
    Drawn,
    Fact,
    Holds,
    Incircle,
    Inside,
    Midline,
    Midpoint,
    OnArc,
    Outside,
    Parallel,
    Perpendicular,
    RayInside,
    RoundPoint,
    Shape,
    Sides,
    Similar,
    Tangent,
)
from paperaudit.model.topic import TopicFact
from paperaudit.wording.the_circle import UNLETTERED

_POLYGONS = {
    5: "pentagon",
    6: "hexagon",
    7: "heptagon",
    8: "octagon",
    9: "nonagon",
    10: "decagon",
    12: "dodecagon",
}


def fact_text(fact: Fact) -> str:
    """The fact as a statement that reads back to it.

    >>> fact_text(Collinear(("B", "C", "D")))
    'BCD is a straight line'
    """
    match fact:
        case Shape():
            return _shape(fact)
        case Drawn(kind, path):
            return f"{kind} {''.join(path)}"
        case Collinear((start, point, end), False):
            return f"{point} lies on the line {start}{end}"
        case Collinear(points, ordered):
            return f"{''.join(points)} is a straight line" if ordered else f"{_listed(points)} are on one line"
        case Crossing(first, second, point, within):
            verb = "intersect" if within else "or their extensions meet"
            return f"{''.join(first)} and {''.join(second)} {verb} at {point}"
        case Parallel(paths):
            return " ∥ ".join(map("".join, paths))
        case Perpendicular(first, second):
            return f"{''.join(first)} ⊥ {''.join(second)}"
        case BisectsAngle(path, angle):
            return f"{''.join(path)} bisects {write(angle)}"
        case Midpoint(point, path):
            return f"{point} is the midpoint of {''.join(path)}"
        case BisectsSegment(path, segment, perpendicular):
            verb = "is the perpendicular bisector of" if perpendicular else "bisects"
            return f"{''.join(path)} {verb} {''.join(segment)}"
        case Holds(relation):
            return write(relation)
        case Congruent(first, second):
            return f"{_polygon(first)} ≡ {_polygon(second)}"
        case Similar(first, second):
            return f"{_polygon(first)} ∼ {_polygon(second)}"
        case AngleName(name, angle):
            return f"{write(name)} = {write(angle)}"
        case Circle() | Tangent() | Diameter() | Incircle():
            return _round(fact)
        case CirclesTouch() | OnArc():
            return _touching(fact) if isinstance(fact, CirclesTouch) else f"{_lie(fact.points)} on {write(fact.arc)}"
        case Centre(kind, point, polygon):
            return f"{point} is the {kind} of {_polygon(polygon)}"
        case TopicFact():
            return fact.in_words()
        case Midline(path, polygon):
            return f"{''.join(path)} is a midline of {_polygon(polygon)}"
        case _:
            return _position(fact)


def _lie(points: Sequence[str]) -> str:
    return f"{_listed(points)} {'lies' if len(points) == 1 else 'lie'}"


def _touching(fact: CirclesTouch) -> str:
    """Circles O and P touch externally at T."""
    at = f" at {fact.at}" if fact.at else ""
    if fact.inside == "second in first":
        return f"circle {fact.second} touches circle {fact.first} from inside{at}"
    return f"circles {fact.first} and {fact.second} touch {'internally' if fact.inside else 'externally'}{at}"


def _round(fact: Circle | Tangent | Diameter | Incircle) -> str:
    lettered = fact.centre and not fact.centre.startswith(UNLETTERED)
    circle = f"the circle with centre {fact.centre}" if lettered else "a circle"
    match fact:
        case Circle(centre, ()):
            return f"{centre} is the centre of the circle"
        case Circle(_, (point,)):
            return f"{point} lies on {circle}"
        case Circle(_, points):
            return f"{_listed(points)} lie on {circle}"
        case Tangent(path, at):
            return f"{''.join(path)} is a tangent to {circle} at {at}"
        case Diameter(path):
            return f"{''.join(path)} is a diameter of {circle}"
        case Incircle(_, polygon):
            return f"{circle} is inscribed in {_polygon(polygon)}"


def _position(fact: RoundPoint | Inside | Outside | RayInside | Between | Sides) -> str:
    match fact:
        case RoundPoint(centre, points):
            return f"{_listed([centre + point for point in points])} in order round {centre}"
        case Inside(point, polygon):
            return f"{point} lies inside {''.join(polygon)}"
        case Outside(point, polygon):
            return f"{point} lies outside {''.join(polygon)}"
        case RayInside(vertex, arm, point, other):
            return f"{vertex}{point} lies inside ∠{arm}{vertex}{other}"
        case Between(point, first, second):
            return f"{point} lies between {''.join(first)} and {''.join(second)}"
        case Sides(points, line, same):
            return f"{_listed(points)} lie on {'the same side' if same else 'opposite sides'} of {''.join(line)}"


def _shape(shape: Shape) -> str:
    """ABC is an isosceles triangle."""
    noun = _POLYGONS.get(len(shape.points), "polygon") if shape.kind == "polygon" else shape.kind
    words = " ".join((*shape.qualities, noun))
    return f"{''.join(shape.points)} is {'an' if words[0] in 'aeio' else 'a'} {words}"


def _polygon(points: Sequence[str]) -> str:
    return ("△" if len(points) == 3 else "") + "".join(points)


def _listed(words: Sequence[str]) -> str:
    """A, B and C."""
    *most, last = words
    return f"{', '.join(most)} and {last}" if most else last
