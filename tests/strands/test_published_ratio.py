"""Published values of ratio, money, measures and solids, and the worked examples of these strands."""

import json
from collections import Counter
from typing import Any

import pytest
from ruamel.yaml import YAML

from paperaudit.maths.equality import compare
from paperaudit.model.derivation import Agreement, Derived
from paperaudit.model.paper import Line, Part, Question
from paperaudit.model.reading import Reading
from paperaudit.strands.registry import derive
from paperaudit.wording.reading import read
from tests.strands.asked import FIXTURES

CASES: list[dict[str, Any]] = YAML(typ="safe").load((FIXTURES / "published" / "ratio.yaml").read_text("utf-8"))
WORKED = json.loads((FIXTURES / "published" / "openstax_worked_examples.json").read_text("utf-8"))
STRANDS = ("ratio and percent", "formulae and measures")


def reading_of(case: dict[str, Any]) -> Reading:
    text, ask = case.get("text"), case.get("ask")
    part = Part(
        id="1",
        number="",
        text=Line(text) if text else None,
        ask=Line(ask) if ask else None,
        given=tuple(map(Line, case.get("given", ()))),
    )
    return read(Question("1", (part,)), part)


@pytest.mark.parametrize("case", CASES, ids=lambda case: case["title"])
def test_a_published_value(case: dict[str, Any]) -> None:
    reading = reading_of(case)
    outcome = derive(reading)[1]
    assert not reading.unread and reading.ask is not None
    assert isinstance(outcome, Derived), outcome
    assert compare(case["answer"], outcome.answers, reading.ask).agreement is Agreement.AGREES, outcome.answers
    if "printed" in case:
        assert compare(case["printed"], outcome.answers, reading.ask).agreement is Agreement.DIFFERS


def test_every_worked_example_of_these_strands_is_here() -> None:
    wanted = {item["id"] for kind in ("items", "questionable") for item in WORKED[kind] if item["strand"] in STRANDS}
    assert wanted == {case["title"] for case in CASES if case["topic"] == "worked examples"}


def test_every_topic_has_five_values_with_their_source() -> None:
    counts = Counter(case["topic"] for case in CASES)
    assert min(counts.values()) >= 5 and sum(counts.values()) - counts["worked examples"] >= 25
    assert all(case["source"] for case in CASES)
