"""Measures statements of the question file on coordinates, with nothing of the program's own geometry."""

import math
import re
from collections.abc import Callable, Iterable, Mapping
from itertools import pairwise

from tests.geometry.measured_sizes import Measured, Spots, cross, dot

CLOSE = 1e-5
"""Degrees, or share of a length."""

Gaps = list[float]
"""How far a statement is from true: zeros where it holds, smooth near there but for orders, which are 0 or 1."""


def angle_at(spots: Spots, name: str) -> float:
    """The angle named by three letters, in degrees."""
    return Measured(spots).angle(name)


def letter_value(given: list[str], spots: Spots) -> float | None:
    """The value of x that the first relation in x has on these coordinates."""
    for statement in given:
        found = re.fullmatch(r"∠(\w{3}) = (\d*)x(?: ([+−]) ([\d.]+)°)?", statement)
        if found:
            name, times, sign, rest = found.groups()
            offset = float(rest or 0) * (-1 if sign == "−" else 1)
            return (angle_at(spots, name) - offset) / int(times or 1)
    return None


_RIMS = (
    r"centre (?P<centre>\w) through (?P<rim>[A-Z])",
    r"sector (?P<centre>[A-Z])(?P<rim>[A-Z])",
    r"(?P<rim>[A-Z]) lies on circle (?P<centre>[A-Z])",
    r"(?P<rim>[A-Z])[A-Z] is a (?:chord|diameter) of circle (?P<centre>[A-Z])",
    r"\w+(?: and \w+)? (?:is a tangent|are tangents) to circle (?P<centre>\w) at (?P<rim>\w)",
    r"circle (?P<centre>\w) touches \w\w at (?P<rim>\w)",
)


def rims_of(statements: Iterable[str]) -> dict[str, str]:
    """A point of the circle round each centre that the statements name."""
    rims: dict[str, str] = {}
    for statement in statements:
        for pattern in _RIMS:
            if found := re.search(pattern, statement):
                rims.setdefault(found["centre"], found["rim"])
    return rims


def holds(statement: str, spots: Spots, x: float | None = None, measured: Measured | None = None) -> bool:
    """Whether one statement of a random figure is true of these coordinates."""
    letters = {} if x is None else {"x": x}
    return all(abs(gap) < CLOSE for gap in gaps(statement, measured or Measured(spots, letters, {"O": ""})))


def gaps(statement: str, measured: Measured) -> Gaps:
    """The gaps of one statement; AssertionError where there is no measure for it."""
    for pattern, measure in _PATTERNS:
        if found := re.fullmatch(pattern, statement):
            return measure(measured, *found.groups())
    if re.search("=|:", statement):
        return _relation(measured, statement)
    raise AssertionError(f"no measure for {statement}")


def _said(condition: bool) -> Gaps:
    return [0.0 if condition else 1.0]


def _relation(measured: Measured, statement: str) -> Gaps:
    sides = [side.strip() for side in statement.split("=")]
    if ":" in statement:
        left, right = ([measured.size(term) for term in side.split(":")] for side in sides)
        return [
            (left[i] * right[i + 1] - left[i + 1] * right[i]) / abs(left[i] * right[i + 1])
            for i in range(len(left) - 1)
        ]
    values = [measured.size(side) for side in sides]
    most = max(abs(values[0]), 1e-9)
    return [(one - two) / most for one, two in pairwise(values)]


def _line(measured: Measured, *names: str) -> Gaps:
    """Points on a line in that order."""
    found: Gaps = []
    for start, middle, end in zip(names, names[1:], names[2:], strict=False):
        found += [*_on(measured, middle, start, end), *_said(dot(*(measured.at[p] for p in (middle, start, end))) < 0)]
    return found


def _on(measured: Measured, point: str, start: str, end: str) -> Gaps:
    """A point somewhere on the line through two others."""
    turn = cross(measured.at[start], measured.at[end], measured.at[point])
    return [turn / measured.length(start + end) ** 2]


def _ways(measured: Measured, one: str, two: str) -> tuple[float, float]:
    """Cosine and sine of the turn from one path to another."""
    (p, q), (r, s) = ((measured.at[a], measured.at[b]) for a, b in (one, two))
    u, v = (q[0] - p[0], q[1] - p[1]), (s[0] - r[0], s[1] - r[1])
    size = math.hypot(*u) * math.hypot(*v)
    return (u[0] * v[0] + u[1] * v[1]) / size, (u[0] * v[1] - u[1] * v[0]) / size


def _parallel(measured: Measured, *paths: str) -> Gaps:
    found: Gaps = []
    for one, two in pairwise(paths):
        cosine, sine = _ways(measured, one, two)
        found += [sine, *_said(cosine > 0)]
    return found


