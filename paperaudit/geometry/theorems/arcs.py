"""Arcs in degrees: they add, and go with angles at the centre, at the circumference, and with chords.

They are sizes of a figure only where the paper names one, or where nothing else leads on (`Figure.arcs`).
"""

from collections.abc import Iterator
from fractions import Fraction
from itertools import combinations, product

from paperaudit.geometry.coordinates.arrangement import Arrangement
from paperaudit.geometry.coordinates.circle_order import Round
from paperaudit.geometry.figure.figure import OnCircle, Size, SizeRelation
from paperaudit.geometry.theorems.chords import chord_text, equal_chords
from paperaudit.geometry.theorems.circles import circles, diameters, on_circle, seen, together
from paperaudit.geometry.theorems.parallels import parallel_text
from paperaudit.geometry.theorems.points import difference
from paperaudit.geometry.theorems.theorem import Instance, Stated, Theorem, lines_parallel, segments_equal
from paperaudit.maths.linear import LinearForm
from paperaudit.maths.write import write
from paperaudit.model.expression import AngleOf, ArcOf

SKILL = "arcs of circles"

MOST_ROUND = 8
"""Circles with more named points than this are cut into two arcs or three, not into more."""


def with_arcs(arrangement: Arrangement) -> Iterator[tuple[OnCircle, Round]]:
    """The circles whose arcs are sizes of the figure, with the order of their points."""
    for circle in circles(arrangement) if arrangement.figure.arcs else ():
        if circle.key in arrangement.rounds:
            yield circle, arrangement.rounds[circle.key]


def arc_text(arrangement: Arrangement, size: ArcOf) -> str:
    """Arc AB, as the paper names it."""
    return write(arrangement.name(size))


def half_of(angle: AngleOf, *arcs: tuple[ArcOf, int]) -> LinearForm[Size]:
    """The relation that an angle is half the sum of some arcs, or of their difference."""
    form: LinearForm[Size] = LinearForm({angle: 2})
    for size, share in arcs:
        form = form.plus(LinearForm.of(size), Fraction(-share))
    return form


def sum_of_arcs(arcs: list[ArcOf], whole: ArcOf | None = None) -> LinearForm[Size]:
    """The relation that arcs add up to another one, or to the whole circle."""
    form: LinearForm[Size] = LinearForm.number(0 if whole else -360)
    for size in arcs:
        form = form + LinearForm.of(size)
    return form - LinearForm.of(whole) if whole else form


def _centre(arrangement: Arrangement) -> Iterator[Instance]:
    """An arc is the angle at the centre that it subtends, the major one the reflex angle."""
    for circle, order in with_arcs(arrangement):
        for start, end in combinations(order.points, 2):
            middle = seen(arrangement, start, circle.centre, end)
            if middle is None:
                continue
            premises = on_circle(circle, start, end)
            for size in (order.arc(start, end), order.arc(end, start)):
                angle = AngleOf(middle.arm, middle.vertex, middle.other, size.major)
                about = arc_text(arrangement, size)
                yield Instance(
                    "arc-angle-at-centre", premises, difference(size, angle), None, about, 8 + 2 * size.major
                )


def _circumference(arrangement: Arrangement) -> Iterator[Instance]:
    """An angle at the circumference is half the arc that it stands on."""
    for circle, order in with_arcs(arrangement):
        for start, end in combinations(order.points, 2):
            for eye in order.points:
                angle = None if eye in (start, end) else seen(arrangement, start, eye, end)
                if angle:
                    beyond = eye in order.inside(start, end)
                    size = order.arc(end, start) if beyond else order.arc(start, end)
                    premises = on_circle(circle, start, end, eye)
                    yield Instance(
                        "inscribed-angle-arc", premises, half_of(angle, (size, 1)), about=arc_text(arrangement, size)
                    )


def _addition(arrangement: Arrangement) -> Iterator[Instance]:
    """Neighbouring arcs make up a larger one."""
    for _, order in with_arcs(arrangement):
        for start in order.points:
            for end in order.points:
                for middle in order.inside(start, end) if start != end else ():
                    parts = [order.arc(start, middle), order.arc(middle, end)]
                    yield Instance("arc-addition", (), sum_of_arcs(parts, order.arc(start, end)), weight=8)


