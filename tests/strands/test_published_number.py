"""Published values of arithmetic, each with its source in fixtures/published/number.yaml."""

from typing import Any

import pytest
from ruamel.yaml import YAML

from paperaudit.maths.equality import compare
from paperaudit.model.derivation import Agreement, Derived
from tests.strands.asked import FIXTURES, derived, reading_of

CASES: list[dict[str, Any]] = YAML(typ="safe").load((FIXTURES / "published" / "number.yaml").read_text("utf-8"))


@pytest.mark.parametrize("case", CASES, ids=[case["title"] for case in CASES])
def test_a_published_value(case: dict[str, Any]) -> None:
    given = case.get("given", ())
    name, outcome = derived(case["ask"], given)
    ask = reading_of(case["ask"], given).ask
    assert name == "number" and isinstance(outcome, Derived) and ask is not None, outcome
    assert compare(case["answer"], outcome.answers, ask).agreement is Agreement.AGREES, outcome.answers


def test_every_value_has_its_source() -> None:
    assert len(CASES) >= 25 and all(case["source"] for case in CASES)
