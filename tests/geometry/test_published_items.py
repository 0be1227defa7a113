"""The geometry items of OpenStax Prealgebra 2e and Elementary Algebra 2e, each as a question with its printed answer.

fixtures/published/README.md has credit and licence; geometry-items.yaml says how each became a question.
"""

import json
import re
from pathlib import Path
from typing import Any

import pytest
from ruamel.yaml import YAML

from tests.geometry.audited_questions import audited

FOLDER = Path(__file__).parents[2] / "fixtures" / "published"
DATA: dict[str, list[dict[str, Any]]] = YAML(typ="safe").load(
    (FOLDER / "geometry-items.yaml").read_text(encoding="utf-8")
)
BOOK = json.loads((FOLDER / "openstax_worked_examples.json").read_text(encoding="utf-8"))
NUMBER = re.compile(r"\d+(?:\.\d+)?")


def _named(case: dict[str, Any]) -> str:
    return f"{case['id']} {case['ask']}"


def params(cases: list[dict[str, Any]]) -> list[Any]:
    """One parameter a case; what is still open is expected to fail, and shows up once it does not."""
    return [
        pytest.param(
            case,
            id=_named(case),
            marks=[pytest.mark.xfail(reason=case["open"], strict=True)] if "open" in case else [],
        )
        for case in cases
    ]


def check(case: dict[str, Any]) -> None:
    """The printed answer is confirmed, one with its first number a tenth off is contradicted."""
    part = audited(case, case["printed"])
    assert part.verdict == "confirmed", part.outcome
    wrong = NUMBER.sub(lambda found: f"{float(found[0]) * 1.1:.3f}", case["printed"], count=1)
    other = audited(case, wrong)
    assert other.verdict == "differs", other.comparison


@pytest.mark.parametrize("case", params(DATA["items"]))
def test_the_printed_answer_follows(case: dict[str, Any]) -> None:
    check(case)


def test_every_geometry_item_of_the_book_is_a_question_or_left_for_a_reason() -> None:
    book = {item["id"] for item in BOOK["items"] if item["strand"] == "geometry"}
    later = {item["id"] for item in DATA["later"]}
    assert {case["id"] for case in DATA["items"]} | later == book
    assert all(item["reason"] for item in DATA["later"])
    assert not any(case["id"] in later for case in DATA["items"])
