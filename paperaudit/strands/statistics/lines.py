"""What the derivations of statistics share: lines of working, sums, and the measure that they end in."""

from collections.abc import Sequence
from dataclasses import dataclass, field
from fractions import Fraction

from paperaudit.maths.collected_values import number
from paperaudit.maths.write import write
from paperaudit.model.ask import Ask
from paperaudit.model.derivation import Answer, Step, StepKind
from paperaudit.model.expression import Expression, Measured
from paperaudit.strands.finishing import finished

LONGEST_SUM = 40


@dataclass(slots=True)
class Lines:
    """The lines of one part, with the unit of its values and the ask that says how to end."""

    ask: Ask
    used: tuple[str, ...]
    unit: str = ""
    steps: list[Step] = field(default_factory=list)

    def say(self, statement: str, value: str = "", skill: str = "averages", starts: bool = False) -> str:
        """A line that rests on the one before, or on the givens where it `starts` anew."""
        before = (self.steps[-1].statement,) if self.steps and not starts else self.used
        self.steps.append(Step(statement, StepKind.CALCULATION, None, before, value, skill))
        return statement

    def end(self, value: Expression, kind: str = "", letter: str = "", unit: bool = True) -> Answer:
        """The answer with the unit of the values, rounded where the ask says so."""
        measured = Measured(value, self.unit) if self.unit and unit else value
        answer, closing = finished(measured, self.ask, self.steps[-1].statement if self.steps else "")
        self.steps.extend(closing)
        return Answer(answer.text, answer.value, letter, answer.rounded, kind)


def shown(value: Fraction | int) -> str:
    """A number in print.

    >>> shown(Fraction(-5, 2))
    '−2.5'
    """
    return write(number(Fraction(value)))


def bracketed(value: Fraction | int) -> str:
    """A number behind a sign: negative ones in brackets."""
    text = shown(value)
    return f"({text})" if value < 0 else text


def summed(values: Sequence[Fraction | int]) -> str:
    """A sum written out; of many values its ends only."""
    texts = [shown(values[0]), *map(bracketed, values[1:])]
    return " + ".join(texts if len(texts) <= LONGEST_SUM else [*texts[:3], "…", *texts[-2:]])


def products(rows: Sequence[tuple[Fraction, int]]) -> str:
    """The sum of values times frequencies, written out."""
    texts = [f"{bracketed(value)} × {count}" for value, count in rows]
    return " + ".join(texts if len(texts) <= LONGEST_SUM else [*texts[:3], "…", *texts[-2:]])


def over(above: Fraction, below: int) -> str:
    """A quotient as a pupil writes it: 24/4, 9.5/5 or −3/4."""
    return f"{shown(above)}/{below}" if above.denominator == 1 else f"{shown(above)} ÷ {below}"
