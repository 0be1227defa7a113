"""Circles and arcs on the page: apart where nothing joins them, round the shorter arcs, touching in a sketch too."""

import math

from paperaudit.geometry.draw.elements import Layout, distance
from paperaudit.geometry.draw.shown import ShownFigure, drawn
from tests.geometry.test_draw import reading


def test_circles_that_nothing_joins_stand_apart() -> None:
    given = ["radius of circle O = 4 cm", "radius of circle P = 2 cm"]
    found = reading(["circle with centre O", "circle with centre P"], given, "area of circle O / area of circle P")
    one, other = _scaled(ShownFigure(found, drawn(found))).circles
    assert math.dist(one.centre, other.centre) > one.radius + other.radius
    assert max(one.radius, other.radius) / min(one.radius, other.radius) - 2 < 1e-6


def test_an_arc_that_runs_along_two_others_is_measured_outside_them() -> None:
    sketch = {"A": (-50.0, 0.0), "B": (0.0, -50.0), "C": (40.0, -30.0)}
    found = reading(["circle through A, B and C"], ["arc AB = 80°", "arc BC = 60°"], "arc AC", sketch)
    layout = _scaled(ShownFigure(found, drawn(found)))
    reaches = sorted(round(arc.radius, 3) for arc in layout.arcs if arc.kind == "thin")
    assert len(reaches) == 3
    assert reaches[0] == reaches[1] < reaches[2] - 15


def test_a_circle_in_a_triangle_touches_its_sides_in_a_sketch() -> None:
    figure = ["triangle ABC", "circle with centre I is inscribed in triangle ABC"]
    found = reading(figure, ["radius = 3", "perimeter of ABC = 40"], "area of △ABC")
    layout = ShownFigure(found, drawn(found)).as_sketch(triangle_sides=False, note="")
    (circle,) = layout.circles
    sides = [stroke.spots for stroke in layout.strokes if stroke.kind == "line"]
    reaches = sorted(distance(circle.centre, spots[0], spots[-1]) for spots in sides)
    assert len(reaches) >= 3
    assert all(abs(reach - circle.radius) < 0.04 * circle.radius for reach in reaches[:3])


def _scaled(figure: ShownFigure) -> Layout:
    return figure.to_scale(keep_lengths=False, triangle_sides=False)
