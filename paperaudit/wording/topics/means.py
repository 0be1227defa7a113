"""Stories of means: what is said of the sums of several groups, and the value or mean that is missing from them."""

import re
from dataclasses import dataclass, field
from fractions import Fraction

from parsimonious.nodes import Node

from paperaudit.errors import ExpressionNotRead
from paperaudit.maths.collected_values import number
from paperaudit.maths.peg import parsed
from paperaudit.maths.terms import expression_of
from paperaudit.maths.tree import every, first, the
from paperaudit.model.expression import Number, Quotient, Relation, Sum
from paperaudit.model.fact import Fact, Holds
from paperaudit.model.paper import Part, Question
from paperaudit.model.statistics_task import MeanBalance, MeanGroup
from paperaudit.model.statistics_task import Told as Noted
from paperaudit.wording.scene import Scene
from paperaudit.wording.topics.heard import Sentence, givens_of, heard
from paperaudit.wording.topics.registry import topic_named
from paperaudit.wording.topics.topic import Readers, Told
from paperaudit.wording.topics.value_lists import count_of, number_in_text, numbers_listed

_SAYS = re.compile(
    r"\bmeans?\b|\baverage\b|\d|number|value|mark|^(?:find|calculate|determine|work out|how|what)\b"
    r"|\b(?:leaves?|joins?|left|joined|added|removed)\b"
)
_WANTED = (
    "the_target",
    "who_moved",
    "the_mark",
    "the_sum",
    "the_group",
    "new_mean",
    "the_number",
    "overall",
    "the_rest",
)


def _facts(node: Node, scene: Scene) -> tuple[Fact, ...]:
    """The mean of 3, 5, x and 9 is 7: their sum over four is 7."""
    entries = tuple(map(expression_of, every(the(node, "row"), "expression")))
    found = number_in_text(the(node, "value").text)
    assert found is not None
    left = Quotient(Sum(entries), Number(Fraction(len(entries))))
    return (Holds(Relation(left, "=", number(found[0]))),)


@dataclass(slots=True)
class _Heard:
    """What the sentences of a story say, before it is known what goes with what."""

    means: list[MeanGroup] = field(default_factory=list)
    known: tuple[Fraction, ...] = ()
    turn: str = ""
    turned: tuple[Fraction, ...] = ()
    movers: int = 1
    counts_after: set[int] = field(default_factory=set)
    in_all: set[int] = field(default_factory=set)
    after: Fraction | None = None
    wanted: str = ""
    of_all: int = 0
    units: set[str] = field(default_factory=set)
    sources: list[Sentence] = field(default_factory=list)


def _story(question: Question, part: Part, scene: Scene) -> Told | None:
    told = heard(question, part, scene)
    if told.too_long or question.table:
        return None
    story, asked = _Heard(), None
    for sentence in told.sentences:
        if _SAYS.search(sentence.text) is None:
            continue
        try:
            node = parsed(topic_named("means").rules(), "said", sentence.text)
        except ExpressionNotRead:
            return None
        try:
            understood = _take(node, story)
        except ExpressionNotRead:
            return None
        if not understood:
            return None
        if first(node, "asked") is not None:
            asked = sentence
        else:
            story.sources.append(sentence)
    task = _balance(story)
    if task is None or asked is None or len(story.units) > 1 or (story.of_all and not _speaks_of(story.of_all, task)):
        return None
    told.unit = told.unit or next(iter(story.units), "")
    groups = [f"{one.count} with mean {one.mean}" for one in task.groups if one.mean is not None]
    read_as = f"{task.wanted}: {', '.join(groups) or 'values'} of {task.whole.count}"
    return Told(told.ask(task, asked.source, read_as, asked.place), givens_of(story.sources, Noted))


def _speaks_of(count: int, task: MeanBalance) -> bool:
    """Whether a number in the ask is that of a group or of the whole."""
    return count in (task.whole.count, *(group.count for group in task.groups if group.mean is None))


