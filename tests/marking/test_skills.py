"""The shipped skills are complete, each has a strand, and a setter's own never fails."""

from hypothesis import given
from hypothesis import strategies as some

from paperaudit.marking.skills import known, printed, skills, strand_of, strands


def test_every_skill_has_a_strand_and_a_sentence() -> None:
    for skill in skills().values():
        assert skill.strand in strands()
        assert skill.sentence[0].isupper() and skill.sentence.endswith(".")


def test_no_name_stands_twice_however_it_is_capitalised() -> None:
    assert all(known(name.upper()) == skill for name, skill in skills().items())


def test_every_strand_has_a_skill() -> None:
    assert {skill.strand for skill in skills().values()} == set(strands())


def test_a_typographic_apostrophe_is_the_same_skill() -> None:
    assert printed("pythagoras’ Theorem") == "Pythagoras' theorem"


@given(some.text(), some.text())
def test_any_text_has_a_strand(skill: str, strand: str) -> None:
    assert strand_of(skill, strand).strip()
