"""Triangles: angle sum, exterior angle, isosceles and its converse, equilateral, the isosceles median."""

from collections.abc import Iterator

from paperaudit.geometry.coordinates.arrangement import Arrangement
from paperaudit.geometry.figure.figure import RayBetween, Size, SizeRelation
from paperaudit.geometry.theorems.points import difference, total
from paperaudit.geometry.theorems.theorem import Instance, Stated, Theorem, segments_equal
from paperaudit.maths.linear import LinearForm
from paperaudit.model.expression import AngleOf


def _corners(arrangement: Arrangement, a: str, b: str, c: str) -> tuple[AngleOf, AngleOf, AngleOf]:
    return arrangement.corner(c, a, b), arrangement.corner(a, b, c), arrangement.corner(b, c, a)


def triangle_text(arrangement: Arrangement, corners: tuple[str, ...]) -> str:
    """△ABC, with the letters as a named shape has them, else in the order of the alphabet."""
    for shape, _ in arrangement.figure.shapes:
        if len(shape.points) == 3 and set(shape.points) == set(corners):
            return "△" + "".join(shape.points)
    return "△" + "".join(sorted(corners))


def _angle_sum(arrangement: Arrangement) -> Iterator[Instance]:
    for triangle in arrangement.triangles:
        parts = _corners(arrangement, *triangle.corners)
        yield Instance("angle-sum-triangle", (), total(parts, 180), about=triangle_text(arrangement, triangle.corners))


def exterior_angles(arrangement: Arrangement, a: str, b: str, c: str) -> Iterator[AngleOf]:
    """The exterior angles at `a` of triangle abc that are drawn: beyond b–a and beyond c–a."""
    for behind, other in ((b, c), (c, b)):
        beyond = arrangement.opposite(arrangement.ray(a, behind))
        if beyond:
            yield arrangement.between(beyond, arrangement.ray(a, other))


def _exterior(arrangement: Arrangement) -> Iterator[Instance]:
    for triangle in arrangement.triangles:
        for a, b, c in triangle.turned():
            _, at_b, at_c = _corners(arrangement, a, b, c)
            for outside in exterior_angles(arrangement, a, b, c):
                relation = total((at_b, at_c), 0) - LinearForm.of(outside)
                about = triangle_text(arrangement, triangle.corners)
                yield Instance("exterior-angle-triangle", (), relation, about=about)


def _base_angles(arrangement: Arrangement) -> Iterator[Instance]:
    for _, (a, b, c) in arrangement.apexes:
        _at_a, at_b, at_c = _corners(arrangement, a, b, c)
        equal = (segments_equal((a, b), (a, c)),)
        about = f"{a}{b} = {a}{c}"
        yield Instance("isosceles-base-angles", equal, difference(at_b, at_c), about=about)


def _base_from_apex(arrangement: Arrangement) -> Iterator[Instance]:
    """Both base angles at one stroke, from the apex or from the exterior angle at it, as pupils write it."""
    for triangle, (a, b, c) in arrangement.apexes:
        at_a, at_b, at_c = _corners(arrangement, a, b, c)
        equal = (segments_equal((a, b), (a, c)),)
        lead = Instance("isosceles-base-angles", equal, difference(at_b, at_c), about=f"{a}{b} = {a}{c}")
        about = triangle_text(arrangement, triangle.corners)
        for base in (at_b, at_c):
            double: LinearForm[Size] = LinearForm({base: 2})
            whole = double + total((at_a,), 180)
            yield Instance("angle-sum-triangle", equal, whole, about=about, weight=20, lead=lead)
            for outside in exterior_angles(arrangement, a, b, c):
                relation = double - LinearForm.of(outside)
                yield Instance("exterior-angle-triangle", equal, relation, about=about, weight=21, lead=lead)


def _stated_forms(arrangement: Arrangement) -> dict[LinearForm[Size], list[int]]:
    """What the givens say of angles, by form, with the labels of those that say it."""
    found: dict[LinearForm[Size], list[int]] = {}
    for condition in arrangement.figure.conditions:
        if isinstance(condition, SizeRelation) and condition.kind == "angle":
            found.setdefault(arrangement.canonical_form(condition.form), []).append(condition.label)
    return found


def _isosceles_converse(arrangement: Arrangement) -> Iterator[Instance]:
    stated = _stated_forms(arrangement)
    for triangle, (a, b, c) in arrangement.apexes:
        _, at_b, at_c = _corners(arrangement, a, b, c)
        conclusion = segments_equal((a, b), (a, c))
        about = f"in {triangle_text(arrangement, triangle.corners)}"
        equal = difference(at_b, at_c)
        yield Instance("isosceles-converse", (), equal, conclusion, about)
        for label in sorted({*stated.get(equal, ()), *stated.get(difference(at_c, at_b), ())}):
            yield Instance("isosceles-converse", (Stated(label),), LinearForm(), conclusion, about)


def _equilateral(arrangement: Arrangement) -> Iterator[Instance]:
    for triangle in arrangement.triangles:
        a, b, c = triangle.corners
        equal = (segments_equal((a, b), (b, c)), segments_equal((a, b), (a, c)))
        about = triangle_text(arrangement, triangle.corners)
        for corner in _corners(arrangement, a, b, c):
            relation = total((corner,), 60)
            yield Instance("equilateral-angles", equal, relation, about=about)


