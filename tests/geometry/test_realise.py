"""Figures with lengths, areas, arcs and letters are drawn, and what is drawn measures what was stated."""

import math
from itertools import combinations, pairwise

import numpy as np
import pytest

from paperaudit.geometry.coordinates.arrangement import Arrangement
from paperaudit.geometry.coordinates.chance import most_general
from paperaudit.geometry.coordinates.measure import measured
from paperaudit.geometry.coordinates.realise import Drawing, realise
from paperaudit.geometry.coordinates.residuals import Residuals
from paperaudit.geometry.coordinates.starts import start_positions
from paperaudit.geometry.figure.figure import Balance, Figure, SizeRelation
from paperaudit.model.expression import (
    ArcLengthOf,
    ArcOf,
    AreaOf,
    BearingOf,
    CircleSize,
    DistanceOf,
    Expression,
    Function,
    Letter,
    PerimeterOf,
    Power,
    Product,
    Quotient,
    RelationSign,
    Root,
    SectorOf,
    SegmentOf,
    Sum,
)
from paperaudit.model.fact import (
    BisectsSegment,
    Centre,
    Circle,
    CirclesTouch,
    Collinear,
    Crossing,
    Drawn,
    Fact,
    Incircle,
    Midline,
    OnArc,
    Perpendicular,
    Similar,
    Tangent,
)
from tests.geometry.typed import angle, figure_of, is_, length, number, triangle

SEEDS = range(6)


def drawn(figure: Figure) -> list[Drawing]:
    drawings = realise(figure, SEEDS)
    assert drawings
    return drawings


def assert_meets(figure: Figure, drawing: Drawing) -> None:
    """Every stated size as `measured` has it, which shares nothing with the residuals."""

    def value(expression: Expression) -> float:
        return measured(expression, drawing.at, drawing.letters, figure.circles)

    for condition in figure.conditions:
        if isinstance(condition, Balance):
            assert value(condition.left) == pytest.approx(value(condition.right), rel=1e-7, abs=1e-9)
        elif isinstance(condition, SizeRelation):
            parts = [float(weight) * value(size) for size, weight in condition.form.terms.items()]
            off = sum(parts) + float(condition.form.constant)
            assert off == pytest.approx(0, abs=1e-7 * max(abs(part) for part in parts))


