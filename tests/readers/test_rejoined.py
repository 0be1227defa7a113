"""Unquoted statements that YAML takes apart at their commas."""

import pytest

from paperaudit.readers.question_file import read_question_file


@pytest.mark.parametrize(
    ("written", "expected"),
    [
        ("[triangle ABC, BC is produced to D]", ["triangle ABC", "BC is produced to D"]),
        ("[segments AB, CD, AE]", ["segments AB, CD, AE"]),
        (
            "[segments AB, CD, B and C lie on opposite sides of AD]",
            ["segments AB, CD", "B and C lie on opposite sides of AD"],
        ),
        ("[A, B, C are collinear]", ["A, B, C are collinear"]),
        ("[triangle ABC, A, B, D are collinear]", ["triangle ABC", "A, B, D are collinear"]),
        ("[triangle ABC, OA, OB, OC in order round O]", ["triangle ABC", "OA, OB, OC in order round O"]),
        (
            "[segments AB, CD, EF, AB and EF intersect at G, CD and EF intersect at H]",
            ["segments AB, CD, EF", "AB and EF intersect at G", "CD and EF intersect at H"],
        ),
        ("[segments AB, CD and EF, AB and EF intersect at G]", ["segments AB, CD and EF", "AB and EF intersect at G"]),
        (
            "[points A, B, C, D, A and B lie on opposite sides of CD]",
            ["points A, B, C, D", "A and B lie on opposite sides of CD"],
        ),
        ("[triangle ABC, AB, CD and EF intersect at O]", ["triangle ABC", "AB, CD and EF intersect at O"]),
        ("[triangle ABC, A, B and D are collinear]", ["triangle ABC", "A, B and D are collinear"]),
        ("[segments AB, OA, OB and OC in order round O]", ["segments AB", "OA, OB and OC in order round O"]),
        ("[segments AB, D lies on AC]", ["segments AB", "D lies on AC"]),
        ("[circle with centre O through A, B and C]", ["circle with centre O through A, B and C"]),
        ('["segments AB", CD]', ["segments AB", "CD"]),
        ('["segments AB, CD", AB ∥ CD]', ["segments AB, CD", "AB ∥ CD"]),
        ("[AB]", ["AB"]),
        ("[triangle ABC, D on AB, E on AC, DE]", ["triangle ABC", "D on AB", "E on AC", "DE"]),
        ("[quadrilateral ABCD, AC, BD]", ["quadrilateral ABCD", "AC", "BD"]),
        ("[M is the midpoint of AB, MC]", ["M is the midpoint of AB", "MC"]),
        ("[D and E are the midpoints of AB, AC]", ["D and E are the midpoints of AB, AC"]),
    ],
)
def test_bare_names_go_to_the_statement_that_they_belong_to(written: str, expected: list[str]) -> None:
    paper = read_question_file(f"questions: [{{number: 1, figure: {written}}}]", "test.yaml").whole()
    assert [line.text for line in next(paper.questions()).figure] == expected
