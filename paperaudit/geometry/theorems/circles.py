"""Angles in a circle: at the centre and at the circumference, semicircle, cyclic quadrilateral."""

import math
from collections.abc import Iterator
from itertools import combinations

from paperaudit.geometry.coordinates.arrangement import Arrangement
from paperaudit.geometry.coordinates.circle_order import circles_of
from paperaudit.geometry.figure.figure import OnCircle, Ordered, Size
from paperaudit.geometry.figure.plane import side
from paperaudit.geometry.theorems.points import difference, total
from paperaudit.geometry.theorems.theorem import Instance, Predicate, Stated, Theorem, is_diameter
from paperaudit.maths.linear import LinearForm
from paperaudit.model.expression import AngleOf

SKILL = "circles"

ALIKE = 1e-6
"""Share by which two lengths of an exact drawing may differ and count as equal."""


def circles(arrangement: Arrangement) -> Iterator[OnCircle]:
    """The circles of a figure with the points that the paper puts on them."""
    yield from circles_of(arrangement.figure)


def on_circle(circle: OnCircle, *points: str) -> tuple[Predicate, ...]:
    """The premises that some points lie on a circle."""
    labels = dict.fromkeys(circle.labels[circle.points.index(point)] for point in points)
    return tuple(Stated(label) for label in labels)


def is_middle(arrangement: Arrangement, point: str, start: str, end: str) -> bool:
    """Whether a point is half way between two others in the drawing."""
    (x, y), (p, q), (r, s) = (arrangement.at[name] for name in (point, start, end))
    return math.hypot(2 * x - p - r, 2 * y - q - s) < ALIKE * math.hypot(p - r, q - s)


def together(*groups: tuple[Predicate, ...]) -> tuple[Predicate, ...]:
    """Premises of several groups, each once."""
    return tuple(dict.fromkeys(premise for group in groups for premise in group))


def seen(arrangement: Arrangement, start: str, eye: str, end: str) -> AngleOf | None:
    """The angle under which two points are seen from a third, None where an arm is not drawn or both are one line."""
    if not arrangement.joined(eye, start) or not arrangement.joined(eye, end):
        return None
    if arrangement.ray(eye, start).line == arrangement.ray(eye, end).line:
        return None
    return arrangement.corner(start, eye, end)


def same_side(arrangement: Arrangement, one: str, two: str, start: str, end: str) -> bool:
    """Whether two points lie on the same side of the line through two others, in the drawing."""
    a, b = arrangement.at[start], arrangement.at[end]
    return side(arrangement.at[one], a, b) * side(arrangement.at[two], a, b) > 0


def round_text(corners: tuple[str, ...]) -> str:
    """The corners of a polygon as one would name it: from the first letter of the alphabet, the earlier neighbour next.

    >>> round_text(("B", "A", "D", "C"))
    'ABCD'
    """
    turned = [corners[index:] + corners[:index] for index in range(len(corners))]
    return "".join(min(turned + [tuple(reversed(corner)) for corner in turned]))


def over_chord(
    arrangement: Arrangement, start: str, end: str, eyes: tuple[str, ...]
) -> Iterator[tuple[tuple[str, AngleOf], tuple[str, AngleOf], bool]]:
    """Pairs of angles under which points of a circle see a chord, and whether both are on one side of it."""
    angles = [(eye, angle) for eye in eyes if (angle := seen(arrangement, start, eye, end))]
    for one, two in combinations(angles, 2):
        yield one, two, same_side(arrangement, one[0], two[0], start, end)


def beside(arrangement: Arrangement, inner: AngleOf) -> Iterator[AngleOf]:
    """The exterior angles at a corner, where a side is produced beyond it."""
    for arm, other in ((inner.arm, inner.other), (inner.other, inner.arm)):
        beyond = arrangement.opposite(arrangement.ray(inner.vertex, arm))
        if beyond:
            yield arrangement.between(beyond, arrangement.ray(inner.vertex, other))


def circumference(
    arrangement: Arrangement, start: str, end: str, eyes: tuple[str, ...], premises: tuple[Predicate, ...] | OnCircle
) -> Iterator[Instance]:
    """Angles over one chord: equal from one side, 180° together from both, exterior and interior opposite equal."""
    for (one, here), (two, there), same in over_chord(arrangement, start, end, eyes):
        why = on_circle(premises, start, end, one, two) if isinstance(premises, OnCircle) else premises
        if same:
            yield Instance("same-segment", why, difference(here, there), about=f"arc {start}{end}")
            continue
        about = round_text((start, one, end, two))
        yield Instance("cyclic-quadrilateral", why, total((here, there), 180), about=about)
        for inner, opposite in ((here, there), (there, here)):
            for outside in beside(arrangement, inner):
                yield Instance("cyclic-quadrilateral-exterior", why, difference(outside, opposite), about=about)


