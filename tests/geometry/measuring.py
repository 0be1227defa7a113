"""Measures statements of the question file on coordinates, with nothing of the program's own geometry."""

import math
import re

Spots = dict[str, tuple[float, float]]

CLOSE = 1e-5
"""Degrees, or share of a length."""


def angle_at(spots: Spots, name: str) -> float:
    """The angle named by three letters, in degrees."""
    arm, vertex, other = (spots[letter] for letter in name)
    first = math.atan2(arm[1] - vertex[1], arm[0] - vertex[0])
    second = math.atan2(other[1] - vertex[1], other[0] - vertex[0])
    turn = abs(math.degrees(second - first)) % 360
    return min(turn, 360 - turn)


def _length(spots: Spots, name: str) -> float:
    return math.dist(spots[name[0]], spots[name[1]])


def _bearing(spots: Spots, name: str) -> float:
    start, end = spots[name[0]], spots[name[1]]
    return math.degrees(math.atan2(end[1] - start[1], end[0] - start[0]))


def _between(spots: Spots, start: str, middle: str, end: str) -> bool:
    return abs(angle_at(spots, start + middle + end) - 180) < CLOSE


def letter_value(given: list[str], spots: Spots) -> float | None:
    """The value of x that the first relation in x has on these coordinates."""
    for statement in given:
        found = re.fullmatch(r"∠(\w{3}) = (\d*)x(?: ([+−]) ([\d.]+)°)?", statement)
        if found:
            name, times, sign, rest = found.groups()
            offset = float(rest or 0) * (-1 if sign == "−" else 1)
            return (angle_at(spots, name) - offset) / int(times or 1)
    return None


def holds(statement: str, spots: Spots, x: float | None = None) -> bool:
    """Whether one statement of a random figure is true of these coordinates."""
    if found := re.fullmatch(r"∠(\w{3}) = ([\d.]+)°", statement):
        return abs(angle_at(spots, found[1]) - float(found[2])) < CLOSE
    if found := re.fullmatch(r"∠(\w{3}) = (\d*)x(?: ([+−]) ([\d.]+)°)?", statement):
        offset = float(found[4] or 0) * (-1 if found[3] == "−" else 1)
        assert x is not None
        return abs(angle_at(spots, found[1]) - int(found[2] or 1) * x - offset) < CLOSE
    if found := re.fullmatch(r"(\w\w) = (\w\w)", statement):
        one, two = _length(spots, found[1]), _length(spots, found[2])
        return abs(one - two) < CLOSE * one
    if found := re.fullmatch(r"(\w\w) ([∥⊥]) (\w\w)", statement):
        turn = (_bearing(spots, found[1]) - _bearing(spots, found[3])) % (360 if found[2] == "∥" else 180)
        aim = 0 if found[2] == "∥" else 90
        return min(abs(turn - aim), abs(turn - aim - 360)) < CLOSE
    if found := re.fullmatch(r"(\w)(\w) bisects ∠(\w)(\w)(\w)", statement):
        _, point, arm, vertex, other = found.groups()
        return abs(angle_at(spots, arm + vertex + point) - angle_at(spots, point + vertex + other)) < CLOSE
    if found := re.fullmatch(r"(\w)(\w) is produced to (\w)", statement):
        return _between(spots, *found.groups())
    if found := re.fullmatch(r"(\w) lies on (\w)(\w)", statement):
        return _between(spots, found[2], found[1], found[3])
    if re.fullmatch(r"\w(-\w)+", statement):
        points = statement.split("-")
        return all(_between(spots, *trio) for trio in zip(points, points[1:], points[2:], strict=False))
    if found := re.fullmatch(r"(rhombus|square|rectangle|parallelogram) (\w{4})", statement):
        return _parallelogram(found[1], found[2], spots)
    if found := re.fullmatch(r"equilateral triangle (\w{3})", statement):
        return all(abs(angle_at(spots, found[1][i:] + found[1][:i]) - 60) < CLOSE for i in range(3))
    if found := re.fullmatch(r"circle with centre (\w) through ([\w, ]+)", statement):
        points = re.findall(r"\b[A-Z]\b", found[2])
        reaches = [math.dist(spots[found[1]], spots[point]) for point in points]
        return max(reaches) - min(reaches) < CLOSE * max(reaches)
    if found := re.fullmatch(r"(\w)(\w) is a tangent to the circle at (\w)", statement):
        outer, at, contact = found.groups()
        return at == contact and abs(angle_at(spots, outer + at + "O") - 90) < CLOSE
    if re.fullmatch(r"(triangle|segment) \w+", statement):
        return True
    raise AssertionError(f"no measure for {statement}")


def _parallelogram(kind: str, corners: str, spots: Spots) -> bool:
    a, b, c, d = corners
    good = holds(f"{a}{b} ∥ {d}{c}", spots) and holds(f"{a}{d} ∥ {b}{c}", spots)
    if kind in ("rhombus", "square"):
        good &= holds(f"{a}{b} = {b}{c}", spots)
    if kind in ("rectangle", "square"):
        good &= abs(angle_at(spots, a + b + c) - 90) < CLOSE
    return good
