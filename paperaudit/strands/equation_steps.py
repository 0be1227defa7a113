"""The lines of a solution as steps: what each rests on, and the skill that it shows."""

import re
from collections.abc import Sequence

from paperaudit.model.derivation import Step, StepKind

_NAME = re.compile(r"\(\d+\)")
_EXPANDING = "expanding brackets"


def solution_steps(
    lines: Sequence[str], moves: Sequence[str], skill: str, givens: Sequence[str] = ()
) -> tuple[Step, ...]:
    """Steps for the lines of `solve_linear` or `solve_simultaneous`; `givens` are the texts of the given ones.

    A line rests on the equations that it names, (1) and (3), else on the line before.
    """
    steps: list[Step] = []
    named: dict[str, str] = {}
    texts = iter(givens)
    for line, move in zip(lines, moves, strict=True):
        own, _, _ = line.rpartition(": ")
        if move == "given":
            given = next(texts, "")
            steps.append(Step(line, StepKind.GIVEN, None, (given,) if given else ()))
        else:
            uses = [*_values_used(own, steps), *(named[name] for name in _NAME.findall(own) if name in named)]
            if not uses and steps:
                uses = [steps[-1].statement]
            shown = _EXPANDING if move == "expand" else skill
            steps.append(Step(line, StepKind.ALGEBRA, None, tuple(dict.fromkeys(uses)), "", shown))
        if match := _NAME.match(own):
            named.setdefault(match.group(), line)
    return tuple(steps)


def _values_used(own: str, steps: Sequence[Step]) -> list[str]:
    """The lines behind the values that a line puts in: "x = 1" of "x = 1 in (1)"."""
    put_in, _, _ = own.partition(" in ")
    forms = put_in.split(", ") if "=" in put_in and not _NAME.match(put_in) else []
    return [step.statement for step in steps if step.statement.rpartition(": ")[2] in forms]


def with_values(steps: Sequence[Step], values: Sequence[str]) -> tuple[Step, ...]:
    """The steps, with `value` filled in where a line is one of these solved forms: x = 17."""
    return tuple(
        Step(step.statement, step.kind, step.reason, step.uses, step.statement, step.skill)
        if step.statement.rpartition(": ")[2] in values
        else step
        for step in steps
    )
