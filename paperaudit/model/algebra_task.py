"""What is asked about expressions and equations in letters beyond solving and rewriting them."""

from dataclasses import dataclass
from typing import Literal

from paperaudit.model.expression import Expression, Relation
from paperaudit.model.topic import TopicTask

SolvingMethod = Literal["", "factorising", "completing the square", "formula"]
RootsWanted = Literal["equal", "real", "different", "none"]


@dataclass(frozen=True, slots=True)
class AlgebraTask(TopicTask):
    """A task of this topic."""


@dataclass(frozen=True, slots=True)
class SolveBy(AlgebraTask):
    """Equations or inequalities to be solved by a method, or for whole numbers only, all or the one at an end."""

    relations: tuple[Relation, ...]
    method: SolvingMethod = ""
    integers: bool = False
    letters: tuple[str, ...] = ()
    extreme: Literal["", "largest", "smallest"] = ""

    def in_words(self) -> str:
        """What is asked for, as half a sentence."""
        return f"an equation to solve by {self.method}" if self.method else "the integers that solve an inequality"


@dataclass(frozen=True, slots=True)
class InForm(AlgebraTask):
    """An expression to be written in a form with letters to be found: x² + 6x + 2 as (x + p)² + q.

    `values` are the letters whose values are asked for, () where the expression itself is.
    """

    expression: Expression
    form: Expression
    values: tuple[str, ...] = ()

    def in_words(self) -> str:
        """What is asked for, as half a sentence."""
        return "an expression to write in a form"


@dataclass(frozen=True, slots=True)
class CompletedSquare(AlgebraTask):
    """A quadratic to be written as a(x + p)² + q."""

    expression: Expression

    def in_words(self) -> str:
        """What is asked for, as half a sentence."""
        return "a square to complete"


@dataclass(frozen=True, slots=True)
class LeastValue(AlgebraTask):
    """The least or greatest value of a quadratic, or (`at`) where it has it."""

    expression: Expression
    at: bool = False
    greatest: bool | None = None

    def in_words(self) -> str:
        """What is asked for, as half a sentence."""
        return "the least or greatest value of a quadratic"


@dataclass(frozen=True, slots=True)
class Discriminant(AlgebraTask):
    """The discriminant of a quadratic; `nature` asks what it says about the roots, `count` how many there are."""

    relation: Relation
    asked: Literal["value", "nature", "count"] = "value"

    def in_words(self) -> str:
        """What is asked for, as half a sentence."""
        return "the discriminant of a quadratic equation"


@dataclass(frozen=True, slots=True)
class RootsFor(AlgebraTask):
    """For which values of a letter a quadratic equation has equal, real, different or no real roots."""

    relation: Relation
    letter: str
    wanted: RootsWanted
    unknown: str = ""

    def in_words(self) -> str:
        """What is asked for, as half a sentence."""
        return f"when an equation has {self.wanted} roots"


@dataclass(frozen=True, slots=True)
class DividedBy(AlgebraTask):
    """The remainder or the quotient of a polynomial, or whether it has a factor."""

    dividend: Expression
    divisor: Expression
    asked: Literal["remainder", "quotient", "factor", "show factor"] = "remainder"

    def in_words(self) -> str:
        """What is asked for, as half a sentence."""
        return "a polynomial divided by another"


@dataclass(frozen=True, slots=True)
class CoefficientFor(AlgebraTask):
    """A letter among the coefficients for which the remainder of a division is a given number."""

    dividend: Expression
    divisor: Expression
    remainder: Expression
    letter: str

    def in_words(self) -> str:
        """What is asked for, as half a sentence."""
        return "a coefficient from a remainder"


@dataclass(frozen=True, slots=True)
class OfRoots(AlgebraTask):
    """Expressions in the two roots of a quadratic equation, which have letters: α² + β²."""

    relation: Relation
    letters: tuple[str, str]
    wanted: tuple[Expression, ...]

    def in_words(self) -> str:
        """What is asked for, as half a sentence."""
        return "a value from the roots of an equation"


@dataclass(frozen=True, slots=True)
class Identity(AlgebraTask):
    """An identity to be shown."""

    left: Expression
    right: Expression

    def in_words(self) -> str:
        """What is asked for, as half a sentence."""
        return "an identity to show"


@dataclass(frozen=True, slots=True)
class SingleLogarithm(AlgebraTask):
    """A sum of logarithms to be written as one."""

    expression: Expression

    def in_words(self) -> str:
        """What is asked for, as half a sentence."""
        return "logarithms to be written as one"


@dataclass(frozen=True, slots=True)
class LogarithmsApart(AlgebraTask):
    """A logarithm to be written as a sum of logarithms of its factors."""

    expression: Expression

    def in_words(self) -> str:
        """What is asked for, as half a sentence."""
        return "a logarithm to be taken apart"


@dataclass(frozen=True, slots=True)
class LogarithmFromOthers(AlgebraTask):
    """A logarithm to be written in letters that the givens have for other ones: log 12 where log 2 = p, log 3 = q.

    `others` are logarithms that are named in place of letters: ln 24 in terms of ln 2 and ln 3.
    """

    expression: Expression
    letters: tuple[str, ...]
    others: tuple[Expression, ...] = ()

    def in_words(self) -> str:
        """What is asked for, as half a sentence."""
        return "a logarithm in terms of others"


@dataclass(frozen=True, slots=True)
class Rewritten(AlgebraTask):
    """An expression to be simplified, expanded or factorised under a condition on its letters."""

    command: Literal["simplify", "expand", "factorise"]
    expression: Expression
    positive: bool = False
    restrictions: bool = False

    def in_words(self) -> str:
        """What is asked for, as half a sentence."""
        return f"an expression to {self.command}"
