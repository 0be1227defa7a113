"""What drafts of further makers have: rules that are pictures, short columns, tables with several parts in a band."""

import json

from paperaudit.audit import audit_read
from paperaudit.model.place import Box
from paperaudit.readers.draft.columns import areas_of
from paperaudit.readers.draft.cover import cover_of
from paperaudit.readers.draft.drawing.figures import figures_of
from paperaudit.readers.draft.open_pdf import pages_of
from paperaudit.readers.draft.page import DraftPage, Glyph, Path, Piece
from paperaudit.readers.draft.print_line import Column
from paperaudit.readers.draft.raw_codes import letter_and_code
from paperaudit.readers.draft.row import Cell, Row
from paperaudit.readers.draft.rows import rows_of
from paperaudit.readers.draft.runs import runs_of
from paperaudit.readers.draft.solid_pictures import filled, rule_of_root
from paperaudit.readers.draft.symbol_fonts import tall_sign_of
from paperaudit.readers.draft.table_rows import lines_of_table
from paperaudit.readers.draft.wording_rows import TextRow, running_text
from paperaudit.readers.question_file import read_question_file
from tests.readers.made_pdf import pages
from tests.readers.test_draft_edges import glyphs
from tests.readers.typed_pages import lines_of, told


def test_a_stencil_of_one_dot_is_the_bar_of_a_fraction() -> None:
    """So dvips and Ghostscript print rules; without them 1/2 would be two numbers."""
    letters = "BT /F 10 Tf 50 700 Td (x =) Tj 24 7 Td (1) Tj 0 -14 Td (2) Tj ET"
    stencil = "q 8 0 0 0.5 73 702 cm BI /IM true /W 1 /H 1 /BPC 1 {} ID {} EI Q"
    printed = [f"{letters} {stencil.format(*how)}".encode("latin-1") for how in (("", "\0"), ("", "\x80"))]
    first, second = pages_of(pages(printed), "draft.pdf")
    assert [row.text for row in rows_of(first.glyphs, first.paths)] == ["x = 1/2"]
    assert (first.rasters, second.paths) == ((), ())


def test_a_column_of_two_rows_begins_with_the_next_question() -> None:
    printed = []
    rows = [f"{number}) Write down the value of this (2)" for number in range(1, 8)]
    beside = {0: "and the end of number seven (1)", 1: "8) Write down a number (2)"}
    for at, text in enumerate(rows):
        printed += glyphs(text, 40.0, 130.0 + 14 * at, 200 * at)
        if at in beside:
            printed += glyphs(beside[at], 300.0, 130.0 + 14 * at, 200 * at + 90)
    printed += glyphs("40 minutes", 40.0, 100.0, 5000) + glyphs("15 marks", 480.0, 100.0, 5100)
    head, left, right = areas_of(runs_of(printed), (30.0, 80.0, 560.0, 240.0))
    assert head[3] < 130.0 and left[2] == right[0] and 280.0 < right[0] <= 300.0


def test_parts_counted_along_rows_are_no_columns() -> None:
    printed = []
    for at in range(4):
        printed += glyphs(f"{2 * at + 1}) Work out three", 40.0, 100.0 + 14 * at, 200 * at)
        printed += glyphs(f"{2 * at + 2}) Work out four", 300.0, 100.0 + 14 * at, 200 * at + 90)
    assert len(areas_of(runs_of(printed), (30.0, 80.0, 480.0, 160.0))) == 1


