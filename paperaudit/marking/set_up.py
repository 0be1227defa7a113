"""Equations that a pupil has to set up from words: the first line then is work of the pupil's own."""

import re
from dataclasses import replace

from paperaudit.model.ask import Solve
from paperaudit.model.audited import AuditedPart
from paperaudit.model.derivation import Derivation, StepKind

FEWEST_WORDS = 6
"""Words from which a text tells of a situation."""

_WORD = re.compile(r"[^\W\d_]{2,}")
_COMMAND = re.compile(r"\bsolve\b|\bequation\b", re.IGNORECASE)


def as_marked(part: AuditedPart, derivation: Derivation) -> Derivation:
    """The derivation as its lines earn marks: an equation that the paper's words do not print counts as formed."""
    first, *rest = derivation.steps or (None,)
    if first is None or first.kind is not StepKind.GIVEN or not _told_in_words(part, first.statement):
        return derivation
    return replace(derivation, steps=(replace(first, kind=StepKind.EQUATION, reason=None), *rest))


def _told_in_words(part: AuditedPart, equation: str) -> bool:
    ask = part.reading.ask
    if ask is None or not isinstance(ask.task, Solve):
        return False
    text = " ".join(line.text for line in (part.question.text, part.part.text) if line)
    printed = _bare(" ".join([text, *(line.text for line in (*part.question.given, *part.part.given))]))
    return len(_WORD.findall(text)) >= FEWEST_WORDS and not _COMMAND.search(text) and _bare(equation) not in printed


def _bare(text: str) -> str:
    return re.sub(r"\s+", "", text).replace("−", "-")
