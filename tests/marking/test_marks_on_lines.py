"""The marks of whole questions stand on the lines that show the method (fixtures/marks_on_lines.yaml)."""

from pathlib import Path
from typing import Any

import pytest
from ruamel.yaml import YAML

from paperaudit.audit import audit_read
from paperaudit.marking.allocation import allocate
from paperaudit.marking.convention import load
from paperaudit.marking.moves import Move, moves
from paperaudit.model.derivation import Step, StepKind
from paperaudit.readers.question_file import read_question_file

CASES = YAML(typ="safe", pure=True).load(Path("fixtures/marks_on_lines.yaml"))


@pytest.mark.parametrize("case", CASES, ids=lambda case: f"{case['text'][:40]} ({case['marks']})")
def test_marks_stand_on_the_lines_of_the_method(case: dict[str, Any]) -> None:
    paper = f"questions: [{{number: 1, marks: {case['marks']}, text: {case['text']!r}}}]"
    part = audit_read(read_question_file(paper, "case.yaml")).parts[0]
    scheme = allocate(part, load("method-accuracy"))
    derivation = part.derivation()
    assert derivation is not None
    found: dict[str, str] = {}
    for mark in scheme.allocation.marks:
        line = derivation.steps[mark.step].statement
        found[line] = " ".join(filter(None, (found.get(line), mark.printed(), mark.note)))
    assert found == case["lines"]


@pytest.mark.parametrize(
    ("lines", "expected"),
    [
        (("(1): x + y = 5", "(2): x − y = 1", "(1) + (2): 2x = 6"), "TIDYING TIDYING DECISIVE"),
        (("2x² − 6x + x − 3 = 0", "2x(x − 3) + 1(x − 3) = 0", "(x − 3)(2x + 1) = 0"), "STEP TIDYING DECISIVE"),
        (("x ≠ 1", "× (x − 1): 3 = x(x − 1)"), "TIDYING DECISIVE"),
        (("9π + 15π", "= 24π", "= 75.398…"), "STEP TIDYING TIDYING"),
        ((), ""),
    ],
)
def test_moves(lines: tuple[str, ...], expected: str) -> None:
    steps = tuple(Step(line, StepKind.ALGEBRA) for line in lines)
    assert moves(steps) == tuple(Move[name] for name in expected.split())
