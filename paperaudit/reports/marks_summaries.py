"""The sheets behind the marks: by skill, the class, the skills of each part, and how to use it all."""

from collections.abc import Iterator, Sequence
from typing import TYPE_CHECKING

from paperaudit.reports import marks_layout as at
from paperaudit.reports import workbook_style as style
from paperaudit.reports.marks_layout import MarksLayout
from paperaudit.reports.workbook_style import CellValue, Figure, Formula
from paperaudit.resources import shipped

if TYPE_CHECKING:
    from openpyxl import Workbook
    from openpyxl.worksheet.worksheet import Worksheet

_SKILLS, _BY_SKILL, _BY_SKILL_PERCENT = "Skills", "By skill", "By skill in per cent"
_FIRST_SKILL_ROW = 5
_FIRST_SKILL_COLUMN = 3
_AVAILABLE_ROW = at.PART_ROW
_MEAN_ROW = at.MAXIMUM_ROW


def write_summaries(workbook: "Workbook", layout: MarksLayout) -> None:
    """Adds the sheets that read the marks, in the order in which they stand."""
    _write_by_skill(workbook.create_sheet(_BY_SKILL), layout, percent=False)
    _write_by_skill(workbook.create_sheet(_BY_SKILL_PERCENT), layout, percent=True)
    _write_class(workbook.create_sheet("Class"), layout)
    _write_skills(workbook.create_sheet(_SKILLS), layout)
    _write_how_to_use(workbook.create_sheet("How to use"))


def _write_by_skill(sheet: "Worksheet", layout: MarksLayout, percent: bool) -> None:
    skills = [skill for skill, _, _ in layout.skills()]
    title = "Per cent of the marks of each skill" if percent else "Marks by skill"
    hint = "Finished learners only. A part with several skills shares its marks among them: see “Skills”."
    style.write_title(sheet, title, [hint], columns=max(_FIRST_SKILL_COLUMN + len(skills) - 1, 7))
    style.write_headings(sheet, at.QUESTION_ROW, ("No.", "Learner", *skills))
    columns = range(_FIRST_SKILL_COLUMN, _FIRST_SKILL_COLUMN + len(skills))
    shown = style.PERCENT if percent else style.SHARED_MARKS
    available = [_available(index) for index in range(len(skills))]
    style.make_total(style.write_row(sheet, _AVAILABLE_ROW, ("", "Marks available", *available)))
    means = [_mean(layout.column(column), shown) for column in columns]
    style.make_total(style.write_row(sheet, _MEAN_ROW, ("", "Mean of the class", *means)))
    for row in layout.rows():
        cells = _percentages(layout, row, columns) if percent else _marks(layout, row, len(skills))
        written = style.write_row(sheet, row, (row - at.FIRST_LEARNER + 1, _name(layout, row), *cells))
        style.make_computed(written)
        style.place_in_cell(written[:1], "center")
        style.place_in_cell(written[1:2], "left")
    sheet.freeze_panes = sheet.cell(at.FIRST_LEARNER, _FIRST_SKILL_COLUMN).coordinate
    style.lay_out(sheet, [5, 26, *[14] * len(skills)], f"{at.QUESTION_ROW}:{_MEAN_ROW}", name_columns=2)


def _available(index: int) -> Formula:
    return Formula(f"={_SKILLS}!$D${_FIRST_SKILL_ROW + index}", style.SHARED_MARKS)


def _marks(layout: MarksLayout, row: int, skills: int) -> Iterator[Formula]:
    state, marks = layout.cell(row, layout.state, sheet=True), layout.across(row, sheet=True)
    for index in range(skills):
        shares = f"{_SKILLS}!{layout.across(_FIRST_SKILL_ROW + index)}"
        yield Formula(f'=IF({state}="{at.FINISHED}",SUMPRODUCT({shares},{marks}),"")', style.SHARED_MARKS)


def _percentages(layout: MarksLayout, row: int, columns: Sequence[int]) -> Iterator[Formula]:
    for column in columns:
        marks = f"'{_BY_SKILL}'!{layout.cell(row, column)}"
        available = f"'{_BY_SKILL}'!{layout.cell(_AVAILABLE_ROW, column)}"
        yield Formula(f'=IF(OR({marks}="",{available}=0),"",{marks}/{available})', style.PERCENT)


def _mean(cells: str, shown: str) -> Formula:
    return Formula(f'=IF(COUNT({cells})=0,"",AVERAGE({cells}))', shown)


def _name(layout: MarksLayout, row: int) -> Formula:
    name = layout.cell(row, at.LEARNER, sheet=True)
    return Formula(f'=IF(LEN({name})=0,"",{name})', "General")


