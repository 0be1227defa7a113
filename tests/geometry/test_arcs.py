"""Arcs in degrees: one name for each, what follows from them, and random circles whose answers are known.

The sizes of the random circles come from the places of their points on the circle alone (Euclid III.20,
III.26): an arc is a difference of places, an angle at the circumference half of one.
"""

import math
import random
from fractions import Fraction
from itertools import combinations

import pytest

from paperaudit.geometry.coordinates.arrangement import Arrangement
from paperaudit.geometry.coordinates.realise import realise
from paperaudit.geometry.figure.build import FigureBuilder
from paperaudit.geometry.figure.figure import arc
from paperaudit.geometry.linear.theory import close
from paperaudit.geometry.theorems import instances
from paperaudit.maths.linear import LinearForm
from paperaudit.model.derivation import Derived, Impossible, NotDetermined, Several
from paperaudit.model.expression import ArcOf
from paperaudit.model.fact import Given
from paperaudit.wording import read_statement
from tests.geometry.asked import answers, outcome

Places = dict[str, int]


def drawn(*statements: str) -> Arrangement:
    givens = tuple(read_statement(statement) for statement in statements)
    assert all(isinstance(given, Given) for given in givens), givens
    figure = FigureBuilder(givens).figure()  # type: ignore[arg-type]
    return Arrangement(figure, realise(figure, range(6))[0])


def test_an_arc_has_one_name() -> None:
    one = drawn("circle with centre O through A, B and C", "arc ABC = 110°", "arc AB = 50°")
    order = one.rounds["O"]
    minor, major = arc("A", "C", "O"), arc("A", "C", "O", "", True)
    assert {order.arc("A", "C"), order.arc("C", "A")} == {minor, major}
    assert one.known_as(ArcOf("C", "A", "B", False, "O")) == minor
    assert one.known_as(ArcOf("A", "C", "", True, "O")) == major
    assert one.measured(minor) == pytest.approx(110) and one.measured(major) == pytest.approx(250)


def test_the_two_halves_of_a_circle_keep_apart() -> None:
    one = drawn("circle with centre O through A, B and C", "AOB is a diameter", "arc AC = 40°")
    halves = {one.rounds["O"].arc("A", "B"), one.rounds["O"].arc("B", "A")}
    assert halves == {arc("A", "B", "O", "C"), arc("A", "B", "O")}


def test_arcs_add_in_the_exact_theory_without_any_theorem() -> None:
    one = drawn("circle through A, B and C", "triangle ABC", "arc AB = 80°", "∠BAC = 50°")
    theory = close(one, tuple(instance for instance in instances(one) if instance.theorem == "given"))
    (centre,) = one.rounds
    whole = one.known_as(ArcOf("A", "C", "", False, centre))
    assert theory.value(LinearForm.of(whole)) == round(one.measured(whole))


def test_a_circle_with_many_chords_stays_small() -> None:
    chords = [a + b for a, b in combinations("ABCDEFGHIJ", 2)][::2]
    named = "circle with centre O through A, B, C, D, E, F, G, H, I and J"
    one = drawn(named, f"segments {', '.join(chords)}", "arc AB = 20°")
    assert sum(1 for _ in instances(one)) < 4000


def placed(chance: random.Random, count: int) -> Places:
    """Points round a circle at least 16° apart, in the order of the alphabet, at even degrees; no two opposite."""
    while True:
        places = sorted(2 * chance.randrange(180) for _ in range(count))
        gaps = [(b - a) % 360 for a, b in zip(places, places[1:] + places[:1], strict=True)]
        flat = any(abs((a - b) % 360 - 180) < 12 for a, b in combinations(places, 2))
        if min(gaps) >= 16 and not flat:
            return dict(zip("ABCDEF", places, strict=False))


def width(places: Places, start: str, end: str) -> int:
    turn = (places[end] - places[start]) % 360
    return min(turn, 360 - turn)


def seen_from(places: Places, start: str, eye: str, end: str) -> Fraction:
    turn, at = (places[end] - places[start]) % 360, (places[eye] - places[start]) % 360
    return Fraction(360 - turn if at < turn else turn, 2)


def crossing(places: Places, points: tuple[str, str, str, str]) -> Fraction:
    a, b, c, d = points
    return Fraction((places[b] - places[a]) % 360 + (places[d] - places[c]) % 360, 2)


