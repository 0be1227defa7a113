"""Options of multiple-choice parts: which are right, and which one the key names."""

from fractions import Fraction

import pytest

from paperaudit.maths.options import key_letter, match_options
from paperaudit.model.ask import Ask, Transform
from paperaudit.model.derivation import Answer
from paperaudit.model.expression import Number
from paperaudit.model.paper import Line, Part

HALF = Number(Fraction(1, 2))


def part(options: dict[str, str], answer: str = "") -> Part:
    listed = tuple((letter, Line(text)) for letter, text in options.items())
    return Part("1", "1", options=listed, answer=Line(answer) if answer else None)


def test_every_option_is_right_wrong_or_unclear() -> None:
    matched = match_options(
        part({"A": "1/2", "B": "0.5", "C": "2", "D": "half a rope"}),
        (Answer("1/2", HALF),),
        Ask(Transform("evaluate", HALF), "calculate 1/2"),
    )
    assert (matched.right, matched.unclear) == (("A", "B"), ("D",))


@pytest.mark.parametrize(
    ("answer", "letter"),
    [
        ("C", "C"),
        ("c", "C"),
        ("(C)", "C"),
        ("C.", "C"),
        ("option C", "C"),
        ("C: 70°", "C"),
        ("(C) 70°", "C"),
        ("C: 40°", ""),
        ("70°", ""),
        ("E", ""),
        ("C or A", ""),
        ("", ""),
    ],
)
def test_ways_to_name_an_option(answer: str, letter: str) -> None:
    assert key_letter(part({"A": "40°", "C": "70°"}, answer)) == letter


def test_a_part_without_options_has_no_letter() -> None:
    assert key_letter(part({}, "A")) == ""
