"""How many marks a working ordinarily carries: where a warning begins, and what to advise."""

from collections.abc import Collection
from dataclasses import dataclass
from fractions import Fraction
from math import ceil

from paperaudit.marking.convention import Convention
from paperaudit.marking.tariff import Earning, earnings, most_of, shows_working
from paperaudit.model.derivation import Answer, Derivation, Step

FEWEST_A_LINE = Fraction(2, 5)
"""Marks for each new line, rounded down, below which a part has clearly too few: one for two or three lines."""
FEWEST_A_REASON = Fraction(1, 2)
"""The same where reasons are required, for each new line with a reason of its own, rounded up."""
USUAL_A_LINE = Fraction(2, 3)
"""Marks for each new line, rounded up, that most papers give at most."""


@dataclass(frozen=True, slots=True)
class UsualMarks:
    """`fewest` and `most` raise no eyebrow; `low` to `high`, which lie within, are what most papers give."""

    fewest: int
    low: int
    high: int
    most: int

    def advice(self) -> str:
        """What is usual, for a sentence: "3 to 5", or one number."""
        return f"{self.low} to {self.high}" if self.low < self.high else str(self.low)


def usual_marks(
    derivation: Derivation,
    convention: Convention,
    reasons_required: bool,
    answers: tuple[Answer, ...] = (),
    known: Collection[str] = (),
) -> UsualMarks:
    """The marks that a derivation carries in an ordinary paper; wide on purpose, since teachers differ.

    Only lines that show something new count: no givens, and none that restate what is `known` from
    earlier parts or stands beside them. Fewest: two marks for five of them, and where reasons are
    required one for two with a reason. Most: one for each line (the known ones too), one for its reason
    and one for its value, and one more; many departments reward reasons that are not asked for.
    Common practice, no source.

    >>> from paperaudit.marking.convention import load
    >>> from paperaudit.model.derivation import StepKind
    >>> one_line = Derivation((Step("12 + 5 = 17", StepKind.CALCULATION, value="17"),), "")
    >>> usual_marks(one_line, load("method-accuracy"), False)
    UsualMarks(fewest=1, low=1, high=2, most=3)
    """
    steps = derivation.steps
    new = earnings(derivation, convention, reasons_required, answers, known)
    every = earnings(derivation, convention, True, answers)
    reasoned = sum(reasons_required and _has_theorem(line, steps) for line in new)
    fewest = max(1, int(len(new) * FEWEST_A_LINE), ceil(reasoned * FEWEST_A_REASON))
    most = max(1 + sum(_worth(line, steps[line.step]) for line in every), most_of(every), fewest)
    by_tariff = sum(line.usual for line in new) if reasons_required else 0
    low = max(fewest, reasoned, len(new) // 2)
    high = max(low + 1, ceil(len(new) * USUAL_A_LINE), by_tariff)
    return UsualMarks(fewest, min(low, most), min(high, most), most)


def _has_theorem(line: Earning, steps: tuple[Step, ...]) -> bool:
    return line.kind in ("statement", "equation") and not line.routine and steps[line.step].reason is not None


def _worth(line: Earning, step: Step) -> int:
    """One for the line, one for a reason of its own, one for a value that it reaches."""
    has_reason = step.reason is not None and line.kind in ("statement", "equation", "conclusion")
    return 1 + has_reason + (bool(step.value) or shows_working(step))


NO_MARKS = UsualMarks(0, 0, 0, 0)
"""For a part without lines to judge by."""
