"""Exact sines, cosines and tangents against their decimals and against published ones."""

import math

import pytest

from paperaudit.maths.angle_values import exact_function, usual_angles
from paperaudit.maths.postfix import decimal_value
from paperaudit.model.expression import Function, Measured, Number

FUNCTIONS = {"sin": math.sin, "cos": math.cos, "tan": math.tan}


@pytest.mark.parametrize("name", FUNCTIONS)
def test_every_exact_value_is_the_decimal_one(name: str) -> None:
    found = 0
    for degrees in range(181):
        exact = exact_function(name, degrees)
        if exact is not None:
            found += 1
            assert math.isclose(float(exact.to_decimal()), FUNCTIONS[name](math.radians(degrees)), abs_tol=1e-12)
    assert found >= len(usual_angles(name))


@pytest.mark.parametrize(
    ("degrees", "sine"),
    [
        # Abramowitz and Stegun, Handbook of Mathematical Functions, table 4.10 (from memory).
        (1, 0.017452406437283512820),
        (10, 0.17364817766693034885),
        (36, 0.58778525229247312917),
        (72, 0.95105651629515357212),
    ],
)
def test_sines_agree_with_the_handbook_table(degrees: int, sine: float) -> None:
    value = decimal_value(Function("sin", Measured(Number(degrees), "°")))  # type: ignore[arg-type]
    assert abs(float(value) - sine) < 1e-15