def test_a_band_of_a_table_with_several_parts_and_their_marks() -> None:
    def cell(left: float, *texts: str, at: tuple[int, ...] = (0, 1, 2)) -> tuple[Box, tuple[Row, ...]]:
        boxes = [(left, 14.0 * down, left + 40, 14.0 * down + 10) for down in at]
        rows = [Row((Cell(text, box),), box, box[3], 10.0, False) for text, box in zip(texts, boxes, strict=False)]
        return (left, 0.0, left + 90, 60.0), tuple(rows)

    texts = ("ABC is a triangle.", "Find the length of BC", "in centimetres.", "Find its area.")
    numbers = cell(0, "5", "5(a)", "5(b)", at=(0, 1, 3))
    bands = (
        (numbers, cell(100, *texts, at=(0, 1, 2, 3)), cell(300, "2", "3", at=(1, 3))),
        (cell(0, "6"), cell(100, "Find x."), cell(300, "4")),
    )
    lines = [[one.text for one in line.row.cells] for line in lines_of_table(Column(1, 0, 0.0, 400.0), bands)]
    assert lines == [
        ["5", "ABC is a triangle."],
        ["5(a)", "Find the length of BC", "[2 marks]"],
        ["in centimetres."],
        ["5(b)", "Find its area.", "[3 marks]"],
        ["6", "Find x.", "[4 marks]"],
    ]


def test_fields_to_fill_in_go_before_no_question() -> None:
    page = """
       Algebra test
Name:                                      Date:
1.  Find 3 + 4.                                                                          (1)
"""
    assert told(page) == ["1 [1] Find 3 + 4."]


def test_a_stop_behind_an_equation_on_its_own_row_stays() -> None:
    rows = [TextRow((Cell(text, (0, 0, 1, 1)),), 1) for text in ("a triangle with", "PQ = PR.", "Find the value of y.")]
    assert running_text(rows) == "a triangle with PQ = PR. Find the value of y."


def test_the_sums_of_fonts_with_low_brackets_lie_on_the_axis() -> None:
    for font in ("ABCDEF+Pxex", "ABCDEF+txex"):
        assert tall_sign_of(font, 88) == tall_sign_of(font, -1, "summationdisplay")
        bracket, total = tall_sign_of(font, 18), tall_sign_of(font, 88)
        assert bracket and total and 1.8 < bracket.depth < 2.0 and 1.5 < total.depth < 1.7


def test_a_statement_behind_words_like_a_command_is_not_left_out() -> None:
    """ "Name: Date:" in front of it looks like a command; without the parallelogram the angle would be open."""
    question = {
        "number": 5,
        "text": "Name: Date: ABCD is a parallelogram. E is the point on CD such that AD = AE and ∠ABC = 64°.",
        "figure": ["segments AB, AE, AD, BC", "D-E-C"],
        "given": ["∠ABC = 64°", "AD = AE", "DC ∥ AB"],
        "drawn": True,
        "sketch": {"D": [211, 0], "C": [364, 0], "A": [245, 68], "B": [398, 68], "E": [278, 0]},
        "parts": [{"number": "a", "marks": 2, "text": "Find the size of ∠ADE."}],
    }
    (part,) = audit_read(read_question_file(json.dumps({"questions": [question]}), "x.yaml")).parts
    assert part.verdict == "not-read"


def test_parts_numbered_by_letters_alone() -> None:
    page = """
          Algebra test
1  The line has the equation y = 3x + 4 and cuts both of the axes of the diagram.
     a  Find where it cuts the x-axis, and write down its gradient in the simplest form,
        a fraction, if you like.                                                        (2)
     b  2x + 3                                                                          (1)
2    a  x = 4                                                                           (1)
     b  Find y.                                                                         (1)
"""
    assert [line.split("]")[0] for line in told(page)] == ["1 [", "1.a [2", "1.b [1", "2 [", "2.a [1", "2.b [1"]


def test_rows_that_begin_with_the_word_a_are_no_parts() -> None:
    page = """
          Number test
1  Write as
   a fraction and as
   a percentage: 0.2 with
   b in it                                                                              (2)
2  Take it
   b times.                                                                             (1)
"""
    assert [line.split("]")[0] for line in told(page)] == ["1 [2", "2 [1"]


def test_the_field_of_the_score_and_a_level_behind_the_title() -> None:
    page = """
Trigonometry test                                                                  Form 5
You have 1 hour.
Name:                                                              Score:             /30
"""
    cover = cover_of(list(lines_of(page)))
    assert cover.title and cover.minutes and cover.total
    assert (cover.title.value, cover.minutes.value, cover.total.value) == ("Trigonometry test", "60", "30")


