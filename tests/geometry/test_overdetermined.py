"""A given that the others contradict is refuted by what they settle; what a figure can meet never is."""

from dataclasses import replace

import pytest

from paperaudit.geometry.figure.build import FigureBuilder
from paperaudit.geometry.figure.variants import variants
from paperaudit.geometry.find import find_outcome
from paperaudit.geometry.overdetermined import overdetermined
from paperaudit.model.derivation import Impossible, Outcome
from paperaudit.model.expression import Expression
from paperaudit.model.fact import Given
from tests.geometry.asked import reading_of
from tests.geometry.school_families import FAMILIES, REGISTER
from tests.geometry.school_sheet import SchoolQuestion, set_question

Sketch = dict[str, tuple[float, float]]


def found(figure: list[str], given: list[str], ask: str, sketch: Sketch | None = None) -> Impossible | None:
    """What is found whether or not the figure can be drawn."""
    reading = reading_of(figure, given, ask, sketch)
    drawn = reading.question.sketch

    def outcome_of(givens: tuple[Given, ...], size: Expression) -> Outcome:
        builder = FigureBuilder(givens, (size,))
        return find_outcome(builder, builder.figure(drawn, (size,)), givens, (size,), leave_out=False)

    return overdetermined(variants(reading.givens, drawn)[0], outcome_of)


def with_the_truth(question: SchoolQuestion) -> SchoolQuestion:
    """The question with its own answer among the givens."""
    if not question.exact or question.ask in question.letters:
        return question
    unit = "°" if "∠" in question.ask or question.ask.startswith("arc") else ""
    return replace(question, given=(*question.given, f"{question.ask} = {question.exact}{unit}"))


@pytest.mark.parametrize("name", FAMILIES[::6])
def test_true_givens_never_clash(name: str) -> None:
    """Without a sketch too, where other arrangements are possible."""
    question = with_the_truth(set_question(REGISTER[name][0], 11))
    for sketch in (None, dict(question.sketch)):
        clash = found(list(question.figure), list(question.given), question.ask, sketch)
        assert clash is None, (question.as_yaml(), clash)


@pytest.mark.parametrize("side", ["5√3 + √11", "5√3 − √11"])
def test_either_of_two_triangles_may_be_stated(side: str) -> None:
    """SSA, by the cosine rule from memory: AC = 10 cos 30° ± √(36 − 25)."""
    assert found(["triangle ABC"], ["AB = 10", "BC = 6", "∠BAC = 30°", f"AC = {side}"], "∠ABC") is None


def test_neither_of_two_triangles() -> None:
    clash = found(["triangle ABC"], ["AB = 10", "BC = 6", "∠BAC = 30°", "AC = 9"], "∠ABC")
    assert clash is not None
    assert set(clash.clash) == {"AB = 10", "BC = 6", "∠BAC = 30°", "AC = 9"}


@pytest.mark.parametrize("stated", ["8.15", "8.2", "8.152"])
def test_a_rounded_size_is_no_contradiction(stated: str) -> None:
    """BC = 10 sin 50° ÷ sin 70° = 8.1520… by the sine rule."""
    assert found(["triangle ABC"], ["AB = 10", "∠A = 50°", "∠B = 60°", f"BC = {stated}"], "AC") is None


def test_a_given_that_has_no_part_in_it_is_left_out() -> None:
    clash = found(
        ["triangle ABC", "D lies on BC", "segment AD"],
        ["∠ABC = 90°", "AB = 3", "BC = 4", "BD = 1", "AC = 6"],
        "AD",
    )
    assert clash is not None
    assert "BD = 1" not in clash.clash
    assert "AC = 6" in clash.clash
    assert "5" in clash.why[-1]


def test_a_clash_that_the_derivation_hides() -> None:
    """Of a right angle, AB = 3, BC = 4 and AC = 2, one leg is enough: it is longer than the hypotenuse."""
    clash = found(["triangle ABC"], ["∠ABC = 90°", "AB = 3", "BC = 4", "AC = 2"], "∠BAC")
    assert clash is not None
    assert len(clash.clash) == 3
