"""Slopes of expressions against differences of their values."""

import math

import pytest

from paperaudit.geometry.beyond.reach import Reach
from paperaudit.geometry.beyond.rows import rows_of
from paperaudit.geometry.beyond.slopes import value_and_slopes
from paperaudit.geometry.budget import Budget
from paperaudit.geometry.coordinates.arrangement import Arrangement
from paperaudit.geometry.coordinates.realise import Drawing
from paperaudit.geometry.figure.build import FigureBuilder
from paperaudit.geometry.figure.figure import angle, length
from paperaudit.geometry.theorems import instances
from paperaudit.geometry.theorems.theorem import Equation
from paperaudit.maths.parse import read_expression
from paperaudit.model.expression import Expression, Function, Letter, Product, Quotient
from paperaudit.wording import read_statement

POINT = {"x": 1.7, "y": 40.3}
STEP = 1e-6

WRITTEN = ["x^2 + 3x", "x/(y + 2)", "√(x + y)", "(x + 1)(y − x)", "x^2/y − 3/x", "π x^2"]
TURNED: list[Expression] = [
    Function("sin", Letter("y")),
    Function("cos", read_expression("2y")),
    Function("tan", Letter("y")),
]


def _value(expression: Expression, values: dict[str, float]) -> float:
    return value_and_slopes(expression, lambda size: values[size.name])[0]  # type: ignore[union-attr]


@pytest.mark.parametrize("expression", [*map(read_expression, WRITTEN), *TURNED])
def test_slopes_are_the_limits_of_differences(expression: Expression) -> None:
    _, slopes = value_and_slopes(expression, lambda size: POINT[size.name])  # type: ignore[union-attr]
    for name in POINT:
        up, down = ({**POINT, name: POINT[name] + way * STEP} for way in (1, -1))
        limit = (_value(expression, up) - _value(expression, down)) / (2 * STEP)
        assert math.isclose(slopes.get(Letter(name), 0.0), limit, rel_tol=1e-6, abs_tol=1e-7)


@pytest.mark.parametrize("written", ["√(x − 3)", "1/(x − 1.7)"])
def test_what_has_no_value_says_so(written: str) -> None:
    with pytest.raises(ValueError):
        _value(read_expression(written), POINT)


@pytest.mark.parametrize(("right_angle", "found"), [(("∠ABC = 90°",), True), ((), False)])
def test_a_slope_that_is_nought_here_alone_still_asks_for_its_size(right_angle: tuple[str, ...], found: bool) -> None:
    """sin ∠B has the slope 0 at 90°: AC/sin ∠B = BC/sin ∠A gives BC only where ∠B is known to be 90°."""
    givens = tuple(read_statement(text) for text in ("triangle ABC", "∠BAC = 30°", "AC = 12", *right_angle))
    figure = FigureBuilder(givens).figure()  # type: ignore[arg-type]
    across = 12 * math.cos(math.radians(30))
    drawing = Drawing({"A": (0.0, 0.0), "B": (across, 0.0), "C": (across, 6.0)}, {})
    arrangement = Arrangement(figure, drawing)
    sides = length("A", "C"), length("B", "C")
    sines = Function("sin", angle("A", "B", "C")), Function("sin", angle("B", "A", "C"))
    rule = Equation("sine-rule", (), *(Quotient(side, sine) for side, sine in zip(sides, sines, strict=True)))
    reach = Reach(rows_of(arrangement, (*instances(arrangement), rule)), Budget())
    reach.start()
    assert reach.run((sides[1],)) is found


def test_sizes_that_truly_cancel_are_left_out() -> None:
    drawing = Drawing({"A": (0.0, 0.0), "B": (3.0, 0.0), "C": (3.0, 4.0)}, {})
    given = read_statement("triangle ABC")
    arrangement = Arrangement(FigureBuilder((given,)).figure(), drawing)  # type: ignore[arg-type]
    ab, bc = length("A", "B"), length("B", "C")
    (row,) = rows_of(arrangement, (Equation("", (), Product((ab, bc)), Product((bc, ab))),))
    assert not row.terms
