"""Random figures on a circle, built from whole degrees, with the angles that are true of them read off.

Points stand at whole degrees of a circle, so that every angle between two chords is a multiple of
half a degree: half the difference of two arcs (Euclid III.20). Tangents and diameters come with
some of them.
"""

import math
import random
from fractions import Fraction

from tests.geometry.random_figures import RandomFigure, RandomQuestion, degrees


def _spot(at: int) -> tuple[float, float]:
    return math.cos(math.radians(at)), math.sin(math.radians(at))


def _chord(figure: RandomFigure, arcs: dict[str, int], one: str, two: str) -> None:
    """Draws a chord; its direction is a right angle more than the mean of its arcs' ends."""
    mean = Fraction(arcs[one] + arcs[two], 2)
    direction = mean + 90 if arcs[two] > arcs[one] else mean - 90
    figure.join([one, two], direction)
    figure.figure.append(f"segment {one}{two}")


def random_circle(seed: int) -> RandomFigure:
    """Four or five points on a circle with some of their chords, perhaps radii, a diameter or a tangent."""
    chance = random.Random(seed * 13 + 1)
    figure = RandomFigure(chance)
    count = chance.choice([4, 4, 5])
    while True:
        places = sorted(chance.sample(range(0, 360, 2), count))
        gaps = [(b - a) % 360 for a, b in zip(places, places[1:] + places[:1], strict=True)]
        if min(gaps) >= 30 and max(gaps) < 170:
            break
    figure.names = list("ABCDEFGHKLMN")
    arcs: dict[str, int] = {}
    for place in places:
        arcs[figure.new(_spot(place))] = place
    points = list(arcs)
    pairs = [(one, two) for i, one in enumerate(points) for two in points[i + 1 :]]
    chance.shuffle(pairs)
    figure.at["O"] = (0.0, 0.0)
    figure.figure.append(f"circle with centre O through {', '.join(points[:-1])} and {points[-1]}")
    for one, two in pairs[: chance.randrange(4, 7)]:
        _chord(figure, arcs, one, two)
    for point in chance.sample(points, chance.choice([0, 2, 2])):
        figure.join(["O", point], Fraction(arcs[point]))
        figure.figure.append(f"segment O{point}")
    if chance.random() < 0.4:
        at = chance.choice(points)
        x, y = figure.at[at]
        way = chance.choice((1, -1))
        touching = figure.new((x - way * 0.9 * y, y + way * 0.9 * x))
        figure.join([at, touching], Fraction(arcs[at] + way * 90))
        figure.figure.append(f"{touching}{at} is a tangent to the circle at {at}")
    return figure


def random_circle_question(seed: int) -> RandomQuestion:
    """Some angles of a random circle shown, one asked for, with a stretched sketch."""
    attempt = 0
    while True:
        figure = random_circle(seed * 101 + attempt)
        attempt += 1
        angles = figure.angles()
        if len(angles) >= 3 and all(6 <= figure.size(*angle) <= 174 for angle in angles):
            break
    chance = random.Random(seed * 37 + 11)
    chance.shuffle(angles)
    shown = angles[1 : 1 + chance.randrange(1, 4)]
    given = [f"∠{''.join(angle)} = {degrees(figure.size(*angle))}" for angle in shown]
    drawn = {point for points, _ in figure.lines for point in points} | {"O"}
    stretch = (chance.uniform(0.7, 1.4), chance.uniform(0.7, 1.4))
    sketch = {point: (x * stretch[0], y * stretch[1]) for point, (x, y) in figure.at.items() if point in drawn}
    return RandomQuestion(tuple(figure.figure), tuple(given), f"∠{''.join(angles[0])}", figure.size(*angles[0]), sketch)
