"""Further published values, and that every topic has enough of them."""

from typing import Any

import pytest

from paperaudit.maths.equality import compare
from paperaudit.model.derivation import Derived
from tests.strands.published import book_counts, counts, entries
from tests.strands.told import outcome_of, reading_of

FURTHER = entries("further")
LEAST_A_TOPIC, LEAST_IN_ALL = 5, 120


@pytest.mark.parametrize("case", FURTHER, ids=[f"{case['topic']}: {case['key']}" for case in FURTHER])
def test_a_further_value(case: dict[str, Any]) -> None:
    outcome, asked = outcome_of(case)[1], reading_of(case).ask
    assert isinstance(outcome, Derived) and asked is not None, outcome
    assert compare(case["key"], outcome.answers, asked).agreement.value == "agrees"


def test_every_topic_has_five_published_values() -> None:
    own, book = counts(), book_counts()
    short = {key: own[key] + book[key] for key in {*own, *book} if own[key] + book[key] < LEAST_A_TOPIC}
    assert not short


def test_there_are_enough_beside_the_worked_examples() -> None:
    named = {topic for _, topic in counts()}
    assert counts().total() >= LEAST_IN_ALL
    assert {"quartiles", "standard form", "series", "derivatives", "trigonometric equations", "probability"} <= named


def test_every_value_has_its_source_and_topic() -> None:
    assert all(case["source"].strip() and case["topic"].strip() for case in FURTHER)
