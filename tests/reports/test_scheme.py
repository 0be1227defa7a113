"""Mark schemes read back from what was written: every ending, hostile text, a department's own template."""

import io
import re
import subprocess
import sys
import zipfile
from dataclasses import replace
from html.parser import HTMLParser
from pathlib import Path
from types import ModuleType

import pdfplumber
import pytest
from docx import Document

from paperaudit.audit import audit_read
from paperaudit.errors import InputError
from paperaudit.model.audited import AuditedPaper, AuditedPart
from paperaudit.model.derivation import Answer, Derived, Reason, Step, StepKind
from paperaudit.model.paper import Line, Paper
from paperaudit.readers.question_file import read_question_file
from paperaudit.reports.scheme import ENDINGS, render
from paperaudit.reports.scheme_contents import contents
from paperaudit.reports.scheme_spacing import NO_BREAK, kept_together
from paperaudit.reports.scheme_text import plain
from paperaudit.reports.scheme_words import answers_in_words, statements_beside
from paperaudit.resources import shipped
from tests import make_word_template, sail_loft
from tests.office import office

DRAWING = (
    '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 240 170" width="240" height="170">'
    '<path d="M30 140 L150 140 L90 30 Z" fill="none" stroke="black"/>'
    '<text x="16" y="152" font-size="14">B</text></svg>'
)
HOSTILE = '#panic("x") $a$ \\ ] [ </text><script>alert(1)</script> & {{ 7*7 }} {% raw %} |*_x_*| `#sys.inputs`'


@pytest.fixture(autouse=True)
def drawing(monkeypatch: pytest.MonkeyPatch) -> None:
    """A fixed drawing, so that these tests are about the scheme alone."""
    from paperaudit import reports

    figure = ModuleType("paperaudit.reports.figure")

    def render_figure(part: AuditedPart, *, asked: bool = True) -> str:
        return DRAWING if getattr(part.outcome, "figure", ()) else ""

    figure.render = render_figure  # type: ignore[attr-defined]
    monkeypatch.setitem(sys.modules, figure.__name__, figure)
    monkeypatch.setattr(reports, "figure", figure, raising=False)


def words(content: bytes, ending: str) -> str:
    """The text of a file as a reader sees it, with single spaces."""
    match ending:
        case ".pdf":
            with pdfplumber.open(io.BytesIO(content)) as pages:
                text = "\n".join(page.extract_text() for page in pages.pages)
        case ".docx":
            body = zipfile.ZipFile(io.BytesIO(content)).read("word/document.xml").decode()
            text = _Text.of(re.sub(r"</w:p>|<w:tab/>", " ", body))
        case ".html":
            text = _Text.of(content.decode())
        case _:
            text = content.decode()
    return " ".join(text.split())


class _Text(HTMLParser):
    """Gathers the text between tags, and the names of the tags."""

    def __init__(self) -> None:
        super().__init__()
        self.pieces: list[str] = []
        self.tags: list[str] = []

    def handle_starttag(self, tag: str, attrs: object) -> None:
        self.tags.append(tag)

    def handle_data(self, data: str) -> None:
        self.pieces.append(data)

    @classmethod
    def of(cls, markup: str) -> str:
        parser = cls()
        parser.feed(markup)
        return "".join(parser.pieces)


@pytest.mark.parametrize("ending", ENDINGS)
def test_title_lines_reasons_marks_and_totals_are_there(ending: str) -> None:
    text = words(render(sail_loft.paper(), ending), ending)
    for expected in (
        "Harbour Loft School: Term 2 test",
        "Grade 9",
        "30 minutes",
        "22 marks",
        "8 questions",
        "∠ACB = 180° − 112° = 68°",
        "angles on a straight line add up to 180°",
        "S/R1",
        "x = 17",
        "A1",
        "consistent accuracy",
        "3 marks",
        "6 marks",
        "9 marks",
        "B (1/2)",
        "This part was not derived",
        "Setter's own answer, not confirmed: She measured the wrong seam.",
        "The audit found: impossible givens",
        "Nothing satisfies what is given",
        "leaves the answer open",
        "Confidential until the test has been written",
    ):
        in_footer = ending == ".docx" and "Confidential" in expected
        assert in_footer or expected in text or plain(expected) in text, expected


def test_pages_are_numbered_and_confidential() -> None:
    with pdfplumber.open(io.BytesIO(render(sail_loft.paper(), ".pdf"))) as pages:
        count = len(pages.pages)
        for number, page in enumerate(pages.pages, start=1):
            assert (round(page.width), round(page.height)) == (595, 842), "A4"
            assert f"Page {number} of {count}" in page.extract_text()
            assert "Confidential until the test has been written" in page.extract_text()


