"""Random figures as school papers draw them: triangles, parallels, circles, quadrilaterals, rays, marks."""

import math
import random
from collections.abc import Callable

from paperaudit.readers.draft.page import Point
from tests.readers.drawn_pages import Plan, _between, _polar

Maker = Callable[[random.Random], Plan]
SIZES = ("40°", "x", "2x + 10°", "68°", "3x", "115°", "y", "x + 20°", "(2x − 5)°")
LENGTHS = ("5 cm", "7,5 cm", "x", "12", "2x + 1", "8 m")
AT_LEAST = 52.0
"""Points between the points of a figure, at least."""


class TooTight(Exception):
    """A plan came out with points or angles that no one would draw."""


def letters(chance: random.Random, count: int) -> list[str]:
    start = chance.choice(["ABCDEFGH", "PQRSTUVW", "KLMNPQRS", "EFGHJKLM"])
    return list(start[:count])


def triangle(chance: random.Random) -> Plan:
    a, b, c = letters(chance, 3)
    at = dict(zip((a, b, c), corners(chance, 3), strict=True))
    plan = Plan(at, [a + b, b + c, c + a])
    sizes = chance.sample(SIZES, 3)
    kind = chance.choice(["sizes", "isosceles", "right", "lengths", "equal angles"])
    if kind == "sizes":
        plan.angles = [(c, a, b, sizes[0], 1, 0), (a, b, c, sizes[1], 1, 0), (b, c, a, sizes[2], 1, 0)][
            : chance.randint(1, 3)
        ]
    elif kind == "isosceles":
        count = chance.randint(1, 3)
        plan.ticks = [(a, b, count), (a, c, count)]
        plan.angles = [(a, b, c, sizes[0], 1, 0)]
    elif kind == "right":
        at[c] = _polar(at[b], _turn(at[b], at[a]) + 90, chance.uniform(80, 150))
        plan.squares = [(a, b, c)]
        plan.lengths = [(a, b, "5 cm"), (b, c, "12 cm")]
    elif kind == "lengths":
        plan.lengths = [(a, b, LENGTHS[0]), (b, c, chance.choice(LENGTHS[1:])), (c, a, chance.choice(LENGTHS[1:]))]
    else:
        arcs, strokes = chance.choice([(2, 0), (1, 1), (1, 2), (3, 0)])
        plan.angles = [(a, b, c, "", arcs, strokes), (b, c, a, "", arcs, strokes), (c, a, b, sizes[0], 1, 0)]
    return plan


def produced(chance: random.Random) -> Plan:
    a, b, c, d = letters(chance, 4)
    at = dict(zip((a, b, c), corners(chance, 3), strict=True))
    at[d] = _between(at[b], at[c], 1 + chance.uniform(0.4, 0.7))
    plan = Plan(at, [a + b, c + a, b + c + d])
    sizes = chance.sample(SIZES, 2)
    plan.angles = [(a, b, c, sizes[0], 1, 0), (a, c, d, sizes[1], 1, 0)]
    if chance.random() < 0.5:
        plan.ticks = [(a, b, 1), (a, c, 1)]
    return plan


def cevian(chance: random.Random) -> Plan:
    a, b, c, d = letters(chance, 4)
    at = dict(zip((a, b, c), corners(chance, 3, 150), strict=True))
    at[d] = _between(at[b], at[c], chance.uniform(0.42, 0.58))
    plan = Plan(at, [a + b, c + a, b + d + c, a + d])
    kind = chance.choice(["sizes", "median", "bisector"])
    if kind == "sizes":
        plan.angles = [(a, b, d, "50°", 1, 0), (a, d, c, "x", 1, 0)]
    elif kind == "median":
        at[d] = _between(at[b], at[c], 0.5)
        plan.ticks = [(b, d, 2), (d, c, 2)]
    else:
        plan.angles = [(b, a, d, "", 1, 1), (d, a, c, "", 1, 1), (a, b, d, "62°", 1, 0)]
    return plan


