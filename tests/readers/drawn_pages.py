"""Draws plans of figures on pages in the ways that programs draw them: a pen of our own, for tests of the reader.

A plan says where points are, what is drawn and what is marked; a `Hand` says how: sides in one closed path, one by
one, twice, in pieces; arcs as Bézier curves, as many short strokes, as wedges; heads filled, open, as two strokes.
Places are points from the left and from the top.
"""

import itertools
import math
import random
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field

from paperaudit.readers.draft.page import DraftPage, Glyph, Path, Piece, Point, box_around


@dataclass
class Plan:
    """A figure: each line by its points in order, each circle by centre, radius and points on it.

    `angles` are (arm, vertex, arm, label, arcs, strokes), `squares` (arm, vertex, arm), `ticks` (A, B, count),
    `arrows` (A, B, count), `lengths` (A, B, label), `numbers` (arm, vertex, arm, digit).
    `silent` points have no letter; `reflex` are the labels of angles beyond 180°; `arcs` (centre, from, to) are drawn
    clockwise in place of a circle; `spans` (A, B, label) are dimension lines below the figure.
    """

    points: dict[str, Point]
    lines: list[str] = field(default_factory=list)
    circles: list[tuple[str, float, str]] = field(default_factory=list)
    angles: list[tuple[str, str, str, str, int, int]] = field(default_factory=list)
    squares: list[tuple[str, str, str]] = field(default_factory=list)
    ticks: list[tuple[str, str, int]] = field(default_factory=list)
    arrows: list[tuple[str, str, int]] = field(default_factory=list)
    lengths: list[tuple[str, str, str]] = field(default_factory=list)
    numbers: list[tuple[str, str, str, str]] = field(default_factory=list)
    silent: str = ""
    tangents: list[str] = field(default_factory=list)
    reflex: tuple[str, ...] = ()
    arcs: list[tuple[str, str, str]] = field(default_factory=list)
    spans: list[tuple[str, str, str]] = field(default_factory=list)

    def truth(self) -> dict:
        """What must be read, in the form of a truth.yaml."""
        spoken = [name for name in self.points if name not in self.silent]
        lines = ["-".join(name for name in line if name in spoken) for line in self.lines]
        given = [
            f"{'reflex ' if label in self.reflex else ''}∠{a}{v}{b} = {label}"
            for a, v, b, label, _, _ in self.angles
            if label
        ]
        given += [f"∠{a}{v}{b} = 90°" for a, v, b in self.squares]
        given += [f"{a}{b} = {label}" for a, b, label in [*self.lengths, *self.spans]]
        given += [f"{v}̂{'₀₁₂₃₄₅'[int(digit)]} = ∠{a}{v}{b}" for a, v, b, digit in self.numbers]
        given += _chains([("".join(mark[:2]), mark[2]) for mark in self.ticks], " = ")
        given += _chains([("".join(mark[:2]), mark[2]) for mark in self.arrows], " ∥ ")
        equal = [(f"∠{a}{v}{b}", (arcs, strokes)) for a, v, b, _, arcs, strokes in self.angles if arcs > 1 or strokes]
        given += _chains(equal, " = ")
        circles = [
            (f"circle with centre {centre}" if centre in spoken else "circle")
            + (f" through {', '.join(on)}" if on else "")
            for centre, _, on in self.circles
        ]
        return {
            "page": 1,
            "points": spoken,
            "lines": [line for line in lines if len(line) > 1],
            "circles": circles,
            "given": given + self.tangents,
        }


def _chains(marks: Iterable[tuple[str, object]], sign: str) -> list[str]:
    classes: dict[object, list[str]] = {}
    for name, kind in marks:
        classes.setdefault(kind, []).append(name)
    return [sign.join(names) for names in classes.values() if len(names) > 1]


