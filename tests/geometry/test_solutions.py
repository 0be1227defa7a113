"""One value, several or infinitely many: what a figure's drawings say about a size."""

import math

import pytest

from paperaudit.geometry.coordinates.realise import realise
from paperaudit.geometry.coordinates.solutions import solutions
from paperaudit.model.derivation import Derived, NotDetermined, Several
from paperaudit.model.expression import AngleOf, AreaOf, Expression, Function, Letter, Product, Quotient, Sum
from paperaudit.model.fact import Circle, Collinear, Crossing, Fact, Parallel, Perpendicular, Shape
from tests.geometry.asked import answers, outcome
from tests.geometry.typed import angle, figure_of, is_, length, number, triangle

X = Letter("x")
RIGHT = Perpendicular(("A", "C"), ("B", "C"))
CASES: dict[str, tuple[tuple[Fact, ...], Expression, tuple[float, ...] | None]] = {
    "three sides": (
        (triangle("ABC"), is_(length("AB"), 3), is_(length("BC"), 5), is_(length("AC"), 7)),
        angle("ABC"),
        (120,),
    ),
    "two sides": ((triangle("ABC"), is_(length("AB"), 3), is_(length("BC"), 5)), length("AC"), None),
    "an angle sum": ((triangle("ABC"), is_(angle("ABC"), 50), is_(angle("BAC"), 60)), angle("ACB"), (70,)),
    "angles without a length": ((triangle("ABC"), is_(angle("ABC"), 50), is_(angle("BAC"), 60)), length("AB"), None),
    "a ratio without a length": (
        (triangle("ABC"), is_(angle("ABC"), 30), RIGHT),
        Quotient(length("AC"), length("AB")),
        (0.5,),
    ),
    "the smaller side opposite": (
        (triangle("ABC"), is_(length("AB"), 10), is_(length("BC"), 7), is_(angle("BAC"), 40)),
        angle("ACB"),
        (
            math.degrees(math.asin(10 * math.sin(math.radians(40)) / 7)),
            180 - math.degrees(math.asin(10 * math.sin(math.radians(40)) / 7)),
        ),
    ),
    "the larger side opposite": (
        (triangle("ABC"), is_(length("AB"), 7), is_(length("BC"), 10), is_(angle("BAC"), 40)),
        angle("ACB"),
        (math.degrees(math.asin(7 * math.sin(math.radians(40)) / 10)),),
    ),
    "the sine of an angle": (
        (
            triangle("ABC"),
            is_(length("AB"), 5),
            is_(length("AC"), 6),
            is_(Function("sin", angle("BAC")), number("0.6")),
        ),
        length("BC"),
        (math.sqrt(13), math.sqrt(109)),
    ),
    "area and two sides": (
        (triangle("ABC"), is_(length("AB"), 6), is_(length("BC"), 10), is_(AreaOf(("A", "B", "C")), 24)),
        angle("ABC"),
        (math.degrees(math.asin(0.8)), 180 - math.degrees(math.asin(0.8))),
    ),
    "a trapezium leaning either way": (
        (
            Shape("trapezium", tuple("ABCD")),
            Parallel((("A", "B"), ("D", "C"))),
            is_(length("AB"), 10),
            is_(length("CD"), 4),
            is_(length("AD"), 5),
            is_(AreaOf(tuple("ABCD")), 28),
        ),
        length("BC"),
        (5, math.sqrt(97)),
    ),
    "chords with a quadratic": (
        (
            Circle("", tuple("ABCD")),
            Crossing(("A", "C"), ("B", "D"), "E"),
            is_(length("AE"), X),
            is_(length("EC"), Sum((number(13), Product((number(-1), X))))),
            is_(length("BE"), 4),
            is_(length("ED"), 9),
        ),
        X,
        (4, 9),
    ),
    "Pythagoras with a letter": (
        (
            triangle("ABC"),
            RIGHT,
            is_(length("AC"), X),
            is_(length("BC"), Sum((X, number(7)))),
            is_(length("AB"), Sum((X, number(8)))),
        ),
        X,
        (5,),
    ),
    "a letter that nothing settles": (
        (triangle("ABC"), is_(length("AB"), X), is_(length("AC"), Sum((X, number(1)))), is_(length("BC"), 5)),
        X,
        None,
    ),
    "a fixed part of an open figure": (
        (
            triangle("ABC"),
            Collinear(("A", "D", "B")),
            Collinear(("A", "E", "C")),
            Parallel((("D", "E"), ("B", "C"))),
            is_(length("AD"), 2),
            is_(length("DB"), 3),
            is_(length("BC"), 10),
        ),
        length("DE"),
        (4,),
    ),
}


@pytest.mark.parametrize(("facts", "target", "values"), CASES.values(), ids=CASES)
def test_how_many_values(facts: tuple[Fact, ...], target: Expression, values: tuple[float, ...] | None) -> None:
    """Worked out by hand (congruence theorems, sine and cosine rule); common practice, no source."""
    figure = figure_of(*facts)
    found = solutions(figure, realise(figure, range(6)), target)
    assert found.is_open == (values is None)
    if values is None:
        assert found.other is not None
    else:
        assert sorted(found.values) == pytest.approx(sorted(values), rel=1e-6)


def test_a_sketch_settles_what_stretching_keeps() -> None:
    """E, on the far side of BD from A in the sketch, stays there; the figure has one value instead of two."""
    facts = (triangle("ABD"), triangle("BDE"), *(is_(length(name), 5) for name in ("AB", "BD", "AD", "BE", "DE")))
    apart = {"A": (0.0, 9.0), "B": (-30.0, 0.0), "D": (30.0, 1.0), "E": (1.0, -8.0)}
    figure = figure_of(*facts, sketch=apart)
    found = solutions(figure, realise(figure, range(6)), AngleOf("A", "B", "E"))
    assert found.values == pytest.approx((120,))
    assert not found.is_open


@pytest.mark.parametrize(
    ("given", "ask", "expected"),
    [
        (("AB = 10 cm", "BC = 7 cm", "∠BAC = 40°"), "∠ACB", 2),
        (("AB = 7 cm", "BC = 10 cm", "∠BAC = 30°"), "AC", 1),
        (("AB = 6 cm", "BC = 10 cm", "area of triangle ABC = 24 cm²"), "AC", 2),
        (("AB = 6 cm", "BC = 10 cm"), "AC", 0),
    ],
)
def test_a_question_gets_every_answer(given: tuple[str, ...], ask: str, expected: int) -> None:
    """Two triangles where the angle given is opposite the smaller side (Euclid I.7 does not exclude the second)."""
    result = outcome(("triangle ABC",), given, ask)
    assert isinstance(result, (NotDetermined, Derived, Several)[expected])
    assert len(answers(result)) == expected
