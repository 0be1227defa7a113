"""Hostile text ends soon, in a value or in an honest refusal, never in an exception."""

import gc
import time
from collections.abc import Iterator

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from paperaudit.model.ask import Ask
from paperaudit.model.fact import Given
from paperaudit.model.paper import Line, Part, Question
from paperaudit.model.reading import Reading, Unread
from paperaudit.wording import read, read_ask, read_statement

SECONDS = 1.0
HOSTILE = {
    "brackets": "(" * 10_000 + "x" + ")" * 10_000,
    "brackets in the limit": "∠ABC = " + "(" * 50 + "x" + ")" * 50,
    "unclosed brackets": "∠ABC = " + "(" * 50 + "x",
    "brackets side by side": "∠ABC = " + "(x)" * 320,
    "square and round": "∠ABC = " + "[(" * 25 + "x" + ")]" * 24,
    "roots of roots": "x = " + "√" * 950,
    "square roots in words": "x = " + "square root of " * 60 + "4",
    "a tower": "x = 2" + "^2" * 450,
    "minuses": "x = " + "-" * 950 + "1",
    "a long sum": "x = " + "+".join(["2x"] * 320),
    "a long chain": " = ".join(["AB"] * 190),
    "clauses": "AB = AC and " * 75 + "AB = AC",
    "twice": "∠A is " + "twice " * 150 + "∠B",
    "more than": "∠A is " + "20° more than " * 60 + "∠B",
    "digits": "x = " + "9" * 950,
    "a list": ", ".join("ABCDEFGH" * 40) + " are collinear",
    "capitals": "A" * 990,
    "hats": "A" + "\u0302" * 950,
    "marks": "∠A" + "\u0301\u0323\u035c" * 300 + " = 4",
    "right to left": "\u202e" + "AB = AC" + "\u202d\u2066" * 100,
    "Arabic": "زاوية ABC = 40",
    "ligatures": "\ufdfa" * 600,
    "nothing": "",
    "spaces": " " * 950,
    "nul": "AB = \0 AC",
    "lone surrogate": "AB = \ud800",
    "code": "__import__('os').system('true')",
    "leads": "in the diagram, " * 60,
    "reasons": "giving reasons, " * 60,
    "prefixes": "the the the the " * 55 + "triangle ABC",
}


def part_of(text: str) -> tuple[Question, Part]:
    part = Part("1", "1", text=Line(text))
    return Question("1", (part,), text=Line(text)), part


@pytest.fixture(autouse=True)
def of_its_own() -> Iterator[None]:
    """Times are taken without the walks of the garbage collector through what thousands of other tests have left."""
    gc.freeze()
    yield
    gc.unfreeze()


@pytest.mark.parametrize("name", HOSTILE)
def test_hostile_text_ends_soon(name: str) -> None:
    text = HOSTILE[name]
    started = time.process_time()
    assert isinstance(read_statement(text), Given | Unread)
    assert isinstance(read_ask(text), Ask | Unread)
    assert time.process_time() - started < 2 * SECONDS
    assert isinstance(read(*part_of(text)), Reading)
    assert time.process_time() - started < 6 * SECONDS


def test_what_is_too_deep_is_refused_by_name() -> None:
    assert "nested" in getattr(read_statement("∠ABC = " + "(" * 51 + "x" + ")" * 51), "expected", "")
    assert isinstance(read_statement(HOSTILE["brackets in the limit"]), Given)


PIECES = st.sampled_from(
    [
        "AB",
        "CD",
        "ABC",
        "∠",
        "∠ABC",
        "△",
        "=",
        "∥",
        "⊥",
        ":",
        "2",
        "3x",
        "x",
        "°",
        "(",
        ")",
        " ",
        ", ",
        " and ",
        "is",
        "the",
        "triangle",
        "bisects",
        "produced to",
        "lies on",
        "midpoint of",
        "twice",
        "more than",
        "find",
        "solve",
        "show that",
        "in the ratio",
        "AB̂C",
        "B̂₁",
        "√",
        "²",
        "^",
        "/",
        "−",
        "%",
        "cm",
        "m",
        "R",
        "7,5",
        "12 500",
        "reflex",
        "angle",
        ".",
        "?",
        "diagonals",
        "respectively",
        "altitude",
        "in order round O",
        "perpendicular",
        "\u0302",
        "′",
        "arc",
        "major",
        "sector",
        "segment",
        "radius",
        "circle O",
        "⊙O",
        "the circle",
        "sin",
        "tan",
        "distance from",
        "between",
        "incircle of",
        "touches",
        "medians",
        "centroid",
        "midline",
        "bearing of",
        "from",
        "elevation",
        "cut off by",
        "subtends",
        "1/2",
        "½",
        "of",
        "A",
        "if",
        "sum of",
        "them",
        "perimeter",
        "exterior angle",
        "outside",
        "to the nearest",
    ]
)
SEVERAL = st.lists(PIECES, max_size=14)


@given(st.one_of(st.text(max_size=80), SEVERAL.map(" ".join), SEVERAL.map("".join)))
@settings(max_examples=700, deadline=None)
def test_any_text_gives_a_value_or_a_refusal(text: str) -> None:
    for found in (read_statement(text), read_ask(text)):
        assert isinstance(found, Given | Ask | Unread)
        if isinstance(found, Unread):
            assert 0 <= found.start <= len(found.text) + 1
            assert found.expected
    assert isinstance(read(*part_of(text)), Reading)
