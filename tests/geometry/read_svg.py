"""Reads a figure's SVG back, as a ruler and an eye would: what is drawn where, and what touches what.

Widths of letters are those of Adobe's Helvetica metrics as pdfminer.six ships them, not the program's own table.
"""

import math
import re
from collections.abc import Iterator
from dataclasses import dataclass, field
from itertools import pairwise
from xml.etree import ElementTree

from pdfminer.fontmetrics import FONT_METRICS

Spot = tuple[float, float]
Box = tuple[float, float, float, float]
SVG = "{http://www.w3.org/2000/svg}"
DESCENDING = set("()gjpqy,√")
"""What goes below the baseline."""
NOT_IN_HELVETICA = {"π": 549, "∠": 768, "△": 700, "²": 333, "³": 333, "≈": 549, "∥": 549, "⊥": 658, "⁻": 333, "¹": 333}
"""Widths of a few signs in Adobe's Symbol, or what sans-serif faces give them."""
DEGREES = 2.0
"""An arc is followed in pieces of this many degrees."""
TEXT_TOUCHES = 0.25
"""Page units that a box of letters may graze without anyone seeing it: boxes are not ink."""


@dataclass(frozen=True)
class Text:
    """A text with the box round its ink and its size of type."""

    text: str
    box: Box
    size: float
    colour: str


@dataclass(frozen=True)
class Line:
    """A chain of straight pieces as it is stroked; `ground` is "line", "circle", "arc"."""

    spots: tuple[Spot, ...]
    colour: str
    width: float
    dashes: str
    ground: str


@dataclass
class Sheet:
    """A figure read back. `page` is its view box, left, top, right and bottom."""

    page: Box
    texts: list[Text] = field(default_factory=list)
    lines: list[Line] = field(default_factory=list)
    circles: list[tuple[Spot, float]] = field(default_factory=list)
    dots: list[tuple[Spot, float]] = field(default_factory=list)
    filled: list[tuple[str, tuple[Spot, ...]]] = field(default_factory=list)

    def named(self, text: str) -> Text:
        """The only text of this wording."""
        (found,) = [one for one in self.texts if one.text == text]
        return found

    def touching(self) -> list[tuple[str, str]]:
        """Every text that touches another text or something drawn, and everything that leaves the page."""
        found = []
        for index, one in enumerate(self.texts):
            box = shrunk(one.box, TEXT_TOUCHES)
            found += [(one.text, f"the text {other.text}") for other in self.texts[:index] if meet(box, other.box)]
            found += [(one.text, f"a {line.ground}") for line in self.lines if runs_into(line.spots, box)]
            found += [(one.text, "a dot") for spot, radius in self.dots if gap(spot, box) < radius]
            if not inside(one.box, self.page):
                found.append((one.text, "the edge"))
        for line in self.lines:
            if not all(inside((x, y, x, y), self.page) for x, y in line.spots):
                found.append((line.ground, "the edge"))
        return found


def read_svg(svg: str) -> Sheet:
    """The sheet that an SVG of the program shows."""
    root = ElementTree.fromstring(svg)
    left, top, width, height = map(float, root.get("viewBox", "").split())
    sheet = Sheet((left, top, left + width, top + height))
    for element in root:
        _take(element, {}, sheet)
    return sheet


def _take(element: ElementTree.Element, inherited: dict[str, str], sheet: Sheet) -> None:
    style = {**inherited, **element.attrib}
    match element.tag.removeprefix(SVG):
        case "g":
            for inner in element:
                _take(inner, style, sheet)
        case "text":
            sheet.texts.append(_text(element.text or "", style))
        case "polyline":
            spots = [tuple(map(float, spot.split(","))) for spot in style["points"].split()]
            sheet.lines.append(_line(tuple((x, y) for x, y in spots), style, "line"))
        case "circle" if style.get("fill") == "none":
            centre, radius = (float(style["cx"]), float(style["cy"])), float(style["r"])
            sheet.circles.append((centre, radius))
            spots = [_polar(centre, step * DEGREES, radius) for step in range(round(360 / DEGREES) + 1)]
            sheet.lines.append(_line(tuple(spots), style, "circle"))
        case "circle":
            sheet.dots.append(((float(style["cx"]), float(style["cy"])), float(style["r"])))
        case "path" if style.get("fill") == "none":
            sheet.lines.append(_line(tuple(followed(style["d"])), style, "arc"))
        case "path":
            sheet.filled.append((style["fill"], tuple(followed(style["d"]))))


def _line(spots: tuple[Spot, ...], style: dict[str, str], ground: str) -> Line:
    return Line(spots, style["stroke"], float(style["stroke-width"]), style.get("stroke-dasharray", ""), ground)


