"""What is asked about sines, cosines and tangents beyond triangles."""

from dataclasses import dataclass
from typing import Literal

from paperaudit.model.expression import Expression, Relation
from paperaudit.model.topic import TopicTask


@dataclass(frozen=True, slots=True)
class SolveTrig(TopicTask):
    """An equation in sines, cosines or tangents of one letter; without bounds the general solution.

    `low` and `high` are degrees; `open_low` and `open_high` say that an end does not count itself. Where the paper has
    `radians`, everything is in degrees here and the answers are multiples of π.
    """

    relation: Relation
    letter: str
    low: Expression | None = None
    high: Expression | None = None
    open_low: bool = False
    open_high: bool = False
    radians: bool = False

    def in_words(self) -> str:
        """What is asked for, as half a sentence."""
        return "a trigonometric equation to solve"


@dataclass(frozen=True, slots=True)
class OfWave(TopicTask):
    """The amplitude, period or range of y = a sin bx + c."""

    what: Literal["amplitude", "period", "range", "greatest value", "least value"]
    formula: Expression

    def in_words(self) -> str:
        """What is asked for, as half a sentence."""
        return f"the {self.what} of a trigonometric graph"


@dataclass(frozen=True, slots=True)
class InRadians(TopicTask):
    """Degrees changed to radians, or radians (`back`) to degrees."""

    angle: Expression
    back: bool = False

    def in_words(self) -> str:
        """What is asked for, as half a sentence."""
        return "an angle in radians or degrees"


@dataclass(frozen=True, slots=True)
class ExactRatio(TopicTask):
    """The exact value of a sine, cosine or tangent of a special angle, or of a sum and product of such.

    `printed` has the expression with its angles in radians where the paper has it so.
    """

    expression: Expression
    printed: Expression | None = None

    def in_words(self) -> str:
        """What is asked for, as half a sentence."""
        return "the exact value of sines and cosines"


@dataclass(frozen=True, slots=True)
class SimplerTrig(TopicTask):
    """An expression in sines, cosines and tangents to be simplified; `printed` as in an exact ratio."""

    expression: Expression
    printed: Expression | None = None

    def in_words(self) -> str:
        """What is asked for, as half a sentence."""
        return "a trigonometric expression to simplify"


@dataclass(frozen=True, slots=True)
class RatioFrom(TopicTask):
    """An expression in functions of an angle of which one function is given, and between which angles it lies.

    `low` and `high` are degrees; `signs` are functions of the angle with their sign ("cos", -1).
    """

    relation: Relation
    letter: str
    wanted: Expression
    low: Expression | None = None
    high: Expression | None = None
    signs: tuple[tuple[str, int], ...] = ()

    def in_words(self) -> str:
        """What is asked for, as half a sentence."""
        return "one trigonometric ratio of an angle from another"


@dataclass(frozen=True, slots=True)
class Identity(TopicTask):
    """Two expressions in sines, cosines and tangents to be shown equal; `radians` where the paper has π in them."""

    relation: Relation
    radians: bool = False

    def in_words(self) -> str:
        """What is asked for, as half a sentence."""
        return "a trigonometric identity"