def transversal(chance: random.Random) -> Plan:
    a, b, c, d, e, f, g, h = letters(chance, 8)
    tilt = chance.uniform(-20, 20)
    left = (chance.uniform(60, 90), chance.uniform(120, 160))
    across = chance.uniform(170, 230)
    gap = chance.uniform(70, 110)
    at = {a: left, b: _polar(left, tilt, across), c: _polar(left, tilt + 90, gap)}
    at[d] = _polar(at[c], tilt, across)
    at[g] = _between(at[a], at[b], chance.uniform(0.55, 0.65))
    at[h] = _between(at[c], at[d], chance.uniform(0.35, 0.45))
    at[e], at[f] = _between(at[h], at[g], 1.6), _between(at[g], at[h], 1.6)
    plan = Plan(at, [a + g + b, c + h + d, e + g + h + f])
    arrows = chance.randint(1, 2)
    plan.arrows = [(a, g, arrows), (c, d, arrows)]
    plan.angles = [(e, g, b, chance.choice(SIZES[:4]), 1, 0), (d, h, f, chance.choice(SIZES[4:]), 1, 0)]
    return plan


def zigzag(chance: random.Random) -> Plan:
    a, b, c, d, e = letters(chance, 5)
    at = {a: (240.0, 100.0), b: (80.0, 100.0), c: (250.0, 220.0), d: (90.0, 220.0)}
    at[e] = (chance.uniform(170, 240), chance.uniform(150, 170))
    plan = Plan(at, [b + a, d + c, b + e, e + d])
    plan.arrows = [(b, a, 1), (d, c, 1)]
    plan.angles = [(a, b, e, "38°", 1, 0), (c, d, e, "45°", 1, 0), (b, e, d, "x", 1, 0)]
    return plan


def diagonals(chance: random.Random) -> Plan:
    a, b, c, d, e = letters(chance, 5)
    at = dict(zip((a, b, c, d), corners(chance, 4, 130), strict=True))
    at[e] = _meet(at[a], at[c], at[b], at[d])
    plan = Plan(at, [a + b, b + c, c + d, d + a, a + e + c, b + e + d])
    if chance.random() < 0.3:
        plan.silent = e
    plan.angles = [(a, b, e, "35°", 1, 0), (b, e, c, "100°", 1, 0)]
    if not plan.silent:
        plan.ticks = [(a, b, 1), (c, d, 1), (b, c, 2), (d, a, 2)]
    else:
        plan.angles = [(a, b, c, "95°", 1, 0)]
    return plan


def parallelogram(chance: random.Random) -> Plan:
    a, b, c, d = letters(chance, 4)
    start, tilt = (90.0, 200.0), chance.uniform(-15, 15)
    at = {a: start, b: _polar(start, tilt, chance.uniform(130, 180))}
    lean = tilt - chance.uniform(50, 75)
    reach = chance.uniform(80, 110)
    at[c], at[d] = _polar(at[b], lean, reach), _polar(start, lean, reach)
    plan = Plan(at, [a + b, b + c, c + d, d + a])
    kind = chance.choice(["arrows", "ticks", "lengths"])
    if kind == "arrows":
        plan.arrows = [(a, b, 1), (d, c, 1), (a, d, 2), (b, c, 2)]
        plan.angles = [(b, a, d, "x", 1, 0), (c, b, a, "3x", 1, 0)]
    elif kind == "ticks":
        plan.ticks = [(a, b, 1), (c, d, 1), (a, d, 2), (b, c, 2)]
    else:
        plan.lengths = [(a, b, "9 cm"), (b, c, "x + 2")]
        plan.angles = [(b, a, d, "72°", 1, 0)]
    return plan


def inner_parallel(chance: random.Random) -> Plan:
    a, b, c, d, e = letters(chance, 5)
    at = dict(zip((a, b, c), corners(chance, 3, 170), strict=True))
    share = chance.uniform(0.45, 0.6)
    at[d], at[e] = _between(at[a], at[b], share), _between(at[a], at[c], share)
    plan = Plan(at, [a + d + b, a + e + c, b + c, d + e])
    plan.arrows = [(d, e, 1), (b, c, 1)]
    plan.angles = [(a, d, e, "64°", 1, 0), (a, c, b, "y", 1, 0)]
    return plan


def chords(chance: random.Random) -> Plan:
    names = letters(chance, 4)
    count = chance.choice([3, 4])
    centre, radius = (200.0, 200.0), chance.uniform(70, 95)
    turn = chance.uniform(0, 360)
    ways = [turn + at * 360 / count + chance.uniform(-18, 18) for at in range(count)]
    at = {name: _polar(centre, way, radius) for name, way in zip(names, ways, strict=False)}
    at["O"] = centre
    used = names[:count]
    plan = Plan(at, [one + other for one, other in zip(used, [*used[1:], used[0]], strict=True)])
    plan.circles = [("O", radius, "".join(used))]
    plan.angles = [(used[0], used[1], used[2], "70°", 1, 0)]
    if count == 3 and chance.random() < 0.7:
        plan.lines += ["O" + used[0], "O" + used[2]]
        plan.angles.append((used[0], "O", used[2], "x", 1, 0))
    return plan


