"""Questions in several sentences, with lists and tables, read and derived as the audit does it."""

from collections.abc import Iterable, Mapping
from typing import Any

from paperaudit.maths.equality import compare
from paperaudit.model.derivation import Derived, Impossible, NotDetermined, NotRead, Outcome
from paperaudit.model.paper import Line, Part, Question
from paperaudit.model.reading import Reading
from paperaudit.strands.registry import derive
from paperaudit.wording.reading import read
from tests.strands.asked import statements, texts


def question_of(case: Mapping[str, Any]) -> Question:
    """The question of a case: `text` of the question, `part` of its part, `ask`, `given`, `table`."""

    def line(key: str) -> Line | None:
        return Line(case[key]) if key in case else None

    part = Part(id="1", number="", text=line("part"), ask=line("ask"), given=tuple(map(Line, case.get("given", ()))))
    table = tuple((name, tuple(map(str, cells))) for name, cells in case.get("table", {}).items())
    return Question("1", (part,), text=line("text"), table=table)


def reading_of(case: Mapping[str, Any]) -> Reading:
    """The question of a case, read."""
    question = question_of(case)
    return read(question, question.parts[0])


def outcome_of(case: Mapping[str, Any]) -> tuple[str, Outcome]:
    """The strand that takes a case and what it makes of it; fails where the wording was not read."""
    reading = reading_of(case)
    assert reading.ask is not None and not reading.unread, reading.unread
    return derive(reading)


def check(case: Mapping[str, Any], strand: str) -> None:
    """A case of a fixture file against what is derived."""
    reading = reading_of(case)
    verdict = case.get("verdict", "derived")
    if verdict == "unread":
        assert reading.ask is None or reading.unread
        return
    name, outcome = outcome_of(case)
    assert name == case.get("strand", strand)
    match outcome:
        case Derived():
            assert verdict == "derived"
            assert texts(outcome) == case["derived"]
            assert outcome.derivations[0].confirmed_by
            assert statements(outcome) == case.get("lines", statements(outcome))
        case Impossible():
            assert verdict == "impossible", outcome
            assert list(outcome.clash) == case["clash"]
            assert "false" in outcome.why[-1]
        case NotDetermined():
            assert verdict == "not-determined", outcome
            assert outcome.missing == case["missing"]
            assert len({repr(one.answers) for one in outcome.cases}) == 2
        case NotRead():
            assert verdict == "not-read", outcome
            assert case["why"] in outcome.why
        case _:
            raise AssertionError(outcome)


def keyed(listed: Iterable[dict[str, Any]]) -> list[tuple[dict[str, Any], str, str]]:
    """Every key that stands beside a case, with the case and how it compares: agrees, differs, cannot tell."""
    return [
        (case, str(key), agreement)
        for case in listed
        for agreement, said in (("agrees", "agrees"), ("differs", "differs"), ("cannot tell", "unclear"))
        for key in case.get(said, ())
    ]


def check_key(case: Mapping[str, Any], key: str, agreement: str) -> None:
    """A key against what is derived."""
    outcome, asked = outcome_of(case)[1], reading_of(case).ask
    assert isinstance(outcome, Derived) and asked is not None
    found = compare(key, outcome.answers, asked)
    assert found.agreement.value == agreement, found
