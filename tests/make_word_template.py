"""Builds schemes/templates/scheme/scheme.docx, the Word template that ships: python tests/make_word_template.py.

Departments put their own template in its place, which may name the same fields. Needs python-docx only.
"""

import io
import sys
import zipfile
from pathlib import Path

from docx import Document
from docx.enum.table import WD_TABLE_ALIGNMENT
from docx.enum.text import WD_ALIGN_PARAGRAPH, WD_TAB_ALIGNMENT
from docx.oxml import OxmlElement
from docx.oxml.ns import qn
from docx.shared import Mm, Pt, RGBColor
from docx.table import _Cell
from docx.text.paragraph import Paragraph

TEMPLATE = Path(__file__).resolve().parent.parent / "schemes" / "templates" / "scheme" / "scheme.docx"
TEXT_WIDTH = 170
LABEL_WIDTHS = {"part.label|length <= 3": 9, "part.label|length > 3": 20}
"""Millimetres for a part's number, short or of two levels, with a space behind it."""
INK, SOFT = RGBColor(0x16, 0x16, 0x16), RGBColor(0x55, 0x55, 0x55)
IN_MARKS = "{% if not X %}no marks{% elif X == '1' %}1 mark{% else %}{{ X }} marks{% endif %}"


def element(name: str, **attributes: str) -> OxmlElement:
    made = OxmlElement(name)
    for attribute, value in attributes.items():
        made.set(qn(f"w:{attribute}"), value)
    return made


def bordered(paragraph: Paragraph, **edges: int) -> None:
    """Rules at the edges of a paragraph, in eighths of a point."""
    borders = element("w:pBdr")
    for edge in ("top", "left", "bottom", "between"):
        if edge in edges:
            colour = "A8A8A8" if edges[edge] < 6 else "161616"
            space = "8" if edge == "left" else "4"
            borders.append(element(f"w:{edge}", val="single", sz=str(edges[edge]), space=space, color=colour))
    paragraph._p.get_or_add_pPr().append(borders)


