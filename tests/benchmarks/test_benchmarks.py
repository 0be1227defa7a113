"""The bounds of the benchmarks, held loosely: medians of paired ratios on a machine that does other things too.

`python -m tests.benchmarks` prints the table with the bounds themselves.
"""

import pytest

from tests.benchmarks.measured import against_sympy, against_z3, growth, hard, typical
from tests.benchmarks.questions import Derivable, derivable


@pytest.fixture(scope="module")
def cases() -> list[Derivable]:
    return derivable(30)


def test_the_derivation_is_much_faster_than_sympy(cases: list[Derivable]) -> None:
    assert against_sympy(cases).ratio > 8


def test_existence_and_uniqueness_is_faster_than_z3(cases: list[Derivable]) -> None:
    assert against_z3(cases).ratio > 1.3


def test_times_grow_nearly_as_the_figure_does() -> None:
    search, finding = growth(repeats=2)
    assert search.exponent < 1.5
    assert finding.exponent < 1.7


def test_a_question_takes_no_time_to_speak_of(cases: list[Derivable]) -> None:
    assert typical([case.question for case in cases]) < 0.5
    assert hard(repeats=1) < 5
