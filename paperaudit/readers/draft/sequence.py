"""Decides which numbers are those of questions and parts: the ones that go on where others stopped."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Final

from paperaudit.readers.draft.numbering import Number, Style

_ALIGNED: Final = 5.0
"""Points within which numbers of one level stand under one another."""
_LOOSELY: Final = 14.0
_NEARLY: Final = 30.0
"""Points that a dressed number, next in its turn and behind a full stop, may stand aside."""
_LONGEST_GAP: Final = 3
"""Numbers that may be left out by mistake where a number otherwise looks like its neighbours."""
_TOP: Final = (Style.WORD, Style.ARABIC, Style.DECIMAL, Style.BRACKETED)


@dataclass(frozen=True, slots=True)
class Stand:
    """Where a number stands: its left and right edge and where the text behind it begins, from its column's left.

    `across` is its left edge on the page. `alone` where nothing but its own cell, or bold type, sets it off;
    `inner` where it follows another number or text on the row; `flows` where the row before it runs on into this one.
    """

    left: float
    right: float
    text: float
    across: float
    alone: bool = False
    inner: bool = False
    flows: bool = False
    capital: bool = True


@dataclass(frozen=True, slots=True)
class Level:
    """An open level: its style, its last number and where that stood."""

    style: Style
    dress: str
    value: tuple[int, ...]
    stand: Stand


@dataclass(frozen=True, slots=True)
class Step:
    """A number taken up: how deep it stands, which reading of it counts, and whether it is out of its turn."""

    depth: int
    number: Number
    irregular: bool = False


def step_of(levels: Sequence[Level], readings: Sequence[Number], stand: Stand) -> Step | None:
    """Where a number goes on from the open levels, or None where it is part of a sentence.

    It is the next one of an open level, or the first of a new one below; a number that leaves some out or
    repeats one counts where it stands exactly under its neighbours.
    """
    steps = [step for number in readings for step in _steps(levels, number, stand)]
    if not steps:
        return None
    return min(steps, key=lambda step: (step.irregular, -_fit(levels, step, stand), -step.depth))


def _steps(levels: Sequence[Level], number: Number, stand: Stand) -> list[Step]:
    if number.style is Style.DECIMAL:
        return _decimal_steps(levels, number, stand)
    found: list[Step] = []
    for depth, level in enumerate(levels):
        if level.style is not number.style:
            continue
        last, here = level.value[-1], number.value[-1]
        if level.dress != number.dress and number.style is not Style.WORD:
            # A slip of the setter's: (a), then b).
            if here == last + 1 and number.dress and _exactly_under(level.stand, stand) and not stand.flows:
                found.append(Step(depth, number))
            continue
        near = bool(number.dress) and not stand.flows and abs(level.stand.left - stand.left) <= _NEARLY
        under = stand.inner or near or _under(level.stand, stand)
        if here == last + 1 and under and not _within_sentence(number, stand, level.stand):
            found.append(Step(depth, number))
        elif (
            -2 <= here - last <= _LONGEST_GAP + 1
            and here != last + 1
            and not stand.inner
            and not stand.flows
            and _exactly_under(level.stand, stand)
            and _set_off(number, stand)
        ):
            found.append(Step(depth, number, irregular=True))
    first = number.value == (1,) or (not levels and number.style is Style.WORD)
    if first and _may_open(levels, number, stand):
        found.append(Step(len(levels), number))
    return found


def _may_open(levels: Sequence[Level], number: Number, stand: Stand) -> bool:
    """Whether the first number of a style may open a level below the open ones."""
    if any(level.style is number.style and level.dress == number.dress for level in levels):
        return False
    if not levels:
        return number.style in _TOP and (number.style is Style.WORD or not stand.inner) and _set_off(number, stand)
    if number.style is Style.WORD:
        return False
    if number.style is Style.ARABIC:
        # A list within a question headed by its word: 1, 2, 3 are its parts.
        return levels[-1].style is Style.WORD and _set_off(number, stand)
    if stand.flows and not stand.inner and not stand.alone:
        return False
    return number.dress != "" or stand.alone


def _decimal_steps(levels: Sequence[Level], number: Number, stand: Stand) -> list[Step]:
    """Steps of numbers such as 3.2.1, whose own levels say where they belong."""
    if stand.inner and not levels:
        return []
    found: list[Step] = []
    value = number.value
    open_values = [level.value for level in levels]
    if levels and levels[0].style not in (Style.WORD, Style.ARABIC, Style.DECIMAL):
        return []
    for depth, level in enumerate(levels):
        if level.style is Style.DECIMAL and len(level.value) == len(value) and level.value[:-1] == value[:-1]:
            ahead = value[-1] - level.value[-1]
            if ahead == 1 and (_under(level.stand, stand) or stand.inner or not stand.flows):
                found.append(Step(depth, number))
            elif -1 <= ahead <= _LONGEST_GAP and _exactly_under(level.stand, stand) and not stand.flows:
                found.append(Step(depth, number, irregular=True))
    if value[-1] == 1:
        if open_values and _is_below(open_values[-1], levels[-1].style, value):
            found.append(Step(len(levels), number))
        elif not levels and value == (1,) * len(value):
            found.append(Step(0, number))
        elif levels and levels[0].style is Style.DECIMAL and value[:-1] == _next(levels[0].value[: len(value) - 1]):
            # The next question has no heading of its own: 1.4 is followed by 2.1.
            found.append(Step(0, number))
    return found


def _is_below(above: tuple[int, ...], style: Style, value: tuple[int, ...]) -> bool:
    if style in (Style.WORD, Style.ARABIC):
        return len(value) == 2 and value[:1] == above
    return style is Style.DECIMAL and value[:-1] == above


def _next(value: tuple[int, ...]) -> tuple[int, ...]:
    return (value[0] + 1, *value[1:]) if value else ()


def _under(one: Stand, other: Stand) -> bool:
    """Whether two numbers stand under one another by an edge, on the page or in their columns.

    The first of a level may stand on the row of the number above it, where places are less sure.
    """
    if one.inner and abs(one.left - other.left) <= _LOOSELY:
        return True
    return (
        abs(one.left - other.left) <= _ALIGNED
        or abs(one.across - other.across) <= _ALIGNED
        or abs(one.right - other.right) <= _ALIGNED / 2
        or abs(one.text - other.text) <= _ALIGNED / 2
    )


def _exactly_under(one: Stand, other: Stand) -> bool:
    near = _ALIGNED / 2
    return any(
        abs(mine - its) <= near
        for mine, its in ((one.left, other.left), (one.across, other.across), (one.right, other.right))
    )


def _within_sentence(number: Number, stand: Stand, neighbour: Stand) -> bool:
    """Whether a number that would fit the sequence belongs to the sentence that runs over the row's end."""
    if stand.inner or stand.alone:
        return False
    if stand.flows and not stand.left < neighbour.text - _ALIGNED:
        return True
    return not _set_off(number, stand)


def _set_off(number: Number, stand: Stand) -> bool:
    """Whether a number looks like one of a question: dressed, or alone, or before a capital letter."""
    if number.style is Style.WORD or number.dress:
        return True
    return stand.alone or (stand.capital and not stand.flows)


def _fit(levels: Sequence[Level], step: Step, stand: Stand) -> int:
    """How well a step fits by where it stands; an (i) behind (h) may go on with letters or open a Roman level."""
    if step.depth < len(levels):
        return 2 if _exactly_under(levels[step.depth].stand, stand) else 1
    above = levels[-1].stand if levels else None
    return 2 if above is None or stand.inner or stand.left > above.left + _ALIGNED else 0


def opened(levels: Sequence[Level], step: Step, stand: Stand) -> tuple[Level, ...]:
    """The open levels after a step; an irregular one does not move where its level stands."""
    number = step.number
    level = Level(number.style, number.dress, number.value, stand)
    if stand.inner and step.depth < len(levels):
        level = replace(level, stand=levels[step.depth].stand)
    return (*levels[: step.depth], level)
