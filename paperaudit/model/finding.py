"""What an audit reports: one fault, its place, why it is one, and what would mend it."""

from dataclasses import dataclass, field
from enum import Enum

from paperaudit.model.place import NOWHERE, Place


class Severity(Enum):
    """ERROR stops the print run, WARNING wants a look, NOTE is for information."""

    ERROR = "error"
    WARNING = "warning"
    NOTE = "note"


@dataclass(frozen=True, slots=True)
class Finding:
    """One fault. `part` is a part's id, a question's number, or "" for the whole paper.

    `because` holds what the finding rests on: the clashing givens, the two cases, the sum.
    """

    name: str
    severity: Severity
    message: str
    part: str = ""
    because: tuple[str, ...] = ()
    suggestion: str = ""
    place: Place = field(default=NOWHERE, compare=False)
