"""Layouts of figures: true to scale, marked with the givens, lettered without overlaps, standing as they should.

The 200 random figures bring their own coordinates, built from exact directions, so that nothing here
rests on the engine that draws figures from givens.
"""

import math
import random
from collections import Counter
from collections.abc import Iterable, Mapping
from dataclasses import replace
from functools import cache
from itertools import combinations, pairwise

import pytest

from paperaudit.geometry.coordinates.arrangement import Arrangement
from paperaudit.geometry.draw.angle_marks import overlap
from paperaudit.geometry.draw.circles import with_centres
from paperaudit.geometry.draw.elements import Arc, Circle, Label, Layout, Stroke, bearing, polar
from paperaudit.geometry.draw.ground import covered_length, shared
from paperaudit.geometry.draw.marks import classed
from paperaudit.geometry.draw.orientation import oriented
from paperaudit.geometry.draw.proportions import well_proportioned
from paperaudit.geometry.draw.redrawn import well_spaced
from paperaudit.geometry.draw.shown import ShownFigure
from paperaudit.geometry.draw.structure import NotDrawable
from paperaudit.geometry.draw.unscaled import unscaled
from paperaudit.geometry.figure.figure import HIDDEN
from paperaudit.geometry.figure.plane import Spot, side
from paperaudit.model.paper import Line, Part, Question
from paperaudit.model.reading import Reading
from paperaudit.wording import read
from tests.geometry.random_figures import random_figure, random_question

FIGURES = range(200)
OVERLAP = 1.0
"""Page units (about a point of print) by which a text may run into another or a line without being counted."""
SHARE_OF_OVERLAPS = 0.02
Positions = tuple[tuple[str, float, float], ...]


def reading(figure: Iterable[str], given: Iterable[str], ask: str, sketch: Mapping[str, Spot] | None = None) -> Reading:
    part = Part(id="1", number="1", ask=Line(ask))
    question = Question(
        "1",
        (part,),
        figure=tuple(map(Line, figure)),
        given=tuple(map(Line, given)),
        sketch=tuple((name, *spot) for name, spot in (sketch or {}).items()),
    )
    found = read(question, part)
    assert not found.unread, found.unread
    return found


def positions(at: Mapping[str, Spot]) -> Positions:
    return tuple((name, x, y) for name, (x, y) in at.items())


@cache
def random_shown(seed: int, letters: bool = False) -> ShownFigure:
    question = random_question(seed, letters)
    return ShownFigure(reading(question.figure, question.given, question.ask), positions(random_figure(seed).at))


@cache
def random_layout(seed: int, letters: bool = False) -> Layout:
    return random_shown(seed, letters).to_scale(keep_lengths=False, triangle_sides=False)


def drawn(
    figure: Iterable[str], at: Mapping[str, Spot], given: Iterable[str] = (), ask: str = "∠ABC", **options: object
) -> Layout:
    sketch = options.pop("sketch", None)
    shown = ShownFigure(reading(figure, given, ask, sketch), positions(at))  # type: ignore[arg-type]
    return shown.to_scale(keep_lengths=False, triangle_sides=bool(options.pop("sides", False)))


def triangle(at_b: float, at_c: float) -> dict[str, Spot]:
    """A triangle on the base BC by its base angles in degrees, tilted so that nothing is level by chance."""
    b, c = math.radians(at_b), math.radians(at_c)
    height = math.sin(b) * math.sin(c) / math.sin(b + c)
    return tilted({"A": (height / math.tan(b), height), "B": (0.0, 0.0), "C": (1.0, 0.0)}, 37)


def tilted(at: Mapping[str, Spot], degrees: float) -> dict[str, Spot]:
    turn = complex(math.cos(math.radians(degrees)), math.sin(math.radians(degrees)))
    turned = {name: complex(*spot) * turn for name, spot in at.items()}
    return {name: (spot.real, spot.imag) for name, spot in turned.items()}


def place(layout: Layout, name: str) -> Spot:
    return next(label.centre for label in layout.labels if label.text == name and label.kind == "letter")


def texts(layout: Layout, kind: str) -> list[str]:
    return [label.text for label in layout.labels if label.kind == kind]


def marks(layout: Layout) -> list[Stroke]:
    return [stroke for stroke in layout.strokes if stroke.kind == "mark"]


