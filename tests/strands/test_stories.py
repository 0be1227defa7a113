"""Word problems: what is read and what is not, the answers, and the second check against broken derivations."""

from collections.abc import Mapping
from fractions import Fraction
from pathlib import Path
from time import monotonic
from typing import Any

import pytest
from ruamel.yaml import YAML

from paperaudit.maths.equality import compare
from paperaudit.model.derivation import Derived, Impossible, NotDetermined, NotRead, Outcome, Several
from paperaudit.model.paper import Line, Part, Question
from paperaudit.model.reading import Reading
from paperaudit.strands.registry import derive
from paperaudit.wording.reading import read
from tests.strands.asked import FIXTURES, cases

TABLE = Path(__file__).with_name("told_stories.txt")
UNREAD = Path(__file__).with_name("untold_stories.txt")


def reading_of(text: str, ask: str = "") -> Reading:
    part = Part(id="1", number="", text=Line(text), ask=Line(ask) if ask else None)
    return read(Question("1", (part,)), part)


def outcome_of(text: str, ask: str = "") -> Outcome:
    reading = reading_of(text, ask)
    if reading.ask is None or reading.unread:
        return NotRead("the sentences were not read")
    name, outcome = derive(reading)
    assert name == "stories"
    return outcome


def summary(outcome: Outcome) -> str:
    match outcome:
        case Derived(answers):
            return "; ".join(answer.text.rpartition(": ")[2] for answer in answers)
        case Several(answers):
            return " or ".join(answer.text for answer in answers)
        case Impossible():
            return "impossible"
        case NotDetermined():
            return "not-determined"
        case NotRead():
            return "not-read"


def table(path: Path) -> list[tuple[str, str]]:
    lines = [line.split(" | ", 1) for line in path.read_text(encoding="utf-8").splitlines()]
    return [(text, answer) for answer, text in (line for line in lines if len(line) == 2)]


@pytest.mark.parametrize("case", cases("words"), ids=lambda case: case["text"][:60])
def test_a_case(case: Mapping[str, Any]) -> None:
    outcome = outcome_of(case["text"], case.get("ask", ""))
    assert summary(outcome) == case.get("derived", case.get("verdict"))
    if isinstance(outcome, Derived):
        lines = [step.statement for step in outcome.derivations[0].steps]
        assert lines == case.get("lines", lines)
        assert outcome.derivations[0].confirmed_by
    if "why" in case:
        assert isinstance(outcome, Impossible)
        assert case["why"] in outcome.why[-1]
    if "read_as" in case:
        ask = reading_of(case["text"]).ask
        assert ask is not None
        assert ask.read_as == case["read_as"]


@pytest.mark.parametrize(("text", "answer"), table(TABLE), ids=lambda text: text[:50])
def test_a_story_of_the_table(text: str, answer: str) -> None:
    assert summary(outcome_of(text)) == answer


@pytest.mark.parametrize("text", [line for line in UNREAD.read_text(encoding="utf-8").splitlines() if line])
def test_what_is_not_wholly_understood_is_not_read(text: str) -> None:
    assert summary(outcome_of(text)) == "not-read"


PUBLISHED: list[dict[str, Any]] = YAML(typ="safe", pure=True).load(FIXTURES / "published" / "words.yaml")


@pytest.mark.parametrize("case", PUBLISHED, ids=lambda case: str(case["source"]))
def test_a_published_story(case: Mapping[str, Any]) -> None:
    outcome = outcome_of(case["text"])
    assert isinstance(outcome, Derived | Several)
    assert [answer.text for answer in outcome.answers] == case["derived"]


AGES = "Ann is 3 years older than Ben. In 5 years the sum of their ages will be 35. How old is Ann and how old is Ben?"


@pytest.mark.parametrize(
    ("key", "agreement"),
    [
        ("Ann 14, Ben 11", "agrees"),
        ("Ben is 11 years old and Ann is 14 years old", "agrees"),
        ("14 and 11", "agrees"),
        ("Ann: 11, Ben: 14", "differs"),
        ("11 and 14", "differs"),
        ("14", "differs"),
        ("Ann 14, Ben x", "cannot tell"),
        ("Ann 14 years, Ben 12 years", "differs"),
        ("Cas 14, Ben 11", "cannot tell"),
    ],
)
def test_a_key_is_compared_by_name(key: str, agreement: str) -> None:
    reading, outcome = reading_of(AGES), outcome_of(AGES)
    assert isinstance(outcome, Derived)
    assert reading.ask is not None
    assert compare(key, outcome.answers, reading.ask).agreement.value == agreement


@pytest.mark.parametrize(
    ("key", "agreement"),
    [
        ("15 and 16 or −16 and −15", "agrees"),
        ("15 and 16", "differs"),
        ("15 and 17", "differs"),
        ("−15 and −16; 16 and 15", "agrees"),
        ("fifteen", "cannot tell"),
    ],
)
def test_a_key_with_several_solutions(key: str, agreement: str) -> None:
    text = "The product of two consecutive integers is 240. Find the integers."
    reading, outcome = reading_of(text), outcome_of(text)
    assert isinstance(outcome, Several)
    assert reading.ask is not None
    assert compare(key, outcome.answers, reading.ask).agreement.value == agreement


