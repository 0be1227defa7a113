"""The grid: LibreOffice's values of its formulas against pandas' own sums over the same parts."""

from fractions import Fraction
from io import BytesIO
from pathlib import Path
from typing import Any

import pandas
import pytest
from openpyxl import load_workbook

from paperaudit.errors import InputError
from paperaudit.marking.blueprint import LEVELS, load
from paperaudit.marking.spread import balance_index, content_aims, level_aims, spread
from paperaudit.model.audited import AuditedPaper
from paperaudit.model.paper import Paper, Section
from paperaudit.reports import grid
from paperaudit.reports.spread_rows import PartRow, PortionRow, frame, part_rows, portion_rows
from paperaudit.reports.workbook_style import as_cell_text
from tests.factories import audited_paper, audited_part
from tests.office import converted, faults_in

HOSTILE = ('=HYPERLINK("http://mast","x")', "+1+1", "-2+3", "@SUM(A1:A9)", ">0", "*", "\t=1", "\r=1", "knots\x00\x0b")

REGATTA = audited_paper(
    audited_part("1.a", 3, ["exterior angle of a triangle", "isosceles triangles"], strand="geometry", ask="∠ABC",
                 proposed=["skills", "level"]),
    audited_part("1.b", 2, ["angle sum of a triangle"], "knowledge", strand="geometry", ask="∠BAC"),
    audited_part("1.c", 4, ["parallel lines: alternate angles", "isosceles triangles", "forming equations"], "complex",
                 strand="geometry", ask="prove that AB ∥ CD", proposed=["level"]),
    audited_part("2", 3, ["linear equations"], strand="algebra", ask="solve 3(x − 4) = 2x + 5"),
    audited_part("3.a", 2, ["percentage of a quantity", "units"], strand="number", ask="65% of 240 litres"),
    audited_part("3.b", None, ["splicing"], "knowledge", strand="number", ask="Which knot is it?"),
    audited_part("4", 7, [], "problem solving"),
    blueprint="grade-8-levels-and-content", total=20, question_totals={"1": 9, "3": 3},
)  # fmt: skip
HOSTILE_PAPER = audited_paper(
    *[audited_part(f"{number}", number, [skill, "kites"], ask=skill) for number, skill in enumerate(HOSTILE, start=1)],
    title="=1+1",
    blueprint="even-spread",
)
NO_MARKS = audited_paper(audited_part("1", None, ["kites"]), blueprint="even-spread")
NO_PARTS = AuditedPaper(Paper("Nothing", (Section(()),), blueprint="grade-9-levels-and-content"), ())
UNREAD = audited_paper(
    audited_part("1", 3, ["linear equations"], "knowledge", strand="equations"),
    audited_part("2", 4, [], None, strand="geometry"),
    audited_part("3", 2, [], None, strand="equations"),
    blueprint="even-spread",
)
NO_BLUEPRINT = audited_paper(audited_part("1", 3, ["kites"]))
CONTENT_ONLY = audited_paper(audited_part("1", 3, ["kites"]), blueprint="grade-8-international-content")
PAPERS = {
    "regatta": REGATTA,
    "hostile": HOSTILE_PAPER,
    "no-marks": NO_MARKS,
    "no-parts": NO_PARTS,
    "no-blueprint": NO_BLUEPRINT,
    "content-only": CONTENT_ONLY,
    "unread": UNREAD,
}


@pytest.fixture(scope="module")
def recalculated(tmp_path_factory: pytest.TempPathFactory) -> dict[str, Path]:
    folder = tmp_path_factory.mktemp("grid")
    return converted(folder, "xlsx", {name: grid.render(paper) for name, paper in PAPERS.items()})


def table(path: Path, sheet: str, first_heading: str) -> pandas.DataFrame:
    """The rows under the heading row that begins so, up to the first empty one."""
    rows = [[cell.value for cell in row] for row in load_workbook(path, data_only=True)[sheet].iter_rows()]
    start = next(number for number, row in enumerate(rows) if row[0] == first_heading)
    end = next((number for number in range(start, len(rows)) if rows[number][0] is None), len(rows))
    width = next((number for number, heading in enumerate(rows[start]) if heading is None), len(rows[start]))
    return pandas.DataFrame([row[:width] for row in rows[start + 1 : end]], columns=rows[start][:width])


