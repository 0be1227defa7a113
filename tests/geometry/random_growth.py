"""Random figures that grow point by point, with as many sizes told as settle what is asked, or fewer, or more.

A figure starts as a triangle, a quadrilateral or a circle made from whole numbers; each step adds a point
that a statement places: a midpoint, a foot, a parallel, a crossing, a bisector, a point on a circle, a tangent.
Nothing here follows a template, so the questions are odd where a book's are smooth.
"""

import itertools
from collections.abc import Callable, Sequence
from dataclasses import dataclass, field

from tests.geometry.freedom import Freedom
from tests.geometry.school_sheet import Sheet, Unfit, meet


@dataclass
class Growth:
    """A figure under construction: its sheet, its drawn lines as rows of points, its circles."""

    sheet: Sheet
    lines: list[list[str]] = field(default_factory=list)
    circles: dict[str, list[str]] = field(default_factory=dict)
    numbers: list[str] = field(default_factory=list)
    """The sizes that the figure was made from, as statements."""
    polygons: list[str] = field(default_factory=list)
    pool: list[str] = field(default_factory=lambda: list("ABCDEFGHKLMN"))

    def new(self, spot: complex) -> str:
        name = self.pool.pop(0)
        self.sheet.at[name] = spot
        return name

    def spot(self, name: str) -> complex:
        return self.sheet.at[name]

    def one(self, choices: Sequence[str]) -> str:
        if not choices:
            raise Unfit("nothing to choose from")
        return self.sheet.chance.choice(list(choices))

    def whole(self, low: int, high: int) -> int:
        return self.sheet.chance.randrange(low, high)

    def tell(self, name: str) -> None:
        """Tells a size that the figure was made from."""
        self.numbers.append(f"{name} = {self.sheet.written(name)}")

    def joined(self, one: str, two: str) -> bool:
        return any(one in line and two in line for line in self.lines)

    def join(self, one: str, two: str) -> None:
        """Draws a segment where none is drawn."""
        if not self.joined(one, two):
            self.lines.append([one, two])
            self.sheet.show(f"segment {one}{two}")

    def sides(self) -> list[tuple[str, str]]:
        """Pieces of lines between neighbouring points."""
        return [pair for line in self.lines for pair in itertools.pairwise(line)]

    def side(self) -> tuple[str, str]:
        return self.sheet.chance.choice(self.sides())

    def insert(self, point: str, start: str, end: str) -> None:
        """Places a new point between two neighbours of a drawn line."""
        for line in self.lines:
            if start in line and end in line:
                line.insert(max(line.index(start), line.index(end)), point)
                return
        raise KeyError((start, end))

    def triangles(self) -> list[tuple[str, str, str]]:
        """Three points, each two on a drawn line, all three on none."""
        return [
            trio
            for trio in itertools.combinations(self.sheet.at, 3)
            if all(self.joined(*pair) for pair in itertools.combinations(trio, 2))
            and not any(set(trio) <= set(line) for line in self.lines)
        ]

    def corners(self) -> list[tuple[str, str, str]]:
        """Angles between two drawn lines, by the nearest points on their arms."""
        found = []
        for vertex in self.sheet.at:
            arms = []
            for number, line in enumerate(self.lines):
                if vertex in line:
                    i = line.index(vertex)
                    arms += [(number, line[j]) for j in (i - 1, i + 1) if 0 <= j < len(line)]
            found += [(p, vertex, q) for (m, p), (n, q) in itertools.combinations(arms, 2) if m != n]
        return found

    def sizes(self) -> list[str]:
        """Everything of the figure that could be told or asked."""
        lengths = [a + b for line in self.lines for a, b in itertools.combinations(line, 2)]
        angles = [f"∠{a}{v}{b}" for a, v, b in self.corners()]
        trios = self.triangles()
        areas = [f"area of △{a}{b}{c}" for a, b, c in trios]
        around = [f"perimeter of △{a}{b}{c}" for a, b, c in trios]
        return lengths * 3 + angles * 2 + areas + around


