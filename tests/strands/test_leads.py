"""What a question's lead states is known in its parts, by the names that it gives (fixtures/questions/leads.yaml)."""

import io
from pathlib import Path
from typing import Any

import pytest
from ruamel.yaml import YAML

from paperaudit.audit import audit_read
from paperaudit.readers.question_file import read_question_file

CASES: list[dict[str, Any]] = YAML(typ="safe", pure=True).load(Path("fixtures/questions/leads.yaml"))


def answers(lead: str, parts: list[str]) -> list[list[str] | str]:
    """The answers of each part, or why it is declined."""
    asked = [{"number": chr(ord("a") + at), "text": text, "marks": 2} for at, text in enumerate(parts)]
    paper = io.StringIO()
    YAML(typ="safe", pure=True).dump({"questions": [{"number": 1, "text": lead, "parts": asked}]}, paper)
    return [
        [answer.text for answer in getattr(part.outcome, "answers", ())] or str(getattr(part.outcome, "why", ""))
        for part in audit_read(read_question_file(paper.getvalue(), "leads.yaml")).parts
    ]


@pytest.mark.parametrize("case", CASES, ids=lambda case: case["lead"][:60])
def test_parts_know_what_the_lead_states(case: dict[str, Any]) -> None:
    assert answers(case["lead"], list(case["parts"])) == list(case["parts"].values())


@pytest.mark.parametrize(
    ("lead", "part"),
    [
        ("Given: f(x) = x² − 2x − 8 and g(x) = x + 2.", "Determine the x-intercepts of h."),
        ("Given: f(x) = x² − 2x − 8 and g(x) = x + 2.", "Determine the x-intercepts of the graph."),
        ("The line l has equation y = 2x + 1. The line m has equation y = 3 − x.", "Find the gradient of n."),
    ],
)
def test_a_name_that_the_lead_does_not_give_is_no_other_curve(lead: str, part: str) -> None:
    (why,) = answers(lead, [part])
    assert (isinstance(why, str) and "given" in why) or "which of the equations" in why
