"""The grid: a workbook of a paper's marks by skill, strand and cognitive level, against its blueprint."""

from collections.abc import Collection, Iterable, Sequence
from dataclasses import dataclass
from fractions import Fraction
from typing import TYPE_CHECKING

from paperaudit.marking.blueprint import LEVELS, Blueprint, load
from paperaudit.marking.skills import known, strands
from paperaudit.marking.spread import NO_SKILL, rank
from paperaudit.model.audited import AuditedPaper
from paperaudit.reports import workbook_style as style
from paperaudit.reports.spread_rows import PartRow, PortionRow, frame, part_rows, portion_rows, total_rows
from paperaudit.reports.workbook_style import CellValue, Figure, Formula

if TYPE_CHECKING:
    from openpyxl.worksheet.worksheet import Worksheet

_AIMED = ("Target", "Difference in points", "Within tolerance")


def render(audited: AuditedPaper) -> bytes:
    """The grid as an .xlsx file; its sums are formulas over the rows of its first and last sheets.

    A setter's own words are compared with EXACT, since SUMIFS would take ">0" or "*" for a condition.
    Raises InputError where the paper names a blueprint that is not there.
    """
    paper = audited.paper
    blueprint = load(paper.blueprint) if paper.blueprint else None
    parts, portions = part_rows(audited), portion_rows(audited)
    workbook = style.new_workbook(paper.title)
    breakdown = _Rows("Breakdown", first=5, count=len(parts))
    shares = _Rows("Skill shares", first=5, count=len(portions))
    _write_breakdown(workbook.create_sheet(breakdown.sheet), audited, parts, breakdown)
    all_classed = all(part.level for part in parts)
    _write_levels(workbook.create_sheet("By level"), breakdown, blueprint, all_classed)
    _write_strands(workbook.create_sheet("By strand"), portions, breakdown, shares, blueprint)
    _write_skills(workbook.create_sheet("By skill"), portions, breakdown, shares)
    _write_totals(workbook.create_sheet("Question totals"), audited, breakdown)
    _write_shares(workbook.create_sheet(shares.sheet), portions, breakdown, shares)
    return style.saved(workbook)


@dataclass(frozen=True, slots=True)
class _Rows:
    """The `count` rows of a sheet, from row `first` on, that formulas on other sheets add up."""

    sheet: str
    first: int
    count: int

    @property
    def behind(self) -> int:
        """The row under the last one; a paper without parts keeps one empty row, or its total would add up itself."""
        return self.first + max(self.count, 1)

    def column(self, letter: str) -> str:
        """The whole column."""
        return self.slice(letter, 0, self.behind - self.first)

    def slice(self, letter: str, start: int, behind: int) -> str:
        """The rows from `start` to before `behind`, counted from 0."""
        return f"'{self.sheet}'!${letter}${self.first + start}:${letter}${self.first + behind - 1}"

    def cell(self, letter: str, row: int) -> str:
        """One row, counted from 0."""
        return f"'{self.sheet}'!${letter}${self.first + row}"


def _write_breakdown(sheet: "Worksheet", audited: AuditedPaper, parts: Sequence[PartRow], rows: _Rows) -> None:
    hint = "Change a mark or a level here, and the other sheets follow. What is “proposed” the setter did not say."
    style.write_title(sheet, audited.paper.title, [hint], columns=9)
    headings = ("Part", "Question", "What is asked", "Skills", "Strand", "Level", "Marks", "Skills from", "Level from")
    style.write_headings(sheet, rows.first - 1, headings)
    for at, part in enumerate(parts, start=rows.first):
        of_skills = ("; ".join(part.skills), "; ".join(part.strands))
        words = (part.part, part.question, part.asked, *of_skills, part.level)
        cells = style.write_row(sheet, at, (*words, part.marks, part.skills_from, part.level_from))
        style.place_in_cell([cells[0], cells[1], cells[7], cells[8]], "center")
    style.allow_only(sheet, f"F{rows.first}:F{rows.behind - 1}", choices=LEVELS)
    total = Formula(f"=SUM({rows.column('G')})")
    style.make_total(style.write_row(sheet, rows.behind, ("Total", "", "", "", "", "", total, "", "")))
    style.stress(sheet, f"H{rows.first}:I{rows.behind}", f'H{rows.first}="proposed"')
    sheet.freeze_panes = f"B{rows.first}"
    style.lay_out(sheet, (8, 10, 32, 34, 17, 16, 9, 11, 11), f"1:{rows.first - 1}")


