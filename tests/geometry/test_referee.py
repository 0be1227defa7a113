"""Angles that were derived, judged by newclid with py-yuclid, a prover for figures that others wrote.

It works modulo 180° on a figure that it is shown, knows no letters and proves less than everything; what it does
prove must be what we derived, and what we call open it must not prove.
"""

import os
import platform
import sys
from collections.abc import Callable, Iterator
from fractions import Fraction
from itertools import count, islice

import pytest

from paperaudit.model.derivation import Derived, NotDetermined
from paperaudit.model.expression import Measured, Number
from tests.geometry.asked import outcome
from tests.geometry.random_circles import random_circle_question
from tests.geometry.random_figures import RandomQuestion, random_figure, random_question
from tests.geometry.referee import At, Referee, goal

UNPROVED = 2
"""How many of these it may leave unproved: it is no complete prover."""


@pytest.fixture(scope="module")
def referee() -> Referee:
    try:
        return Referee()
    except ImportError as missing:
        if os.environ.get("PAPERAUDIT_CI") and (sys.platform, platform.machine()) == ("linux", "x86_64"):
            raise
        pytest.skip(f"the referee is not installed on this machine (extra “test”): {missing}")


def _questions(make: Callable[[int], RandomQuestion]) -> Iterator[tuple[RandomQuestion, Derived]]:
    """The questions among seeded ones that are derived, with what was derived."""
    for seed in count(70_000):
        question = make(seed)
        result = outcome(question.figure, question.given, question.ask, question.sketch)
        if isinstance(result, Derived):
            yield question, result


def _value(result: Derived) -> Fraction:
    (answer,) = result.answers
    assert isinstance(answer.value, Measured) and isinstance(answer.value.amount, Number)
    return answer.value.amount.value


def _at(result: Derived) -> At:
    return {point: (x, y) for point, x, y in result.figure}


@pytest.mark.parametrize(("make", "judged"), [(random_question, 45), (random_circle_question, 20)])
def test_derived_angles_are_proved_and_other_values_refused(
    referee: Referee, make: Callable[[int], RandomQuestion], judged: int
) -> None:
    unproved = []
    for question, result in islice(_questions(make), judged):
        at, statements, angle = _at(result), (*question.figure, *question.given), question.ask[1:]
        if not referee.confirms(at, statements, goal(at, angle, _value(result))):
            unproved.append(question)
        for off in (7, -11):
            assert not referee.confirms(at, statements, goal(at, angle, _value(result) + off)), question
    assert len(unproved) <= UNPROVED, unproved


def test_what_is_open_is_not_proved(referee: Referee) -> None:
    """The size that an open angle has in the figure that the question was made from does not follow from the givens."""
    judged = 0
    for seed in range(80_000, 80_070):
        question = random_question(seed)
        result = outcome(question.figure, question.given, question.ask, question.sketch)
        if isinstance(result, NotDetermined):
            at, statements = random_figure(seed).at, (*question.figure, *question.given)
            assert not referee.confirms(at, statements, goal(at, question.ask[1:], question.truth)), question
            judged += 1
    assert judged >= 6
