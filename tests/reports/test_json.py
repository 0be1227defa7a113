"""The JSON report: the shape that other programs rely on, in this order of keys."""

import json
from dataclasses import replace

from paperaudit.model.audited import AuditedPaper
from paperaudit.model.derivation import Agreement, Comparison
from paperaudit.model.finding import Finding, Severity
from paperaudit.model.paper import Line, Paper, Section
from paperaudit.model.place import Place
from paperaudit.reports.json_report import render
from tests import sail_loft


def test_a_paper_has_its_counts() -> None:
    told = json.loads(render(sail_loft.paper()))
    assert list(told) == ["paper", "parts", "findings"]
    assert told["paper"] == {
        "title": "Harbour Loft School: Term 2 test",
        "total": 24,
        "marks_sum": 22,
        "parts": 9,
        "rederived": 6,
    }


def test_a_part_has_the_keys_in_their_order() -> None:
    part = sail_loft.base_angle(answer=Line("68°"))
    told = json.loads(render(sail_loft.paper(replace(part, skills=("isosceles triangles",)))))["parts"][0]
    assert list(told) == ["id", "marks", "ask", "verdict", "derived", "stated", "steps", "skills", "level"]
    assert told["id"] == "1.a"
    assert told["derived"] == ["68°"]
    assert told["stated"] == "68°"
    assert told["skills"] == ["isosceles triangles"]
    assert told["steps"][0] == {
        "statement": "∠ACB = 180° − 112° = 68°",
        "reason": "angles on a straight line add up to 180°",
        "uses": ["∠ACD = 112°"],
        "value": "68°",
    }


def test_reasons_are_worded_in_the_papers_own_system() -> None:
    told = json.loads(render(sail_loft.paper(sail_loft.base_angle(), reasons="abbreviated")))
    assert told["parts"][0]["steps"][1]["reason"] == "∠s opp equal sides; AB = AC"


def test_what_was_not_audited_says_why_and_claims_nothing() -> None:
    told = json.loads(render(sail_loft.paper(sail_loft.not_read())))["parts"][0]
    assert told["message"] == "the task asks for a description, which this program cannot derive"
    assert (told["derived"], told["steps"], told["verdict"]) == ([], [], "not-read")


def test_a_key_that_could_not_be_compared_says_why() -> None:
    part = replace(
        sail_loft.base_angle(answer=Line("about the same")),
        verdict="not-read",
        comparison=Comparison(Agreement.CANNOT_TELL, "the stated answer was not read"),
    )
    told = json.loads(render(sail_loft.paper(part)))["parts"][0]
    assert told["message"] == "the stated answer was not read"
    assert told["derived"] == ["68°"]


def test_a_place_on_a_page_is_told_only_where_it_is_known() -> None:
    near = Finding("not-read", Severity.WARNING, "…", "6", place=Place(page=2, box=(72.04, 140.25, 520.0, 166.0)))
    far = Finding("paper-total-differs", Severity.ERROR, "…", because=("4 + 4 = 8",), suggestion="Add again.")
    told = json.loads(render(replace(sail_loft.paper(), findings=(far, near))))["findings"]
    assert list(told[0]) == ["name", "severity", "part", "message", "because", "suggestion"]
    assert list(told[1]) == ["name", "severity", "part", "page", "box", "message", "because", "suggestion"]
    assert told[1]["box"] == [72.0, 140.2, 520.0, 166.0]
    assert (told[0]["part"], told[0]["because"]) == ("", ["4 + 4 = 8"])


def test_nothing_stated_and_nothing_printed_are_null() -> None:
    told = json.loads(render(AuditedPaper(Paper("", (Section(()),)), ())))
    assert told["paper"]["total"] is None
    assert json.loads(render(sail_loft.paper(sail_loft.open_part())))["parts"][0]["stated"] is None


def test_letters_stay_letters_and_the_bytes_stay_the_same() -> None:
    text = render(sail_loft.paper())
    assert "∠ABC" in text
    assert text.endswith("}\n")
    assert text == render(sail_loft.paper())


def test_findings_end_with_file_and_line_where_they_are_known() -> None:
    near = Finding("not-read", Severity.WARNING, "…", "1′.a", place=Place(file="/loft/paper.yaml", line=9))
    cell = Finding("not-read", Severity.WARNING, "…", "6", place=Place(file="paper.xlsx", cell="Paper!C7"))
    told = json.loads(render(replace(sail_loft.paper(), findings=(near, cell))))["findings"]
    assert list(told[0])[-3:] == ["suggestion", "file", "line"]
    assert (told[0]["part"], told[0]["file"], told[0]["line"]) == ("1.a", "paper.yaml", 9)
    assert list(told[1])[-2:] == ["file", "cell"]


def test_a_level_that_nobody_knows_is_null() -> None:
    assert json.loads(render(sail_loft.paper(replace(sail_loft.not_read(), level=None))))["parts"][0]["level"] is None
