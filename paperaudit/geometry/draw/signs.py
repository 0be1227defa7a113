"""What one mark puts on the page, and the arrow heads that several kinds of marks have."""

import math
from dataclasses import dataclass

from paperaudit.geometry.draw.elements import Arc, Stroke, polar
from paperaudit.geometry.draw.lettering import Wish
from paperaudit.geometry.figure.plane import Spot

HEAD = 5.0
HEAD_WIDTH = 0.55
"""Length of an arrow head's strokes along its line, and half its width in terms of that."""


@dataclass(frozen=True, slots=True)
class Sign:
    """The strokes and arcs of one mark, the texts that it wants, and what is said in words under the figure."""

    strokes: tuple[Stroke, ...] = ()
    arcs: tuple[Arc, ...] = ()
    wishes: tuple[Wish, ...] = ()
    notes: tuple[str, ...] = ()


def head(tip: Spot, way: Spot, size: float = HEAD) -> Stroke:
    """An arrow head with its tip on a spot, pointing along the unit vector `way`."""
    u, v = way
    back = (tip[0] - size * u, tip[1] - size * v)
    wide = size * HEAD_WIDTH
    return Stroke(((back[0] - wide * v, back[1] + wide * u), tip, (back[0] + wide * v, back[1] - wide * u)), "mark")


def head_towards(tip: Spot, bearing: float, size: float = HEAD) -> Stroke:
    """An arrow head with its tip on a spot, pointing in a direction in degrees."""
    turned = math.radians(bearing)
    return head(tip, (math.cos(turned), math.sin(turned)), size)


def across(arc: Arc, share: float, half: float) -> Stroke:
    """A short stroke across an arc, `half` to each side of it."""
    way = arc.start + share * arc.turn
    return Stroke((polar(arc.centre, way, arc.radius - half), polar(arc.centre, way, arc.radius + half)), "mark")
