"""A part with a figure of its own has a sketch of its own, which settles what its drawing settles."""

from paperaudit.audit import audit
from paperaudit.model.derivation import Derived
from paperaudit.model.paper import Part, Question, sketch_of
from paperaudit.readers.question_file import read_question_file

TWO_CIRCLES = """
questions:
  - number: 1
    parts:
      - number: a
        text: Calculate the size of ∠ACB.
        figure: ["circle with centre O through A, B and C", "segments OA, OB, AC, BC"]
        given: ["∠AOB = 130°"]
        marks: 2
        sketch: {O: [0, 0], A: [-9, -4], B: [9, -4], C: [1, 10]}
      - number: b
        text: Calculate the size of ∠ACB.
        figure: ["circle with centre O through A, B and C", "segments OA, OB, AC, BC"]
        given: ["∠AOB = 130°"]
        marks: 2
        sketch: {O: [0, 0], A: [-9, -4], B: [9, -4], C: [0, -10]}
"""


def test_each_part_goes_by_its_own_drawing() -> None:
    parts = audit(read_question_file(TWO_CIRCLES, "t.yaml").whole()).parts
    found = [one.outcome.answers[0].text for one in parts if isinstance(one.outcome, Derived)]
    assert found == ["65°", "115°"]


def test_without_a_drawing_both_are_possible() -> None:
    text = "\n".join(line for line in TWO_CIRCLES.splitlines() if "sketch" not in line)
    assert [one.verdict for one in audit(read_question_file(text, "t.yaml").whole()).parts] == ["several", "several"]


def test_a_drawing_of_the_question_serves_beside_the_part_s_unless_a_letter_is_in_both() -> None:
    part = Part("1.a", "a", sketch=(("C", 1.0, 1.0),))
    apart = Question("1", (part,), sketch=(("A", 0.0, 0.0),))
    clashing = Question("1", (part,), sketch=(("A", 0.0, 0.0), ("C", 5.0, 5.0)))
    assert sketch_of(apart, part) == (("A", 0.0, 0.0), ("C", 1.0, 1.0))
    assert sketch_of(clashing, part) == (("C", 1.0, 1.0),)