def test_marks_for_a_question_as_a_whole_are_a_warning() -> None:
    parts = [{"number": "a", "ask": "12 + 5"}, {"number": "b", "ask": "12 + 6"}]
    questions = [{"number": 1, "total": 4, "parts": parts}, {"number": 2, "ask": "12 + 7", "marks": 1}]
    findings = audit_read(read_question_file(json.dumps({"questions": questions}), "x.yaml")).findings
    assert [(one.part, one.severity.value) for one in findings if one.name == "marks-missing"] == [("1", "warning")]


def test_codes_that_latin_letters_stand_for_are_undone() -> None:
    """TrueType forms of TeX's fonts, as Matplotlib embeds them, call the minus ¡ and the root p."""
    assert [letter_and_code("ABCDEF+Cmsy10", sign) for sign in "¡±p−"] == [("−", -1), ("∘", -1), ("√", -1), ("−", -1)]
    assert [letter_and_code("ABCDEF+Cmex10", sign) for sign in "¡pX("] == [("", 0), ("", 112), ("", 88), ("(", -1)]
    assert [letter_and_code("ABCDEF+Cmmi10", sign) for sign in "x:®"] == [("x", -1), (".", -1), ("α", -1)]
    assert [letter_and_code("ABCDEF+CMSY10", sign) for sign in "±·"] == [("±", -1), ("·", -1)]
    assert letter_and_code("Helvetica", "p") == ("p", -1) and letter_and_code("CMR10", "p") == ("p", -1)


def test_the_rule_of_a_root_that_is_a_letter() -> None:
    """groff and old drivers print the rule of a root with letters of Adobe's Symbol."""
    rule = rule_of_root((122.0, 100.0), 11.0, 7, 0.0)
    printed = [Glyph("√", (122.0, 91.0, 128.0, 102.0), 100.0, 11.0, "Symbol", 0)]
    printed += [
        Glyph(sign, (left, 91.0, left + 5.5, 102.0), 100.0, 11.0, "Times-Roman", at)
        for at, (sign, left) in enumerate((("5", 128.0), ("0", 133.5), ("+", 142.0), ("8", 150.0)), 1)
    ]
    longer = rule_of_root((127.0, 100.0), 11.0, 8, 0.0)
    both = Path(
        rule.pieces, (rule.box[0], rule.box[1], longer.box[2], rule.box[3]), 7, True, 0.0, stroke=None, fill=0.0
    )
    assert [row.text for row in rows_of(printed, [both])] == ["√50 + 8"]


def test_a_small_fraction_in_a_power_is_sure() -> None:
    """Its bar is as long as its figures and nearer to the upper one, like an underline."""
    signs = [("2", 105.5, 134.4, 11.0), ("7", 111.0, 134.4, 11.0), ("2", 117.4, 127.26, 5.4), ("3", 117.4, 132.3, 5.4)]
    printed = [
        Glyph(sign, (left, low - 0.8 * size, left + size / 2, low + 0.2 * size), low, size, "Cmr10", at)
        for at, (sign, left, low, size) in enumerate(signs)
    ]
    corners = ((117.4, 127.74), (120.1, 127.74), (120.1, 128.22), (117.4, 128.22))
    (row,) = rows_of(printed, [filled(corners, 9, 0.0)])
    assert row.text == "27^(2/3)" and row.cells[0].doubts == ()


def test_a_greek_letter_between_two_bounds_is_a_sum() -> None:
    signs = [("Σ", 135.3, 741.4, 16.0), ("6", 138.0, 725.0, 7.7), ("k", 134.0, 752.0, 7.7), ("=", 138.0, 752.0, 7.7)]
    signs += [("1", 142.4, 752.0, 7.7), ("k", 146.0, 739.0, 11.0)]
    printed = [
        Glyph(sign, (left, low - size, left + size * 0.55, low + 0.1 * size), low, size, "Times-Roman", at)
        for at, (sign, left, low, size) in enumerate(signs)
    ]
    assert [row.text for row in rows_of(printed)] == ["Σ_{k=1}^{6} k"]
    assert "Σ_" not in rows_of([printed[0], printed[-1]])[0].text