Step = Callable[[Growth], None]


def midpoint(g: Growth) -> None:
    a, b = g.side()
    m = g.new((g.spot(a) + g.spot(b)) / 2)
    g.insert(m, a, b)
    g.sheet.show(f"{m} is the midpoint of {a}{b}")


def point_on_a_side(g: Growth) -> None:
    a, b = g.side()
    reach = abs(g.spot(b) - g.spot(a))
    if reach < 2.5:
        raise Unfit("short")
    if g.sheet.chance.random() < 0.5:
        size = g.whole(1, int(reach))
        d = g.new(g.spot(a) + (g.spot(b) - g.spot(a)) * size / reach)
        g.insert(d, a, b)
        g.tell(a + d)
    else:
        p, q = g.whole(1, 5), g.whole(1, 5)
        d = g.new(g.spot(a) + (g.spot(b) - g.spot(a)) * p / (p + q))
        g.insert(d, a, b)
        g.numbers.append(f"{a}{d} : {d}{b} = {p} : {q}" if p != q else f"{a}{d} = {d}{b}")
    g.sheet.show(f"{d} lies on {a}{b}")


def produced(g: Growth) -> None:
    line = g.sheet.chance.choice(g.lines)
    if g.sheet.chance.random() < 0.5:
        line.reverse()
    a, b = line[-2], line[-1]
    way = g.spot(b) - g.spot(a)
    d = g.new(g.spot(b) + way / abs(way) * g.whole(2, 8))
    line.append(d)
    g.tell(b + d)
    g.sheet.show(f"{a}{b} is produced to {d}")


def foot_of_a_perpendicular(g: Growth) -> None:
    """From a point to a piece of a line that it looks at."""
    a, b = g.side()
    p = g.one(
        [name for name in g.sheet.at if not g.joined(name, a) or not any({a, b, name} <= set(x) for x in g.lines)]
    )
    way = g.spot(b) - g.spot(a)
    along = ((g.spot(p) - g.spot(a)) * way.conjugate()).real / abs(way) ** 2
    if not 0.08 < along < 0.92:
        raise Unfit("beyond")
    d = g.new(g.spot(a) + way * along)
    g.insert(d, a, b)
    g.sheet.show(f"{d} lies on {a}{b}")
    g.join(p, d)
    g.sheet.tell(f"{p}{d} ⊥ {a}{b}")


def bisector(g: Growth) -> None:
    a, b, c = g.sheet.chance.sample(g.sheet.chance.choice(g.triangles()), 3)
    ab, ac = g.spot(b) - g.spot(a), g.spot(c) - g.spot(a)
    if any((b in line and c in line and abs(line.index(b) - line.index(c)) > 1) for line in g.lines):
        raise Unfit("crowded")
    d = g.new(meet(g.spot(a), g.spot(a) + ab / abs(ab) + ac / abs(ac), g.spot(b), g.spot(c)))
    g.insert(d, b, c)
    g.sheet.show(f"{d} lies on {b}{c}")
    g.join(a, d)
    g.sheet.tell(f"{a}{d} bisects ∠{b}{a}{c}")


def parallel_to_a_side(g: Growth) -> None:
    """From a point on one side of a triangle to another side, parallel to the third."""
    a, b, c = g.sheet.chance.sample(g.sheet.chance.choice(g.triangles()), 3)
    line = next(line for line in g.lines if a in line and b in line)
    low, high = sorted((line.index(a), line.index(b)))
    d = g.one(line[low + 1 : high])
    other = next(line for line in g.lines if a in line and c in line)
    if abs(other.index(a) - other.index(c)) != 1:
        raise Unfit("crowded")
    e = g.new(meet(g.spot(d), g.spot(d) + g.spot(c) - g.spot(b), g.spot(a), g.spot(c)))
    g.insert(e, a, c)
    g.sheet.show(f"{e} lies on {a}{c}")
    g.join(d, e)
    g.sheet.tell(f"{d}{e} ∥ {b}{c}")


