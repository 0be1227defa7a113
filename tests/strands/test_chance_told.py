"""Expected numbers, listed events, three groups and tables with gaps: small cases, keys, broken derivations."""

from fractions import Fraction
from typing import Any

import pytest

from paperaudit.model.derivation import NotRead
from paperaudit.model.paper import Line, Part, Question
from paperaudit.strands.chance import tables
from paperaudit.wording.reading import read
from tests.strands.asked import cases
from tests.strands.told import check, check_key, keyed, outcome_of

CASES = cases("chance-told")
KEYED = keyed(CASES)


@pytest.mark.parametrize("case", CASES, ids=[case["title"] for case in CASES])
def test_small_cases(case: dict[str, Any]) -> None:
    check(case, "probability")


@pytest.mark.parametrize(("case", "key", "agreement"), KEYED, ids=[f"{case['title']}: {key}" for case, key, _ in KEYED])
def test_keys(case: dict[str, Any], key: str, agreement: str) -> None:
    check_key(case, key, agreement)


def test_a_broken_expected_number_is_caught(monkeypatch: pytest.MonkeyPatch) -> None:
    right = sum

    def wrong(values: Any, start: Any = 0) -> Any:
        return right(values, start) + (Fraction(1, 10) if isinstance(start, Fraction) else 0)

    monkeypatch.setattr(tables, "sum", wrong, raising=False)
    text = "The probability that it rains on a day is 0.3. How many rainy days are expected in 60 days?"
    outcome = outcome_of({"text": text})[1]
    assert isinstance(outcome, NotRead) and "disagree" in outcome.why


def test_a_word_of_another_topic_is_no_slip_of_the_pen() -> None:
    part = Part(id="1", number="", text=Line("How many sunny days are expected in 6 weeks?"))
    unread = read(Question("1", (part,)), part).unread
    assert unread and all(not one.nearest for one in unread)