def _write_levels(sheet: "Worksheet", breakdown: _Rows, blueprint: Blueprint | None, all_classed: bool) -> None:
    targets = {share.name: share.percent for share in blueprint.levels} if blueprint else {}
    row = style.write_title(sheet, "Marks by cognitive level", _aim_lines(blueprint, targets, "levels"), columns=7)
    total, classed = f"SUM({breakdown.column('G')})", f"SUM($C${row + 1}:$C${row + len(LEVELS)})"
    style.write_headings(sheet, row, ("Level", "Parts", "Marks", "Share", *(_AIMED if targets else ())))
    for at, level in enumerate(LEVELS, start=row + 1):
        held = (
            level,
            Formula(f"=COUNTIF({breakdown.column('F')},A{at})"),
            Formula(f"=SUMIFS({breakdown.column('G')},{breakdown.column('F')},A{at})"),
        )
        _write_aimed(sheet, at, (*held, _share_of(f"C{at}", classed)), targets.get(level), blueprint)
    behind = row + 1 + len(LEVELS)
    parts = f"SUM($B${row + 1}:$B${row + len(LEVELS)})"
    if not all_classed:
        others = Formula(f"=COUNTA({breakdown.column('A')})-{parts}")
        style.write_row(sheet, behind, ("not classed", others, Formula(f"={total}-{classed}")))
        behind += 1
    last = ("Total", Formula(f"=SUM(B{row + 1}:B{behind - 1})"), Formula(f"={total}"))
    style.make_total(style.write_row(sheet, behind, (*last, _share_of(classed, classed))))
    if not all_classed:
        note = "Shares are of the marks that are classed. Pick the missing levels on the sheet Breakdown."
        style.write_note(sheet, behind + (3 if targets else 1), note, columns=7)
    if targets and blueprint:
        _write_source(sheet, row + 1, behind + 1, blueprint)
    style.lay_out(sheet, (34, 10, 10, 10, 10, 14, 12), f"1:{row}")


def _write_strands(
    sheet: "Worksheet", portions: Sequence[PortionRow], breakdown: _Rows, shares: _Rows, blueprint: Blueprint | None
) -> None:
    content = blueprint.content if blueprint else ()
    row = style.write_title(sheet, "Marks by strand", _aim_lines(blueprint, content, "strands"), columns=7)
    total = f"SUM({breakdown.column('G')})"
    style.write_headings(sheet, row, ("Strand", "Skills", "Marks", "Share"))
    skills = _skills_by_strand(portions)
    names = [*strands(), *(name for name in skills if name not in strands())]
    for at, name in enumerate(names, start=row + 1):
        held = Formula(f"=SUMPRODUCT(1*EXACT({shares.column('C')},A{at}),{shares.column('E')})", style.SHARED_MARKS)
        style.write_row(sheet, at, (name, skills.get(name, ""), held, _share_of(f"C{at}", total)))
    behind = row + 1 + len(names)
    last = ("Total", "", Formula(f"={total}"), _share_of(f"C{behind}", total))
    style.make_total(style.write_row(sheet, behind, last))
    if content and blueprint:
        _write_content(sheet, behind + 2, shares, total, blueprint)
    style.lay_out(sheet, (32, 56, 10, 10, 10, 14, 12), f"1:{row - 1}")


def _skills_by_strand(portions: Sequence[PortionRow]) -> dict[str, str]:
    named = frame(portions, PortionRow).drop_duplicates(["strand", "skill"])
    return {str(strand): "; ".join(skills) for strand, skills in named.groupby("strand", sort=False)["skill"]}