def held(found: pandas.DataFrame, key: str, value: str) -> dict[Any, float]:
    return {name: amount for name, amount in zip(found[key], found[value], strict=True) if name != "Total"}


def close(expected: Any) -> Any:
    return pytest.approx({key: float(value) for key, value in expected.items()}, abs=1e-9)


@pytest.mark.parametrize("name", PAPERS)
def test_no_cell_holds_an_error(recalculated: dict[str, Path], name: str) -> None:
    assert faults_in(recalculated[name]) == []


@pytest.mark.parametrize("name", ["regatta", "hostile", "no-blueprint", "content-only"])
def test_sums_equal_pandas(recalculated: dict[str, Path], name: str) -> None:
    paper, path = PAPERS[name], recalculated[name]
    parts, portions = frame(part_rows(paper), PartRow), frame(portion_rows(paper), PortionRow)
    levels = parts.fillna({"marks": 0}).groupby("level")["marks"].sum().reindex(LEVELS, fill_value=0)
    assert held(table(path, "By level", "Level"), "Level", "Marks") == close(levels)
    strands = table(path, "By strand", "Strand").query("Marks > 0")
    assert held(strands, "Strand", "Marks") == close(
        {strand: marks for strand, marks in portions.groupby("strand")["marks"].sum().items() if marks}
    )
    by_skill = portions.groupby(portions["skill"].map(as_cell_text))["marks"].agg(["sum", "count"])
    skills = table(path, "By skill", "Skill")
    assert held(skills, "Skill", "Marks") == close(by_skill["sum"])
    assert held(skills, "Skill", "Parts") == close(by_skill["count"])
    shares = {skill: marks / spread(paper).total for skill, marks in by_skill["sum"].items()}
    assert held(skills, "Skill", "Share") == close(shares)


def test_parts_that_nobody_classed_are_counted_by_themselves(recalculated: dict[str, Path]) -> None:
    levels = table(recalculated["unread"], "By level", "Level")
    assert held(levels, "Level", "Marks") == {
        "knowledge": 3,
        "routine": 0,
        "complex": 0,
        "problem solving": 0,
        "not classed": 6,
    }
    assert held(levels, "Level", "Parts")["not classed"] == 2
    assert held(levels, "Level", "Share")["knowledge"] == 1
    skills = table(recalculated["unread"], "By skill", "Skill")
    assert list(skills["Skill"]) == ["linear equations", "no skill named", "Total"]
    assert held(skills, "Skill", "Marks") == {"linear equations": 3, "no skill named": 6}
    assert "equations" not in list(table(recalculated["unread"], "By strand", "Strand")["Strand"])


@pytest.mark.parametrize("sheet", ["Breakdown", "By level", "By strand", "By skill", "Skill shares"])
def test_every_total_is_the_paper_s(recalculated: dict[str, Path], sheet: str) -> None:
    rows = load_workbook(recalculated["regatta"], data_only=True)[sheet].iter_rows(values_only=True)
    total = next(row for row in rows if row[0] == "Total")
    assert 21 in total  # 3 + 2 + 4 + 3 + 2 + 7, exactly


def test_targets_and_verdicts_are_the_spread_s(recalculated: dict[str, Path]) -> None:
    blueprint = load(REGATTA.paper.blueprint)
    for aims, sheet, key in (
        (level_aims(spread(REGATTA), blueprint), "By level", "Level"),
        (content_aims(spread(REGATTA), blueprint), "By strand", "Content"),
    ):
        found = table(recalculated["regatta"], sheet, key)
        assert held(found, key, "Target") == close({aim.share.name: aim.share.percent / 100 for aim in aims})
        assert held(found, key, "Difference in points") == close({aim.share.name: aim.difference for aim in aims})
        verdicts = {aim.share.name: "yes" if aim.within else "no" for aim in aims}
        assert held(found, key, "Within tolerance") | verdicts == held(found, key, "Within tolerance")


def test_a_share_on_the_edge_of_the_tolerance_is_within(tmp_path: Path) -> None:
    marks = dict(zip(LEVELS, (7, 3, 5, 5), strict=True))  # 35, 15, 25 and 25 per cent of 20; the tolerance is 10 points
    paper = audited_paper(
        *[audited_part(str(number), held, ["kites"], level) for number, (level, held) in enumerate(marks.items())],
        blueprint="even-spread",
    )
    path = converted(tmp_path, "xlsx", {"edge": grid.render(paper)})["edge"]
    assert list(table(path, "By level", "Level")["Within tolerance"])[:4] == ["yes"] * 4


