"""States right and wrong answers to school questions and judges what the comparison says of them."""

import random
from collections.abc import Iterator
from dataclasses import dataclass

from paperaudit.maths.equality import compare
from paperaudit.model.derivation import Agreement, Derived
from paperaudit.model.paper import Line, Part, Question
from paperaudit.wording import read
from tests.geometry.school_sheet import SchoolQuestion


@dataclass(frozen=True)
class Key:
    """An answer as a setter would write it, to an ask as a paper would put it, and whether it is right."""

    ask: str
    text: str
    right: bool


def _unit(question: SchoolQuestion) -> str:
    ask = question.ask
    if "∠" in ask or ask.startswith(("arc", "bearing")):
        return "°"
    if not question.unit or ask in question.letters:
        return ""
    return f" {question.unit}" + ("²" if ask.startswith("area") else "")


def keys_of(question: SchoolQuestion, seed: int) -> Iterator[Key]:
    """The exact value and two roundings of it; then each altered in a way that pupils and printers do."""
    chance = random.Random(seed)
    unit, truth, ask = _unit(question), question.truth, question.ask
    if question.exact:
        yield Key(ask, question.exact + unit, True)
        yield Key(ask, f"{ask} = {question.exact}{unit}", True)
    for places, words in ((1, "correct to 1 decimal place"), (2, "correct to 2 decimal places")):
        near = truth * 10**places % 1
        if 0.45 < near < 0.55 or truth < 0.5:
            continue
        rounded = round(truth, places)
        yield Key(f"{ask}, {words}", f"{rounded:.{places}f}{unit}", True)
        off = rounded + chance.choice((1, -1)) / 10**places
        yield Key(f"{ask}, {words}", f"{off:.{places}f}{unit}", False)
    for wrong in _altered(truth, unit == "°", chance):
        if abs(wrong - truth) > 0.02 * abs(truth) and wrong > 0:
            yield Key(ask, f"{wrong:.3g}{unit}", False)
    if "√" in question.exact:
        head, inside = question.exact.split("√", 1)
        digits = inside.split("/")[0]
        yield Key(ask, f"{head}√{int(digits) + 1}{inside[len(digits) :]}{unit}", False)
    elif question.exact.isdigit():
        yield Key(ask, f"{int(question.exact) + chance.choice((1, -1, 2, 10))}{unit}", False)


def _altered(truth: float, angle: bool, chance: random.Random) -> Iterator[float]:
    if angle:
        yield from (truth + 7, abs(truth - 7), 180 - truth, 2 * truth, truth / 2, abs(90 - truth))
    else:
        yield from (truth * chance.choice((1.1, 0.9, 2, 0.5)), truth * truth, truth**0.5, truth + 1)


def misjudged(question: SchoolQuestion, result: Derived, seed: int) -> list[str]:
    """The keys that are right and said to differ, or wrong and said to agree."""
    found = []
    for key in keys_of(question, seed):
        part = Part(id="1", number="1", ask=Line(key.ask), answer=Line(key.text))
        asked = Question("1", (part,), figure=tuple(map(Line, question.figure)), given=tuple(map(Line, question.given)))
        ask = read(asked, part).ask
        assert ask is not None, key
        said = compare(key.text, result.answers, ask)
        if said.agreement is (Agreement.DIFFERS if key.right else Agreement.AGREES):
            derived = [answer.text for answer in result.answers]
            found.append(f"{key}: {said.agreement.value} with {derived} ({said.why})\n    {question.as_yaml()}")
    return found