def _write_content(sheet: "Worksheet", row: int, shares: _Rows, total: str, blueprint: Blueprint) -> None:
    """The blueprint's own groups of strands, below the strands one by one."""
    style.write_headings(sheet, row, ("Content", "Strands", "Marks", "Share", *_AIMED))
    for at, share in enumerate(blueprint.content, start=row + 1):
        added = "+".join(f'SUMIFS({shares.column("E")},{shares.column("C")},"{name}")' for name in share.members)
        held = (share.name, "; ".join(share.members), Formula(f"={added}", style.SHARED_MARKS))
        _write_aimed(sheet, at, (*held, _share_of(f"C{at}", total)), share.percent, blueprint)
    _write_source(sheet, row + 1, row + 1 + len(blueprint.content), blueprint)


def _write_skills(sheet: "Worksheet", portions: Sequence[PortionRow], breakdown: _Rows, shares: _Rows) -> None:
    line = "A part with several skills shares its marks equally among them: see “Skill shares”."
    row = style.write_title(sheet, "Marks by skill", [line], columns=6)
    total = f"SUM({breakdown.column('G')})"
    style.write_headings(sheet, row, ("Skill", "Strand", "Parts", "Marks", "Share", "What a pupil does"))
    pairs = _skills_with_strands(portions)
    for at, (skill, strand) in enumerate(pairs, start=row + 1):
        same = f"1*EXACT({shares.column('B')},A{at})"
        if skill != NO_SKILL:
            same += f"*EXACT({shares.column('C')},B{at})"
        shipped = known(skill)
        values: tuple[CellValue, ...] = (
            skill,
            strand,
            Formula(f"=SUMPRODUCT({same})"),
            Formula(f"=SUMPRODUCT({same},{shares.column('E')})", style.SHARED_MARKS),
            _share_of(f"D{at}", total),
            shipped.sentence if shipped else "",
        )
        style.write_row(sheet, at, values)
    behind = row + 1 + len(pairs)
    last = ("Total", "", "", Formula(f"={total}"), _share_of(f"D{behind}", total), "")
    style.make_total(style.write_row(sheet, behind, last))
    named = [skill for skill, _ in pairs if skill != NO_SKILL]
    if named:
        marks = f"$D${row + 1}:$D${row + len(named)}"
        balance = f'=IF(SUM({marks})=0,"",1-SUMPRODUCT(ABS(1/{len(named)}-{marks}/SUM({marks})))/2)'
        style.write_row(sheet, behind + 2, ("Balance of the skills", "", "", Formula(balance, style.SHARED_MARKS)))
        for offset, note in enumerate(_BALANCE_NOTES, start=3):
            style.write_note(sheet, behind + offset, note, columns=6)
    sheet.freeze_panes = f"B{row + 1}"
    style.lay_out(sheet, (36, 20, 9, 10, 10, 55), f"1:{row}")


def _skills_with_strands(portions: Sequence[PortionRow]) -> list[tuple[str, str]]:
    """Each skill with its strand once, by strand; what stands for no skill comes last, once, whatever the strand."""
    pairs = dict.fromkeys((held.skill, held.strand) for held in portions)
    named = sorted((pair for pair in pairs if pair[0] != NO_SKILL), key=lambda pair: rank(pair[1]))
    return [*named, *([(NO_SKILL, "")] if len(named) < len(pairs) else [])]


_BALANCE_NOTES = (
    "1 means the same marks for every skill. From 0.70 on a paper counts as balanced, from 0.60 to 0.69 as weakly so.",
    "The index and its limits are Webb's (Criteria for Alignment of Expectations and Assessments, 1997).",
)


