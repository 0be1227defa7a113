"""Which comparison each kind of answer has."""

from collections.abc import Callable, Mapping
from typing import TypeAlias

from paperaudit.maths.answer_kinds.choice import compare_choice
from paperaudit.maths.answer_kinds.digits import compare_digits, compare_place, compare_sign
from paperaudit.maths.answer_kinds.numbers import compare_in_order, compare_numbers
from paperaudit.maths.answer_kinds.prime_product import compare_powers, compare_product
from paperaudit.maths.answer_kinds.statistic import compare_statistic
from paperaudit.maths.answer_kinds.story import compare_story
from paperaudit.model.ask import Ask
from paperaudit.model.derivation import Answer, Comparison

Comparer: TypeAlias = Callable[[str, tuple[Answer, ...], Ask], Comparison]
"""The setter's text against the derived answers of one part: agrees, differs, or cannot be told."""

COMPARISONS: Mapping[str, Comparer] = {
    "choice": compare_choice,
    "digits": compare_digits,
    "numbers": compare_numbers,
    "numbers in order": compare_in_order,
    "place": compare_place,
    "prime powers": compare_powers,
    "prime product": compare_product,
    "sign": compare_sign,
    "story": compare_story,
    "statistic": compare_statistic,
}
"""By the `kind` of an Answer."""