def overlaps(layout: Layout, label: Label) -> float:
    """How far a label runs into other texts, and how much of a drawn line it covers."""
    others = [min(shared(label.box, other.box)) for other in layout.labels if other is not label]
    lines = [
        covered_length(label.box, start, end)
        for stroke in layout.strokes
        if stroke.kind in ("line", "triangle side", "produced side")
        for start, end in pairwise(stroke.spots)
    ]
    return max(*others, *lines, 0.0)


@pytest.mark.parametrize("letters", [False, True], ids=["numbers", "in x"])
def test_texts_keep_clear_of_each_other_and_of_lines(letters: bool) -> None:
    found = [
        overlaps(layout, label)
        for layout in (random_layout(seed, letters) for seed in FIGURES)
        for label in layout.labels
    ]
    assert len(found) > 1500
    assert sum(amount > OVERLAP for amount in found) / len(found) < SHARE_OF_OVERLAPS


def given_angles(seed: int, letters: bool) -> Counter[str]:
    """The printed sizes of the angles that a random question gives, right angles left out: these have squares."""
    question = random_question(seed, letters)
    stated = {tuple(text.removeprefix("∠").split(" = ", 1)) for text in question.given if text.startswith("∠")}
    return Counter(size for _, size in stated if size != "90°")


@pytest.mark.parametrize("letters", [False, True], ids=["numbers", "in x"])
def test_every_given_angle_has_its_label_and_nothing_else_has_one(letters: bool) -> None:
    for seed in FIGURES:
        assert Counter(texts(random_layout(seed, letters), "size")) == given_angles(seed, letters), seed


def test_arcs_open_as_wide_as_their_labels_say() -> None:
    for seed in FIGURES:
        opened = Counter(f"{round(abs(arc.turn), 6):g}°" for arc in random_layout(seed).arcs)
        assert given_angles(seed, False) <= opened, seed


def test_every_letter_is_shown_once_and_near_its_point() -> None:
    for seed in FIGURES:
        shown, layout = random_shown(seed), random_layout(seed)
        assert sorted(texts(layout, "letter")) == sorted(shown.arrangement.figure.points)
        ends = [
            spot for stroke in layout.strokes if stroke.kind == "line" for spot in (stroke.spots[0], stroke.spots[-1])
        ]
        for line in shown.arrangement.lines:
            for name in (line[0], line[-1]):
                assert min(math.dist(place(layout, name), end) for end in ends) < 32, (seed, name)


def test_proportions_keep_every_angle_and_every_order() -> None:
    for seed in FIGURES:
        exact, arrangement = random_figure(seed), random_shown(seed).arrangement
        at = oriented(arrangement, well_proportioned(arrangement))
        for arm, vertex, other in exact.angles():
            turn = abs((bearing(at[vertex], at[other]) - bearing(at[vertex], at[arm]) + 180) % 360 - 180)
            assert turn == pytest.approx(float(exact.size(arm, vertex, other)), abs=1e-5), (seed, vertex)
        for points, _ in exact.lines:
            reach = [math.dist(at[points[0]], at[point]) for point in points]
            assert reach == sorted(reach)


def test_proportions_ease_what_is_cramped() -> None:
    """A produced side that the drawing happened to leave a hundredth long is long enough to letter."""
    at = triangle(68, 68)
    at["D"] = tuple(c + 0.01 * (c - b) for b, c in zip(at["B"], at["C"], strict=True))  # type: ignore[assignment]
    shown = ShownFigure(reading(["triangle ABC, BC is produced to D"], ["AB = AC"], "∠ABC"), positions(at))
    eased = well_proportioned(shown.arrangement)
    assert math.dist(eased["C"], eased["D"]) > 0.3 * math.dist(eased["B"], eased["C"])
    assert math.dist(eased["A"], eased["B"]) == pytest.approx(math.dist(eased["A"], eased["C"]))
    assert well_proportioned(shown.arrangement, keep_lengths=True) == shown.arrangement.at


def test_an_isosceles_triangle_stands_on_its_base_with_its_apex_up() -> None:
    shown = ShownFigure(reading(["triangle ABC"], ["AB = AC"], "∠ABC"), positions(triangle(68, 68)))
    at = oriented(shown.arrangement, shown.arrangement.at)
    assert at["B"][1] == pytest.approx(at["C"][1])
    assert at["A"][1] > at["B"][1] and at["B"][0] < at["A"][0] < at["C"][0]


