"""Rounding once, halves away from zero."""

from decimal import ROUND_HALF_UP, Decimal
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from paperaudit.errors import ExpressionNotRead
from paperaudit.maths.rounding import magnitude, nearest_multiple, round_to
from paperaudit.maths.write import write
from paperaudit.model.ask import Accuracy

# Check values of ISO 80000-1:2009 annex B, step 0.1; for the halfway cases its rule B, away from zero,
# which is what schools do.
ISO_80000_1_ANNEX_B = [("12.223", "12.2"), ("12.251", "12.3"), ("12.275", "12.3"), ("12.25", "12.3"), ("12.35", "12.4")]


@pytest.mark.parametrize(("value", "rounded"), ISO_80000_1_ANNEX_B)
def test_check_values_of_iso_80000_1(value: str, rounded: str) -> None:
    assert nearest_multiple(Fraction(value), Fraction("0.1")) == Fraction(rounded)
    assert nearest_multiple(-Fraction(value), Fraction("0.1")) == -Fraction(rounded)


def test_rounding_twice_is_not_rounding_once() -> None:
    one_place = Accuracy("decimal places", "1")
    assert write(round_to(Fraction("2.446"), one_place)) == "2.4"
    assert write(round_to(round_to(Fraction("2.446"), Accuracy("decimal places", "2")).value, one_place)) == "2.5"


@pytest.mark.parametrize(
    ("value", "accuracy", "unit", "text"),
    [  # common practice, no source
        ("3.996", Accuracy("decimal places", "2"), "", "4.00"),
        ("9.96", Accuracy("significant figures", "2"), "", "10"),
        ("0.0004996", Accuracy("significant figures", "3"), "", "0.000500"),
        ("1234", Accuracy("significant figures", "2"), "", "1200"),
        ("0", Accuracy("significant figures", "2"), "", "0"),
        ("1255", Accuracy("nearest", "10"), "", "1260"),
        ("-1255", Accuracy("nearest", "10"), "", "−1260"),
        ("7.3", Accuracy("nearest", "0.5"), "", "7.5"),
        ("7,3", Accuracy("nearest", "0,5"), "", "7.5"),
        ("1.2345", Accuracy("nearest", "cm"), "m", "1.23"),
        ("1.2345", Accuracy("nearest", "0.1 cm"), "m", "1.235"),
        ("332.4825", Accuracy("nearest", "cent"), "$", "332.48"),
        ("332.4825", Accuracy("nearest", "R10"), "R", "330"),
        ("68.5", Accuracy("nearest", "degree"), "°", "69"),
    ],
)
def test_accuracies_of_school_papers(value: str, accuracy: Accuracy, unit: str, text: str) -> None:
    assert write(round_to(Fraction(value.replace(",", ".")), accuracy, unit)) == text


@pytest.mark.parametrize(
    "accuracy",
    [
        Accuracy("decimal places", "9999999999"),
        Accuracy("decimal places", "-1"),
        Accuracy("decimal places", "two"),
        Accuracy("decimal places", "²"),
        Accuracy("significant figures", "0"),
        Accuracy("nearest", "0"),
        Accuracy("nearest", "1e999999999"),
        Accuracy("nearest", "litre"),
    ],
)
def test_accuracies_without_a_meaning_are_refused(accuracy: Accuracy) -> None:
    with pytest.raises(ExpressionNotRead):
        round_to(Fraction(1, 3), accuracy, "m")


@given(st.decimals(-(10**6), 10**6, places=6), st.integers(0, 5))
def test_places_agree_with_the_decimal_module(value: Decimal, places: int) -> None:
    expected = value.quantize(Decimal(1).scaleb(-places), rounding=ROUND_HALF_UP)
    assert round_to(Fraction(value), Accuracy("decimal places", str(places))).value == Fraction(expected)


@given(st.fractions(min_value=Fraction(1, 10**9), max_value=10**9))
def test_the_first_figure(value: Fraction) -> None:
    assert 10 ** Fraction(magnitude(value)) <= value < 10 ** Fraction(magnitude(value) + 1)