@pytest.mark.parametrize(
    ("key", "agreement"),
    [
        ("17 and 25", "agrees"),
        ("25; 17", "agrees"),
        ("25 and 18", "differs"),
        ("25", "differs"),
    ],
)
def test_numbers_come_in_any_order(key: str, agreement: str) -> None:
    text = "The sum of two numbers is 42 and their difference is 8. Find the numbers."
    reading, outcome = reading_of(text), outcome_of(text)
    assert isinstance(outcome, Derived)
    assert reading.ask is not None
    assert compare(key, outcome.answers, reading.ask).agreement.value == agreement


BROKEN = [
    AGES,
    "The sum of the digits of a two-digit number is 9. If the digits are reversed, the number increases by 27. "
    "Find the number.",
    "A car leaves a town at 60 km/h. Two hours later another car leaves the same town in the same direction at "
    "90 km/h. How long will it take the second car to catch up with the first car?",
    "Ann can paint a hull in 6 hours and Ben can paint it in 3 hours. How long will they take together?",
    "A boat takes 2 hours to travel 24 km downstream and 3 hours to return. Find the speed of the current.",
    "How many litres of a 20% acid solution must be mixed with 10 litres of a 50% acid solution to get a 30% acid "
    "solution?",
    "The length of a rectangle is 3 cm more than its breadth. The area of the rectangle is 40 cm². Find its "
    "dimensions.",
    "The length of a rectangle is 3 cm more than its breadth. The area of the rectangle is 20 cm². Find its breadth.",
    "A taxi charges a fixed fee of R25 plus R12 per kilometre. A trip costs R145. How long was the trip?",
    "A car travels 180 km. If its speed had been 30 km/h faster, the journey would have taken 1 hour less. "
    "Find its speed.",
    "A farmer has ducks and goats. There are 25 heads and 66 legs. How many goats are there?",
]


@pytest.mark.parametrize("text", BROKEN, ids=lambda text: text[:30])
def test_a_wrong_equation_is_caught_by_the_sentences(text: str, monkeypatch: pytest.MonkeyPatch) -> None:
    """The equations are formed with half of every left side; what they give does not fit the story."""
    from paperaudit.maths import story_equations
    from paperaudit.model.expression import Number
    from paperaudit.model.story import Scaled, Size

    right = story_equations.sides_of

    def wrong(claim: Any) -> tuple[tuple[Size, Size], ...]:
        sides = right(claim)
        return sides if len(sides) != 1 else ((sides[0][0], Scaled(Number(Fraction(2)), sides[0][1])),)

    monkeypatch.setattr(story_equations, "sides_of", wrong)
    outcome = outcome_of(text)
    assert isinstance(outcome, NotRead | Impossible)


def test_a_wrong_solution_is_caught(monkeypatch: pytest.MonkeyPatch) -> None:
    from paperaudit.strands.stories import strand

    right = strand._everything
    monkeypatch.setattr(
        strand, "_everything", lambda form, letters: {key: value + 1 for key, value in right(form, letters).items()}
    )
    outcome = outcome_of(AGES)
    assert isinstance(outcome, NotRead)
    assert "disagree" in outcome.why


@pytest.mark.parametrize(
    "text",
    [
        "The square of " * 60 + "a number is 5. Find the number.",
        "Twice " * 150 + "a number is 5. Find the number.",
        f"{'9' * 60} times a number is 1. Find the number.",
        "Three times a number is 5/0. Find the number.",
        "The sum of " + "Ann, " * 200 + "and Ben is 5. How old is Ann?",
        "and " * 300 + "a number is 5. Find the number.",
    ],
)
def test_a_hostile_story_is_refused_or_solved_at_once(text: str) -> None:
    start = monotonic()
    summary(outcome_of(text))
    assert monotonic() - start < 3


def test_what_is_asked_may_stand_alone() -> None:
    story = "Ann is 3 years older than Ben. The sum of their ages is 25."
    assert summary(outcome_of(story, "How old is Ann?")) == "14 years"
    assert summary(outcome_of(f"{story} How old is Ben?", "How old is Ann?")) == "14 years"


def test_the_unit_and_accuracy_asked_for_are_kept() -> None:
    rope = "A rope 30 m long is cut into two pieces. One piece is 4 m longer than the other."
    assert summary(outcome_of(f"{rope} How long is the longer piece? Give your answer in cm.")) == "1700 cm"
    sail = "Ann sews a sail in 7 hours and Ben sews it in 5 hours."
    assert summary(outcome_of(f"{sail} How long will they take together, to 2 decimal places?")) == "2.92 hours"