def test_parallels_are_level_and_named_from_the_left_the_first_on_top() -> None:
    at = {
        "A": (-1.0, 0.0),
        "G": (0.0, 0.0),
        "B": (1.1, 0.0),
        "C": (-0.7, -1.0),
        "H": (0.3, -1.0),
        "D": (1.2, -1.0),
        "E": (-0.2, 0.6667),
        "F": (0.5, -1.6667),
    }
    shown = ShownFigure(reading(["A-G-B", "C-H-D", "E-G-H-F"], ["AB ∥ CD"], "∠EGB"), positions(tilted(at, 205)))
    at = oriented(shown.arrangement, shown.arrangement.at)
    assert at["A"][1] == pytest.approx(at["B"][1]) and at["C"][1] == pytest.approx(at["D"][1])
    assert at["A"][0] < at["B"][0] and at["A"][1] > at["C"][1]


@pytest.mark.parametrize("mirrored", [False, True], ids=["as drawn", "mirrored"])
def test_a_sketch_settles_how_the_figure_stands(mirrored: bool) -> None:
    """Stretched, tilted or mirrored, every corner of the figure turns as in the sketch, and most points lie alike."""
    for seed in FIGURES[:60]:
        question, at = random_question(seed), random_figure(seed).at
        sketch = {name: (-x if mirrored else x, y) for name, (x, y) in question.sketch.items()}
        shown = ShownFigure(reading(question.figure, question.given, question.ask, sketch), positions(at))
        turned = oriented(shown.arrangement, at)
        for corners in (one.corners for one in shown.arrangement.triangles):
            a, b, c = (turned[name] for name in corners)
            p, q, r = (sketch[name] for name in corners)
            assert side(c, a, b) * side(r, p, q) > 0, (seed, corners)
        assert alike(turned, sketch) > 0.6, seed


def alike(one: Mapping[str, Spot], other: Mapping[str, Spot]) -> float:
    """The correlation of two sets of places, 1 where they differ in size alone."""
    middles = [[sum(part) / len(at) for part in zip(*at.values(), strict=True)] for at in (one, other)]
    pairs = [
        (u - m, v - n)
        for name in one
        for u, m, v, n in zip(one[name], middles[0], other[name], middles[1], strict=True)
    ]
    return sum(u * v for u, v in pairs) / math.sqrt(sum(u * u for u, _ in pairs) * sum(v * v for _, v in pairs))


def test_what_a_sketch_draws_level_is_level() -> None:
    sketch = {"A": (2.0, 5.0), "B": (0.0, 0.0), "C": (10.0, 0.0)}
    shown = ShownFigure(reading(["triangle ABC"], [], "∠ABC", sketch), positions(triangle(50, 80)))
    at = oriented(shown.arrangement, shown.arrangement.at)
    assert at["B"][1] == pytest.approx(at["C"][1]) and at["A"][1] > at["B"][1] and at["B"][0] < at["C"][0]


def test_the_letters_of_a_triangle_stand_outside_it() -> None:
    layout = drawn(["triangle ABC"], triangle(50, 60))
    corners = [stroke.spots[0] for stroke in layout.strokes if stroke.kind == "line"]
    corners += [stroke.spots[1] for stroke in layout.strokes if stroke.kind == "line"]
    for name in "ABC":
        spot = place(layout, name)
        a, b, c = list(dict.fromkeys((round(x, 6), round(y, 6)) for x, y in corners))
        turns = [side(spot, a, b) > 0, side(spot, b, c) > 0, side(spot, c, a) > 0]
        assert len(set(turns)) == 2, name


def test_the_asked_angle_has_a_question_mark_unless_its_label_stands_there() -> None:
    assert texts(drawn(["triangle ABC"], triangle(50, 60), ["∠BAC = 70°"]), "asked") == ["?"]
    assert texts(drawn(["triangle ABC"], triangle(50, 60), ["∠ABC = 2x + 10°"], "x"), "asked") == []
    assert texts(drawn(["triangle ABC"], triangle(50, 60), ["∠ABC = 2x + 10°"], "∠ABC"), "asked") == []
    assert texts(drawn(["triangle ABC"], triangle(50, 60), ["AB = 5 cm"], "BC"), "asked") == ["?"]


