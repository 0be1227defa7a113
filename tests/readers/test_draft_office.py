"""What drafts of word processors and browsers have that typesetters leave out: margins of marks, (1), borders."""

from dataclasses import replace

import pytest

from paperaudit.readers.draft.drawing.lettering import runs_of_print
from paperaudit.readers.draft.open_pdf import pages_of
from paperaudit.readers.draft.outline_reader import outline_of
from paperaudit.readers.draft.print_line import PrintLine
from paperaudit.readers.draft.read_draft import read_draft
from paperaudit.readers.draft.table_rows import Cells, is_list_of_parts
from paperaudit.readers.question_file import read_question_file
from tests.readers.made_pdf import pages
from tests.readers.set_print import Print
from tests.readers.typed_pages import lines_of, told

ROWS = {
    "marks before the numbers": (
        """
        1.   Work out:
(1)          (a)   0.6 × 0.4
(2)          (b)   35% of 240 and write
                   it down.
[3]     2.   Solve 3x = 12.
(1)     3.   Find 4 − 9.
""",
        [
            "1 [] Work out:",
            "1.a [1] 0.6 × 0.4",
            "1.b [2] 35% of 240 and write it down.",
            "2 [3] Solve 3x = 12.",
            "3 [1] Find 4 − 9.",
        ],
    ),
    "bare marks before the numbers": (
        """
        1.  Work out:
2       (a)  0.6 × 0.4
1       (b)  35% of 240
2   2.  Solve 3x = 12.
""",
        ["1 [] Work out:", "1.a [2] 0.6 × 0.4", "1.b [1] 35% of 240", "2 [2] Solve 3x = 12."],
    ),
    "bare numbers of questions before letters": (
        """
1   (a)  Work out 0.6 × 0.4.                                                              [1]
    (b)  Find 35% of 240.                                                                 [2]
2   (a)  Solve 3x = 12.                                                                   [2]
    (b)  Solve 3x = 15.                                                                   [2]
3   (a)  Find 4 − 9.                                                                      [1]
""",
        [
            "1 [] ",
            "1.a [1] Work out 0.6 × 0.4.",
            "1.b [2] Find 35% of 240.",
            "2 [] ",
            "2.a [2] Solve 3x = 12.",
            "2.b [2] Solve 3x = 15.",
            "3 [] ",
            "3.a [1] Find 4 − 9.",
        ],
    ),
    "parts as (1) and marks as (2)": (
        """
1.  Work out:
    (1)  0.6 × 0.4                                                                        (1)
    (2)  35% of 240                                                                       (2)
2.  Solve 3x = 12.                                                                        (2)
3.  Find:
    (1) 4 − 9                                                                             (1)
    (2) 4 + 9                                                                             (1)
""",
        [
            "1 [] Work out:",
            "1.1 [1] 0.6 × 0.4",
            "1.2 [2] 35% of 240",
            "2 [2] Solve 3x = 12.",
            "3 [] Find:",
            "3.1 [1] 4 − 9",
            "3.2 [1] 4 + 9",
        ],
    ),
    "questions as (1)": (
        """
(1)  Work out 0.6 × 0.4.                                                              [1]
(2)  Find:
     (a)  35% of 240                                                                  [2]
     (b)  25% of 240                                                                  [2]
""",
        ["1 [1] Work out 0.6 × 0.4.", "2 [] Find:", "2.a [2] 35% of 240", "2.b [2] 25% of 240"],
    ),
    "marks alone under their text are no part": (
        """
1.  Find the mean of 4, 5 and 9.
    (2)
2.  Find:
    (a) 4 − 9                                                                             (1)
    (b) 4 + 9                                                                             (1)
3.  Find 12 × 12 and give a reason.                                                       (2)
""",
        [
            "1 [2] Find the mean of 4, 5 and 9.",
            "2 [] Find:",
            "2.a [1] 4 − 9",
            "2.b [1] 4 + 9",
            "3 [2] Find 12 × 12 and give a reason.",
        ],
    ),
    "a sentence that parts end": (
        """
1.  A bag holds 5 red and 4 blue counters. One is taken. Find the probability that it is
    (a) red,                                                                              (1)
    (b) not red.                                                                          (1)
""",
        [
            "1 [] A bag holds 5 red and 4 blue counters. One is taken. Find the probability that it is",
            "1.a [1] red,",
            "1.b [1] not red.",
        ],
    ),
    "marks without a bracket over the end of a row": (
        """
1.  Write down the size of the angle. 1
    mark
2.  Solve 3x = 12. 2 marks
""",
        ["1 [1] Write down the size of the angle.", "2 [2] Solve 3x = 12."],
    ),
    "names of columns that a page repeats": (
        """
No.   Question                                                                      Marks
1     Solve 3x = 12.                                                                  [2]
No.   Question                                                                      Marks
2     Find 4 + 5.                                                                     [1]
""",
        ["1 [2] Solve 3x = 12.", "2 [1] Find 4 + 5."],
    ),
    "a question's number before each letter": (
        """
1.      Find:
1.a     4 + 5                                                                         [2]
1.b     4 − 5                                                                         [2]
2.      Solve 3x = 12.                                                                [1]
""",
        ["1 [] Find:", "1.a [2] 4 + 5", "1.b [2] 4 − 5", "2 [1] Solve 3x = 12."],
    ),
    "the word reason ends a sentence": (
        """
1.  Find the size of the angle, giving a                                                  (2)
    reason.
""",
        ["1 [2] Find the size of the angle, giving a reason."],
    ),
    "fields to fill in lead on to no question": (
        """
Name: ____________      Class:
1.  Solve 3x = 12.                                                                        (2)
""",
        ["1 [2] Solve 3x = 12."],
    ),
}