def test_nothing_runs_over_the_margin() -> None:
    long_line = "(" + "+".join(f"{count}x" for count in range(60)) + ") = 0"
    steps = (Step(long_line, StepKind.EQUATION, Reason("alternate-angles", "AB∥CD" * 20)),)
    paper = sail_loft.paper(sail_loft.angle("1.a", "a", steps, 68, 2, text="x" * 400, reasons=True), title="W" * 200)
    with pdfplumber.open(io.BytesIO(render(paper, ".pdf"))) as pages:
        right = max(character["x1"] for page in pages.pages for character in page.chars if character["text"].strip())
    assert right <= (210 - 20) / 25.4 * 72 + 1


def test_the_word_footer_numbers_pages() -> None:
    footer = zipfile.ZipFile(io.BytesIO(render(sail_loft.paper(), ".docx"))).read("word/footer1.xml").decode()
    assert "NUMPAGES" in footer
    assert "Confidential until the test has been written" in footer
    assert "moderator prevails" in footer


@pytest.mark.parametrize("ending", ENDINGS)
def test_the_same_paper_gives_the_same_bytes(ending: str) -> None:
    assert render(sail_loft.paper(), ending) == render(sail_loft.paper(), ending)


@pytest.mark.parametrize("ending", ENDINGS)
def test_hostile_text_stays_text(ending: str) -> None:
    paper = sail_loft.paper(sail_loft.base_angle(text=HOSTILE), sail_loft.not_read(HOSTILE), title=HOSTILE)
    text = words(render(paper, ending), ending)
    # Lines may break anywhere on a page: spaces of any width don't count, nor do the marks beside the first line.
    expected = plain(HOSTILE) if ending == ".md" else HOSTILE
    text = text.replace("\u200b", "").replace("3 marks", "")
    assert text.replace(" ", "").count(expected.replace(" ", "")) >= 3
    assert "49" not in text


def test_html_runs_nothing_and_needs_no_other_file() -> None:
    page = render(sail_loft.paper(title=HOSTILE), ".html").decode()
    parser = _Text()
    parser.feed(page)
    assert "script" not in parser.tags
    assert not re.search(r'(?:src|href)="(?!data:)', page)
    assert page.count("data:image/svg+xml;base64,") == 1, "the figure is drawn once a question"


@pytest.mark.parametrize("text", ["# x", "- x", "1. x", "=x", "+ x", "a\nb", "~~~", "<b>", "![x](y)", "a | b"])
def test_markdown_escapes(text: str) -> None:
    escaped = plain(text)
    assert "\n" not in escaped
    assert not re.match(r"[#\-+=~<!]|\d+\.", escaped)
    assert re.sub(r"\\(.)", r"\1", escaped) == " ".join(text.split())


def test_what_word_cannot_hold_is_left_out() -> None:
    content = render(sail_loft.paper(title="Sails\x0b\x00 and ropes"), ".docx")
    assert "Sails and ropes" in words(content, ".docx")


def test_the_figure_is_a_picture_in_word() -> None:
    names = zipfile.ZipFile(io.BytesIO(render(sail_loft.paper(), ".docx"))).namelist()
    assert [name for name in names if name.startswith("word/media/")] == ["word/media/image1.png"]


def test_marks_that_do_not_fit_stand_beside_the_natural_ones() -> None:
    (part,) = contents(sail_loft.paper(sail_loft.base_angle(9))).questions[0].parts
    assert part.marks == "9"
    assert part.remarks == (
        "The paper gives 9 marks; usual for these lines is 2 to 4.",
        "4 marks have no line to rest on.",
    )


def test_a_sound_part_carries_no_remark_and_no_warning() -> None:
    (part,) = contents(sail_loft.paper(sail_loft.base_angle(3))).questions[0].parts
    assert (part.remarks, part.warning) == ((), "")


@pytest.mark.parametrize(
    ("text", "ask", "shown"),
    [
        ("Show, giving a reason, that AB ∥ CD.", "show that AB ∥ CD", ""),
        ("Solve for x.", "solve 2x = 6", "solve 2x = 6"),
        ("Find ∠ABC.", "∠ABC", ""),
        ("", "∠ABC", "∠ABC"),
        ("Find the size of it.", "", ""),
    ],
)
def test_an_ask_is_printed_where_the_words_do_not_say_it(text: str, ask: str, shown: str) -> None:
    part = replace(sail_loft.share().part, text=Line(text) if text else None, ask=Line(ask) if ask else None)
    assert statements_beside(replace(sail_loft.share(), part=part)) == shown


def test_an_ask_that_the_questions_words_say_is_not_printed_again() -> None:
    part = sail_loft.share()
    question = replace(part.question, text=Line("What is 65% of 240 litres?"))
    assert statements_beside(replace(part, question=question, part=replace(part.part, text=None))) == ""


