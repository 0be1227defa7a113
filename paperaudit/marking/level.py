"""Proposes a part's cognitive level from the lines of its derivation."""

from paperaudit.marking.reasons import routine
from paperaudit.model.derivation import Derivation, StepKind
from paperaudit.model.paper import CognitiveLevel

ROUTINE_THEOREMS = 2
"""Different theorems up to which a chain about a figure still is class-work routine."""
ROUTINE_LINES = 3
"""Lines about a figure up to which it is."""
ROUTINE_WORKING = 6
"""Lines of algebra or arithmetic up to which a familiar method is routine."""
LONG_THEOREMS = 4
"""Different theorems from which a chain that also needs algebra or many lines has no obvious route."""
LONG_LINES = 6
"""Lines about a figure from which it has none."""


def propose_level(derivation: Derivation) -> CognitiveLevel:
    """The level that the lines suggest; a setter's own always wins over it.

    - knowledge: one line, resting on one theorem or none;
    - problem solving: a line has to be drawn in, or four different theorems are combined over six
      lines or more or with algebra;
    - routine: up to three lines about the figure with two theorems and no algebra beside two of them,
      or up to six lines of a familiar calculation;
    - complex: the rest.

    The levels' meanings follow the descriptors of a national curriculum statement (CAPS, South Africa,
    2011, read in third-party copies: recall; well-known procedures; several steps without an obvious
    route; unseen problems). The counts are common practice, no source.
    """
    steps = [step for step in derivation.steps if step.kind is not StepKind.GIVEN]
    kinds = {step.kind for step in steps}
    theorems = {step.reason.name for step in steps if step.reason and step.reason.name not in routine()}
    about_figure = sum(1 for step in steps if step.kind in (StepKind.STATEMENT, StepKind.EQUATION))
    working = sum(1 for step in steps if step.kind in (StepKind.ALGEBRA, StepKind.CALCULATION))
    algebra = StepKind.ALGEBRA in kinds
    if StepKind.CONSTRUCTION in kinds:
        return "problem solving"
    if len(theorems) >= LONG_THEOREMS and (algebra or about_figure >= LONG_LINES):
        return "problem solving"
    if about_figure + working <= 1 and len(theorems) <= 1:
        return "knowledge"
    if about_figure > ROUTINE_LINES or len(theorems) > ROUTINE_THEOREMS or working > ROUTINE_WORKING:
        return "complex"
    return "complex" if algebra and len(theorems) >= ROUTINE_THEOREMS else "routine"
