"""The marks template: a filled-in class recalculated by LibreOffice, cell by cell against pandas."""

import random
from io import BytesIO
from pathlib import Path
from typing import Any
from zipfile import ZipFile

import pandas
import pytest
from openpyxl import Workbook, load_workbook
from openpyxl.worksheet.worksheet import Worksheet

from paperaudit.errors import InputError
from paperaudit.model.audited import AuditedPaper
from paperaudit.model.paper import Paper, Section
from paperaudit.reports import marks
from paperaudit.reports.spread_rows import PortionRow, frame, portion_rows
from tests.factories import audited_paper, audited_part
from tests.office import converted, faults_in

HOSTILE = ["=1+1", "+cmd", "-2+3", "@SUM(A1:A9)", "\t=1", "\r=1", '=HYPERLINK("http://mast","x")']
NAMES = [*HOSTILE, "Amara Ledge", "Amara Ledge", "Bo Hull-Østergård", *(f"Sailor {number}" for number in range(11, 41))]

REGATTA = audited_paper(
    audited_part("1.a", 3, ["exterior angle of a triangle", "isosceles triangles"], strand="geometry"),
    audited_part("1.b", 2, ["angle sum of a triangle"], strand="geometry"),
    audited_part("1.c", 4, ["parallel lines: alternate angles", "isosceles triangles", "splicing"], strand="geometry"),
    audited_part("2", 3, ["linear equations"], strand="algebra"),
    audited_part("3.a", 2, ["percentage of a quantity", "units"], strand="number"),
    audited_part("3.b.i", 1, ["units"], strand="number"),
    audited_part("4", 7),
    title="=1+1",
)
PARTS = [part.part.id for part in REGATTA.parts]
MOST = pandas.Series({part.part.id: part.part.marks for part in REGATTA.parts}, dtype=float)
QUESTIONS = pandas.Series({part.part.id: f"Q{part.question.number}" for part in REGATTA.parts})

WRONG = {2: "mark out of range", 5: "not a number", 8: "absent, yet has marks", 11: "mark out of range"}
"""Rows that a teacher got past the validation, by pasting."""


def headings(sheet: Worksheet) -> dict[str, int]:
    """The columns of the sheet of marks by their headings."""
    return {str(cell.value): cell.column for cell in sheet[5] if cell.value}


def the_class() -> pandas.DataFrame:
    """What was typed in: marks (NaN for an empty cell), absent, complete; blanks, absentees and slips among them."""
    chance = random.Random(20)
    rows = []
    for number in range(len(NAMES)):
        row: dict[str, Any] = {part: chance.randint(0, int(MOST[part])) for part in PARTS}
        row |= {"absent": "", "complete": ""}
        if number % 4 == 1:
            row |= dict.fromkeys(chance.sample(PARTS, 3), float("nan"))
            row["complete"] = "yes" if number % 8 == 1 else ""
        if number % 9 == 7:
            row |= dict.fromkeys(PARTS, float("nan")) | {"absent": "yes" if number % 2 else ""}
        rows.append(row)
    rows[2]["4"] = 8
    rows[5]["1.b"] = "A"
    rows[8]["absent"] = "yes"
    rows[11]["2"] = 1.5
    rows[14] |= dict.fromkeys(PARTS, float("nan")) | {"complete": "yes"}  # handed in an empty sheet
    rows[17] |= {"absent": "yes", "complete": "yes"} | dict.fromkeys(PARTS, float("nan"))
    return pandas.DataFrame(rows)


def filled(content: bytes, entries: pandas.DataFrame) -> bytes:
    workbook = load_workbook(BytesIO(content))
    sheet = workbook["Marks"]
    columns = headings(sheet)
    for number, row in enumerate(entries.to_dict("records")):
        for key, value in row.items():
            heading = {"absent": "Absent", "complete": "All marked"}.get(str(key), str(key))
            if value != "" and value == value:
                sheet.cell(7 + number, columns[heading]).value = value
    written = BytesIO()
    workbook.save(written)
    return written.getvalue()


