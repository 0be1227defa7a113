"""The question file that a draft amounts to: read again it is the same tree, and every doubt has its comment."""

import pytest

from paperaudit.readers.tree import Entries, Node, plain
from paperaudit.readers.yaml_tree import read_tree
from paperaudit.reports.question_file import doubtful, render

FILES = [
    "questions: [{number: 1, ask: 2 + 2, marks: 1}]",
    """
title: "Term 2: hulls # and masts"
minutes: 45
cover: {questions: 3, pages: 4}
printed: [{page: 1}, {page: 2, numbered: false, smallest: 8.5, faintest: 0.7}]
captions: [Figure 1, "2"]
sections:
  - title: A
    total: 12
    questions:
      - number: "3.10"
        text: "Solve for x: it is long, % and # and longer, and so long that it takes two lines of print, ∠ABC = 40°"
        sketch: {A: [0.0, 1.5], B: [60.2, -4.0]}
        figure: ["segments AB, BC", "- dash", "yes", "[x]", "{y}", "&z", "*w", "!t", "a: b", "? q", "2026-11-26"]
        drawn: true
        figure_page: 2
        table: {Mass: ["1", "2.50"], Count: ["0x1F", "1e3"]}
        parts:
          - {number: a, answer: "17", marks: 3, split: [M1, A1], key_marks: 2, page: 3, space: 4}
          - {number: c, options: {A: "40", B: "- 5", "yes": "no"}}
          - {number: b, answer: "null", doubts: ["the hat over B could be over A", "~"]}
""",
]


def tree_of(text: str) -> Node:
    tree, complaints = read_tree(text, "t.yaml")
    assert tree is not None and not complaints
    return tree


@pytest.mark.parametrize("text", FILES)
def test_what_is_written_reads_as_the_same_tree(text: str) -> None:
    tree = tree_of(text)
    assert isinstance(tree, Entries)
    written = render(tree, "draft.pdf")
    assert plain(tree_of(written)) == plain(tree)
    assert render(tree, "draft.pdf") == written


def test_every_doubt_has_a_comment_in_front() -> None:
    tree = tree_of(FILES[1])
    assert isinstance(tree, Entries)
    lines = [line.strip() for line in render(tree, "my draft.pdf").splitlines()]
    assert lines[0].startswith("# Read from my draft.pdf.")
    assert lines[lines.index("doubts:") - 1] == "# Doubtful:"
    assert [text for text, _ in doubtful(tree)] == ["the hat over B could be over A", "~"]


def test_a_number_stays_a_number_and_a_text_a_text() -> None:
    tree = tree_of(FILES[1])
    assert isinstance(tree, Entries)
    written = render(tree, "draft.pdf")
    assert "marks: 3\n" in written and "answer: '17'" in written and "number: '3.10'" in written


def test_a_file_name_cannot_break_out_of_its_comment() -> None:
    tree = tree_of(FILES[0])
    assert isinstance(tree, Entries)
    written = render(tree, "evil.pdf\nquestions: []\n")
    assert plain(tree_of(written)) == plain(tree)
