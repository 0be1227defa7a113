"""A chain of cells in which one angle leads to the next: triangles and parallels by turns, of any length.

Directions are in thousandths of a degree, so that no two lines of the drawing are parallel that are not said to be.
The drawing is laid out here; only what follows from it is measured.
"""

import math
import random
from dataclasses import dataclass, field
from fractions import Fraction

from paperaudit.geometry.coordinates.arrangement import Arrangement
from paperaudit.geometry.coordinates.realise import Drawing
from paperaudit.geometry.figure.figure import Condition, Figure, ParallelPair, SizeRelation, angle
from paperaudit.maths.linear import LinearForm
from paperaudit.model.expression import AngleOf


@dataclass
class Chain:
    """The figure under construction: lines as lists of points in their order, and true conditions."""

    chance: random.Random
    at: dict[str, tuple[float, float]] = field(default_factory=dict)
    lines: list[list[str]] = field(default_factory=list)
    conditions: list[Condition] = field(default_factory=list)

    def put(self, start: str, direction: Fraction, reach: float) -> str:
        x, y = self.at[start]
        turn = math.radians(float(direction))
        return self.new(x + reach * math.cos(turn), y + reach * math.sin(turn))

    def new(self, x: float, y: float) -> str:
        name = f"P{len(self.at)}"
        self.at[name] = (x, y)
        return name

    def size(self, arm: str, vertex: str, other: str, degrees: Fraction) -> None:
        form: LinearForm[AngleOf] = LinearForm({angle(arm, vertex, other): Fraction(1)}, -degrees)
        self.conditions.append(SizeRelation(form, "angle", len(self.conditions)))  # type: ignore[arg-type]


def _thousandths(chance: random.Random, low: int, high: int) -> Fraction:
    return Fraction(chance.randrange(low * 1000 + 1, high * 1000), 1000)


def ladder(cells: int) -> tuple[Arrangement, AngleOf]:
    """The arrangement of a chain and the angle at its end, which takes every cell to derive."""
    chain = Chain(random.Random(20_261_125))
    vertex = chain.new(0.0, 0.0)
    one, apex = Fraction(0), Fraction(50)
    first = [chain.put(vertex, one + 180, 0.6), vertex]
    second = [chain.put(vertex, one + apex + 180, 0.6), vertex]
    chain.lines += [first, second]
    chain.size(first[0], vertex, second[0], apex)
    side = 1
    for cell in range(cells):
        # The angle of the two lines at `vertex`, opposite to the one that is known, opens towards this cell.
        step = chain.chance.uniform(0.8, 1.2)
        near = chain.put(vertex, one, step)
        first.append(near)
        if cell % 3 == 1:
            # A parallel to the second line through the end of the first; the angles are alternate.
            behind = chain.put(near, one + side * apex + 180, chain.chance.uniform(0.5, 0.9))
            new = [behind, near]
            second.append(chain.put(vertex, one + side * apex, chain.chance.uniform(0.6, 1.0)))
            chain.conditions.append(
                ParallelPair((behind, near), (vertex, second[-1]), len(chain.conditions), same_way=True)
            )
            turn = one + side * apex
        else:
            there = _thousandths(chain.chance, 62, 75) if apex < 60 else _thousandths(chain.chance, 45, 60)
            here = 180 - apex - there
            reach = step * math.sin(math.radians(float(here))) / math.sin(math.radians(float(there)))
            far = chain.put(vertex, one + side * apex, reach)
            second.append(far)
            new = [far, near]
            chain.size(vertex, far, near, there)
            turn = one - side * here
        chain.lines.append(new)
        # The new line leads on, so that no line has more than five points.
        first, second, vertex = new, first, near
        side, apex = _turned(turn, one)
        one = turn
    end, other = chain.put(vertex, one, 0.7), chain.put(vertex, one + side * apex, 0.7)
    first.append(end)
    second.append(other)
    figure = Figure(tuple(chain.at), tuple(map(tuple, chain.lines)), (), tuple(chain.conditions))
    return Arrangement(figure, Drawing(chain.at, {})), angle(end, vertex, other)


def _turned(one: Fraction, two: Fraction) -> tuple[int, Fraction]:
    """Which way, and by how much, the second direction is turned from the first."""
    gap = (two - one + 180) % 360 - 180
    return (1 if gap > 0 else -1), abs(gap)
