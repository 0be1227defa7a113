"""Classical values of plane geometry, each with its source in fixtures/published/classical.yaml."""

from pathlib import Path
from typing import Any

import pytest
from ruamel.yaml import YAML

from paperaudit.model.derivation import Derived
from tests.geometry.audited_questions import audited

FILE = Path(__file__).parents[2] / "fixtures" / "published" / "classical.yaml"
CASES: list[dict[str, Any]] = YAML(typ="safe").load(FILE.read_text(encoding="utf-8"))


def check(case: dict[str, Any]) -> None:
    """The classical value is confirmed; a proof is given."""
    proof = case["answer"] == "proved"
    part = audited(case, None if proof else case["answer"])
    assert isinstance(part.outcome, Derived), part.outcome
    assert part.verdict == ("derived" if proof else "confirmed"), part.outcome.answers


@pytest.mark.parametrize(
    "case",
    [
        pytest.param(
            case,
            id=case["title"],
            marks=[pytest.mark.xfail(reason=case["open"], strict=True)] if "open" in case else [],
        )
        for case in CASES
    ],
)
def test_a_classical_value(case: dict[str, Any]) -> None:
    check(case)


def test_every_value_has_its_source() -> None:
    assert all(case["source"] for case in CASES)
