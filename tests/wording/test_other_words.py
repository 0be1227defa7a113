"""Questions in many authors' words go through the whole audit: the right key is confirmed, a slip is found."""

import re
from pathlib import Path

import pytest
from ruamel.yaml import YAML

from paperaudit.audit import audit
from paperaudit.model.audited import AuditedPart
from paperaudit.model.paper import Line, Paper, Part, Question, Section
from paperaudit.wording import other_words
from paperaudit.wording.other_words import rewritten
from tests.strands.asked import FIXTURES

CASES: list[list[str]] = YAML(typ="safe", pure=True).load(FIXTURES / "questions" / "other-words.yaml")


def audited(text: str, key: str) -> AuditedPart:
    answer = Line(key) if key else None
    part = Part(id="1", number="", marks=3, text=Line(text), answer=answer)
    return audit(Paper("Words", (Section((Question("1", (part,)),)),))).parts[0]


@pytest.mark.parametrize("case", CASES, ids=[case[0] for case in CASES])
def test_the_right_key_is_confirmed_and_a_wrong_one_is_not(case: list[str]) -> None:
    text, right, *wrong = case
    assert audited(text, right).verdict == ("confirmed" if right else "derived")
    assert [audited(text, key).verdict in ("differs", "several") for key in wrong] == [True] * len(wrong)


def test_no_rule_drops_what_it_has_named() -> None:
    lines = Path(other_words.__file__).with_suffix(".rules").read_text(encoding="utf-8").splitlines()
    rules = [line for line in lines if line and not line.startswith("#")]
    for pattern, into in zip(rules[::2], rules[1::2], strict=True):
        assert into.startswith("→ "), into
        assert set(re.findall(r"\?P<(\w+)>", pattern)) == set(re.findall(r"<(\w+)>", into)) - {"end"}, pattern


@pytest.mark.parametrize(
    "sentence",
    [
        "Multiply out (x + 1)(x + 2) and add 3.",
        "Find the distance AB and the midpoint of AB if A(1, 2) and B(4, 6).",
        "In a story about 3 boats nothing is said.",
    ],
)
def test_a_sentence_keeps_all_of_its_numbers(sentence: str) -> None:
    said = rewritten(sentence)
    assert sorted(re.findall(r"\d+", said)) == sorted(re.findall(r"\d+", sentence))


@pytest.mark.parametrize(
    "text",
    [
        "Find f′(x) and the age of the teacher if f(x) = x³ − 4x.",
        "Find the gradient and the colour of the line 2x + 3y = 6.",
        "Find the amplitude, the weight and the period of y = 3 sin 2x.",
    ],
)
def test_several_asks_are_left_where_one_is_not_understood(text: str) -> None:
    assert audited(text, "").verdict == "not-read"