def test_labels_are_written_as_in_the_paper() -> None:
    layout = drawn(["triangle ABC"], triangle(50, 60), ["∠ABC = (2x + 10)°", "∠ACB = 3x", "AB = 7.5 cm"], "x")
    assert sorted(texts(layout, "size")) == ["(2x + 10)°", "3x", "7.5 cm"]


def test_sums_and_earlier_answers_have_no_mark() -> None:
    given = ["∠ABC + ∠ACB = 110°", "∠BAC = 70°"]
    assert texts(drawn(["triangle ABC"], triangle(50, 60), given, "∠ACB"), "size") == ["70°"]
    shown = reading(["triangle ABC"], ["∠BAC = 70°"], "∠ACB")
    earlier = replace(shown.givens[-1], text="∠BAC = answer to a")
    shown = replace(shown, givens=(*shown.givens[:-1], earlier))
    layout = ShownFigure(shown, positions(triangle(50, 60))).to_scale(keep_lengths=False, triangle_sides=False)
    assert texts(layout, "size") == []


def test_equal_sides_have_as_many_ticks_as_their_class() -> None:
    """A kite has two classes: one tick each on two sides, two each on the others."""
    at = {"A": (0.0, 2.0), "B": (-1.0, 1.0), "C": (0.0, -1.0), "D": (1.0, 1.0)}
    assert len(marks(drawn(["kite ABCD"], tilted(at, 15)))) == 2 * 1 + 2 * 2
    assert len(marks(drawn(["triangle ABC"], triangle(68, 68), ["AB = AC"]))) == 2


def test_a_right_angle_is_a_square_and_parallels_have_arrow_heads() -> None:
    square = list(marks(drawn(["triangle ABC"], triangle(90, 30), ["AB ⊥ BC"], "∠ACB")))
    assert [len(stroke.spots) for stroke in square] == [3]
    corner = [math.dist(*pair) for pair in pairwise(square[0].spots)]
    assert corner[0] == pytest.approx(corner[1])
    at = {"A": (0.0, 1.0), "B": (2.0, 1.0), "C": (1.5, 0.0), "D": (-0.5, 0.0)}
    heads = marks(drawn(["parallelogram ABCD"], tilted(at, 15)))
    assert [len(stroke.spots) for stroke in heads] == [3] * 6, "one head on each of two sides, two on the others"


def test_halves_of_an_angle_have_arcs_alike_with_one_stroke() -> None:
    at = triangle(70, 40)
    share = math.dist(at["A"], at["B"]) / (math.dist(at["A"], at["B"]) + math.dist(at["A"], at["C"]))
    at["D"] = tuple(b + share * (c - b) for b, c in zip(at["B"], at["C"], strict=True))  # type: ignore[assignment]
    layout = drawn(["triangle ABC", "D lies on BC", "AD bisects ∠BAC"], at, [], "∠ADB")
    halves = [arc for arc in layout.arcs if abs(arc.turn) == pytest.approx(35)]
    assert len(halves) == 2 and halves[0].radius == halves[1].radius
    assert len(marks(layout)) == 2


def test_of_two_angles_one_inside_the_other_the_wider_has_the_larger_arc() -> None:
    for seed in FIGURES:
        arcs = sorted(random_layout(seed).arcs, key=lambda arc: abs(arc.turn))
        for inner, outer in combinations(arcs, 2):
            if inner.centre == outer.centre and overlap(inner, outer) > abs(inner.turn) - 1e-6:
                assert outer.radius > inner.radius, seed


def test_arcs_that_share_degrees_are_counted_over_the_turn_of_the_circle() -> None:
    assert overlap(Arc((0, 0), 9, 350, 40), Arc((0, 0), 9, 0, 10)) == pytest.approx(10)
    assert overlap(Arc((0, 0), 9, 10, 40), Arc((0, 0), 9, 50, 10)) == 0


