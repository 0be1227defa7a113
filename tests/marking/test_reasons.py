"""Wordings against the lists they follow, each named beside its check."""

import pytest

from paperaudit.errors import InputError
from paperaudit.marking import reasons
from paperaudit.model.derivation import Reason

# The keys that derivations use for angles, lengths and the algebra between them.
IN_USE = (
    "given",
    "angles-on-a-line",
    "angles-round-a-point",
    "vertically-opposite",
    "alternate-angles",
    "corresponding-angles",
    "co-interior-angles",
    "alternate-angles-converse",
    "corresponding-angles-converse",
    "co-interior-angles-converse",
    "parallel-to-same-line",
    "angle-sum-triangle",
    "exterior-angle-triangle",
    "isosceles-base-angles",
    "isosceles-converse",
    "equilateral-angles",
    "right-triangle-acute-angles",
    "right-angle",
    "adjacent-angles",
    "reflex-angle",
    "angle-bisector",
    "angle-sum-quadrilateral",
    "angle-sum-polygon",
    "exterior-angles-polygon",
    "regular-polygon",
    "parallelogram-opposite-angles",
    "parallelogram-opposite-sides",
    "parallelogram-diagonals",
    "parallelogram-definition",
    "rhombus-sides",
    "rhombus-diagonals-perpendicular",
    "rhombus-diagonals-bisect-angles",
    "rectangle-angles",
    "rectangle-diagonals",
    "square-diagonals",
    "kite-opposite-angles",
    "kite-diagonals",
    "kite-axis",
    "trapezium-parallel-sides",
    "isosceles-trapezium",
    "midpoint",
    "isosceles-median",
    "segment-addition",
    "perimeter",
    "equal-sides-given",
    "common-side",
    "perpendicular-given",
    "construction-parallel",
    "algebra",
    "substitution",
    "simultaneous",
)


@pytest.mark.parametrize("system", reasons.systems())
def test_every_registered_reason_is_worded_once_in_every_system(system: str) -> None:
    wordings = [reasons.word(Reason(name), system) for name in reasons.theorems()]
    assert all(wording.strip() and "{" not in wording and "[" not in wording for wording in wordings)
    assert len(set(wordings)) == len(wordings)


@pytest.mark.parametrize("name", IN_USE)
def test_reasons_in_use_are_registered(name: str) -> None:
    assert reasons.theorem(name).states


def test_the_seventy_two_facts_are_all_there() -> None:
    assert {entry.row for entry in reasons.theorems().values()} == set(range(73))


# Euclid's Elements in Heath's numbering. I.27, I.29 and I.32 checked in printed editions; the others from memory.
@pytest.mark.parametrize(
    ("name", "proposition"),
    [
        ("isosceles-base-angles", "I.5"),
        ("isosceles-converse", "I.6"),
        ("angles-on-a-line", "I.13"),
        ("vertically-opposite", "I.15"),
        ("alternate-angles-converse", "I.27"),
        ("corresponding-angles-converse", "I.28"),
        ("alternate-angles", "I.29"),
        ("angle-sum-triangle", "I.32"),
        ("exterior-angle-triangle", "I.32"),
        ("pythagoras", "I.47"),
        ("cyclic-quadrilateral", "III.22"),
    ],
)
def test_euclid(name: str, proposition: str) -> None:
    assert reasons.theorem(name).euclid == proposition


# Department of Basic Education (South Africa), Mathematics Examination Guidelines Grade 12 (2021), chapter 4,
# as reproduced by a curriculum publisher.
@pytest.mark.parametrize(
    ("name", "wording"),
    [
        ("angles-on-a-line-converse", "adj ∠s supp"),
        ("alternate-angles-converse", "alt ∠s ="),
        ("corresponding-angles-converse", "corresp ∠s ="),
        ("co-interior-angles-converse", "co-int ∠s supp"),
        ("exterior-angle-triangle", "ext ∠ of △"),
        ("isosceles-base-angles", "∠s opp equal sides"),
        ("isosceles-converse", "sides opp equal ∠s"),
        ("congruent-sss", "SSS"),
        ("congruent-rhs", "RHS"),
    ],
)
def test_abbreviated(name: str, wording: str) -> None:
    assert reasons.word(Reason(name), "abbreviated") == wording


# The same guidelines, from memory.
@pytest.mark.parametrize(
    ("reason", "wording"),
    [
        (Reason("angles-on-a-line"), "∠s on a str line"),
        (Reason("alternate-angles", "AB ∥ CD"), "alt ∠s; AB ∥ CD"),
        (Reason("co-interior-angles", "AB ∥ CD"), "co-int ∠s; AB ∥ CD"),
    ],
)
def test_abbreviated_from_memory(reason: Reason, wording: str) -> None:
    assert reasons.word(reason, "abbreviated") == wording


def test_converses_are_kept_apart_from_their_theorems() -> None:
    converses = [entry for entry in reasons.theorems().values() if entry.converse_of]
    assert len(converses) > 15
    for entry in converses:
        for system in reasons.systems():
            assert reasons.word(Reason(entry.name), system) != reasons.word(Reason(entry.converse_of), system)


def test_a_name_that_nobody_words_is_our_bug() -> None:
    with pytest.raises(KeyError, match="by-magic"):
        reasons.word(Reason("by-magic"), "full")


def test_an_unknown_system_names_the_known_and_the_nearest() -> None:
    with pytest.raises(InputError) as caught:
        reasons.word(Reason("given"), "abreviated")
    assert "did you mean 'abbreviated'" in str(caught.value)
    assert "theorem-names" in str(caught.value)


def test_what_the_reason_is_about_is_not_read_as_a_slot() -> None:
    assert reasons.word(Reason("alternate-angles", "[{about}] \\1"), "full").endswith(", [{about}] \\1")


def test_routine_reasons_are_registered() -> None:
    assert "given" in reasons.routine()
    assert reasons.routine() < set(reasons.theorems())