def _circumference(arrangement: Arrangement) -> Iterator[Instance]:
    for circle in circles(arrangement):
        for start, end in combinations(circle.points, 2):
            eyes = tuple(eye for eye in circle.points if eye not in (start, end))
            yield from circumference(arrangement, start, end, eyes, circle)


def _centre(arrangement: Arrangement) -> Iterator[Instance]:
    """The angle at the centre is twice the angle at the circumference over the same arc."""
    for circle in circles(arrangement):
        for start, end in combinations(circle.points, 2):
            middle = seen(arrangement, start, circle.centre, end)
            if middle is None:
                continue
            for eye in circle.points:
                at_eye = None if eye in (start, end) else seen(arrangement, start, eye, end)
                if at_eye is None:
                    continue
                reflex = not same_side(arrangement, eye, circle.centre, start, end)
                whole = AngleOf(middle.arm, middle.vertex, middle.other, reflex)
                twice: LinearForm[Size] = LinearForm({at_eye: 2, whole: -1})
                premises = on_circle(circle, start, end, eye)
                yield Instance("angle-at-centre", premises, twice, about=f"arc {start}{end}")


def stated_diameters(arrangement: Arrangement, circle: OnCircle) -> Iterator[tuple[str, str, tuple[Predicate, ...]]]:
    """Pairs of points of a circle that the paper puts at the ends of a diameter, with the premises."""
    for condition in arrangement.figure.conditions:
        match condition:
            case Ordered(start, middle, end, label) if middle == circle.centre and {start, end} <= set(circle.points):
                yield start, end, (Stated(label), *on_circle(circle, start, end))


def diameters(arrangement: Arrangement, circle: OnCircle) -> Iterator[tuple[str, str, tuple[Predicate, ...]]]:
    """Pairs of points at the ends of a diameter in the drawing: as the paper says, or where it can be shown."""
    stated = {frozenset((start, end)): premises for start, end, premises in stated_diameters(arrangement, circle)}
    for start, end in combinations(circle.points, 2):
        if frozenset((start, end)) in stated:
            yield start, end, stated[frozenset((start, end))]
        elif is_middle(arrangement, circle.centre, start, end):
            yield start, end, (is_diameter(circle.centre, start, end),)


def _semicircle(arrangement: Arrangement) -> Iterator[Instance]:
    for circle in circles(arrangement):
        for start, end, premises in diameters(arrangement, circle):
            for eye in circle.points:
                angle = None if eye in (start, end) else seen(arrangement, start, eye, end)
                if angle:
                    why = together(premises, on_circle(circle, eye))
                    yield Instance("angle-in-semicircle", why, total((angle,), 90), about=f"diameter {start}{end}")


_THROUGH = ("circle with centre O through A, B and C",)
_PLAIN = ("triangle ABC",)

THEOREMS = (
    Theorem(
        "same-segment",
        "Angles in the same segment are equal.",
        SKILL,
        "Euclid III.21",
        _circumference,
        fires=("A, B, C and D lie on the circle", "segments AB, AC, BC, AD, BD"),
        silent=_PLAIN,
    ),
    Theorem(
        "cyclic-quadrilateral",
        "Opposite angles of a cyclic quadrilateral add up to 180°.",
        SKILL,
        "Euclid III.22",
        _circumference,
        fires=("ABCD is a cyclic quadrilateral",),
        silent=("quadrilateral ABCD",),
    ),
    Theorem(
        "cyclic-quadrilateral-exterior",
        "An exterior angle of a cyclic quadrilateral equals the interior opposite angle.",
        SKILL,
        "Euclid III.22, corollary",
        _circumference,
        fires=("ABCD is a cyclic quadrilateral", "AB is produced to E"),
        silent=("triangle ABC", "AB is produced to E"),
    ),
    Theorem(
        "angle-at-centre",
        "The angle at the centre is twice the angle at the circumference.",
        SKILL,
        "Euclid III.20",
        _centre,
        fires=(*_THROUGH, "segments OA, OB, CA, CB"),
        silent=(*_THROUGH, "triangle ABC"),
    ),
    Theorem(
        "angle-in-semicircle",
        "The angle in a semicircle is 90°.",
        SKILL,
        "Euclid III.31",
        _semicircle,
        fires=("circle with centre O through A, B and C", "AOB is a diameter", "segments CA, CB"),
        silent=(*_THROUGH, "triangle ABC"),
    ),
)