@pytest.mark.parametrize(
    ("answer", "last_line", "shown"),
    [
        ("68°", "∠ABC = ∠ACB = 68°", ""),
        ("no", "so AB = AC does not hold", "no"),
        ("x = 1", "x = 17", "x = 1"),
    ],
)
def test_the_answer_is_printed_apart_where_the_last_line_does_not_show_it(
    answer: str, last_line: str, shown: str
) -> None:
    part = replace(sail_loft.share(), outcome=Derived((Answer(answer),), ()))
    assert answers_in_words(part, last_line) == shown


def test_lines_of_an_earlier_part_point_back_to_it() -> None:
    _, second = contents(sail_loft.paper(sail_loft.base_angle(4), sail_loft.apex_angle(2))).questions[0].parts
    assert [(row.source, len(row.marks)) for row in second.rows] == [("as in (a)", 0), ("as in (a)", 0), ("", 2)]


def test_the_reasons_follow_the_papers_system() -> None:
    rows = contents(sail_loft.paper(sail_loft.base_angle(), reasons="abbreviated")).questions[0].parts[0].rows
    assert [row.reason for row in rows] == [
        "∠s on a str line",
        f"∠s opp equal sides; AB{NO_BREAK}={NO_BREAK}AC",
    ]


def test_the_legend_has_what_is_used_and_nothing_else() -> None:
    sheet = contents(sail_loft.paper(sail_loft.equation(3), marking="method-accuracy"))
    assert [entry.code for entry in sheet.legend] == ["M", "A"]
    assert sheet.notes == ()


def test_a_setters_letter_that_the_convention_lacks_is_in_the_legend() -> None:
    sheet = contents(sail_loft.paper(sail_loft.base_angle(3, split=("M1", "C1", "A1"))))
    assert ("C", "as the setter uses it") in [(entry.code, entry.means) for entry in sheet.legend]


@pytest.mark.parametrize(("ending", "message"), [(".txt", "cannot end in '.txt'"), ("", "expected one of .pdf")])
def test_other_endings_are_refused(ending: str, message: str) -> None:
    with pytest.raises(InputError, match=message):
        render(sail_loft.paper(), ending)


def own_template(folder: Path, *paragraphs: str) -> Path:
    document = Document()
    for text in paragraphs:
        document.add_paragraph(text)
    path = folder / "own.docx"
    document.save(str(path))
    return path


def test_a_department_may_bring_its_own_template(tmp_path: Path) -> None:
    template = own_template(
        tmp_path,
        "Loft mathematics: {{ title }}",
        "{%p for question in questions %}",
        "Q{{ question.number }} [{{ question.marks }}]",
        "{%p endfor %}",
    )
    text = words(render(sail_loft.paper(), ".docx", template), ".docx")
    assert "Loft mathematics: Harbour Loft School: Term 2 test" in text
    assert "Q1 [9]" in text


@pytest.mark.parametrize("field", ["{{ titel }}", "{% for x in %}", "{{ title.__class__.__mro__ }}", "{{ 1/0 }}"])
def test_a_template_that_cannot_be_filled_is_refused(tmp_path: Path, field: str) -> None:
    with pytest.raises(InputError, match="the template cannot be filled"):
        render(sail_loft.paper(), ".docx", own_template(tmp_path, field))


@pytest.mark.parametrize("content", [b"", b"PK\x03\x04 not a zip", b"plain text"])
def test_a_template_that_is_no_word_file_is_refused(tmp_path: Path, content: bytes) -> None:
    path = tmp_path / "own.docx"
    path.write_bytes(content)
    with pytest.raises(InputError, match="not a Word document"):
        render(sail_loft.paper(), ".docx", path)


def test_a_template_that_is_not_there_is_named(tmp_path: Path) -> None:
    with pytest.raises(InputError, match=r"missing\.docx: there is no such file"):
        render(sail_loft.paper(), ".docx", tmp_path / "missing.docx")


def test_a_template_belongs_to_word(tmp_path: Path) -> None:
    with pytest.raises(InputError, match=r"for a \.docx"):
        render(sail_loft.paper(), ".pdf", tmp_path / "own.docx")


def test_the_shipped_template_is_what_its_script_makes() -> None:
    path = shipped("schemes", "templates", "scheme", "scheme.docx")
    for name in ("word/document.xml", "word/footer1.xml"):
        made = zipfile.ZipFile(io.BytesIO(make_word_template.template())).read(name)
        assert zipfile.ZipFile(path).read(name) == made


QUIZ = """
title: t
total: 20
questions:
  - {number: 1, text: Calculate 7 × 8., ask: 7 × 8, options: {A: 54, B: 56, C: 63}, answer: "56", marks: 1}
  - {number: 2, ask: 12 + 5, options: {A: 15, B: 16, C: 17}, answer: A, marks: 1}
  - {number: 3, ask: 12 + 5, options: {A: 15, B: 16}, answer: A, marks: 1}
  - number: 4
    text: The table shows the sails mended.
    table: {"day": [Mon, Tue, Wed], "sails | mended": [3, 5]}
    parts:
      - {number: a, text: Describe the table., marks: 2}
      - {number: b, ask: 3 + 5}
  - {number: 4, ask: 6 + 5, answer: "11", marks: 1}
"""


