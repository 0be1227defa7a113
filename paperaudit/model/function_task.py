"""What is given and asked about functions: values, compositions, inverses, derivatives, integrals."""

from dataclasses import dataclass
from typing import Literal

from paperaudit.model.expression import Expression
from paperaudit.model.topic import TopicFact, TopicTask


@dataclass(frozen=True, slots=True)
class Function(TopicFact):
    """A function by its formula in `letter`: f(x) = 2x + 1; "y" is the name of y = 2x + 1.

    With `order` it is that derivative of the formula. Without a formula it is one that a given states.
    """

    name: str
    letter: str = "x"
    formula: Expression | None = None
    order: int = 0

    def in_words(self) -> str:
        """The statement as it is printed."""
        return f"the function {self.name}"

    def defines(self) -> str:
        """The letter of the function."""
        return self.name


@dataclass(frozen=True, slots=True)
class ValueOf(TopicTask):
    """The value of functions one inside the other, the outermost first: ("f", "g") of 3 is f(g(3)).

    A name with ⁻¹ is an inverse.
    """

    names: tuple[str, ...]
    argument: Expression

    def in_words(self) -> str:
        """What is asked for, as half a sentence."""
        return "the value of a function"


@dataclass(frozen=True, slots=True)
class WhereEqual(TopicTask):
    """The x for which a function has a value, or two functions are equal."""

    name: str
    letter: str
    value: Expression | None = None
    other: str = ""

    def in_words(self) -> str:
        """What is asked for, as half a sentence."""
        return "where a function has a value"


@dataclass(frozen=True, slots=True)
class InverseOf(TopicTask):
    """The inverse of a function."""

    function: Function

    def in_words(self) -> str:
        """What is asked for, as half a sentence."""
        return "the inverse of a function"


@dataclass(frozen=True, slots=True)
class Derivative(TopicTask):
    """A derivative, at a value of the letter where one is said, from first principles where that is asked."""

    function: Function
    order: int = 1
    at: Expression | None = None
    first_principles: bool = False

    def in_words(self) -> str:
        """What is asked for, as half a sentence."""
        return "a derivative"


@dataclass(frozen=True, slots=True)
class Touching(TopicTask):
    """The tangent or the normal to a curve where x has a value, or its gradient there."""

    function: Function
    what: Literal["gradient", "tangent", "normal"]
    x: Expression
    y: Expression | None = None

    def in_words(self) -> str:
        """What is asked for, as half a sentence."""
        return f"the {self.what} of a curve at a point"


@dataclass(frozen=True, slots=True)
class Stationary(TopicTask):
    """The points of a curve where the gradient is 0; `nature` asks for what kind they are."""

    function: Function
    nature: bool = False

    def in_words(self) -> str:
        """What is asked for, as half a sentence."""
        return "the stationary points of a curve"


@dataclass(frozen=True, slots=True)
class Integral(TopicTask):
    """An integral, between limits where both are said; `area` is the size of the region down to the x-axis."""

    function: Function
    low: Expression | None = None
    high: Expression | None = None
    area: bool = False

    def in_words(self) -> str:
        """What is asked for, as half a sentence."""
        return "an integral"
