"""Multiple choice by a property of the options: what is right, what is right twice, what is left unread."""

import pytest

from paperaudit.maths.options import match_options
from paperaudit.model.derivation import Derived
from paperaudit.model.paper import Line, Part, Question
from paperaudit.strands.registry import derive
from paperaudit.wording.reading import read

RIGHT = (
    ("Which of these is a prime number?", ("21", "23", "27", "33"), "B"),
    ("Which of these numbers is a prime number?", ("21", "23", "29", "33"), "BC"),
    ("Which of these is not a multiple of 6?", ("12", "18", "26", "36"), "C"),
    ("Which of the following is a factor of 24?", ("5", "7", "8", "9"), "C"),
    ("Which of these is irrational?", ("√4", "√5", "0.25", "22/7"), "B"),
    ("Which is the largest?", ("0.5", "0.45", "0.405", "0.054"), "A"),
    ("Which of these fractions is the smallest?", ("1/2", "1/3", "2/5", "3/8"), "B"),
    ("Which of the following is equal to 3/4?", ("0.34", "0.75", "0.43", "75%"), "BD"),
    ("Which of these is equal to 45 000?", ("4.5 × 10³", "4.5 × 10⁴", "45 × 10⁴"), "B"),
    ("Which of these is not equal to 1/2?", ("0.5", "2/4", "0.2", "50%"), "C"),
    ("Which expression is equivalent to (x + 2)²?", ("x² + 4", "x² + 4x + 4", "2x + 4"), "B"),
    ("Which of the following expressions is equivalent to x² − 9?", ("(x − 3)²", "(x − 3)(x + 3)", "x − 3"), "B"),
)
UNREAD = (
    ("Which of these is a rhombus?", ("A", "B", "C")),
    ("Which is the nicest?", ("0.5", "0.45")),
    ("Which of these is equal to the area of the square?", ("4", "5")),
    ("Which of these is a prime number?", ("red", "blue")),
)


def _question(text: str, options: tuple[str, ...]) -> Question:
    lettered = tuple(zip("ABCD", map(Line, options), strict=False))
    return Question("1", (Part(id="1", number="", text=Line(text), options=lettered),))


@pytest.mark.parametrize(("text", "options", "letters"), RIGHT)
def test_the_right_options(text: str, options: tuple[str, ...], letters: str) -> None:
    question = _question(text, options)
    reading = read(question, question.parts[0])
    assert reading.ask is not None and not reading.unread
    _, outcome = derive(reading)
    assert isinstance(outcome, Derived), outcome
    matched = match_options(question.parts[0], outcome.answers, reading.ask)
    assert ("".join(matched.right), matched.unclear) == (letters, ())
    assert outcome.derivations[0].confirmed_by


@pytest.mark.parametrize(("text", "options"), UNREAD)
def test_what_is_no_property_of_numbers_is_unread(text: str, options: tuple[str, ...]) -> None:
    question = _question(text, options)
    reading = read(question, question.parts[0])
    assert reading.ask is None or reading.unread
