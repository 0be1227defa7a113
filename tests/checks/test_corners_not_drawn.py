"""A polygon's corner that the drawing shows with another letter is a mismatch, though the text names it alone."""

from paperaudit.audit import audit
from paperaudit.readers.question_file import read_question_file

CYCLIC = """
questions:
  - number: 1
    text: {text} is a cyclic quadrilateral with ∠QPS = 95°. Calculate the size of ∠QRS.
    figure: ["segments PQ, QR, RS, SP", "P, Q, R and S lie on the circle"]
    given: ["∠QPS = 95°"]
    drawn: {drawn}
    sketch: {{P: [0, 6], Q: [7, 6], R: [6, 0], S: [1, 0]}}
    marks: 2
"""


def _mismatches(text: str, drawn: str = "true") -> list[str]:
    paper = read_question_file(CYCLIC.format(text=text, drawn=drawn), "t.yaml").whole()
    return [one.message for one in audit(paper).findings if one.name == "label-mismatch"]


def test_a_corner_with_another_letter_in_the_drawing_is_found() -> None:
    assert _mismatches("PQRT") == ["Question 1 names the point T, which the figure does not have."]


def test_the_drawn_corners_are_no_fault() -> None:
    assert _mismatches("PQRS") == []
