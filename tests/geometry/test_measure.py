"""What is measured on coordinates, against values worked out by hand or by elementary formulae."""

import math
from fractions import Fraction

import pytest

from paperaudit.errors import NoValue
from paperaudit.geometry.coordinates.measure import measured
from paperaudit.geometry.figure.figure import Measurable
from paperaudit.model.expression import (
    AngleAt,
    AngleOf,
    ArcLengthOf,
    ArcOf,
    AreaOf,
    BearingOf,
    CircleSize,
    DistanceOf,
    Expression,
    Function,
    LengthOf,
    Letter,
    Measured,
    Number,
    PerimeterOf,
    Power,
    Product,
    Quotient,
    Root,
    SectorOf,
    SegmentOf,
    Sum,
)

# O(0, 0), radius 2; A at 0°, B at 90°, C at 200°, D at 330°; P outside; a circle about M shares A and B only.
AT = {
    name: (2 * math.cos(math.radians(bearing)), 2 * math.sin(math.radians(bearing)))
    for name, bearing in (("A", 0), ("B", 90), ("C", 200), ("D", 330))
}
AT |= {"O": (0.0, 0.0), "P": (4.0, 3.0), "M": (1.0, 1.0)}
CIRCLES = {"O": ("A", "B", "C", "D")}


@pytest.mark.parametrize(
    ("size", "value"),
    [
        (AngleOf("A", "O", "C"), 160),
        (AngleOf("A", "O", "C", reflex=True), 200),
        (LengthOf("O", "P"), 5),
        (AreaOf(("O", "A", "B")), 2),
        (AreaOf(("B", "A", "O")), 2),
        (PerimeterOf(("O", "A", "B")), 4 + 2 * math.sqrt(2)),
        (ArcOf("A", "C", centre="O"), 160),
        (ArcOf("C", "A", major=True), 200),
        (ArcOf("A", "C", through="B"), 200),
        (ArcOf("C", "A", through="B"), 200),
        (ArcOf("A", "C", through="D"), 160),
        (ArcLengthOf(ArcOf("A", "B")), math.pi),
        (CircleSize("radius"), 2),
        (CircleSize("diameter", "O"), 4),
        (CircleSize("circumference", "O"), 4 * math.pi),
        (CircleSize("area"), 4 * math.pi),
        (SectorOf("area", ArcOf("A", "B")), math.pi),
        (SectorOf("perimeter", ArcOf("A", "B")), math.pi + 4),
        (SegmentOf("area", ArcOf("A", "B")), math.pi - 2),
        (SegmentOf("area", ArcOf("A", "B", major=True)), 3 * math.pi + 2),
        (SegmentOf("perimeter", ArcOf("A", "B")), math.pi + 2 * math.sqrt(2)),
        (DistanceOf("O", ("A", "B")), math.sqrt(2)),
        (BearingOf("O", "B"), 0),
        (BearingOf("O", "A"), 90),
        (BearingOf("A", "O"), 270),
    ],
)
def test_sizes(size: Measurable, value: float) -> None:
    """Formulae of circle, sector and triangle; bearings clockwise from north. Common practice, no source."""
    assert measured(size, AT, {}, CIRCLES) == pytest.approx(value)


def number(value: int | str) -> Number:
    return Number(Fraction(value))


@pytest.mark.parametrize(
    ("expression", "value"),
    [
        (Sum((Power(LengthOf("O", "A"), number(2)), Letter("x"))), 11),
        (Quotient(LengthOf("O", "P"), LengthOf("O", "A")), 2.5),
        (Product((Letter("π"), number(2))), 2 * math.pi),
        (Root(number(27), 3), 3),
        (Root(number(2)), math.sqrt(2)),
        (Function("sin", AngleOf("O", "A", "B")), math.sin(math.pi / 4)),
        (Function("cos", Measured(number(60), "°")), 0.5),
        (Function("tan⁻¹", number(1)), 45),
        (Measured(number(3), "m"), 300),
        (Measured(number("1/100"), "m²"), 100),
    ],
)
def test_expressions(expression: Expression, value: float) -> None:
    """Arithmetic; 1 m = 100 cm and 1 m² = 10,000 cm²."""
    assert measured(expression, AT, {"x": 7.0}, CIRCLES, unit="cm") == pytest.approx(value)


@pytest.mark.parametrize(
    "expression",
    [
        Letter("y"),
        LengthOf("A", "Z"),
        AngleAt("A"),
        ArcOf("A", "P"),
        Root(number(-2)),
        Function("sin⁻¹", number(2)),
        Power(number(-2), number("1/2")),
        Quotient(number(1), number(0)),
        Measured(number(1), "kg"),
    ],
)
def test_no_measure(expression: Expression) -> None:
    """What a drawing has no size of raises, whatever it is."""
    with pytest.raises(NoValue):
        measured(expression, AT, {}, CIRCLES, unit="cm")


def test_arc_of_two_circles() -> None:
    """An arc whose ends lie on two circles needs its centre's name."""
    circles = {**CIRCLES, "M": ("A", "B")}
    with pytest.raises(NoValue):
        measured(ArcOf("A", "B"), AT, {}, circles)
    assert measured(ArcOf("A", "B", centre="M"), AT, {}, circles) == pytest.approx(180)