@dataclass
class Hand:
    """How a figure is drawn: chosen at random from what programs do."""

    chance: random.Random
    size: float = 10.0
    paths: list[Path] = field(default_factory=list)
    glyphs: list[Glyph] = field(default_factory=list)
    drawn: int = 0
    sloppy: float = 0.0
    """Points by which ends of strokes are off, and a share of the size by which labels are (times a quarter)."""

    def __post_init__(self) -> None:
        pick = self.chance.choice
        self.sides = pick(["each", "chain", "twice", "pieces", "rules", "reversed"])
        self.arcs = pick(["curve", "polyline", "wedge", "filled wedge", "fine"])
        self.heads = pick(["filled", "open", "strokes", "stealth"])
        self.rounds = pick(["curves", "polygon", "eight", "two halves"])
        self.size = pick([8.0, 10.0, 11.0, 12.0])
        self.width = pick([0.4, 0.8, 1.2])

    # Strokes

    def path(self, pieces: Sequence[Sequence[Point]], closed: bool = False, **how: object) -> None:
        self.drawn += len(pieces)
        points = [point for piece in pieces for point in piece]
        self.paths.append(
            Path(
                tuple(Piece(tuple(piece)) for piece in pieces),
                box_around([(*point, *point) for point in points]),
                self.drawn,
                closed=closed,
                **{"width": self.width, **how},  # type: ignore[arg-type]
            )
        )

    def shaken(self, at: Point) -> Point:
        """A point as it comes out where someone drags it with a mouse."""
        return at[0] + self.chance.uniform(-1, 1) * self.sloppy, at[1] + self.chance.uniform(-1, 1) * self.sloppy

    def stroke(self, start: Point, end: Point) -> None:
        self.path([(self.shaken(start), self.shaken(end))])

    def rule(self, start: Point, end: Point) -> None:
        """A stroke as a thin filled shape."""
        start, end = self.shaken(start), self.shaken(end)
        length = math.dist(start, end)
        off = ((end[1] - start[1]) / length * self.width / 2, (start[0] - end[0]) / length * self.width / 2)
        corners = [
            (start[0] + off[0], start[1] + off[1]),
            (end[0] + off[0], end[1] + off[1]),
            (end[0] - off[0], end[1] - off[1]),
            (start[0] - off[0], start[1] - off[1]),
        ]
        self.path(_loop(corners), closed=True, stroke=None, fill=0.0)

    def side(self, spots: Sequence[Point]) -> None:
        """A line through points in order."""
        if self.sides == "rules":
            self.rule(spots[0], spots[-1])
        elif self.sides == "pieces":
            for start, end in itertools.pairwise(spots):
                self.stroke(start, end)
        elif self.sides == "reversed":
            self.stroke(spots[-1], spots[0])
        else:
            for _ in range(2 if self.sides == "twice" else 1):
                self.stroke(spots[0], spots[-1])

    def arc(self, centre: Point, radius: float, start: float, sweep: float) -> None:
        """An arc that marks an angle."""
        centre = self.shaken(centre)
        ends = [_polar(centre, start, radius), _polar(centre, start + sweep, radius)]
        if self.arcs in ("polyline", "fine"):
            steps = max(4, int(abs(sweep) / (12 if self.arcs == "polyline" else 4)))
            points = [_polar(centre, start + sweep * at / steps, radius) for at in range(steps + 1)]
            self.path(list(itertools.pairwise(points)))
            return
        curve = _curves(centre, radius, start, sweep)
        if self.arcs == "curve":
            self.path(curve)
        elif self.arcs == "wedge":
            self.path([(centre, ends[0]), *curve, (ends[1], centre)], closed=True)
        else:
            self.path([(centre, ends[0]), *curve, (ends[1], centre)], closed=True, stroke=None, fill=0.8)
            self.path(curve)

    def circle(self, centre: Point, radius: float) -> None:
        if self.rounds == "polygon":
            points = [_polar(centre, at * 5, radius) for at in range(72)]
            self.path(_loop(points), closed=True)
        elif self.rounds == "two halves":
            self.path(_curves(centre, radius, 0, 180))
            self.path(_curves(centre, radius, 180, 180))
        else:
            step = 45 if self.rounds == "eight" else 90
            pieces = [_curves(centre, radius, at, step)[0] for at in range(0, 360, step)]
            self.path(pieces, closed=True)

    def dimension(self, start: Point, end: Point, height: float, label: str) -> None:
        """A level dimension line below two points, with arrows or strokes at its ends."""
        left, right = sorted((start[0], end[0]))
        self.stroke((left, height), (right, height))
        for across, way in ((left, 180.0), (right, 0.0)):
            if self.heads in ("filled", "stealth"):
                self.head((across - 2.5 if way == 0 else across + 2.5, height), way, 5)
            self.stroke((across, height - 4), (across, height + 4))
        self.text(label, ((left + right) / 2, height + 0.9 * self.size))

    def dot(self, at: Point) -> None:
        self.path(_curves(at, 1.6, 0, 360), closed=True, stroke=None, fill=0.0)

    def head(self, at: Point, way: float, size: float) -> None:
        """The head of an arrow with its tip ahead of a point."""
        tip, back = _polar(at, way, size / 2), _polar(at, way + 180, size / 2)
        one, other = _polar(back, way + 90, size * 0.45), _polar(back, way - 90, size * 0.45)
        if self.heads == "filled":
            self.path(_loop([tip, one, other]), closed=True, stroke=None, fill=0.0)
        elif self.heads == "stealth":
            self.path(_loop([tip, one, _polar(at, way, -size / 5), other]), closed=True, fill=0.0)
        elif self.heads == "open":
            self.path([(one, tip), (tip, other)])
        else:
            self.stroke(one, tip)
            self.stroke(tip, other)

    # Print

    def text(self, text: str, middle: Point) -> None:
        """A label with its middle at a point."""
        off = 0.25 * self.size * self.sloppy
        middle = middle[0] + self.chance.uniform(-off, off), middle[1] + self.chance.uniform(-off, off)
        widths = [self.size * (0.28 if one == " " else 0.4 if one == "°" else 0.55) for one in text]
        left = middle[0] - sum(widths) / 2
        baseline = middle[1] + 0.34 * self.size
        for one, width in zip(text, widths, strict=True):
            self.drawn += 1
            box = (left, baseline - 0.75 * self.size, left + width, baseline + 0.25 * self.size)
            self.glyphs.append(Glyph(one, box, baseline, self.size, "Face", self.drawn))
            left += width

    def extent(self, text: str, way: float) -> float:
        wide, high = 0.275 * self.size * len(text), 0.36 * self.size
        turned = math.radians(way)
        return min(wide / max(1e-6, abs(math.cos(turned))), high / max(1e-6, abs(math.sin(turned))))

    def page(self) -> DraftPage:
        return DraftPage(1, 595, 842, tuple(self.glyphs), tuple(self.paths))


