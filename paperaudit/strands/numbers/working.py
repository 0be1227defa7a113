"""What the derivations about numbers share: lines that follow on each other, and letters that the givens settle."""

from collections.abc import Callable
from dataclasses import dataclass, field
from fractions import Fraction

from paperaudit.errors import NoValue
from paperaudit.maths.exact import rational_value
from paperaudit.maths.write import write
from paperaudit.model.derivation import Answer, Derivation, Derived, Step, StepKind
from paperaudit.model.expression import Expression, Number, letters_of
from paperaudit.model.reading import Reading
from paperaudit.strands.finishing import ChecksDisagree
from paperaudit.strands.substitution import numbers_given, substituted

WholeCheck = Callable[[], bool]


@dataclass(slots=True)
class Working:
    """Lines of one skill, each resting on the one before unless it says otherwise."""

    skill: str
    used: tuple[str, ...] = ()
    steps: list[Step] = field(default_factory=list)

    def say(
        self,
        statement: str,
        value: str = "",
        uses: tuple[str, ...] | None = None,
        kind: StepKind = StepKind.CALCULATION,
    ) -> str:
        """Adds a line and gives its statement back."""
        before = (self.steps[-1].statement,) if self.steps else self.used
        self.steps.append(Step(statement, kind, None, before if uses is None else uses, value, self.skill))
        return statement

    def conclude(self, statement: str, value: str = "") -> str:
        """Adds the line that states the answer."""
        return self.say(statement, value, kind=StepKind.CONCLUSION)

    def derived(self, *answers: Answer, confirmed_by: str) -> Derived:
        """The outcome with these answers."""
        return Derived(answers, (Derivation(tuple(self.steps), confirmed_by, self.used),))


def with_givens(expression: Expression, reading: Reading) -> tuple[Expression, tuple[str, ...]]:
    """The expression with the numbers that the givens state for its letters, and the texts of these givens.

    Raises NoValue for a letter without a number.
    """
    names = letters_of(expression)
    if not names:
        return expression, ()
    known = numbers_given(reading.givens) or {}
    if missing := [name for name in names if name not in known and name != "π"]:
        raise NoValue(f"{missing[0]} has no value")
    texts = tuple(dict.fromkeys(known[name][1].text for name in names if name in known))
    return substituted(expression, {name: value for name, (value, _) in known.items()}), texts


def exact(expression: Expression) -> Fraction:
    """The value of an expression of numbers; raises NoValue where it is irrational."""
    value = rational_value(expression)
    if value is None:
        raise NoValue(f"{write(expression)} is irrational")
    return value


def whole(expression: Expression) -> int:
    """The value of an expression that must be a whole number; raises NoValue where it is not."""
    value = exact(expression)
    if value.denominator != 1:
        raise NoValue(f"{write(expression)} is no whole number")
    return value.numerator


def natural(expression: Expression) -> int:
    """The value of an expression that must be 1, 2, 3 …; raises NoValue where it is not."""
    value = whole(expression)
    if value < 1:
        raise NoValue(f"{write(expression)} is not a positive whole number")
    return value


def number(value: Fraction | int) -> Number:
    """A whole number as an expression."""
    return Number(Fraction(value))


def text_of(value: Fraction | int) -> str:
    """A number as it is printed, with the minus of print."""
    return write(number(value))


def require(holds: bool, what: str) -> None:
    """Raises ChecksDisagree where the second way does not agree."""
    if not holds:
        raise ChecksDisagree(what)
