"""Each expected error leads to its own wrong answer, not to the right one, and is found behind a key that has it."""

import io

import pytest
from ruamel.yaml import YAML

from paperaudit.audit import audit_read
from paperaudit.marking.expected_errors.expected_error import ExpectedError
from paperaudit.marking.expected_errors.occasions import Occasion
from paperaudit.marking.expected_errors.wrong_answers import (
    EXPECTED_ERRORS,
    hidden_errors,
    probable_errors,
    wrong_answers,
)
from paperaudit.model.audited import AuditedPart
from paperaudit.readers.question_file import read_question_file


def audited(question: dict[str, object]) -> AuditedPart:
    text = io.StringIO()
    YAML(typ="safe", pure=True).dump({"questions": [{"number": 1, "marks": 3, **question}]}, text)
    return audit_read(read_question_file(text.getvalue(), "errors.yaml")).parts[0]


@pytest.mark.parametrize("error", EXPECTED_ERRORS, ids=lambda error: error.name)
def test_a_key_with_the_wrong_answer_shows_the_error(error: ExpectedError) -> None:
    part = audited({**error.example, "answer": error.gives})
    assert part.verdict == "differs", part.outcome
    assert error in probable_errors(part)
    assert error not in hidden_errors(part)


@pytest.mark.parametrize("error", EXPECTED_ERRORS, ids=lambda error: error.name)
def test_a_right_key_shows_none(error: ExpectedError) -> None:
    part = audited(error.example)
    right = part.outcome.answers[0].text  # type: ignore[union-attr]
    assert probable_errors(audited({**error.example, "answer": right})) == ()


@pytest.mark.parametrize(
    "question, name",
    [
        ({"ask": "calculate 2²"}, "power as multiple"),  # 2 × 2 = 2²
        ({"ask": "solve 2x = 4"}, "coefficient subtracted"),  # 4/2 = 4 − 2
        ({"figure": ["rectangle ABCD"], "given": ["AB = 6 cm", "BC = 3 cm"], "ask": "area of ABCD"},
         "perimeter for area"),  # 18 both ways
        ({"figure": ["triangle ABC"], "given": ["AB = AC", "∠ABC = 60°"], "ask": "∠BAC"}, "base and apex swapped"),
    ],
)  # fmt: skip
def test_numbers_that_hide_an_error(question: dict[str, object], name: str) -> None:
    """The clashes that the note behind the table of documented errors names."""
    assert name in [error.name for error in hidden_errors(audited(question))]


def test_an_error_has_a_name_of_its_own() -> None:
    names = [error.name for error in EXPECTED_ERRORS]
    assert len(names) == len(set(names))


def test_most_rows_of_the_table_of_documented_errors_are_formulas() -> None:
    """Not here: 1 and 57 (measuring), 2 (arms of angles), 6 (an unstated look), 22 (words reversed), 63 (rounding)."""
    rows = {error.row for error in EXPECTED_ERRORS}
    assert rows == set(range(1, 64)) - {1, 2, 6, 22, 57, 63}


def test_a_part_without_an_answer_has_no_wrong_ones() -> None:
    assert wrong_answers(Occasion(audited({"text": "Describe a spinnaker."}))) == ()
