"""Proofs and refusals: what a proof may rest on, and what shows that a claim is false or open."""

import pytest

from paperaudit.model.derivation import Derived, NotDetermined
from tests.geometry.asked import answers, outcome

TWO = ["triangle ABC", "triangle DEF"]


def reasons(result: Derived) -> list[str]:
    return [step.reason.name for step in result.derivations[0].steps if step.reason]


@pytest.mark.parametrize(
    ("given", "case"),
    [
        (["AB = DE", "BC = EF", "CA = FD"], "congruent-sss"),
        (["AB = DE", "BC = EF", "∠B = ∠E"], "congruent-sas"),
        (["AB = DE", "∠A = ∠D", "∠B = ∠E"], "congruent-asa"),
        (["AB = DE", "∠A = ∠D", "∠C = ∠F"], "congruent-asa"),
    ],
)
def test_each_case_of_congruence_is_named(given: list[str], case: str) -> None:
    """Euclid I.4, I.8, I.26."""
    result = outcome(TWO, given, "prove that △ABC ≡ △DEF")
    assert isinstance(result, Derived) and answers(result) == ["proved"], result
    assert case in reasons(result)


def test_congruence_leads_on_to_parallels_and_to_a_parallelogram() -> None:
    figure = ["parallelogram ABCD", "E lies on AB", "F lies on CD", "quadrilateral DEBF"]
    result = outcome(figure, ["AE = CF"], "prove that DEBF is a parallelogram")
    assert isinstance(result, Derived) and answers(result) == ["proved"], result


def test_a_false_claim_gets_a_figure_in_which_it_fails() -> None:
    result = outcome(["triangle ABC"], ["AB = 5", "BC = 6", "AC = 7"], "prove that ∠ABC = 90°")
    assert isinstance(result, Derived) and len(answers(result)) == 1, result
    assert answers(result)[0].startswith("false: ∠ABC = ") and "78.46°" in answers(result)[0]
    assert {name for name, _, _ in result.figure} == {"A", "B", "C"}


def test_what_is_missing_for_a_claim_is_named() -> None:
    """Two sides alone do not make triangles congruent; the third would."""
    result = outcome(TWO, ["AB = DE", "BC = EF"], "prove that △ABC ≡ △DEF")
    assert isinstance(result, NotDetermined) and len(result.cases) == 2, result
    assert result.missing == "AC = DF"


@pytest.mark.parametrize(
    ("figure", "given", "claim"),
    [
        (["triangle ABC", "D lies on AB", "E lies on AC", "DE ∥ BC"], [], "AD × AC = AE × AB"),
        (["triangle ABC", "D lies on BC", "segment AD"], ["∠BAC = 90°", "AD ⊥ BC"], "AB² = BD × BC"),
        (["triangle ABC", "D lies on BC", "AD ⊥ BC"], [], "AB² − BD² = AC² − DC²"),
        (["trapezium ABCD", "AB ∥ DC", "AC and BD intersect at E"], [], "AE × ED = BE × EC"),
        (
            [
                "triangle ABC",
                "D lies on AB",
                "E lies on AC",
                "F lies on AD",
                "segments DE, FE, DC",
                "DE ∥ BC",
                "FE ∥ DC",
            ],
            [],
            "AD² = AB × AF",
        ),
    ],
)
def test_products_and_squares_without_any_value(figure: list[str], given: list[str], claim: str) -> None:
    """Euclid I.47, VI.2, VI.4, VI.8; the last takes two ratios together."""
    result = outcome(figure, given, f"prove that {claim}")
    assert isinstance(result, Derived) and answers(result) == ["proved"], result
    assert result.derivations[0].steps[-1].statement.replace("−", "-") == claim.replace("−", "-")


def test_lines_that_meet_on_the_figure_are_not_parallel() -> None:
    """Their names have no letter in common, but both go through A."""
    figure = ["triangle ABC", "D is the midpoint of AB", "E is the midpoint of AC", "segment DE"]
    result = outcome(figure, [], "is DB ∥ EC?")
    assert isinstance(result, Derived) and answers(result) == ["no"], result


def test_readings_of_a_name_that_disagree_leave_a_claim_open() -> None:
    """An isosceles triangle whose equal sides are not named: AB = AC in one reading alone."""
    result = outcome(["isosceles triangle ABC"], ["∠A = 40°"], "prove that AB = AC")
    assert isinstance(result, NotDetermined), result


@pytest.mark.parametrize("stretch", [1.0, 2.5])
def test_a_stretched_sketch_changes_no_proof(stretch: float) -> None:
    at = {"A": (0, 0), "B": (4, 0), "C": (4, 4), "D": (0, 4), "E": (2, -1), "F": (3, 1), "G": (1, 2)}
    sketch = {name: (x * stretch, float(y)) for name, (x, y) in at.items()}
    result = outcome(["square ABCD", "square AEFG", "segments BE, DG"], [], "prove that BE = DG", sketch)
    assert isinstance(result, Derived) and answers(result) == ["proved"], result
    assert "congruent-sas" in reasons(result)
