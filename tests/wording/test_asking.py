"""Asks in every spelling, from `fixtures/questions/wording.yaml`."""

import pytest
from ruamel.yaml import YAML

from paperaudit.model.ask import Ask
from paperaudit.model.reading import Unread
from paperaudit.resources import shipped
from paperaudit.wording import read_ask
from tests.wording.compact import ask_line

CASES = YAML(typ="safe").load(shipped("fixtures", "questions", "wording.yaml"))["asks"]


@pytest.mark.parametrize(("said", "ask"), [(said, case["ask"]) for case in CASES for said in case["said"]])
def test_an_ask_comes_to_its_task(said: str, ask: str) -> None:
    found = read_ask(said)
    assert isinstance(found, Ask), found
    assert ask_line(found) == ask


@pytest.mark.parametrize(
    ("said", "text"),
    [
        ("Calculate, giving reasons, the size of ∠ABC.", "∠ABC"),
        ("What is the size of angle ABC?", "angle ABC"),
        ("Hence, or otherwise, find the value of x.", "x"),
        ("Determine the sizes of ∠A and ∠B.", "∠A and ∠B"),
        ("Show that AB ∥ CD.", "Show that AB ∥ CD"),
        ("solve 3(x - 4) = 2x + 5", "solve 3(x - 4) = 2x + 5"),
        ("65% of 240 litres", "65% of 240 litres"),
        ("make T the subject of PV = nRT", "make T the subject of PV = nRT"),
    ],
)
def test_an_ask_is_named_by_the_teachers_own_words(said: str, text: str) -> None:
    found = read_ask(said)
    assert isinstance(found, Ask) and found.text == text


def test_the_place_is_right_behind_what_was_cut_out() -> None:
    found = read_ask("Calculate, giving reasons, the size of ∠ABC wobbly.")
    assert isinstance(found, Unread) and found.text[found.start :] == "wobbly."


@pytest.mark.parametrize(
    ("said", "at", "nearest", "expected"),
    [
        ("Calcuate ∠ABC", "Calcuate ∠ABC", "calculate", "an ask such as"),
        ("Find the mean of the marks", "mean of the marks", "", "not yet known: mean"),
        ("AB = AC", "AC", "", "an ask such as"),
        ("How much rope is left?", "", "", "an ask such as"),
    ],
)
def test_what_is_no_ask_says_so(said: str, at: str, nearest: str, expected: str) -> None:
    found = read_ask(said)
    assert isinstance(found, Unread)
    assert found.text[found.start :] == at or not at
    assert found.nearest == nearest and found.expected.startswith(expected)


def test_equations_each_to_be_solved_are_no_system() -> None:
    assert isinstance(read_ask("Solve each of the following equations: 2x = 4"), Ask)
    found = read_ask("Solve each of the following equations: 2x = 4 and x + y = 9")
    assert isinstance(found, Unread) and found.expected == "one equation in a part"
