"""What is asked about numbers themselves: factors, places, order, accuracy, bases."""

from dataclasses import dataclass
from typing import Literal

from paperaudit.model.ask import Accuracy
from paperaudit.model.expression import Expression, RelationSign
from paperaudit.model.topic import TopicTask

CommonName = Literal["highest common factor", "lowest common multiple", "lowest common denominator", "common factors"]
NumberKind = Literal[
    "prime", "composite", "even", "odd", "square", "cube", "factor", "multiple", "triangular", "rational", "irrational"
]


@dataclass(frozen=True, slots=True)
class Common(TopicTask):
    """The highest common factor, the lowest common multiple or denominator, or all common factors, of numbers.

    `also` is the second of two that are asked for in one line.
    """

    what: CommonName
    numbers: tuple[Expression, ...]
    also: CommonName | None = None

    def in_words(self) -> str:
        """What is asked for, as half a sentence."""
        both = f" and the {self.also}" if self.also else ""
        return f"the {self.what}{both} of numbers"


@dataclass(frozen=True, slots=True)
class PrimeFactors(TopicTask):
    """A number as a product of primes, `index` for powers, or a list of its different prime factors."""

    number: Expression
    form: Literal["list", "product", "index"]

    def in_words(self) -> str:
        """What is asked for, as half a sentence."""
        return "the prime factors of a number"


@dataclass(frozen=True, slots=True)
class Listed(TopicTask):
    """Numbers of a kind: all factors of 24, the first five multiples of 7, the primes between 20 and 40.

    `of` is the number that factors or multiples are of. Of an endless kind, the first `count`, or those from
    `low` to `high`. `counted` asks how many there are; of `one`, any of them will do.
    """

    kind: NumberKind
    of: Expression | None = None
    count: int = 0
    low: Expression | None = None
    high: Expression | None = None
    counted: bool = False
    one: bool = False

    def in_words(self) -> str:
        """What is asked for, as half a sentence."""
        return f"a list of {self.kind} numbers"


@dataclass(frozen=True, slots=True)
class Remainder(TopicTask):
    """What is left when one whole number is divided by another."""

    number: Expression
    divisor: Expression

    def in_words(self) -> str:
        """What is asked for, as half a sentence."""
        return "the remainder of a division"


@dataclass(frozen=True, slots=True)
class IsOfKind(TopicTask):
    """Whether a number is prime, even, a square, or a factor or a multiple of another.

    `named` says that the answer is the kind itself: rational or irrational.
    """

    number: Expression
    kind: NumberKind
    of: Expression | None = None
    named: bool = False

    def in_words(self) -> str:
        """What is asked for, as half a sentence."""
        return f"whether a number is of a kind: {self.kind}"


@dataclass(frozen=True, slots=True)
class InOrder(TopicTask):
    """Numbers to be put in order of size."""

    numbers: tuple[Expression, ...]
    descending: bool = False

    def in_words(self) -> str:
        """What is asked for, as half a sentence."""
        return "numbers in order of size"


@dataclass(frozen=True, slots=True)
class Picked(TopicTask):
    """One of several numbers: the `rank`-th biggest or smallest, or the closest to a target.

    `labels` are the letters that the numbers carry, where they carry any: (a) 0.3 (b) 1/3.
    """

    numbers: tuple[Expression, ...]
    which: Literal["biggest", "smallest", "closest"]
    rank: int = 1
    target: Expression | None = None
    labels: tuple[str, ...] = ()

    def in_words(self) -> str:
        """What is asked for, as half a sentence."""
        return f"the {self.which} of some numbers"


@dataclass(frozen=True, slots=True)
class Related(TopicTask):
    """Whether one number is less than, equal to, at least … another; with no sign, which sign stands between."""

    left: Expression
    sign: RelationSign | Literal[""]
    right: Expression

    def in_words(self) -> str:
        """What is asked for, as half a sentence."""
        return "two numbers to be compared"


@dataclass(frozen=True, slots=True)
class DigitAt(TopicTask):
    """The digit of a number at the place of this power of ten: 2 for hundreds, −1 for tenths."""

    number: Expression
    power: int

    def in_words(self) -> str:
        """What is asked for, as half a sentence."""
        return "a digit of a number"


@dataclass(frozen=True, slots=True)
class ValueOfDigit(TopicTask):
    """What a digit of a number is worth: the 4 in 3 456 is worth 400."""

    number: Expression
    digit: int

    def in_words(self) -> str:
        """What is asked for, as half a sentence."""
        return "the value of a digit"


@dataclass(frozen=True, slots=True)
class InBase(TopicTask):
    """Numbers written in bases, added or subtracted and written in another base.

    `terms` are a sign (1 or −1), the digits as written and their base; the base of the answer is `to`.
    """

    terms: tuple[tuple[int, str, int], ...]
    to: int
    times: bool = False

    def in_words(self) -> str:
        """What is asked for, as half a sentence."""
        return f"a number in base {self.to}"


@dataclass(frozen=True, slots=True)
class InWords(TopicTask):
    """A whole number to be written in words, or (`figures`) words to be written in figures."""

    number: Expression
    figures: bool = False

    def in_words(self) -> str:
        """What is asked for, as half a sentence."""
        return "a number in words" if not self.figures else "a number in figures"


@dataclass(frozen=True, slots=True)
class FromList(TopicTask):
    """The numbers of a list that are of a kind; `one` says that any of them will do.

    `outside` asks for those that are not of the kind.
    """

    numbers: tuple[Expression, ...]
    kind: NumberKind
    of: Expression | None = None
    one: bool = False
    outside: bool = False

    def in_words(self) -> str:
        """What is asked for, as half a sentence."""
        return f"numbers of a list that are of a kind: {self.kind}"


@dataclass(frozen=True, slots=True)
class EqualTo(TopicTask):
    """The numbers of a list that have the same value as another; `outside` asks for those that have not."""

    numbers: tuple[Expression, ...]
    other: Expression
    outside: bool = False

    def in_words(self) -> str:
        """What is asked for, as half a sentence."""
        return f"numbers that are {'not ' if self.outside else ''}equal to another"


@dataclass(frozen=True, slots=True)
class Truncated(TopicTask):
    """A number to be cut off behind so many decimal places or figures."""

    number: Expression
    accuracy: Accuracy

    def in_words(self) -> str:
        """What is asked for, as half a sentence."""
        return "a number to be truncated"