X = Letter("x")
PI = Letter("π")
BALANCES: dict[str, tuple[Fact, ...]] = {
    "product of sides": (
        triangle("ABC"),
        is_(Product((length("AB"), length("BC"))), 24),
        is_(length("AC"), 7),
        is_(length("AB"), 4),
    ),
    "squares": (
        triangle("ABC"),
        is_(Power(length("AB"), number(2)), Product((number(2), Power(length("BC"), number(2))))),
    ),
    "area and sides": (
        triangle("ABC"),
        is_(AreaOf(("A", "B", "C")), number(24, "cm²")),
        is_(length("AB"), number(6, "cm")),
        is_(length("BC"), number(10, "cm")),
    ),
    "another unit": (
        triangle("ABC"),
        is_(length("AB"), number(60, "mm")),
        is_(AreaOf(("A", "B", "C")), number(24, "cm²")),
    ),
    "sine": (triangle("ABC"), is_(Function("sin", angle("BAC")), Quotient(number(3), number(5))), is_(length("AB"), 5)),
    "cosine below 0": (triangle("ABC"), is_(Function("cos", angle("BAC")), Quotient(number(-1), number(3)))),
    "tangent": (triangle("ABC"), is_(Function("tan", angle("BAC")), Root(number(2)))),
    "surd": (triangle("ABC"), is_(length("AB"), Product((number(3), Root(number(5))))), is_(length("AC"), 4)),
    "surd multiple": (
        triangle("ABC"),
        is_(length("AB"), Product((Root(number(3)), length("BC")))),
        is_(length("AC"), 4),
    ),
    "ratio with a letter": (
        triangle("ABC"),
        is_(Quotient(length("AB"), length("BC")), Quotient(number(2), X)),
        is_(length("AB"), 6),
        is_(length("BC"), 9),
    ),
    "squares of letters": (
        triangle("ABC"),
        Perpendicular(("A", "B"), ("B", "C")),
        is_(length("AB"), X),
        is_(length("BC"), Sum((X, number(7)))),
        is_(length("AC"), Sum((X, number(8)))),
    ),
    "radius and chord": (
        Circle("O", ("A", "B", "C")),
        Drawn("segment", ("A", "B")),
        is_(CircleSize("radius", "O"), 5),
        is_(length("AB"), 8),
    ),
    "circumference": (Circle("O", ("A",)), is_(CircleSize("circumference"), Product((number(10), PI)))),
    "a circle without points": (Circle("O", ()), is_(CircleSize("area", "O"), Product((number(9), PI)))),
    "arcs": (
        Circle("O", ("A", "B", "C")),
        triangle("ABC"),
        is_(ArcOf("A", "B"), 80),
        is_(ArcOf("B", "C", major=True), 260),
    ),
    "arc through": (
        Circle("", ("A", "B", "C")),
        triangle("ABC"),
        is_(ArcOf("A", "C", through="B"), 230),
        is_(ArcOf("A", "B"), 100),
    ),
    "arc length": (
        Circle("O", ("A", "B")),
        is_(CircleSize("radius", "O"), 6),
        is_(ArcLengthOf(ArcOf("A", "B")), Product((number(2), PI))),
    ),
    "sector": (Circle("O", ("A", "B")), is_(SectorOf("area", ArcOf("A", "B")), 12), is_(length("OA"), 4)),
    "sector's perimeter": (
        Circle("O", ("A", "B")),
        is_(SectorOf("perimeter", ArcOf("A", "B")), 15),
        is_(length("OA"), 4),
    ),
    "segment of a circle": (Circle("O", ("A", "B")), is_(SegmentOf("area", ArcOf("A", "B")), 5), is_(length("OA"), 4)),
    "height": (triangle("ABC"), is_(DistanceOf("A", ("B", "C")), 4), is_(length("AB"), 5), is_(length("BC"), 9)),
    "bearings": (
        triangle("ABC"),
        is_(BearingOf("A", "B"), 70),
        is_(BearingOf("A", "C"), 310),
        is_(length("AB"), 5),
        is_(length("AC"), 8),
    ),
    "chords that cross": (
        Circle("O", ("A", "B", "C", "D")),
        Crossing(("A", "B"), ("C", "D"), "E"),
        is_(length("AE"), 4),
        is_(length("EB"), 6),
        is_(length("CE"), 3),
    ),
    "tangent and secant": (
        Circle("O", ("T", "A", "B")),
        Tangent(("P", "T"), "T", "O"),
        Collinear(("P", "A", "B")),
        is_(length("PT"), 6),
        is_(length("PA"), 4),
    ),
    "difference of squares": (
        triangle("ABC"),
        is_(Sum((Power(length("AB"), number(2)), Product((number(-1), Power(length("AC"), number(2)))))), 20),
        is_(length("BC"), 7),
    ),
    "perimeter": (triangle("ABC"), is_(PerimeterOf(("A", "B", "C")), 24), is_(length("AB"), 7), is_(length("AC"), 9)),
}


@pytest.mark.parametrize("facts", BALANCES.values(), ids=BALANCES)
def test_what_is_stated_is_drawn(facts: tuple[Fact, ...]) -> None:
    """Each figure is possible (worked out by hand; common practice, no source) and comes out as stated."""
    figure = figure_of(*facts)
    for drawing in drawn(figure):
        assert_meets(figure, drawing)


@pytest.mark.parametrize("facts", BALANCES.values(), ids=BALANCES)
def test_slopes(facts: tuple[Fact, ...]) -> None:
    """Every derivative is the limit of differences."""
    figure = figure_of(*facts)
    problem = Residuals(figure)
    at = start_positions(figure, 3)
    spots = [part * problem.unit for point in figure.points for part in at[point]]
    state = np.array([spots + [0.8] * len(figure.letters)])
    read = problem.measure(state)
    signs = problem.hinges.signs(read)
    step = 1e-6
    for rows in (problem.equalities, lambda state, read: problem.hinges.rows(state, read, signs)):
        _, slope = rows(state, read)
        for unknown in range(state.shape[1]):
            there, back = state.copy(), state.copy()
            there[0, unknown] += step
            back[0, unknown] -= step
            difference = rows(there, problem.measure(there))[0] - rows(back, problem.measure(back))[0]
            assert slope[0, :, unknown] == pytest.approx(difference[0] / (2 * step), rel=1e-4, abs=1e-5)


