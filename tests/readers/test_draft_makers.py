"""What drafts of further makers have: rules that are pictures, short columns, tables with several parts in a band."""

import json

from paperaudit.audit import audit_read
from paperaudit.model.place import Box
from paperaudit.readers.draft.columns import areas_of
from paperaudit.readers.draft.open_pdf import pages_of
from paperaudit.readers.draft.print_line import Column
from paperaudit.readers.draft.row import Cell, Row
from paperaudit.readers.draft.rows import rows_of
from paperaudit.readers.draft.runs import runs_of
from paperaudit.readers.draft.symbol_fonts import tall_sign_of
from paperaudit.readers.draft.table_rows import lines_of_table
from paperaudit.readers.draft.wording_rows import TextRow, running_text
from paperaudit.readers.question_file import read_question_file
from tests.readers.made_pdf import pages
from tests.readers.test_draft_edges import glyphs
from tests.readers.typed_pages import told


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
