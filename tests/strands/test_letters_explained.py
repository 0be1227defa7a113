"""A task whose letters the text explains is not answered as if they were free."""

import pytest

from paperaudit.audit import audit
from paperaudit.model.paper import Line, Paper, Part, Question, Section


def _verdict(shared: str, text: str) -> str:
    part = Part("1.a", "a", Line(text), marks=2)
    question = Question("1", (part,), Line(shared) if shared else None)
    return audit(Paper("Letters", (Section((question,)),))).parts[0].verdict


@pytest.mark.parametrize(
    ("shared", "text"),
    [
        ("Given A = 2x − 3 and B = x + 5.", "Simplify A + B."),
        ("Given A = 2x − 3 and B = x + 5.", "Solve A = B."),
        ("Let p = x + 1.", "Solve p² = 9."),
        ("It is given that y = 3x.", "Factorise xy + y."),
        ("", "Given A = 2x − 3 and B = x + 5, simplify A + B."),
    ],
)
def test_a_letter_that_is_explained_is_not_free(shared: str, text: str) -> None:
    assert _verdict(shared, text) == "not-read"


@pytest.mark.parametrize(
    ("shared", "text"),
    [
        ("", "Simplify a + 2a."),
        ("It is given that y = 3.", "Solve 2x − 7 = 9."),
        ("", "If a = 3, simplify a + 2a."),
    ],
)
def test_other_letters_are_free_and_a_value_is_put_in(shared: str, text: str) -> None:
    assert _verdict(shared, text) == "derived"
