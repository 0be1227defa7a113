"""Random figures built from exact directions, with the facts that are true of them read off.

Every line has a direction in whole or half degrees, so that every angle is exact; coordinates follow
from the directions. The statements are those of the question file, so that the wording, the engine
and the outcome are tried in one go.
"""

import math
import random
from dataclasses import dataclass, field
from fractions import Fraction

Spot = tuple[float, float]


@dataclass
class RandomFigure:
    """A figure under construction: points with coordinates, drawn lines with exact directions, true statements."""

    chance: random.Random
    at: dict[str, Spot] = field(default_factory=dict)
    lines: list[tuple[list[str], Fraction]] = field(default_factory=list)
    figure: list[str] = field(default_factory=list)
    structure: list[str] = field(default_factory=list)
    names: list[str] = field(default_factory=lambda: list("ABCDEFGHKLMNPQRS"))

    def new(self, spot: Spot) -> str:
        name = self.names.pop(0)
        self.at[name] = spot
        return name

    def direction(self, start: str, end: str) -> Fraction:
        """The exact direction from one point of a drawn line to another, in degrees."""
        for points, direction in self.lines:
            if start in points and end in points:
                forward = points.index(start) < points.index(end)
                return direction if forward else direction + 180
        raise KeyError((start, end))

    def joined(self, start: str, end: str) -> bool:
        return any(start in points and end in points for points, _ in self.lines)

    def join(self, points: list[str], direction: Fraction) -> None:
        self.lines.append((points, direction % 360))

    def size(self, arm: str, vertex: str, other: str) -> Fraction:
        """The exact angle, at most 180°."""
        turn = (self.direction(vertex, other) - self.direction(vertex, arm)) % 360
        return min(turn, 360 - turn)

    def angles(self) -> list[tuple[str, str, str]]:
        """Every angle between two drawn lines at a point, by the nearest points on its arms."""
        found = []
        for vertex in self.at:
            arms = []
            for points, _ in self.lines:
                if vertex in points:
                    spot = points.index(vertex)
                    if spot:
                        arms.append(points[spot - 1])
                    if spot + 1 < len(points):
                        arms.append(points[spot + 1])
            found += [
                (arm, vertex, other)
                for i, arm in enumerate(arms)
                for other in arms[i + 1 :]
                if self.size(arm, vertex, other) != 180
            ]
        return found


def _step(start: Spot, direction: Fraction, reach: float) -> Spot:
    bearing = math.radians(float(direction))
    return start[0] + reach * math.cos(bearing), start[1] + reach * math.sin(bearing)


def _meet(p: Spot, one: Fraction, q: Spot, two: Fraction) -> tuple[float, float, Spot]:
    """How far along each of two rays from p and q their crossing lies, and the crossing."""
    a, b = math.radians(float(one)), math.radians(float(two))
    cross = math.cos(a) * math.sin(b) - math.sin(a) * math.cos(b)
    if abs(cross) < 0.05:
        raise ValueError
    x, y = q[0] - p[0], q[1] - p[1]
    s = (x * math.sin(b) - y * math.cos(b)) / cross
    t = (x * math.sin(a) - y * math.cos(a)) / cross
    return s, t, _step(p, one, s)


def start_triangle(figure: RandomFigure) -> None:
    chance = figure.chance
    kind = chance.choice(["scalene", "scalene", "isosceles", "isosceles", "equilateral", "right-angled"])
    turn = Fraction(chance.randrange(0, 360))
    if kind == "equilateral":
        at_a = at_b = Fraction(60)
    elif kind == "isosceles":
        at_b = Fraction(chance.randrange(20, 80))
        at_a = 180 - 2 * at_b
    elif kind == "right-angled":
        at_a, at_b = Fraction(90), Fraction(chance.randrange(20, 70))
    else:
        at_a, at_b = Fraction(chance.randrange(25, 100)), Fraction(chance.randrange(25, 60))
    a = figure.new((0.0, 0.0))
    b = figure.new(_step((0, 0), turn, 1.0))
    _, _, spot = _meet(figure.at[a], turn + at_a, figure.at[b], turn + 180 - at_b)
    c = figure.new(spot)
    figure.join([a, b], turn)
    figure.join([a, c], turn + at_a)
    figure.join([b, c], turn + 180 - at_b)
    figure.figure.append(f"{'equilateral ' if kind == 'equilateral' else ''}triangle {a}{b}{c}")
    if kind == "isosceles":
        figure.structure.append(f"{a}{b} = {a}{c}")
    if kind == "right-angled":
        figure.structure.append(f"{a}{b} ⊥ {a}{c}")


