"""Measures expressions of the statement language on coordinates: 2x + 10°, 3√5 cm, ∠ABC, arc AB, area of △ABC.

Nothing here comes from the program. Lengths are in the unit of the coordinates, angles in degrees; unit
symbols are read and dropped, so a question must keep to one unit of length.
"""

import math
import re
from collections.abc import Mapping
from dataclasses import dataclass, field

Spots = Mapping[str, tuple[float, float]]

_TOKEN = re.compile(
    r"\s*(?:(?P<number>\d+(?:\.\d+)?)|(?P<angle>reflex ∠\w{3}|∠\w{3})"
    r"|(?P<arc>(?:major |minor )?arc \w{2}|length of (?:major |minor )?arc \w{2})"
    r"|(?P<polygon>(?:area|perimeter) of (?:△|triangle |quadrilateral |rectangle |square |rhombus |parallelogram "
    r"|trapezium |kite )?[A-Z]{3,}(?![A-Za-z]))"
    r"|(?P<round>(?:radius|diameter|circumference|area) of circle [A-Z])"
    r"|(?P<sector>(?:area|perimeter) of (?:minor |major )?(?:sector [A-Z]{3}|segment [A-Z]{2}))"
    r"|(?P<apart>distance from [A-Z] to [A-Z]{2})|(?P<bearing>bearing of [A-Z] from [A-Z])"
    r"|(?P<function>sin|cos|tan)|(?P<length>[A-Z][A-Z])|(?P<unit>°|cm²|cm|mm²|mm|km|m²|m)(?![a-z])"
    r"|(?P<letter>[a-z](?![a-z]))|(?P<sign>[+−×/()√²π]))"
)


def cross(p: tuple[float, float], q: tuple[float, float], r: tuple[float, float]) -> float:
    """Twice the area of triangle PQR, positive where the turn from PQ to PR is to the left."""
    return (q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0])


def dot(p: tuple[float, float], q: tuple[float, float], r: tuple[float, float]) -> float:
    """PQ · PR."""
    return (q[0] - p[0]) * (r[0] - p[0]) + (q[1] - p[1]) * (r[1] - p[1])


