"""Questions in the statement language, read and derived as the audit does it, for the tests of strands."""

from collections.abc import Callable, Mapping, Sequence
from pathlib import Path
from typing import Any

from pytest import MonkeyPatch
from ruamel.yaml import YAML

from paperaudit.maths.equality import compare
from paperaudit.maths.parse import read_relation
from paperaudit.model.ask import Ask
from paperaudit.model.derivation import Derived, Impossible, NotDetermined, NotRead, Outcome, Several
from paperaudit.model.fact import Given, Holds
from paperaudit.model.paper import Line, Part, Question
from paperaudit.model.reading import Reading
from paperaudit.strands.registry import derive
from paperaudit.wording.reading import read

FIXTURES = Path(__file__).resolve().parents[2] / "fixtures"
_VERDICTS = {
    Derived: "derived",
    Impossible: "impossible",
    NotDetermined: "not-determined",
    Several: "several",
    NotRead: "not-read",
}


def cases(strand: str) -> list[dict[str, Any]]:
    """The small cases of a strand."""
    loaded: list[dict[str, Any]] = YAML(typ="safe", pure=True).load(FIXTURES / "questions" / f"{strand}.yaml")
    return loaded


def reading_of(ask: str, givens: Sequence[str] = ()) -> Reading:
    """A part with this ask and these givens, read by the wording layer."""
    part = Part(id="1", number="", ask=Line(ask), given=tuple(map(Line, givens)))
    return read(Question("1", (part,)), part)


def derived(ask: str, givens: Sequence[str] = ()) -> tuple[str, Outcome]:
    """The strand that takes a question, and its outcome; fails where the wording was not read."""
    reading = reading_of(ask, givens)
    assert not reading.unread, reading.unread
    return derive(reading)


def reading_by_hand(ask: Ask, givens: Sequence[str] = ()) -> Reading:
    """A reading without the wording layer, for asks that are built node by node."""
    facts = tuple(Given(text, (Holds(read_relation(text)),)) for text in givens)
    part = Part(id="1", number="")
    return Reading(Question("1", (part,)), part, facts, ask)


def texts(outcome: Outcome) -> list[str]:
    """The answers as they are printed."""
    assert isinstance(outcome, Derived | Several), outcome
    return [answer.text for answer in outcome.answers]


def statements(outcome: Outcome) -> list[str]:
    """The lines of the first derivation."""
    assert isinstance(outcome, Derived), outcome
    return [step.statement for step in outcome.derivations[0].steps]


def check(case: Mapping[str, Any], strand: str) -> None:
    """A case of a fixture file against what is derived."""
    name, outcome = derived(case["ask"], case.get("given", ()))
    assert name == strand
    assert _VERDICTS[type(outcome)] == case.get("verdict", "derived"), outcome
    match outcome:
        case Derived():
            assert texts(outcome) == case["derived"]
            assert outcome.derivations[0].confirmed_by
            assert statements(outcome) == case.get("lines", statements(outcome))
            assert list(outcome.derivations[0].givens_used) == case.get("used", case.get("given", []))
        case Impossible():
            assert list(outcome.clash) == case["clash"]
            assert "false" in outcome.why[-1]
        case NotDetermined():
            assert outcome.missing == case["missing"]
            assert len({repr(one.answers) for one in outcome.cases}) == 2
        case NotRead():
            assert case["why"] in outcome.why


def judged_key(key: str, ask: str, givens: Sequence[str] = ()) -> str:
    """What a derived answer says of a key: agrees, differs or cannot tell."""
    reading = reading_of(ask, givens)
    assert reading.ask is not None
    _, outcome = derive(reading)
    assert isinstance(outcome, Derived), outcome
    return compare(key, outcome.answers, reading.ask).agreement.value


def refusal_when_broken(
    monkeypatch: MonkeyPatch,
    module: object,
    name: str,
    breaks: Callable[[Any], Any],
    ask: str,
    givens: Sequence[str] = (),
) -> str:
    """Why an ask that is derived is refused once a piece of its derivation is broken."""
    assert isinstance(derived(ask, givens)[1], Derived)
    monkeypatch.setattr(module, name, breaks(getattr(module, name)))
    outcome = derived(ask, givens)[1]
    assert isinstance(outcome, NotRead), outcome
    return outcome.why
