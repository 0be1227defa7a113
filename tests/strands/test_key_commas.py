"""A key's decimal comma may be printed with a gap behind it, as typesetting of mathematics does."""

import pytest

from paperaudit.audit import audit
from paperaudit.model.paper import Line, Paper, Part, Question, Section


@pytest.mark.parametrize(
    ("text", "key", "verdict"),
    [
        ("Solve 4x = 10.", "x = 2, 5", "confirmed"),
        ("Solve 2x² + 3x − 7 = 0, correct to 2 decimal places.", "x = 1, 27 or x = −2, 77", "confirmed"),
        ("Solve 4x = 10.", "x = 2, 7", "differs"),
        ("Solve x² − 7x + 10 = 0.", "x = 2, 5", "confirmed"),
    ],
)
def test_the_reading_that_agrees_counts(text: str, key: str, verdict: str) -> None:
    part = Part("1.a", "a", Line(text), answer=Line(key), marks=2)
    paper = Paper("Commas", (Section((Question("1", (part,)),)),))
    assert audit(paper).parts[0].verdict == verdict