def tangent(chance: random.Random) -> Plan:
    t, p, a = letters(chance, 3)
    centre, radius = (200.0, 200.0), chance.uniform(60, 85)
    way = chance.uniform(0, 360)
    at = {"O": centre, t: _polar(centre, way, radius)}
    at[p] = _polar(at[t], way + 90, chance.uniform(90, 130))
    at[a] = _polar(centre, way + 200, radius)
    plan = Plan(at, [t + p, "O" + t, "O" + p, "O" + a])
    plan.circles = [("O", radius, t + a)]
    plan.squares = [("O", t, p)] if chance.random() < 0.5 else []
    plan.angles = [("O", p, t, "28°", 1, 0)]
    plan.tangents = [f"{p}{t} is a tangent to circle O at {t}"]
    return plan


def rays(chance: random.Random) -> Plan:
    names = letters(chance, 5)[1:]
    turn, ways = chance.uniform(0, 360), []
    for gap in (62, 75, 85, 138):
        turn += gap + chance.uniform(-12, 12)
        ways.append(turn)
    middle = (200.0, 200.0)
    at = {
        "O": middle,
        **{name: _polar(middle, way, chance.uniform(85, 110)) for name, way in zip(names, ways, strict=True)},
    }
    plan = Plan(at, ["O" + name for name in names])
    # The first gap lies before the first ray; the widest has no arc, so that the letter stands there.
    plan.angles = [
        (one, "O", other, size, 1, 0) for one, other, size in zip(names, names[1:], ("x", "2x", "88°"), strict=False)
    ][:2]
    if any(abs(abs(_gap(middle, at[one], at[other])) - 180) < 5 for one in names for other in names):
        raise TooTight
    if max(abs(_gap(at["O"], at[one], at[other])) for one, _, other, *_ in plan.angles) > 165:
        raise TooTight
    return plan


def numbered(chance: random.Random) -> Plan:
    a, b, c, d = letters(chance, 4)
    at = dict(zip((a, b, c), corners(chance, 3, 160), strict=True))
    at[d] = _between(at[b], at[c], chance.uniform(0.4, 0.6))
    plan = Plan(at, [a + b, c + a, b + d + c, a + d])
    plan.numbers = [(b, a, d, "1"), (d, a, c, "2"), (a, d, b, "1"), (a, d, c, "2")]
    plan.angles = [(a, b, d, "40°", 1, 0)]
    return plan


def bare_corners(chance: random.Random) -> Plan:
    """Sizes in corners that no arc marks."""
    a, b, c = letters(chance, 3)
    at = dict(zip((a, b, c), corners(chance, 3, 130), strict=True))
    plan = Plan(at, [a + b, b + c, c + a])
    vertices = [(c, a, b), (a, b, c), (b, c, a)]
    plan.angles = [(*names, size, 0, 0) for names, size in zip(vertices, ("50°", "x", "72°"), strict=True)]
    return plan


def reflex(chance: random.Random) -> Plan:
    a, b = letters(chance, 2)
    turn = chance.uniform(0, 360)
    middle = (200.0, 200.0)
    at = {"O": middle, a: _polar(middle, turn, 90), b: _polar(middle, turn + chance.uniform(60, 140), 100)}
    plan = Plan(at, ["O" + a, "O" + b], reflex=("250°",))
    plan.angles = [(a, "O", b, "250°", 1, 0)]
    return plan


def semicircle(chance: random.Random) -> Plan:
    a, b, c = letters(chance, 3)
    turn, radius = chance.uniform(0, 360), chance.uniform(70, 100)
    middle = (200.0, 200.0)
    at = {a: _polar(middle, turn, radius), b: _polar(middle, turn + 180, radius), "O": middle}
    at[c] = _polar(middle, turn + chance.uniform(60, 120), radius)
    plan = Plan(at, [a + "O" + b, a + c, c + b], [("O", radius, a + b + c)], arcs=[("O", a, b)])
    plan.angles = [(b, a, c, "33°", 1, 0)]
    return plan


