"""Slopes of expressions against differences of their values."""

import math

import pytest

from paperaudit.geometry.slopes import value_and_slopes
from paperaudit.maths.parse import read_expression
from paperaudit.model.expression import Expression, Function, Letter

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