def _whole(arrangement: Arrangement) -> Iterator[Instance]:
    """The arcs into which points cut a circle add up to 360°; those of a diameter are 180° each."""
    for _, order in with_arcs(arrangement):
        most = 5 if len(order.points) <= MOST_ROUND else 3
        for count in range(2, most + 1):
            for chosen in combinations(order.points, count):
                arcs = [order.arc(a, b) for a, b in zip(chosen, chosen[1:] + chosen[:1], strict=True)]
                yield Instance("arcs-round-circle", (), sum_of_arcs(arcs), None, "", 10 + 2 * (count - 2))


def _semicircle(arrangement: Arrangement) -> Iterator[Instance]:
    for circle, order in with_arcs(arrangement):
        for start, end, premises in diameters(arrangement, circle):
            for size in dict.fromkeys((order.arc(start, end), order.arc(end, start))):
                half = LinearForm[Size].of(size) - LinearForm.number(180)
                yield Instance("semicircle-arc", premises, half, None, f"diameter {start}{end}", 8)


def _equal(arrangement: Arrangement) -> Iterator[Instance]:
    """Equal chords and equal arcs go together."""
    for circle, order in with_arcs(arrangement):
        for one, two in equal_chords(arrangement, circle):
            here, there = (min((order.arc(a, b), order.arc(b, a)), key=arrangement.measured) for a, b in (one, two))
            equal, premises = segments_equal(one, two), on_circle(circle, *one, *two)
            about = chord_text(one, two)
            yield Instance("equal-chords-arcs", (equal, *premises), difference(here, there), None, about)
            yield Instance("equal-arcs-chords", premises, difference(here, there), equal, about)


def _equal_angles(arrangement: Arrangement) -> Iterator[Instance]:
    """Angles on arcs that the paper says to be equal are equal; on neighbouring arcs each is half of both together."""
    for circle, order in with_arcs(arrangement):
        for one, two, label in _stated_equal(arrangement, circle):
            about = f"{arc_text(arrangement, one)} = {arc_text(arrangement, two)}"
            (a, b), (c, d) = order.ends(one), order.ends(two)
            for eye, other in (*product(order.points, repeat=2), (circle.centre, circle.centre)):
                here, there = (_from_outside(arrangement, order, *ends) for ends in ((a, eye, b), (c, other, d)))
                if not here or not there:
                    continue
                on = on_circle(circle, *(point for point in (a, b, c, d, eye, other) if point in circle.points))
                premises = together((Stated(label),), on)
                equal = Instance("equal-arcs-angles", premises, difference(here, there), None, about)
                yield equal
                outer = sorted({a, b} ^ {c, d})
                both = seen(arrangement, outer[0], eye, outer[1]) if len(outer) == 2 and eye == other else None
                if both and eye != circle.centre:
                    twice: LinearForm[Size] = LinearForm({here: 2, both: -1})
                    yield Instance("adjacent-angles", premises, twice, None, "", 12, "", equal)


def _from_outside(arrangement: Arrangement, order: Round, start: str, eye: str, end: str) -> AngleOf | None:
    """The angle that stands on the arc from `start` to `end`, None where the eye is on it or an arm is not drawn."""
    if eye in (start, end, *order.inside(start, end)):
        return None
    return seen(arrangement, start, eye, end)


def _stated_equal(arrangement: Arrangement, circle: OnCircle) -> Iterator[tuple[ArcOf, ArcOf, int]]:
    for condition in arrangement.figure.conditions:
        if isinstance(condition, SizeRelation) and not condition.form.constant and len(condition.form.terms) == 2:
            (one, first), (two, second) = condition.form.terms.items()
            arcs = isinstance(one, ArcOf) and isinstance(two, ArcOf) and first == -second
            if arcs and one.centre == two.centre == circle.key:  # type: ignore[union-attr]
                yield one, two, condition.label  # type: ignore[misc]


