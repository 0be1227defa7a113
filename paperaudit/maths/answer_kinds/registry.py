"""Which comparison each kind of answer has."""

from collections.abc import Callable, Mapping
from typing import TypeAlias

from paperaudit.maths.answer_kinds.bounds import compare_bound, compare_bounds, compare_interval
from paperaudit.maths.answer_kinds.choice import compare_choice
from paperaudit.maths.answer_kinds.digits import (
    compare_digits,
    compare_number_words,
    compare_place,
    compare_sign,
    compare_word,
)
from paperaudit.maths.answer_kinds.estimate import compare_estimate
from paperaudit.maths.answer_kinds.formula import compare_formula
from paperaudit.maths.answer_kinds.members import compare_members
from paperaudit.maths.answer_kinds.numbers import compare_in_order, compare_numbers, compare_one
from paperaudit.maths.answer_kinds.pairs import compare_solutions
from paperaudit.maths.answer_kinds.power import compare_power
from paperaudit.maths.answer_kinds.prime_product import compare_powers, compare_product
from paperaudit.maths.answer_kinds.recurring import compare_recurring
from paperaudit.maths.answer_kinds.solution_set import compare_set
from paperaudit.maths.answer_kinds.square_form import compare_nature, compare_square
from paperaudit.maths.answer_kinds.statistic import compare_statistic
from paperaudit.maths.answer_kinds.story import compare_story
from paperaudit.model.ask import Ask
from paperaudit.model.derivation import Answer, Comparison

Comparer: TypeAlias = Callable[[str, tuple[Answer, ...], Ask], Comparison]
"""The setter's text against the derived answers of one part: agrees, differs, or cannot be told."""

COMPARISONS: Mapping[str, Comparer] = {
    "bound": compare_bound,
    "bounds": compare_bounds,
    "choice": compare_choice,
    "completed square": compare_square,
    "digits": compare_digits,
    "error interval": compare_interval,
    "estimate": compare_estimate,
    "number words": compare_number_words,
    "formula": compare_formula,
    "nature": compare_nature,
    "numbers": compare_numbers,
    "numbers in order": compare_in_order,
    "one of numbers": compare_one,
    "place": compare_place,
    "power": compare_power,
    "prime powers": compare_powers,
    "prime product": compare_product,
    "recurring": compare_recurring,
    "set": compare_members,
    "sign": compare_sign,
    "solution set": compare_set,
    "solutions": compare_solutions,
    "story": compare_story,
    "statistic": compare_statistic,
    "word": compare_word,
}
"""By the `kind` of an Answer."""