@pytest.fixture(scope="module")
def recalculated(tmp_path_factory: pytest.TempPathFactory) -> dict[str, Path]:
    template = marks.render(REGATTA, NAMES)
    no_parts = AuditedPaper(Paper("Nothing", (Section(()),)), ())
    no_maximum = audited_paper(audited_part("1", None, ["kites"]), audited_part("2", 4, ["kites"]))
    files = {
        "filled": filled(template, the_class()),
        "untouched": template,
        "unnamed": marks.render(REGATTA, []),
        "no-parts": marks.render(no_parts, ["Amara Ledge"]),
        "no-maximum": marks.render(no_maximum, ["Amara Ledge"]),
    }
    return converted(tmp_path_factory.mktemp("marks"), "xlsx", files)


@pytest.fixture(scope="module")
def found(recalculated: dict[str, Path]) -> Workbook:
    return load_workbook(recalculated["filled"], data_only=True)


@pytest.fixture(scope="module")
def expected() -> pandas.DataFrame:
    """The same class worked out by pandas from what was typed, by the rules of the sheet "How to use"."""
    entries = the_class()
    typed = entries[PARTS].apply(pandas.to_numeric, errors="coerce").drop(index=list(WRONG))
    entries = entries.drop(index=list(WRONG))
    worked = typed[entries["absent"] != "yes"].copy()
    complete = entries.loc[worked.index, "complete"] == "yes"
    worked.loc[complete] = worked.loc[complete].fillna(0)
    worked["finished"] = worked[PARTS].notna().all(axis=1)
    return worked


@pytest.mark.parametrize("name", ["filled", "untouched", "unnamed", "no-parts", "no-maximum"])
def test_no_cell_holds_an_error(recalculated: dict[str, Path], name: str) -> None:
    assert faults_in(recalculated[name]) == []


def shown(sheet: Worksheet, heading: str) -> list[Any]:
    column = headings(sheet)[heading]
    return [sheet.cell(row, column).value for row in range(7, 7 + len(NAMES))]


def alike(values: list[Any], wanted: pandas.Series) -> None:
    """Compares a column of learners; a learner without a value of pandas' has an empty cell."""
    sought = [wanted.get(number) for number in range(len(NAMES))]
    assert [None if value in ("", None) else value for value in values] == [
        None if value is None or pandas.isna(value) else pytest.approx(float(value)) for value in sought
    ]


def test_totals_of_learners_and_questions(found: Workbook, expected: pandas.DataFrame) -> None:
    sheet = found["Marks"]
    right = [row for row in range(len(NAMES)) if row not in WRONG]
    finals = expected.loc[expected["finished"], PARTS].sum(axis=1)
    alike(shown(sheet, "Final total"), finals)
    alike(shown(sheet, "Per cent"), finals / MOST.sum())
    so_far = expected[PARTS].sum(axis=1, min_count=1)
    totals = shown(sheet, "Total")
    alike([totals[row] if row in right else None for row in range(len(NAMES))], so_far)
    for question, parts in QUESTIONS.groupby(QUESTIONS).groups.items():
        values = shown(sheet, str(question))
        wanted = expected[list(parts)].sum(axis=1, min_count=1)
        alike([values[row] if row in right else None for row in range(len(NAMES))], wanted)


def test_states(found: Workbook, expected: pandas.DataFrame) -> None:
    states = shown(found["Marks"], "State")
    for number, state in enumerate(states):
        if number in WRONG:
            assert state == WRONG[number]
        elif number not in expected.index:
            assert state == "absent"
        elif expected.loc[number, "finished"]:
            assert state == "finished"
        else:
            count = int(expected.loc[number, PARTS].notna().sum())
            assert state == (f"{count} of {len(PARTS)} marked" if count else "not marked")
    assert {"finished", "absent", "not marked", "4 of 7 marked"} <= set(states)


def test_marks_by_skill(found: Workbook, expected: pandas.DataFrame) -> None:
    portions = frame(portion_rows(REGATTA), PortionRow)
    finished = expected[expected["finished"]]
    by_skill, in_percent = found["By skill"], found["By skill in per cent"]
    skills = [cell.value for cell in by_skill[4][2:]]
    assert sorted(skills) == sorted(portions["skill"].unique())
    for column, skill in enumerate(skills, start=3):
        shares = portions[portions["skill"] == skill].set_index("part")["sharing"]
        wanted = (finished[list(shares.index)] / shares.astype(float)).sum(axis=1)
        available = (MOST[list(shares.index)] / shares.astype(float)).sum()
        rows = range(7, 7 + len(NAMES))
        alike([by_skill.cell(row, column).value for row in rows], wanted)
        alike([in_percent.cell(row, column).value for row in rows], wanted / available)
        assert by_skill.cell(5, column).value == pytest.approx(available)
        assert by_skill.cell(6, column).value == pytest.approx(wanted.mean())
        assert in_percent.cell(6, column).value == pytest.approx((wanted / available).mean())


