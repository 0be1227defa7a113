"""What is asked about chance: experiments with their outcomes, events, stated probabilities, and counting."""

from dataclasses import dataclass
from fractions import Fraction
from typing import Literal, TypeAlias

from paperaudit.model.topic import TopicFact, TopicTask


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
    """The probability of an event of an experiment; with `trials`, how often it is to be expected."""

    experiment: Experiment
    event: Event
    trials: int = 0

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


EventTerm: TypeAlias = tuple[str, bool]
"""The name of an event and whether it happens."""


@dataclass(frozen=True, slots=True)
class EventName:
    """P(A), P(A'), P(A and B), P(A or B), P(A | B): events with how they are joined."""

    first: EventTerm
    join: Literal["", "and", "or", "given"] = ""
    second: EventTerm | None = None
    negated: bool = False


@dataclass(frozen=True, slots=True)
class ChanceIs(TopicFact):
    """P(A) = 0.3, as a statement."""

    of: EventName
    value: Fraction
    text: str

    def in_words(self) -> str:
        """The statement as it is printed."""
        return self.text


@dataclass(frozen=True, slots=True)
class EventsAre(TopicFact):
    """Two events are independent, or mutually exclusive."""

    kind: Literal["independent", "mutually exclusive", "exhaustive"]
    events: tuple[str, str]
    text: str

    def in_words(self) -> str:
        """The statement as it is printed."""
        return self.text


@dataclass(frozen=True, slots=True)
class ChanceOf(TopicTask):
    """The probability of joined events, from the probabilities that are given."""

    of: EventName

    def in_words(self) -> str:
        """What is asked for, as half a sentence."""
        return "a probability of events"


@dataclass(frozen=True, slots=True)
class AreEvents(TopicTask):
    """Whether two events are independent or mutually exclusive."""

    kind: Literal["independent", "mutually exclusive"]
    events: tuple[str, str]

    def in_words(self) -> str:
        """What is asked for, as half a sentence."""
        return f"whether events are {self.kind}"


@dataclass(frozen=True, slots=True)
class FromTable(TopicTask):
    """A table of outcomes with probabilities (None where one is missing) or frequencies, and what is asked of it.

    `want` names it: the missing probability, that of some of the outcomes, the expected number in `trials`,
    the mean (expected value) of outcomes that are numbers.
    """

    names: tuple[str, ...]
    chances: tuple[Fraction | None, ...]
    want: Literal["missing", "of", "expected", "mean", "variance"]
    of: tuple[int, ...] = ()
    trials: int = 0
    counted: bool = False

    def in_words(self) -> str:
        """What is asked for, as half a sentence."""
        return "something of a table of probabilities"


@dataclass(frozen=True, slots=True)
class Count(TopicTask):
    """A count of arrangements or choices.

    `how`: "factorial" n!, "permutations" nPr, "combinations" nCr, "letters" arrangements of a word,
    "codes" with `choices` for each place, "choices" several choices of r from n multiplied.
    """

    how: Literal["factorial", "permutations", "combinations", "letters", "codes", "choices", "circle", "beyond"]
    n: int = 0
    r: int = 0
    word: str = ""
    choices: tuple[int, ...] = ()
    groups: tuple[tuple[int, int], ...] = ()

    def in_words(self) -> str:
        """What is asked for, as half a sentence."""
        return "the number of arrangements or choices"


@dataclass(frozen=True, slots=True)
class OfVenn(TopicTask):
    """Two sets in a group: sizes of the group, the sets, both; `want` is the region, `chance` its probability.

    Regions: "both", "neither", "first only", "second only", "either", "first", "second", "exactly one".
    """

    whole: int | None
    first: int | None
    second: int | None
    both: int | None
    neither: int | None
    want: str
    chance: bool
    names: tuple[str, str] = ("first", "second")

    def in_words(self) -> str:
        """What is asked for, as half a sentence."""
        return "the number in a region of a Venn diagram"
