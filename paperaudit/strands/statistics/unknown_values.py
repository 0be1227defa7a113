"""A letter in a list whose median, mode, range or mean is known: the places that it can take, one by one."""

import itertools
import statistics
from dataclasses import dataclass
from fractions import Fraction

from paperaudit.errors import NoValue
from paperaudit.maths.collected_values import number
from paperaudit.maths.write import write
from paperaudit.model.derivation import (
    Answer,
    Case,
    Derivation,
    Derived,
    Impossible,
    NotDetermined,
    Outcome,
    Several,
)
from paperaudit.model.spread_task import UnknownValue
from paperaudit.strands.numbers.working import require
from paperaudit.strands.statistics.lines import Lines, shown

CONFIRMED = "put into the list, whose measure was taken again; numbers beside it were tried too"
Form = tuple[Fraction, Fraction]
"""A multiple of the letter and a number."""


@dataclass(frozen=True, slots=True)
class _Stretch:
    """Letters from `low` to `high` (None for no end) for which the list stands in one order; one letter if equal."""

    low: Fraction | None
    high: Fraction | None

    @property
    def inside(self) -> Fraction:
        """A letter of the stretch."""
        if self.low is None or self.high is None:
            return self.high - 1 if self.high is not None else self.low + 1 if self.low is not None else Fraction(0)
        return (self.low + self.high) / 2

    def holds(self, letter: Fraction) -> bool:
        """Whether a letter lies in it."""
        if self.low is not None and self.low == self.high:
            return letter == self.low
        return (self.low is None or letter > self.low) and (self.high is None or letter < self.high)


def unknown_value(task: UnknownValue, lines: Lines) -> Outcome:
    """The letters for which the measure is what it is said to be: one, several, all of a stretch, or none."""
    found: list[tuple[Fraction, _Stretch]] = []
    for stretch in _stretches(task):
        if not _allowed(task, stretch.inside):
            continue
        form = _measure_form(task, stretch.inside)
        if form is None:
            continue
        share, constant = form
        if not share and constant == task.value and stretch.low != stretch.high:
            return _open(task, stretch)
        letter = (task.value - constant) / share if share else stretch.inside if constant == task.value else None
        if letter is not None and stretch.holds(letter) and letter not in [one for one, _ in found]:
            found.append((letter, stretch))
    letters = sorted(letter for letter, _ in found)
    require(letters == _tried(task, letters), f"the {task.measure} of the list in two ways")
    if not found:
        said = f"no value of {task.letter} gives a {task.measure} of {shown(task.value)}"
        return Impossible(lines.used, (f"{said}: false",))
    if len(found) == 1:
        _write(task, *found[0], lines)
        answer = Answer(f"{task.letter} = {shown(letters[0])}", number(letters[0]), task.letter)
        return Derived((answer,), (Derivation(tuple(lines.steps), CONFIRMED, lines.used),))
    answers = tuple(Answer(f"{task.letter} = {shown(letter)}", number(letter), task.letter) for letter in letters)
    return Several(answers, tuple(_case(task, letter) for letter in letters))


def _stretches(task: UnknownValue) -> list[_Stretch]:
    """The whole line of letters, cut where two entries of the list are equal."""
    rows = list(zip(task.shares, task.constants, strict=True))
    cuts = sorted({(other[1] - one[1]) / (one[0] - other[0])
                   for one, other in itertools.combinations(rows, 2) if one[0] != other[0]})  # fmt: skip
    if not cuts:
        return [_Stretch(None, None)]
    ends: list[Fraction | None] = [None, *cuts, None]
    between = [_Stretch(low, high) for low, high in itertools.pairwise(ends)]
    return [*between, *(_Stretch(cut, cut) for cut in cuts)]


def _allowed(task: UnknownValue, letter: Fraction) -> bool:
    entries = task.entries_at(letter)
    if task.ordered and any(other < one for one, other in itertools.pairwise(entries)):
        return False
    own = [entry for share, entry in zip(task.shares, entries, strict=True) if share]
    if task.place == "largest":
        return max(entries) == max(own)
    return task.place != "smallest" or min(entries) == min(own)


