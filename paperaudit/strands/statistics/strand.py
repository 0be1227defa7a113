"""The strand of collected values: which derivation takes which measure."""

from collections.abc import Callable
from dataclasses import replace
from typing import Any

from paperaudit.model.derivation import Answer, Derivation, Derived, Impossible, NotRead, Outcome
from paperaudit.model.reading import Reading
from paperaudit.model.spread_task import IsOutlier, OfHistogram, OnStatedLine, UnknownValue
from paperaudit.model.statistics_task import (
    Categories,
    Clashing,
    Densities,
    Doubtful,
    Frequencies,
    Grouped,
    MeanBalance,
    MissingCell,
    MissingCount,
    Pairs,
    Predicted,
    Sector,
    Summary,
    UpTo,
    Values,
)
from paperaudit.strands.refusals import or_not_read
from paperaudit.strands.statistics import (
    averages,
    balance,
    charts,
    fitted,
    grouped,
    histograms,
    outlying,
    spread,
    unknown_values,
)
from paperaudit.strands.statistics.cumulated import up_to
from paperaudit.strands.statistics.lines import Lines
from paperaudit.strands.statistics.missing_count import missing_count

CONFIRMED = "worked out a second time in another way from the values themselves"
Measured = Callable[[Any, Lines], Answer]

_SINGLE = (Values, Frequencies)
_ANY = (Values, Frequencies, Grouped)
MEASURES: dict[str, tuple[tuple[tuple[type, ...], Measured], ...]] = {
    "mean": ((_ANY, averages.mean),),
    "median": (
        (_SINGLE, averages.median),
        ((Grouped,), lambda collected, lines: grouped.quarter(collected, lines, "median")),
    ),
    "mode": (((Values, Frequencies, Categories), averages.mode),),
    "range": ((_SINGLE, averages.value_range),),
    "lower quartile": (
        (_SINGLE, lambda collected, lines: spread.quartile(collected, lines, False)),
        ((Grouped,), lambda collected, lines: grouped.quarter(collected, lines, "lower quartile")),
    ),
    "upper quartile": (
        (_SINGLE, lambda collected, lines: spread.quartile(collected, lines, True)),
        ((Grouped,), lambda collected, lines: grouped.quarter(collected, lines, "upper quartile")),
    ),
    "interquartile range": ((_SINGLE, spread.interquartile_range), ((Grouped,), grouped.interquartile_range)),
    "five-number summary": ((_SINGLE, spread.five_numbers),),
    "outliers": ((_SINGLE, spread.outliers),),
    "modal class": (((Grouped,), grouped.modal_class),),
    "median class": (((Grouped,), grouped.median_class),),
    "total frequency": (((Frequencies, Grouped, Categories), charts.total),),
    "cumulative frequencies": (((Frequencies, Grouped), charts.cumulative),),
    "pie-chart angles": (((Categories, Frequencies), charts.pie_angles),),
    "correlation coefficient": (((Pairs,), fitted.correlation),),
    "regression line": (((Pairs,), fitted.regression_line),),
}

_OF_ONE: dict[type, Measured] = {
    Sector: charts.sector,
    Predicted: fitted.predicted,
    IsOutlier: outlying.is_outlier,
    OfHistogram: histograms.of_histogram,
    MeanBalance: balance.found,
}
"""Tasks with one answer, worked out from the task alone."""


class StatisticsStrand:
    """Takes the tasks of `model/statistics_task.py`."""

    name = "statistics"

    def recognises(self, reading: Reading) -> bool:
        """Whether the ask is one of these tasks."""
        kinds = (*_OF_ONE, OnStatedLine, MissingCell, MissingCount, UpTo, Clashing, Doubtful, Summary, UnknownValue)
        return reading.ask is not None and isinstance(reading.ask.task, kinds)

    def derive(self, reading: Reading) -> Outcome:
        """The answer with its lines, the clash of a table with itself, or NotRead with what stopped it."""
        return or_not_read(lambda: _derive(reading))


def _derive(reading: Reading) -> Outcome:
    ask = reading.ask
    assert ask is not None
    used = tuple(given.text for given in reading.givens)
    lines = Lines(ask, used, getattr(getattr(ask.task, "collected", None), "unit", ""))
    answers: tuple[Answer, ...] | Impossible | NotRead
    match ask.task:
        case Clashing(clash, why):
            return Impossible(clash, why, "Check the numbers of the table against their total.")
        case Doubtful(doubt):
            return NotRead(doubt)
        case MissingCell() as task:
            answers = charts.missing_cell(task, lines)
        case MissingCount() | UpTo() as task:
            found = missing_count(task, lines) if isinstance(task, MissingCount) else up_to(task, lines)
            if not isinstance(found, Answer):
                return found
            answers = (found,)
        case UnknownValue() as task:
            return unknown_values.unknown_value(task, lines)
        case Summary() as task:
            answers = _measures(task, lines)
        case OnStatedLine() as task:
            answers = (fitted.on_stated_line(task, reading.givens, lines),)
        case task:
            answers = (_OF_ONE[type(task)](task, lines),)
    if not isinstance(answers, tuple):
        return answers
    return Derived(answers, (Derivation(tuple(lines.steps), CONFIRMED, used),))


def _measures(task: Summary, lines: Lines) -> tuple[Answer, ...] | NotRead:
    answers = []
    if isinstance(task.collected, Densities):
        task = replace(task, collected=histograms.as_grouped(task.collected, lines))
    for measure in task.measures:
        if measure in ("variance", "standard deviation"):
            if not isinstance(task.collected, _ANY):
                return NotRead(f"the {measure} of this kind of values is not known")
            answers.append(spread.deviation(task.collected, lines, task.basis, measure == "variance"))
            continue
        fitting = [one for kinds, one in MEASURES[measure] if isinstance(task.collected, kinds)]
        if not fitting:
            return NotRead(f"the {measure} of this kind of values is not settled by them")
        answers.append(fitting[0](task.collected, lines))
    return tuple(answers)


STRAND = StatisticsStrand()
