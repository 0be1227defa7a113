"""Blueprints: the shipped ones, faulty ones, and a paper's spread against them."""

from fractions import Fraction
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as some

from paperaudit.errors import InputError
from paperaudit.marking import blueprint
from paperaudit.marking.spread import Aim, balance_index, content_aims, level_aims, portions, spread
from paperaudit.model.audited import AuditedPaper, AuditedPart
from paperaudit.model.derivation import NotRead
from paperaudit.model.paper import CognitiveLevel, Paper, Part, Question, Section
from paperaudit.model.reading import Reading

FAULTLESS = """
title: Half and half
levels: {knowledge: 50, routine: 50, complex: 0, problem solving: 0}
tolerance: 2.5
source: our own
"""


def part(marks: int | None, level: CognitiveLevel, *skills: str, strand: str = "") -> AuditedPart:
    asked = Part(id="1.a", number="a", marks=marks, skills=skills, level=level)
    question = Question(number="1", parts=(asked,))
    reading = Reading(question, asked, (), None)
    return AuditedPart(question, asked, reading, NotRead("made by hand"), "not-read", None, strand, skills, level)


def paper(*parts: AuditedPart) -> AuditedPaper:
    return AuditedPaper(Paper("Rigging", (Section(tuple(held.question for held in parts)),)), parts)


def read(text: str) -> blueprint.Blueprint:
    return blueprint.read("mended", text, Path("mended.yaml"))


@pytest.mark.parametrize("name", blueprint.names())
def test_every_shipped_blueprint_adds_up_and_says_where_it_is_from(name: str) -> None:
    shipped = blueprint.load(name)
    assert shipped.source and shipped.title
    for shares in (shipped.levels, shipped.content):
        assert not shares or sum(share.percent for share in shares) == 100


@pytest.mark.parametrize(
    ("name", "levels"),
    [
        # South Africa, Curriculum and Assessment Policy Statement, 2011: Senior Phase, then Grades 10 to 12.
        ("lower-secondary-levels", (25, 45, 20, 10)),
        ("upper-secondary-levels", (20, 35, 30, 15)),
    ],
)
def test_published_levels(name: str, levels: tuple[int, ...]) -> None:
    assert tuple(share.percent for share in blueprint.load(name).levels) == levels
    assert tuple(share.name for share in blueprint.load(name).levels) == blueprint.LEVELS


def test_published_content() -> None:
    # England, foundation tier: ranges 22-28, 17-23, 22-28, 12-18, 12-18, so each centre and 3 points about it.
    shipped = blueprint.load("general-secondary-foundation-content")
    ranges = [(share.percent - shipped.tolerance, share.percent + shipped.tolerance) for share in shipped.content]
    assert ranges == [(22, 28), (17, 23), (22, 28), (12, 18), (12, 18)]


def test_an_unknown_name_names_the_nearest_and_all() -> None:
    with pytest.raises(InputError, match=r"Did you mean even-spread\?") as caught:
        blueprint.load("even-spred")
    assert all(name in str(caught.value) for name in blueprint.names())


@pytest.mark.parametrize("name", ["../skills", "even-spread.yaml", "/etc/passwd", "", "\0"])
def test_a_name_is_never_a_path(name: str) -> None:
    with pytest.raises(InputError, match="no blueprint"):
        blueprint.load(name)


def test_shares_are_exact() -> None:
    assert read(FAULTLESS).tolerance == Fraction(5, 2)
    thirds = FAULTLESS.replace("50, complex: 0", "33.3, complex: 16.7")
    assert read(thirds).levels[2].percent == Fraction(167, 10)


@pytest.mark.parametrize(
    ("fault", "mended", "complaint"),
    [
        ("routine: 50", "routine: 40", "levels: the shares add up to 90, expected 100"),
        ("routine: 50", "routine: half", "levels: 'half' is no share"),
        ("routine: 50", "routin: 50", "levels: 'routin' is no level"),
        ("routine: 50, ", "", "levels: routine has no share"),
        ("tolerance: 2.5", "tolerance: -1", "tolerance is -1"),
        ("tolerance: 2.5", "tolerance: .nan", "tolerance is nan"),
        ("source: our own", "sauce: our own", "unknown key 'sauce'"),
        ("source: our own", "source: []", "source is missing or is no text"),
        ("levels:", "content:", "content: expected rows"),
        ("source", "content: [{name: n, strands: [numbr], share: 100}]\nsource", "content: 'numbr' is no strand"),
        ("source", "content: [{name: n, strands: [area, area], share: 100}]\nsource", "'area' stands in two rows"),
        ("levels: {knowledge: 50, routine: 50, complex: 0, problem solving: 0}", "", "expected shares under levels"),
        ("title: Half", "title: [Half", "this is not YAML"),
        ("title: Half", "title: !!python/name:os.system Half", "this is not YAML"),
    ],
)
def test_a_faulty_blueprint_is_refused(fault: str, mended: str, complaint: str) -> None:
    assert fault in FAULTLESS
    with pytest.raises(InputError) as caught:
        read(FAULTLESS.replace(fault, mended, 1))
    assert complaint in str(caught.value)
    assert "mended.yaml" in str(caught.value)


