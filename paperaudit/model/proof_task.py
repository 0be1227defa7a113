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


@dataclass(frozen=True, slots=True)
class InductiveSum(AlgebraTask):
    """A sum over `term` from `start` on that is claimed to be `total`, for every integer from `start` on.

    `shown` are the first terms as the paper has them, () where it has a sigma; `index` is the letter of `term`.
    """

    term: Expression
    index: str
    total: Expression
    letter: str
    start: int = 1
    shown: tuple[Expression, ...] = ()

    def in_words(self) -> str:
        """What is asked for, as half a sentence."""
        return "a sum to prove by induction"


@dataclass(frozen=True, slots=True)
class InductiveMultiple(AlgebraTask):
    """An expression in an integer that is claimed to be a multiple of a number, from `start` on."""

    expression: Expression
    letter: str
    divisor: int
    start: int = 1

    def in_words(self) -> str:
        """What is asked for, as half a sentence."""
        return "a multiple to prove by induction"


Contradicted = Literal["root", "no end", "primes", "parity", "no integers", "sum irrational"]


@dataclass(frozen=True, slots=True)
class ByContradiction(AlgebraTask):
    """A claim of those that school proves by contradiction, with the numbers in it.

    "root": the root with `numbers` (radicand, degree) is irrational. "no end": there is no largest (or, `end`
    "smallest") number of the kind `said`, multiples of `numbers[0]` with the remainder `numbers[1]`. "primes": they do
    not end. "parity": where n to the power `numbers[2]` is a multiple of `numbers[0]` and `numbers[1]` more, n is.
    "no integers": ax + by = c with `numbers` (a, b, c). "sum irrational": of a rational and an irrational number.
    """

    what: Contradicted
    numbers: tuple[int, ...] = ()
    end: Literal["largest", "smallest"] = "largest"
    said: str = ""

    def in_words(self) -> str:
        """What is asked for, as half a sentence."""
        return "a claim to prove by contradiction"
