"""A letter in a list of numbers whose median, mode, range or mean is told."""

import re
from dataclasses import dataclass, field
from fractions import Fraction
from typing import Literal

from parsimonious.nodes import Node

from paperaudit.errors import ExpressionNotRead, NoValue
from paperaudit.maths.linear_terms import NotLinear, Term, side_of
from paperaudit.maths.peg import parsed
from paperaudit.maths.terms import expression_of
from paperaudit.maths.tree import every, first, has, the
from paperaudit.model.expression import Letter
from paperaudit.model.paper import Part, Question
from paperaudit.model.spread_task import UnknownMeasure, UnknownValue
from paperaudit.model.statistics_task import Told as Noted
from paperaudit.wording.scene import Scene
from paperaudit.wording.topics.heard import Sentence, givens_of, heard
from paperaudit.wording.topics.registry import topic_named
from paperaudit.wording.topics.topic import Readers, Told

_PLACES: dict[str, Literal["largest", "smallest"]] = {
    **dict.fromkeys(("largest", "greatest", "highest", "biggest"), "largest"),
    **dict.fromkeys(("smallest", "lowest", "least"), "smallest"),
}
MOST_ENTRIES = 30


@dataclass(slots=True)
class _Heard:
    """What the sentences say so far; `letters` are those asked for or placed."""

    rows: list[tuple[Node, ...]] = field(default_factory=list)
    measures: list[tuple[UnknownMeasure, Fraction]] = field(default_factory=list)
    ordered: bool = False
    place: Literal["", "largest", "smallest"] = ""
    letters: set[str] = field(default_factory=set)
    asked: Sentence | None = None
    sources: list[Sentence] = field(default_factory=list)


def _story(question: Question, part: Part, scene: Scene) -> Told | None:
    told = heard(question, part, scene)
    if told.too_long or question.table:
        return None
    story = _Heard()
    for sentence in told.sentences:
        try:
            node = parsed(topic_named("unknown values").rules(), "said", sentence.text)
        except ExpressionNotRead:
            if re.search(r"\d|\b(?:mean|median|mode|range|integers?|whole|between|largest|smallest)\b|\b[b-hj-z]\b",
                         sentence.text):  # fmt: skip
                return None
            continue
        _take(node, sentence, story)
    task = _task(story)
    if task is None or story.asked is None:
        return None
    told.unit = ""
    listed = "; ".join(row.text for row in story.rows[0])
    order = " in rising order" if task.ordered else ""
    read_as = f"{listed}{order}, {task.measure} {task.value}: {task.letter}"
    return Told(told.ask(task, story.asked.source, read_as, story.asked.place), givens_of(story.sources, Noted))


def _take(node: Node, sentence: Sentence, story: _Heard) -> None:
    story.rows += [tuple(every(row, "expression")) for row in every(node, "row")]
    for one in every(node, "of_list", "list_has", "measure_told"):
        value = re.findall(r"-?\d+(?:[.,]\d+)?", the(one, "value").text)[0].replace(",", ".")
        story.measures.append((the(one, "measure").text, Fraction(value)))
    story.ordered = story.ordered or has(node, "order")
    for one in every(node, "place_told"):
        story.place = _PLACES[the(one, "place").text]
        story.letters.add(the(one, "letter").text)
    asked = first(node, "asked")
    if asked is not None:
        story.letters.add(the(asked, "letter").text)
        story.asked = sentence
    if has(node, "row", "measure", "order", "place"):
        story.sources.append(sentence)


def _task(story: _Heard) -> UnknownValue | None:
    """One list with one letter, one measure of it; else None."""
    if len(story.rows) != 1 or len(story.measures) != 1 or len(story.letters) != 1:
        return None
    (row,), (letter,) = story.rows, story.letters
    forms = []
    for entry in row:
        try:
            terms = side_of(expression_of(entry))
        except (NotLinear, NoValue, ExpressionNotRead):
            return None
        if any(not isinstance(term, Term) or term.unknown not in (None, Letter(letter)) for term in terms):
            return None
        plain = [term for term in terms if isinstance(term, Term)]
        share = sum((term.coefficient for term in plain if term.unknown is not None), Fraction(0))
        forms.append((share, sum((term.coefficient for term in plain if term.unknown is None), Fraction(0))))
    if not 2 < len(forms) <= MOST_ENTRIES or not any(share for share, _ in forms):
        return None
    measure, value = story.measures[0]
    shares, constants = zip(*forms, strict=True)
    return UnknownValue(letter, shares, constants, measure, value, story.ordered, story.place)


READERS = Readers(story=_story)
