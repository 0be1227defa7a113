"""Claims about integers and expressions that are to be proved in algebra, and claims to be refuted by an example."""

from dataclasses import dataclass
from typing import Literal

from paperaudit.model.algebra_task import AlgebraTask
from paperaudit.model.expression import Expression, Relation

Property = Literal["remainder", "square", "prime", "positive"]


@dataclass(frozen=True, slots=True)
class IntegerClaim(AlgebraTask):
    """An expression in integers is a multiple of `divisor` and `remainder` more, or a square, for every integer.

    `setting` says in words which integers the letters stand for, `said` is the property in the paper's words,
    `never` that no value has it, `positive` that the letters stand for positive integers only.
    """

    expression: Expression
    claim: Property
    said: str
    divisor: int = 1
    remainder: int = 0
    setting: str = ""
    never: bool = False
    positive: bool = False

    def in_words(self) -> str:
        """What is asked for, as half a sentence."""
        return "a property of integers to prove"


@dataclass(frozen=True, slots=True)
class EqualSums(AlgebraTask):
    """Two expressions in the same integers that are to be shown equal: n² differences and the sum of the integers."""

    left: Expression
    right: Expression
    setting: str

    def in_words(self) -> str:
        """What is asked for, as half a sentence."""
        return "an identity of integers to prove"


@dataclass(frozen=True, slots=True)
class PositiveClaim(AlgebraTask):
    """An expression that is to be shown positive, or not negative (`zero`), for every number; `negative` turned."""

    expression: Expression
    zero: bool = False
    negative: bool = False

    def in_words(self) -> str:
        """What is asked for, as half a sentence."""
        return "an inequality to prove"


@dataclass(frozen=True, slots=True)
class CounterExample(AlgebraTask):
    """A false statement: numbers at which it fails are asked for.

    Either `relation` is said to hold always, or `expression` to be prime, a square, or to leave a remainder.
    `integers` says that the letters stand for integers, `from_one` for positive ones, `primes` for primes.
    """

    said: str
    relation: Relation | None = None
    expression: Expression | None = None
    claim: Property = "prime"
    divisor: int = 1
    remainder: int = 0
    integers: bool = True
    from_one: bool = False
    primes: bool = False

    def in_words(self) -> str:
        """What is asked for, as half a sentence."""
        return "a counter-example to find"
