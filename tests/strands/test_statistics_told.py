"""Statistics told in words: the small cases, keys, published values, and derivations that are broken on purpose."""

from fractions import Fraction
from typing import Any

import pytest

from paperaudit.model.derivation import NotRead
from paperaudit.strands.statistics import five_numbers, histograms, outlying, unknown_values
from tests.strands.asked import cases, texts
from tests.strands.told import check, check_key, keyed, outcome_of

CASES = cases("statistics-told")
KEYED = keyed(CASES)

ANSCOMBE = {
    1: ("10 8 13 9 11 14 6 4 12 7 5", "8.04 6.95 7.58 8.81 8.33 9.96 7.24 4.26 10.84 4.82 5.68"),
    2: ("10 8 13 9 11 14 6 4 12 7 5", "9.14 8.14 8.74 8.77 9.26 8.10 6.13 3.10 9.13 7.26 4.74"),
    3: ("10 8 13 9 11 14 6 4 12 7 5", "7.46 6.77 12.74 7.11 7.81 8.84 6.08 5.39 8.15 6.42 5.73"),
    4: ("8 8 8 8 8 8 8 19 8 8 8", "6.58 5.76 7.71 8.84 8.47 7.04 5.25 12.50 5.56 7.91 6.89"),
}
"""F. J. Anscombe, "Graphs in Statistical Analysis", The American Statistician 27 (1973), pages 17 to 21."""


@pytest.mark.parametrize("case", CASES, ids=[case["title"] for case in CASES])
def test_small_cases(case: dict[str, Any]) -> None:
    check(case, "statistics")


@pytest.mark.parametrize(("case", "key", "agreement"), KEYED, ids=[f"{case['title']}: {key}" for case, key, _ in KEYED])
def test_keys(case: dict[str, Any], key: str, agreement: str) -> None:
    check_key(case, key, agreement)


@pytest.mark.parametrize("number", ANSCOMBE)
def test_the_four_sets_of_anscombe(number: int) -> None:
    across, up = ANSCOMBE[number]
    table = {"x": across.split(), "y": up.split()}
    line = outcome_of({"part": "Find the equation of the regression line, correct to 2 decimal places.",
                       "table": table})[1]  # fmt: skip
    assert texts(line) == ["y = 3.00 + 0.50x"]
    r = outcome_of({"part": "Calculate the correlation coefficient, correct to 2 decimal places.", "table": table})[1]
    assert texts(r) == ["0.82"]
    mean = outcome_of({"ask": f"Find the mean of {', '.join(across.split())}."})[1]
    assert texts(mean) == ["9"]
    variance = outcome_of({"ask": f"Find the sample variance of {', '.join(across.split())}."})[1]
    assert texts(variance) == ["11"]


def disagrees(case: dict[str, Any]) -> None:
    outcome = outcome_of(case)[1]
    assert isinstance(outcome, NotRead)
    assert "disagree" in outcome.why or "convention" in outcome.why


def test_broken_fences_are_caught(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(outlying, "fences", lambda collected, lines: (Fraction(5), Fraction(6)))
    disagrees({"ask": "Is 13 an outlier of the data set 4, 7, 8, 9, 10, 12, 13?"})


def test_a_broken_order_is_caught(monkeypatch: pytest.MonkeyPatch) -> None:
    right = unknown_values._measure_form

    def wrong(task: Any, letter: Any) -> Any:
        share, constant = right(task, letter) or (Fraction(0), Fraction(0))
        return share, constant + 1

    monkeypatch.setattr(unknown_values, "_measure_form", wrong)
    disagrees({"text": "The median of the numbers 3, 5, x, 11, 14, 15, written in ascending order, is 9.5. Find x."})


def test_broken_widths_are_caught(monkeypatch: pytest.MonkeyPatch) -> None:
    table = {"Time": ["0 < t ≤ 10", "10 < t ≤ 30"], "Frequency": [20, 30]}
    widths = iter([[Fraction(10), Fraction(10)]])

    class Wrong(Fraction):
        def __rtruediv__(self, other: Any) -> Fraction:
            return Fraction(other, 7)

    monkeypatch.setattr(histograms, "_widths", lambda classes: [Wrong(one) for one in next(widths)])
    disagrees({"part": "Calculate the frequency density of each class.", "table": table})


def test_broken_shares_are_caught(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(five_numbers, "_QUARTER", Fraction(1, 5))
    disagrees({"text": "The five-number summary of a data set is 2, 5, 8, 12, 20. What percentage of the values are "
                       "above 12?"})  # fmt: skip