def _take(node: Node, story: _Heard) -> bool:
    """Puts a sentence into the story; False where it says what is known already."""
    chosen = the(node, "mean_of", "known", "joined", "asked")
    match chosen.expr_name:
        case "mean_of":
            story.in_all |= {count_of(the(one, "count").text) for one in every(chosen, "in_all")}
            for one in every(chosen, "part"):
                value = _value(the(one, "value"), story)
                story.means.append(MeanGroup(count_of(the(one, "count").text), value))
        case "known":
            found = numbers_listed(the(chosen, "list").text)
            count = first(chosen, "count")
            if found is None or story.known or (count is not None and count_of(count.text) != len(found.values)):
                return False
            story.known = found.values
            story.units |= {found.unit} - {""}
        case "joined":
            if story.turn:
                return False
            if (after := first(chosen, "after_one")) is not None:
                story.turn, story.after = "added", _value(the(after, "value"), story)
                return True
            becomes = first(chosen, "becomes")
            plain = every(chosen, "value", "values", "becomes")
            inner = [
                one for piece in plain for one in (every(piece, "value") if piece.expr_name == "values" else [piece])
            ]
            many = first(chosen, "how_many")
            story.movers = count_of(many.text) if many is not None else 1
            story.turn = "added" if re.search("add|includ|join", the(chosen, "turn", "went").text) else "removed"
            story.turned = tuple(_value(one, story) for one in inner if one.expr_name == "value")
            story.after = _value(the(becomes, "value"), story) if becomes is not None else None
            left = first(becomes, "left") if becomes is not None else None
            story.counts_after |= {count_of(one.text) for one in (every(left, "count") if left is not None else [])}
            return len(story.turned) in (0, story.movers)
        case "asked":
            if story.wanted:
                return False
            story.wanted = the(chosen, *_WANTED).expr_name
            if story.wanted == "the_target":
                if story.turn:
                    return False
                story.turn, story.after = "added", _value(the(chosen, "value"), story)
                story.wanted = "the_number"
                return True
            if story.wanted in ("the_target", "who_moved", "the_mark"):
                story.wanted = "the_number"
            spoken, count = re.search(r"\d+", chosen.text), first(chosen, "count")
            story.of_all = count_of(count.text) if count is not None else int(spoken.group()) if spoken else 0
    return True


def _value(node: Node, story: _Heard) -> Fraction:
    found = number_in_text(re.sub(r" (?:marks?|points|goals|runs)$", "", node.text))
    if found is None:
        raise ExpressionNotRead("", node.start)
    story.units |= {found[1]} - {""}
    return found[0]


def _balance(story: _Heard) -> MeanBalance | None:
    """The groups and the whole of a story, or None where they do not make one."""
    if not story.means or not story.wanted:
        return None
    base = story.means[0]
    if story.in_all and len(story.means) < 2:
        return None
    if story.wanted == "the_sum":
        alone = len(story.means) == 1 and not story.known and not story.turn
        return MeanBalance((), base, "sum") if alone else None
    if story.turn and not story.known and len(story.means) == 1:
        return _turned(story, base)
    if story.turn:
        return None
    if story.known and len(story.means) == 1 and story.wanted in ("the_number", "the_rest"):
        left = base.count - len(story.known)
        if left < 1 or (left > 1) != (story.wanted == "the_rest"):
            return None
        groups = (MeanGroup(len(story.known), None, story.known), MeanGroup(left))
        return MeanBalance(groups, base, "missing value" if left == 1 else "mean of the rest")
    if story.wanted in ("overall", "new_mean") and len(story.means) > 1 and not story.known:
        whole = MeanGroup(sum(group.count for group in story.means))
        if story.in_all - {whole.count}:
            return None
        return MeanBalance(tuple(story.means), whole, "mean of all")
    if (
        story.wanted in ("the_rest", "the_group")
        and len(story.means) == 2
        and base.count > story.means[1].count
        and not story.known
    ):
        return MeanBalance((story.means[1], MeanGroup(base.count - story.means[1].count)), base, "mean of the rest")
    return None


def _turned(story: _Heard, base: MeanGroup) -> MeanBalance | None:
    """Some numbers more or less; one of them may be what is asked for."""
    more = story.turn == "added"
    count = base.count + (story.movers if more else -story.movers)
    if count < 1 or story.counts_after - {count}:
        return None
    if story.wanted == "new_mean" and story.turned and story.after is None:
        alone = story.movers == 1
        moved = MeanGroup(1, story.turned[0]) if alone else MeanGroup(story.movers, None, story.turned)
        if more:
            return MeanBalance((base, moved), MeanGroup(count), "new mean")
        return MeanBalance((moved, MeanGroup(count)), base, "new mean")
    if story.wanted == "the_number" and story.after is not None and not story.turned and story.movers == 1:
        after = MeanGroup(count, story.after)
        if more:
            return MeanBalance((base, MeanGroup(1)), after, "number added")
        return MeanBalance((after, MeanGroup(1)), base, "number removed")
    return None


READERS = Readers(facts=_facts, story=_story)