def test_signs_of_a_font_across_two_sides_are_ticks() -> None:
    """PSTricks and office programs print ticks as letters, turned or not."""
    corners = {"A": (150.0, 100.0), "B": (100.0, 200.0), "C": (200.0, 200.0)}
    ends = [("A", "B"), ("A", "C"), ("B", "C")]
    paths, printed = [], []
    for at, (one, other) in enumerate(ends):
        (x, y), (u, v) = corners[one], corners[other]
        box = (min(x, u), min(y, v), max(x, u), max(y, v))
        paths.append(Path((Piece(((x, y), (u, v))),), box, 90 + at, width=0.5))
    for at, (letter, left, low) in enumerate((("A", 147.0, 95.0), ("B", 88.0, 205.0), ("C", 204.0, 205.0))):
        printed += glyphs(letter, left, low, at)
    for at, (x, y) in enumerate(((125.0, 150.0), (175.0, 150.0)), 10):
        printed.append(Glyph("/", (x - 5, y - 5, x + 5, y + 5), y, 10.0, "F", at, upright=False))
    (figure,) = figures_of(DraftPage(1, 600.0, 840.0, tuple(printed), tuple(paths)))
    assert [fact.text for fact in figure.given] == ["AB = AC"] and figure.doubts == ()


def test_the_total_in_a_sentence_behind_another() -> None:
    (line, *_) = lines_of("This paper has 6 questions. The total for this paper is 40 marks.")
    cover = cover_of([line])
    assert cover.total and cover.total.value == "40"


def test_the_sign_of_a_root_in_a_divisor_is_not_under_the_root_above_it() -> None:
    """Fonts such as Latin Modern Math have it from its rule downwards, as cmsy has."""
    signs = [("3", 106.1, 406.9), ("√", 110.1, 401.0), ("2", 115.9, 406.9), ("2", 103.4, 415.4), ("−", 107.4, 415.4)]
    signs += [("√", 112.8, 409.5), ("2", 118.6, 415.4)]
    wide = {"√": 5.8, "−": 5.4, "2": 4.0, "3": 4.0}
    printed = [
        Glyph(sign, (left, low - 5.6, left + wide[sign], low + 1.4), low, 7.0, "LatinModernMath-Regular", at)
        for at, (sign, left, low) in enumerate(signs)
    ]
    printed.append(Glyph(".", (123.6, 403.4, 126.1, 413.4), 410.9, 10.0, "Carlito", 20))
    rules = []
    for at, (left, right, down) in enumerate(((115.9, 119.9, 400.9), (118.6, 122.6, 409.4), (103.4, 122.6, 408.4))):
        rules.append(Path((Piece(((left, down), (right, down))),), (left, down, right, down), 50 + at, width=0.3))
    (row,) = rows_of(printed, rules)
    assert row.text == "(3√2)/(2 − √2)." and row.cells[0].doubts == ()


def test_a_picture_in_place_of_a_sign_is_a_doubt() -> None:
    """A maker without the sign prints a square of ZapfDingbats for a minus."""
    printed = [
        Glyph("4", (100.0, 91.0, 106.0, 102.0), 100.0, 11.0, "Times-Roman", 0),
        Glyph("n", (110.0, 91.0, 117.0, 102.0), 100.0, 11.0, "ZapfDingbats", 1),
        Glyph("3", (121.0, 91.0, 127.0, 102.0), 100.0, 11.0, "Times-Roman", 2),
    ]
    assert rows_of(printed)[0].cells[0].doubts == ("a picture stands here in place of a sign",)
    assert rows_of(printed[1:])[0].cells[0].doubts == ()


def test_the_zeros_of_a_function_are_not_those_of_its_letter() -> None:
    text = "Given f(x) = (x − 2)² − 9. Find the zeros of f."
    questions = [{"number": 1, "marks": 3, "text": text}]
    (part,) = audit_read(read_question_file(json.dumps({"questions": questions}), "x.yaml")).parts
    assert part.verdict == "not-read"
