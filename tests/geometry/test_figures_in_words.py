"""Questions on triangles and polygons in exam prose, through the audit: fixtures/questions/figures-in-words.yaml."""

from pathlib import Path
from typing import Any

import pytest
from ruamel.yaml import YAML

from tests.geometry.test_circles_in_words import audited

FILE = Path(__file__).parents[2] / "fixtures" / "questions" / "figures-in-words.yaml"
CASES: list[dict[str, Any]] = YAML(typ="safe").load(FILE.read_text(encoding="utf-8"))
WRONG_KEYS = [(case["text"], key) for case in CASES for key in case.get("differs", ())]


@pytest.mark.parametrize("case", CASES, ids=[case["title"] for case in CASES])
def test_question(case: dict[str, Any]) -> None:
    part = audited(case["text"])
    assert part.verdict == case.get("verdict", "derived"), part.outcome
    if "derived" in case:
        assert [answer.text for answer in part.outcome.answers] == case["derived"]  # type: ignore[union-attr]


@pytest.mark.parametrize(("text", "key"), WRONG_KEYS)
def test_a_wrong_key_differs(text: str, key: str) -> None:
    assert audited(text, key).verdict == "differs"
