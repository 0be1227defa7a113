"""Every item of algebra among the published worked examples, put as a question with its printed answer as the key."""

import json
from typing import Any

import pytest

from paperaudit.maths.equality import compare
from paperaudit.model.derivation import Agreement, Derived
from paperaudit.strands.registry import derive
from tests.strands.asked import FIXTURES, reading_of

BOOK = json.loads((FIXTURES / "published" / "openstax_worked_examples.json").read_text("utf-8"))
ITEMS: dict[str, dict[str, Any]] = {item["id"]: item for item in BOOK["items"] if item["strand"] == "algebra"}
DOUBTFUL: dict[str, dict[str, Any]] = {item["id"]: item for item in BOOK["questionable"] if item["strand"] == "algebra"}

Question = tuple[str, tuple[str, ...], str]
"""The ask, the givens, the key."""

SOLVED = [f"osx-{number}" for number in (*range(131, 143), *range(150, 154), *range(157, 164), *range(176, 184),
                                         *range(185, 189))]  # fmt: skip
FACTORISED = [f"osx-{number}" for number in range(168, 176)]
FOUND = {
    "osx-143": "n", "osx-144": "a and b", "osx-145": "n and n + 1", "osx-146": "n, n + 2 and n + 4", "osx-147": "h",
    "osx-148": "n and q", "osx-149": "c and a", "osx-164": "a and b", "osx-165": "s and w", "osx-166": "n and d",
    "osx-167": "W and L",
}  # fmt: skip
WORDED: dict[str, list[Question]] = {
    "osx-154": [("find the largest whole number p for which 2.63p ≤ 20", (), "7")],
    "osx-155": [("find the largest whole number t for which 28.80 + 0.20t ≤ 50", (), "106")],
    "osx-156": [("find the smallest whole number a for which 32.50a ≥ 1000", (), "31")],
    "osx-184": [
        ("find the value of k for which m² − 5m + k is a perfect square", (), "k = 25/4"),
        ("write m² − 5m + 25/4 in the form (m + p)²", (), "(m − 5/2)²"),
    ],
    "osx-189": [("solve n(n + 1) = 240", (), "n = 15 or n = −16")],
    "osx-190": [("solve n(n + 2) = 99", (), "n = 9 or n = −11")],
    "osx-191": [("solve −16t² + 108t = 180, giving your answers to the nearest tenth", (), "t = 3.0 or t = 3.8")],
    "osx-192": [
        ("find the axis of symmetry of y = 2x² − 8x + 1", (), "x = 2"),
        ("find the turning point of y = 2x² − 8x + 1", (), "(2; −7)"),
    ],
    "osx-193": [
        ("find the x-intercepts of y = x² + 2x − 8", (), "(−4; 0) and (2; 0)"),
        ("find the y-intercept of y = x² + 2x − 8", (), "(0; −8)"),
    ],
    "osx-194": [
        ("find the maximum value of −16t² + 128t + 32", (), "288"),
        ("for what value of t does −16t² + 128t + 32 have its maximum", (), "4"),
    ],
}
AGAINST: dict[str, list[tuple[str, tuple[str, ...], str, str]]] = {
    "osx-q01": [("solve 0.5(16m + 34) = −15", (), "m = 0.25", "m = −4")],
    "osx-q09": [("solve −16t² + 96t = 48 to the nearest tenth", (), "0.6; 5.5", "0.6; 5.4")],
    "osx-q10": [("find 240 − 2x", ("x = 60",), "60", "120")],
    "osx-q13": [("find W and L", ("2L + 2W = 60 in", "L = 2W − 15 in"), "15 ft, 15 ft", "15 in, 15 in")],
    "osx-q17": [("solve 24000 + 0.03s > 60000", (), "s ≥ 1200000", "s > 1200000")],
    "osx-q22": [("solve 2x² + 6x = −5", (), "x = 3/2", "no real solutions")],
}
"""The printed value, which must be contradicted, and the right one. Complex roots of q22 are no school answer here."""


def typed(text: str) -> str:
    """The file's answers in a teacher's spelling."""
    spelled = (
        text.replace("sqrt(", "√(").replace("*", "").replace("identity: all real numbers", "infinitely many solutions")
    )
    return spelled.replace("$", "")


def questions(item: str) -> list[Question]:
    givens = tuple(ITEMS[item]["givens"])
    key = typed(ITEMS[item]["answer"])
    if item in SOLVED:
        return [(f"solve {' and '.join(givens)}", (), key)]
    if item in FACTORISED:
        return [(f"factorise fully {givens[0]}", (), key)]
    if item in FOUND:
        return [(f"find {FOUND[item]}", givens, key)]
    return WORDED[item]


def test_every_item_is_put_as_a_question() -> None:
    assert sorted(ITEMS) == sorted([*SOLVED, *FACTORISED, *FOUND, *WORDED])
    assert sorted(DOUBTFUL) == sorted(AGAINST)


def agreement(question: Question) -> Agreement:
    ask, givens, key = question
    reading = reading_of(ask, givens)
    assert reading.ask is not None and not reading.unread, reading.unread
    _, outcome = derive(reading)
    assert isinstance(outcome, Derived) or type(outcome).__name__ in ("Impossible", "NotDetermined"), outcome
    if not isinstance(outcome, Derived):
        words = {"Impossible": "no solution", "NotDetermined": "infinitely many solutions"}
        return Agreement.AGREES if key == words[type(outcome).__name__] else Agreement.DIFFERS
    return compare(key, outcome.answers, reading.ask).agreement


@pytest.mark.parametrize("item", sorted(ITEMS))
def test_the_printed_answer_agrees(item: str) -> None:
    for question in questions(item):
        assert agreement(question) is Agreement.AGREES, question


@pytest.mark.parametrize("item", sorted(DOUBTFUL))
def test_the_doubtful_answer_is_contradicted(item: str) -> None:
    for ask, givens, printed, right in AGAINST[item]:
        assert agreement((ask, givens, printed)) is Agreement.DIFFERS
        assert agreement((ask, givens, right)) is Agreement.AGREES
