"""Errors with the order of decimals and fractions; their tasks are loaded by need."""

from collections.abc import Callable, Iterator
from fractions import Fraction

from paperaudit.marking.expected_errors.expected_error import ExpectedError
from paperaudit.marking.expected_errors.occasions import Occasion
from paperaudit.model.expression import Expression, Number, NumberForm
from paperaudit.model.topic import TopicTask

Rank = Callable[[Number], Fraction]
"""What a learner goes by in place of the size."""


class _Picked:
    """The number that is picked where all numbers have one form and are ranked by something else than their size."""

    def __init__(self, form: NumberForm, rank: Rank) -> None:
        self._form = form
        self._rank = rank

    def __call__(self, occasion: Occasion) -> Iterator[Expression]:
        if occasion.part.strand != "number" or not isinstance(occasion.task, TopicTask):
            return
        from paperaudit.model.number_task import Picked

        task = occasion.task
        if not isinstance(task, Picked) or task.which == "closest" or task.rank != 1:
            return
        numbers = [one for one in task.numbers if isinstance(one, Number) and one.form is self._form and one.value > 0]
        if len(numbers) < len(task.numbers) or len({one.value // 1 for one in numbers}) > 1:
            return
        ranks = [self._rank(number) for number in numbers]
        best = (max if task.which == "biggest" else min)(ranks)
        if ranks.count(best) == 1:
            yield Number(numbers[ranks.index(best)].value)


def _digits_as_a_whole(number: Number) -> Fraction:
    """35 of 0.35."""
    return number.value % 1 * Fraction(10) ** number.places


def _shortness(number: Number) -> Fraction:
    """The fewer digits, the more."""
    return -Fraction(number.places)


def _denominator(number: Number) -> Fraction:
    return Fraction(number.value.denominator)


ORDERING_ERRORS = (
    ExpectedError(
        "longer decimal is larger",
        42,
        "compares the digits behind the point as whole numbers",
        "Stacey and Steinle",
        _Picked(NumberForm.DECIMAL, _digits_as_a_whole),
        {"text": "Which is larger, 0.35 or 0.8?"},
        "0.35",
    ),
    ExpectedError(
        "shorter decimal is larger",
        43,
        "takes the decimal with fewer digits for the larger one",
        "Stacey and Steinle",
        _Picked(NumberForm.DECIMAL, _shortness),
        {"text": "Which is larger, 0.3 or 0.45?"},
        "0.3",
    ),
    ExpectedError(
        "larger denominator, larger fraction",
        40,
        "takes the fraction with the larger denominator for the larger one",
        "Ryan and Williams 2007",
        _Picked(NumberForm.FRACTION, _denominator),
        {"text": "Which is larger, 3/4 or 4/7?"},
        "4/7",
    ),
)
"""Rows 40, 42 and 43 of the table of documented errors."""