def _parallel(arrangement: Arrangement) -> Iterator[Instance]:
    """Parallel chords cut off equal arcs between them, and chords that do are parallel."""
    for circle, order in with_arcs(arrangement):
        drawn = [pair for pair in combinations(order.points, 2) if arrangement.joined(*pair)]
        for (a, b), (c, d) in combinations(drawn, 2):
            lines = (arrangement.ray(a, b).line, arrangement.ray(c, d).line)
            way = arrangement.parallel_way(*lines)
            if {a, b} & {c, d} or lines[0] == lines[1] or not way:
                continue
            first, last = (b, a) if c in order.inside(a, b) else (a, b)
            near, far = sorted((c, d), key=lambda point, last=last: order.turn(last, point))  # type: ignore[misc]
            between = difference(order.arc(last, near), order.arc(far, first))
            parallel, premises = lines_parallel(*lines), on_circle(circle, a, b, c, d)
            about = parallel_text(arrangement, *lines, way)
            yield Instance("parallel-chords-arcs", (parallel, *premises), between, None, about, 12)
            yield Instance("parallel-chords-arcs-converse", premises, between, parallel, about, 12)


_THROUGH = ("circle with centre O through A, B and C",)
_NAMED = (*_THROUGH, "arc AB = arc BC")
_PLAIN = (*_THROUGH, "triangle ABC")
_FOUR = ("circle through A, B, C and D", "arc AB = 80°")

THEOREMS = (
    Theorem(
        "arc-angle-at-centre",
        "An arc has as many degrees as the angle at the centre that stands on it.",
        SKILL,
        "Euclid III.26 and III.27 (the measure itself: common practice)",
        _centre,
        fires=(*_NAMED, "segments OA, OB"),
        silent=_PLAIN,
    ),
    Theorem(
        "inscribed-angle-arc",
        "An angle at the circumference is half the arc that it stands on.",
        SKILL,
        "Euclid III.20",
        _circumference,
        fires=(*_NAMED, "triangle ABC"),
        silent=_PLAIN,
    ),
    Theorem(
        "arc-addition",
        "An arc is the sum of the neighbouring arcs that it is made of.",
        SKILL,
        "Euclid, common notion 2",
        _addition,
        fires=_NAMED,
        silent=_PLAIN,
    ),
    Theorem(
        "arcs-round-circle",
        "The arcs of a whole circle add up to 360°.",
        SKILL,
        "Euclid I.15, porism",
        _whole,
        fires=_NAMED,
        silent=_PLAIN,
    ),
    Theorem(
        "semicircle-arc",
        "A diameter cuts a circle into two arcs of 180°.",
        SKILL,
        "Euclid I, definitions 17 and 18",
        _semicircle,
        fires=(*_NAMED, "AC is a diameter of the circle"),
        silent=_NAMED,
    ),
    Theorem(
        "equal-chords-arcs",
        "Equal chords cut off equal arcs.",
        SKILL,
        "Euclid III.28",
        _equal,
        fires=(*_FOUR, "AB = CD"),
        silent=_PLAIN,
    ),
    Theorem(
        "equal-arcs-chords",
        "Equal arcs have equal chords.",
        SKILL,
        "Euclid III.29",
        _equal,
        fires=_NAMED,
        silent=_PLAIN,
    ),
    Theorem(
        "equal-arcs-angles",
        "Equal arcs subtend equal angles.",
        SKILL,
        "Euclid III.27",
        _equal_angles,
        fires=("circle through A, B, C and D", "arc AB = arc CD", "segments AD, BD, BC"),
        silent=_PLAIN,
    ),
    Theorem(
        "parallel-chords-arcs",
        "Parallel chords cut off equal arcs between them.",
        SKILL,
        "Euclid I.29 with III.26",
        _parallel,
        fires=(*_FOUR, "AB ∥ CD"),
        silent=_FOUR,
    ),
    Theorem(
        "parallel-chords-arcs-converse",
        "Chords that cut off equal arcs between them are parallel.",
        SKILL,
        "Euclid III.27 with I.27",
        _parallel,
        fires=(*_FOUR, "AB ∥ CD"),
        silent=_FOUR,
    ),
)