def test_impossible_balance_is_not_drawn() -> None:
    """A triangle with sides 3 and 4 has an area of at most 6."""
    figure = figure_of(triangle("ABC"), is_(length("AB"), 3), is_(length("BC"), 4), is_(AreaOf(("A", "B", "C")), 6.1))
    assert not realise(figure, SEEDS)


@pytest.mark.parametrize("sign", ["<", ">"])
def test_inequalities_choose(sign: RelationSign) -> None:
    """Two sides and an angle opposite the smaller leave two triangles, of which the inequality takes one."""
    facts = (triangle("ABC"), is_(length("AB"), 10), is_(length("BC"), 7), is_(angle("BAC"), 40))
    figure = figure_of(*facts, is_(angle("ACB"), 90, sign))
    found = {round(measured(angle("ACB"), drawing.at)) for drawing in realise(figure, range(12))}
    acute = round(math.degrees(math.asin(10 * math.sin(math.radians(40)) / 7)))
    assert found == {acute if sign == "<" else 180 - acute}


CENTRES: dict[str, tuple[tuple[Fact, ...], Expression, float]] = {
    "incentre": ((Centre("incentre", "I", ("A", "B", "C")),), DistanceOf("I", ("A", "B")), 1),
    "circumcentre": ((Centre("circumcentre", "I", ("A", "B", "C")),), length("IC"), 2.5),
    "centroid": ((Centre("centroid", "I", ("A", "B", "C")),), length("IC"), 5 / 3),
    "centroid on a median": (
        (Centre("centroid", "I", ("A", "B", "C")), Collinear(("C", "I", "M")), Collinear(("A", "M", "B"))),
        length("IM"),
        5 / 6,
    ),
    "incircle": (
        (Incircle("", ("A", "B", "C")), Circle("", ("T",)), Collinear(("A", "T", "B")), Tangent(("A", "B"), "T")),
        length("AT"),
        2,
    ),
    "perpendicular bisector": (
        (BisectsSegment(("D", "I"), ("A", "B"), True), Collinear(("A", "D", "B")), Collinear(("I", "D"))),
        length("AD"),
        2.5,
    ),
    "bisector of a segment": (
        (BisectsSegment(("C", "I"), ("A", "B")), Collinear(("C", "I")), is_(length("CI"), 2.5)),
        length("IA"),
        2.5,
    ),
    "midline": (
        (Collinear(("A", "D", "C")), Collinear(("B", "E", "C")), Midline(("D", "E"), ("A", "B", "C"))),
        length("DE"),
        2.5,
    ),
}


@pytest.mark.parametrize(("facts", "size", "value"), CENTRES.values(), ids=CENTRES)
def test_centres_of_a_right_angled_triangle(facts: tuple[Fact, ...], size: Expression, value: float) -> None:
    """In the triangle with sides 3, 4 and 5, right-angled at C (Euclid III.31, IV.4; common practice)."""
    figure = figure_of(triangle("ABC"), is_(length("AC"), 3), is_(length("BC"), 4), is_(length("AB"), 5), *facts)
    for drawing in drawn(figure):
        assert measured(size, drawing.at, {}, figure.circles) == pytest.approx(value)


def test_orthocentre() -> None:
    """In an acute triangle the altitude from A meets the one from B in H: AH ⊥ BC."""
    sides = (is_(length("AB"), 6), is_(length("BC"), 7), is_(length("AC"), 8))
    figure = figure_of(triangle("ABC"), *sides, Centre("orthocentre", "H", ("A", "B", "C")))
    for drawing in drawn(figure):
        (ax, ay), (bx, by), (cx, cy), (hx, hy) = (drawing.at[point] for point in "ABCH")
        assert (hx - ax) * (cx - bx) + (hy - ay) * (cy - by) == pytest.approx(0, abs=1e-6)


