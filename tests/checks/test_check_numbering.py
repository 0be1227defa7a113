"""Numbering: runs of questions and parts, gaps and repeats, in every way of counting."""

import pytest

from paperaudit.checks import discovered
from paperaudit.checks.grounds.numbering import REPEATED, position, printed, runs
from paperaudit.checks.grounds.words import as_printed
from paperaudit.model.audited import AuditedPaper
from paperaudit.model.finding import Finding
from paperaudit.model.paper import Paper, Part, Question, Section
from paperaudit.readers import build


def paper_of(*ids: str) -> Paper:
    """A paper with parts of these ids; a question is all parts with the same first level in a row."""
    questions: list[Question] = []
    for id in ids:
        number = id.split(".")[0].rstrip(REPEATED)
        part = Part(id, id.split(".")[-1], marks=1)
        same = questions and questions[-1].parts[-1].id.split(".")[0] == id.split(".")[0] and "." in id
        if same:
            questions[-1] = Question(number, (*questions[-1].parts, part))
        else:
            questions.append(Question(number, (part,)))
    return Paper("Spars", (Section(tuple(questions)),))


def found(name: str, paper: Paper) -> list[Finding]:
    return list(discovered()[name].find(AuditedPaper(paper, ())))


def test_levels_that_stay_the_same_count_once() -> None:
    labels = [[member.label for member in run] for run in runs(paper_of("1.a.i", "1.a.ii", "1.b", "2"))]
    assert labels == [["1", "2"], ["a", "b"], ["i", "ii"]]


@pytest.mark.parametrize(
    "ids",
    [
        ("1", "2", "3"),
        ("1.a", "1.b", "2.a", "2.b"),
        ("1.a.i", "1.a.ii", "1.b.i", "1.b.ii", "2"),
        ("1.A", "1.B"),
        ("1.1.1", "1.1.2", "1.2.1", "2.1"),
        tuple(f"1.{letter}" for letter in "abcdefghijk"),
        tuple(f"1.{roman}" for roman in ("i", "ii", "iii", "iv", "v", "vi", "vii", "viii", "ix", "x", "xi")),
        ("1.star", "1.sun"),
    ],
)
def test_sound_numbering_gives_nothing(ids: tuple[str, ...]) -> None:
    assert not found("numbering-gap", paper_of(*ids))
    assert not found("numbering-repeat", paper_of(*ids))


@pytest.mark.parametrize(
    ("ids", "part", "missing"),
    [
        (("1", "3"), "3", "2 is missing"),
        (("2", "3"), "2", "1 is missing"),
        (("1.a", "1.c"), "1.c", "1.b is missing"),
        (("1.b", "1.c"), "1.b", "1.a is missing"),
        (("1.i", "1.ii", "1.v"), "1.v", "1.iii, 1.iv are missing"),
        (("1.a.i", "1.a.iii"), "1.a.iii", "1.a.ii is missing"),
        (("1", "9"), "9", "2, 3, 4, … are missing"),
        (("1", "3", "2"), "3", "2 is printed later"),
    ],
)
def test_a_gap_names_what_is_missing(ids: tuple[str, ...], part: str, missing: str) -> None:
    (finding,) = found("numbering-gap", paper_of(*ids))
    assert finding.part == part
    assert missing in finding.message


@pytest.mark.parametrize(
    ("ids", "repeated"),
    [
        (("1", "2", f"2{REPEATED}"), ["2"]),
        (("1.a", "1.b", "2", f"1{REPEATED}.a", f"1{REPEATED}.b"), ["1"]),
        (("1.a", f"1.a{REPEATED}", "1.b"), ["1.a"]),
    ],
)
def test_a_repeat_is_found_at_its_second_place_by_the_printed_number(ids: tuple[str, ...], repeated: list[str]) -> None:
    findings = found("numbering-repeat", paper_of(*ids))
    assert [as_printed(finding.part) for finding in findings] == repeated
    assert all(REPEATED in finding.part and REPEATED not in finding.message for finding in findings)


def test_the_sign_of_repeated_ids_is_the_readers_own() -> None:
    assert REPEATED == build.REPEATED


@pytest.mark.parametrize(
    "siblings",
    [
        ["a", "b", "c", "d"],
        ["i", "ii", "iii", "iv", "v", "vi", "vii", "viii", "ix", "x", "xi"],
        ["1", "2", "3"],
        ["A", "B"],
    ],
)
def test_labels_and_places_go_both_ways(siblings: list[str]) -> None:
    places = [position(label, siblings) for label in siblings]
    assert places == list(range(1, len(siblings) + 1))
    assert [printed(place, siblings[0], siblings) for place in range(1, len(siblings) + 1)] == siblings


def test_the_cover_is_compared_with_what_can_be_counted() -> None:
    paper = Paper("Spars", paper_of("1", "2").sections, claims=(("questions", 3), ("sections", 1), ("pages", 9)))
    (finding,) = found("cover-differs", paper)
    assert finding.message == "The cover says 3 questions, but there are 2."
