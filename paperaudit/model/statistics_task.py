"""What is asked about collected values: averages, spread, tables, charts and lines of best fit."""

from dataclasses import dataclass
from fractions import Fraction
from typing import Literal, TypeAlias

from paperaudit.model.topic import TopicFact, TopicTask

Measure: TypeAlias = Literal[
    "mean",
    "median",
    "mode",
    "range",
    "lower quartile",
    "upper quartile",
    "interquartile range",
    "variance",
    "standard deviation",
    "five-number summary",
    "outliers",
    "modal class",
    "median class",
    "total frequency",
    "cumulative frequencies",
    "pie-chart angles",
    "correlation coefficient",
    "regression line",
]
Basis: TypeAlias = Literal["", "population", "sample"]


@dataclass(frozen=True, slots=True)
class Values:
    """Single values in the order of the paper, with their common unit ("" for none)."""

    values: tuple[Fraction, ...]
    unit: str = ""


@dataclass(frozen=True, slots=True)
class Frequencies:
    """Values, each with the number of times that it occurs."""

    values: tuple[Fraction, ...]
    counts: tuple[int, ...]
    unit: str = ""


@dataclass(frozen=True, slots=True)
class ClassInterval:
    """A class of grouped values as it is printed, with its ends."""

    text: str
    low: Fraction
    high: Fraction


@dataclass(frozen=True, slots=True)
class Grouped:
    """Classes in rising order, each with its frequency."""

    classes: tuple[ClassInterval, ...]
    counts: tuple[int, ...]
    unit: str = ""


@dataclass(frozen=True, slots=True)
class Densities:
    """Classes of a histogram in rising order, each with its frequency density."""

    classes: tuple[ClassInterval, ...]
    densities: tuple[Fraction, ...]
    unit: str = ""


@dataclass(frozen=True, slots=True)
class Categories:
    """Names, each with its frequency: what a pie chart or a bar chart shows."""

    names: tuple[str, ...]
    counts: tuple[int, ...]


@dataclass(frozen=True, slots=True)
class Pairs:
    """Pairs of values (x, y) of a scatter diagram; the names are those of the columns."""

    across: tuple[Fraction, ...]
    up: tuple[Fraction, ...]
    across_name: str = "x"
    up_name: str = "y"


Collected: TypeAlias = Values | Frequencies | Grouped | Densities | Categories | Pairs


@dataclass(frozen=True, slots=True)
class Summary(TopicTask):
    """Measures of collected values. `basis` says whether a variance is that of a population or of a sample."""

    measures: tuple[Measure, ...]
    collected: Collected
    basis: Basis = ""

    def in_words(self) -> str:
        """What is asked for, as half a sentence."""
        return f"the {' and the '.join(self.measures)} of collected values"


@dataclass(frozen=True, slots=True)
class Sector(TopicTask):
    """The angle of one sector of a pie chart."""

    name: str
    collected: Categories

    def in_words(self) -> str:
        """What is asked for, as half a sentence."""
        return f"the angle of the sector {self.name}"


@dataclass(frozen=True, slots=True)
class Predicted(TopicTask):
    """The value that the regression line gives for a value of the other quantity."""

    at: Fraction
    collected: Pairs

    def in_words(self) -> str:
        """What is asked for, as half a sentence."""
        return "a value read off the regression line"


@dataclass(frozen=True, slots=True)
class MeanGroup:
    """A group in a story of means: how many values it has and their mean, or the values; None for what is asked."""

    count: int
    mean: Fraction | None = None
    values: tuple[Fraction, ...] = ()


@dataclass(frozen=True, slots=True)
class MeanBalance(TopicTask):
    """Groups that make up a whole. One of them, or the whole, is without a mean: this mean is asked for.

    A group of one value is that value.
    """

    groups: tuple[MeanGroup, ...]
    whole: MeanGroup
    wanted: str

    def in_words(self) -> str:
        """What is asked for, as half a sentence."""
        return f"the {self.wanted} from means"


@dataclass(frozen=True, slots=True)
class UpTo(TopicTask):
    """How many values lie above `low` and up to `high` (None for no bound), by the cumulative `sums` at `ends`."""

    ends: tuple[Fraction, ...]
    sums: tuple[int, ...]
    low: Fraction | None
    high: Fraction | None

    def in_words(self) -> str:
        """What is asked for, as half a sentence."""
        return "a number read off cumulative frequencies"


@dataclass(frozen=True, slots=True)
class MissingCount(TopicTask):
    """The frequency `letter` that is missing (None in `counts`), from the mean, or from how many there are in all.

    `values` are those of the table, or the middles of its classes where `middles` says so.
    """

    values: tuple[Fraction, ...]
    counts: tuple[int | None, ...]
    letter: str
    mean: Fraction | None = None
    whole: int | None = None
    middles: bool = False

    def in_words(self) -> str:
        """What is asked for, as half a sentence."""
        return "a frequency that is missing"


@dataclass(frozen=True, slots=True)
class MissingCell(TopicTask):
    """The one number that is missing from a table with totals; `labels` are its row and column.

    `rows` hold the numbers, None where a number is missing; `row_total` and `column_total` say whether the last
    column and the last row are totals.
    """

    row_names: tuple[str, ...]
    column_names: tuple[str, ...]
    rows: tuple[tuple[Fraction | None, ...], ...]
    row_total: bool
    column_total: bool
    wanted: tuple[tuple[int, int], ...]

    def in_words(self) -> str:
        """What is asked for, as half a sentence."""
        return "a number that is missing from a table"


@dataclass(frozen=True, slots=True)
class Clashing(TopicTask):
    """Something of a table or list whose own numbers disagree: the statements and why they cannot hold."""

    clash: tuple[str, ...]
    why: tuple[str, ...]

    def in_words(self) -> str:
        """What is asked for, as half a sentence."""
        return "something of a table that contradicts itself"


@dataclass(frozen=True, slots=True)
class Doubtful(TopicTask):
    """Something of a table or list beside a sentence that may count the same things, or others: what is in doubt."""

    doubt: str

    def in_words(self) -> str:
        """What is asked for, as half a sentence."""
        return "something of values whose number is in doubt"


@dataclass(frozen=True, slots=True)
class Told(TopicFact):
    """A sentence, a list or a table that the reading of a story rests on."""

    text: str

    def in_words(self) -> str:
        """The statement as it is printed."""
        return self.text
