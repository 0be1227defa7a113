"""Rows become questions and parts: numbering styles, numbers in sentences, marks, totals, shared lead lines."""

import pytest

from paperaudit.readers.draft.draft_tree import TreeWriter
from paperaudit.readers.tree import plain
from tests.readers.typed_pages import outlined, told

STYLES = {
    "dots and brackets": (
        """
1.  Solve for x.
    (a) 3x = 12                                                                          (2)
    (b) x + 4 = 9                                                                        (1)
2.  Write 1/2 as a decimal.                                                              (1)
""",
        ["1 [] Solve for x.", "1.a [2] 3x = 12", "1.b [1] x + 4 = 9", "2 [1] Write 1/2 as a decimal."],
    ),
    "two numbers on a row": (
        """
3 (a) (i) Find the gradient of AB.                                                      [1]
      (ii) Find the length of AB.                                                       [2]
  (b) Find the mid-point of AB.                                                         [1]
4 (a) Factorise x² − 9.                                                                 [2]
""".replace("3 (a)", "1 (a)").replace("4 (a)", "2 (a)"),
        [
            "1 [] ",
            "1.a [] ",
            "1.a.i [1] Find the gradient of AB.",
            "1.a.ii [2] Find the length of AB.",
            "1.b [1] Find the mid-point of AB.",
            "2 [] ",
            "2.a [2] Factorise x² − 9.",
        ],
    ),
    "levels joined by dots": (
        """
QUESTION 1
1.1   Simplify 2x + 3x.                                                                  (1)
1.2   A shop sells rope.
      1.2.1   Find the price of 3 m.                                                     (2)
      1.2.2   Find the price of 5 m.                                                     (2)
QUESTION 2
2.1   Expand 3(x + 1).                                                                   (1)
""",
        [
            "1 [] ",
            "1.1 [1] Simplify 2x + 3x.",
            "1.2 [] A shop sells rope.",
            "1.2.1 [2] Find the price of 3 m.",
            "1.2.2 [2] Find the price of 5 m.",
            "2 [] ",
            "2.1 [1] Expand 3(x + 1).",
        ],
    ),
    "levels joined by dots without headings": (
        """
1.1   Simplify 2x + 3x.                                                                  (1)
1.2   Expand 3(x + 1).                                                                   (1)
2.1   Factorise x² − 4.                                                                  (2)
""",
        ["1 [] ", "1.1 [1] Simplify 2x + 3x.", "1.2 [1] Expand 3(x + 1).", "2 [] ", "2.1 [2] Factorise x² − 4."],
    ),
    "question words and brackets on one side": (
        """
Q1. Work out these.
a) 3 + 4                                                                             1 mark
b) 9 − 5                                                                             1 mark
Q2. Round 3,47 to one decimal place.                                                2 marks
""",
        ["1 [] Work out these.", "1.a [1] 3 + 4", "1.b [1] 9 − 5", "2 [2] Round 3,47 to one decimal place."],
    ),
}


@pytest.mark.parametrize("name", STYLES)
def test_a_style_of_numbering(name: str) -> None:
    page, expected = STYLES[name]
    assert told(page) == [" ".join(line.split()) for line in expected]


def test_numbers_within_sentences_are_no_questions() -> None:
    page = """
1.  The sum of two numbers is 12, and one of them is three times as large as the other, so
    2. is too small. Use your answer to find both of them and to check the statement in part
    (a) of the example above.                                                            (3)
2.  Find x if f(3) = 5 and f(x) = 8.                                                     (2)
"""
    assert [line.split()[0] for line in told(page)] == ["1", "2"]


def test_a_gap_and_a_repeat_are_kept_as_printed() -> None:
    page = """
1.  Find 3 + 4.                                                                          (1)
2.  Find 5 + 4.                                                                          (1)
4.  Find 6 + 4.                                                                          (1)
4.  Find 7 + 4.                                                                          (1)
5.  Find 8 + 4.                                                                          (1)
"""
    assert [line.split()[0] for line in told(page)] == ["1", "2", "4", "4", "5"]