class Builder:
    """Adds paragraphs and tables to a document, in the order of the scheme."""

    def __init__(self) -> None:
        self.document = Document()
        self._page()
        self._styles()

    def _page(self) -> None:
        section = self.document.sections[0]
        section.page_width, section.page_height = Mm(210), Mm(297)
        section.left_margin = section.right_margin = Mm(20)
        section.top_margin, section.bottom_margin = Mm(19), Mm(24)
        section.footer_distance = Mm(10)

    def _styles(self) -> None:
        sizes = {
            "Normal": (11, False, INK),
            "Title": (22, True, INK),
            "Heading 1": (15, True, INK),
            "Heading 2": (13, True, INK),
        }
        for name, (size, bold, colour) in sizes.items():
            style = self.document.styles[name]
            style.font.name, style.font.size, style.font.bold, style.font.color.rgb = "Cambria", Pt(size), bold, colour
            fonts = style.element.get_or_add_rPr().get_or_add_rFonts()
            for theme in ("asciiTheme", "hAnsiTheme", "eastAsiaTheme", "cstheme"):
                fonts.attrib.pop(qn(f"w:{theme}"), None)
            for script in ("ascii", "hAnsi", "eastAsia", "cs"):
                fonts.set(qn(f"w:{script}"), "Cambria")
            style.paragraph_format.space_before = Pt(0)
            style.paragraph_format.space_after = Pt(3)
            style.paragraph_format.line_spacing = 1.08
        title = self.document.styles["Title"].element.get_or_add_pPr()
        for border in title.findall(qn("w:pBdr")):
            title.remove(border)
        self.document.styles["Heading 1"].paragraph_format.space_before = Pt(20)
        self.document.styles["Heading 2"].paragraph_format.space_before = Pt(18)

    def tag(self, text: str) -> None:
        """A paragraph that holds one control tag and vanishes when the template is filled."""
        self.document.add_paragraph(text)

    def paragraph(self, *runs: tuple[str, str], style: str = "Normal", keep: bool = False) -> Paragraph:
        """A paragraph of runs, each a text with the letters of its looks: b, i, s(mall), g(rey), c(aps)."""
        paragraph = self.document.add_paragraph(style=style)
        paragraph.paragraph_format.keep_with_next = keep
        write(paragraph, *runs)
        return paragraph

    def when(self, field: str, *runs: tuple[str, str], style: str = "Normal", keep: bool = True) -> Paragraph:
        """A paragraph that is there only where `field` is."""
        self.tag(f"{{%p if {field} %}}")
        paragraph = self.paragraph(*runs, style=style, keep=keep)
        self.tag("{%p endif %}")
        return paragraph

    def warning(self, field: str) -> None:
        paragraph = self.when(field, (f"{{{{ {field} }}}}", "bs"))
        paragraph.paragraph_format.left_indent = Mm(4)
        bordered(paragraph, left=18)

    def working(self, rows: str, with_reasons: bool) -> None:
        """The table of one derivation's lines."""
        widths = (64, 78, 28) if with_reasons else (142, 28)
        heads = ("Statement", "Reason", "Marks") if with_reasons else ("Working", "Marks")
        table = self.document.add_table(rows=4, cols=len(widths))
        table.alignment = WD_TABLE_ALIGNMENT.CENTER
        table.autofit = False
        for row in table.rows:
            row._tr.get_or_add_trPr().append(element("w:cantSplit"))
            for cell, width in zip(row.cells, widths, strict=True):
                cell.width = Mm(width)
        for column, width in zip(table._tbl.tblGrid.findall(qn("w:gridCol")), widths, strict=True):
            column.set(qn("w:w"), str(round(width * 56.7)))
        table.rows[0]._tr.get_or_add_trPr().append(element("w:tblHeader"))
        for cell, head in zip(table.rows[0].cells, heads, strict=True):
            write(self._cell(cell, head == "Marks", rule=8), (head, "cg"))
            cell.paragraphs[0].paragraph_format.keep_with_next = True
        table.rows[1].cells[0].text = f"{{%tr for row in {rows} %}}"
        self._line(table.rows[2].cells, with_reasons)
        table.rows[3].cells[0].text = "{%tr endfor %}"

    def given_table(self, rows: str) -> None:
        """The table that a question gives; its columns are made when the template is filled."""
        table = self.document.add_table(rows=3, cols=3)
        table.style = "Table Grid"
        table.autofit = True
        table._tbl.tblPr.append(element("w:tblW", w="0", type="auto"))
        table.rows[0].cells[0].text = f"{{%tr for row in {rows} %}}"
        line = table.rows[1].cells
        line[0].text = "{%tc for cell in row %}"
        write(line[1].paragraphs[0], ("{{ cell }}", "s"))
        line[1].paragraphs[0].paragraph_format.space_after = Pt(1)
        line[2].text = "{%tc endfor %}"
        table.rows[2].cells[0].text = "{%tr endfor %}"

    def _line(self, cells: tuple[_Cell, ...], with_reasons: bool) -> None:
        shade = "{% cellbg row.shade %}"
        statement = self._cell(cells[0], False, rule=4)
        write(
            statement,
            (shade + "{% if row.is_answer %}", ""),
            ("{{ row.statement }}", "b"),
            ("{% else %}", ""),
            ("{{ row.statement }}", ""),
            ("{% endif %}", ""),
        )
        if with_reasons:
            write(self._cell(cells[1], False, rule=4), (shade + "{{ row.reason }}", "s"))
        marks = self._cell(cells[-1], True, rule=4)
        write(
            marks,
            (shade + "{{ row.source }}", "sg"),
            ("{% for entry in row.marks %}", ""),
            ("{{ entry.mark }}", "bs"),
            ("{% if entry.note %} {{ entry.note }}{% endif %}", "in"),
            ("{% if not loop.last %}  {% endif %}{% endfor %}", ""),
        )

    def _cell(self, cell: _Cell, to_right: bool, rule: int) -> Paragraph:
        """A cell with a rule below it, and its paragraph, ready to be written in."""
        properties = cell._tc.get_or_add_tcPr()
        borders = element("w:tcBorders")
        borders.append(element("w:bottom", val="single", sz=str(rule), color="161616" if rule > 6 else "A8A8A8"))
        properties.append(borders)
        paragraph = cell.paragraphs[0]
        paragraph.paragraph_format.space_before = paragraph.paragraph_format.space_after = Pt(2)
        if to_right:
            paragraph.alignment = WD_ALIGN_PARAGRAPH.RIGHT
        return paragraph


