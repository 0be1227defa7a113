"""Angles of polygons in everyday words, held against corners measured on coordinates.

Sums by Euclid's Elements, I.32 with its corollaries: twice as many right angles as sides, less four; outside, four.
"""

import math

import pytest

from paperaudit.model.derivation import Derived
from tests.strands.asked import texts
from tests.strands.told import outcome_of, reading_of

_NAMES = {5: "pentagon", 6: "hexagon", 8: "octagon", 9: "nonagon", 10: "decagon"}
_OTHERS = (15, 18, 20, 24, 36)


def _measured(sides: int) -> float:
    """The angle at a corner of a regular polygon, from the places of three corners."""
    at = [complex(math.cos(2 * math.pi * one / sides), math.sin(2 * math.pi * one / sides)) for one in range(3)]
    there, back = at[2] - at[1], at[0] - at[1]
    return math.degrees(math.acos((there * back.conjugate()).real / abs(there) / abs(back)))


def _number(text: str) -> float:
    _, outcome = outcome_of({"text": text})
    assert isinstance(outcome, Derived) and outcome.derivations[0].confirmed_by
    (answer,) = texts(outcome)
    return float(answer.rstrip("°"))


def _called(sides: int) -> str:
    return _NAMES.get(sides, f"polygon with {sides} sides")


@pytest.mark.parametrize("sides", [*_NAMES, *_OTHERS])
def test_angles_of_regular_polygons(sides: int) -> None:
    inside = _measured(sides)
    assert math.isclose(_number(f"Find the sum of the interior angles of a {_called(sides)}."), sides * inside)
    assert math.isclose(_number(f"Find each interior angle of a regular {_called(sides)}."), inside)
    assert math.isclose(_number(f"Find each exterior angle of a regular {_called(sides)}."), 180 - inside)


@pytest.mark.parametrize("sides", [*_NAMES, *_OTHERS])
def test_the_number_of_sides(sides: int) -> None:
    inside = round(_measured(sides), 6)
    said = f"{inside:g}"
    assert _number(f"Each interior angle of a regular polygon is {said}°. How many sides does it have?") == sides
    assert _number(f"Each exterior angle of a regular polygon is {180 - inside:g}°. Find the number of sides.") == sides
    whole = f"The sum of the interior angles of a polygon is {sides * inside:g}°. How many sides does it have?"
    assert _number(whole) == sides


@pytest.mark.parametrize(("text", "angle"), [("complement of 35°", 55), ("supplement of 110°", 70)])
def test_the_other_angle_of_a_pair(text: str, angle: int) -> None:
    assert _number(f"Find the {text}.") == angle


def test_shares_with_colons_between_them() -> None:
    reading = reading_of({"text": "Divide R720 in the ratio 3 : 5."})
    assert reading.ask is not None
    _, outcome = outcome_of({"text": "Divide R720 in the ratio 3 : 5."})
    assert isinstance(outcome, Derived)
    from paperaudit.maths.equality import compare

    agreed = {key: compare(key, outcome.answers, reading.ask).agreement.value
              for key in ("R270 : R450", "270:450", "R280 : R440", "3 : 5")}  # fmt: skip
    assert agreed == {"R270 : R450": "agrees", "270:450": "agrees", "R280 : R440": "differs", "3 : 5": "differs"}
