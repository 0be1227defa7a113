"""A sheet on which a school question is set: coordinates first, then what is said of them, what is asked, a sketch.

A family of questions is a function of a `Sheet`. It picks its numbers by name (`sheet.pick`), so that the
same question can be set once more with one number changed: what both say leaves what they differ in
open.
"""

import cmath
import math
import random
import re
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field, replace
from fractions import Fraction

from tests.geometry.freedom import Freedom
from tests.geometry.measured_sizes import Measured, cross
from tests.geometry.measuring import all_hold, rims_of

Spot = tuple[float, float]


class Unfit(Exception):
    """The numbers picked do not make a figure of this family; others are picked."""


@dataclass(frozen=True)
class SchoolQuestion:
    """A question with the truth of what is asked, measured on the figure that it was made from."""

    family: str
    figure: tuple[str, ...]
    given: tuple[str, ...]
    ask: str
    truth: float
    exact: str
    at: Mapping[str, Spot]
    letters: Mapping[str, float]
    sketch: Mapping[str, Spot]
    unit: str = ""
    loose: bool = False

    @property
    def statements(self) -> tuple[str, ...]:
        return (*self.figure, *self.given)

    def settled(self) -> bool:
        """Whether the statements settle what is asked, to first order."""
        return Freedom(self.statements, dict(self.at), dict(self.letters)).settles(self.ask)

    def as_yaml(self) -> str:
        """The question as a part of a question file, to try it by hand."""
        lines = f"figure={list(self.figure)} given={list(self.given)} ask={self.ask!r}"
        return f"{lines} truth={self.truth} sketch={dict(self.sketch)}"


@dataclass
class Sheet:
    """One question being set. Points are complex numbers while it is, x + yj."""

    chance: random.Random
    instead: Mapping[str, float] = field(default_factory=dict)
    at: dict[str, complex] = field(default_factory=dict)
    letters: dict[str, float] = field(default_factory=dict)
    figure: list[str] = field(default_factory=list)
    given: list[str] = field(default_factory=list)
    asked: str = ""
    picked: dict[str, tuple[float, Sequence[float]]] = field(default_factory=dict)
    unit: str = ""
    fixed: bool = False
    loose: bool = False

    def pick(self, name: str, choices: Sequence[float]) -> float:
        """A number of the question, by name; an open question is the same with another number in its place."""
        value = self.chance.choice(list(choices))
        self.picked[name] = (value, choices)
        return self.instead.get(name, value)

    def either(self, *words: str) -> str:
        """One way of saying or drawing it."""
        return self.chance.choice(words)

    def put(self, **spots: complex) -> None:
        self.at.update(spots)

    def show(self, *statements: str) -> None:
        self.figure += statements

    def tell(self, *statements: str) -> None:
        self.given += statements

    def ask(self, wanted: str) -> None:
        self.asked = wanted

    def measure(self, size: str) -> float:
        spots = {name: (spot.real, spot.imag) for name, spot in self.at.items()}
        return Measured(spots, self.letters, rims_of(self.figure + self.given)).size(size)

    def size(self, *names: str) -> None:
        """Tells the sizes of lengths and angles as they are, where they can be written exactly."""
        for name in names:
            self.given.append(f"{name} = {self.written(name)}")

    def written(self, name: str) -> str:
        value = self.measure(name)
        if "∠" in name or (name.split()[0] in ("arc", "major", "minor", "bearing")):
            return f"{number(value)}°"
        square = "²" if name.startswith("area") and self.unit else ""
        return f"{exact_text(value)}{' ' if self.unit else ''}{self.unit}{square}"

    def in_letter(self, name: str, letter: str, times: float, value: float) -> None:
        """Tells a size as a multiple of a letter and a number: AB = 2x − 1, ∠ABC = 3x + 10°."""
        self.letters[letter] = value
        size = self.measure(name)
        rest = size - times * value
        head = f"{number(times) if times != 1 else ''}{letter}"
        degree = "°" if "∠" in name or "arc" in name else ""
        if abs(rest) < 1e-9:
            self.given.append(f"{name} = {head}")
            return
        self.given.append(f"{name} = {head} {'+' if rest > 0 else '−'} {number(abs(rest))}{degree}")


def number(value: float) -> str:
    """A decimal of at most two places; Unfit where the value has more."""
    shown = f"{value:.2f}".rstrip("0").rstrip(".")
    if abs(float(shown) - value) > 1e-9 * max(1.0, abs(value)):
        raise Unfit(f"{value} is no short decimal")
    return shown


def exact_text(value: float) -> str:
    """A whole number, a short decimal, a root or a multiple of π that the value is; Unfit where it is none."""
    for form in (number, _fraction, _root, _pi):
        try:
            return form(value)
        except Unfit:
            continue
    raise Unfit(f"{value} has no short exact form")


def _fraction(value: float) -> str:
    part = Fraction(value).limit_denominator(60)
    if abs(float(part) - value) > 1e-10 * max(1.0, abs(value)):
        raise Unfit(str(value))
    return f"{part.numerator}/{part.denominator}"


