"""Every reason that the geometry gives has its wording in every system of schemes/reasons/."""

import pytest

from paperaudit.geometry.coordinates.arrangement import Arrangement
from paperaudit.geometry.coordinates.realise import realise
from paperaudit.geometry.figure.build import FigureBuilder
from paperaudit.geometry.theorems import ALL, instances
from paperaudit.marking.reasons import systems, word
from paperaudit.model.derivation import Derived, Reason
from paperaudit.model.fact import Given
from paperaudit.wording import read_statement
from tests.geometry.asked import answers, outcome

FIGURES = [
    *(theorem.fires for theorem in ALL),
    ("△ABC ≡ △DEF",),
    ("△ABC ∼ △DEF",),
    ("equilateral triangle ABC",),
    ("kite ABCD",),
    ("isosceles trapezium ABCD",),
    ("regular hexagon ABCDEF",),
    ("square ABCD", "AC and BD intersect at E"),
]

LATER_WORDED = {"equal-sides"}
"""Given to a line under the reason of the equality that it rests on."""


def given_reasons(statements: tuple[str, ...]) -> set[str]:
    givens = tuple(read_statement(statement) for statement in statements)
    assert all(isinstance(given, Given) for given in givens), givens
    figure = FigureBuilder(givens).figure()  # type: ignore[arg-type]
    found = instances(Arrangement(figure, realise(figure, range(12))[0]))
    return {one.theorem for instance in found for one in (instance, instance.lead) if one is not None}


@pytest.mark.parametrize("statements", FIGURES, ids=[f"{n}-{f[0]}" for n, f in enumerate(FIGURES)])
def test_every_reason_is_worded(statements: tuple[str, ...]) -> None:
    for name in given_reasons(statements) - LATER_WORDED:
        for system in systems():
            assert word(Reason(name), system)


@pytest.mark.parametrize(
    ("figure", "given", "ask", "answer", "reason"),
    [
        (
            ["triangle ABC", "triangle DEF"],
            ["△ABC ≡ △DEF", "AB = 3x + 1", "DE = x + 9"],
            "x",
            "x = 4",
            "congruent-triangles-parts",
        ),
        (
            ["triangle ABC", "triangle DEF"],
            ["△ABC ∼ △DEF", "∠A = 50°", "∠E = 60°"],
            "∠F",
            "70°",
            "similar-triangles-angles",
        ),
        (["kite ABCD"], ["AB = AD", "CB = CD", "AB = 2x", "AD = x + 5"], "x", "x = 5", "equal-sides-given"),
        (["isosceles trapezium ABCD"], ["AB ∥ DC", "AD = 2x", "BC = x + 5"], "x", "x = 5", "isosceles-trapezium-legs"),
        (["equilateral triangle ABC"], ["AB = 2x", "BC = x + 5"], "x", "x = 5", "equilateral-sides"),
        (["regular pentagon ABCDE"], ["AB = 2x", "BC = x + 5"], "x", "x = 5", "regular-polygon"),
    ],
)
def test_equal_parts_of_shapes(figure: list[str], given: list[str], ask: str, answer: str, reason: str) -> None:
    result = outcome(figure, given, ask)
    assert isinstance(result, Derived) and answers(result) == [answer], result
    given_for = [step.reason for step in result.derivations[0].steps if step.reason]
    assert reason in [one.name for one in given_for]
    assert all(word(one, system) for one in given_for for system in systems())
