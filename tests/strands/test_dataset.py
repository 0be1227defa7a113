"""Generated questions in their own wording: right or declined, never wrong, and 95 of 100 right over all."""

import pytest

from tests.strands.dataset import Generated, judge, questions, tally, types_named

pytestmark = pytest.mark.filterwarnings("ignore::DeprecationWarning:random")
COUNT = 50
LEAST_RIGHT = 0.9
"""Of one type; over all of them it is more, `OVER_ALL`."""
OVER_ALL = 0.95
LOWER = {"numbers.is_prime_composed": 0.8, "numbers.place_value_composed": 0.8, "numbers.lcm_composed": 0.8,
         "numbers.list_prime_factors_composed": 0.8}  # fmt: skip
"""Types in which some questions ask for a calculation of letters in place of a number, which is not read."""

# The types that a school paper could ask, by strand group: each group adds its own at the end of its line.
NUMBER: tuple[str, ...] = (
    "arithmetic.add_or_sub",
    "arithmetic.add_sub_multiple",
    "arithmetic.add_or_sub_in_base",
    "arithmetic.mul",
    "arithmetic.div",
    "arithmetic.mul_div_multiple",
    "arithmetic.mixed",
    "arithmetic.nearest_integer_root",
    "arithmetic.simplify_surd",
    "comparison.pair",
    "comparison.kth_biggest",
    "comparison.closest",
    "comparison.sort",
    "numbers.base_conversion",
    "numbers.gcd",
    "numbers.lcm",
    "numbers.div_remainder",
    "numbers.is_prime",
    "numbers.is_factor",
    "numbers.round_number",
    "numbers.place_value",
    "numbers.list_prime_factors",
    "numbers.gcd_composed",
    "numbers.lcm_composed",
    "numbers.div_remainder_composed",
    "numbers.is_prime_composed",
    "numbers.is_factor_composed",
    "numbers.round_number_composed",
    "numbers.place_value_composed",
    "numbers.list_prime_factors_composed",
)
RATIO: tuple[str, ...] = ("measurement.conversion", "measurement.time")
ALGEBRA: tuple[str, ...] = (
    "algebra.linear_1d",
    "algebra.linear_1d_composed",
    "algebra.linear_2d",
    "algebra.linear_2d_composed",
    "algebra.polynomial_roots",
    "algebra.polynomial_roots_composed",
    "polynomials.add",
    "polynomials.compose",
    "polynomials.evaluate",
    "polynomials.evaluate_composed",
    "polynomials.coefficient_named",
    "polynomials.collect",
    "polynomials.expand",
    "polynomials.simplify_power",
)
FUNCTIONS: tuple[str, ...] = (
    "algebra.sequence_next_term",
    "algebra.sequence_nth_term",
    "calculus.differentiate",
    "calculus.differentiate_composed",
)
CHANCE: tuple[str, ...] = ("probability.swr_p_sequence", "probability.swr_p_level_set")
SCHOOL = (*NUMBER, *RATIO, *ALGEBRA, *FUNCTIONS, *CHANCE)


@pytest.fixture(scope="module")
def rights() -> dict[str, float]:
    """The share of right ones of each type that was tallied in this run."""
    return {}


@pytest.mark.parametrize("kind", SCHOOL)
def test_a_type_is_right_or_declined(kind: str, rights: dict[str, float]) -> None:
    table = tally(kind, COUNT)
    rights[kind] = table.right
    assert [line for line in table.others if line.startswith("wrong")] == []
    assert table.right >= LOWER.get(kind, LEAST_RIGHT), table.others


def test_nearly_all_are_right_over_all(rights: dict[str, float]) -> None:
    assert not rights or sum(rights.values()) / len(rights) >= OVER_ALL, rights


def test_every_type_of_the_package_makes_questions() -> None:
    kinds = types_named(())
    assert len(kinds) == 56 and set(SCHOOL) <= set(kinds)
    for kind in kinds:
        assert questions(kind, 1)[0].text


def test_questions_are_the_same_each_time() -> None:
    assert questions("arithmetic.mul", 5) == questions("arithmetic.mul", 5)
    assert questions("arithmetic.mul", 5) != questions("arithmetic.mul", 5, seed=2)


def test_a_wrong_key_is_told_from_a_right_one() -> None:
    assert judge(Generated("Calculate 2 + 3 * 4.", "14"))[0] == "right"
    assert judge(Generated("Calculate 2 + 3 * 4.", "20"))[0] == "wrong"
    assert judge(Generated("Calculate the number of sails.", "20"))[0] == "declined"
