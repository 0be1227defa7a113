"""Other forms of one number: a surd, a power of a base, a fraction for a recurring decimal."""

from dataclasses import dataclass

from paperaudit.model.expression import Expression
from paperaudit.model.topic import TopicTask


@dataclass(frozen=True, slots=True)
class RecurringAsFraction(TopicTask):
    """A recurring decimal to be written as a fraction: `whole`.`fixed` and then `cycle` again and again.

    `claimed` is the fraction that it is to be shown to be, where the paper prints it.
    """

    whole: int
    fixed: str
    cycle: str
    claimed: Expression | None = None

    def in_words(self) -> str:
        """What is asked for, as half a sentence."""
        return "a recurring decimal to be written as a fraction"


@dataclass(frozen=True, slots=True)
class PowerOf(TopicTask):
    """A number or a calculation with powers to be written as one power; of `base` where one is named."""

    expression: Expression
    base: int = 0

    def in_words(self) -> str:
        """What is asked for, as half a sentence."""
        return "a number to be written as a power"


@dataclass(frozen=True, slots=True)
class InSurdForm(TopicTask):
    """A calculation with roots whose result is asked for as a√n or a + b√n; `root` is n, or 0 where n is a letter."""

    expression: Expression
    root: int = 0

    def in_words(self) -> str:
        """What is asked for, as half a sentence."""
        return "a surd in a form that is named"