def write(paragraph: Paragraph, *runs: tuple[str, str]) -> None:
    """Runs behind one another; looks are b(old), i(talic), s(maller), n(ote size), g(rey), c(apitals)."""
    for text, looks in runs:
        run = paragraph.add_run(text)
        run.bold, run.italic = "b" in looks or None, "i" in looks or None
        if "s" in looks:
            run.font.size = Pt(10)
        if "n" in looks or "c" in looks:
            run.font.size = Pt(8.5)
        if "c" in looks:
            run.font.all_caps = True
            run._r.get_or_add_rPr().append(element("w:spacing", val="14"))
        if "g" in looks:
            run.font.color.rgb = SOFT


def field(paragraph: Paragraph, code: str) -> None:
    """A field that Word fills in: PAGE or NUMPAGES."""
    for kind in ("begin", None, "end"):
        run = paragraph.add_run()
        run.font.size, run.font.color.rgb = Pt(8.5), SOFT
        if kind is None:
            instruction = element("w:instrText")
            instruction.text = code
            run._r.append(instruction)
        else:
            run._r.append(element("w:fldChar", fldCharType=kind))


def at_right(paragraph: Paragraph, millimetres: int = TEXT_WIDTH) -> Paragraph:
    paragraph.paragraph_format.tab_stops.add_tab_stop(Mm(millimetres), WD_TAB_ALIGNMENT.RIGHT)
    return paragraph


def hanging(paragraph: Paragraph, millimetres: int) -> Paragraph:
    layout = paragraph.paragraph_format
    layout.left_indent, layout.first_line_indent = Mm(millimetres), Mm(-millimetres)
    layout.tab_stops.add_tab_stop(Mm(millimetres))
    return paragraph


def cover(build: Builder) -> None:
    build.paragraph(("Mark scheme", "cg"))
    build.paragraph(("{{ title }}", ""), style="Title")
    facts = build.paragraph(
        ("{% for name, value in facts %}", ""),
        ("{{ name }}  ", "cg"),
        ("{{ value }}{% if not loop.last %}        {% endif %}{% endfor %}", ""),
    )
    bordered(facts, top=8, bottom=8)
    facts.paragraph_format.space_after = Pt(12)
    build.paragraph(("{{ convention }}. ", "bs"), ("{{ about }}", "s"))
    for entries, looks in (("legend", "bs"), ("notes", "is")):
        build.tag(f"{{%p for entry in {entries} %}}")
        line = hanging(build.paragraph(("{{ entry.code }}\t", looks), ("{{ entry.means }}", "s")), 12)
        line.paragraph_format.space_after = Pt(1)
        build.tag("{%p endfor %}")
    build.warning("warning")


def question(build: Builder) -> None:
    build.tag("{%p for question in questions %}")
    build.when("question.section", ("{{ question.section }}", ""), style="Heading 1")
    heading = at_right(build.paragraph(("Question {{ question.number }}\t", ""), style="Heading 2", keep=True))
    write(heading, (IN_MARKS.replace("X", "question.marks"), "s"))
    heading.runs[-1].bold = False
    bordered(heading, bottom=8)
    build.when("question.text", ("{{ question.text }}", ""))
    build.when("question.statements", ("{{ question.statements }}", "g"))
    build.tag("{%p if question.table %}")
    build.given_table("question.table")
    build.tag("{%p endif %}")
    build.warning("question.warning")
    build.tag("{%p for part in question.parts %}")
    part(build)
    build.tag("{%p endfor %}")
    build.tag("{%p endfor %}")