def drawn(plan: Plan, chance: random.Random, sloppy: float = 0.0) -> DraftPage:
    """The page that shows a plan, by a hand chosen at random, `sloppy` points off."""
    hand = Hand(chance, sloppy=sloppy)
    _draw_lines(plan, hand)
    for centre, radius, _ in plan.circles:
        part = next((arc for arc in plan.arcs if arc[0] == centre), None)
        if part is None:
            hand.circle(plan.points[centre], radius)
        else:
            start, end = (_way(plan.points[centre], plan.points[name]) for name in part[1:])
            hand.path(_curves(plan.points[centre], radius, start, (end - start) % 360))
        hand.dot(plan.points[centre])
    for a, b, label in plan.spans:
        hand.dimension(plan.points[a], plan.points[b], max(y for _, y in plan.points.values()) + 26, label)
    _draw_marks(plan, hand)
    _draw_angles(plan, hand)
    for name, at in plan.points.items():
        if name not in plan.silent:
            way = _free_way(plan, name) + chance.uniform(-40, 40) * sloppy
            hand.text(name, _polar(at, way, chance.uniform(0.95, 1.25 + 0.4 * sloppy) * hand.size))
    return hand.page()


def _draw_lines(plan: Plan, hand: Hand) -> None:
    lines = list(plan.lines)
    if hand.sides == "chain":
        # Sides that follow each other round a polygon are one closed path.
        closed = next((lines[:count] for count in (4, 3) if _is_ring(lines[:count], count)), [])
        if closed:
            hand.path(_loop([plan.points[line[0]] for line in closed]), closed=True)
            lines = lines[len(closed) :]
    for line in lines:
        hand.side([plan.points[name] for name in line])


def _is_ring(lines: Sequence[str], count: int) -> bool:
    return len(lines) == count and all(
        line[-1] == after[0] for line, after in zip(lines, [*lines[1:], lines[0]], strict=True)
    )


def _draw_marks(plan: Plan, hand: Hand) -> None:
    for a, b, count in plan.ticks:
        start, end = plan.points[a], plan.points[b]
        way = _way(start, end)
        reach = hand.chance.uniform(0.28, 0.45) * hand.size
        for number in range(count):
            at = _polar(_between(start, end, 0.5), way, (number - (count - 1) / 2) * 0.35 * hand.size)
            hand.stroke(_polar(at, way + 80, reach), _polar(at, way + 260, reach))
    for a, b, count in plan.arrows:
        start, end = plan.points[a], plan.points[b]
        for number in range(count):
            at = _polar(_between(start, end, hand.chance.uniform(0.4, 0.6)), _way(start, end), 0)
            at = _polar(_between(start, end, 0.45), _way(start, end), number * 0.65 * hand.size)
            hand.head(at, _way(start, end), 0.55 * hand.size)
    for a, b, label in plan.lengths:
        start, end = plan.points[a], plan.points[b]
        middle = _between(start, end, hand.chance.uniform(0.45, 0.55))
        side = 90 * _open_side(plan, start, end)
        way = _way(start, end) + side
        hand.text(label, _polar(middle, way, hand.extent(label, way) + 0.45 * hand.size))
    for a, v, b in plan.squares:
        at = plan.points[v]
        one, other = _way(at, plan.points[a]), _way(at, plan.points[b])
        side = 0.75 * hand.size
        first, last = _polar(at, one, side), _polar(at, other, side)
        outer = first[0] + last[0] - at[0], first[1] + last[1] - at[1]
        if hand.chance.random() < 0.5:
            hand.path([(first, outer), (outer, last)])
        else:
            hand.stroke(first, outer)
            hand.stroke(last, outer)