def test_instructions_on_the_cover_are_no_questions() -> None:
    page = """
          MATHEMATICS TEST
INSTRUCTIONS
1.  Answer all the questions.
2.  Show all working.
3.  This paper consists of 2 questions.
---
1.  Find 3 + 4.                                                                          (1)
2.  Find 5 + 4.                                                                          (1)
"""
    outline = outlined(page)
    assert len(outline.questions()) == 2
    assert len(outline.cover) == 5


def test_totals_go_to_what_they_are_for() -> None:
    page = """
SECTION A (5 marks)
1.  Work these out.
    (a) 3 + 4                                                                            (2)
    (b) 3 × 4                                                                            (3)
                                                                                         [5]
SECTION B: Algebra
2.  Solve these.
    (a) x + 4 = 9                                                                        (2)
    (b) 3x = 12                                                                          (4)
                                                                                         [6]
                                                             (Total for Section B: 6 marks)
                                                                                TOTAL: 11
"""
    outline = outlined(page)
    assert [section.total.number for section in outline.sections if section.total] == [5, 6]
    assert [question.total.number for question in outline.questions() if question.total] == [5, 6]


def test_a_lead_line_goes_before_the_parts_that_follow_it() -> None:
    page = """
1.  Work out:
    (a) 3 + 4                                                                            (2)
    (b) 3 × 4                                                                            (3)
    Solve for x:
    (c) x + 4 = 9                                                                        (2)
    (d) 3x = 12                                                                          (2)
2.  Find 8 + 9.                                                                          (1)
"""
    assert told(page) == [
        "1 []",
        "1.a [2] Work out: 3 + 4",
        "1.b [3] Work out: 3 × 4",
        "1.c [2] Solve for x: x + 4 = 9",
        "1.d [2] Solve for x: 3x = 12",
        "2 [1] Find 8 + 9.",
    ]


def test_marks_that_the_end_of_a_row_breaks_are_whole() -> None:
    page = """
1.  Find the size of the angle AOB and give a reason for every step of your working. (2
    points)
2.  Find 8 + 9.                                                                 (1 point)
"""
    assert told(page) == [
        "1 [2] Find the size of the angle AOB and give a reason for every step of your working.",
        "2 [1] Find 8 + 9.",
    ]


def test_small_letters_below_a_question_are_options() -> None:
    page = """
1.  a. What is 20% of 45?                                                             (2)
       (a) 5       (b) 9       (c) 20       (d) 25
    b. Calculate:
       (a) 4 + 5                                                                      (1)
       (b) 4 − 5                                                                      (1)
       (c) 4 × 5                                                                      (1)
"""
    (question,) = outlined(page).questions()
    assert [option.cell.text for option in question.parts[0].options] == ["5", "9", "20", "25"]
    assert [part.number for part in question.parts[1].parts] == ["a", "b", "c"]


def test_parts_side_by_side_are_read_along_the_rows() -> None:
    page = """
1.  Work out:
    (a) 3 + 4                  (1)     (b) 5 − 2                  (1)     (c) 6 × 7          (2)
    (d) 3 + 4 with a long      (1)     (e) 8 ÷ 2                  (2)
        second row
2.  Find 8 + 9.                                                                           (1)
"""
    assert told(page) == [
        "1 [] Work out:",
        "1.a [1] 3 + 4",
        "1.b [1] 5 − 2",
        "1.c [2] 6 × 7",
        "1.d [1] 3 + 4 with a long second row",
        "1.e [2] 8 ÷ 2",
        "2 [1] Find 8 + 9.",
    ]


def test_parts_side_by_side_are_read_down_the_columns() -> None:
    page = """
1.  Work out:
    1.1  3 + 4                   (1)         1.3  5 − 2                  (1)
    1.2  4 ÷ 2                   (2)         1.4  8 ÷ 2                  (2)
    Now solve for x:
    1.5  3x = 6                                                          (2)
"""
    assert told(page) == [
        "1 []",
        "1.1 [1] Work out: 3 + 4",
        "1.2 [2] Work out: 4 ÷ 2",
        "1.3 [1] Work out: 5 − 2",
        "1.4 [2] Work out: 8 ÷ 2",
        "1.5 [2] Now solve for x: 3x = 6",
    ]


