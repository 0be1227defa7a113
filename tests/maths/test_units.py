"""Units: conversion, and the unit of a calculation."""

from fractions import Fraction

import pytest

from paperaudit.maths.measure import UnitClash, bare
from paperaudit.maths.parse import read_expression
from paperaudit.maths.units import UNITS, conversion, same_unit, unit_named
from paperaudit.maths.write import write


@pytest.mark.parametrize(
    ("source", "target", "size"),
    [
        # SI Brochure, 9th edition, tables 5 and 8 (values from memory).
        ("m", "cm", "100"),
        ("km", "m", "1000"),
        ("litre", "cm³", "1000"),
        ("hectare", "m²", "10000"),
        ("tonne", "kg", "1000"),
        ("h", "s", "3600"),
        ("km/h", "m/s", "5/18"),
        ("m²", "cm²", "10000"),
        # International yard and pound agreement of 1959 (values from memory).
        ("inch", "cm", "2.54"),
        ("foot", "inch", "12"),
        ("mile", "yard", "1760"),
        ("pound", "g", "453.59237"),
        # Common practice, no source.
        ("c", "R", "1/100"),
        ("$", "cents", "100"),
    ],
)
def test_conversions(source: str, target: str, size: str) -> None:
    assert conversion(source, target) == Fraction(size)
    assert conversion(target, source) == 1 / Fraction(size)


@pytest.mark.parametrize(("one", "other"), [("m", "kg"), ("m", "m²"), ("R", "$"), ("°C", "°F"), ("cm", "bags")])
def test_different_measures_do_not_convert(one: str, other: str) -> None:
    assert conversion(one, other) is None


def test_spellings_name_one_unit_each() -> None:
    assert same_unit("litres", "ℓ") and same_unit("hrs", "hours") and not same_unit("m", "mm")
    spellings = [spelling for unit in UNITS for spelling in {unit.symbol, unit.plural, *unit.spellings} if spelling]
    assert len(spellings) == len(set(spellings))
    assert unit_named("Litres") is unit_named("l")
    assert unit_named("parsecs") is None


@pytest.mark.parametrize(
    ("text", "value", "unit"),
    [
        ("5 cm × 4 cm", "5 × 4", "cm²"),
        ("5 m × 40 cm", "5 × 0.4", "m²"),
        ("(5 cm)²", "5²", "cm²"),
        ("120 km / 2 h", "120/2", "km/h"),
        ("12 m ÷ 40 cm", "12 ÷ 0.4", ""),
        ("3 litres − 20 ml", "3 − 0.02", "litre"),
        ("2x + 10°", "2x + 10", "°"),
    ],
)
def test_the_unit_of_a_calculation(text: str, value: str, unit: str) -> None:
    number, found = bare(read_expression(text))
    assert (write(number), found) == (value, unit)


@pytest.mark.parametrize("text", ["3 kg + 2 m", "2 kg × 3 kg", "5 ÷ 3 kg", "√(9 cm)"])
def test_units_that_do_not_go_together(text: str) -> None:
    with pytest.raises(UnitClash):
        bare(read_expression(text))
