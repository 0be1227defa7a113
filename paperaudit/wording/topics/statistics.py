"""Asks for measures of collected values: "Find the mean of 3, 5 and 10", or of a list or table that is given."""

import re

from parsimonious.nodes import Node

from paperaudit.errors import ExpressionNotRead
from paperaudit.maths.peg import parsed
from paperaudit.maths.terms import expression_of
from paperaudit.maths.tree import every
from paperaudit.model.ask import Task
from paperaudit.model.expression import Relation
from paperaudit.model.fact import Fact, Holds, Origin
from paperaudit.model.paper import Part, Question
from paperaudit.model.spread_task import OnStatedLine
from paperaudit.model.statistics_task import (
    Categories,
    Clashing,
    Collected,
    Densities,
    Doubtful,
    Frequencies,
    Grouped,
    Pairs,
    Summary,
    Told,
    Values,
)
from paperaudit.model.topic import TopicTask
from paperaudit.wording.asides import Asides
from paperaudit.wording.scene import NotUnderstood, Scene
from paperaudit.wording.topics.count_columns import counts
from paperaudit.wording.topics.heard import Heard, Sentence, givens_of, heard
from paperaudit.wording.topics.registry import topic_named
from paperaudit.wording.topics.statistics_asked import Wanted, task_for, wanted_in
from paperaudit.wording.topics.told_counts import ToldCount, speaks_of, told_count, without_names
from paperaudit.wording.topics.topic import Readers
from paperaudit.wording.topics.topic import Told as Story
from paperaudit.wording.topics.value_lists import COUNT, count_of, numbers_listed
from paperaudit.wording.topics.values_told import LEAD, collected_of, size_of, values_in

_PLAIN_WORDS = re.compile(
    r"the|of|for|in|an?|and|these|those|this|that|data|sets?|list|values?|numbers?|following|given|distribution|table"
    r"|frequency|sample|population|observations|measurements|results|per|each|all|by|to|its|from|shown|above|below"
    r"|was|were|are|is|ungrouped|grouped|raw|marks?|scores?|on|x|y|between"
)
_CHANGES = re.compile(
    r"\b(?:doubled?|added|adds|removed?|leaves?|left|excluded?|except|without|each value|every value|increased?"
    r"|decreased?"
    r"|multiplied|corrected|wrong(?:ly)?|mistakes?|outliers?|instead|another|new|extra|joins?|replaced|omitted|first|last)\b"
)
_NO_VALUES = re.compile(r"\b(?:summary|quartiles?|percentiles?|medians?|box|whisker)\b")
"""Words ahead of a list that is no list of the values themselves."""
_LINE = re.compile(r"\bregression\b|\bleast[- ]squares\b|\bbest fit\b")
_NUMERAL = re.compile(r"\d|\b(?:two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|twice|half|double)\b")


def _task(node: Node, asides: Asides) -> Task:
    wanted = wanted_in(node)
    if wanted.words[0] and not wanted.listed:
        return _on_stated_line(wanted)
    if not wanted.listed or not (wanted.measures or wanted.outlier) or not _familiar(wanted.about, ""):
        raise NotUnderstood("no values to take a measure of", 0, "a list of numbers")
    task = task_for(wanted, values_in(wanted.listed))
    if task is None:
        raise NotUnderstood("not a list of numbers", 0, "a list of numbers")
    return task


def _on_stated_line(wanted: Wanted) -> OnStatedLine:
    letter, across = wanted.words
    at = numbers_listed(wanted.at)
    if len(letter) != 1 or len(across) != 1 or at is None:
        raise NotUnderstood("a value of one letter", 0)
    return OnStatedLine(letter, across, at.values[0])


def _facts(node: Node, scene: Scene) -> tuple[Fact, ...]:
    """The line of best fit is y = 2.5x + 4."""
    sides = [expression_of(one) for one in every(node, "expression")]
    return (Holds(Relation(sides[0], "=", sides[1])),)


def _familiar(about: str, context: str) -> bool:
    """Whether what a measure is of says no more than what the values are said to be."""
    words = re.findall(r"[a-z]+", about.lower())
    known = {_stem(word) for word in re.findall(r"[a-z]+", context.lower())}
    return all(_PLAIN_WORDS.fullmatch(word) or _stem(word) in known for word in words)


def _stem(word: str) -> str:
    """A word without its endings, as far as they can be taken off."""
    shorter = re.sub(r"(?:ies|es|e|s|y)$", "", word)
    return word if shorter == word or len(shorter) < 2 else _stem(shorter)


