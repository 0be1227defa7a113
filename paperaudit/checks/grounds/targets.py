"""The paper's spread of marks against its blueprint, in words."""

from collections.abc import Sequence
from fractions import Fraction
from typing import TYPE_CHECKING

from paperaudit.checks.grounds.words import listed

if TYPE_CHECKING:
    from paperaudit.marking.spread import Aim


def off_target(aims: "Sequence[Aim]") -> str:
    """What is off target, as a half sentence: "too much routine and too little knowledge"; "" where nothing is."""
    over = [aim.share.name for aim in aims if not aim.within and aim.difference > 0]
    under = [aim.share.name for aim in aims if not aim.within and aim.difference < 0]
    halves = [f"too {amount} {listed(names)}" for amount, names in (("much", over), ("little", under)) if names]
    return " and ".join(halves)


def shares_of(aims: "Sequence[Aim]", tolerance: Fraction) -> tuple[str, ...]:
    """A line a share: what the paper has, what the blueprint asks for."""
    return tuple(
        f"{aim.share.name}: {_shown(aim.percent)}% of the marks, the blueprint asks for "
        f"{_shown(aim.share.percent)}%, give or take {_shown(tolerance)}" + ("" if aim.within else " (off target)")
        for aim in aims
    )


def _shown(percent: Fraction) -> str:
    """A percentage to one decimal place, halves up, without a trailing zero."""
    tenths = int(percent * 10 + Fraction(1, 2))
    return f"{tenths // 10}" if tenths % 10 == 0 else f"{tenths // 10}.{tenths % 10}"
