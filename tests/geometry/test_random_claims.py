"""Random claims about figures of the fixtures: no verdict may contradict figures drawn apart from it.

A claim that is proved holds in fresh figures of the same givens; one that is called false fails in one.
"""

import random
import re
from pathlib import Path
from typing import Any

import pytest
from ruamel.yaml import YAML

from paperaudit.geometry.claims.claim_forms import claims_of, gap
from paperaudit.geometry.coordinates.arrangement import Arrangement
from paperaudit.geometry.coordinates.realise import realise
from paperaudit.geometry.figure.build import FigureBuilder
from paperaudit.model.ask import Establish
from paperaudit.model.derivation import Derived, NotDetermined
from paperaudit.model.paper import Line, Part, Question
from paperaudit.wording import read
from tests.geometry.asked import answers, outcome

FILE = Path(__file__).parents[2] / "fixtures" / "questions" / "geometry-proofs.yaml"
FIGURES: list[dict[str, Any]] = [
    case
    for case in YAML(typ="safe").load(FILE.read_text(encoding="utf-8"))
    if "circle" not in str(case) and "sketch" not in case
]
FRESH = range(300, 324)
KINDS = (
    "{0}{1} = {2}{3}",
    "∠{0}{1}{2} = ∠{3}{1}{0}",
    "{0}{1} ∥ {2}{3}",
    "{0}{1} ⊥ {2}{3}",
    "△{0}{1}{2} ≡ △{0}{3}{2}",
    "△{0}{1}{2} ∼ △{3}{1}{0}",
    "{0}{1}{2}{3} is a parallelogram",
    "{0}{1}{2}{3} is a rhombus",
    "{0} is the midpoint of {1}{2}",
    "{0}{1} × {2}{3} = {0}{2} × {1}{3}",
    "∠{0}{1}{2} = 90°",
    "{0}{1} = 2{2}{3}",
)


def letters_of(case: dict[str, Any]) -> list[str]:
    words = (word for line in case["figure"] for word in re.findall(r"\b[A-Z]{1,4}\b", line))
    return sorted({letter for word in words for letter in word})


def fresh_gaps(case: dict[str, Any], ask: str) -> list[float]:
    """How far the claim is from holding in figures drawn from other starts; empty where none could be drawn."""
    part = Part(id="1", number="1", ask=Line(ask))
    lines = [tuple(Line(line) for line in case.get(key) or ()) for key in ("figure", "given")]
    reading = read(Question("1", (part,), figure=lines[0], given=lines[1]), part)
    assert reading.ask is not None and isinstance(reading.ask.task, Establish)
    facts = reading.ask.task.claims
    builder = FigureBuilder(reading.givens, facts)
    figure = builder.figure()
    found = []
    for drawing in realise(figure, FRESH):
        one = Arrangement(figure, drawing)
        found.append(max(gap(claim, one) for fact in facts for claim in claims_of(fact, builder, one)))
    return found


@pytest.mark.parametrize("seed", range(40))
def test_no_verdict_contradicts_a_fresh_figure(seed: int) -> None:
    chance = random.Random(seed)
    case = chance.choice([case for case in FIGURES if len(letters_of(case)) > 3])
    claim = chance.choice(KINDS).format(*chance.sample(letters_of(case), 4))
    result = outcome(case["figure"], case.get("given") or [], f"prove that {claim}")
    if not isinstance(result, Derived | NotDetermined):
        return
    if "midpoint" in claim or isinstance(result, NotDetermined):
        assert isinstance(result, Derived) or len(result.cases) == 2, result
        return
    off = fresh_gaps(case, f"prove that {claim}")
    if answers(result) == ["proved"]:
        assert all(share < 1e-6 for share in off), (case, claim)
    elif off:
        assert max(off) > 1e-7, (case, claim)
