"""Probability and counting: the small cases, keys, and derivations that are broken on purpose."""

from fractions import Fraction
from typing import Any

import pytest

from paperaudit.model.derivation import Derived, NotRead
from paperaudit.strands.chance import conditional, counting, experiments, joined, ordered, repeated, tables
from tests.strands.asked import cases
from tests.strands.told import check, check_key, keyed, outcome_of

CASES = cases("probability")
KEYED = keyed(CASES)
BAG = "A bag contains 3 red, 4 blue and 5 green balls. "


@pytest.mark.parametrize("case", CASES, ids=[case["title"] for case in CASES])
def test_small_cases(case: dict[str, Any]) -> None:
    check(case, "probability")


@pytest.mark.parametrize(("case", "key", "agreement"), KEYED, ids=[f"{case['title']}: {key}" for case, key, _ in KEYED])
def test_keys(case: dict[str, Any], key: str, agreement: str) -> None:
    check_key(case, key, agreement)


def disagrees(text: str, **more: Any) -> None:
    outcome = outcome_of({"text": text, **more})[1]
    assert isinstance(outcome, NotRead)
    assert "disagree" in outcome.why


def test_a_broken_condition_is_caught(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(experiments, "meets", lambda condition, thing: thing.name in ("red", "2"))
    disagrees(BAG + "A ball is taken. Find the probability that it is blue.")
    disagrees("Two dice are thrown. Find the probability that the sum is 7.")


def test_a_broken_path_is_caught(monkeypatch: pytest.MonkeyPatch) -> None:
    right = experiments._along
    monkeypatch.setattr(experiments, "_along", lambda path, experiment: right(path, experiment)[:1])
    disagrees(BAG + "Two balls are taken without replacement. Find the probability that both are red.")


def test_a_broken_count_of_orders_is_caught(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(experiments, "comb", lambda n, r: 1)
    disagrees("A coin is tossed three times. Find the probability of getting exactly two heads.")


def test_a_broken_rule_of_events_is_caught(monkeypatch: pytest.MonkeyPatch) -> None:
    from paperaudit.strands.chance import regions

    def wrong(search: Any, wanted: Any) -> bool:
        return bool(search.learn(wanted, Fraction(1, 7), "1/7"))

    monkeypatch.setattr(regions, "RULES", (wrong,))
    monkeypatch.setattr(joined, "_settled", lambda search, wanted: Fraction(3, 5))
    disagrees("", ask="Find P(A or B).", given=["P(A) = 0.3", "P(B) = 0.5", "P(A and B) = 0.2"])


def test_a_broken_count_is_caught(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(counting, "comb", lambda n, r: n + r)
    disagrees("In how many ways can a committee of 3 be chosen from 8 people?")
    monkeypatch.setattr(counting, "prod", lambda factors: 1)
    disagrees("In how many ways can 5 books be arranged on a shelf?")


def test_a_broken_sum_of_a_table_is_caught(monkeypatch: pytest.MonkeyPatch) -> None:
    def wrong(values: Any, start: Any = 0) -> Any:
        found = list(values)
        return sum(found, start) + (Fraction(1, 7) if len(found) == 2 else 0)

    monkeypatch.setattr(tables, "sum", wrong, raising=False)
    table = {"Colour": ["red", "blue", "green"], "Probability": ["0.3", "0.5", "0.2"]}
    disagrees("Find the probability of getting red or blue.", table=table)


def test_a_broken_count_of_patterns_is_caught(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(ordered, "prod", lambda factors: 7)
    disagrees("In how many ways can 4 boys and 3 girls sit in a row if boys and girls alternate?")
    disagrees("How many arrangements of the letters of the word BALLOON begin with B?")
    monkeypatch.setattr(ordered, "comb", lambda n, r: n + r)
    disagrees(
        "In how many ways can a committee of 4 be chosen from 5 men and 4 women if there must be 2 men and 2 women?"
    )


def test_a_broken_product_of_trials_is_caught(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(repeated, "comb", lambda n, r: 1)
    disagrees(
        "The probability that Leo scores is 0.7. He takes three kicks. Find the probability that he scores twice."
    )


def test_a_broken_condition_on_one_throw_is_caught(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(conditional, "meets", lambda condition, thing: thing.name in "234")
    disagrees("A dice is rolled. Given that the number is odd, find the probability that it is a 5.")


def test_every_path_is_in_the_lines_as_a_pupil_writes_it() -> None:
    for case in CASES:
        if case.get("verdict"):
            continue
        outcome = outcome_of(case)[1]
        assert isinstance(outcome, Derived)
        for step in outcome.derivations[0].steps:
            assert not any(form in step.statement for form in ("**", "Rational", "sqrt", "Fraction", "*"))
