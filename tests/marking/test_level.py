"""Proposed levels: one derivation of each level, and longer ones never lower."""

import pytest

from paperaudit.marking.level import propose_level
from paperaudit.model.derivation import Derivation, Reason, Step, StepKind
from tests import sail_loft

ALGEBRA = Step("2x + 10 = 112", StepKind.ALGEBRA)
TOP = tuple(
    Step(f"line {at}", StepKind.STATEMENT, Reason(name))
    for at, name in enumerate(("angles-on-a-line", "isosceles-base-angles", "angle-sum-triangle", "alternate-angles"))
)
DRAWN = Step("draw EF ∥ AB", StepKind.CONSTRUCTION, Reason("construction-parallel"))


# The counts behind these are common practice, no source.
@pytest.mark.parametrize(
    ("steps", "level"),
    [
        (sail_loft.PANEL_STEPS[:1], "knowledge"),
        (sail_loft.PARALLEL_STEPS, "knowledge"),
        (sail_loft.PANEL_STEPS, "routine"),
        (sail_loft.SOLVING_STEPS, "routine"),
        (sail_loft.APEX_STEPS, "complex"),
        ((*sail_loft.PANEL_STEPS, ALGEBRA), "complex"),
        ((*TOP, ALGEBRA), "problem solving"),
        ((DRAWN, *sail_loft.PANEL_STEPS), "problem solving"),
    ],
)
def test_levels(steps: tuple[Step, ...], level: str) -> None:
    assert propose_level(Derivation(steps, "")) == level