def _root(value: float) -> str:
    square = Fraction(value * value).limit_denominator(36)
    if abs(float(square) - value * value) > 1e-9 * max(1.0, value * value) or square == 0 or value < 0:
        raise Unfit(str(value))
    inside, below = square.numerator * square.denominator, square.denominator
    outside = max(k for k in range(1, math.isqrt(inside) + 1) if inside % (k * k) == 0)
    inside //= outside * outside
    share = Fraction(outside, below)
    if inside > 400 or share.numerator > 60:
        raise Unfit(str(value))
    head = "" if share.numerator == 1 else str(share.numerator)
    return f"{head}√{inside}" + (f"/{share.denominator}" if share.denominator > 1 else "")


def _pi(value: float) -> str:
    share = Fraction(value / math.pi).limit_denominator(12)
    if abs(float(share) * math.pi - value) > 1e-10 * max(1.0, abs(value)):
        raise Unfit(str(value))
    head = (
        ""
        if share == 1
        else str(share.numerator)
        if share.denominator == 1
        else f"({share.numerator}/{share.denominator})"
    )
    return f"{head}π"


def polar(reach: float, degrees: float) -> complex:
    return cmath.rect(reach, math.radians(degrees))


def meet(a: complex, b: complex, c: complex, d: complex) -> complex:
    """Where the lines AB and CD cross."""
    u, v = b - a, d - c
    across = (u.conjugate() * v).imag
    if abs(across) < 1e-9:
        raise Unfit("parallel")
    return a + u * (((c - a).conjugate() * v).imag / across)


def foot(p: complex, a: complex, b: complex) -> complex:
    """The foot of the perpendicular from P to AB."""
    u = b - a
    return a + u * ((p - a) * u.conjugate()).real / abs(u) ** 2


def triangle(a: float, b: float, c: float) -> tuple[complex, complex, complex]:
    """A, B and C from the sides opposite to them, B at the origin and C to its right."""
    if max(a, b, c) * 2 > 0.97 * (a + b + c):
        raise Unfit("flat")
    x = (a * a + c * c - b * b) / (2 * a)
    return complex(x, math.sqrt(c * c - x * x)), 0j, complex(a, 0)


LETTERINGS = ("ABCDEFGHKLMN", "PQRSTUVWKLMN", "KLMNPQRSTUVW", "DEFGHKLMNPQR", "RSTUVWXYZKLM", "UVWXYZABCDEF")
ORDINARY = "ABCDEFGHKLMN"


def _lettering(sheet: Sheet) -> dict[str, str]:
    """Other names for the points; O stays the centre of a circle, P and T stay where they are not in the way."""
    names = sorted(sheet.at)
    if sheet.chance.random() < 0.4:
        return {name: name for name in names}
    pool = [letter for letter in sheet.chance.choice(LETTERINGS) if letter != "O"]
    if sheet.chance.random() < 0.3:
        sheet.chance.shuffle(pool)
    pool += [letter for letter in "ABCDEFGHKLMNPQRSTUVWXYZ" if letter not in pool]
    return {name: "O" if name == "O" else pool.pop(0) for name in names}


def _renamed(text: str, names: Mapping[str, str]) -> str:
    return re.sub("[A-Z]", lambda found: names.get(found[0], found[0]), text)


CLEAR = 0.015
"""How far a point of a sketch is off the line of two others, as a share of their distance, if it is not on it."""


def turns(spots: Mapping[str, Spot], least: float = 1e-7) -> dict[tuple[str, str, str], int]:
    """Which way each three points turn, 0 for three on a line: what a sketch has to keep."""
    names = sorted(spots)
    found = {}
    for i, p in enumerate(names):
        for j in range(i + 1, len(names)):
            for r in names[j + 1 :]:
                q = names[j]
                most = max(math.dist(spots[a], spots[b]) for a, b in ((p, q), (q, r), (p, r)))
                turn = cross(spots[p], spots[q], spots[r]) / (most * most)
                found[(p, q, r)] = 0 if abs(turn) < least else 1 if turn > 0 else -1
    return found


def rough(at: Mapping[str, Spot], chance: random.Random, fixed: bool) -> dict[str, Spot]:
    """A sketch: turned, perhaps mirrored, in a third of the cases stretched, every point off by some per cent."""
    spots = {name: complex(*spot) for name, spot in at.items()}
    if not fixed:
        way = polar(1, chance.uniform(0, 360))
        mirrored = chance.random() < 0.5
        spots = {name: way * (spot.conjugate() if mirrored else spot) for name, spot in spots.items()}
        if chance.random() < 1 / 3:
            along, stretch = polar(1, chance.uniform(0, 180)), chance.uniform(1.2, 3)
            turned = {name: spot * along for name, spot in spots.items()}
            spots = {name: complex(z.real * stretch, z.imag) for name, z in turned.items()}
    size = 100 / max(abs(p - q) for p in spots.values() for q in spots.values())
    kept = turns({name: (z.real, z.imag) for name, z in spots.items()})
    nearest = min(abs(p - q) for a, p in spots.items() for b, q in spots.items() if a < b)
    off = min(chance.uniform(0, 0.03) / size * 100, nearest / 4)
    for _ in range(12):
        moved = {name: z + polar(chance.uniform(0, off), chance.uniform(0, 360)) for name, z in spots.items()}
        now = turns({name: (z.real, z.imag) for name, z in moved.items()}, CLEAR)
        if all(now[trio] == turn for trio, turn in kept.items() if turn):
            break
        off /= 2
    else:
        raise Unfit("hard to see")
    return {name: (round(z.real * size, 1), round(z.imag * size, 1)) for name, z in moved.items()}