def crossing(g: Growth) -> None:
    """The crossing of two pieces of lines gets a letter."""
    found = []
    for (a, b), (c, d) in itertools.combinations(g.sides(), 2):
        if len({a, b, c, d}) == 4 and not any({a, b} | {c, d} <= set(line) for line in g.lines):
            try:
                spot = meet(g.spot(a), g.spot(b), g.spot(c), g.spot(d))
            except Unfit:
                continue
            if all(
                0.03 < abs(spot - g.spot(p)) / abs(g.spot(p) - g.spot(q)) < 0.97
                for p, q in ((a, b), (b, a), (c, d), (d, c))
            ):
                found.append((a, b, c, d, spot))
    if not found:
        raise Unfit("no crossing")
    a, b, c, d, spot = g.sheet.chance.choice(found)
    e = g.new(spot)
    g.insert(e, a, b)
    g.insert(e, c, d)
    g.sheet.show(f"{a}{b} and {c}{d} intersect at {e}")


def joined(g: Growth) -> None:
    """A segment between two points that no line joins."""
    pairs = [pair for pair in itertools.combinations(g.sheet.at, 2) if not g.joined(*pair)]
    if not pairs:
        raise Unfit("all joined")
    g.join(*g.sheet.chance.choice(pairs))


def right_triangle_on_a_side(g: Growth) -> None:
    a, b = g.side()
    way = (g.spot(b) - g.spot(a)) / abs(g.spot(b) - g.spot(a)) * g.sheet.chance.choice((1j, -1j))
    d = g.new(g.spot(b) + way * g.whole(2, 12))
    g.sheet.show(f"triangle {a}{b}{d}")
    g.lines += [[a, d], [b, d]]
    g.sheet.tell(f"∠{a}{b}{d} = 90°")
    g.tell(b + d)


def isosceles_on_a_side(g: Growth) -> None:
    a, b = g.side()
    half = abs(g.spot(b) - g.spot(a)) / 2
    side = g.whole(int(half) + 1, int(half) + 9)
    way = (g.spot(b) - g.spot(a)) / (2 * half) * g.sheet.chance.choice((1j, -1j))
    d = g.new((g.spot(a) + g.spot(b)) / 2 + way * (side * side - half * half) ** 0.5)
    g.sheet.show(f"triangle {d}{a}{b}")
    g.lines += [[a, d], [b, d]]
    g.sheet.tell(f"{d}{a} = {d}{b}")
    g.tell(d + a)


def circumcircle(g: Growth) -> None:
    if g.circles:
        raise Unfit("one circle is enough")
    a, b, c = g.sheet.chance.choice(g.triangles())
    p, q, r = (g.spot(name) for name in (a, b, c))
    o = meet((p + q) / 2, (p + q) / 2 + 1j * (q - p), (q + r) / 2, (q + r) / 2 + 1j * (r - q))
    g.sheet.at["O"] = o
    g.circles["O"] = [a, b, c]
    g.sheet.show(f"circle with centre O through {a}, {b} and {c}")
    for name in g.sheet.chance.sample((a, b, c), g.sheet.chance.choice((1, 2))):
        g.join("O", name)


def tangent_at_a_point(g: Growth) -> None:
    if not g.circles:
        raise Unfit("no circle")
    t = g.one(g.circles["O"])
    way = (g.spot(t) - g.spot("O")) * g.sheet.chance.choice((1j, -1j))
    p = g.new(g.spot(t) + way / abs(way) * g.whole(3, 12))
    g.lines.append([p, t])
    g.sheet.tell(f"{p}{t} is a tangent to circle O at {t}")
    g.tell(p + t)


