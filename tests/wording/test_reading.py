"""Whole parts as teachers write them, from `fixtures/questions/wording.yaml`."""

from typing import Any

import pytest
from ruamel.yaml import YAML

from paperaudit.model.fact import Origin
from paperaudit.model.paper import Line, Part, Question
from paperaudit.model.place import Place
from paperaudit.model.reading import Reading
from paperaudit.resources import shipped
from paperaudit.wording import read
from tests.wording.compact import ask_line, fact_line

FILE = YAML(typ="safe").load(shipped("fixtures", "questions", "wording.yaml"))
CASES, SAID = FILE["parts"], FILE["statements"]


def line(words: str | None) -> Line | None:
    return None if words is None else Line(words, Place("sails.yaml", 7))


def lines(words: list[str]) -> tuple[Line, ...]:
    return tuple(Line(word, Place("sails.yaml", number)) for number, word in enumerate(words, 10))


def reading(case: dict[str, Any]) -> Reading:
    asked, shared = case.get("part", {}), case["question"]
    part = Part(
        "1.b",
        "b",
        line(asked.get("text")),
        given=lines(asked.get("given", [])),
        ask=line(asked.get("ask")),
        reasons=asked.get("reasons"),
    )
    question = Question(
        "1",
        (part,),
        line(shared.get("text")),
        lines(shared.get("figure", [])),
        lines(shared.get("given", [])),
        sketch=tuple((name, x, y) for name, x, y in shared.get("sketch", [])),
    )
    return read(question, part)


@pytest.mark.parametrize("case", CASES, ids=lambda case: case["title"])
def test_a_part_amounts_to_its_facts_and_its_ask(case: dict[str, Any]) -> None:
    found = reading(case)
    assert [fact_line(fact) for given in found.givens for fact in given.facts] == case["facts"]
    assert (found.ask and ask_line(found.ask)) == case["ask"]
    assert [unread.text for unread in found.unread] == case.get("unread", [])
    assert found.question.not_to_scale is case.get("not to scale", False)
    if "givens" in case:
        assert [given.text for given in found.givens] == case["givens"]


def test_a_statement_says_the_same_under_figure_under_given_and_in_the_text() -> None:
    for case in SAID:
        for said in case["said"]:
            begun = said if said.startswith(("m∠", "m(", "m arc")) else said[0].upper() + said[1:]
            sentence = begun.removesuffix(".")
            forms = [{"figure": [said]}, {"given": [said]}, {"text": f"A sail is sewn.\n\n{sentence}. Find x."}]
            found = [reading({"question": form, "part": {"ask": "x"}}) for form in forms]
            facts = [sorted(fact_line(fact) for given in one.givens for fact in given.facts) for one in found]
            assert facts == [sorted(case["facts"])] * 3, said


def test_every_given_says_where_it_comes_from() -> None:
    stated, told = reading(CASES[0]), reading(CASES[1])
    assert [given.origin for given in stated.givens] == [Origin.FIGURE, Origin.FIGURE, Origin.GIVEN, Origin.GIVEN]
    assert [given.place.line for given in stated.givens] == [10, 11, 10, 11]
    assert {given.origin for given in told.givens} == {Origin.TEXT}
    assert {given.place.describe() for given in told.givens} == {"sails.yaml, line 7"}


def test_reading_twice_gives_the_same() -> None:
    for case in CASES:
        assert reading(case) == reading(case)


def test_a_text_of_a_kilometre_is_refused_and_not_worked_through() -> None:
    found = reading({"question": {"text": "AB = AC. " * 9_000}})
    assert [unread.expected for unread in found.unread[:1]] == ["a shorter text"]