def start_parallels(figure: RandomFigure) -> None:
    """Two parallel lines cut by a third that is produced both ways."""
    chance = figure.chance
    turn, cut = Fraction(chance.randrange(0, 360)), Fraction(chance.randrange(35, 145))
    spots = [_step((0.0, 0.0), turn, -1.0), (0.0, 0.0), _step((0.0, 0.0), turn, 1.1)]
    a, g, b = (figure.new(spot) for spot in spots)
    far = _step((0.0, 0.0), turn + cut, 1.3)
    c, h, d = (figure.new(spot) for spot in (_step(far, turn, -1.2), far, _step(far, turn, 0.9)))
    e, f = figure.new(_step((0.0, 0.0), turn + cut, -0.7)), figure.new(_step(far, turn + cut, 0.8))
    figure.join([a, g, b], turn)
    figure.join([c, h, d], turn)
    figure.join([e, g, h, f], turn + cut)
    figure.figure += [f"{a}-{g}-{b}", f"{c}-{h}-{d}", f"{e}-{g}-{h}-{f}"]
    figure.structure.append(f"{a}{b} ∥ {c}{d}")


def start_crossing(figure: RandomFigure) -> None:
    chance = figure.chance
    turn = Fraction(chance.randrange(0, 360))
    count = chance.choice([2, 3])
    steps = sorted(chance.sample(range(20, 160, 5), count - 1))
    centre = figure.new((0.0, 0.0))
    for step in [0, *steps]:
        one = figure.new(_step((0, 0), turn + step, chance.uniform(0.8, 1.2)))
        two = figure.new(_step((0, 0), turn + step + 180, chance.uniform(0.8, 1.2)))
        figure.join([two, centre, one], turn + step)
        figure.figure.append(f"{two}-{centre}-{one}")


def start_parallelogram(figure: RandomFigure) -> None:
    chance = figure.chance
    turn, corner = Fraction(chance.randrange(0, 360)), Fraction(chance.randrange(40, 140))
    kind = chance.choice(["parallelogram", "rhombus", "rectangle", "square"])
    if kind in ("rectangle", "square"):
        corner = Fraction(90)
    reach = 1.0 if kind in ("rhombus", "square") else chance.uniform(0.6, 1.6)
    a, b = figure.new((0.0, 0.0)), figure.new(_step((0, 0), turn, 1.0))
    d_spot = _step((0, 0), turn + corner, reach)
    c = figure.new(_step(d_spot, turn, 1.0))
    d = figure.new(d_spot)
    for start, end, direction in ((a, b, turn), (d, c, turn), (a, d, turn + corner), (b, c, turn + corner)):
        figure.join([start, end], direction)
    figure.structure.append(f"{kind} {a}{b}{c}{d}")
    if kind in ("rhombus", "square") and chance.random() < 0.7:
        figure.join([a, c], turn + corner / 2)
        figure.figure.append(f"segment {a}{c}")


def produce(figure: RandomFigure) -> None:
    """Lengthen a drawn line beyond one end."""
    points, direction = figure.chance.choice(figure.lines)
    if figure.chance.random() < 0.5:
        spot = _step(figure.at[points[-1]], direction, figure.chance.uniform(0.5, 0.9))
        new = figure.new(spot)
        figure.figure.append(f"{points[-2]}{points[-1]} is produced to {new}")
        points.append(new)
    else:
        spot = _step(figure.at[points[0]], direction + 180, figure.chance.uniform(0.5, 0.9))
        new = figure.new(spot)
        figure.figure.append(f"{points[1]}{points[0]} is produced to {new}")
        points.insert(0, new)


def cevian(figure: RandomFigure) -> None:
    """A line from a point to a drawn segment that it sees, sometimes the bisector of the angle."""
    chance = figure.chance
    apex, left, right = chance.choice([(v, a, b) for a, v, b in figure.angles() if figure.joined(a, b)])
    whole = figure.size(left, apex, right)
    share = whole / 2 if chance.random() < 0.4 else Fraction(chance.randrange(8, max(9, int(whole) - 8)))
    if not 5 < share < whole - 5:
        raise ValueError
    way = 1 if (figure.direction(apex, right) - figure.direction(apex, left)) % 360 < 180 else -1
    direction = figure.direction(apex, left) + way * share
    _, _, spot = _meet(figure.at[apex], direction, figure.at[left], figure.direction(left, right))
    line = next(points for points, _ in figure.lines if left in points and right in points)
    low, high = sorted((line.index(left), line.index(right)))
    if high - low != 1:
        raise ValueError
    new = figure.new(spot)
    figure.figure.append(f"{new} lies on {left}{right}")
    line.insert(high, new)
    figure.join([apex, new], direction)
    figure.figure.append(f"segment {apex}{new}")
    if share == whole / 2:
        figure.structure.append(f"{apex}{new} bisects ∠{left}{apex}{right}")