def _write_totals(sheet: "Worksheet", audited: AuditedPaper, breakdown: _Rows) -> None:
    line = "A total that is not printed is not compared."
    row = style.write_title(sheet, "Printed totals against the sums", [line], columns=6)
    style.write_headings(sheet, row, ("Total of", "Parts", "Printed total", "Sum of the parts", "Difference", "Agrees"))
    totals = total_rows(audited)
    for at, held in enumerate(totals, start=row + 1):
        added = f"SUM({breakdown.slice('G', held.first, held.behind)})" if held.behind > held.first else "0"
        values: tuple[CellValue, ...] = (
            {"question": "Question ", "section": "Section ", "paper": "The whole paper"}[held.kind] + held.name,
            held.behind - held.first,
            held.printed,
            Formula(f"={added}"),
            Formula(f'=IF(C{at}="","",D{at}-C{at})', style.MARKS_OFF),
            Formula(f'=IF(C{at}="","not printed",IF(D{at}=C{at},"yes","no"))'),
        )
        cells = style.write_row(sheet, at, values)
        style.place_in_cell(cells[5:], "center")
        if held.kind != "question":
            style.make_total(cells)
    style.stress(sheet, f"F{row + 1}:F{row + len(totals)}", f'F{row + 1}="no"')
    sheet.freeze_panes = f"A{row + 1}"
    style.lay_out(sheet, (34, 10, 12, 14, 12, 14), f"1:{row}")


def _write_shares(sheet: "Worksheet", portions: Sequence[PortionRow], breakdown: _Rows, rows: _Rows) -> None:
    style.write_title(sheet, "How each part's marks are shared", ["A row for each skill of a part."], columns=5)
    style.write_headings(sheet, rows.first - 1, ("Part", "Skill", "Strand", "Of the part's marks", "Marks"))
    for at, held in enumerate(portions, start=rows.first):
        marks = Formula(f"=N({breakdown.cell('G', held.row)})/{held.sharing}", style.SHARED_MARKS)
        cells = style.write_row(sheet, at, (held.part, held.skill, held.strand, _worded(held.sharing), marks))
        style.place_in_cell([cells[0], cells[3]], "center")
    total = Formula(f"=SUM({breakdown.column('G')})")
    style.make_total(style.write_row(sheet, rows.behind, ("Total", "", "", "", total)))
    sheet.freeze_panes = f"A{rows.first}"
    style.lay_out(sheet, (9, 40, 22, 14, 10), f"1:{rows.first - 1}")


def _worded(sharing: int) -> str:
    return "all" if sharing == 1 else str(Fraction(1, sharing))


def _share_of(cell: str, total: str) -> Formula:
    return Formula(f'=IF({total}=0,"",{cell}/{total})', style.PERCENT)


def _write_aimed(
    sheet: "Worksheet", row: int, values: Iterable[CellValue], target: Fraction | None, blueprint: Blueprint | None
) -> None:
    """A row with its share in column D and, where there is a target, how far off the share is."""
    cells = style.write_row(sheet, row, values)
    if target is None or blueprint is None:
        return
    within = f"ROUND(ABS(F{row}),6)<={float(blueprint.tolerance):g}"  # to six places, or 2.5 may miss 2.5
    aimed = (
        Figure(float(target) / 100, style.PERCENT),
        Formula(f'=IF(D{row}="","",100*(D{row}-E{row}))', style.POINTS_OFF),
        Formula(f'=IF(D{row}="","",IF({within},"yes","no"))'),
    )
    style.place_in_cell(style.write_row(sheet, row, aimed, len(cells) + 1)[2:], "center")


def _write_source(sheet: "Worksheet", first: int, behind: int, blueprint: Blueprint) -> None:
    """Stresses what is off target in rows `first` to before `behind`, and says where the targets come from."""
    style.stress(sheet, f"G{first}:G{behind - 1}", f'G{first}="no"')
    style.write_note(sheet, behind + 1, f"Source of the targets: {blueprint.source}", columns=7)


def _aim_lines(blueprint: Blueprint | None, aims: Collection[object], what: str) -> list[str]:
    if blueprint is None:
        return ["The paper names no blueprint, so no targets are shown."]
    if not aims:
        return [f"Blueprint: {blueprint.title}. It sets no targets for {what}."]
    tolerance = f"{float(blueprint.tolerance):g}"
    return [f"Blueprint: {blueprint.title}. Within tolerance means at most {tolerance} points off the target."]
