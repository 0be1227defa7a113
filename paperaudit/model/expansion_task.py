"""What is asked of the expansion of a power of two terms."""

from dataclasses import dataclass
from typing import Literal

from paperaudit.model.algebra_task import AlgebraTask
from paperaudit.model.expression import Expression


@dataclass(frozen=True, slots=True)
class BinomialExpansion(AlgebraTask):
    """The expansion, or its first `count` terms (0 for all), by the powers of `letter` where one is named.

    `order` is "ascending" or "descending", "" for the order in which the terms come; `highest` is the last power,
    and `validity` asks for which numbers the series of another exponent converges.
    """

    expression: Expression
    count: int = 0
    order: Literal["", "ascending", "descending"] = ""
    letter: str = ""
    highest: int = 0
    validity: bool = False

    def in_words(self) -> str:
        """What is asked for, as half a sentence."""
        return "a binomial expansion"


@dataclass(frozen=True, slots=True)
class TermOfExpansion(AlgebraTask):
    """The coefficient of a power of a letter in an expansion, or the term; `place` is the number of the term instead.

    With `unknown` it is given that the coefficient is `value`, and the letter is to be found.
    """

    expression: Expression
    letter: str = ""
    power: int = 0
    asked: Literal["coefficient", "term"] = "coefficient"
    place: int = 0
    unknown: str = ""
    value: Expression | None = None
    positive: bool = False

    def in_words(self) -> str:
        """What is asked for, as half a sentence."""
        return "a term of a binomial expansion"