def erect_isosceles(figure: RandomFigure) -> None:
    """An isosceles triangle on a drawn segment, its apex a new point."""
    chance = figure.chance
    points, _ = chance.choice(figure.lines)
    a, b = points[0], points[1]
    base = Fraction(chance.randrange(20, 75))
    way = chance.choice((1, -1))
    one, two = figure.direction(a, b) + way * base, figure.direction(b, a) - way * base
    _, _, spot = _meet(figure.at[a], one, figure.at[b], two)
    new = figure.new(spot)
    figure.join([a, new], one)
    figure.join([b, new], two)
    figure.figure.append(f"triangle {new}{a}{b}")
    figure.structure.append(f"{new}{a} = {new}{b}")


def draw_parallel(figure: RandomFigure) -> None:
    """A segment from a point, parallel to a drawn line that misses it."""
    chance = figure.chance
    points, direction = chance.choice(figure.lines)
    start = chance.choice([p for p in figure.at if p not in points])
    if any((line_direction - direction) % 180 == 0 and start in line for line, line_direction in figure.lines):
        raise ValueError
    new = figure.new(_step(figure.at[start], direction, chance.uniform(0.7, 1.3)))
    figure.join([start, new], direction)
    figure.structure.append(f"{start}{new} ∥ {points[0]}{points[-1]}")


STARTS = (start_triangle, start_triangle, start_parallels, start_crossing, start_parallelogram)
GROWTH = (produce, cevian, cevian, erect_isosceles, draw_parallel)


def random_figure(seed: int) -> RandomFigure:
    """A figure of 3 to 9 points, clear to the eye: no two points close, no two rays nearly one."""
    attempt = 0
    while True:
        chance = random.Random(seed * 1009 + attempt)
        attempt += 1
        figure = RandomFigure(chance)
        chance.choice(STARTS)(figure)
        try:
            for _ in range(chance.choice([0, 1, 1, 2, 2, 3])):
                chance.choice(GROWTH)(figure)
        except (ValueError, IndexError, KeyError):
            continue
        if _clear(figure):
            return figure


def _clear(figure: RandomFigure) -> bool:
    spots = list(figure.at.values())
    size = max(math.dist(p, q) for p in spots for q in spots)
    if any(math.dist(p, q) < 0.05 * size for i, p in enumerate(spots) for q in spots[i + 1 :]):
        return False
    for vertex, spot in figure.at.items():
        for points, direction in figure.lines:
            if vertex in points:
                continue
            away = math.radians(float(direction))
            first = figure.at[points[0]]
            off = (spot[0] - first[0]) * math.sin(away) - (spot[1] - first[1]) * math.cos(away)
            if abs(off) < 0.03 * size:
                return False
    return all(figure.size(*angle) >= 4 for angle in figure.angles())


@dataclass(frozen=True)
class RandomQuestion:
    """A question on a random figure, with the truth of what is asked."""

    figure: tuple[str, ...]
    given: tuple[str, ...]
    ask: str
    truth: Fraction
    sketch: dict[str, tuple[float, float]]


def degrees(value: Fraction) -> str:
    return f"{float(value):g}°"


def random_question(seed: int, letters: bool = False) -> RandomQuestion:
    """Facts of a random figure, some angles shown as numbers (or in x), one asked for."""
    figure = random_figure(seed)
    chance = random.Random(seed * 31 + 5)
    angles = figure.angles()
    chance.shuffle(angles)
    target, shown = angles[0], angles[1 : 1 + chance.randrange(1, 5)]
    given = list(figure.structure)
    x = Fraction(chance.randrange(8, 30))
    ask, truth = f"∠{''.join(target)}", figure.size(*target)
    for number, angle in enumerate(shown):
        size = figure.size(*angle)
        name = f"∠{''.join(angle)}"
        if letters and number < 2:
            times = chance.randrange(1, 4)
            rest = size - times * x
            sign = "+" if rest > 0 else "−"
            tail = f" {sign} {degrees(abs(rest))}" if rest else ""
            given.append(f"{name} = {times if times > 1 else ''}x{tail}")
        else:
            given.append(f"{name} = {degrees(size)}")
    if letters and chance.random() < 0.5 and shown:
        ask, truth = "x", x
    stretch = (chance.uniform(0.5, 2.0), chance.uniform(0.5, 2.0))
    sketch = {point: (x_ * stretch[0], y * stretch[1]) for point, (x_, y) in figure.at.items()}
    return RandomQuestion(tuple(figure.figure), tuple(given), ask, truth, sketch)
