"""An audited paper: every part with its reading, outcome and verdict, before the findings are drawn."""

from dataclasses import dataclass
from typing import Literal, TypeAlias

from paperaudit.model.derivation import Comparison, Derivation, Derived, Outcome, Several
from paperaudit.model.finding import Finding
from paperaudit.model.paper import CognitiveLevel, Paper, Part, Question
from paperaudit.model.reading import Reading

Verdict: TypeAlias = Literal["confirmed", "derived", "differs", "impossible", "not-determined", "several", "not-read"]


@dataclass(frozen=True, slots=True)
class AuditedPart:
    """A part with what was read, what was derived, and how the stated answer compares.

    `skills` and `level` are the setter's own where stated, else proposed; `proposed` says which of
    the two words ("skills", "level") are proposals. `level` is None where none is stated and nothing was
    derived that one could be proposed from. `strand` is the strand that took it, or "".
    """

    question: Question
    part: Part
    reading: Reading
    outcome: Outcome
    verdict: Verdict
    comparison: Comparison | None = None
    strand: str = ""
    skills: tuple[str, ...] = ()
    level: CognitiveLevel | None = None
    proposed: tuple[str, ...] = ()

    def derivation(self) -> Derivation | None:
        """The first derivation, where there is one."""
        if isinstance(self.outcome, Derived | Several) and self.outcome.derivations:
            return self.outcome.derivations[0]
        return None


@dataclass(frozen=True, slots=True)
class AuditedPaper:
    """Every part of a paper, audited, in order of print, with the findings, the gravest first."""

    paper: Paper
    parts: tuple[AuditedPart, ...]
    findings: tuple[Finding, ...] = ()
