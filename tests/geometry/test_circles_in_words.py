"""Questions on circles in ordinary words, through the whole audit: fixtures/questions/circles-in-words.yaml."""

from pathlib import Path
from typing import Any

import pytest
from ruamel.yaml import YAML

from paperaudit.audit import audit
from paperaudit.model.audited import AuditedPart
from paperaudit.model.derivation import NotRead
from paperaudit.model.paper import Line, Paper, Part, Question, Section

FILE = Path(__file__).parents[2] / "fixtures" / "questions" / "circles-in-words.yaml"
CASES: list[dict[str, Any]] = YAML(typ="safe").load(FILE.read_text(encoding="utf-8"))
KEYS = [(case, key, verdict) for case in CASES for verdict in ("agrees", "differs") for key in case.get(verdict, ())]


def audited(text: str, answer: str | None = None) -> AuditedPart:
    part = Part("1", "1", answer=Line(answer) if answer else None)
    return audit(Paper("One question", (Section((Question("1", (part,), text=Line(text)),)),))).parts[0]


@pytest.mark.parametrize("case", CASES, ids=[case["title"] for case in CASES])
def test_question(case: dict[str, Any]) -> None:
    part = audited(case["text"])
    assert part.verdict == case.get("verdict", "derived"), part.outcome
    if "derived" in case:
        assert [answer.text for answer in part.outcome.answers] == case["derived"]  # type: ignore[union-attr]
    if "why" in case:
        reasons = [unread.expected for unread in part.reading.unread]
        reasons += [part.outcome.why] if isinstance(part.outcome, NotRead) else []
        assert any(case["why"] in reason for reason in reasons), reasons


@pytest.mark.parametrize(("case", "key", "verdict"), KEYS, ids=[f"{case['title']}: {key}" for case, key, _ in KEYS])
def test_key(case: dict[str, Any], key: str, verdict: str) -> None:
    assert audited(case["text"], key).verdict == {"agrees": "confirmed", "differs": "differs"}[verdict]


def test_a_new_letter_is_none_of_the_question_and_is_said() -> None:
    plain = audited(CASES[0]["text"])
    assert plain.reading.ask and plain.reading.ask.read_as.endswith("where T is the point where AB touches the circle")
    taken = audited(CASES[0]["text"].replace("AB is", "T is a point on the larger circle. AB is"))
    assert taken.reading.ask and taken.reading.ask.read_as.endswith("where M is the point where AB touches the circle")
