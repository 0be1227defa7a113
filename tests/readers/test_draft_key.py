"""A setter's key as rows: numbers, answers, mark codes and marks, in a table or row by row."""

from paperaudit.readers.draft.key_of_draft import key_of_rows
from tests.readers.typed_pages import lines_of


def told(page: str) -> list[tuple[str, str, int | None, str]]:
    key = key_of_rows(tuple(lines_of(page)), "key.pdf")
    assert not key.complaints
    return [(one.name, one.answer.text if one.answer else "", one.marks, " ".join(one.split)) for one in key.entries]


def test_columns_with_headings() -> None:
    page = """
              MARKING GUIDELINE
Question      Answer                             Split           Marks
1.1           x = 5                              M1 A1           2
1.2           4                                  A1              1
2             ∠ABC = 68°                         M1 R1 A1        3
"""
    assert told(page) == [
        ("1.1", "x = 5", 2, "M1 A1"),
        ("1.2", "4", 1, "A1"),
        ("2", "∠ABC = 68°", 3, "M1 R1 A1"),
    ]


def test_rows_of_working_with_codes() -> None:
    page = """
1.  (a)  3x = 15                                 M1
         x = 5                                   A1      (2)
    (b)  ∠ACB = 180° − 112° = 68°                M1 R1
         ∴ ∠ABC = 68°                            A1      [3]
2.  (i)  7/12  A1
    (ii) 0.25  B1
"""
    assert told(page) == [
        ("1.a", "x = 5", 2, "M1 A1"),
        ("1.b", "∠ABC = 68°", 3, "M1 R1 A1"),
        ("2.i", "7/12", None, "A1"),
        ("2.ii", "0.25", None, "B1"),
    ]


def test_numbers_in_one_piece_and_answers_that_are_numbers() -> None:
    page = """
SECTION A
1(a) 12     1(b) 5
2(a)(i)  x² − 9
2(a)(ii)  Answer: 4
3.  C
"""
    assert told(page)[:2] == [("1.a", "12", None, ""), ("1.b", "5", None, "")]
    assert told(page)[2:] == [("2.a.i", "x² − 9", None, ""), ("2.a.ii", "4", None, ""), ("3", "C", None, "")]


def test_a_page_without_numbers_is_said() -> None:
    key = key_of_rows(tuple(lines_of("\nAnswers to the test\n")), "key.pdf")
    assert "no answer with its part's number" in key.complaints[0].message
