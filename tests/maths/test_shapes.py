"""A text has the tree that it would have if no other of its shape had been matched before."""

import random
from collections.abc import Iterator, Mapping, Sequence
from pathlib import Path

import pytest
from parsimonious.nodes import Node
from ruamel.yaml import YAML

from paperaudit.errors import ExpressionNotRead
from paperaudit.maths.grammar import expression_grammar
from paperaudit.maths.notation import read_notation
from paperaudit.maths.peg import compiled
from paperaudit.maths.shapes import Shapes
from paperaudit.wording.clauses import statement_grammar

QUESTIONS = Path(__file__).parents[2] / "fixtures" / "questions"
EVERY = 40
"""One text of so many: every fourth takes two minutes, and was right as well."""
LONGEST = 120
CAPITALS = "ABCDEFGHIJKLMNOPQRSTUVWXYZ"


def _strings(loaded: object) -> Iterator[str]:
    """Every text at any depth of a file."""
    if isinstance(loaded, str):
        yield loaded
    elif isinstance(loaded, Mapping):
        yield from (text for value in loaded.values() for text in _strings(value))
    elif isinstance(loaded, Sequence):
        yield from (text for value in loaded for text in _strings(value))


def _texts() -> list[str]:
    """Statements, asks, answers and whole questions of the small cases, in the plain spelling."""
    loaded = [YAML(typ="safe", pure=True).load(path) for path in sorted(QUESTIONS.glob("*.yaml"))]
    texts = (read_notation(text[:LONGEST]).text for text in _strings(loaded))
    return list(dict.fromkeys(texts))[::EVERY]


TEXTS = _texts()


def _renamed(text: str, seed: int) -> str:
    """The text with other capitals and other digits."""
    chance = random.Random(seed)
    letters = dict(zip(CAPITALS, chance.sample(CAPITALS, 26), strict=True))
    return "".join(
        letters.get(character, chance.choice("0123456789") if character in "0123456789" else character)
        for character in text
    )


def test_there_are_texts() -> None:
    assert len(TEXTS) > 100


@pytest.mark.parametrize("start", range(0, len(TEXTS), 50))
def test_a_tree_is_the_text_s_own(start: int) -> None:
    """Of statements, and of the same with other letters and numbers, whichever came first."""
    rules = statement_grammar()
    for place, text in enumerate(TEXTS[start : start + 50]):
        for one in (text, _renamed(text, start + place), _renamed(text, -start - place - 1)):
            alone = rules.matched("statement", one)
            if isinstance(alone, Node):
                assert rules.tree("statement", one) == alone
            else:
                with pytest.raises(ExpressionNotRead) as stopped:
                    rules.tree("statement", one)
                assert stopped.value.start == alone


def test_most_statements_share_a_shape_with_their_like() -> None:
    shapes = Shapes(["[A-Z]{3}", "R", r"m\^2", "[0-9]+", "cm2", "90"])
    assert shapes.of("∠PQT = 65°") == shapes.of("∠ABC = 72°")
    assert shapes.of("R5") != shapes.of("Q5")
    assert shapes.of("5 m^2") != shapes.of("5 m^7")
    assert shapes.of("5 cm2") != shapes.of("5 cm7")
    assert shapes.of("∠ABC = 90°") != shapes.of("∠ABC = 80°")
    assert shapes.of("x = 12") == shapes.of("x = 71")


@pytest.mark.parametrize(
    ("pattern", "one", "other"),
    [
        ("[A-D]", "A", "E"),
        ("[2-5]", "2", "7"),
        (r"([0-9])x\1", "1x1", "1x2"),
        (r"([A-Z])x\1", "AxA", "AxB"),
        ("(?i)[a-d]", "A", "E"),
        ("[xy2]", "x2", "x5"),
        ("(?:x|y)2", "y2", "y5"),
        ("x?2", "2", "5"),
        ("[^7]", "7", "8"),
        (r"\u0041", "A", "B"),
    ],
)
def test_what_a_pattern_tells_apart_is_of_two_shapes(pattern: str, one: str, other: str) -> None:
    shapes = Shapes([pattern])
    assert shapes.of(one) != shapes.of(other)


def test_how_far_reading_got_is_remembered_with_the_shape() -> None:
    rules = compiled('pair = name "=" name', compiled('name = ~"[A-Z]+"'))
    for text in ("AB=?", "CD=?"):
        with pytest.raises(ExpressionNotRead) as stopped:
            rules.tree("pair", text)
        assert stopped.value.start == 3


def test_expressions_share_shapes_as_well() -> None:
    rules = expression_grammar()
    assert rules.tree("expression", "3x + 17").text == "3x + 17"
    assert rules.tree("expression", "8x + 41").text == "8x + 41"


def test_sentences_that_differ_in_letters_and_digits_are_read_once() -> None:
    """A pattern with a range such as 1-9, or a capital of its own, would have every sentence read anew."""
    of_sentences = statement_grammar()._shapes
    assert of_sentences.of("∠BDG = 68°") == of_sentences.of("∠GJK = 57°")
    assert of_sentences.of("∠BTG = 68°") == of_sentences.of("∠GUK = 57°")
