"""Lines that an earlier part of the same question has reached already: nobody earns marks for them twice."""

from collections.abc import Collection, Mapping, Sequence

from paperaudit.model.audited import AuditedPart
from paperaudit.model.derivation import Derivation


def established(parts: Sequence[AuditedPart], part: AuditedPart) -> Mapping[str, AuditedPart]:
    """What the parts before this one in its question have shown: each statement with its part."""
    shown: dict[str, AuditedPart] = {}
    for earlier in parts:
        if earlier is part or earlier.part.id == part.part.id:
            break
        derivation = earlier.derivation()
        if derivation is not None and earlier.question.number == part.question.number:
            for step in derivation.steps:
                shown.setdefault(step.statement, earlier)
    return shown


def carried_lines(derivation: Derivation, known: Collection[str]) -> Mapping[int, str]:
    """The lines that need no new work: each step's index with the known statement that says as much.

    A line that only leads to such lines has "" there. The last line is never one of them: it is what
    the part asks for.

    >>> from paperaudit.model.derivation import Step, StepKind
    >>> steps = (Step("∠ABC = ∠ACB", StepKind.STATEMENT), Step("∠BAC = 44°", StepKind.STATEMENT))
    >>> carried_lines(Derivation(steps, ""), ["∠ABC = ∠ACB = 68°"])
    {0: '∠ABC = ∠ACB = 68°'}
    """
    steps = derivation.steps
    found: dict[int, str] = {}
    for at, step in enumerate(steps[:-1]):
        source = next((statement for statement in known if _says(statement, step.statement)), None)
        if source is not None:
            found[at] = source
    for at in reversed(range(len(steps) - 1)):
        users = [later for later in range(at + 1, len(steps)) if steps[at].statement in steps[later].uses]
        if users and at not in found and all(later in found for later in users):
            found[at] = ""
    return dict(sorted(found.items()))


def _says(known: str, statement: str) -> bool:
    """Whether everything that a chain of equals says is said by the other: a = b by b = a = c."""
    return statement == known or ("=" in statement and set(_sides(statement)) <= set(_sides(known)))


def _sides(statement: str) -> list[str]:
    return [side.strip() for side in statement.split("=")]
