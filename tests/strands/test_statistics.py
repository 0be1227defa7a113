"""Statistics: the small cases, keys, and derivations that are broken on purpose."""

from fractions import Fraction
from typing import Any

import pytest

from paperaudit.maths import quartiles
from paperaudit.maths.collected_values import weighted
from paperaudit.maths.equality import compare
from paperaudit.model.derivation import Derived, NotRead
from paperaudit.strands.statistics import averages, balance, fitted, grouped, spread
from tests.strands.asked import cases
from tests.strands.told import check, check_key, keyed, outcome_of, reading_of

CASES = cases("statistics")
KEYED = keyed(CASES)


@pytest.mark.parametrize("case", CASES, ids=[case["title"] for case in CASES])
def test_small_cases(case: dict[str, Any]) -> None:
    check(case, "statistics")


@pytest.mark.parametrize(("case", "key", "agreement"), KEYED, ids=[f"{case['title']}: {key}" for case, key, _ in KEYED])
def test_keys(case: dict[str, Any], key: str, agreement: str) -> None:
    check_key(case, key, agreement)


def test_another_convention_is_named() -> None:
    case = {"ask": "Find the interquartile range of 1, 3, 4, 6, 7, 9, 12, 15, 20."}
    outcome, asked = outcome_of(case)[1], reading_of(case).ask
    assert isinstance(outcome, Derived) and asked is not None
    assert "the middle value in both" in compare("8", outcome.answers, asked).why
    assert quartiles.WITHOUT_MIDDLE in " ".join(step.statement for step in outcome.derivations[0].steps)


def test_a_convention_is_not_named_where_it_makes_no_difference() -> None:
    outcome = outcome_of({"ask": "Find the median of 1, 3, 4."})[1]
    assert isinstance(outcome, Derived)
    assert "halves" not in " ".join(step.statement for step in outcome.derivations[0].steps)


def disagrees(case: dict[str, Any]) -> None:
    outcome = outcome_of(case)[1]
    assert isinstance(outcome, NotRead)
    assert "disagree" in outcome.why


def test_broken_averages_are_caught(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(averages, "median_of", lambda values: values[0])
    disagrees({"ask": "Find the median of 3, 5, 9."})
    right = weighted
    monkeypatch.setattr(averages, "weighted", lambda collected: [*right(collected), (Fraction(99), 1)])
    disagrees({"ask": "Find the mode of 3, 3, 9, 9, 99."})


def test_a_broken_sum_is_caught(monkeypatch: pytest.MonkeyPatch) -> None:
    def wrong(values: Any, start: Any = 0) -> Any:
        return sum(values, start) + (1 if isinstance(start, Fraction) else 0)

    monkeypatch.setattr(averages, "sum", wrong, raising=False)
    disagrees({"ask": "Find the mean of 3, 5, 9."})
    monkeypatch.setattr(balance, "sum", wrong, raising=False)
    disagrees({"text": "The mean of five numbers is 8. Four of them are 3, 7, 9 and 10. Find the fifth number."})


def test_broken_quartiles_are_caught(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(spread, "quartiles", lambda values: (values[0], values[1], values[2]))
    disagrees({"ask": "Find the interquartile range of 1, 3, 4, 6, 7, 9, 12, 15, 20."})


def test_a_broken_variance_is_caught(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(spread, "variance", lambda rows, sample: Fraction(3))
    disagrees({"ask": "Find the variance of 1, 3, 4, 6."})


def test_a_broken_interpolation_is_caught(monkeypatch: pytest.MonkeyPatch) -> None:
    table = {"Marks": ["0 < x ≤ 10", "10 < x ≤ 20"], "Frequency": [5, 10]}
    monkeypatch.setattr(grouped, "_QUARTERS", {"median": 1})
    assert isinstance(outcome_of({"part": "Estimate the median.", "table": table})[1], Derived)
    monkeypatch.setattr(grouped, "interpolated", lambda collected, place: Fraction(0))
    disagrees({"part": "Estimate the median.", "table": table})


def test_a_broken_line_is_caught(monkeypatch: pytest.MonkeyPatch) -> None:
    right = fitted._sums

    def wrong(pairs: Any, lines: Any) -> Any:
        count, across, up, *rest = right(pairs, lines)
        return (count, across, up + 1, *rest)

    monkeypatch.setattr(fitted, "_sums", wrong)
    table = {"x": [1, 2, 3, 4], "y": [3, 4, 8, 9]}
    disagrees({"part": "Find the equation of the regression line.", "table": table})
    disagrees({"part": "Find the correlation coefficient.", "table": table})