def _draw_angles(plan: Plan, hand: Hand) -> None:
    for a, v, b, label, arcs, strokes in plan.angles:
        at = plan.points[v]
        start = _way(at, plan.points[a])
        sweep = (_way(at, plan.points[b]) - start + 180) % 360 - 180
        if label in plan.reflex:
            sweep -= math.copysign(360, sweep)
        arms = min(math.dist(at, plan.points[a]), math.dist(at, plan.points[b]))
        radius = min(0.4 * arms, max(1.3, 30 / abs(sweep)) * hand.size)
        for number in range(arcs):
            hand.arc(at, radius + number * 2.4, start, sweep)
        middle = start + sweep / 2
        for number in range(strokes):
            way = middle + (number - (strokes - 1) / 2) * math.degrees(2.6 / radius)
            hand.stroke(_polar(at, way, radius - 3), _polar(at, way, radius + 3))
        if label:
            need = 0.5 * hand.size / max(0.2, math.sin(math.radians(min(90, abs(sweep) / 2))))
            reach = (
                (radius + (arcs - 1) * 2.4 if arcs else 0.9 * need)
                + 0.25 * hand.size
                + hand.extent(label, middle)
                + (3 if strokes else 0)
            )
            hand.text(label, _polar(at, middle, max(reach, min(need, radius + 30))))
    for a, v, b, digit in plan.numbers:
        at = plan.points[v]
        start = _way(at, plan.points[a])
        sweep = (_way(at, plan.points[b]) - start + 180) % 360 - 180
        hand.text(digit, _polar(at, start + sweep / 2, max(1.5, 48 / abs(sweep)) * hand.size))


def _free_way(plan: Plan, name: str) -> float:
    """The direction in the middle of the widest angle between what leaves a point."""
    at = plan.points[name]
    ways = []
    for line in plan.lines:
        if name in line:
            ways += [_way(at, plan.points[end]) for end in (line[0], line[-1]) if end != name]
    for centre, _, on in plan.circles:
        if name in on:
            out = _way(plan.points[centre], at)
            ways += [out + 90, out - 90, out + 180]
    ways = sorted(way % 360 for way in ways)
    if not ways:
        return 60
    gaps = [((after - way) % 360 or 360, way) for way, after in zip(ways, [*ways[1:], ways[0]], strict=True)]
    gap, way = max(gaps)
    return way + gap / 2


def _open_side(plan: Plan, start: Point, end: Point) -> int:
    """On which side of a stretch fewer points of the figure lie."""
    turned = [
        (end[0] - start[0]) * (at[1] - start[1]) - (end[1] - start[1]) * (at[0] - start[0])
        for at in plan.points.values()
    ]
    return -1 if sum(turned) > 0 else 1


def _loop(points: Sequence[Point]) -> list[tuple[Point, Point]]:
    return list(zip(points, [*points[1:], points[0]], strict=True))


def _polar(at: Point, way: float, reach: float) -> Point:
    turned = math.radians(way)
    return at[0] + reach * math.cos(turned), at[1] + reach * math.sin(turned)


def _way(start: Point, end: Point) -> float:
    return math.degrees(math.atan2(end[1] - start[1], end[0] - start[0]))


def _between(start: Point, end: Point, share: float) -> Point:
    return start[0] + share * (end[0] - start[0]), start[1] + share * (end[1] - start[1])


def _curves(centre: Point, radius: float, start: float, sweep: float) -> list[tuple[Point, ...]]:
    """Bézier curves of at most a right angle each."""
    count = max(1, math.ceil(abs(sweep) / 90 - 1e-9))
    step = sweep / count
    reach = radius * 4 / 3 * math.tan(math.radians(step) / 4)
    pieces = []
    for number in range(count):
        one, other = start + number * step, start + (number + 1) * step
        a, d = _polar(centre, one, radius), _polar(centre, other, radius)
        pieces.append((a, _polar(a, one + 90, reach), _polar(d, other - 90, reach), d))
    return pieces