def _perpendicular(measured: Measured, one: str, two: str) -> Gaps:
    return [_ways(measured, one, two)[0]]


def _bisects(measured: Measured, path: str, angle: str) -> Gaps:
    arm, vertex, other = angle
    one, two = measured.angle(arm + vertex + path[1]), measured.angle(path[1] + vertex + other)
    return [(one - two) / 90, *_said(abs(one + two - measured.angle(angle)) < 1e-3)]


def _midpoint(measured: Measured, point: str, path: str) -> Gaps:
    at = measured.at
    p, (q, r) = at[point], (at[end] for end in path)
    return [(p[i] - (q[i] + r[i]) / 2) / measured.length(path) for i in (0, 1)]


def _equal(measured: Measured, *lengths: str) -> Gaps:
    return _relation(measured, " = ".join(lengths)) if len(lengths) > 1 else []


def _shape(measured: Measured, kind: str, corners: str) -> Gaps:
    sides = [a + b for a, b in zip(corners, corners[1:] + corners[:1], strict=True)]
    if kind in ("equilateral triangle", "regular"):
        count = len(corners)
        interior = 180 - 360 / count
        angles = [corners[i - 2] + corners[i - 1] + corners[i] for i in range(count)]
        return [*_equal(measured, *sides), *((measured.angle(angle) - interior) / 90 for angle in angles if count > 3)]
    found: Gaps = []
    if kind in ("parallelogram", "rhombus", "rectangle", "square"):
        found += _parallel(measured, sides[0], sides[2][::-1]) + _parallel(measured, sides[1], sides[3][::-1])
    if kind in ("rhombus", "square"):
        found += _equal(measured, sides[0], sides[1])
    if kind in ("rectangle", "square"):
        found += [(measured.angle(corners[:3]) - 90) / 90]
    return found


def _on_circle(measured: Measured, points: str, centre: str) -> Gaps:
    """Points on the circle; where its rim is one of them, that one defines it."""
    names = re.findall("[A-Z]", points)
    rim = measured.rims.get(centre) or names[0]
    radius = measured.length(centre + rim)
    return [(measured.length(centre + name) - radius) / radius for name in names if name != rim]


def _concyclic(measured: Measured, points: str) -> Gaps:
    names = re.findall("[A-Z]", points)
    (ax, ay), (bx, by), (cx, cy) = (measured.at[name] for name in names[:3])
    twice = 2 * (ax * (by - cy) + bx * (cy - ay) + cx * (ay - by))
    a, b, c = ax * ax + ay * ay, bx * bx + by * by, cx * cx + cy * cy
    centre = (
        (a * (by - cy) + b * (cy - ay) + c * (ay - by)) / twice,
        (a * (cx - bx) + b * (ax - cx) + c * (bx - ax)) / twice,
    )
    radius = math.dist(centre, (ax, ay))
    return [(math.dist(centre, measured.at[name]) - radius) / radius for name in names[3:]]


def _tangent(measured: Measured, path: str, centre: str, contact: str) -> Gaps:
    away = path[0] if path[1] == contact else path[1]
    return [*_on_circle(measured, contact, centre), *_perpendicular(measured, contact + away, contact + centre)]


def _tangents(measured: Measured, one: str, two: str, centre: str, first: str, second: str) -> Gaps:
    return _tangent(measured, one, centre, first) + _tangent(measured, two, centre, second)


def _diameter(measured: Measured, path: str, centre: str) -> Gaps:
    return _midpoint(measured, centre, path) + _on_circle(measured, path, centre)


def _proportional(measured: Measured, one: str, sign: str, two: str) -> Gaps:
    pairs = [(i, (i + 1) % len(one)) for i in range(len(one))]
    if len(one) > 3:
        pairs += [(i, (i + 2) % len(one)) for i in range(len(one))]
    shares = [measured.length(one[i] + one[j]) / measured.length(two[i] + two[j]) for i, j in pairs]
    return [share / (1 if sign == "≡" else shares[0]) - 1 for share in (shares if sign == "≡" else shares[1:])]


def _incircle(measured: Measured, centre: str, corners: str) -> Gaps:
    lines = [a + b for a, b in zip(corners, corners[1:] + corners[:1], strict=True)]
    apart = [measured.size(f"distance from {centre} to {line}") for line in lines]
    return [one / apart[0] - 1 for one in apart[1:]]


def _touches(measured: Measured, centre: str, line: str, contact: str) -> Gaps:
    return _line(measured, line[0], contact, line[1]) + _perpendicular(measured, line, centre + contact)