def sector(chance: random.Random) -> Plan:
    a, b = letters(chance, 2)
    turn, radius = chance.uniform(0, 360), chance.uniform(80, 110)
    middle = (200.0, 200.0)
    at = {"O": middle, a: _polar(middle, turn, radius), b: _polar(middle, turn + chance.uniform(50, 130), radius)}
    plan = Plan(at, ["O" + a, "O" + b], [("O", radius, a + b)], arcs=[("O", a, b)])
    plan.angles = [(a, "O", b, "x", 1, 0)]
    plan.lengths = [("O", a, "9 cm")]
    return plan


def measured_below(chance: random.Random) -> Plan:
    """A triangle on a level side with a height, and a dimension line below it."""
    a, b, c, d = letters(chance, 4)
    wide = chance.uniform(140, 200)
    at = {a: (100.0, 220.0), b: (100 + wide, 220.0), d: (100 + wide * chance.uniform(0.35, 0.65), 220.0)}
    at[c] = (at[d][0], 220 - chance.uniform(70, 110))
    plan = Plan(at, [a + d + b, b + c, c + a, c + d], spans=[(a, b, "14 cm")])
    plan.squares = [(b, d, c)]
    plan.lengths = [(a, c, "9 cm")]
    return plan


def two_triangles(chance: random.Random) -> Plan:
    """Congruent triangles side by side, tied by their marks."""
    a, b, c, d, e, f = letters(chance, 6)
    first = corners(chance, 3, 62)
    at = dict(zip((a, b, c), first, strict=True))
    across = max(x for x, _ in first) - min(x for x, _ in first) + 45
    at |= {name: (x + across, y) for name, (x, y) in zip((d, e, f), first, strict=True)}
    plan = Plan(at, [a + b, b + c, c + a, d + e, e + f, f + d])
    plan.ticks = [(a, b, 1), (d, e, 1), (b, c, 2), (e, f, 2)]
    plan.angles = [(a, b, c, "58°", 1, 0), (d, e, f, "x", 1, 0)]
    return plan


MAKERS: dict[str, Maker] = {
    maker.__name__: maker
    for maker in (
        triangle,
        produced,
        cevian,
        transversal,
        zigzag,
        diagonals,
        parallelogram,
        inner_parallel,
        chords,
        tangent,
        rays,
        numbered,
        bare_corners,
        reflex,
        semicircle,
        sector,
        measured_below,
        two_triangles,
    )
}


def plan_of(name: str, chance: random.Random) -> Plan:
    """A plan of a family that is neither too tight nor off the page, stretched by up to a third and moved."""
    while True:
        try:
            plan = MAKERS[name](chance)
        except TooTight:
            continue
        if not plan.circles and not plan.squares and not plan.reflex:
            wide, high = chance.uniform(0.85, 1.2), chance.uniform(0.85, 1.2)
            plan.points = {name: (x * wide, y * high) for name, (x, y) in plan.points.items()}
        left, top = (min(place[at] for place in plan.points.values()) for at in (0, 1))
        by = chance.uniform(60, 150) - left, chance.uniform(60, 300) - top
        plan.points = {name: (x + by[0], y + by[1]) for name, (x, y) in plan.points.items()}
        if _is_open(plan):
            return plan


def _is_open(plan: Plan) -> bool:
    spots = list(plan.points.values())
    near = min(math.dist(one, other) for at, one in enumerate(spots) for other in spots[at + 1 :])
    angles = [(a, v, b) for a, v, b, *_ in [*plan.angles, *plan.numbers]]
    turns = [abs(_gap(plan.points[v], plan.points[a], plan.points[b])) for a, v, b in angles]
    return near >= 40 and all(20 <= turn <= 165 for turn in turns)


def corners(chance: random.Random, count: int, radius: float = 110.0) -> list[Point]:
    """Corners of a polygon round a middle."""
    turn = chance.uniform(0, 360)
    ways = [turn + at * 360 / count + chance.uniform(-22, 22) for at in range(count)]
    return [_polar((220.0, 220.0), way, radius * chance.uniform(0.75, 1.1)) for way in ways]


def _turn(start: Point, end: Point) -> float:
    return math.degrees(math.atan2(end[1] - start[1], end[0] - start[0]))


def _gap(at: Point, one: Point, other: Point) -> float:
    return (_turn(at, other) - _turn(at, one) + 180) % 360 - 180


def _meet(a: Point, c: Point, b: Point, d: Point) -> Point:
    u, v = (c[0] - a[0], c[1] - a[1]), (d[0] - b[0], d[1] - b[1])
    turned = u[0] * v[1] - u[1] * v[0]
    share = ((b[0] - a[0]) * v[1] - (b[1] - a[1]) * v[0]) / turned
    return _between(a, c, share)