def spot(degrees: float) -> tuple[float, float]:
    return round(50 * math.cos(math.radians(degrees)), 1), round(50 * math.sin(math.radians(degrees)), 1)


def sketched(places: Places) -> dict[str, tuple[float, float]]:
    return {"O": (0.0, 0.0), **{point: spot(place) for point, place in places.items()}}


def question(seed: int) -> tuple[list[str], list[str], str, Fraction, Places]:
    """Figure, givens and ask of a random circle, and its answer."""
    chance = random.Random(seed)
    places = placed(chance, chance.choice((3, 4, 5)))
    points = list(places)
    figure = [f"circle with centre O through {', '.join(points[:-1])} and {points[-1]}"]
    neighbours = list(zip(points, points[1:] + points[:1], strict=True))
    named = [pair for pair in neighbours if (places[pair[1]] - places[pair[0]]) % 360 < 180]
    left_out = chance.choice(named) if len(named) == len(neighbours) else None
    given = [f"arc {a}{b} = {width(places, a, b)}°" for a, b in named if (a, b) != left_out]
    kind = chance.choice(("arc", "inscribed", "centre", "crossing") if len(points) > 3 else ("arc", "inscribed"))
    if kind == "arc":
        start, end = chance.sample(points, 2)
        return figure, given, f"arc {start}{end}", Fraction(width(places, start, end)), places
    if kind == "centre":
        start, end = chance.sample(points, 2)
        figure.append(f"segments O{start}, O{end}")
        return figure, given, f"∠{start}O{end}", Fraction(width(places, start, end)), places
    if kind == "inscribed":
        start, eye, end = chance.sample(points, 3)
        figure.append(f"segments {start}{eye}, {eye}{end}")
        return figure, given, f"∠{start}{eye}{end}", seen_from(places, start, eye, end), places
    a, b, c, d = sorted(chance.sample(points, 4))
    figure.append(f"{a}{c} and {b}{d} intersect at X")
    return figure, given, f"∠{a}X{b}", crossing(places, (a, b, c, d)), places


@pytest.mark.parametrize("start", range(0, 120, 20))
def test_random_circles_by_their_arcs(start: int) -> None:
    derived = 0
    for seed in range(start, start + 20):
        figure, given, ask, truth, places = question(seed)
        result = outcome(figure, given, ask, sketched(places))
        assert isinstance(result, Derived), (figure, given, ask, result)
        assert answers(result) == [_text(truth)], (figure, given, ask)
        derived += 1
    assert derived == 20


@pytest.mark.parametrize("start", range(0, 40, 20))
def test_without_a_sketch_the_answer_is_among_those_found(start: int) -> None:
    found = 0
    for seed in range(start, start + 20):
        figure, given, ask, truth, _ = question(seed)
        result = outcome(figure, given, ask)
        if isinstance(result, Derived | Several):
            assert _text(truth) in answers(result), (figure, given, ask, result)
            found += 1
    assert found >= 15


def test_a_stretched_sketch_changes_no_answer() -> None:
    for seed in range(500, 515):
        figure, given, ask, truth, places = question(seed)
        wide = {point: (2.5 * x + 0.4 * y, 0.8 * y) for point, (x, y) in sketched(places).items()}
        assert answers(outcome(figure, given, ask, wide)) == [_text(truth)]


def test_arcs_of_a_whole_circle_that_are_one_degree_off() -> None:
    for seed in range(600, 612):
        chance = random.Random(seed)
        places = placed(chance, 4)
        points = list(places)
        neighbours = list(zip(points, points[1:] + points[:1], strict=True))
        if any((places[b] - places[a]) % 360 > 180 for a, b in neighbours):
            continue
        off = chance.randrange(4)
        given = [f"arc {a}{b} = {width(places, a, b) + (number == off)}°" for number, (a, b) in enumerate(neighbours)]
        result = outcome(["circle with centre O through A, B, C and D"], given, "arc AC", sketched(places))
        assert isinstance(result, Impossible), result
        assert set(result.clash) == set(given)
        assert "360" in result.why[-1]


def test_an_arc_left_out_leaves_the_others_open() -> None:
    result = outcome(["circle with centre O through A, B, C and D", "triangle ABC"], ["arc AB = 70°"], "∠CAB")
    assert isinstance(result, NotDetermined)


def _text(degrees: Fraction) -> str:
    return f"{degrees}°" if degrees.denominator == 1 else f"{float(degrees)}°"
