"""Which comparison each kind of answer has."""

from collections.abc import Callable, Mapping
from typing import TypeAlias

from paperaudit.maths.answer_kinds.bounds import compare_bound, compare_bounds, compare_interval
from paperaudit.maths.answer_kinds.choice import compare_choice
from paperaudit.maths.answer_kinds.clock import compare_clock
from paperaudit.maths.answer_kinds.digits import (
    compare_digits,
    compare_number_words,
    compare_place,
    compare_sign,
    compare_word,
)
from paperaudit.maths.answer_kinds.estimate import compare_estimate
from paperaudit.maths.answer_kinds.formula import compare_formula
from paperaudit.maths.answer_kinds.function_forms import compare_function, compare_integral, compare_stationary
from paperaudit.maths.answer_kinds.members import compare_members
from paperaudit.maths.answer_kinds.nth_term import compare_no_sum, compare_nth_term, compare_which_term
from paperaudit.maths.answer_kinds.numbers import compare_in_order, compare_numbers, compare_one
from paperaudit.maths.answer_kinds.pairs import compare_solutions
from paperaudit.maths.answer_kinds.plane import (
    compare_circle,
    compare_equation,
    compare_equations,
    compare_intercept,
    compare_points,
    compare_undefined,
)
from paperaudit.maths.answer_kinds.power import compare_power
from paperaudit.maths.answer_kinds.prime_product import compare_powers, compare_product
from paperaudit.maths.answer_kinds.ratio import compare_ratio
from paperaudit.maths.answer_kinds.recurring import compare_recurring
from paperaudit.maths.answer_kinds.solution_set import compare_set
from paperaudit.maths.answer_kinds.square_form import compare_nature, compare_square
from paperaudit.maths.answer_kinds.statistic import compare_statistic
from paperaudit.maths.answer_kinds.story import compare_story
from paperaudit.maths.answer_kinds.vectors import compare_vector
from paperaudit.maths.answer_kinds.waves import compare_general, compare_range
from paperaudit.model.ask import Ask
from paperaudit.model.derivation import Answer, Comparison

Comparer: TypeAlias = Callable[[str, tuple[Answer, ...], Ask], Comparison]
"""The setter's text against the derived answers of one part: agrees, differs, or cannot be told."""

COMPARISONS: Mapping[str, Comparer] = {
    "bound": compare_bound,
    "bounds": compare_bounds,
    "centre and radius": compare_circle,
    "choice": compare_choice,
    "clock": compare_clock,
    "completed square": compare_square,
    "digits": compare_digits,
    "equation": compare_equation,
    "equations": compare_equations,
    "error interval": compare_interval,
    "estimate": compare_estimate,
    "formula": compare_formula,
    "function": compare_function,
    "general solution": compare_general,
    "integral": compare_integral,
    "intercept": compare_intercept,
    "nature": compare_nature,
    "no sum": compare_no_sum,
    "nth term": compare_nth_term,
    "number words": compare_number_words,
    "numbers in order": compare_in_order,
    "numbers": compare_numbers,
    "one of numbers": compare_one,
    "place": compare_place,
    "point": compare_points,
    "points": compare_points,
    "power": compare_power,
    "prime powers": compare_powers,
    "prime product": compare_product,
    "range": compare_range,
    "ratio": compare_ratio,
    "recurring": compare_recurring,
    "set": compare_members,
    "sign": compare_sign,
    "solution set": compare_set,
    "solutions": compare_solutions,
    "stationary points": compare_stationary,
    "statistic": compare_statistic,
    "story": compare_story,
    "undefined": compare_undefined,
    "vector": compare_vector,
    "which term": compare_which_term,
    "word": compare_word,
}
"""By the `kind` of an Answer."""
