"""Angles in a circle: at the centre and at the circumference, semicircle, cyclic quadrilateral."""

from collections.abc import Iterator
from fractions import Fraction
from itertools import combinations

from paperaudit.geometry.arrangement import Arrangement
from paperaudit.geometry.figure import OnCircle, Ordered, Size
from paperaudit.geometry.plane import side
from paperaudit.geometry.theorems.points import difference, total
from paperaudit.geometry.theorems.theorem import Instance, Predicate, Stated, Theorem, segments_equal
from paperaudit.maths.linear import LinearForm
from paperaudit.model.expression import AngleOf

SKILL = "circles"


def circles(arrangement: Arrangement) -> Iterator[OnCircle]:
    """The circles of a figure with the points that the paper puts on them."""
    for condition in arrangement.figure.conditions:
        if isinstance(condition, OnCircle):
            yield condition


def on_circle(circle: OnCircle, *points: str) -> tuple[Predicate, ...]:
    """The premises that some points lie on a circle."""
    labels = dict.fromkeys(circle.labels[circle.points.index(point)] for point in points)
    return tuple(Stated(label) for label in labels)


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


def _circumference(arrangement: Arrangement) -> Iterator[Instance]:
    """Angles over one chord from two points of the circle: equal from one side, 180° together from both."""
    for circle in circles(arrangement):
        for start, end in combinations(circle.points, 2):
            eyes = [
                (eye, angle)
                for eye in circle.points
                if eye not in (start, end) and (angle := seen(arrangement, start, eye, end))
            ]
            for (one, here), (two, there) in combinations(eyes, 2):
                premises = on_circle(circle, start, end, one, two)
                if same_side(arrangement, one, two, start, end):
                    yield Instance("same-segment", premises, difference(here, there), about=f"arc {start}{end}")
                else:
                    about = round_text((start, one, end, two))
                    yield Instance("cyclic-quadrilateral", premises, total((here, there), 180), about=about)


def _exterior(arrangement: Arrangement) -> Iterator[Instance]:
    for instance in _circumference(arrangement):
        if instance.theorem != "cyclic-quadrilateral":
            continue
        angles = [size for size in instance.relation.terms if isinstance(size, AngleOf)]
        for inner, opposite in (angles, angles[::-1]) if len(angles) == 2 else ():
            for arm, other in ((inner.arm, inner.other), (inner.other, inner.arm)):
                beyond = arrangement.opposite(arrangement.ray(inner.vertex, arm))
                if beyond:
                    outside = arrangement.between(beyond, arrangement.ray(inner.vertex, other))
                    yield Instance(
                        "cyclic-quadrilateral-exterior",
                        instance.premises,
                        difference(outside, opposite),
                        about=instance.about,
                    )


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
                twice: LinearForm[Size] = LinearForm({at_eye: Fraction(2), whole: Fraction(-1)})
                premises = on_circle(circle, start, end, eye)
                yield Instance("angle-at-centre", premises, twice, about=f"arc {start}{end}")


def diameters(arrangement: Arrangement, circle: OnCircle) -> Iterator[tuple[str, str, tuple[Predicate, ...]]]:
    """Pairs of points of a circle that the paper puts at the ends of a diameter, with the premises."""
    for condition in arrangement.figure.conditions:
        match condition:
            case Ordered(start, middle, end, label) if middle == circle.centre and {start, end} <= set(circle.points):
                yield start, end, (Stated(label), *on_circle(circle, start, end))


def _semicircle(arrangement: Arrangement) -> Iterator[Instance]:
    for circle in circles(arrangement):
        for start, end, premises in diameters(arrangement, circle):
            for eye in circle.points:
                angle = None if eye in (start, end) else seen(arrangement, start, eye, end)
                if angle:
                    why = tuple(dict.fromkeys((*premises, *on_circle(circle, eye))))
                    yield Instance("angle-in-semicircle", why, total((angle,), 90), about=f"diameter {start}{end}")


def _equal_chords(arrangement: Arrangement) -> Iterator[Instance]:
    """Equal chords and equal angles at the centre go together, both ways."""
    for circle in circles(arrangement):
        chords = [
            (pair, angle)
            for pair in combinations(circle.points, 2)
            if (angle := seen(arrangement, pair[0], circle.centre, pair[1]))
        ]
        for (one, here), (two, there) in combinations(chords, 2):
            equal = segments_equal(one, two)
            premises = on_circle(circle, *one, *two)
            about = f"{''.join(one)} = {''.join(two)}"
            yield Instance("equal-chords-angles", (equal, *premises), difference(here, there), about=about)
            yield Instance("equal-chords-angles", premises, difference(here, there), equal, about)


def _chord_middle(arrangement: Arrangement) -> Iterator[Instance]:
    """The line from the centre to a chord: perpendicular to it exactly if it halves it."""
    for circle in circles(arrangement):
        for start, end in combinations(circle.points, 2):
            if not arrangement.joined(start, end):
                continue
            chord = arrangement.lines[arrangement.ray(start, end).line]
            low, high = sorted((chord.index(start), chord.index(end)))
            for foot in chord[low + 1 : high]:
                upright = seen(arrangement, circle.centre, foot, start)
                if upright is None:
                    continue
                halves, premises = segments_equal((start, foot), (foot, end)), on_circle(circle, start, end)
                about = f"chord {start}{end}"
                right = total((upright,), 90)
                yield Instance("centre-perpendicular-chord", premises, right, halves, about)
                yield Instance("centre-midpoint-chord", (halves, *premises), right, about=about)


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
        _exterior,
        fires=("ABCD is a cyclic quadrilateral", "AB is produced to E"),
        silent=("ABCD is a cyclic quadrilateral",),
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
    Theorem(
        "equal-chords-angles",
        "Equal chords subtend equal angles at the centre.",
        SKILL,
        "Euclid III.26 to III.29",
        _equal_chords,
        fires=("circle with centre O through A, B, C and D", "segments OA, OB, OC, OD", "AB = CD"),
        silent=(*_THROUGH, "triangle ABC"),
    ),
    Theorem(
        "centre-perpendicular-chord",
        "The perpendicular from the centre bisects the chord.",
        SKILL,
        "Euclid III.3",
        _chord_middle,
        fires=("circle with centre O through A and B", "M lies on AB", "OM ⊥ AB"),
        silent=(*_THROUGH, "triangle ABC"),
    ),
    Theorem(
        "centre-midpoint-chord",
        "The line from the centre to the mid-point of a chord is perpendicular to it.",
        SKILL,
        "Euclid III.3",
        _chord_middle,
        fires=("circle with centre O through A and B", "M is the midpoint of AB", "segment OM"),
        silent=(*_THROUGH, "triangle ABC"),
    ),
)
