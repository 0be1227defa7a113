"""A setter's own answers laid on a paper."""

import io
import textwrap
from pathlib import Path
from typing import Any

import openpyxl
import pytest

from paperaudit.readers.answers import with_answers
from paperaudit.readers.question_file import PaperRead, read_question_file
from paperaudit.readers.source import read_answers

PAPER = """\
    questions:
      - number: 1
        parts: [{number: a, answer: 60°, marks: 2}, {number: b, marks: 3, split: [M2, A1]}]
      - {number: 2, marks: 3}
    """


@pytest.fixture
def paper() -> PaperRead:
    return read_question_file(textwrap.dedent(PAPER), "paper.yaml")


def laid(paper: PaperRead, path: Path) -> list[tuple[str | None, int | None, int | None, tuple[str, ...]]]:
    whole = with_answers(paper, read_answers(str(path))).whole()
    return [
        (part.answer.text if part.answer else None, part.marks, part.key_marks, part.split) for _, part in whole.parts()
    ]


WANTED = [("68°", 2, None, ()), ("44°", 3, 2, ("M1", "A1")), ("x = 17", 3, None, ())]


@pytest.mark.parametrize(
    "key",
    [
        "answers:\n  1.a: 68°\n  1.b: {answer: 44°, marks: 2, split: [M1, A1]}\n  2: x = 17\n",
        "1(a): 68°\n1b: {answer: 44°, marks: 2, split: [M1, A1]}\n2: x = 17\n",
        "1: {a: 68°, b: {answer: 44°, marks: 2, split: [M1, A1]}}\n2: {answer: x = 17}\n",
        "1 (a): 68°\nQuestion 1 b: {answer: 44°, marks: 2, split: [M1, A1]}\n'2 ': x = 17\n",
        "- {id: 1.a, answer: 68°}\n- {question: 1, part: b, answer: 44°, marks: 2, split: [M1, A1]}\n"
        "- {id: 2, answer: x = 17}\n",
        "questions:\n- number: 1\n  parts: [{number: a, answer: 68°}, {number: b, answer: 44°, marks: 2, "
        "split: [M1, A1]}]\n- {number: 2, answer: x = 17}\n",
    ],
)
def test_every_way_of_writing_a_key_means_the_same(paper: PaperRead, tmp_path: Path, key: str) -> None:
    path = tmp_path / "key.yaml"
    path.write_text(key, encoding="utf-8")
    assert laid(paper, path) == WANTED


@pytest.mark.parametrize(
    "rows",
    [
        [["Part", "Answer", "Marks", "Split"], ["1.a", "68°"], ["1(b)", "44°", 2, "M1 A1"], [2, "x = 17"]],
        [
            ["Question", "Part", "Answer", "Marks", "Split"],
            [1, "a", "68°"],
            [1, "b", "44°", 2, "M1, A1"],
            [2, None, "x = 17"],
        ],
        [
            ["Question", "Part", "Ask", "Answer", "Marks", "Split"],
            [1, "a", None, "68°"],
            [None, "b", None, "44°", 2, "M1 A1"],
            [2, None, None, "x = 17"],
        ],
    ],
)
def test_a_key_may_be_a_workbook(paper: PaperRead, tmp_path: Path, rows: list[list[Any]]) -> None:
    made = openpyxl.Workbook()
    for row in rows:
        made.worksheets[0].append(row)
    written = io.BytesIO()
    made.save(written)
    path = tmp_path / "key.xlsx"
    path.write_bytes(written.getvalue())
    assert laid(paper, path) == WANTED


@pytest.mark.parametrize(
    ("key", "expected"),
    [
        ("1.c: 3", ["line 1: the part '1.c' was read, expected one of 1.a, 1.b, 2"]),
        ("1: {a: 3, c: 4}", ["line 1: the part '1.c' was read, expected one of 1.a, 1.b, 2"]),
        ("1.a: 3\n1(a): 4", ["line 2: the part '1.a' was read twice"]),
        ("1.a: {awnser: 3}", ["line 1: part 1.a: the unknown key 'awnser'"]),
        (
            "1.a: [3, 4]\n2: {marks: many}",
            ["line 1: part 1.a: answer is a list of 2", "line 2: part 2: marks is 'many'"],
        ),
        ("answers: {1.a: 3}\nanwsers: {}", ["line 2: the unknown key 'anwsers'"]),
        ("hello", ["line 1: 'hello' was read, expected answers by part"]),
        ("1.a: !!set {}", ["line 1: the tag"]),
    ],
)
def test_complaints_about_a_key(paper: PaperRead, tmp_path: Path, key: str, expected: list[str]) -> None:
    path = tmp_path / "key.yaml"
    path.write_text(key, encoding="utf-8")
    found = with_answers(paper, read_answers(str(path))).complaints
    assert len(found) == len(expected)
    for one, words in zip(found, expected, strict=True):
        assert one.describe().startswith(f"{path}, {words}")
