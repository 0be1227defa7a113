"""A worked figure for each of the 72 facts of school geometry, after Euclid where he has it.

The Elements in Heath's numbering; the numbers in the figures are ours, and each answer follows from them by the
fact alone (fixtures/published/euclid.yaml says how).
"""

from pathlib import Path
from typing import Any

import pytest
from ruamel.yaml import YAML

from paperaudit.model.derivation import Derived
from tests.geometry.asked import answers, outcome

ROOT = Path(__file__).parents[2]
CASES: list[dict[str, Any]] = YAML(typ="safe").load(
    (ROOT / "fixtures" / "published" / "euclid.yaml").read_text(encoding="utf-8")
)
THEOREMS: dict[str, dict[str, Any]] = YAML(typ="safe").load(
    (ROOT / "schemes" / "theorems.yaml").read_text(encoding="utf-8")
)


def check(case: dict[str, Any]) -> None:
    """The outcome is the one stated, and its lines rest on the fact of the row."""
    result = outcome(case["figure"], case["given"], case["ask"], case.get("sketch"))
    if "verdict" in case:
        assert type(result).__name__ == case["verdict"], result
        return
    assert isinstance(result, Derived), result
    assert answers(result) == [case["answer"]]
    facts = {name for name, theorem in THEOREMS.items() if theorem.get("row") == case["row"]} | {case.get("by")}
    reasons = {step.reason.name for step in result.derivations[0].steps if step.reason}
    assert facts & reasons, reasons


@pytest.mark.parametrize(
    "case",
    [
        pytest.param(
            case,
            id=f"{case['row']} {case['proposition']} {case['ask']}",
            marks=[pytest.mark.xfail(reason=case["open"], strict=True)] if "open" in case else [],
        )
        for case in CASES
    ],
)
def test_each_fact_by_a_worked_figure(case: dict[str, Any]) -> None:
    check(case)


def test_every_fact_has_its_figure() -> None:
    assert {case["row"] for case in CASES} == set(range(1, 73))