def _inside(measured: Measured, point: str, corners: str) -> Gaps:
    spots = [measured.at[corner] for corner in corners]
    turns = [cross(p, q, measured.at[point]) for p, q in zip(spots, spots[1:] + spots[:1], strict=True)]
    return _said(min(turns) > 0 or max(turns) < 0)


def _nothing(measured: Measured, *_: str) -> Gaps:
    return []


_PATTERNS: list[tuple[str, Callable[..., Gaps]]] = [
    (
        r"(?:triangles?|quadrilateral|kite|trapezium|segments?|diagonals?|line|lines) [A-Z]+(?:(?:, | and )[A-Z]+)*",
        _nothing,
    ),
    (r"(equilateral triangle|rhombus|square|rectangle|parallelogram) (\w+)", _shape),
    (r"(regular) \w+ ([A-Z]+)", _shape),
    (r"isosceles triangle ([A-Z]{3}) with (.+)", lambda m, _, rest: gaps(rest, m)),
    (r"(?:isosceles )?trapezium [A-Z]{4} with (.+)", lambda m, rest: gaps(rest, m)),
    (r"triangle [A-Z]{3} is right-angled at ([A-Z])", _nothing),
    (r"(\w)(\w) is produced to (\w)", _line),
    (r"(\w) lies on ([A-Z])([A-Z])", lambda m, point, start, end: _line(m, start, point, end)),
    (r"([A-Z](?:-[A-Z])+)", lambda m, names: _line(m, *names.split("-"))),
    (r"(\w)(\w) and (\w)(\w) intersect at (\w)", lambda m, a, b, c, d, e: _line(m, a, e, b) + _line(m, c, e, d)),
    (r"(\w)(\w) and (\w)(\w) produced meet at (\w)", lambda m, a, b, c, d, e: _line(m, a, b, e) + _line(m, c, d, e)),
    (r"(\w) is the midpoint of (\w\w)", _midpoint),
    (
        r"(\w) is the foot of the perpendicular from (\w) to (\w)(\w)",
        lambda m, d, a, b, c: _on(m, d, b, c) + _perpendicular(m, a + d, b + c),
    ),
    (r"(\w\w)((?: ∥ \w\w)+)", lambda m, one, rest: _parallel(m, one, *re.findall(r"\w\w", rest))),
    (r"(\w\w) ⊥ (\w\w)", _perpendicular),
    (r"(\w\w) bisects ∠(\w{3})", _bisects),
    (r"△(\w+) ([≡∼]) △(\w+)", _proportional),
    (r"(\w) lies inside (?:triangle |quadrilateral )?([A-Z]{3,})", _inside),
    (r"circle with centre (\w) through ([\w, ]+)", lambda m, centre, points: _on_circle(m, points, centre)),
    (r"circle through ([\w, ]+)", _concyclic),
    (r"circle with centre \w", _nothing),
    (r"circle with centre (\w) is inscribed in triangle (\w{3})", _incircle),
    (r"circle (\w) touches (\w\w) at (\w)", _touches),
    (r"(\w) lies on circle (\w)", _on_circle),
    (r"(\w\w) is a chord of circle (\w)", _on_circle),
    (r"(\w\w) is a diameter of circle (\w)", _diameter),
    (r"(\w\w) is a tangent to circle (\w) at (\w)", _tangent),
    (r"(\w\w) is a tangent to the circle at (\w)", lambda m, path, at: _tangent(m, path, "O", at)),
    (r"(\w\w) and (\w\w) are tangents to circle (\w) at (\w) and (\w)", _tangents),
    (r"sector (\w)(\w)(\w)", lambda m, o, a, b: _equal(m, o + a, o + b)),
    (
        r"(\w) is due north of (\w)",
        lambda m, n, a: [(m.at[n][0] - m.at[a][0]) / m.length(n + a), *_said(m.at[n][1] > m.at[a][1])],
    ),
    (
        r"(\w) is due east of (\w)",
        lambda m, e, a: [(m.at[e][1] - m.at[a][1]) / m.length(e + a), *_said(m.at[e][0] > m.at[a][0])],
    ),
]


def measured_gaps(statements: Iterable[str], measured: Measured) -> Gaps:
    """The gaps of all statements in a row."""
    return [gap for statement in statements for gap in gaps(statement, measured)]


def all_hold(statements: Iterable[str], spots: Spots, letters: Mapping[str, float]) -> list[str]:
    """The statements that are false of these coordinates."""
    listed = list(statements)
    measured = Measured(spots, letters, rims_of(listed))
    return [one for one in listed if any(abs(gap) > CLOSE for gap in gaps(one, measured))]