def test_the_class(found: Workbook, expected: pandas.DataFrame) -> None:
    rows = {row[0]: row for row in found["Class"].iter_rows(values_only=True) if row[0]}
    finals = expected.loc[expected["finished"], PARTS].sum(axis=1)
    absent = len(NAMES) - len(expected) - len(WRONG)
    counts = {
        "Learners on the list": len(NAMES),
        "Finished": len(finals),
        "Not marked, or marked in part": len(expected) - len(finals),
        "Absent": absent,
        "To be looked at again": len(WRONG),
    }
    assert {label: rows[label][1] for label in counts} == counts
    measures = {"Mean": finals.mean(), "Median": finals.median(), "Highest": finals.max(), "Lowest": finals.min()}
    for label, measure in measures.items():
        assert rows[label][1] == pytest.approx(measure)
        assert rows[label][2] == pytest.approx(measure / MOST.sum())
    for part in PARTS:
        _, most, count, mean, facility, _ = rows[part][:6]
        assert (most, count) == (MOST[part], expected[part].count())
        assert mean == pytest.approx(expected[part].mean())
        assert facility == pytest.approx(expected[part].mean() / MOST[part])


def test_nothing_is_divided_before_anything_is_marked(recalculated: dict[str, Path]) -> None:
    workbook = load_workbook(recalculated["untouched"], data_only=True)
    assert set(shown(workbook["Marks"], "State")) == {"not marked"}
    for heading in ("Total", "Final total", "Per cent", "Q1"):
        assert set(shown(workbook["Marks"], heading)) <= {None, ""}
    rows = {row[0]: row for row in workbook["Class"].iter_rows(values_only=True) if row[0]}
    assert rows["Mean"][1] in (None, "") and rows["1.a"][2:5] in ((0, None, None), (0, "", ""))


def test_names_stay_as_they_are(recalculated: dict[str, Path]) -> None:
    ours = load_workbook(BytesIO(marks.render(REGATTA, NAMES)))
    for workbook in (ours, load_workbook(recalculated["filled"])):
        cells = [workbook["Marks"].cell(row, 2) for row in range(7, 7 + len(NAMES))]
        assert {cell.data_type for cell in cells} == {"s"}
        assert [cell.value for cell in cells] == [name.replace("\r", "\n") for name in NAMES]  # as XML reads it
        assert workbook["Marks"]["A1"].data_type == "s" and workbook["Marks"]["A1"].value == "=1+1"
    assert all(ours["Marks"].cell(row, 2).quotePrefix for row in range(7, 7 + len(NAMES)))
    copied = load_workbook(recalculated["filled"], data_only=True)["By skill"]
    assert [copied.cell(row, 2).value for row in range(7, 9)] == ["=1+1", "+cmd"]


def test_formulas_are_only_ours() -> None:
    """No part of a name or a title may reach a formula's text."""
    workbook = load_workbook(BytesIO(marks.render(REGATTA, ["=EVIL()", "EVIL", '"&EVIL()&"'])))
    cells = [cell for sheet in workbook for row in sheet.iter_rows() for cell in row]
    texts = [str(cell.value) for cell in cells if cell.data_type == "f"]
    assert texts and not any("EVIL" in text for text in texts)


def test_thirty_numbered_rows_without_names(recalculated: dict[str, Path]) -> None:
    sheet = load_workbook(recalculated["unnamed"], data_only=True)["Marks"]
    names = [sheet.cell(row, 2).value for row in range(7, 38)]
    assert names == [*(f"Learner {number}" for number in range(1, 31)), None]


def test_entries_are_whole_marks_up_to_the_maximum() -> None:
    sheet = load_workbook(BytesIO(marks.render(REGATTA, NAMES)))["Marks"]
    rules = {str(rule.sqref): rule for rule in sheet.data_validations.dataValidation}
    last = 6 + len(NAMES)
    for part, column in zip(PARTS, "EFGHIJK", strict=True):
        rule = rules[f"{column}7:{column}{last}"]
        assert (rule.type, rule.operator, rule.formula1) == ("whole", "between", "0")
        assert rule.formula2 == str(int(MOST[part])) and rule.allow_blank and rule.showErrorMessage
        assert sheet[f"{column}5"].value == part and sheet[f"{column}6"].value == MOST[part]
    for column in "CD":
        assert rules[f"{column}7:{column}{last}"].formula1 == '"yes"'


