"""What is given up so that a figure can be drawn: a convention, a doubtful turn of the sketch, exact decimals."""

import math

import pytest

from paperaudit.geometry.coordinates.drawn import drawn
from paperaudit.geometry.coordinates.measure import measured
from paperaudit.model.expression import AreaOf, Expression, Function
from paperaudit.model.fact import Collinear, Drawn, Fact, Parallel, Perpendicular
from tests.geometry.typed import angle, is_, length, number, plain_figure, triangle

RIGHT = Perpendicular(("A", "C"), ("B", "C"))


@pytest.mark.parametrize(
    ("facts", "size", "value", "moved"),
    [
        (
            (triangle("ABC"), RIGHT, is_(length("AC"), 5), is_(length("BC"), 5), is_(length("AB"), number("7.07"))),
            length("AB"),
            5 * math.sqrt(2),
            {4},
        ),
        (
            (triangle("ABC"), RIGHT, is_(length("AC"), 4), is_(length("AB"), 5), is_(angle("BAC"), number("36.9"))),
            angle("BAC"),
            math.degrees(math.acos(0.8)),
            {4},
        ),
        (
            (
                triangle("ABC"),
                is_(length("AC"), 4),
                is_(length("AB"), 5),
                is_(angle("BAC"), 50),
                is_(AreaOf(tuple("ABC")), number("7.7")),
            ),
            AreaOf(tuple("ABC")),
            10 * math.sin(math.radians(50)),
            {4},
        ),
        (
            (
                triangle("ABC"),
                RIGHT,
                is_(length("AC"), 4),
                is_(length("AB"), 5),
                is_(Function("sin", angle("ABC")), number("0.8")),
            ),
            length("BC"),
            3,
            set(),
        ),
    ],
)
def test_decimals_are_rounded_where_they_must(
    facts: tuple[Fact, ...], size: Expression, value: float, moved: set[int]
) -> None:
    """Only the given that a table or a calculator rounded moves (Pythagoras, trigonometry; common practice)."""
    found = drawn(plain_figure(*facts))
    assert found.figure.rounded == bool(moved)
    for drawing in found.drawings:
        assert drawing.moved == moved
        assert measured(size, drawing.at) == pytest.approx(value, rel=1e-6)
    assert found.drawings


def test_decimals_that_no_rounding_explains() -> None:
    """5√2 = 7.071… is 7.1 or 7.07, never 7.2 or 7.08."""
    for wrong in ("7.2", "7.08"):
        sides = (is_(length("AC"), 5), is_(length("BC"), 5), is_(length("AB"), number(wrong)))
        assert not drawn(plain_figure(triangle("ABC"), RIGHT, *sides)).drawings


def test_a_flat_turn_of_the_sketch_is_given_up() -> None:
    """D stands 10° below BC in the sketch; the lengths allow it only above, so the sketch was drawn carelessly."""
    facts = (
        triangle("ABC"),
        Drawn("segment", ("B", "D")),
        is_(angle("ABC"), 50),
        is_(angle("ABD"), 40),
        is_(length("AB"), 5),
        is_(length("BC"), 8),
        is_(length("BD"), 6),
    )
    at = {"A": (2.0, 4.0), "B": (0.0, 0.0), "C": (8.0, 0.0), "D": (6.0, -1.0)}
    found = drawn(plain_figure(*facts, sketch=at))
    assert found.drawings
    assert found.concession == "turns"
    clear = drawn(plain_figure(*facts, sketch={**at, "D": (6.0, -4.0)}))
    assert not clear.drawings


def test_parallels_named_in_opposite_directions() -> None:
    """AB ∥ DC with E between A, D and B, C: the lines run opposite ways, against the convention of the page."""
    facts = (Collinear(("A", "E", "D")), Collinear(("B", "E", "C")), Parallel((("A", "B"), ("D", "C"))))
    found = drawn(plain_figure(*facts))
    assert found.drawings
    assert found.concession == "directions"
