"""The small questions of fixtures/questions/geometry*.yaml."""

from pathlib import Path
from typing import Any

import pytest
from ruamel.yaml import YAML

from tests.geometry.asked import answers, outcome

FILES = sorted((Path(__file__).parents[2] / "fixtures" / "questions").glob("geometry*.yaml"))
CASES: list[dict[str, Any]] = [
    case for file in FILES for case in YAML(typ="safe").load(file.read_text(encoding="utf-8"))
]


@pytest.mark.parametrize("case", CASES, ids=[case["title"] for case in CASES])
def test_question(case: dict[str, Any]) -> None:
    result = outcome(case.get("figure", []), case.get("given", []), case["ask"], case.get("sketch"))
    assert type(result).__name__ == case["verdict"], result
    assert answers(result) == case.get("derived", answers(result))
    if "steps" in case:
        assert len(result.derivations[0].steps) == case["steps"], result  # type: ignore[union-attr]
    if "clash" in case:
        assert set(result.clash) == set(case["clash"])  # type: ignore[union-attr]
        assert result.why and "Together" not in result.why[-1]  # type: ignore[union-attr]
    if case["verdict"] == "NotDetermined":
        assert len(result.cases) == 2  # type: ignore[union-attr]
