"""How a line is shown to be a tangent and a chord a diameter."""

from collections.abc import Iterator
from itertools import combinations

from paperaudit.geometry.coordinates.arrangement import Arrangement
from paperaudit.geometry.theorems.circle_lengths import tangents_with_secants
from paperaudit.geometry.theorems.circles import SKILL, circles, is_middle, on_circle, seen
from paperaudit.geometry.theorems.points import total
from paperaudit.geometry.theorems.tangents import alternate, tangent_rays, tangents
from paperaudit.geometry.theorems.theorem import Balanced, Instance, Theorem, Touches, is_diameter
from paperaudit.maths.linear import LinearForm


def _diameter(arrangement: Arrangement) -> Iterator[Instance]:
    """A chord that a point of the circle sees under a right angle is a diameter."""
    for circle in circles(arrangement):
        for start, end in combinations(circle.points, 2):
            if not is_middle(arrangement, circle.centre, start, end):
                continue
            for eye in circle.points:
                angle = None if eye in (start, end) else seen(arrangement, start, eye, end)
                if angle:
                    diameter = is_diameter(circle.centre, start, end)
                    premises = on_circle(circle, start, end, eye)
                    about = f"chord {start}{end}"
                    yield Instance("angle-in-semicircle-converse", premises, total((angle,), 90), diameter, about, 12)


def _tangent(arrangement: Arrangement) -> Iterator[Instance]:
    """A line at right angles to a radius at its end is a tangent."""
    for circle in circles(arrangement):
        for line in tangents(arrangement, circle):
            if not isinstance(line.premise, Touches):
                continue
            for ray in tangent_rays(arrangement, line):
                angle = seen(arrangement, ray.points[0], line.at, circle.centre)
                if angle:
                    about = f"{circle.centre}{line.at} ⊥ {line.name}"
                    premises = on_circle(circle, line.at)
                    yield Instance("tangent-radius-converse", premises, total((angle,), 90), line.premise, about, 12)


def _tangent_by_chord(arrangement: Arrangement) -> Iterator[Instance]:
    """A line that makes with a chord the angle in the alternate segment is a tangent."""
    for circle in circles(arrangement):
        for line in tangents(arrangement, circle):
            if isinstance(line.premise, Touches):
                for ray in tangent_rays(arrangement, line):
                    for relation, points, about in alternate(arrangement, circle, line, ray):
                        premises = on_circle(circle, line.at, *points)
                        yield Instance("tangent-chord-converse", premises, relation, line.premise, about, 14)


def _tangent_by_secant(arrangement: Arrangement) -> Iterator[Instance]:
    """A line whose square is the product of the parts of a secant from the same point is a tangent."""
    for circle in circles(arrangement):
        for found in tangents_with_secants(arrangement, circle):
            touches = found.tangent.premise
            if isinstance(touches, Touches):
                premises = (Balanced(found.square, found.product), *on_circle(circle, found.tangent.at, *found.ends))
                yield Instance("tangent-secant-converse", premises, LinearForm(), touches, found.about, 14)


THEOREMS = (
    Theorem(
        "angle-in-semicircle-converse",
        "A chord that subtends a right angle at the circumference is a diameter.",
        SKILL,
        "Euclid III.31, converse",
        _diameter,
        fires=("circle through A, B and C", "∠ACB = 90°"),
        silent=("circle through A, B and C", "triangle ABC"),
    ),
    Theorem(
        "tangent-radius-converse",
        "A line perpendicular to a radius at its end on the circle is a tangent.",
        SKILL,
        "Euclid III.16, porism",
        _tangent,
        fires=("circle with centre O through T", "segments OT, PT", "OT ⊥ PT"),
        silent=("circle with centre O through T", "segments OT, PT"),
    ),
    Theorem(
        "tangent-chord-converse",
        "A line that makes with a chord the angle in the alternate segment is a tangent.",
        SKILL,
        "Euclid III.32, converse",
        _tangent_by_chord,
        fires=(
            "circle with centre O through T, A and B",
            "triangle TAB",
            "segment PT",
            "∠PTA = ∠TBA",
            "P and B lie on opposite sides of TA",
        ),
        silent=("circle with centre O through T, A and B", "triangle TAB", "segment PT"),
    ),
    Theorem(
        "tangent-secant-converse",
        "A line from a point outside to the circle whose square is the product of a secant's parts is a tangent.",
        SKILL,
        "Euclid III.37",
        _tangent_by_secant,
        fires=("circle with centre O through T, A and B", "P-A-B", "segment PT", "PA = 4", "AB = 5", "PT = 6"),
        silent=("circle with centre O through T, A and B", "P-A-B", "segment PT", "PA = 4", "AB = 5", "PT = 7"),
    ),
)
