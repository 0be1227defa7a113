"""How many values lie above, below or between ends of classes, read off a table of cumulative frequencies."""

import re
from fractions import Fraction

from parsimonious.nodes import Node

from paperaudit.errors import ExpressionNotRead
from paperaudit.maths.peg import parsed
from paperaudit.maths.tree import every, the
from paperaudit.model.fact import Origin
from paperaudit.model.paper import Part, Question
from paperaudit.model.statistics_task import Clashing, UpTo
from paperaudit.model.statistics_task import Told as Noted
from paperaudit.model.topic import TopicTask
from paperaudit.wording.scene import Scene
from paperaudit.wording.topics.heard import Sentence, givens_of, heard
from paperaudit.wording.topics.registry import topic_named
from paperaudit.wording.topics.told_counts import told_count, without_names
from paperaudit.wording.topics.topic import Readers, Told
from paperaudit.wording.topics.value_tables import spelled

_HEAD = re.compile(
    r"(?:\d+(?:[.,]\d+)? ?(?P<low><|≤) ?)?(?:[a-zA-Z] ?)?(?P<sign><|≤|less than|under|up to) ?(?P<end>\d+(?:[.,]\d+)?)"
)


def _story(question: Question, part: Part, scene: Scene) -> Told | None:
    table = _table(question)
    told = heard(question, part, scene)
    if table is None or told.too_long:
        return None
    ends, sums, closed = table
    asked: tuple[Sentence, Node] | None = None
    wholes: list[tuple[Sentence, int]] = []
    for sentence in told.sentences:
        try:
            node = parsed(topic_named("cumulative frequencies").rules(), "said", sentence.text.lower())
        except ExpressionNotRead:
            counted = told_count(sentence.text)
            numbers = re.findall(r"\d+", without_names(sentence.text))
            if len(numbers) > 1 or (numbers and counted is None):
                return None
            if counted is not None and not counted.sure and counted.count != sums[-1]:
                return None
            wholes += [(sentence, counted.count)] if counted is not None else []
            continue
        if asked is not None:
            return None
        asked = (sentence, the(node, "range"))
    if asked is None:
        return None
    task = _range(asked[1].children[0], ends, sums, closed)
    if task is None:
        return None
    other = next(((said, count) for said, count in wholes if count != sums[-1]), None)
    found: TopicTask = task
    if other is not None:
        found = Clashing((other[0].source, f"the last cumulative frequency: {sums[-1]}"),
                         (f"{sums[-1]} = {other[1]}: false",))  # fmt: skip
    text = "; ".join(f"{name}: {', '.join(cell.strip() for cell in cells)}" for name, cells in question.table)
    given = [Sentence("", text, Origin.GIVEN, question.place)]
    return Told(told.ask(found, asked[0].source, task.in_words(), asked[0].place), givens_of(given, Noted))


def _table(question: Question) -> tuple[tuple[Fraction, ...], tuple[int, ...], bool] | None:
    """The upper ends, the cumulative frequencies, whether an end belongs to its class."""
    if len(question.table) != 2 or "cumulative" not in question.table[1][0].lower():
        return None
    heads = [_HEAD.fullmatch(spelled(head).lower()) for head in question.table[0][1]]
    counts = [spelled(cell) for cell in question.table[1][1]]
    signs = {head["sign"] in ("≤", "up to") for head in heads if head is not None}
    if None in heads or len(signs) != 1 or not all(re.fullmatch(r"\d{1,6}", one) for one in counts) or len(heads) < 2:
        return None
    ends = tuple(Fraction(head["end"].replace(",", ".")) for head in heads if head is not None)
    return (ends, tuple(map(int, counts)), signs.pop()) if list(ends) == sorted(set(ends)) else None


def _range(node: Node, ends: tuple[Fraction, ...], sums: tuple[int, ...], closed: bool) -> UpTo | None:
    """The question as from one end to another; None where an end is none of the table, or belongs elsewhere."""
    values = [Fraction(re.findall(r"\d+(?:[.,]\d+)?", one.text)[0].replace(",", ".")) for one in every(node, "value")]
    if any(value not in ends for value in values):
        return None
    strict = re.match(r"(?:less|fewer|under|below|shorter|lighter|younger)", node.text) is not None
    match node.expr_name:
        case "above" if closed:
            return UpTo(ends, sums, values[0], None)
        case "below" if strict != closed:
            return UpTo(ends, sums, None, values[0])
        case "between" if values[0] < values[1]:
            return UpTo(ends, sums, values[0], values[1])
    return None


READERS = Readers(story=_story)