def _write_class(sheet: "Worksheet", layout: MarksLayout) -> None:
    style.write_title(sheet, "The class", ["Absent learners count nowhere; see “How to use”."], columns=8)
    states, final = layout.down(layout.state), layout.down(layout.final)
    marked = f'SUMPRODUCT(1*(RIGHT({states},{len(at.PARTLY)})="{at.PARTLY}"))'
    counts: tuple[tuple[str, str], ...] = (
        ("Learners on the list", f'SUMPRODUCT(1*({states}<>""))'),
        ("Finished", f'COUNTIF({states},"{at.FINISHED}")'),
        ("Not marked, or marked in part", marked),
        ("Absent", f'COUNTIF({states},"absent")'),
        ("To be looked at again", "B5-B6-B7-B8"),
    )
    style.write_headings(sheet, 4, ("Learners", "Number"))
    for row, (label, formula) in enumerate(counts, start=5):
        style.write_row(sheet, row, (label, Formula(f"={formula}")))
    style.write_headings(sheet, 11, ("Finished learners", "Marks", "Per cent"))
    most = layout.cell(at.MAXIMUM_ROW, layout.total, sheet=True)
    for row, (label, function) in enumerate(_MEASURES, start=12):
        measured = Formula(f'=IF(COUNT({final})=0,"",{function}({final}))', style.SHARED_MARKS)
        percent = Formula(f'=IF(OR(B{row}="",{most}=0),"",B{row}/{most})', style.PERCENT)
        style.write_row(sheet, row, (label, measured, percent))
    style.write_headings(sheet, 17, ("Part", "Maximum", "Learners counted", "Mean mark", "Mean in per cent", "Skills"))
    for row, column in enumerate(range(at.FIRST_PART, layout.last_part + 1), start=18):
        style.write_row(sheet, row, _part_results(layout, column, row))
    style.lay_out(sheet, (32, 11, 11, 11, 11, 60), "1:2")


_MEASURES = (("Mean", "AVERAGE"), ("Median", "MEDIAN"), ("Highest", "MAX"), ("Lowest", "MIN"))


def _part_results(layout: MarksLayout, column: int, row: int) -> tuple[CellValue, ...]:
    """One part's maximum, count and means; a finished learner's empty cell is a 0, another's does not count."""
    part = layout.parts[column - at.FIRST_PART]
    marks, states = layout.down(column), layout.down(layout.state)
    counts = f'({states}="{at.FINISHED}")+(RIGHT({states},{len(at.PARTLY)})="{at.PARTLY}")'
    entered = f"SUMPRODUCT(({counts})*ISNUMBER({marks}))"
    zeros = f'SUMPRODUCT(({states}="{at.FINISHED}")*ISBLANK({marks}))'
    return (
        part.part,
        Formula(f"={layout.cell(at.MAXIMUM_ROW, column, sheet=True)}"),
        Formula(f"={entered}+{zeros}"),
        Formula(f'=IF(C{row}=0,"",SUMPRODUCT({counts},{marks})/C{row})', style.SHARED_MARKS),
        Formula(f'=IF(OR(D{row}="",B{row}=0),"",D{row}/B{row})', style.PERCENT),
        "; ".join(part.skills),
    )


def _write_skills(sheet: "Worksheet", layout: MarksLayout) -> None:
    hint = "Each number is the share of a part's marks that goes to the skill."
    style.write_title(sheet, "The skills of each part", [hint], columns=max(layout.last_part, 4))
    ids = [part.part for part in layout.parts]
    style.write_headings(sheet, _FIRST_SKILL_ROW - 1, ("Skill", "Strand", "Parts", "Marks", *ids))
    maxima = layout.across(at.MAXIMUM_ROW, sheet=True)
    for row, (skill, strand, sharing) in enumerate(layout.skills(), start=_FIRST_SKILL_ROW):
        shares: list[CellValue] = [
            Figure(1 / sharing[column], "# ?/?") if column in sharing else None
            for column in range(at.FIRST_PART, layout.last_part + 1)
        ]
        marks = Formula(f"=SUMPRODUCT({layout.across(row)},{maxima})", style.SHARED_MARKS)
        cells = style.write_row(sheet, row, (skill, strand, Formula(f"=COUNT({layout.across(row)})"), marks, *shares))
        style.place_in_cell(cells[4:], "center")
    sheet.freeze_panes = sheet.cell(_FIRST_SKILL_ROW, at.FIRST_PART).coordinate
    widths = [36, 18, 8, 9, *[7.5] * len(ids)]
    style.lay_out(sheet, widths, f"{_FIRST_SKILL_ROW - 1}:{_FIRST_SKILL_ROW - 1}", name_columns=1)


def _write_how_to_use(sheet: "Worksheet") -> None:
    text = shipped("schemes", "templates", "marks-how-to-use.txt").read_text(encoding="utf-8")
    style.write_title(sheet, "How to use this workbook", [], columns=1)
    for row, line in enumerate(text.splitlines(), start=3):
        style.write_note(sheet, row, line, columns=1)
    style.lay_out(sheet, (110,), "1:1")