Family = Callable[[Sheet], None]

REGISTER: dict[str, tuple[Family, float]] = {}
"""Every family by name with its weight: how often school solutions use what it is about."""


def family(weight: float) -> Callable[[Family], Family]:
    """Registers a family of questions."""

    def register(function: Family) -> Family:
        assert function.__name__ not in REGISTER
        REGISTER[function.__name__] = (function, weight)
        return function

    return register


def set_question(family: Family, seed: int, instead: Mapping[str, float] | None = None) -> SchoolQuestion:
    """The question that a family sets for a seed; numbers are picked anew until they make a figure."""
    return _set(family, seed, instead or {})[0]


def _set(family: Family, seed: int, instead: Mapping[str, float]) -> tuple[SchoolQuestion, Sheet]:
    first = 0 if not instead else _fit_attempt(family, seed)
    for attempt in range(first, 400):
        try:
            return _attempt(family, seed, attempt, instead)
        except (Unfit, ZeroDivisionError, OverflowError):
            if instead:
                raise Unfit("no such figure") from None
    raise AssertionError(f"{family.__name__} sets no question for seed {seed}")


def _fit_attempt(family: Family, seed: int) -> int:
    for attempt in range(400):
        try:
            _attempt(family, seed, attempt, {})
        except (Unfit, ZeroDivisionError, OverflowError):
            continue
        return attempt
    raise AssertionError(family.__name__)


def _attempt(family: Family, seed: int, attempt: int, instead: Mapping[str, float]) -> tuple[SchoolQuestion, Sheet]:
    chance = random.Random(f"{family.__name__} {seed} {attempt}")
    sheet = Sheet(chance, instead)
    sheet.unit = chance.choice(["cm", "cm", "m", "mm", "", ""])
    family(sheet)
    if len(sheet.at) > 1 and min(abs(p - q) for a, p in sheet.at.items() for b, q in sheet.at.items() if a < b) < 1e-3:
        raise Unfit("points coincide")
    names = _lettering(sheet)
    at = {names[name]: (spot.real, spot.imag) for name, spot in sheet.at.items()}
    figure, given = (tuple(_renamed(line, names) for line in lines) for lines in (sheet.figure, sheet.given))
    asked = _renamed(sheet.asked, names)
    truth = Measured(at, sheet.letters, rims_of(figure + given)).size(asked)
    wrong = all_hold((*figure, *given), at, sheet.letters)
    assert not wrong, (family.__name__, wrong, figure, given)
    try:
        exact = exact_text(truth)
    except Unfit:
        exact = ""
    sketch = rough(at, random.Random(f"sketch {seed} {attempt}"), sheet.fixed)
    question = SchoolQuestion(
        family.__name__, figure, given, asked, truth, exact, at, dict(sheet.letters), sketch, sheet.unit, sheet.loose
    )
    return question, sheet


def open_question(family: Family, seed: int) -> tuple[SchoolQuestion, SchoolQuestion] | None:
    """A question with a needed given left out, once with each of two figures that differ; None if none is found."""
    question, sheet = _set(family, seed, {})
    order = sorted(sheet.picked)
    random.Random(seed).shuffle(order)
    for name in order:
        value, choices = sheet.picked[name]
        for other in sorted(set(choices) - {value}, key=lambda choice: abs(choice - value))[:4]:
            pair = _differing(family, seed, question, {name: other})
            if pair is not None:
                return pair
    return None


def _differing(
    family: Family, seed: int, question: SchoolQuestion, instead: Mapping[str, float]
) -> tuple[SchoolQuestion, SchoolQuestion] | None:
    try:
        other = set_question(family, seed, instead)
    except Unfit:
        return None
    common = tuple(line for line in question.given if line in other.given)
    if other.figure != question.figure or other.ask != question.ask or len(common) == len(question.given):
        return None
    if len(question.given) - len(common) > 2 or turns(question.at) != turns(other.at):
        return None
    if abs(question.truth - other.truth) < 0.02 * abs(question.truth):
        return None
    opened = replace(question, given=common), replace(other, given=common)
    letters = set(re.findall(r"(?<![a-z])[a-z](?![a-z])", " ".join(common)))
    if question.ask in question.letters and question.ask not in letters:
        return None
    kept = [replace(one, letters={k: v for k, v in one.letters.items() if k in letters}) for one in opened]
    return None if kept[0].settled() else (kept[0], kept[1])
