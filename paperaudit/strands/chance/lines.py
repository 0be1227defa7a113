"""What the derivations of chance share: lines of working and fractions as they stand before they are cancelled."""

from dataclasses import dataclass, field
from fractions import Fraction

from paperaudit.maths.collected_values import number
from paperaudit.maths.number_forms import whole_or_fraction
from paperaudit.maths.write import write
from paperaudit.model.ask import Ask
from paperaudit.model.derivation import Answer, Step, StepKind
from paperaudit.model.fact import Given
from paperaudit.strands.finishing import finished


@dataclass(slots=True)
class Lines:
    """The lines of one part; `decimals` says that its probabilities were given as decimals."""

    ask: Ask
    used: tuple[str, ...]
    givens: tuple[Given, ...] = ()
    skill: str = "probability of an event"
    decimals: bool = False
    steps: list[Step] = field(default_factory=list)

    def say(self, statement: str, value: str = "", starts: bool = False) -> str:
        """A line that rests on the one before, or on the givens where it `starts` anew."""
        before = (self.steps[-1].statement,) if self.steps and not starts else self.used
        self.steps.append(Step(statement, StepKind.CALCULATION, None, before, value, self.skill))
        return statement

    def shown(self, value: Fraction | int) -> str:
        """A probability in print: a fraction, or a decimal where the paper's are."""
        exact = Fraction(value)
        return write(number(exact) if self.decimals else whole_or_fraction(exact))

    def end(self, value: Fraction, kind: str = "") -> Answer:
        """The answer, rounded where the ask says so."""
        shape = number(value) if self.decimals else whole_or_fraction(value)
        answer, closing = finished(shape, self.ask, self.steps[-1].statement if self.steps else "")
        self.steps.extend(closing)
        return Answer(answer.text, answer.value, answer.letter, answer.rounded, kind)


def share(part: int, whole: int) -> str:
    """A fraction as it stands before it is cancelled.

    >>> share(3, 6)
    '3/6'
    """
    return f"{part}/{whole}"
