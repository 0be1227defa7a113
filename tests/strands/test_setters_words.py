"""Questions in the words of different setters, through the whole audit with a right and a wrong key."""

import json

import pytest

from paperaudit.audit import audit_read
from paperaudit.readers.question_file import read_question_file
from tests.strands.asked import cases

CASES: list[list[str]] = cases("setters-words")  # type: ignore[assignment]


def verdict(text: str, key: str = "") -> str:
    question = {"number": 1, "marks": 2, "text": text} | ({"answer": key} if key else {})
    return audit_read(read_question_file(json.dumps({"questions": [question]}), "words.yaml")).parts[0].verdict


@pytest.mark.parametrize("case", CASES, ids=lambda case: str(case[0])[:70])
def test_verdicts(case: list[str]) -> None:
    text, *keys = case
    assert [verdict(text, key) for key in keys] == ["confirmed", "differs"][: len(keys)]
    if not keys:
        assert verdict(text) == "not-read"
