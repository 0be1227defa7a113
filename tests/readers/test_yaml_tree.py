"""YAML that is broken or hostile: refused with a line, quickly, and without building anything."""

import time
from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from paperaudit.readers.question_file import read_question_file
from paperaudit.readers.yaml_tree import read_tree

BOMB = "a: &a [x, x]\n" + "".join(f"{name}: &{name} [*{above}, *{above}]\n" for above, name in pairwise("abcdefghij"))


@pytest.mark.parametrize(
    ("text", "line", "expected"),
    [
        ("a: 1\nb: !!python/object/apply:os.system [ls]", 2, "the tag tag:yaml.org,2002:python/object/apply:os.system"),
        ("!paper\na: 1", 1, "the tag !paper was read"),
        ("%TAG ! tag:example,2000:\n---\na: !b c", 2, "a %TAG line was read"),
        (BOMB, 1, "the anchor &a was read"),
        ("a: *b", 1, "the alias *b was read"),
        ("a: {b: 1}\n<<: {c: 2}", 2, "the merge key << was read"),
        ("a: 1\nb: 2\na: 3", 3, "the key 'a' was read twice, expected it once (it stands at line 1 too)"),
        ("a: 1\n---\nb: 2", 2, "a second document was read"),
        ("? [a]\n: b", 1, "expected a word"),
        ("a: [1, 2", 1, "this is not YAML"),
        ("a: AB : BC", 1, "expected quotes round a value that holds a colon"),
        ("a: [AB : BC = 2 : 3]", 1, "expected quotes round a value that holds a colon"),
        ("a:\n  b: `x`", 2, "cannot start any token"),
        ("a: 'no end", 1, "this is not YAML"),
        ("a: 1\nb: \x1b[2J", 2, "a control character was read"),
        ('a: "\\e[2J"', 1, "an escaped control character was read"),
        ('a: "\\ud800"', 1, "an escaped control character was read"),
        ("[" * 500_000, 1, "nested more than 12 deep"),
        ("- " * 200_000, 1, "nested more than 12 deep"),
        ("[" + "1, " * 300_000 + "]", 1, "more than 20000 values"),
        ("", 0, "the file is empty"),
        ("# a remark\n", 0, "the file is empty"),
    ],
    ids=lambda value: str(value)[:24],
)
def test_what_is_refused(text: str, line: int, expected: str) -> None:
    began = time.perf_counter()
    _, complaints = read_tree(text, "test.yaml")
    assert time.perf_counter() - began < 5
    assert [(one.place.line, expected in one.message) for one in complaints] == [(line, True)]


@settings(max_examples=150, deadline=None)
@given(st.text(alphabet=st.sampled_from("ab1:-[]{}?,&*!|>'\"%@` \n#°∠"), max_size=60))
def test_any_text_is_read_or_complained_of(text: str) -> None:
    found = read_question_file(text, "test.yaml")
    assert (found.paper is None) <= bool(found.complaints)