@pytest.mark.parametrize("name", ROWS)
def test_rows(name: str) -> None:
    page, expected = ROWS[name]
    assert told(page) == [line.strip() for line in expected]


def test_marks_that_came_half_a_row_too_low_belong_to_the_row_above() -> None:
    page = """
1.  (a)  Calculate the area of the trapezium.
    (b)  Calculate the length of FG.                                                      [2]
         Leave your answer in surd form.                                                  [3]
"""
    lines = list(lines_of(page))
    assert [part.marks[0].number for part in outline_of(lines).questions()[0].parts if part.marks] == [2]
    for at, one in enumerate(lines):
        if one.row.cells[-1].text == "[2]":
            left, top, right, bottom = one.row.cells[-1].box
            raised = replace(one.row.cells[-1], box=(left, top - 5, right, bottom - 5))
            lines[at] = replace(one, row=replace(one.row, cells=(*one.row.cells[:-1], raised)))
    parts = outline_of(lines).questions()[0].parts
    assert [[mark.number for mark in part.marks] for part in parts] == [[2], [3]]


def test_questions_headed_alone_at_one_height_are_no_running_heads() -> None:
    def page(at: int) -> bytes:
        rows = [(50, 790, f"QUESTION {at}"), (50, 760, f"Find {at} + 4. [1]"), (290, 40, f"{at}")]
        return "\n".join(f"BT /F 11 Tf {left} {up} Td ({text}) Tj ET" for left, up, text in rows).encode()

    paper = read_draft(pages([page(1), page(2), page(3)]), "draft.pdf").whole()
    assert [question.number for question in paper.questions()] == ["1", "2", "3"]


VERBS = ("", "Find", "Draw", "Measure", "Copy", "Show", "Solve")


def test_bare_numbers_of_questions_at_one_height_are_no_page_numbers() -> None:
    def page(first: int) -> bytes:
        rows = [(50, 790 - 30 * at, f"{first + at}", f"{VERBS[first + at]} it. [1]") for at in range(2)]
        shown = [(left, up, text) for _, up, *texts in rows for left, text in zip((50, 80), texts, strict=True)]
        return "\n".join(f"BT /F 11 Tf {left} {up} Td ({text}) Tj ET" for left, up, text in shown).encode()

    paper = read_draft(pages([page(1), page(3), page(5)]), "draft.pdf").whole()
    assert [question.number for question in paper.questions()] == ["1", "2", "3", "4", "5", "6"]


def test_a_power_is_no_sign_of_a_label_that_stands_as_high() -> None:
    row = Print()
    row.at("a", 20, 95.5, 12).put("x").put("2", 9.5, 5).put(" = 9")
    assert "x² = 9" in " ".join(row.read())


def test_a_power_hardly_smaller_than_its_base_is_one() -> None:
    assert Print(size=11).put("2").put("x + 1", 10.67, 5.3).put(" = 32").read() == ["2^(x + 1) = 32"]
    assert Print(size=11).put("2").put("x + 1", 11, 5.3).put(" = 32").read() != ["2^(x + 1) = 32"]


def test_digits_of_two_prints_are_two_numbers() -> None:
    row = Print(size=9.5).put("x = 4")
    row.x += 2.5
    row.glyphs += [replace(one, index=99) for one in Print(x=0).put(" ").glyphs]
    assert row.put("3 marks", 8.55, font="Roman-Italic").read() == ["x = 4 3 marks"]