def test_lines_without_ends_run_on_beyond_their_letters() -> None:
    at = {"A": (-1.0, 0.1), "O": (0.0, 0.0), "B": (1.0, -0.1), "C": (-0.4, -1.0), "D": (0.4, 1.0)}
    ends = [
        stroke.spots
        for stroke in drawn(["line AB", "segment CD", "AB and CD intersect at O"], at, [], "∠AOC").strokes
        if stroke.kind == "line"
    ]
    free = drawn(["segment AB", "segment CD", "AB and CD intersect at O"], at, [], "∠AOC").strokes
    lengths = [math.dist(*spots) for spots in ends], [math.dist(*one.spots) for one in free if one.kind == "line"]
    grown = [round(long - short) for long, short in zip(*lengths, strict=True)]
    assert sorted(grown) == [0, 32]


def test_congruent_triangles_stand_side_by_side() -> None:
    at = triangle(50, 60) | {name: (x + 0.1, y) for name, (x, y) in zip("DEF", triangle(50, 60).values(), strict=True)}
    shown = ShownFigure(reading(["△ABC ≡ △DEF"], ["∠ABC = 50°"], "∠DEF"), positions(at))
    turned = oriented(shown.arrangement, shown.arrangement.at)
    assert max(turned[name][0] for name in "ABC") < min(turned[name][0] for name in "DEF")
    assert turned["A"][1] == pytest.approx(turned["D"][1])


def test_a_figure_much_smaller_than_its_neighbour_is_enlarged_and_the_figure_says_so() -> None:
    large = triangle(50, 60)
    size = math.dist(large["A"], large["B"])
    for times, note in ((30, "each figure to a scale of its own"), (4, "")):
        at = large | {
            name: (x / times, y / times) for name, (x, y) in zip("DEF", triangle(50, 60).values(), strict=True)
        }
        given = [f"AB = {times} cm", "DE = 1 cm", "∠ABC = 50°", "∠BAC = 60°"]
        shown = ShownFigure(reading(["triangle ABC, triangle DEF", "△ABC ∼ △DEF"], given, "EF"), positions(at))
        turned = oriented(shown.arrangement, shown.arrangement.at)
        assert max(turned[name][0] for name in "ABC") < min(turned[name][0] for name in "DEF")
        assert math.dist(turned["D"], turned["E"]) == pytest.approx(size / min(times, 5))
        assert shown.to_scale(True, False).note == note


def test_the_triangle_and_its_produced_side_are_drawn_apart() -> None:
    at = triangle(68, 68)
    at["D"] = tuple(c + 0.6 * (c - b) for b, c in zip(at["B"], at["C"], strict=True))  # type: ignore[assignment]
    layout = drawn(["triangle ABC, BC is produced to D"], at, ["AB = AC", "∠ACD = 112°"], sides=True)
    kinds = Counter(stroke.kind for stroke in layout.strokes if len(stroke.spots) == 2 and stroke.kind != "mark")
    assert kinds == {"triangle side": 3, "produced side": 1}


def test_a_figure_that_is_not_to_scale_keeps_order_and_turning_but_not_the_answer() -> None:
    told = 0
    for seed in FIGURES:
        shown, exact = random_shown(seed), random_figure(seed)
        at = oriented(shown.arrangement, well_proportioned(shown.arrangement))
        (size,) = shown.asked_angles()
        sketched = unscaled(shown.arrangement, at, shown.marks, shown.sizes)
        before, after = (
            abs(
                Arrangement(shown.arrangement.figure, replace(shown.arrangement.drawing, at=spots)).turn(
                    size.vertex, size.arm, size.other
                )
            )
            for spots in (at, sketched)
        )
        told += abs(before - after) < 8
        for arm, vertex, other in exact.angles():
            one, two = (side(spots[other], spots[vertex], spots[arm]) for spots in (at, sketched))
            assert one * two > 0
    assert not told


def test_the_corner_of_a_rectangle_that_is_asked_for_has_no_square() -> None:
    at = {"A": (0.0, 0.0), "B": (3.0, 0.0), "C": (3.0, 2.0), "D": (0.0, 2.0)}
    shown = ShownFigure(reading(["rectangle ABCD"], [], "∠ADC"), positions(at))
    assert [mark.angle.vertex for mark in shown.marks.angles if mark.is_asked] == ["D"]
    assert sorted(mark.angle.vertex for mark in shown.marks.angles if mark.is_right) == ["A", "B", "C"]
    sketched = unscaled(shown.arrangement, at, shown.marks, shown.sizes)
    assert abs(opening(sketched, "ADC") - 90) >= 8