def _median(arrangement: Arrangement) -> Iterator[Instance]:
    for middle, start, end, label in arrangement.figure.midpoints:
        for apex in arrangement.figure.points:
            if apex in (middle, start, end) or not arrangement.joined(apex, middle):
                continue
            if not arrangement.joined(apex, start) or not arrangement.joined(apex, end):
                continue
            if arrangement.ray(apex, middle).line == arrangement.ray(middle, start).line:
                continue
            premises = (segments_equal((apex, start), (apex, end)), Stated(label))
            about = f"{apex}{start} = {apex}{end}"
            upright = arrangement.corner(apex, middle, start)
            right = total((upright,), 90)
            yield Instance("isosceles-median", premises, right, about=about)
            halves = (arrangement.corner(start, apex, middle), arrangement.corner(middle, apex, end))
            yield Instance("isosceles-median", premises, difference(*halves), about=about)


def _apex_bisector(arrangement: Arrangement) -> Iterator[Instance]:
    """The bisector of the apex of an isosceles triangle meets the base at right angles and halves it."""
    for condition in arrangement.figure.conditions:
        if not isinstance(condition, RayBetween) or not condition.halves:
            continue
        a, b, c = condition.vertex, condition.arm, condition.other
        if not arrangement.joined(b, c):
            continue
        foot = arrangement.meet(arrangement.ray(a, condition.point).line, arrangement.ray(b, c).line)
        if foot is None or foot in (b, c):
            continue
        premises = (segments_equal((a, b), (a, c)), Stated(condition.label))
        about = f"{a}{b} = {a}{c}"
        yield Instance("isosceles-median", premises, total((arrangement.corner(a, foot, b),), 90), about=about)
        halves = segments_equal((foot, b), (foot, c))
        yield Instance("isosceles-median", premises, LinearForm(), halves, about)


def _altitude(arrangement: Arrangement) -> Iterator[Instance]:
    for a, b, c in (turned for triangle in arrangement.triangles for turned in triangle.turned()):
        base = arrangement.lines[arrangement.ray(b, c).line]
        for foot in base[min(base.index(b), base.index(c)) + 1 : max(base.index(b), base.index(c))]:
            if not arrangement.joined(a, foot):
                continue
            premises = (segments_equal((a, b), (a, c)),)
            upright = total((arrangement.corner(a, foot, b),), 90)
            about = f"{a}{b} = {a}{c}"
            halves = segments_equal((foot, b), (foot, c))
            yield Instance("isosceles-median", premises, upright, halves, about, weight=15)


_ISOSCELES = ("triangle ABC", "AB = AC")

THEOREMS = (
    Theorem(
        "angle-sum-triangle",
        "The angles of a triangle add up to 180°.",
        "angle sum of a triangle",
        "Euclid I.32",
        _angle_sum,
        fires=("triangle ABC",),
        silent=("A-B-C", "segment BD"),
    ),
    Theorem(
        "exterior-angle-triangle",
        "An exterior angle of a triangle is the sum of the two interior opposite angles.",
        "exterior angle of a triangle",
        "Euclid I.32",
        _exterior,
        fires=("triangle ABC", "BC is produced to D"),
        silent=("triangle ABC",),
    ),
    Theorem(
        "isosceles-base-angles",
        "Angles opposite equal sides are equal.",
        "isosceles triangles",
        "Euclid I.5",
        _base_angles,
        fires=_ISOSCELES,
        silent=("A-B-C", "segment BD"),
    ),
    Theorem(
        "isosceles-base-angles",
        "Each base angle of an isosceles triangle is half of what the apex leaves of 180°.",
        "isosceles triangles",
        "Euclid I.5 with I.32",
        _base_from_apex,
        fires=_ISOSCELES,
        silent=("A-B-C", "segment BD"),
    ),
    Theorem(
        "isosceles-converse",
        "Sides opposite equal angles are equal.",
        "isosceles triangles",
        "Euclid I.6",
        _isosceles_converse,
        fires=("triangle ABC", "∠B = ∠C"),
        silent=("A-B-C", "segment BD"),
    ),
    Theorem(
        "equilateral-angles",
        "Each angle of an equilateral triangle is 60°.",
        "equilateral triangles",
        "Euclid I.5 and I.32, corollary",
        _equilateral,
        fires=("equilateral triangle ABC",),
        silent=("A-B-C", "segment BD"),
    ),
    Theorem(
        "isosceles-median",
        "The median to the base of an isosceles triangle is perpendicular to it and halves the apex.",
        "isosceles triangles",
        "Euclid I.8 (congruent halves)",
        _median,
        fires=("triangle ABC", "AB = AC", "D is the midpoint of BC", "segment AD"),
        silent=("triangle ABC", "AB = AC"),
    ),
    Theorem(
        "isosceles-median",
        "The bisector of the apex of an isosceles triangle is perpendicular to the base and halves it.",
        "isosceles triangles",
        "Euclid I.4 (congruent halves)",
        _apex_bisector,
        fires=("triangle ABC", "D lies on BC", "AB = AC", "AD bisects ∠BAC"),
        silent=("triangle ABC", "AB = AC"),
    ),
    Theorem(
        "isosceles-median",
        "The altitude to the base of an isosceles triangle halves it.",
        "isosceles triangles",
        "Euclid I.26 (congruent halves)",
        _altitude,
        fires=("triangle ABC", "D lies on BC", "segment AD", "AB = AC"),
        silent=("triangle ABC", "AB = AC"),
    ),
)
