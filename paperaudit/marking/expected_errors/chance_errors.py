"""Errors with collected values and with chance; their tasks are loaded by need, since every part is asked."""

from collections.abc import Iterator
from fractions import Fraction

from paperaudit.marking.expected_errors.expected_error import ExpectedError
from paperaudit.marking.expected_errors.occasions import Occasion
from paperaudit.maths.exact import rational_value
from paperaudit.model.expression import Expression, Number


def _median_unsorted(occasion: Occasion) -> Iterator[Expression]:
    """The middle value as listed."""
    if occasion.part.strand != "statistics":
        return
    from paperaudit.model.statistics_task import Summary, Values

    task = occasion.task
    if isinstance(task, Summary) and task.measures == ("median",) and isinstance(task.collected, Values):
        values = task.collected.values
        half = len(values) // 2
        yield Number(values[half] if len(values) % 2 else (values[half - 1] + values[half]) / 2)


def _mean_over_categories(occasion: Occasion) -> Iterator[Expression]:
    """Σfx over the number of different values."""
    if occasion.part.strand != "statistics":
        return
    from paperaudit.model.statistics_task import Frequencies, Summary

    task = occasion.task
    if isinstance(task, Summary) and task.measures == ("mean",) and isinstance(task.collected, Frequencies):
        values, counts = task.collected.values, task.collected.counts
        total = sum((value * count for value, count in zip(values, counts, strict=True)), Fraction(0))
        yield Number(total / len(values))


def _equal_chance(occasion: Occasion) -> Iterator[Expression]:
    """Two coins, one head: one of the three outcomes no, one and two heads."""
    if occasion.part.strand != "probability":
        return
    from paperaudit.model.chance_task import ProbabilityOf, Times

    task = occasion.task
    if not isinstance(task, ProbabilityOf) or not isinstance(task.event, Times) or task.trials:
        return
    draws = task.experiment.draws
    if len(draws) > 1 and all(draw.kind == "coin" for draw in draws):
        most = min(task.event.most, len(draws))
        yield Number(Fraction(most - task.event.least + 1, len(draws) + 1))


def _part_to_part(occasion: Occasion) -> Iterator[Expression]:
    """3 of 8 balls as 3 to 5."""
    if occasion.part.strand != "probability" or occasion.answer is None or occasion.answer.value is None:
        return
    from paperaudit.model.chance_task import ProbabilityOf, Single

    task, right = occasion.task, rational_value(occasion.answer.value)
    if not isinstance(task, ProbabilityOf) or not isinstance(task.event, Single) or task.known is not None:
        return
    if right is not None and 0 < right < Fraction(1, 2) and len(task.experiment.draws) == 1 and not task.trials:
        yield Number(right / (1 - right))


CHANCE_ERRORS = (
    ExpectedError(
        "median without ordering",
        61,
        "takes the middle value of the list as it stands",
        "Ryan and Williams 2007",
        _median_unsorted,
        {"ask": "median of 7, 2, 9, 4, 1"},
        "9",
    ),
    ExpectedError(
        "mean over categories",
        61,
        "divides by the number of different values",
        "Ryan and Williams 2007",
        _mean_over_categories,
        {"table": {"value": ["1", "2", "3"], "frequency": ["2", "5", "3"]}, "ask": "the mean"},
        "7",
    ),
    ExpectedError(
        "equal chance",
        62,
        "takes every number of heads to be equally likely",
        "Lecoutre 1992",
        _equal_chance,
        {"text": "Two fair coins are tossed. Find the probability of exactly one head."},
        "1/3",
    ),
    ExpectedError(
        "part to part",
        41,
        "divides by the number of the others in place of all",
        "Hart 1981",
        _part_to_part,
        {
            "text": "A bag contains 3 red and 5 blue balls. A ball is taken at random."
            " Find the probability that it is red."
        },
        "3/5",
    ),
)
"""Rows 41, 61 and 62 of the table of documented errors."""
