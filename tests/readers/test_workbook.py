"""Papers in workbooks: the same paper as from YAML, complaints by cell, and files that are not what they seem."""

import io
import textwrap
import zipfile
from datetime import date
from typing import Any

import openpyxl
import pytest

from paperaudit.readers.question_file import PaperRead, read_question_file
from paperaudit.readers.workbook import read_workbook
from paperaudit.readers.workbook_cells import MOST_ROWS
from paperaudit.reports.blank import blank_workbook


def workbook(rows: list[list[Any]], cover: list[list[Any]] | None = None) -> bytes:
    made = openpyxl.Workbook()
    sheet = made.worksheets[0]
    sheet.title = "Paper"
    for row in rows:
        sheet.append(row)
    if cover:
        other = made.create_sheet("Cover")
        for row in cover:
            other.append(row)
    written = io.BytesIO()
    made.save(written)
    return written.getvalue()


def read(rows: list[list[Any]], cover: list[list[Any]] | None = None) -> PaperRead:
    return read_workbook(workbook(rows, cover), "test.xlsx")


HEADINGS = [
    "Question",
    "Question total",
    "Question text",
    "Figure",
    "Given",
    "Sketch",
    "Table",
    "Part",
    "Part text",
    "Ask",
    "Options",
    "Answer",
    "Marks",
    "Split",
    "Reasons",
    "Skills",
    "Level",
]


def test_a_workbook_gives_the_same_paper_as_its_question_file() -> None:
    rows = [
        HEADINGS,
        [
            1,
            9,
            "One panel.",
            "triangle ABC\nBC is produced to D",
            "AB = AC; ∠ACD = 112°",
            "A (0, 0); B (60, 4.5)",
            None,
            "a",
            "Calculate ∠ABC.",
            "∠ABC",
            None,
            "68°",
            3,
            "M1 R1 A1",
            "required",
            "exterior angle; sums",
            "routine",
        ],
        [None, None, None, None, None, None, None, "b.i", None, "∠BAC", None, None, 2],
        [None, None, None, None, None, None, None, "b.ii", None, "∠BCA", None, None, 1],
        [2, None, "Pick one.", None, None, None, "mass: 12 | 1.5", None, None, None, "A: 40°\nB: 50°", "B", 1],
    ]
    cover = [
        ["Title", "Term 2 test"],
        ["Minutes", 45],
        ["Total", 14],
        ["Questions on the cover", 2],
        ["Blueprint", None],
    ]
    question_file = read_question_file(
        textwrap.dedent("""\
        title: Term 2 test
        minutes: 45
        total: 14
        cover: {questions: 2}
        questions:
          - number: 1
            total: 9
            text: One panel.
            figure: [triangle ABC, BC is produced to D]
            given: ["AB = AC", "∠ACD = 112°"]
            sketch: {A: [0, 0], B: [60, 4.5]}
            parts:
              - {number: a, text: Calculate ∠ABC., ask: ∠ABC, answer: 68°, marks: 3, split: [M1, R1, A1],
                 reasons: required, skills: [exterior angle, sums], level: routine}
              - number: b
                parts: [{number: i, ask: ∠BAC, marks: 2}, {number: ii, ask: ∠BCA, marks: 1}]
          - {number: 2, text: Pick one., table: {mass: [12, 1.5]}, options: {A: 40°, B: 50°}, answer: B, marks: 1}
        """),
        "test.yaml",
    )
    # Places do not take part in the comparison of papers.
    assert read(rows, cover).whole() == question_file.whole()


def test_values_know_their_cell() -> None:
    paper = read([HEADINGS, [1, *[None] * 10, "68°", 3]]).whole()
    ((_, part),) = paper.parts()
    assert part.answer and part.answer.place.describe() == "test.xlsx, cell Paper!L2"


def test_numbers_arrive_as_they_are_shown() -> None:
    made = openpyxl.Workbook()
    sheet = made.worksheets[0]
    sheet.append(["Question", "Answer", "Marks"])
    sheet.append([1, 0.65, 2.0])
    sheet.append([2, 0.1 + 0.2, 1])
    sheet["B2"].number_format = "0%"
    written = io.BytesIO()
    made.save(written)
    parts = [part for _, part in read_workbook(written.getvalue(), "t.xlsx").whole().parts()]
    assert [part.answer and part.answer.text for part in parts] == ["65%", "0.3"]
    assert parts[0].marks == 2


def test_sections_come_from_their_column() -> None:
    paper = read(
        [
            ["Section", "Section total", "Question", "Marks"],
            ["Section A", 3, 1, 3],
            [None, None, 2, 1],
            ["Section B", None, 3, 2],
        ]
    ).whole()
    assert [(one.title, one.total, len(one.questions)) for one in paper.sections] == [
        ("Section A", 3, 2),
        ("Section B", None, 1),
    ]


