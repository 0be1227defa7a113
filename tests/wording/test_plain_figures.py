"""Figures told in everyday words: what they are read as, what comes out, and what is left unread."""

from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from paperaudit.marking.reasons import word
from paperaudit.maths.equality import compare
from paperaudit.model.derivation import Derived, Impossible, NotDetermined
from paperaudit.wording.topics.figure_letters import SHAPES
from tests.strands.asked import cases, texts
from tests.strands.told import outcome_of, reading_of

CASES = cases("plain-figures")


@pytest.mark.parametrize("case", CASES, ids=[case["title"] for case in CASES])
def test_small_cases(case: dict[str, Any]) -> None:
    verdict = case.get("verdict", "derived")
    reading = reading_of(case)
    if verdict == "unread":
        assert reading.ask is None or reading.unread
        return
    assert reading.ask is not None
    assert reading.ask.read_as == case["read_as"]
    _, outcome = outcome_of(case)
    kinds = {"derived": Derived, "impossible": Impossible, "not-determined": NotDetermined}
    assert isinstance(outcome, kinds[verdict]), outcome
    if isinstance(outcome, Impossible):
        assert list(outcome.clash) == case["clash"]
    if isinstance(outcome, Derived):
        assert texts(outcome) == case["derived"]
        assert outcome.derivations[0].confirmed_by
        assert all(word(step.reason, "full") for step in outcome.derivations[0].steps if step.reason is not None)
        for key in case["agrees"]:
            assert compare(key, outcome.answers, reading.ask).agreement.value == "agrees", key
        for key in case["differs"]:
            assert compare(key, outcome.answers, reading.ask).agreement.value == "differs", key


@settings(max_examples=15, deadline=None)
@given(st.integers(2, 40), st.integers(2, 40))
def test_a_rectangle_in_any_order_of_words(length: int, width: int) -> None:
    """Area and perimeter by arithmetic of their own."""
    said = (f"A rectangle is {length} cm long and {width} cm wide.", f"A rectangle measures {length} cm by {width} cm.",
            f"The width of a rectangle is {width} cm and its diagonal is drawn.")  # fmt: skip
    for text in said[:2]:
        _, outcome = outcome_of({"text": f"{text} Find its area."})
        assert isinstance(outcome, Derived) and texts(outcome) == [f"{length * width} cm²"]
    assert reading_of({"text": f"{said[2]} Find its area."}).unread


@pytest.mark.parametrize("name", sorted(SHAPES))
def test_no_place_of_a_shape_is_told_twice(name: str) -> None:
    """Each size of a shape has places of its own, unless two names are words for one size."""
    shape = SHAPES[name]
    for places in (*shape.sizes.values(), *shape.only_told.values()):
        assert len(set(places)) == len(places)