def second_point_on_the_circle(g: Growth) -> None:
    """A line through a point of the circle is produced to meet it again."""
    if not g.circles:
        raise Unfit("no circle")
    o, radius = g.spot("O"), abs(g.spot(g.circles["O"][0]) - g.spot("O"))
    found = []
    for line in g.lines:
        for a, b in ((line[0], line[-1]), (line[-1], line[0])):
            if a in g.circles["O"] and not any(name in g.circles["O"] for name in line if name != a):
                way = (g.spot(b) - g.spot(a)) / abs(g.spot(b) - g.spot(a))
                along = 2 * ((o - g.spot(a)) * way.conjugate()).real
                if along > abs(g.spot(b) - g.spot(a)) * 1.1:
                    found.append((line, a, b, g.spot(a) + way * along))
    if not found:
        raise Unfit("none")
    line, a, b, spot = g.sheet.chance.choice(found)
    d = g.new(spot)
    line.insert(0 if line[0] == b else len(line), d)
    g.circles["O"].append(d)
    g.sheet.show(f"{a}{b} is produced to {d}", f"{d} lies on circle O")
    assert abs(abs(spot - o) - radius) < 1e-9


def clear(g: Growth) -> bool:
    """No two points close, no third point nearly on a drawn line, no angle hard to see."""
    spots = g.sheet.at
    size = max(abs(p - q) for p in spots.values() for q in spots.values())
    if min(abs(p - q) for p, q in itertools.combinations(spots.values(), 2)) < 0.05 * size:
        return False
    for line in g.lines:
        a, b = g.spot(line[0]), g.spot(line[-1])
        for name, spot in spots.items():
            off = ((spot - a) * (b - a).conjugate()).imag / abs(b - a)
            if name not in line and abs(off) < 0.03 * size:
                return False
    return all(6 < g.sheet.measure(f"∠{a}{v}{b}") < 174 for a, v, b in g.corners())


def settle(g: Growth, mode: str, wanted: Callable[[str], bool] = bool) -> None:
    """Asks for a size; tells those it was made from, or as many others as settle it, one fewer or one more."""
    s = g.sheet
    s.asked = g.one([size for size in g.sizes() if wanted(size)])
    reverse = s.asked[::-1] if len(s.asked) == 2 else s.asked
    told = [number for number in g.numbers if not number.startswith((s.asked + " =", reverse + " ="))]
    if mode == "made":
        s.given += told
        return
    s.loose = True
    known: list[str] = []
    for size in s.chance.sample(sorted(set(g.sizes())), k=len(set(g.sizes()))):
        if size in (s.asked, reverse):
            continue
        try:
            known.append(f"{size} = {s.written(size)}")
        except Unfit:
            continue
    told = told[1:] if mode == "swapped" else []
    spots = {name: (spot.real, spot.imag) for name, spot in s.at.items()}

    def settled(lines: list[str]) -> bool:
        return Freedom([*s.figure, *s.given, *lines], spots, s.letters).settles(s.asked)

    while not settled(told) and known:
        told.append(known.pop(0))
    if not settled(told):
        raise Unfit("not settled")
    for line in list(told):
        rest = [other for other in told if other != line]
        if settled(rest):
            told = rest
    if mode == "fewer" and told:
        told.pop(s.chance.randrange(len(told)))
    elif mode == "more" and known:
        told.append(known.pop(0))
    s.given += told


MODES = ("made", "made", "swapped", "enough", "fewer", "more")


def grow(
    s: Sheet, starts: Sequence[Step], steps: Sequence[Step], most: int, wanted: Callable[[str], bool] = bool
) -> None:
    """One random question on a sheet."""
    g = Growth(s)
    s.unit = ""
    s.chance.choice(list(starts))(g)
    for _ in range(s.chance.randrange(0 if most < 3 else 1, most + 1)):
        for _ in range(6):
            try:
                s.chance.choice(list(steps))(g)
            except (Unfit, IndexError):
                continue
            break
    if not clear(g):
        raise Unfit("crowded")
    settle(g, s.chance.choice(MODES), wanted)
