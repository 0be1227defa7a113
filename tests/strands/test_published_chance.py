"""Published values of statistics, probability and counting against what is derived."""

import json
from typing import Any

import pytest
from ruamel.yaml import YAML

from paperaudit.maths.equality import compare
from paperaudit.model.derivation import Derived
from tests.strands.asked import FIXTURES
from tests.strands.told import outcome_of, reading_of

PUBLISHED: list[dict[str, Any]] = YAML(typ="safe", pure=True).load(FIXTURES / "published" / "chance.yaml")
ITEMS = [
    item
    for item in json.loads((FIXTURES / "published" / "openstax_worked_examples.json").read_text("utf-8"))["items"]
    if item["strand"] == "statistics"
]
_ROUNDINGS = {
    "nearest cent": ", to the nearest cent",
    "nearest thousandth": ", correct to 3 decimal places",
}


@pytest.mark.parametrize("case", PUBLISHED, ids=[case["source"][:60] for case in PUBLISHED])
def test_published_values(case: dict[str, Any]) -> None:
    outcome, asked = outcome_of(case)[1], reading_of(case).ask
    assert isinstance(outcome, Derived) and asked is not None, outcome
    found = compare(str(case["key"]), outcome.answers, asked)
    assert found.agreement.value == "agrees", found


@pytest.mark.parametrize("item", ITEMS, ids=[item["id"] for item in ITEMS])
def test_worked_examples(item: dict[str, Any]) -> None:
    ask = f"Find the {item['asked'].replace(' ; ', ', ')}{_ROUNDINGS.get(item['rounding'] or '', '')}."
    case = {"ask": ask, "given": item["givens"]}
    outcome, asked = outcome_of(case)[1], reading_of(case).ask
    assert isinstance(outcome, Derived) and asked is not None, outcome
    found = compare(item["answer"], outcome.answers, asked)
    assert found.agreement.value == "agrees", found


def test_there_are_enough_of_them() -> None:
    assert len(PUBLISHED) >= 30 and len(ITEMS) == 9