def _measure_form(task: UnknownValue, letter: Fraction) -> Form | None:
    """The measure as a form in the letter, for the order that the list has there; None where there is none."""
    rows = sorted(zip(task.entries_at(letter), task.shares, task.constants, strict=True), key=lambda row: row[0])
    forms = [(share, constant) for _, share, constant in rows]
    count, half = len(forms), len(forms) // 2
    match task.measure:
        case "median":
            one, other = forms[(count - 1) // 2], forms[half]
            return (one[0] + other[0]) / 2, (one[1] + other[1]) / 2
        case "range":
            return forms[-1][0] - forms[0][0], forms[-1][1] - forms[0][1]
        case "mean":
            shares, constants = zip(*forms, strict=True)
            return sum(shares, Fraction(0)) / count, sum(constants, Fraction(0)) / count
    values = [row[0] for row in rows]
    most = max(map(values.count, values))
    modes = sorted({value for value in values if values.count(value) == most})
    return forms[values.index(modes[0])] if len(modes) == 1 and most > 1 else None


def _tried(task: UnknownValue, letters: list[Fraction]) -> list[Fraction]:
    """The letters among the found ones and many others for which the measure, taken by itself, is right."""
    cuts = {stretch.low for stretch in _stretches(task)} - {None}
    tried = {*letters, *(Fraction(step, 2) for step in range(-100, 201))}
    tried |= {cut + Fraction(step, 4) for cut in cuts if cut is not None for step in range(-8, 9)}
    return sorted(letter for letter in tried if _allowed(task, letter) and _measured(task, letter) == task.value)


def _measured(task: UnknownValue, letter: Fraction) -> Fraction | None:
    entries = task.entries_at(letter)
    match task.measure:
        case "median":
            return Fraction(statistics.median(entries))
        case "range":
            return max(entries) - min(entries)
        case "mean":
            return Fraction(statistics.mean(entries))
    modes = statistics.multimode(entries)
    return modes[0] if len(modes) == 1 and entries.count(modes[0]) > 1 else None


def _open(task: UnknownValue, stretch: _Stretch) -> NotDetermined:
    """Two letters of a stretch that all give the measure."""
    one = stretch.inside
    other = one + 1 if stretch.high is None else (one + stretch.high) / 2
    if not all(_measured(task, letter) == task.value and _allowed(task, letter) for letter in (one, other)):
        raise NoValue(f"the {task.measure} of the list in two ways")
    return NotDetermined((_case(task, one), _case(task, other)), f"another measure of the list than the {task.measure}")


def _case(task: UnknownValue, letter: Fraction) -> Case:
    listed = ", ".join(map(shown, sorted(task.entries_at(letter))))
    said = f"{task.letter} = {shown(letter)}: {listed} have a {task.measure} of {shown(task.value)}"
    return Case(said, (Answer(f"{task.letter} = {shown(letter)}", number(letter), task.letter),))


def _write(task: UnknownValue, letter: Fraction, stretch: _Stretch, lines: Lines) -> None:
    skill = "spread" if task.measure == "range" else "averages"
    entries = sorted(zip(task.entries_at(stretch.inside), task.shares, task.constants, strict=True))
    texts = [_text(share, constant, task.letter) for _, share, constant in entries]
    share, constant = _measure_form(task, stretch.inside) or (Fraction(0), Fraction(0))
    half, value = len(texts) // 2, task.value
    if task.measure in ("median", "range"):
        lines.say(f"in order: {', '.join(texts)}", skill=skill, starts=True)
    match task.measure:
        case "median" if len(texts) % 2:
            lines.say(f"{texts[half]} = {shown(task.value)}", skill=skill)
        case "median":
            lines.say(f"({texts[half - 1]} + {texts[half]})/2 = {shown(task.value)}", skill=skill)
            lines.say(f"{texts[half - 1]} + {texts[half]} = {shown(2 * task.value)}", skill=skill)
            share, constant, value = 2 * share, 2 * constant, 2 * task.value
        case "range":
            first = f"({texts[0]})" if "−" in texts[0] or "+" in texts[0] else texts[0]
            lines.say(f"{texts[-1]} − {first} = {shown(task.value)}", skill=skill)
        case "mean":
            lines.say(f"({' + '.join(texts)})/{len(texts)} = {shown(task.value)}", skill=skill, starts=True)
        case _:
            lines.say(f"{shown(task.value)} must occur more often than every other value", skill=skill, starts=True)
    text = f"{task.letter} = {shown(letter)}"
    for said in (_text(share, constant, task.letter), _text(share, Fraction(0), task.letter)):
        target = value if said == _text(share, constant, task.letter) else value - constant
        if share not in (0, 1) and lines.steps[-1].statement != f"{said} = {shown(target)}":
            lines.say(f"{said} = {shown(target)}", skill=skill)
    if lines.steps[-1].statement != text:
        lines.say(text, text, skill)


def _text(share: Fraction, constant: Fraction, letter: str) -> str:
    """A form in print: x + 2, 2x, 5."""
    if not share:
        return shown(constant)
    term = f"{'−' if share < 0 else ''}{'' if abs(share) == 1 else _factor(abs(share))}{letter}"
    return term if not constant else f"{term} {'+' if constant > 0 else '−'} {shown(abs(constant))}"


def _factor(share: Fraction) -> str:
    text = write(number(share))
    return f"({text})" if "/" in text else text
