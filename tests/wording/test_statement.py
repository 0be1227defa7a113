"""Statements in every spelling, from `fixtures/questions/wording.yaml`: each spelling, the same facts."""

from unicodedata import normalize

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from ruamel.yaml import YAML

from paperaudit.model.fact import Given, Origin
from paperaudit.model.place import Place
from paperaudit.model.reading import Unread
from paperaudit.resources import shipped
from paperaudit.wording import read_statement
from tests.wording.compact import fact_line

CASES = YAML(typ="safe").load(shipped("fixtures", "questions", "wording.yaml"))
SAID = [(case["title"], said, case["facts"]) for case in CASES["statements"] for said in case["said"]]
ONE_CLAUSE = [
    said
    for _, said, facts in SAID
    if len(facts) == 1 and said[0] in "∠ABDE" and "." not in said and not facts[0].startswith(("circle", "halves"))
]  # what is said of "the circle" comes together; the foot of a perpendicular bisector may be named before


@pytest.mark.parametrize(("title", "said", "facts"), SAID)
def test_a_statement_amounts_to_its_facts(title: str, said: str, facts: list[str]) -> None:
    found = read_statement(said)
    assert isinstance(found, Given), found
    assert sorted(map(fact_line, found.facts)) == sorted(facts), title


def test_every_kind_of_statement_has_three_spellings() -> None:
    assert [case["title"] for case in CASES["statements"] if len(set(case["said"])) < 3] == []


@pytest.mark.parametrize("case", CASES["unread"], ids=lambda case: case["said"])
def test_what_cannot_be_read_says_where_and_what_is_near(case: dict[str, str]) -> None:
    found = read_statement(case["said"], Place("sails.yaml", 3))
    assert isinstance(found, Unread)
    assert found.text[found.start :] == case["at"]
    assert found.nearest == case.get("nearest", "")
    assert found.expected == case.get("expected", found.expected) != ""
    assert found.place.line == 3


def test_a_given_keeps_the_teachers_own_words_and_place() -> None:
    found = read_statement("  AB  =  AC ", Place("sails.yaml", 12), "figure")
    assert isinstance(found, Given)
    assert (found.text, found.origin, found.place.line) == ("AB  =  AC", Origin.FIGURE, 12)


@given(st.sampled_from(ONE_CLAUSE), st.sampled_from(ONE_CLAUSE), st.sampled_from([" and ", "; ", ", and ", ", where "]))
@settings(max_examples=150, deadline=None)
def test_joined_clauses_amount_to_both(first: str, second: str, joint: str) -> None:
    joined, apart = read_statement(first + joint + second), [read_statement(first), read_statement(second)]
    assert isinstance(joined, Given), joined
    facts = [fact for one in apart if isinstance(one, Given) for fact in one.facts]
    assert joined.facts == tuple(dict.fromkeys(facts))


@given(st.sampled_from(SAID), st.permutations("ABCDEFGHKLMNOPQRSTUVWXYZ"))
@settings(max_examples=150, deadline=None)
def test_renaming_the_points_renames_the_facts(case: tuple[str, str, list[str]], names: list[str]) -> None:
    _, said, facts = case
    old = "ABCDEFGHKLMNOPQRSTUVWXYZ"
    fixed = ("no money", "sector", "without letters", "compass", "radius", "radii")  # letters there mean something
    assume(not any(words in case[0] for words in fixed) and said[:2] != "A ")
    said = normalize("NFD", said)
    table = str.maketrans(old, "".join(names))
    renamed = "".join(
        letter.translate(table) if letter in old and not said[at + 1 : at + 2].islower() else letter
        for at, letter in enumerate(said)
    )
    facts = [normalize("NFD", fact) for fact in facts]
    found = read_statement(renamed)
    assert isinstance(found, Given), found
    assert sorted(map(fact_line, found.facts)) == sorted(fact.translate(table) for fact in facts)