def test_the_rule_under_the_names_of_columns_is_no_fraction_bar() -> None:
    row = Print().put("No.").put(" " * 20).put("Question").put(" " * 20).put("Marks")
    row.rule(50, row.x, row.y + 3)
    right = row.x
    row.down().put("1").put(" " * 20).put("Find 4 + 5 and write it")
    row.x = right - 6
    assert row.put("2").read() == ["No. ¦ Question ¦ Marks", "1 ¦ Find 4 + 5 and write it ¦ 2"]


def test_few_words_far_apart_are_cells() -> None:
    row = Print()
    for text, left in (("1.a", 50), ("56°", 120), ("M1 A1", 320), ("2", 490)):
        row.x = left
        row.put(text)
    assert row.read() == ["1.a ¦ 56° ¦ M1 A1 ¦ 2"]


def test_fractions_with_a_slash() -> None:
    row = Print().put("2").put("1", 8, 5).put("⁄").put("2", 8, -2).put(" × 3")
    assert row.read() == ["2 1/2 × 3"]


def test_two_sizes_side_by_side_in_a_figure() -> None:
    assert [run.text for run in runs_of_print(Print().put("33°33°").glyphs)] == ["33°", "33°"]


def test_a_border_filled_between_two_rectangles_is_a_fraction_bar() -> None:
    letters = "".join(
        f"BT /F 11 Tf {x} {y} Td ({text}) Tj ET\n"
        for x, y, text in (
            (50, 790, "1. Find"),
            (100, 796, "3"),
            (100, 780, "4"),
            (112, 790, "of 20. [1]"),
        )
    )
    border = "98 776 12 16 re 98 776 12 17 re f*"
    paper = read_draft(pages([(letters + border).encode()]), "draft.pdf").whole()
    assert [question.text.text for question in paper.questions() if question.text] == ["Find 3/4 of 20."]


def test_a_band_of_colour_keeps_its_title() -> None:
    content = b"0.1 0.1 0.3 rg 40 780 400 30 re f 1 1 1 rg BT /F 16 Tf 50 790 Td (Geometry test) Tj ET 0 0 0 rg "
    content += b"BT /F 11 Tf 50 740 Td (1. Find 3 + 4. [1]) Tj ET"
    assert read_draft(pages([content]), "draft.pdf").whole().title == "Geometry test"


def test_a_table_of_formulas_with_numbers_and_marks_lists_parts() -> None:
    def cells(*bands: tuple[str, ...]) -> Cells:
        made = []
        for band in bands:
            lines: list[PrintLine] = [next(lines_of(text)) for text in band]
            made.append(tuple((line.box, (line.row,)) for line in lines))
        return tuple(made)

    assert is_list_of_parts(cells(("(a)", "4y² − 25", "2"), ("(b)", "6ab − 9b", "1")))
    assert not is_list_of_parts(cells(("1", "4", "2"), ("2", "6", "1")))


def test_an_empty_cell_of_a_table_is_left_for_the_learner() -> None:
    paper = read_question_file(
        "questions:\n  - {number: 1, marks: 1, text: Complete the table., table: {Boys: ['3', ''], Girls: ['4', '5']}}",
        "x.yaml",
    )
    assert not paper.complaints and paper.paper is not None
    assert next(paper.paper.questions()).table[0] == ("Boys", ("3", ""))


def test_a_power_in_the_first_row_of_a_page_is_no_page_number() -> None:
    first = b"BT /F 11 Tf 50 740 Td (1. Find 3 + 4. [1]) Tj ET"
    rows = [(11, 50, 790, "2. Find x"), (7, 92.2, 795, "2"), (11, 99.5, 790, "- 4. [1]")]
    second = "".join(f"BT /F {size} Tf {left} {up} Td ({text}) Tj ET " for size, left, up, text in rows).encode()
    texts = [one.text.text for one in read_draft(pages([first, second]), "draft.pdf").whole().questions() if one.text]
    assert texts == ["Find 3 + 4.", "Find x² - 4."]


def test_an_arc_that_begins_with_a_stretch_of_no_length_is_an_arc() -> None:
    still = "100 100 100 100 100 100 c"
    paths = [f"100 100 m {still if begun else ''} 100 127.6 77.6 150 50 150 c S" for begun in (False, True)]
    plain, begun = (next(iter(pages_of(pages([path.encode()]), "x.pdf"))).paths for path in paths)
    assert [path.pieces for path in begun] == [path.pieces for path in plain]
