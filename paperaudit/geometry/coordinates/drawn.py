"""The drawings of a figure, and what had to be given up for them: conventions, doubtful turns of a sketch, decimals."""

import math
from collections.abc import Iterator
from dataclasses import dataclass, replace
from typing import Literal, TypeAlias

from paperaudit.geometry.coordinates.realise import Drawing, realise
from paperaudit.geometry.figure.figure import Figure
from paperaudit.geometry.figure.loosened import with_loose_directions
from paperaudit.geometry.figure.sketch import DOUBTFUL_TURN, settled_by_sketch
from paperaudit.model.derivation import Derived, Outcome

SKETCHED_SEEDS = range(2)
"""Starts from a sketch that mostly do: as it is, and stretched once."""
PARALLEL = 1e-6
"""Largest sine between the sides of a trapezium that are parallel beside the two that it is named for."""
FIRST_SEEDS = range(6)
MORE_SEEDS = range(6, 48)

Spot: TypeAlias = tuple[float, float]
Concession = Literal["", "directions", "turns", "turns and directions"]


@dataclass(frozen=True, slots=True)
class Drawn:
    """The figure as it was drawn, with what its sketch settles, and its drawings, none where it has none.

    `concession` says what was given up: the direction in which parallel lines are named, or turns
    that the sketch shows flatter than a hand draws surely. A figure that is `rounded` was drawn
    with decimals that stand for what is rounded to them.
    """

    figure: Figure
    drawings: tuple[Drawing, ...]
    concession: Concession = ""


CONCEDED = {
    "directions": "parallel lines do not all run the way in which they are named",
    "turns": "an angle that the sketch shows almost flat opens the other way",
    "turns and directions": "an angle that the sketch shows almost flat opens the other way, and parallel lines do not "
    "all run the way in which they are named",
}
"""What is said of a figure that does not keep all that its sketch shows."""


def drawn(figure: Figure) -> Drawn:
    """The drawings of a figure with as little given up as will do.

    Where there is none, the figure is the one with the least conditions that was tried with exact
    decimals, so that to refute it is to refute them all.
    """
    tried = list(_readings(figure))
    stages: list[tuple[Figure, range, bool, Concession]] = []
    if figure.sketch:
        stages.append((tried[0][0], SKETCHED_SEEDS, True, ""))
    stages += [(reading, seeds, False, given_up) for seeds in (FIRST_SEEDS, MORE_SEEDS) for reading, given_up in tried]
    special: Drawn | None = None
    for reading, seeds, at_once, given_up in stages:
        drawings = realise(reading, seeds, at_once=at_once)
        general = tuple(drawing for drawing in drawings if not is_special(figure, drawing))
        if general:
            return Drawn(reading, general, given_up)
        if drawings:
            special = special or Drawn(reading, tuple(drawings), given_up)
    if special:
        return special
    last, concession = tried[-1]
    if has_decimals(last):
        for reading, given_up in tried:
            drawings = realise(replace(reading, rounded=True), FIRST_SEEDS)
            if drawings:
                least = min(len(drawing.moved) for drawing in drawings)
                kept = tuple(drawing for drawing in drawings if len(drawing.moved) == least)
                return Drawn(replace(reading, rounded=True), kept, given_up)
    return Drawn(last, (), concession)


def is_special(figure: Figure, drawing: Drawing) -> bool:
    """Whether a quadrilateral that is called a trapezium came out as a parallelogram, which nobody means by it."""
    for shape, _ in figure.shapes:
        if shape.kind == "trapezium":
            a, b, c, d = (drawing.at[point] for point in shape.points)
            if all(_run_alike(*pair) for pair in (((a, b), (d, c)), ((b, c), (a, d)))):
                return True
    return False


def _run_alike(one: tuple[Spot, Spot], two: tuple[Spot, Spot]) -> bool:
    """Whether two segments are parallel, as nearly as a drawing shows it."""
    (ax, ay), (bx, by) = ((end[0] - start[0], end[1] - start[1]) for start, end in (one, two))
    return abs(ax * by - ay * bx) < PARALLEL * math.hypot(ax, ay) * math.hypot(bx, by)


def _readings(figure: Figure) -> Iterator[tuple[Figure, Concession]]:
    """The figure as its sketch settles it, then with less and less of that."""
    sketched = settled_by_sketch(figure)
    yield sketched, ""
    loose = with_loose_directions(sketched)
    if loose != sketched:
        yield loose, "directions"
    doubtful = settled_by_sketch(figure, DOUBTFUL_TURN)
    if doubtful != sketched:
        yield doubtful, "turns"
        if with_loose_directions(doubtful) != doubtful:
            yield with_loose_directions(doubtful), "turns and directions"


def has_decimals(figure: Figure) -> bool:
    """Whether some condition has decimals that may be rounded ones."""
    return any(getattr(condition, "play", 0) for condition in figure.conditions)


def conceded(outcome: Outcome, concession: Concession) -> Outcome:
    """The outcome with what its figure does not keep of the sketch said beside how it was confirmed."""
    if not concession or not isinstance(outcome, Derived):
        return outcome
    said = CONCEDED[concession]
    derivations = tuple(replace(one, confirmed_by=f"{one.confirmed_by}; {said}") for one in outcome.derivations)
    return replace(outcome, derivations=derivations)
