"""Sentences end where a teacher's do."""

import pytest

from paperaudit.wording.sentences import is_mathematics, sentences


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("AB = 7.5 cm. Find BC.", ["AB = 7.5 cm.", "Find BC."]),
        ("In Fig. 1, AB = AC. Find ∠B.", ["In Fig. 1, AB = AC.", "Find ∠B."]),
        ("AD meets BC at P. Find x on p. 3.", ["AD meets BC at P.", "Find x on p. 3."]),
        ("AB = 7.5. BC = 3.", ["AB = 7.5.", "BC = 3."]),
        ("Round to 2 d.p. Find x.", ["Round to 2 d.p. Find x."]),
        ("Is AB ∥ CD? Give a reason.", ["Is AB ∥ CD?", "Give a reason."]),
        ("AB = AC.\n\nFind ∠B", ["AB = AC.", "Find ∠B"]),
        ("ropes, e.g. A and B, are used. x = 3", ["ropes, e.g. A and B, are used.", "x = 3"]),
        ("∠A = 40°.∠B = 50°.", ["∠A = 40°.∠B = 50°."]),
        ("", []),
        (" . ", ["."]),
    ],
)
def test_sentences(text: str, expected: list[str]) -> None:
    assert [sentence.text for sentence in sentences(text)] == expected


def test_a_sentence_knows_where_it_starts() -> None:
    text = "  AB = AC.  Find ∠B."
    assert [text[one.start :].startswith(one.text) for one in sentences(text)] == [True, True]


@pytest.mark.parametrize(
    "scenery",
    [
        "The sketch shows one panel of a sail.",
        "A sail is cut in the shape of a triangle.",
        "I have a boat.",
        "The mast was painted on Monday.",
        "A loft sells rope.",
        "The diagram is NOT TO SCALE.",
        "A mast is 12 m long and weighs 80 kg.",
        "It was sewn in 2026, on 3-4 days a week.",
        "A well-known loft makes T-shaped sails.",
        "A crew of 8 shares a 5-day trip.",
    ],
)
def test_scenery(scenery: str) -> None:
    assert not is_mathematics(scenery)


@pytest.mark.parametrize(
    "mathematics",
    [
        "AB flutters past AC.",
        "∠A is small",
        "x = 5",
        "Hence solv 2x + 3y over z.",
        "The rope is n + 4 long.",
        "The area is k² here.",
        "It holds 3x sails.",
        "Consider log(x) here.",
        "Also 7 − y is known.",
        "The point D is somewhere.",
        "line m is parallel to line n",
        "The radius of the circle is 5 cm.",
        "The sail ABC is red.",
    ],
)
def test_mathematics(mathematics: str) -> None:
    assert is_mathematics(mathematics)