@pytest.mark.parametrize(
    ("touch", "apart"),
    [
        (CirclesTouch("O", "P"), 7),
        (CirclesTouch("O", "P", "T"), 7),
        (CirclesTouch("O", "P", "", "second in first"), 3),
        (CirclesTouch("O", "P", "T", "second in first"), 3),
        (CirclesTouch("O", "P", "", "one in the other"), 3),
        (CirclesTouch("O", "P", "T", "one in the other"), 3),
    ],
)
def test_touching_circles(touch: CirclesTouch, apart: float) -> None:
    """Circles of radii 5 and 2 touch when their centres are 7 or 3 apart (Euclid III.11, III.12)."""
    figure = figure_of(Circle("O", ("A",)), Circle("P", ("B",)), is_(length("OA"), 5), is_(length("PB"), 2), touch)
    for drawing in drawn(figure):
        assert measured(length("OP"), drawing.at) == pytest.approx(apart, rel=1e-6)


@pytest.mark.parametrize(("major", "size"), [(False, 140), (True, 40)])
def test_points_of_an_arc(major: bool, size: float) -> None:
    """A chord of a minor arc of 80° subtends 40° from the major arc and 140° from the minor (Euclid III.20)."""
    figure = figure_of(
        Circle("O", ("A", "B", "C")),
        triangle("ABC"),
        is_(ArcOf("A", "B"), 80),
        OnArc(("C",), ArcOf("A", "B", major=major)),
    )
    for drawing in drawn(figure):
        assert measured(angle("ACB"), drawing.at) == pytest.approx(size)


def test_similar_quadrilaterals() -> None:
    """All sides of similar quadrilaterals are in one ratio, not their angles alone equal."""
    figure = figure_of(Similar(tuple("ABCD"), tuple("EFGH")), is_(length("AB"), 4), is_(length("EF"), 6))
    for drawing in drawn(figure):
        assert measured(length("GH"), drawing.at) == pytest.approx(1.5 * measured(length("CD"), drawing.at))


@pytest.mark.parametrize(
    "sketch", [{}, {"A": (0.0, 0.0), "B": (4.0, 0.0), "C": (0.0, 4.0), "D": (2.0, 0.0), "E": (0.0, 2.0)}]
)
def test_nothing_is_equal_by_chance(sketch: dict[str, tuple[float, float]]) -> None:
    """A sketch on squared paper, or none, gives no right angles, equal sides and parallels that nothing states."""
    facts = (triangle("ABC"), Collinear(("A", "D", "B")), Collinear(("A", "E", "C")), Drawn("segment", ("D", "E")))
    figure = figure_of(*facts, sketch=sketch)
    best = most_general([Arrangement(figure, drawing) for drawing in drawn(figure)])
    turns = [abs(one - two) % 180 for one, two in combinations(best.bearings, 2)]
    assert min(abs(turn - other) for turn in turns for other in (0, 90, 180)) > 0.01
    lengths = sorted(math.dist(best.at[one], best.at[two]) for one, two in combinations("ABCDE", 2))
    assert min(after / before for before, after in pairwise(lengths)) > 1 + 1e-4


def test_letters_of_very_different_size() -> None:
    """AB : BC = 1 : x and AC = y with sides 0.02, 5 and 5.01: letters far from the unit of lengths are found."""
    figure = figure_of(
        triangle("ABC"),
        is_(length("AB"), 0.02),
        is_(Quotient(length("BC"), length("AB")), X),
        is_(length("AC"), 5.01),
        is_(Product((length("BC"), Letter("y"))), 30),
        is_(length("BC"), 5),
    )
    for drawing in drawn(figure):
        assert drawing.letters == pytest.approx({"x": 250, "y": 6})


@pytest.mark.parametrize(
    "fact",
    [is_(AreaOf(("A", "B", "C")), 6), is_(Function("sin", angle("ABC")), 1), is_(length("AC"), 5)],
    ids=["area", "sine", "hypotenuse"],
)
def test_right_angles_that_are_just_possible(fact: Fact) -> None:
    """Half of 3 · 4 is the largest area there is; a figure that can only just be drawn is drawn as exactly."""
    figure = figure_of(triangle("ABC"), is_(length("AB"), 3), is_(length("BC"), 4), fact)
    for drawing in drawn(figure):
        assert measured(angle("ABC"), drawing.at) == pytest.approx(90, abs=2e-5)