def part(build: Builder) -> None:
    picture = build.when("part.figure", ("{{ part.figure }}", ""))
    picture.alignment = WD_ALIGN_PARAGRAPH.CENTER
    picture.paragraph_format.space_before = picture.paragraph_format.space_after = Pt(6)
    build.tag("{%p if part.label %}")
    asked = (("{{ part.label }}\t", "b"), ("{{ part.text or part.statements }}\t", ""))
    for length, width in LABEL_WIDTHS.items():
        build.tag(f"{{%p if {length} %}}")
        opening = at_right(hanging(build.paragraph(*asked, keep=True), width))
        write(opening, (IN_MARKS.replace("X", "part.marks"), "s"))
        opening.paragraph_format.space_before = Pt(9)
        opening.paragraph_format.right_indent = Mm(0)
        beside = build.when("part.text and part.statements", ("{{ part.statements }}", "g"))
        beside.paragraph_format.left_indent = Mm(width)
        build.tag("{%p endif %}")
    build.tag("{%p else %}")
    build.when("part.text", ("{{ part.text }}", ""))
    build.when("part.statements", ("{{ part.statements }}", "g"))
    build.tag("{%p endif %}")
    build.when("part.options", ("{% for option in part.options %}{{ option }}        {% endfor %}", ""))
    build.warning("part.warning")
    workings(build, "part.rows", "part.has_reasons")
    answer = build.when("part.answer", ("Answer  ", "cg"), ("{{ part.answer }}", "b"), keep=False)
    answer.paragraph_format.space_before = Pt(5)
    answer._p.get_or_add_pPr().append(element("w:shd", val="clear", color="auto", fill="EDEDED"))
    build.tag("{%p for remark in part.remarks %}")
    build.paragraph(("{{ remark }}", "is"), keep=True).paragraph_format.space_before = Pt(4)
    build.tag("{%p endfor %}")
    build.tag("{%p for way in part.alternatives %}")
    build.paragraph(("Or, another way", "cg"), keep=True).paragraph_format.space_before = Pt(8)
    workings(build, "way.rows", "way.has_reasons")
    build.tag("{%p endfor %}")
    build.tag("{%p for _ in range(part.ruled) %}")
    ruled = build.paragraph(("", ""))
    ruled.paragraph_format.space_after = Pt(0)
    ruled.paragraph_format.line_spacing = Pt(24)
    bordered(ruled, bottom=4, between=4)
    build.tag("{%p endfor %}")


def workings(build: Builder, rows: str, has_reasons: str) -> None:
    build.tag(f"{{%p if {rows} and {has_reasons} %}}")
    build.working(rows, True)
    build.tag("{%p endif %}")
    build.tag(f"{{%p if {rows} and not {has_reasons} %}}")
    build.working(rows, False)
    build.tag("{%p endif %}")


def footer(build: Builder) -> None:
    paragraph = at_right(build.document.sections[0].footer.paragraphs[0])
    paragraph.style = build.document.styles["Normal"]
    bordered(paragraph, top=4)
    write(paragraph, ("{{ cautions[0] }}\tPage ", "ng"))
    field(paragraph, "PAGE")
    write(paragraph, (" of ", "ng"))
    field(paragraph, "NUMPAGES")
    paragraph.paragraph_format.space_after = Pt(0)
    cautions = build.document.sections[0].footer.add_paragraph(style="Normal")
    write(cautions, ("{% for c in cautions[1:] %}{{ c }} {% endfor %}", "ng"))


def template() -> bytes:
    """The template, the same to the byte at every run."""
    build = Builder()
    cover(build)
    question(build)
    footer(build)
    properties = build.document.core_properties
    properties.author = properties.comments = properties.title = ""
    written = io.BytesIO()
    build.document.save(written)
    fixed = io.BytesIO()
    with zipfile.ZipFile(written) as old, zipfile.ZipFile(fixed, "w", zipfile.ZIP_DEFLATED) as new:
        for name in old.namelist():
            new.writestr(zipfile.ZipInfo(name, (1980, 1, 1, 0, 0, 0)), old.read(name), zipfile.ZIP_DEFLATED)
    return fixed.getvalue()


if __name__ == "__main__":
    TEMPLATE.write_bytes(template())
    print(f"wrote {TEMPLATE}", file=sys.stderr)
