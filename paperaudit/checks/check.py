"""What a check is: one fault, its page of explanation, an example with it and one without it, and its search."""

from collections.abc import Callable, Iterable
from dataclasses import dataclass

from paperaudit.model.audited import AuditedPaper
from paperaudit.model.finding import Finding, Severity
from paperaudit.model.place import NOWHERE, Place


@dataclass(frozen=True, slots=True)
class Check:
    """One fault that a paper may have.

    `meaning`, `matters` and `mend` are what `paperaudit explain` prints. `faulty` and `clean` are
    small question files: the first has the fault, the second is the first one mended. `alongside`
    names the findings that the faulty one cannot help having as well. `severity` is the usual one; a
    finding may be milder where the fault does less harm.
    """

    name: str
    severity: Severity
    title: str
    meaning: str
    matters: str
    mend: str
    faulty: str
    clean: str
    find: Callable[[AuditedPaper], Iterable[Finding]]
    alongside: tuple[str, ...] = ()

    def found(
        self,
        message: str,
        *,
        part: str = "",
        places: tuple[Place, ...] = (),
        because: tuple[str, ...] = (),
        suggestion: str = "",
        severity: Severity | None = None,
    ) -> Finding:
        """A finding of this check. Of `places`, the most telling first, the first known one counts."""
        place = next((place for place in places if place != NOWHERE), NOWHERE)
        return Finding(self.name, severity or self.severity, message, part, because, suggestion, place)
