"""Relations that the paper states and that are not linear: AC = 5√2, the area of △ABC = 24 cm², sin ∠A = 3/5."""

from collections.abc import Iterator

from paperaudit.geometry.arrangement import Arrangement
from paperaudit.geometry.canonical import canonical
from paperaudit.geometry.figure import Balance
from paperaudit.geometry.theorems.theorem import Equation, Stated, Theorem


def _stated(arrangement: Arrangement) -> Iterator[Equation]:
    for condition in arrangement.figure.conditions:
        if isinstance(condition, Balance):
            left, right = (canonical(side, arrangement) for side in (condition.left, condition.right))
            weight = 1 if condition.reason == "given" else 8
            yield Equation(condition.reason, (Stated(condition.label),), left, right, weight=weight)


THEOREMS = (
    Theorem(
        "given",
        "What the paper states holds.",
        "forming equations",
        "common practice, no source",
        _stated,
        fires=("triangle ABC", "AB × BC = 24"),
        silent=("triangle ABC", "AB = 6"),
    ),
)