def test_the_blank_workbook_reads_and_is_the_same_every_time() -> None:
    paper = read_workbook(blank_workbook(), "blank.xlsx").whole()
    ((_, part),) = paper.parts()
    assert (part.id, part.marks, paper.total) == ("1.a", 3, 3)
    assert blank_workbook() == blank_workbook()


@pytest.mark.parametrize(
    ("rows", "cell", "expected"),
    [
        ([["Question", "Makrs"], [1, 2]], "Paper!B1", "did you mean 'Marks'?"),
        ([["Question", "Marks", "Marks"], [1, 2, 2]], "Paper!C1", "read twice"),
        ([["Question", "Marks"], [1, "three"]], "Paper!B2", "question 1: marks is 'three', expected a whole number"),
        ([["Question", "Part", "Marks"], [1, "a", 1], [1, "a", 2]], "Paper!B3", "the number 'a' was read twice"),
        ([["Question", "Part", "Marks"], [None, "a", 1]], "Paper!B2", "no 'number' was read"),
        (
            [["Question", "Question text", "Part", "Marks"], [1, "x", "a", 1], [None, "y", "b", 1]],
            "Paper!B3",
            "expected Question text in one row only",
        ),
        ([["Question", "Answer", "Marks"], [1, date(2026, 2, 1), 2]], "Paper!B2", "if a fraction was meant"),
        ([["Question", "Answer", "Marks"], [1, "=1+1", 2]], "Paper!B2", "the formula =1+1 was read without a result"),
        ([["Question", "Answer", "Marks"], [1, "#DIV/0!", 2]], "Paper!B2", "the error #DIV/0! was read"),
        ([["Question", "Options", "Marks"], [1, "40° or 50°", 2]], "Paper!B2", "expected keys with values"),
        ([["Question", "Options", "Marks"], [1, "A: 1\nA: 2", 2]], "Paper!B2", "expected keys with values"),
        ([["Question", "Sketch", "Marks"], [1, "A is left of B", 2]], "Paper!B2", "expected keys with values"),
        ([["Question", "Level", "Marks"], [1, "Routin", 2]], "Paper!B2", "did you mean 'routine'?"),
    ],
)
def test_complaints_name_the_cell(rows: list[list[Any]], cell: str, expected: str) -> None:
    found = read(rows).complaints
    assert found
    matching = [one.describe() for one in found if one.place.cell == cell]
    assert len(matching) == 1 and expected in matching[0]


def test_an_unknown_line_of_the_cover_is_complained_of() -> None:
    found = read([["Question", "Marks"], [1, 2]], [["Titel", "x"]]).complaints
    assert [(one.place.cell, "did you mean 'Title'?" in one.message) for one in found] == [("Cover!A1", True)]


def zipped(members: dict[str, bytes]) -> bytes:
    written = io.BytesIO()
    with zipfile.ZipFile(written, "w", zipfile.ZIP_DEFLATED) as archive:
        for name, content in members.items():
            archive.writestr(name, content)
    return written.getvalue()


def with_member(name: str, content: bytes) -> bytes:
    """A sound workbook with one member replaced."""
    sound = workbook([["Question", "Marks"], [1, 2]])
    with zipfile.ZipFile(io.BytesIO(sound)) as archive:
        members = {one: archive.read(one) for one in archive.namelist()}
    return zipped({**members, name: content})


LAUGHS = b'<?xml version="1.0"?><!DOCTYPE x [<!ENTITY a "ha"><!ENTITY b "&a;&a;">]><sst>&b;</sst>'


@pytest.mark.parametrize(
    ("content", "expected"),
    [
        (b"PK\x03\x04 and no more", "not a workbook"),
        (workbook([["Question", "Marks"], [1, 2]])[:2000], "not a workbook"),
        (zipped({"readme.txt": b"hello"}), "a zip file of another kind"),
        (with_member("xl/media/bomb.bin", b"\0" * 40_000_000), "unpacks to far more"),
        (with_member("xl/sharedStrings.xml", LAUGHS), "declares entities"),
        (with_member("xl/sharedStrings.xml", LAUGHS.decode().encode("utf-16")), "or another encoding"),
        (with_member("xl/workbook.xml", b"<nonsense"), "it is broken inside"),
        (with_member("xl/worksheets/sheet1.xml", b"<worksheet><sheetData><row><c r='A1'"), "it is broken inside"),
        (workbook([["Name", "Class"], ["Rope", "9"]]), "no sheet with the headings"),
        (workbook([["Question", "Marks"], *([[1, 2]] * (MOST_ROWS + 5))]), f"more than {MOST_ROWS} rows"),
    ],
    ids=lambda value: "" if isinstance(value, bytes) else str(value),
)
def test_what_is_no_workbook_is_refused(content: bytes, expected: str) -> None:
    found = read_workbook(content, "test.xlsx")
    assert any(expected in one.message for one in found.complaints)
    assert all(one.place.file == "test.xlsx" for one in found.complaints)
