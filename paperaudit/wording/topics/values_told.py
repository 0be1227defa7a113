"""Where the values of a question stand: in its table, in rows with names, in a stem-and-leaf diagram, in a sentence."""

import re
from dataclasses import replace

from paperaudit.model.paper import Question
from paperaudit.model.statistics_task import (
    Categories,
    Clashing,
    Collected,
    Densities,
    Frequencies,
    Grouped,
    Pairs,
    Values,
)
from paperaudit.wording.topics.heard import Sentence
from paperaudit.wording.topics.told_counts import told_count
from paperaudit.wording.topics.value_lists import COUNT, numbers_listed, stem_and_leaf
from paperaudit.wording.topics.value_tables import collected_in, unit_of_name

LEAD = re.compile(
    r"(?P<lead>[^0-9]*?|[^0-9]*\b"
    + COUNT
    + r"\b[^0-9]*)(?: ?: ?| (?:are|is|were|was)(?: as follows| listed below| shown below| given below)? ?:? "
    r"|(?<=\bdata) |(?<=\bset) |(?<=\bnumbers) |(?<=\bvalues) |(?<=\blist) |(?<=\bmarks) )"
    r"(?P<list>[-{(\[R$]?\.?\d.*)"
)
"""A sentence that leads up to a list: "The marks of five learners are 12, 15 …"."""
_LABELLED = re.compile(r"(?P<label>[a-zA-Z][a-zA-Z ()]*?) ?: ?(?P<list>-?\.?\d.*)")


def values_in(text: str) -> Values | None:
    """Two or more numbers of a list; None where some of it is no number."""
    found = numbers_listed(text)
    return Values(found.values, found.unit) if found is not None and len(found.values) > 1 else None


def collected_of(
    question: Question, rest: list[Sentence], about: str = ""
) -> tuple[Collected | Clashing | None, list[Sentence]]:
    """The values of the table, of rows with names, of a stem-and-leaf diagram, or of one list; and their sentences."""
    if question.table:
        told = [one for one in (told_count(said.text) for said in rest) if one is not None]
        return collected_in(question.table, told, about), []
    labelled = [
        (one, row) for one in rest if (row := _LABELLED.fullmatch(one.text.rstrip("."))) and "|" not in one.text
    ]
    if len(labelled) == 2:
        columns = tuple((row["label"], tuple(re.split(r" ?[,;] ", row["list"]))) for _, row in labelled)
        return collected_in(columns, (), about), [one for one, _ in labelled]
    rows = [one for one in rest if "|" in one.text]
    if rows:
        values = stem_and_leaf([one.text for one in rows])
        return (Values(values.values, values.unit) if values else None), rows
    lists = [(one, list_in(one.text)) for one in rest]
    found = [(one, values) for one, values in lists if values is not None]
    return (found[0][1], [found[0][0]]) if len(found) == 1 else (None, [])


def list_in(text: str) -> Values | None:
    """The numbers of a sentence that is a list, or leads up to one."""
    plain_text = text.rstrip(". ")
    lead = LEAD.fullmatch(plain_text)
    values = values_in(plain_text) or (values_in(lead["list"]) if lead else None)
    unit = unit_of_name(lead["lead"].strip()) if lead else ""
    return replace(values, unit=unit) if values is not None and unit and not values.unit else values


def size_of(collected: Collected | Clashing) -> int:
    """How many values there are."""
    match collected:
        case Values(values):
            return len(values)
        case Frequencies(_, counts) | Grouped(_, counts) | Categories(_, counts):
            return sum(counts)
        case Pairs(across):
            return len(across)
        case Densities(classes):
            return len(classes)
    return 0
