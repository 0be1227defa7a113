"""What the search beyond linear relations has settled, one value a line."""

from dataclasses import dataclass
from typing import Literal, TypeAlias

from paperaudit.geometry.beyond.rows import Source
from paperaudit.geometry.figure.figure import Size
from paperaudit.geometry.linear.derive import Node
from paperaudit.geometry.theorems.theorem import Predicate
from paperaudit.model.expression import Letter

LetterSlopes: TypeAlias = dict[Letter, float]
Kind = Literal["size", "substituted", "letter", "predicate", "equation", "let", "linear"]


@dataclass(frozen=True, slots=True, eq=False)
class Fact:
    """One line of a derivation: a size or a letter that is settled, a predicate, or an equation in letters.

    `slopes` is empty for a number. A "linear" fact has its lines in `plain`, from the linear search.
    """

    kind: Kind
    subject: Size | Predicate | None
    slopes: LetterSlopes
    source: Source | None
    inputs: "tuple[Fact, ...]"
    cost: int
    plain: Node | None = None

    @property
    def size(self) -> Size:
        """The size or letter that the fact settles; only for facts that settle one."""
        return self.subject  # type: ignore[return-value]


Assumed: TypeAlias = tuple[tuple[Size, Letter], ...]