@pytest.fixture(scope="module")
def quiz() -> AuditedPaper:
    return audit_read(read_question_file(QUIZ, "quiz.yaml"))


def test_the_right_option_is_always_named_by_its_letter(quiz: AuditedPaper) -> None:
    answers = [question.parts[0].answer for question in contents(quiz).questions[:3]]
    assert answers == ["B (56)", "C (17)", "17, which is none of the options"]


@pytest.mark.parametrize("ending", ENDINGS)
def test_a_table_is_printed(quiz: AuditedPaper, ending: str) -> None:
    text = words(render(quiz, ending), ending)
    for cell in ("day", "Mon", "Wed", "mended", "5"):
        assert cell in text
    assert contents(quiz).questions[3].table == (("day", "sails | mended"), ("Mon", "3"), ("Tue", "5"), ("Wed", ""))


def test_an_unread_part_says_nothing_of_the_reader(quiz: AuditedPaper) -> None:
    unread = contents(quiz).questions[3].parts[0]
    assert unread.remarks == ("This part was not derived; the examiner writes its marking here.",)
    assert unread.ruled == 2


def test_the_cover_has_the_printed_marks_and_names_what_differs(quiz: AuditedPaper) -> None:
    sheet = contents(quiz)
    assert dict(sheet.facts)["Total"].replace(NO_BREAK, " ") == "6 marks (the cover says 20; without marks: 4.b)"
    assert [question.marks for question in sheet.questions] == ["1", "1", "1", "2", "1"]
    assert sheet.questions[3].parts[1].marks == ""


def test_a_paper_without_any_marks_says_so() -> None:
    paper = audit_read(read_question_file("questions: [{number: 1, ask: 2 + 2}]", "t.yaml"))
    assert dict(contents(paper).facts)["Total"] == "no marks printed"


def test_a_repeated_number_is_printed_as_in_the_paper(quiz: AuditedPaper) -> None:
    assert contents(quiz).questions[4].parts[0].label == ""


@pytest.mark.parametrize(
    ("text", "together"),
    [
        ("alternate angles, AB ∥ CD", "AB_∥_CD"),
        ("△ABC ≡ △DEF", "△ABC_≡_△DEF"),
        ("AB = 12 cm", "12_cm"),
        ("AB = CD", "AB_=_CD"),
    ],
)
def test_short_relations_do_not_break_at_a_line_end(text: str, together: str) -> None:
    assert together in kept_together(text).replace(NO_BREAK, "_")


def test_a_long_label_does_not_touch_its_words() -> None:
    nested = "questions: [{number: 1, parts: [{number: b, parts: [{number: iii, text: Give it., marks: 1}]}]}]"
    paper = audit_read(read_question_file(nested, "t.yaml"))
    with pdfplumber.open(io.BytesIO(render(paper, ".pdf"))) as pages:
        found = [word["text"] for page in pages.pages for word in page.extract_words()]
    assert "(b)(iii)" in found


def test_a_figure_over_several_parts_shows_no_single_ask(monkeypatch: pytest.MonkeyPatch) -> None:
    asked: list[bool] = []

    def noted(part: AuditedPart, *, asked: bool = True, _seen: list[bool] = asked) -> str:
        _seen.append(asked)
        return ""

    monkeypatch.setattr(sys.modules["paperaudit.reports.figure"], "render", noted)
    contents(sail_loft.paper(sail_loft.base_angle(), sail_loft.apex_angle(), sail_loft.equation()))
    assert asked == [False, True]


def test_an_empty_paper_has_a_scheme() -> None:
    empty = AuditedPaper(Paper("", ()), ())
    for ending in ENDINGS:
        assert "Untitled test" in words(render(empty, ending), ending)


def test_word_pages_open_in_an_office_program(tmp_path: Path) -> None:
    (tmp_path / "scheme.docx").write_bytes(render(sail_loft.paper(), ".docx"))
    profile = f"-env:UserInstallation={(tmp_path / 'profile').as_uri()}"
    subprocess.run(
        [office(), profile, "--headless", "--convert-to", "pdf", "--outdir", str(tmp_path), f"{tmp_path}/scheme.docx"],
        check=True,
        capture_output=True,
        timeout=120,
    )
    text = words((tmp_path / "scheme.pdf").read_bytes(), ".pdf")
    for expected in ("Harbour Loft School: Term 2 test", "∠ABC = ∠ACB = 68°", "Page 1 of", "S/R1"):
        assert expected in text
