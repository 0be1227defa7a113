"""Heights to which no line is drawn, and bearings with their north arrows."""

import math
from collections.abc import Mapping, Sequence

from paperaudit.geometry.draw.angle_marks import DrawnAngle, clear_of
from paperaudit.geometry.draw.elements import Arc, Stroke, bearing, polar
from paperaudit.geometry.draw.lettering import Place, Wish
from paperaudit.geometry.draw.marks import AngleMark, BearingMark, HeightMark
from paperaudit.geometry.draw.right_angles import square_at
from paperaudit.geometry.draw.signs import Sign, head_towards
from paperaudit.geometry.draw.type_metrics import text_extent
from paperaudit.geometry.draw.wishes import angle_wish, side_wish
from paperaudit.geometry.figure.plane import Spot, along, share_along
from paperaudit.model.expression import AngleOf

NORTH = -90.0
"""The bearing of north on the page, where y runs down and angles turn clockwise."""
ARROW = 40.0
"""Length of a north arrow."""
ROUND, FURTHER = 15.0, 1.0
"""Radius of a bearing's arc; it is larger where the ray and north are nearer to one another."""
OVER_ARROW = 2.5
DUE_NORTH = 3.0
"""Degrees from north below which a bearing has no arc."""
EAST = (1.0, 0.0)
ON_BASE = 1e-6
BEYOND_FOOT = 6.0
"""How far the line of a base is drawn beyond the foot of a height."""


def height_sign(mark: HeightMark, spots: Mapping[str, Spot]) -> Sign:
    """A broken line from the point to its foot, with a square there; the base is drawn on where the foot is outside."""
    point, (start, end) = spots[mark.point], (spots[name] for name in mark.path)
    share = share_along(point, start, end)
    foot = along(start, end, share)
    strokes = [Stroke((point, foot), "dashed")]
    if share < -ON_BASE or share > 1 + ON_BASE:
        near = start if share < 0 else end
        way = bearing(near, foot)
        strokes.append(Stroke((near, polar(foot, way, BEYOND_FOOT)), "dashed"))
    far = end if share < 0.5 else start
    strokes.append(square_at(foot, point, far))
    away = (foot[0] - far[0], foot[1] - far[1])
    return Sign(tuple(strokes), (), (side_wish(mark.label, mark.is_asked, point, foot, away),))


def north_sign(start: Spot) -> Sign:
    """An arrow that points north from a place, with the letter N."""
    tip = polar(start, NORTH, ARROW)
    extent = text_extent("N", "north")
    spots = [(tip[0], tip[1] - OVER_ARROW - extent[1] / 2)]
    spots += [(tip[0] + side * (OVER_ARROW + extent[0]), tip[1] + extent[1] / 2) for side in (1, -1)]
    places = tuple(Place(spot, 0.5 * number) for number, spot in enumerate(spots))
    return Sign((Stroke((start, tip), "thin"), head_towards(tip, NORTH)), (), (Wish("N", "north", places, tip),))


def bearing_signs(
    marks: Sequence[BearingMark], spots: Mapping[str, Spot], angles: Sequence[DrawnAngle], joined: Sequence[bool]
) -> list[Sign]:
    """North arrows, the arcs clockwise from them, and the labels; `joined` says whether a line is drawn to the end.

    Arcs keep clear of those of the `angles` at the same point.
    """
    found = [north_sign(spots[start]) for start in dict.fromkeys(mark.start for mark in marks)]
    settled = [angle for angle in angles if angle.has_arc]
    for mark, is_joined in zip(marks, joined, strict=True):
        start, end = spots[mark.start], spots[mark.end]
        lines = () if is_joined else (Stroke((start, end), "dashed"),)
        turn = (bearing(start, end) - NORTH) % 360
        if min(turn, 360 - turn) < DUE_NORTH:
            found.append(
                Sign(lines, (), (side_wish(mark.label, mark.is_asked, start, polar(start, NORTH, ARROW), EAST),))
            )
            continue
        drawn = AngleMark(AngleOf("N", mark.start, mark.end), mark.label, is_asked=mark.is_asked)
        reach = min(math.dist(start, end), ARROW)
        angle = DrawnAngle(drawn, Arc(start, ROUND + FURTHER * 180 / max(turn, 12.0), NORTH, turn), 0.6 * reach)
        angle = clear_of(angle, [one for one in settled if math.dist(one.arc.centre, start) < ON_BASE])
        settled.append(angle)
        found.append(Sign(lines, (angle.arc,), (angle_wish(angle, settled),)))
    return found
