"""What is asked of a two-way table: numbers that are missing, numbers and shares of rows and columns, independence."""

import re

from parsimonious.nodes import Node

from paperaudit.maths.tree import first, the
from paperaudit.model.chance_task import OfCompleted
from paperaudit.model.statistics_task import MissingCell
from paperaudit.model.topic import TopicTask
from paperaudit.wording.scene import NotUnderstood
from paperaudit.wording.topics.named_events import stem
from paperaudit.wording.topics.two_ways import Crossed

ASKS = ("independent", "missing", "mean", "variance", "expected", "probability", "count")
FILLER = frozenset(
    re.findall(
        r"[a-z-]+",
        "a also an and are at be being by chosen did does getting goes he in is it land landing lands learner "
        "member of on one or outcome person picked pupil random red-handed selected she shows someone spinner "
        "stopping stops student takes that the they this to travels uses was who will "
        "study studies choose chose prefer prefers there those all have has do",
    )
)
"""Words that name no row and no column."""
_STEMS = frozenset(map(stem, FILLER))
_CHOSEN = re.compile(r"([a-z]+) (?:(?:who|that|which) )?(?:is |was )?(?:chosen|picked|selected|drawn)\b")
_PEOPLE = frozenset(
    map(stem, ("learners", "pupils", "students", "people", "children", "members", "employees", "adults"))
)


def of_crossed(node: Node, table: Crossed) -> TopicTask | None:
    """The task of an ask about a two-way table, or None."""
    chosen = the(node, *ASKS)
    condition = first(node, "condition")
    match chosen.expr_name:
        case "missing":
            return _missing(chosen, table) if condition is None else None
        case "count":
            return _count(the(chosen, "event").text, table) if condition is None else None
        case "independent" if not table.missing:
            pair = re.split(r" and | independent of ", the(chosen, "pair").text)
            clash = table.clash()
            both = table.independence(*(_named(one, table) for one in pair)) if len(pair) == 2 else None
            return clash or both
        case "probability" if condition is None or not re.search(r"\bor\b", condition.text):
            return _probability(the(chosen, "event").text, condition.text if condition is not None else "", table)
    return None


def _missing(chosen: Node, table: Crossed) -> MissingCell | None:
    letters = first(chosen, "letters")
    wanted = re.findall(r"[a-z]", re.sub(r"\band\b", "", letters.text)) if letters is not None else []
    places = [table.letters.get(one) for one in wanted] if wanted else sorted(table.missing)
    whole = re.search(r"\btable\b", chosen.text) is not None
    if not places or None in places or (len(places) > 1 and not wanted and not whole):
        return None
    return _cells(table, tuple(one for one in places if one is not None))


def _cells(table: Crossed, wanted: tuple[tuple[int, int], ...]) -> MissingCell:
    return MissingCell(table.row_names, table.column_names, table.rows, table.row_total, table.column_total, wanted)


def _count(words: str, table: Crossed) -> MissingCell | None:
    """The number in one row, in one column or where these cross; a row or a column alone needs its total."""
    if re.search(r"\b(?:or|and|not|more|fewer|than)\b", words):
        return None
    rows, columns = _named(words, table)
    if (not rows and not table.column_total) or (not columns and not table.row_total):
        return None
    row = rows[0] if rows else len(table.rows) - 1
    column = columns[0] if columns else len(table.column_names) - 1
    return _cells(table, ((row, column),))


def _probability(event: str, condition: str, table: Crossed) -> TopicTask | None:
    clash = table.clash() if not table.missing else None
    if clash is not None:
        return clash
    within = _named(condition, table) if condition else ([], [])
    told = _CHOSEN.search(event)
    if told is not None and told[1] not in FILLER:
        # "A girl chosen at random walks": only girls are chosen from.
        if condition:
            return None
        within = _named(told[1], table)
    options = [_named(piece, table) for piece in re.split(r" or (?:an? |who )?", event)]
    if not table.missing:
        return table.share(options, *within)
    names, cells, of = table.cells(options, *within)
    return OfCompleted(_cells(table, table.missing), names, cells, of)


def _named(text: str, table: Crossed) -> tuple[list[int], list[int]]:
    """The rows and columns that words name; "learners" names all of them."""
    words = [one for word in re.findall(r"[a-z]+", text) if (one := stem(word)) not in _STEMS and word not in FILLER]
    if len(words) > 1:
        words = [word for word in words if word not in _PEOPLE]
    if not words:
        raise NotUnderstood("a row or a column", 0)
    return table.named(words)