def test_every_fault_is_named_at_once() -> None:
    with pytest.raises(InputError) as caught:
        read("levels: {knowledge: 10, routine: 10, complex: 10, problem solving: 10}\nsource: 3\n")
    assert len(caught.value.complaints) == 4  # no title, no source, no tolerance, a sum of 40


def test_a_part_shares_its_marks_among_its_skills() -> None:
    shared = portions(part(4, "routine", "rounding", "Percentages", "splicing", strand="geometry"))
    assert [(held.skill, held.strand, held.marks) for held in shared] == [
        ("rounding", "number", Fraction(4, 3)),
        ("percentages", "ratio and percent", Fraction(4, 3)),
        ("splicing", "geometry", Fraction(4, 3)),
    ]


def test_marks_of_a_part_without_skill_or_marks() -> None:
    held = spread(paper(part(3, "complex"), part(None, "routine", "rounding")))
    assert [(skill.name, skill.marks) for skill in held.skills] == [("no skill named", 3), ("rounding", 0)]
    assert [(strand.name, strand.marks) for strand in held.strands] == [("number", 0), ("other", 3)]


AUDITED_PART = some.builds(
    part,
    some.none() | some.integers(0, 40),
    some.sampled_from(blueprint.LEVELS),
    *[some.sampled_from(["rounding", "area", "kites", "splicing", "whipping", " Kites"])] * 3,
    strand=some.sampled_from(["", "geometry", "rigging"]),
)


@given(some.lists(AUDITED_PART, max_size=12))
def test_no_mark_is_lost_or_made(parts: list[AuditedPart]) -> None:
    held = spread(paper(*parts))
    for slices in (held.levels, held.strands, held.skills):
        assert sum(each.marks for each in slices) == held.total
        assert len({each.name for each in slices}) == len(slices)


def test_aims_at_the_edge_of_the_tolerance() -> None:
    within = {aim.share.name: aim.within for aim in _levels_of(55, 45, 0, 0)}
    assert within == {"knowledge": False, "routine": False, "complex": True, "problem solving": True}
    assert all(aim.within for aim in _levels_of(205, 195, 0, 0))  # 51.25 and 48.75 per cent: 1.25 points off
    assert all(aim.within for aim in _levels_of(21, 19, 0, 0))  # 52.5 per cent: 2.5 points off, the edge itself
    assert {aim.difference for aim in _levels_of(21, 19, 0, 0)} == {Fraction(5, 2), Fraction(-5, 2), 0}


def _levels_of(*marks: int) -> tuple[Aim, ...]:
    parts = [part(held, level) for held, level in zip(marks, blueprint.LEVELS, strict=True)]
    return level_aims(spread(paper(*parts)), read(FAULTLESS))


def test_content_is_weighed_by_group() -> None:
    aims = content_aims(
        spread(paper(part(1, "routine", "rounding", "percentages"), part(3, "routine", "linear equations"))),
        blueprint.load("grade-8-levels-and-content"),
    )
    assert [(aim.share.name, aim.percent) for aim in aims][:2] == [
        ("number", 25),
        ("patterns, functions and algebra", 75),
    ]


def test_a_paper_without_marks_has_no_aims() -> None:
    assert level_aims(spread(paper(part(None, "routine"))), blueprint.load("even-spread")) == ()


@pytest.mark.parametrize(
    ("marks", "index"),
    [
        # Worked out by hand from Webb's formula: differences .15 .05 .05 .15, so 1 − .40/2.
        ((4, 3, 2, 1), Fraction(8, 10)),
        ((5, 5, 5, 5, 5), Fraction(1)),
        ((10, 0), Fraction(1, 2)),
        ((), None),
        ((0, 0), None),
    ],
)
def test_balance_index(marks: tuple[int, ...], index: Fraction | None) -> None:
    assert balance_index(marks) == index
