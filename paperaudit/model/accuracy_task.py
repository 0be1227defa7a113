"""What is asked about accuracy: estimates, and the bounds of what is known to an accuracy."""

from dataclasses import dataclass
from typing import Literal

from paperaudit.model.ask import Accuracy
from paperaudit.model.expression import Expression
from paperaudit.model.topic import TopicFact, TopicTask


@dataclass(frozen=True, slots=True)
class Estimated(TopicTask):
    """A calculation to be estimated by rounding its numbers; `told` says that the question says how."""

    expression: Expression
    accuracy: Accuracy
    told: bool

    def in_words(self) -> str:
        """What is asked for, as half a sentence."""
        return "a calculation to be estimated"


@dataclass(frozen=True, slots=True)
class RoundedTo(TopicFact):
    """A size that is known to an accuracy: x = 3.4 correct to 1 decimal place.

    `name` is "" for a thing without one; `shape` is the shape whose length, width … it is.
    """

    name: str
    value: Expression
    accuracy: Accuracy
    truncated: bool = False
    shape: str = ""

    def in_words(self) -> str:
        """The statement as it is printed."""
        return f"{self.name or 'a size'}, known to an accuracy"


@dataclass(frozen=True, slots=True)
class Bound(TopicTask):
    """A bound of what is known to an accuracy, of what is worked out with it, or the whole interval.

    `of` is an expression in the names that the givens have, or None for the one thing that they state; with
    `accuracy` it is a number that the ask itself states. `name` is its letter, or "area" of a shape.
    """

    which: Literal["upper", "lower", "both", "interval"]
    of: Expression | None = None
    accuracy: Accuracy | None = None
    name: str = ""

    def in_words(self) -> str:
        """What is asked for, as half a sentence."""
        return "bounds of a rounded number"

    def needs_givens(self) -> bool:
        """Whether the ask states no number itself."""
        return self.accuracy is None