def _story(question: Question, part: Part, scene: Scene) -> Story | None:
    """A part whose values stand in a table, a given or another sentence."""
    told = heard(question, part, scene)
    if told.too_long:
        return None
    found = _asked_of(told)
    if found is None:
        return None
    asked, wanted = found
    rest = [one for one in told.sentences if one is not asked]
    collected, sources = collected_of(question, rest, wanted.about)
    if wanted.listed:
        collected = values_in(wanted.listed) if collected is None else None
    context = " ".join(
        (*(name for name, _ in question.table), *(one.text for one in told.sentences if one is not asked))
    )
    if collected is None or not _familiar(wanted.about, context):
        return None
    if wanted.at and len(wanted.words[0]) > 1 and not _LINE.search(" ".join(one.text for one in told.sentences)):
        return None
    doubtful = _doubts(rest, sources, collected, tuple(name for name, _ in question.table))
    if doubtful is None:
        return None
    task = doubtful if isinstance(doubtful, Clashing | Doubtful) else task_for(wanted, collected)
    if task is None:
        return None
    table = (
        [Sentence("", _table_text(question), Origin.GIVEN, question.place)] if not sources and question.table else []
    )
    givens = givens_of([*table, *sources], Told)
    return Story(told.ask(task, asked.source, _read_as(task), asked.place), givens)


def _table_text(question: Question) -> str:
    return "; ".join(f"{name}: {', '.join(cell.strip() for cell in cells)}" for name, cells in question.table)


def _asked_of(told: Heard) -> tuple[Sentence, Wanted] | None:
    """The sentence that asks: the ask's own line, else the last that reads as an ask."""
    explicit = [one for one in told.sentences if one.asked]
    for one in explicit or reversed(told.sentences):
        if not topic_named("statistics").announced_in(one.text):
            continue
        try:
            return one, wanted_in(parsed(topic_named("statistics").rules(), "ask", one.text))
        except (ExpressionNotRead, NotUnderstood):
            if explicit:
                return None
    return None


def _doubts(
    rest: list[Sentence], sources: list[Sentence], collected: Collected | Clashing, headings: tuple[str, ...]
) -> bool | Clashing | Doubtful | None:
    """Whether every other sentence is scenery (False), or says how many values there are and it is not true."""
    size = size_of(collected)
    for one in rest:
        words = one.text
        if one in sources:
            lead = LEAD.fullmatch(words.rstrip(". "))
            words = f"{lead['lead'].rstrip()} " if lead is not None and "|" not in words else ""
        if _CHANGES.search(words) or (one in sources and _NO_VALUES.search(words)):
            return None
        counted = told_count(words)
        others = re.findall(rf"\b{COUNT}\b", without_names(words))
        if counted is None and not others and not _NUMERAL.search(without_names(words)):
            continue
        if len(others) != 1 or len(_NUMERAL.findall(re.sub(rf"\b{COUNT}\b", "", without_names(words)))):
            if _asks_too(one):
                continue
            return None
        said = counted.count if counted is not None else count_of(others[0].lower())
        if not size or said == size:
            continue
        if counted is None or not counted.sure or isinstance(collected, Pairs) or _counts_values(headings, counted):
            if _asks_too(one):
                continue
            what = "table" if headings else "list"
            return Doubtful(f"“{one.source.strip()}” says {said}, and the {what} has {size} values: whether these "
                            "are numbers of the same things is not said")  # fmt: skip
        return Clashing((one.source, f"{size} in the list or table"),
                        (f"the list or table has {size}", f"{size} = {said}: false"))  # fmt: skip
    return False


def _counts_values(headings: tuple[str, ...], counted: ToldCount) -> bool:
    """Whether a number of things may be one of what the values are, and not of how many values there are."""
    return any(speaks_of(name, counted.noun) and not counts(name) for name in headings)


def _asks_too(sentence: Sentence) -> bool:
    try:
        parsed(topic_named("statistics").rules(), "ask", sentence.text)
    except ExpressionNotRead:
        return False
    return True


def _read_as(task: TopicTask) -> str:
    match task:
        case Summary(measures, collected):
            kinds = {Values: "single values", Frequencies: "values with frequencies", 
                     Grouped: "classes with frequencies",
                     Categories: "names with frequencies", Pairs: "pairs of values",
                     Densities: "classes with frequency densities"}  # fmt: skip
            return f"{', '.join(measures)} of {size_of(collected)} {kinds[type(collected)]}"
    return task.in_words()


READERS = Readers(task=_task, facts=_facts, story=_story)
