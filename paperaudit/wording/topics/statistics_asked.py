"""What an ask about collected values wants: measures, an outlier, bars of a histogram, a value on a line."""

import re
from dataclasses import dataclass, field
from typing import Literal

from parsimonious.nodes import Node

from paperaudit.maths.tree import every, first, has, the
from paperaudit.model.spread_task import IsOutlier, OfHistogram
from paperaudit.model.statistics_task import (
    Basis,
    Categories,
    Clashing,
    Collected,
    Densities,
    Frequencies,
    Grouped,
    Measure,
    Pairs,
    Predicted,
    Sector,
    Summary,
    Values,
)
from paperaudit.model.topic import TopicTask
from paperaudit.wording.scene import NotUnderstood
from paperaudit.wording.topics.named_events import stem
from paperaudit.wording.topics.value_lists import numbers_listed
from paperaudit.wording.topics.value_tables import class_interval

_NAMES: dict[str, Measure] = {
    "sum_up": "five-number summary",
    "iqr": "interquartile range",
    "lower": "lower quartile",
    "upper": "upper quartile",
    "deviation": "standard deviation",
    "variance": "variance",
    "modal_class": "modal class",
    "median_class": "median class",
    "median": "median",
    "mode": "mode",
    "mean": "mean",
    "range": "range",
    "outliers": "outliers",
    "total": "total frequency",
    "cumulative": "cumulative frequencies",
    "correlation": "correlation coefficient",
    "line": "regression line",
    "angles": "pie-chart angles",
}
_BARS: dict[str, Literal["frequencies", "frequency densities", "total frequency"]] = {
    "total_of_bars": "total frequency",
    "densities": "frequency densities",
    "bar_counts": "frequencies",
}
_STATES = re.compile(r"\b(?:is|are|was|were|has|have)\b")


@dataclass(slots=True)
class Wanted:
    """What is asked for, before the values are known.

    `outlier` is the value that may be one, `bars` what of a histogram, of the class `of_class` where one is named.
    """

    measures: list[Measure] = field(default_factory=list)
    basis: Basis = ""
    listed: str = ""
    about: str = ""
    sector: str = ""
    at: str = ""
    estimated: bool = False
    outlier: str = ""
    claimed: bool = False
    bars: Literal["", "frequencies", "frequency densities", "total frequency"] = ""
    of_class: str = ""
    words: tuple[str, str] = ("", "")


def wanted_in(node: Node) -> Wanted:
    """What an ask is about. Raises NotUnderstood for a statement, such as "the median of the list is 5"."""
    if (angle := first(node, "angle")) is not None:
        sector = first(angle, "sector")
        return Wanted(sector=sector.text if sector is not None else "")
    if (predicted := first(node, "predict")) is not None:
        return _predicted(predicted)
    found = Wanted()
    if (bars := first(node, "bars")) is not None:
        named = first(bars, "class_named")
        found.bars = _BARS[the(bars, *_BARS).expr_name]
        found.of_class = named.text if named is not None else ""
    if (outlier := first(node, "one_outlier")) is not None:
        found.outlier, found.claimed = the(outlier, "at").text, node.text.startswith("show")
    elif has(node, "any_outliers"):
        found.measures.append("outliers")
    for rule in every(node, *_NAMES):
        found.measures.append(_NAMES[rule.expr_name])
    if (basis := first(node, "basis")) is not None:
        found.basis = "sample" if basis.text == "sample" else "population"
    about, listed = first(node, "about"), first(node, "listed")
    found.about = about.text.strip() if about is not None else ""
    if not has(node, "lead", "decide", "estimated") and _STATES.search(found.about):
        raise NotUnderstood("a statement", node.start)
    found.listed = listed.text.strip(" :,") if listed is not None else ""
    found.estimated = has(node, "estimated") or "estimate" in node.text
    return found


def _predicted(node: Node) -> Wanted:
    """A value read off a line: by letters ("y when x = 6") or by the names of the columns."""
    at = the(node, "at").text
    if has(node, "by_letters"):
        return Wanted(at=at, words=(the(node, "letter_up").text, the(node, "letter_at").text))
    return Wanted(at=at, words=(the(node, "words_up").text, the(node, "words_at").text))


def task_for(wanted: Wanted, collected: Collected | Clashing | None) -> TopicTask | None:
    """The task of an ask and its values; None where they do not fit."""
    match collected:
        case None:
            return None
        case Clashing():
            return collected
        case Pairs() if wanted.at:
            at = numbers_listed(wanted.at)
            return Predicted(at.values[0], collected) if at and _names_columns(wanted.words, collected) else None
        case Categories() if wanted.sector:
            named = next((name for name in collected.names if name.lower() == wanted.sector.lower()), "")
            return Sector(named, collected) if named else None
        case Values() | Frequencies() if wanted.outlier and not wanted.measures:
            value = numbers_listed(wanted.outlier)
            fits = value is not None and value.values[0] in collected.values
            return IsOutlier(value.values[0], collected, wanted.claimed) if value is not None and fits else None
        case Densities() | Grouped() if wanted.bars or wanted.measures == ["total frequency"]:
            return _of_bars(wanted, collected)
    if wanted.at or wanted.sector or wanted.outlier or wanted.bars:
        return None
    measures = tuple(dict.fromkeys(wanted.measures))
    if not measures or len(measures) != len(wanted.measures):
        return None
    bivariate = {"correlation coefficient", "regression line"}
    if isinstance(collected, Pairs) != (set(measures) <= bivariate):
        return None
    if isinstance(collected, Categories) and not set(measures) <= {"mode", "pie-chart angles", "total frequency"}:
        return None
    if "pie-chart angles" in measures and not isinstance(collected, Categories | Frequencies):
        return None
    return Summary(measures, collected, wanted.basis)


def _of_bars(wanted: Wanted, collected: Densities | Grouped) -> TopicTask | None:
    """What is asked of a histogram; the frequencies of a table that has them are no question."""
    want = wanted.bars or "total frequency"
    if want == "total frequency" and isinstance(collected, Grouped):
        return Summary(("total frequency",), collected)
    if (want == "frequency densities") != isinstance(collected, Grouped):
        return None
    of: tuple[int, ...] = ()
    if wanted.of_class:
        sought = class_interval(wanted.of_class)
        of = tuple(at for at, one in enumerate(collected.classes)
                   if sought is not None and (one.low, one.high) == (sought.low, sought.high))  # fmt: skip
        if len(of) != 1:
            return None
    return OfHistogram(want, collected, of)


def _names_columns(words: tuple[str, str], pairs: Pairs) -> bool:
    """Whether words name the two columns of a table of pairs, the one that is asked for and the one that is known."""
    if words in ((pairs.up_name, pairs.across_name), ("y", "x")):
        return True
    if re.search(r"\bnot\b|\bno\b|n′t\b|\d", " ".join(words)):
        return False
    up, across = ({stem(word) for word in re.findall(r"[a-z]+", one.lower())} for one in words)
    own_up, own_across = (
        {stem(word) for word in re.findall(r"[a-z]{2,}", name.lower())} - {"of", "in", "number", "the"}
        for name in (pairs.up_name, pairs.across_name)
    )
    return bool(up & own_up) and bool(across & own_across) and not up & (own_across - own_up)