def test_positions_that_are_missing_are_said_to_be() -> None:
    with pytest.raises(NotDrawable):
        ShownFigure(reading(["triangle ABC"], [], "∠ABC"), (("A", 0.0, 0.0),))


def test_the_same_figure_has_the_same_layout() -> None:
    for seed in FIGURES[:20]:
        random_shown.cache_clear()
        first = random_layout(seed)
        assert random_layout.__wrapped__(seed) == first


def test_classes_join_through_a_common_member() -> None:
    assert classed([("AB", "CD"), ("PQ", "RS"), ("RS", "CD")]) == {"AB": 1, "CD": 1, "PQ": 1, "RS": 1}


def on_circle(**bearings: float) -> dict[str, Spot]:
    """Points of a circle about (3, −2) with the radius 5, by their bearings in degrees."""
    return {name: polar((3.0, -2.0), way, 5.0) for name, way in bearings.items()}


CENTRE = {"O": (3.0, -2.0)}
TANGENTS = ["PA and PB are tangents to the circle with centre O at A and B", "segments OA, OB"]


def with_tangents(half: float) -> dict[str, Spot]:
    """Two tangents from P, which touch at the bearings ±`half`."""
    return on_circle(A=half, B=-half) | {"P": polar((3.0, -2.0), 0, 5.0 / math.cos(math.radians(half)))}


def circle(layout: Layout) -> Circle:
    (found,) = layout.circles
    return found


def from_outline(layout: Layout, name: str) -> float:
    """How far outside the circle a letter stands; negative inside."""
    return math.dist(place(layout, name), circle(layout).centre) - circle(layout).radius


def test_a_circle_goes_through_its_points_about_its_dotted_centre() -> None:
    figure = ["circle with centre O through A, B and C", "segments OA, OB, CA, CB"]
    layout = drawn(figure, on_circle(A=230, B=310, C=80) | CENTRE, ["∠AOB = 80°"], "∠ACB")
    ends = {spot for stroke in layout.strokes if stroke.kind == "line" for spot in stroke.spots}
    reach = sorted(math.dist(end, circle(layout).centre) for end in ends)
    assert reach == pytest.approx([0.0, *[circle(layout).radius] * 3], abs=1e-9)
    (dot,) = layout.dots
    assert dot == pytest.approx(circle(layout).centre)
    assert marks(layout) == [], "equal radii have no ticks"


def test_a_whole_circle_is_on_the_page() -> None:
    layout = drawn(
        ["circle with centre O through A and B", "segments OA, OB"], on_circle(A=80, B=100) | CENTRE, [], "∠AOB"
    )
    left, top, right, bottom = layout.frame
    for box in (circle(layout).box, *(label.box for label in layout.labels)):
        assert left < box[0] and top < box[1] and box[2] < right and box[3] < bottom


def test_points_of_a_circle_that_nothing_else_shows_have_dots() -> None:
    figure = ["circle with centre O through A, B and C", "segment AB"]
    layout = drawn(figure, on_circle(A=200, B=340, C=80) | CENTRE, [], "AB")
    assert sorted(round(math.dist(dot, circle(layout).centre)) for dot in layout.dots) == [
        0,
        round(circle(layout).radius),
    ]


@pytest.mark.parametrize("turn", range(0, 360, 40))
def test_letters_of_points_of_a_circle_stand_outside_it(turn: int) -> None:
    at = on_circle(A=turn, B=turn + 75, C=turn + 160, D=turn + 250)
    layout = drawn(["ABCD is a cyclic quadrilateral", "segments AC, BD"], at, ["∠DAB = 87.5°"], "∠BCD")
    assert all(0 < from_outline(layout, name) < 20 for name in "ABCD")


@pytest.mark.parametrize(
    ("figure", "at"),
    [
        (["ABCD is a cyclic quadrilateral"], on_circle(A=10, B=100, C=170, D=260)),
        (["PA and PB are tangents to a circle at A and B", "segment AB"], with_tangents(64)),
        (["AB is a diameter of a circle"], on_circle(A=200, B=20)),
    ],
    ids=["from its points", "from its tangents", "from its diameter"],
)
def test_a_centre_without_a_letter_is_found_and_not_shown(figure: list[str], at: dict[str, Spot]) -> None:
    shown = ShownFigure(reading(figure, [], "AB"), positions(at))
    (hidden,) = [name for name in shown.arrangement.figure.points if name.startswith(HIDDEN)]
    assert with_centres(shown.arrangement.figure, at)[hidden] == pytest.approx((3.0, -2.0))
    layout = shown.to_scale(keep_lengths=True, triangle_sides=False)
    assert sorted(texts(layout, "letter")) == sorted(at)