def test_a_row_at_the_margin_between_parts_goes_before_those_behind_it() -> None:
    page = """
QUESTION 5
5.1   Find the value of x.                                                               (2)
5.2   Solve 2x = 8.                                                                      (2)
In △ABC, AB = 8 cm and AC = 5 cm.
5.3   Calculate the length of BC.                                                        (3)
QUESTION 6
6.1   Expand 3(x + 1).                                                                   (1)
"""
    assert told(page) == [
        "5 []",
        "5.1 [2] Find the value of x.",
        "5.2 [2] Solve 2x = 8.",
        "5.3 [3] In △ABC, AB = 8 cm and AC = 5 cm. Calculate the length of BC.",
        "6 []",
        "6.1 [1] Expand 3(x + 1).",
    ]


def test_marks_right_behind_mathematics_are_no_factor() -> None:
    page = """
1.  Calculate:
    (a) (−5) × 4 + 12 (2)
    (b) 2.4 × 0.5 (1)
    (c) 3(4) + 2(5) (1)
2.  Find the median. (1)
3.  Write down f(3). (2)
"""
    assert told(page) == [
        "1 [] Calculate:",
        "1.a [2] (−5) × 4 + 12",
        "1.b [1] 2.4 × 0.5",
        "1.c [1] 3(4) + 2(5)",
        "2 [1] Find the median.",
        "3 [2] Write down f(3).",
    ]


def test_a_bracket_that_may_be_marks_is_a_doubt() -> None:
    page = """
1.  Calculate (−5) × 4 + 12 (2)
2.  Find the median of 3, 4, 8.                                                          (1)
"""
    tree = TreeWriter("t.pdf").tree(outlined(page))
    text = str(tree)
    assert "behind the text may be its marks" in text


def test_the_question_number_may_come_again_with_every_part() -> None:
    page = """
Problem 1. (4 points) Compute.
1a) 3 + 4                                                                             (2 pts)
1b) 9 − 5                                                                             (2 pts)
Problem 2. (3 points) Find the length of the longest side of the triangle and
the size of its smallest angle.
"""
    assert told(page) == [
        "1 [4] Compute.",
        "1.a [2] 3 + 4",
        "1.b [2] 9 − 5",
        "2 [3] Find the length of the longest side of the triangle and the size of its smallest angle.",
    ]


def test_bare_numbers_at_the_right_edge_are_marks() -> None:
    page = """
1.  Work out.
    a.  3 + 4                                                                              2
    b.  The sum of 9 and 5, and then the difference of these two numbers.                  3
2.  Find 8 + 9 and give the answer in words, and then write it in figures to check it here. 1
3.  Write down the number of days in a week.                                               1
"""
    assert [line.split("]")[0] for line in told(page)] == ["1 [", "1.a [2", "1.b [3", "2 [1", "3 [1"]


def test_a_lead_line_for_several_questions_goes_before_each_of_them() -> None:
    page = """
        Number test
In questions 1 to 2, write as a fraction:
1   0.25                                                                                  /1
2   0.6                                                                                   /1
3   Find 7 × 8.                                                                           /1
"""
    assert told(page) == [
        "1 [1] In questions 1 to 2, write as a fraction: 0.25",
        "2 [1] In questions 1 to 2, write as a fraction: 0.6",
        "3 [1] Find 7 × 8.",
    ]


def test_a_new_section_may_number_in_another_dress() -> None:
    page = """
SECTION A
Circle the letter of the right answer.
1.  What is 3 + 4?                                                                        (1)
SECTION B
    2   Find 5 + 6.                                                                       (2)
"""
    assert told(page) == ["1 [1] What is 3 + 4?", "2 [2] Find 5 + 6."]


def test_marks_in_two_dresses_at_one_part_are_a_doubt() -> None:
    page = """
Question 1 (4 marks)
Write down the value of f                                                                (2)
Question 2 (1 mark)
Find 3 + 4.
"""
    first, second = plain(TreeWriter("draft.pdf").tree(outlined(page)))["questions"]  # type: ignore[index]
    assert (first["marks"], first["doubts"]) == ("4", ["different marks stand here: 4 and 2"])
    assert second["marks"] == "1" and "doubts" not in second
