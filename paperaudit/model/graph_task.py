"""What is asked about graphs of functions: domain and range, where they rise, their greatest values, moved graphs."""

from dataclasses import dataclass
from typing import Literal

from paperaudit.model.expression import Expression
from paperaudit.model.function_task import Function
from paperaudit.model.topic import TopicFact, TopicTask


@dataclass(frozen=True, slots=True)
class DomainOf(TopicTask):
    """The numbers for which a function has a value, or the values that it takes, or both."""

    function: Function
    what: Literal["domain", "range", "domain and range"]

    def in_words(self) -> str:
        """What is asked for, as half a sentence."""
        return f"the {self.what} of a function"


@dataclass(frozen=True, slots=True)
class Rising(TopicTask):
    """The numbers for which a function increases, or (`falling`) decreases.

    `by_slope` asks where its derivative is positive or negative: x³ increases for every number, and its derivative
    is not positive at 0.
    """

    function: Function
    falling: bool = False
    by_slope: bool = False

    def in_words(self) -> str:
        """What is asked for, as half a sentence."""
        return f"where a function {'decreases' if self.falling else 'increases'}"


@dataclass(frozen=True, slots=True)
class Bending(TopicTask):
    """Where a graph is concave up or down; its points of inflection, or only their x-coordinates."""

    function: Function
    what: Literal["up", "down", "point", "x"]

    def in_words(self) -> str:
        """What is asked for, as half a sentence."""
        return "the bend of a graph"


SOLE = "?"
"""The name of the function that is the only one of its question: "the volume"."""


@dataclass(frozen=True, slots=True)
class Optimum(TopicTask):
    """The greatest or least value of a formula, or (`at`) the number for which it has it."""

    function: Function
    greatest: bool
    at: bool = False

    def in_words(self) -> str:
        """What is asked for, as half a sentence."""
        return f"the {'greatest' if self.greatest else 'least'} value of a formula"


@dataclass(frozen=True, slots=True)
class RegionBetween(TopicTask):
    """The area that two curves enclose."""

    first: Function
    second: Function

    def in_words(self) -> str:
        """What is asked for, as half a sentence."""
        return "the area between two curves"


@dataclass(frozen=True, slots=True)
class GraphPoint(TopicFact):
    """A point on the graph of a function that has a name and no formula."""

    name: str
    x: Expression
    y: Expression

    def in_words(self) -> str:
        """The statement as it is printed."""
        return f"a point on the graph of {self.name}"


@dataclass(frozen=True, slots=True)
class ShiftedGraph(TopicTask):
    """The equation of a graph after steps such as ("right", 3), ("reflected", "x"), ("stretched y", 2)."""

    function: Function
    steps: tuple[tuple[str, Expression | None], ...]

    def in_words(self) -> str:
        """What is asked for, as half a sentence."""
        return "the equation of a graph that was moved"


@dataclass(frozen=True, slots=True)
class ImageOnGraph(TopicTask):
    """Where a point of y = f(x) goes on y = a f(k(x − p)) + q; `changed` is the right side with f(…) as `inner`.

    Without a point the transformation itself is asked for.
    """

    name: str
    inner: Expression
    outer: Expression
    point: tuple[Expression, Expression] | None = None
    describe: bool = False

    def in_words(self) -> str:
        """What is asked for, as half a sentence."""
        return "a transformation of a graph"
