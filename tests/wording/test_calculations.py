"""Stories of one calculation: what comes out, what is left unread. Common practice, no source."""

import random
from fractions import Fraction

import pytest

from paperaudit.maths.equality import compare
from paperaudit.model.derivation import Derived
from tests.strands.asked import cases
from tests.strands.told import outcome_of, reading_of

TOLD: dict[str, list[list[str]]] = cases("one-calculation")  # type: ignore[assignment]
_SHARED = "How much does each person get?"
RIGHT = (
    (f"£45.60 is shared equally between 4 people. {_SHARED}", "£45.60 ÷ 4", "£11.40", "£182.40"),
    ("R4 500 is shared equally among 5 children. How much does each child get?", "R4500 ÷ 5", "R900", "R90"),
    ("24 sweets are shared equally among 6 children. How many sweets does each child get?", "24 ÷ 6", "4", "6"),
    ("The temperature at midnight was -5 °C. By noon it had risen by 12 °C. What was the temperature at noon?",
     "−5 + 12", "7 °C", "17 °C"),
    ("At midnight the temperature in Oslo was −9 °C. By noon it had risen by 14 °C. What was the temperature at noon?",
     "−9 + 14", "5 °C", "−5 °C"),
    ("The temperature in Oslo was 3 °C. During the night it fell by 8 °C. What was the temperature in the morning?",
     "3 − 8", "-5 °C", "5 °C"),
    *(tuple(case) for case in TOLD["told"]),
)  # fmt: skip
UNREAD = (
    "25 sweets are shared equally among 6 children. How many sweets does each child get?",
    f"R100 is shared equally between 3 people. {_SHARED}",
    f"R100 is shared between 4 people. {_SHARED}",
    "24 sweets are shared equally among 6 children. How many cakes does each child get?",
    "The temperature was 4 °C. It fell by 9 °C and then rose by 2 °C. What is the temperature now?",
    "The temperature was 4 °C. It fell to 2 °C. What is the temperature now?",
    *TOLD["untold"],
)


@pytest.mark.parametrize(("text", "read_as", "right", "wrong"), RIGHT)
def test_one_calculation(text: str, read_as: str, right: str, wrong: str) -> None:
    reading = reading_of({"text": text})
    assert reading.ask is not None and reading.ask.read_as == read_as
    _, outcome = outcome_of({"text": text})
    assert isinstance(outcome, Derived) and outcome.derivations[0].confirmed_by
    assert compare(right, outcome.answers, reading.ask).agreement.value == "agrees"
    assert compare(wrong, outcome.answers, reading.ask).agreement.value == "differs"


@pytest.mark.parametrize("text", UNREAD)
def test_what_is_more_or_less_than_one_calculation_is_unread(text: str) -> None:
    reading = reading_of({"text": text})
    assert reading.ask is None or reading.unread


def test_hands_by_where_each_points() -> None:
    source = random.Random(1)
    for _ in range(60):
        hour, minute = source.randint(1, 12), source.randint(0, 59)
        # Half-degrees from the twelve: the hour hand makes one a minute, the minute hand twelve.
        apart = abs((hour % 12) * 60 + minute - 12 * minute) % 720
        smaller = Fraction(min(apart, 720 - apart), 2)
        if not smaller:
            continue
        case = {"text": f"Find the smaller angle between the hands of a clock at {hour}:{minute:02}."}
        if smaller == 180:
            continue
        _, outcome = outcome_of(case)
        reading = reading_of(case)
        assert isinstance(outcome, Derived) and reading.ask is not None
        assert compare(f"{float(smaller):g}°", outcome.answers, reading.ask).agreement.value == "agrees", case
        assert compare(f"{float(360 - smaller):g}°", outcome.answers, reading.ask).agreement.value == "differs", case