@dataclass(frozen=True)
class Measured:
    """A figure to measure: its points, the values of its letters, and a point of the circle round each centre."""

    at: Spots
    letters: Mapping[str, float] = field(default_factory=dict)
    rims: Mapping[str, str] = field(default_factory=dict)

    def length(self, name: str) -> float:
        return math.dist(self.at[name[0]], self.at[name[1]])

    def angle(self, name: str) -> float:
        """∠ABC from 0° to 180°, smooth between."""
        arm, vertex, other = (self.at[letter] for letter in name)
        return math.degrees(math.atan2(abs(cross(vertex, arm, other)), dot(vertex, arm, other)))

    def area(self, corners: str) -> float:
        spots = [self.at[corner] for corner in corners]
        pairs = zip(spots, spots[1:] + spots[:1], strict=True)
        return abs(sum(p[0] * q[1] - p[1] * q[0] for p, q in pairs)) / 2

    def perimeter(self, corners: str) -> float:
        return sum(self.length(a + b) for a, b in zip(corners, corners[1:] + corners[:1], strict=True))

    def radius(self, centre: str) -> float:
        return self.length(centre + self.rims[centre])

    def centre_of(self, chord: str) -> str:
        """The centre of the circle that a chord or an arc belongs to: the only circle, or the one through its ends."""
        return min(self.rims, key=lambda c: max(abs(self.length(c + p) / self.radius(c) - 1) for p in chord))

    def arc(self, name: str) -> float:
        """The size of an arc in degrees, the minor one unless said."""
        ends = name[-2:]
        minor = self.angle(ends[0] + self.centre_of(ends) + ends[1])
        return 360 - minor if "major" in name else minor

    def sector(self, name: str) -> float:
        words = name.split()
        points = words[-1]
        ends = points[1:] if words[-2] == "sector" else points
        centre = points[0] if words[-2] == "sector" else self.centre_of(ends)
        radius, turn = self.radius(centre), math.radians(self.angle(ends[0] + centre + ends[1]))
        turn = 2 * math.pi - turn if "major" in words else turn
        if words[-2] == "sector":
            return radius * radius * turn / 2 if words[0] == "area" else radius * (turn + 2)
        if words[0] == "area":
            return radius * radius * (turn - math.sin(turn)) / 2
        return radius * turn + self.length(ends)

    def bearing(self, end: str, start: str) -> float:
        (x, y), (u, v) = self.at[start], self.at[end]
        return math.degrees(math.atan2(u - x, v - y)) % 360

    def size(self, text: str) -> float:
        """The value of one expression; raises ValueError for one that is not of this language."""
        parser = _Parser(self, text)
        value = parser.sum()
        if parser.kind:
            raise ValueError(text)
        return value

    def quantity(self, kind: str, name: str) -> float:
        match kind:
            case "angle":
                return 360 - self.angle(name[-3:]) if name.startswith("reflex") else self.angle(name[1:])
            case "arc":
                degrees = self.arc(name)
                return (
                    math.radians(degrees) * self.length(self.centre_of(name[-2:]) + name[-1])
                    if "length" in name
                    else degrees
                )
            case "polygon":
                corners = re.findall(r"[A-Z]{3,}", name)[0]
                return self.area(corners) if name.startswith("area") else self.perimeter(corners)
            case "round":
                radius = self.radius(name[-1])
                sizes = {"radius": radius, "diameter": 2 * radius, "circumference": 2 * math.pi * radius}
                return sizes.get(name.split()[0], math.pi * radius * radius)
            case "sector":
                return self.sector(name)
            case "apart":
                point, path = name.split()[2], name[-2:]
                return abs(cross(self.at[point], self.at[path[0]], self.at[path[1]])) / self.length(path)
            case "bearing":
                return self.bearing(name.split()[2], name[-1])
        return self.length(name)


class _Parser:
    """Recursive descent over one expression."""

    def __init__(self, measured: Measured, text: str) -> None:
        self.measured, self.rest = measured, text
        self.kind, self.token = "", ""
        self.advance()

    def advance(self) -> None:
        if not self.rest.strip():
            self.kind = self.token = ""
            return
        found = _TOKEN.match(self.rest)
        if found is None:
            raise ValueError(self.rest)
        self.kind, self.token = found.lastgroup or "", found[found.lastgroup or 0]
        self.rest = self.rest[found.end() :]

    def sum(self) -> float:
        value = self.product()
        while self.token in ("+", "−"):
            sign = 1 if self.token == "+" else -1
            self.advance()
            value += sign * self.product()
        return value

    def product(self) -> float:
        value = self.factor()
        while self.kind and self.token not in ("+", "−", ")"):
            if self.token == "/":
                self.advance()
                value /= self.factor()
                continue
            if self.token == "×":
                self.advance()
            value *= self.factor()
        return value

    def factor(self) -> float:
        value = self.atom()
        while self.token == "²" or self.kind == "unit":
            value = value * value if self.token == "²" else value
            self.advance()
        return value

    def atom(self) -> float:
        kind, token = self.kind, self.token
        self.advance()
        if token == "−":
            return -self.product()
        if token == "(":
            value = self.sum()
            if self.token != ")":
                raise ValueError(self.rest)
            self.advance()
            return value
        if token == "√":
            return math.sqrt(self.atom())
        if token == "π":
            return math.pi
        if kind == "number":
            return float(token)
        if kind == "letter":
            return self.measured.letters[token]
        if kind == "function":
            return {"sin": math.sin, "cos": math.cos, "tan": math.tan}[token](math.radians(self.factor()))
        if kind in ("unit", "sign", ""):
            raise ValueError(token)
        return self.measured.quantity(kind, token)
