"""What is asked about chance: experiments with their outcomes, events, stated probabilities, tables."""

from dataclasses import dataclass
from fractions import Fraction
from typing import Literal, TypeAlias

from paperaudit.model.statistics_task import MissingCell
from paperaudit.model.topic import TopicTask


@dataclass(frozen=True, slots=True)
class Thing:
    """One kind of outcome of a draw: its name as printed, how many there are of it, its number if it has one.

    `tags` are further words that hold for it: "red", "heart", "ace" for the ace of hearts.
    """

    name: str
    count: int = 1
    number: Fraction | None = None
    tags: frozenset[str] = frozenset()


@dataclass(frozen=True, slots=True)
class Source:
    """What is drawn from or thrown: "dice", "coin", "cards", "bag", "letters", "numbers", "spinner"."""

    kind: str
    things: tuple[Thing, ...]

    @property
    def size(self) -> int:
        """How many equally likely outcomes there are."""
        return sum(thing.count for thing in self.things)


@dataclass(frozen=True, slots=True)
class Experiment:
    """Draws one after the other: from sources of their own, or (`replaced` False) from one that gets smaller."""

    draws: tuple[Source, ...]
    replaced: bool = True


Property: TypeAlias = Literal[
    "named", "even", "odd", "prime", "square", "cube", "multiple", "factor", "more", "less", "at least", "at most",
    "between", "equal", "vowel", "consonant", "any",
]  # fmt: skip


@dataclass(frozen=True, slots=True)
class Is:
    """What one outcome is: red, even, a multiple of 3, more than 4. `negated` for its opposite."""

    what: Property
    name: str = ""
    number: Fraction = Fraction(0)
    upper: Fraction = Fraction(0)
    negated: bool = False


@dataclass(frozen=True, slots=True)
class Either:
    """Outcomes that meet one of several conditions."""

    options: "tuple[Condition, ...]"


@dataclass(frozen=True, slots=True)
class Both:
    """Outcomes that meet all of several conditions: a red king."""

    conditions: "tuple[Condition, ...]"


Condition: TypeAlias = Is | Either | Both


@dataclass(frozen=True, slots=True)
class Single:
    """The one draw meets a condition."""

    condition: Condition


@dataclass(frozen=True, slots=True)
class Times:
    """So many of the draws meet a condition: `least` to `most` of them."""

    condition: Condition
    least: int
    most: int


@dataclass(frozen=True, slots=True)
class InTurn:
    """The first draw meets the first condition, the second the second, and so on."""

    conditions: tuple[Condition, ...]


@dataclass(frozen=True, slots=True)
class Together:
    """Conditions with how many draws meet each, in any order: two reds and one blue."""

    parts: tuple[tuple[Condition, int], ...]


@dataclass(frozen=True, slots=True)
class Alike:
    """All draws are of the same kind (or not, `same` False: all different)."""

    same: bool


@dataclass(frozen=True, slots=True)
class Score:
    """The sum, product or difference of the numbers meets a condition."""

    how: Literal["sum", "product", "difference"]
    condition: Condition


Event: TypeAlias = Single | Times | InTurn | Together | Alike | Score


@dataclass(frozen=True, slots=True)
class ProbabilityOf(TopicTask):
    """The probability of an event of an experiment; with `trials`, how often it is to be expected.

    With `known`, the probability of the event where that one is known to happen.
    """

    experiment: Experiment
    event: Event
    trials: int = 0
    known: Event | None = None

    def in_words(self) -> str:
        """What is asked for, as half a sentence."""
        return "an expected number" if self.trials else "the probability of an event"


@dataclass(frozen=True, slots=True)
class OutcomesOf(TopicTask):
    """How many outcomes an experiment has."""

    experiment: Experiment

    def in_words(self) -> str:
        """What is asked for, as half a sentence."""
        return "the number of outcomes"


@dataclass(frozen=True, slots=True)
class FromTable(TopicTask):
    """A table of outcomes with probabilities (None where one is missing) or frequencies, and what is asked of it.

    `want` names it: the missing probability, that of some of the outcomes, the expected number in `trials`,
    the mean (expected value) of outcomes that are numbers. With `shares`, each probability is its entry of `chances`
    and so many times the `letter`: 2x, 0.4 − x; "missing" then asks for the letter.
    """

    names: tuple[str, ...]
    chances: tuple[Fraction | None, ...]
    want: Literal["missing", "of", "expected", "mean", "variance"]
    of: tuple[int, ...] = ()
    trials: int = 0
    counted: bool = False
    letter: str = ""
    shares: tuple[Fraction, ...] = ()

    def in_words(self) -> str:
        """What is asked for, as half a sentence."""
        return "something of a table of probabilities"


@dataclass(frozen=True, slots=True)
class OfCompleted(TopicTask):
    """The probability of the cells at `of` among `cells` of a two-way table that is to be completed first."""

    table: MissingCell
    names: tuple[str, ...]
    cells: tuple[tuple[int, int], ...]
    of: tuple[int, ...]

    def in_words(self) -> str:
        """What is asked for, as half a sentence."""
        return "a probability from a two-way table with numbers missing"


@dataclass(frozen=True, slots=True)
class Successes(TopicTask):
    """The probability that `least` to `most` of several independent events happen.

    `names` and `chances` have one entry an event; trials of one event repeat it. `decimal` says how they are printed.
    """

    names: tuple[str, ...]
    chances: tuple[Fraction, ...]
    least: int
    most: int
    decimal: bool = True

    def in_words(self) -> str:
        """What is asked for, as half a sentence."""
        return "the probability of so many of several independent events"


@dataclass(frozen=True, slots=True)
class Observed(TopicTask):
    """A relative frequency: an event that came `count` times in `whole` trials; with `trials`, the expected number."""

    name: str
    count: int
    whole: int
    trials: int = 0

    def in_words(self) -> str:
        """What is asked for, as half a sentence."""
        return "an expected number" if self.trials else "a relative frequency"


@dataclass(frozen=True, slots=True)
class AreCounted(TopicTask):
    """Whether two properties that are counted in a group of `whole` are independent: how many have each, and both."""

    names: tuple[str, str]
    whole: int
    first: int
    second: int
    both: int

    def in_words(self) -> str:
        """What is asked for, as half a sentence."""
        return "whether events are independent"


@dataclass(frozen=True, slots=True)
class OfVenn(TopicTask):
    """Two sets in a group: sizes of the group, the sets, both; `want` is the region, `chance` its probability.

    Regions: "both", "neither", "first only", "second only", "either", "first", "second", "exactly one".
    `known` is the region of a condition.
    """

    whole: int | None
    first: int | None
    second: int | None
    both: int | None
    neither: int | None
    want: str
    chance: bool
    names: tuple[str, str] = ("first", "second")
    known: str = ""

    def in_words(self) -> str:
        """What is asked for, as half a sentence."""
        return "the number in a region of a Venn diagram"
