"""The same question asked otherwise gets the same verdict, the same answer and as many lines."""

import random

import pytest

from paperaudit.model.derivation import Derived, Impossible, Outcome
from tests.geometry.asked import answers, outcome
from tests.geometry.random_figures import RandomQuestion, random_question

SEEDS = range(70_000, 70_300)


def verdict(result: Outcome) -> tuple[str, list[str], int]:
    lines = len(result.derivations[0].steps) if isinstance(result, Derived) else 0
    clash = len(result.clash) if isinstance(result, Impossible) else 0
    return type(result).__name__, answers(result), lines + clash


def asked(question: RandomQuestion) -> tuple[str, list[str], int]:
    return verdict(outcome(question.figure, question.given, question.ask, question.sketch))


@pytest.mark.parametrize("seed", SEEDS)
def test_renamed_mirrored_reordered_stretched(seed: int) -> None:
    question = random_question(seed, letters=seed % 2 == 1)
    plain = asked(question)
    chance = random.Random(seed)

    old = sorted(question.sketch)
    new = chance.sample("ABCDEFGHKLMNPQRSTUVW", len(old))
    names = str.maketrans(dict(zip(old, new, strict=True)))

    def renamed(text: str) -> str:
        return "".join(letter.translate(names) if letter in old else letter for letter in text)

    assert (
        asked(
            RandomQuestion(
                tuple(renamed(line) for line in question.figure),
                tuple(renamed(line) for line in question.given),
                renamed(question.ask),
                question.truth,
                {renamed(p): spot for p, spot in question.sketch.items()},
            )
        )
        == plain
    )

    mirrored = {point: (-x, y) for point, (x, y) in question.sketch.items()}
    assert asked(RandomQuestion(question.figure, question.given, question.ask, question.truth, mirrored)) == plain

    shuffled = list(question.given)
    chance.shuffle(shuffled)
    reordered = RandomQuestion(question.figure, tuple(shuffled), question.ask, question.truth, question.sketch)
    assert asked(reordered) == plain

    stretched = {point: (3 * x + 40, 0.7 * y - 5) for point, (x, y) in question.sketch.items()}
    assert asked(RandomQuestion(question.figure, question.given, question.ask, question.truth, stretched)) == plain


def test_prose_and_statements_agree() -> None:
    statements = outcome(["triangle ABC", "BC is produced to D"], ["AB = AC", "∠ACD = 112°"], "∠ABC")
    prose = outcome(
        text=(
            "In the diagram, ABC is a triangle with AB = AC and BC is produced to D. ∠ACD = 112°. "
            "Calculate, giving reasons, the size of ∠ABC."
        )
    )
    assert verdict(statements) == verdict(prose) == ("Derived", ["68°"], 2)
