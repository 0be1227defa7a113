"""Stories of statistics and chance with a sentence put in that alters them: none keeps its answer."""

import re
from typing import Any

import pytest

from paperaudit.model.derivation import NotRead
from paperaudit.strands.registry import derive
from tests.strands.asked import cases
from tests.strands.told import reading_of

PUT_IN = (
    "Each of these is then doubled.",
    "Half of them leave.",
    "Two more are then added.",
    "This is not true for the last one.",
    "The largest one is removed.",
    "All of them are wrong.",
    "Only the first is counted.",
    "Then another one joins.",
)
STORIES = [
    case
    for name in ("statistics-told", "chance-told")
    for case in cases(name)
    if case.get("verdict", "derived") == "derived" and "line of best fit is" not in case.get("text", "")
]


def altered(case: dict[str, Any], sentence: str) -> dict[str, Any]:
    """The case with a sentence ahead of its last one, which asks; in front of it where that is all."""
    if "part" in case or "ask" in case:
        return case | {"text": f"{case.get('text', '')} {sentence}".strip()}
    told = re.split(r"(?<=[.?]) ", case["text"])
    return case | {"text": " ".join((*told[:-1], sentence, told[-1]))}


@pytest.mark.parametrize("case", STORIES, ids=[case["title"] for case in STORIES])
def test_a_sentence_that_alters_a_story_is_not_left_out(case: dict[str, Any]) -> None:
    for sentence in PUT_IN:
        reading = reading_of(altered(case, sentence))
        read = reading.ask is not None and not reading.unread
        assert not read or isinstance(derive(reading)[1], NotRead), sentence