def test_balance_leaves_out_parts_without_a_skill(recalculated: dict[str, Path]) -> None:
    rows = load_workbook(recalculated["regatta"], data_only=True)["By skill"].iter_rows(values_only=True)
    shown = next(row[3] for row in rows if row[0] == "Balance of the skills")
    named = [each.marks for each in spread(REGATTA).skills if each.name != "no skill named"]
    assert shown == pytest.approx(float(balance_index(named) or 0))


def test_printed_totals_against_the_sums(recalculated: dict[str, Path]) -> None:
    found = table(recalculated["regatta"], "Question totals", "Total of")
    assert found[["Total of", "Sum of the parts", "Agrees"]].to_numpy().tolist() == [
        ["Question 1", 9, "yes"],
        ["Question 2", 3, "not printed"],
        ["Question 3", 2, "no"],
        ["Question 4", 7, "not printed"],
        ["The whole paper", 21, "no"],
    ]


def test_a_question_that_is_numbered_twice_is_not_added_to_the_other(tmp_path: Path) -> None:
    first, second = audited_part("1", 3, ["kites"]), audited_part("1", 4, ["kites"], ask="again")
    paper = Paper("Twice", (Section((first.question, second.question)),))
    path = converted(tmp_path, "xlsx", {"twice": grid.render(AuditedPaper(paper, (first, second)))})["twice"]
    assert list(table(path, "Question totals", "Total of")["Sum of the parts"]) == [3, 4, 7]


def test_a_changed_mark_and_level_carry_through(tmp_path: Path) -> None:
    workbook = load_workbook(BytesIO(grid.render(REGATTA)))
    workbook["Breakdown"]["G5"], workbook["Breakdown"]["F5"] = 13, "complex"
    changed = BytesIO()
    workbook.save(changed)
    path = converted(tmp_path, "xlsx", {"changed": changed.getvalue()})["changed"]
    assert held(table(path, "By level", "Level"), "Level", "Marks")["complex"] == 17
    skills = held(table(path, "By skill", "Skill"), "Skill", "Marks")
    assert skills["isosceles triangles"] == pytest.approx(float(Fraction(13, 2) + Fraction(4, 3)))


def test_what_is_proposed_is_marked_in_words(recalculated: dict[str, Path]) -> None:
    found = table(recalculated["regatta"], "Breakdown", "Part").set_index("Part")
    assert found.loc["1.a", ["Skills from", "Level from"]].tolist() == ["proposed", "proposed"]
    assert found.loc["1.c", ["Skills from", "Level from"]].tolist() == ["setter", "proposed"]
    assert pandas.isna(found.loc["4", "Skills from"])


def test_what_looks_like_a_formula_stays_text(recalculated: dict[str, Path]) -> None:
    ours = load_workbook(BytesIO(grid.render(HOSTILE_PAPER)))
    for workbook in (ours, load_workbook(recalculated["hostile"])):
        sheet = workbook["Breakdown"]
        asked = [sheet.cell(row, 3) for row in range(5, 5 + len(HOSTILE))]
        assert [cell.data_type for cell in asked] == ["s"] * len(HOSTILE)
        # The control characters that no cell can hold are shown as �, and a lone carriage return is a line's end.
        assert [cell.value for cell in asked] == [*HOSTILE[:7], "\n=1", "knots��"]
        assert sheet["A1"].data_type == "s" and sheet["A1"].value == "=1+1"
    assert all(cell.quotePrefix for cell in (ours["Breakdown"]["A1"], ours["Breakdown"]["C5"]))


def test_the_same_paper_gives_the_same_bytes() -> None:
    assert grid.render(REGATTA) == grid.render(REGATTA)


def test_an_unknown_blueprint_is_refused() -> None:
    with pytest.raises(InputError, match="even-spread"):
        grid.render(audited_paper(audited_part("1", 3), blueprint="even-spred"))


def test_it_prints_on_a4_across_with_its_headings_on_every_page() -> None:
    for sheet in load_workbook(BytesIO(grid.render(REGATTA))):
        assert sheet.page_setup.orientation == "landscape" and str(sheet.page_setup.paperSize) == "9"
        assert sheet.print_title_rows and sheet.sheet_properties.pageSetUpPr.fitToPage
