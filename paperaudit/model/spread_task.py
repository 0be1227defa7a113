"""Further tasks about collected values: outliers, histograms, lines of best fit that are stated, unknown values."""

from dataclasses import dataclass
from fractions import Fraction
from typing import Literal, TypeAlias

from paperaudit.model.statistics_task import Densities, Frequencies, Grouped, Values
from paperaudit.model.topic import TopicTask


@dataclass(frozen=True, slots=True)
class IsOutlier(TopicTask):
    """Whether a value is an outlier of the values that it is one of; `claimed` where it is to be shown."""

    value: Fraction
    collected: Values | Frequencies
    claimed: bool = False

    def in_words(self) -> str:
        """What is asked for, as half a sentence."""
        return "whether a value is an outlier"


@dataclass(frozen=True, slots=True)
class OfHistogram(TopicTask):
    """The frequencies or the frequency densities of all classes, of the classes at `of`, or the total frequency."""

    want: Literal["frequencies", "frequency densities", "total frequency"]
    collected: Grouped | Densities
    of: tuple[int, ...] = ()

    def in_words(self) -> str:
        """What is asked for, as half a sentence."""
        return f"the {self.want} of a histogram"


@dataclass(frozen=True, slots=True)
class OnStatedLine(TopicTask):
    """The value of `letter` on a stated line of best fit where the other letter is `at`."""

    letter: str
    across: str
    at: Fraction

    def in_words(self) -> str:
        """What is asked for, as half a sentence."""
        return "a value read off a line of best fit"

    def needs_givens(self) -> bool:
        """Without the line there is nothing to read off."""
        return True


UnknownMeasure: TypeAlias = Literal["median", "mode", "range", "mean"]


@dataclass(frozen=True, slots=True)
class UnknownValue(TopicTask):
    """The letter in a list whose median, mode, range or mean is known.

    Each entry of the list is `share` times the letter and a `constant`: (0, 5) for 5, (1, 2) for x + 2. `ordered`
    says that they stand in rising order, `place` that the letter is the "largest" or the "smallest" of them.
    """

    letter: str
    shares: tuple[Fraction, ...]
    constants: tuple[Fraction, ...]
    measure: UnknownMeasure
    value: Fraction
    ordered: bool = False
    place: Literal["", "largest", "smallest"] = ""

    def in_words(self) -> str:
        """What is asked for, as half a sentence."""
        return f"a value of a list with a known {self.measure}"

    def entries_at(self, letter: Fraction) -> tuple[Fraction, ...]:
        """The list with a number in place of the letter."""
        return tuple(share * letter + one for share, one in zip(self.shares, self.constants, strict=True))
