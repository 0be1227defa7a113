"""Relations that the paper states and that are not linear, as first lines of the further search."""

from collections.abc import Iterator

from paperaudit.geometry.coordinates.arrangement import Arrangement
from paperaudit.geometry.figure.canonical import canonical
from paperaudit.geometry.figure.figure import Balance
from paperaudit.geometry.theorems.theorem import Equation, Stated, Theorem


def _stated(arrangement: Arrangement) -> Iterator[Equation]:
    for condition in arrangement.figure.conditions:
        if isinstance(condition, Balance):
            left, right = canonical(condition.left, arrangement), canonical(condition.right, arrangement)
            yield Equation(condition.reason, (Stated(condition.label),), left, right, weight=1)


THEOREMS = (
    Theorem(
        "given",
        "What the paper states holds.",
        "",
        "the paper itself",
        _stated,
        fires=("triangle ABC", "AB² + BC² = 50"),
        silent=("triangle ABC", "AB = 5"),
    ),
)