def _text(text: str, style: dict[str, str]) -> Text:
    size = float(style["font-size"])
    x, y = float(style["x"]), float(style["y"])
    _, widths = FONT_METRICS["Helvetica-Bold" if style.get("font-weight") == "bold" else "Helvetica"]
    width = sum(widths.get(letter) or NOT_IN_HELVETICA.get(letter, 600) for letter in text) * size / 1000
    left = {"start": x, "middle": x - width / 2, "end": x - width}[style.get("text-anchor", "start")]
    below = 0.21 if DESCENDING & set(text) else 0.0
    above = 0.74 if re.search(r"[^acegmnopqrsuvwxyz]", text) else 0.53
    return Text(text, (left, y - above * size, left + width, y + below * size), size, style.get("fill", "#000"))


def followed(path: str) -> Iterator[Spot]:
    """Spots along a path of moves, lines and circular arcs (SVG 1.1, F.6.5: from two ends to the centre)."""
    here = (0.0, 0.0)
    for command, rest in re.findall(r"([MLA])([^MLAZ]*)", path):
        parts = [float(part) for part in re.findall(r"-?[\d.]+", rest)]
        end = (parts[-2], parts[-1])
        if command == "A":
            yield from _arc(here, end, parts[0], bool(parts[3]), bool(parts[4]))
        yield end
        here = end


def _arc(start: Spot, end: Spot, radius: float, large: bool, clockwise: bool) -> Iterator[Spot]:
    half = math.dist(start, end) / 2
    off = math.sqrt(max(0.0, radius**2 - half**2))
    sign = 1 if large != clockwise else -1
    u, v = (end[0] - start[0]) / (2 * half), (end[1] - start[1]) / (2 * half)
    centre = ((start[0] + end[0]) / 2 - sign * off * v, (start[1] + end[1]) / 2 + sign * off * u)
    first = math.degrees(math.atan2(start[1] - centre[1], start[0] - centre[0]))
    last = math.degrees(math.atan2(end[1] - centre[1], end[0] - centre[0]))
    turn = (last - first) % 360 if clockwise else -((first - last) % 360)
    pieces = max(2, round(abs(turn) / DEGREES))
    for step in range(1, pieces):
        yield _polar(centre, first + turn * step / pieces, radius)


def _polar(centre: Spot, way: float, radius: float) -> Spot:
    return centre[0] + radius * math.cos(math.radians(way)), centre[1] + radius * math.sin(math.radians(way))


def shrunk(box: Box, by: float) -> Box:
    return box[0] + by, box[1] + by, box[2] - by, box[3] - by


def meet(one: Box, other: Box) -> bool:
    return one[0] < other[2] and other[0] < one[2] and one[1] < other[3] and other[1] < one[3]


def inside(box: Box, page: Box) -> bool:
    return page[0] <= box[0] and page[1] <= box[1] and box[2] <= page[2] and box[3] <= page[3]


def gap(spot: Spot, box: Box) -> float:
    return math.dist(spot, (min(max(spot[0], box[0]), box[2]), min(max(spot[1], box[1]), box[3])))


def runs_into(spots: tuple[Spot, ...], box: Box) -> bool:
    """Whether a chain of straight pieces has a point inside a box: by the two's own axes and each piece's normal."""
    return any(_piece_meets(one, other, box) for one, other in pairwise(spots))


def _piece_meets(one: Spot, other: Spot, box: Box) -> bool:
    if not meet((min(one[0], other[0]), min(one[1], other[1]), max(one[0], other[0]), max(one[1], other[1])), box):
        return False
    corners = [(x, y) for x in (box[0], box[2]) for y in (box[1], box[3])]
    sides = [(other[0] - one[0]) * (y - one[1]) - (other[1] - one[1]) * (x - one[0]) for x, y in corners]
    return min(sides) < 0 < max(sides)


def luminance(colour: str) -> float:
    """WCAG 2's relative luminance of #rgb or #rrggbb, from 0 (black) to 1 (white)."""
    digits = colour.removeprefix("#")
    digits = "".join(2 * digit for digit in digits) if len(digits) == 3 else digits
    parts = [int(digits[at : at + 2], 16) / 255 for at in (0, 2, 4)]
    red, green, blue = (part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4 for part in parts)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one: str, other: str = "#fff") -> float:
    """WCAG 2's contrast ratio of two colours, 1 to 21."""
    lighter, darker = sorted((luminance(one), luminance(other)), reverse=True)
    return (lighter + 0.05) / (darker + 0.05)
