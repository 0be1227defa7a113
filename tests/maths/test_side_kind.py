"""Keys that say on which side of a circle a point is."""

import pytest

from paperaudit.maths.answer_kinds.side import compare_side
from paperaudit.model.ask import Ask, Find
from paperaudit.model.derivation import Answer


@pytest.mark.parametrize(
    ("stated", "agreement"),
    [
        ("outside", "agrees"),
        ("It lies outside the circle.", "agrees"),
        ("inside", "differs"),
        ("on the circle", "differs"),
        ("not outside", "cannot tell"),
        ("34 > 25", "cannot tell"),
    ],
)
def test_sides(stated: str, agreement: str) -> None:
    assert compare_side(stated, (Answer("outside"),), Ask(Find(()), "")).agreement.value == agreement