def test_a_tangent_runs_on_beyond_the_point_where_it_touches() -> None:
    layout = drawn(TANGENTS, with_tangents(64) | CENTRE, ["∠APB = 52°"], "∠AOB")
    lines = [stroke.spots for stroke in layout.strokes if stroke.kind == "line"]
    tangents = [spots for spots in lines if all(math.dist(spot, circle(layout).centre) > 1 for spot in spots)]
    assert len(lines) == 4 and len(tangents) == 2
    for start, end in tangents:
        beyond = min(math.dist(spot, circle(layout).centre) for spot in (start, end))
        assert 1.005 * circle(layout).radius < beyond < 1.2 * circle(layout).radius
        assert abs(side(circle(layout).centre, start, end)) / math.dist(start, end) == pytest.approx(
            circle(layout).radius
        )


def inscribed(seed: int) -> Layout:
    """A random triangle in a circle with a tangent and a produced chord, whose angles lie across the outline."""
    chance = random.Random(seed)
    gaps = [chance.uniform(1, 2) for _ in range(3)]
    first = chance.uniform(0, 360)
    at = on_circle(**{name: first + 360 * sum(gaps[:count]) / sum(gaps) for count, name in enumerate("ABC")})
    (x, y), (p, q), (u, v) = at["A"], at["B"], at["C"]
    at["S"], at["T"] = ((x + way * (y + 2.0), y - way * (x - 3.0)) for way in (0.9, -0.9))
    at["E"] = (u + 0.6 * (u - p), v + 0.6 * (v - q))
    names = ["TAB", "ACE", "ABC"] if opening(at, "TAB") < opening(at, "SAB") else ["SAB", "ACE", "ABC"]
    given = [f"∠{name} = {opening(at, name):.1f}°" for name in names[: 1 + seed % 3]]
    figure = [
        "A, B and C lie on a circle",
        "triangle ABC",
        "SAT is a tangent to the circle at A",
        "BC is produced to E",
    ]
    return drawn(figure, at, given, "∠BAC")


def test_texts_keep_clear_of_circles() -> None:
    found = []
    for layout in map(inscribed, range(60)):
        rim = [polar(circle(layout).centre, way, circle(layout).radius) for way in range(0, 365, 5)]
        for label in layout.labels:
            on_rim = sum(covered_length(label.box, *chord) for chord in pairwise(rim))
            found.append(max(on_rim, overlaps(layout, label)))
    assert len(found) > 300
    assert sum(amount > OVERLAP for amount in found) / len(found) < SHARE_OF_OVERLAPS


def test_circles_stay_round_however_much_is_open() -> None:
    """A cramped drawing gets room, a sketch other sizes; the order round the circle and the angle asked for stay."""
    figure = ["ABCD is a cyclic quadrilateral", "AB is produced to E"]
    at = on_circle(A=268, B=272, C=352, D=112)
    at["E"] = (6.0, at["A"][1])
    shown = ShownFigure(reading(figure, ["∠CBE = 42°"], "∠ADC"), positions(at))
    assert well_proportioned(shown.arrangement) == shown.arrangement.at
    roomy = well_spaced(shown.arrangement, shown.sizes)
    other = unscaled(shown.arrangement, roomy, shown.marks, shown.sizes)
    (hidden,) = [name for name in roomy if name.startswith(HIDDEN)]
    for spots in (roomy, other):
        reach = [math.dist(spots[name], spots[hidden]) for name in "ABCD"]
        assert reach == pytest.approx([reach[0]] * 4)
    assert math.dist(roomy["A"], roomy["B"]) / math.dist(roomy["A"], roomy[hidden]) > 0.3
    assert opening(roomy, "ADC") == pytest.approx(42) and abs(opening(other, "ADC") - 42) >= 8


def opening(at: Mapping[str, Spot], name: str) -> float:
    arm, vertex, other = (at[point] for point in name)
    return abs((bearing(vertex, other) - bearing(vertex, arm) + 180) % 360 - 180)