def test_a_maximum_that_is_not_printed_can_be_filled_in() -> None:
    paper = audited_paper(audited_part("1", None, ["kites"]), audited_part("2", 4, ["kites"]))
    sheet = load_workbook(BytesIO(marks.render(paper, ["Amara Ledge"])))["Marks"]
    assert sheet["E6"].value is None and not sheet["E6"].protection.locked and sheet["F6"].protection.locked
    rules = {str(rule.sqref): rule.formula2 for rule in sheet.data_validations.dataValidation}
    assert rules["E7"] == "$E$6" and rules["F7"] == "4"
    assert "of 1: the paper prints none" in sheet["A2"].value


def test_only_what_a_teacher_fills_in_is_unlocked() -> None:
    workbook = load_workbook(BytesIO(marks.render(REGATTA, NAMES)))
    for sheet in workbook:
        assert sheet.protection.sheet and not sheet.protection.password
        unlocked = [cell.coordinate for row in sheet.iter_rows() for cell in row if not cell.protection.locked]
        if sheet.title == "Marks":
            assert len(unlocked) == len(NAMES) * (3 + len(PARTS))  # name, absent, all marked, the parts
            assert not any(sheet[place].data_type == "f" for place in unlocked)
        else:
            assert unlocked == []


def test_a_cleared_name_counts_nowhere(tmp_path: Path) -> None:
    workbook = load_workbook(BytesIO(marks.render(REGATTA, ["Amara Ledge", "Left the school"])))
    workbook["Marks"]["B8"].value = None
    written = BytesIO()
    workbook.save(written)
    path = converted(tmp_path, "xlsx", {"cleared": written.getvalue()})["cleared"]
    assert faults_in(path) == []
    rows = {row[0]: row for row in load_workbook(path, data_only=True)["Class"].iter_rows(values_only=True) if row[0]}
    assert (rows["Learners on the list"][1], rows["To be looked at again"][1]) == (1, 0)


def test_the_same_class_gives_the_same_bytes_with_fixed_dates() -> None:
    content = marks.render(REGATTA, NAMES)
    assert content == marks.render(REGATTA, NAMES)
    with ZipFile(BytesIO(content)) as archive:
        assert {entry.date_time for entry in archive.infolist()} == {(1980, 1, 1, 0, 0, 0)}
        assert archive.read("docProps/core.xml").count(b"2000-01-01T00:00:00Z") == 2


def test_two_hundred_learners_and_a_limit() -> None:
    sheet = load_workbook(BytesIO(marks.render(REGATTA, ["Amara Ledge"] * 200)))["Marks"]
    assert sheet.cell(206, 2).value == "Amara Ledge" and sheet.cell(207, 2).value is None
    with pytest.raises(InputError, match="at most 1000"):
        marks.render(REGATTA, ["Amara Ledge"] * 1001)


def test_wide_sheets_print_readable_with_the_title_in_the_header() -> None:
    parts = [audited_part(f"1.{letter}", 2, [f"skill {letter}"]) for letter in "abcdefghijklm"]
    book = load_workbook(BytesIO(marks.render(audited_paper(*parts, title="Sails & spars"), ["Amy"])))
    by_skill = book["By skill"]
    assert by_skill.page_setup.fitToWidth == 2
    assert by_skill.print_title_cols == "$A:$B"
    assert "$A$4:" in by_skill.print_area, "the title's cell would be cut at the second page"
    assert by_skill.oddHeader.left.text == "Marks by skill"
    assert (
        "Sails &amp;&amp; spars"
        in ZipFile(BytesIO(marks.render(audited_paper(*parts, title="Sails & spars"), ["Amy"])))
        .read("xl/worksheets/sheet1.xml")
        .decode()
    )
    narrow = load_workbook(BytesIO(marks.render(audited_paper(*parts[:3]), ["Amy"])))["By skill"]
    assert (narrow.page_setup.fitToWidth, narrow.print_area) == (1, "")
