"""Other ways to an answer, for mark schemes: what a pupil may write besides the shortest working."""

from dataclasses import replace

from paperaudit.model.audited import AuditedPaper, AuditedPart
from paperaudit.strands.limits import within_limits
from paperaudit.strands.registry import with_other_ways as of_strand


def with_other_ways(audited: AuditedPaper) -> AuditedPaper:
    """The audit with up to five really different derivations a part, the shortest first; nothing else changes."""
    return replace(audited, parts=tuple(_part(part) for part in audited.parts))


def _part(part: AuditedPart) -> AuditedPart:
    outcome = within_limits(lambda: of_strand(part.strand, part.reading, part.outcome), lambda _why: part.outcome)
    return replace(part, outcome=outcome)
