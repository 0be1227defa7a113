"""Arrangements and choices under a condition: "if the two must sit together", "with at least one woman"."""

import re
from dataclasses import dataclass, field

from parsimonious.nodes import Node

from paperaudit.errors import ExpressionNotRead
from paperaudit.maths.peg import parsed
from paperaudit.maths.tree import every, first, has, the
from paperaudit.model.counting_task import Committee, Count, Digits, Row, Spelling
from paperaudit.model.paper import Part, Question
from paperaudit.model.statistics_task import Told as Noted
from paperaudit.model.topic import TopicTask
from paperaudit.wording.scene import NotUnderstood, Scene
from paperaudit.wording.topics.heard import Sentence, givens_of, heard
from paperaudit.wording.topics.registry import topic_named
from paperaudit.wording.topics.topic import Readers, Told
from paperaudit.wording.topics.value_lists import COUNT_WORDS

_SAYS = re.compile(
    r"\d|\b(?:two|three|four|five|six|seven|eight|nine|ten|must|together|next|particular|not|repeat\w*)\b"
)
_PLURALS = {"men": "man", "women": "woman", "people": "person", "children": "child", "ladies": "lady"}


@dataclass(slots=True)
class _Known:
    """What the sentences set up: groups of people, the size of a choice, a word, digits."""

    groups: list[tuple[str, int]] = field(default_factory=list)
    size: int = 0
    word: str = ""
    digits: Node | None = None
    rules: list[Node] = field(default_factory=list)


def _count(node: Node) -> int:
    words = node.text.strip()
    return {"a": 1, "an": 1, "no": 0}.get(words, COUNT_WORDS.get(words, -1)) if not words.isdigit() else int(words)


def _singular(word: str) -> str:
    return _PLURALS.get(word, word.removesuffix("s"))


def _story(question: Question, part: Part, scene: Scene) -> Told | None:
    told = heard(question, part, scene)
    if told.too_long or question.table:
        return None
    known, asked, sources = _Known(), None, list[Sentence]()
    for sentence in told.sentences:
        node = _said(sentence.text.lower())
        if node is None:
            if _SAYS.search(sentence.text.lower()):
                return None
            continue
        if not _take(node, known):
            return None
        if has(node, "ask"):
            if asked is not None:
                return None
            asked = sentence
        else:
            sources.append(sentence)
    if asked is None:
        return None
    try:
        task = _task(known)
    except NotUnderstood:
        return None
    return Told(told.ask(task, asked.source, _read_as(task), asked.place), givens_of(sources, Noted)) if task else None


def _said(text: str) -> Node | None:
    try:
        return parsed(topic_named("counting under a condition").rules(), "said", text)
    except ExpressionNotRead:
        return None


def _take(node: Node, known: _Known) -> bool:
    """Puts a sentence into what is known; False where it says a thing a second time."""
    people = first(node, "the_people")
    if people is not None:
        if known.groups:
            return False
        known.groups = [(_singular(the(one, "noun").text), _count(the(one, "count"))) for one in every(people, "group")]
    chosen = first(node, "committee_told", "committee_ask")
    if chosen is not None:
        known.size = _count(next(one for one in every(chosen, "count", "the_people") if one.expr_name == "count"))
    word = first(node, "word")
    if word is not None:
        if known.word:
            return False
        known.word = word.text.strip('′"').upper()
    digits = first(node, "digit_ask", "digits_kind", "digits_told")
    if digits is not None:
        if known.digits is not None:
            return False
        known.digits = digits
    known.rules += every(node, "rule")
    return True


def _task(known: _Known) -> TopicTask | None:
    if known.digits is not None:
        return _digits(known.digits) if not known.rules and not known.groups and not known.word else None
    kinds = [rule.children[0] for rule in known.rules]
    if not kinds:
        return None
    if known.word:
        return _spelling(known.word, kinds) if not known.groups else None
    if known.size:
        return _committee(known, kinds)
    return _row(known.groups, kinds)


def _spelling(word: str, kinds: list[Node]) -> Spelling:
    begins = ends = ""
    together = False
    for kind in kinds:
        if kind.expr_name == "begins":
            which = the(kind, "starts", "ends")
            letter = the(which, "letter").text.strip('′"').upper()
            if "and ends" in kind.text or "and end " in kind.text:
                begins = ends = letter
            elif which.expr_name == "starts":
                begins = letter
            else:
                ends = letter
        elif kind.expr_name == "together" and has(kind, "vowels"):
            together = True
        else:
            raise NotUnderstood("a condition on letters", 0)
    if together and (begins or ends):
        raise NotUnderstood("two kinds of conditions", 0)
    return Spelling(word, begins, ends, together)


def _row(groups: list[tuple[str, int]], kinds: list[Node]) -> Row:
    sizes = dict(groups)
    if len(sizes) != len(groups) or not groups or any(size < 1 for size in sizes.values()):
        raise NotUnderstood("groups that are not said", 0)
    whole = sum(sizes.values())
    if len(kinds) == 2 and all(kind.expr_name == "together" and not has(kind, "count") for kind in kinds):
        named = {_singular(the(kind, "noun").text) for kind in kinds}
        if named == set(sizes) and len(groups) == 2:
            return Row(groups[0][1], groups[1][1], "both together")
    if len(kinds) != 1:
        raise NotUnderstood("several conditions", 0)
    kind = kinds[0]
    if kind.expr_name == "alternate":
        if {_singular(one.text) for one in every(kind, "noun")} != set(sizes) or len(groups) != 2:
            raise NotUnderstood("other groups", 0)
        return Row(groups[0][1], groups[1][1], "alternate")
    if kind.expr_name not in ("together", "apart") or has(kind, "vowels"):
        raise NotUnderstood("a condition on a row", 0)
    who = the(kind, "who")
    name, count = _singular(the(who, "noun").text), first(who, "count")
    if count is not None:
        special = _count(count)
        if len(groups) != 1 and name not in sizes:
            raise NotUnderstood("people who are not told of", 0)
    elif len(groups) == 2 and name in sizes:
        special = sizes[name]
    else:
        raise NotUnderstood("who is meant", 0)
    apart = kind.expr_name == "apart"
    if not 2 <= special < whole or (apart and special > 2 and "no two" not in kind.text):
        raise NotUnderstood("how many are apart", 0)
    return Row(special, whole - special, "apart" if apart else "together")


def _committee(known: _Known, kinds: list[Node]) -> TopicTask:
    if len(kinds) != 1 or not known.groups or known.size < 1:
        raise NotUnderstood("several conditions", 0)
    kind = kinds[0]
    if kind.expr_name == "included":
        count = first(kind, "count")
        fixed = _count(count) if count is not None else 1
        whole = sum(size for _, size in known.groups)
        left = known.size - (0 if has(kind, "denied") else fixed)
        if "both" in kind.text or left < 0 or whole <= fixed:
            raise NotUnderstood("who is included", 0)
        return Count("choices", groups=((whole - fixed, left),))
    if kind.expr_name == "more_than" and len(known.groups) == 2:
        more, fewer = (_singular(one.text) for one in every(kind, "noun"))
        if {more, fewer} != {name for name, _ in known.groups} or more == fewer:
            raise NotUnderstood("people who are not told of", 0)
        (first_name, pool), (second_name, other) = sorted(known.groups, key=lambda group: group[0] != more)
        names = (_plural(first_name), _plural(second_name))
        return Committee(names, (pool, other), known.size, known.size // 2 + 1, known.size)
    if kind.expr_name != "gendered" or len(known.groups) != 2:
        raise NotUnderstood("a condition on a choice", 0)
    spans = [_span(one, known) for one in every(kind, "amount")]
    (name, least, most), *others = spans
    for also, low, high in others:
        if also == name or low != high:
            raise NotUnderstood("two conditions", 0)
        if least != most or least + low != known.size:
            raise NotUnderstood("numbers that do not make up the whole", 0)
    (first_name, pool), (second_name, other) = sorted(known.groups, key=lambda group: group[0] != name)
    return Committee((_plural(first_name), _plural(second_name)), (pool, other), known.size, least, most)


def _plural(name: str) -> str:
    return next((plural for plural, single in _PLURALS.items() if single == name), f"{name}s")


def _span(node: Node, known: _Known) -> tuple[str, int, int]:
    name, how, many = _singular(the(node, "noun").text), the(node, "how").text, the(node, "many")
    if name not in dict(known.groups):
        raise NotUnderstood("people who are not told of", node.start)
    if many.text == "only":
        return name, known.size, known.size
    count = _count(many)
    if how.startswith("at least"):
        return name, count, known.size
    if how.startswith(("at most", "no more than")):
        return name, 0, count
    if how.startswith("more than"):
        return name, count + 1, known.size
    if many.text in ("a", "an") or (many.text != "no" and count < 1):
        raise NotUnderstood("how many", node.start)
    return name, count, count


def _digits(node: Node) -> Digits:
    text = the(node, "digit_set").text
    listed = [int(one) for one in re.findall(r"\d", text)]
    digits = tuple(range(listed[0], listed[1] + 1)) if " to " in text else tuple(listed)
    places, repeat = _count(the(node, "count")), first(node, "repeat")
    if repeat is None or len(set(digits)) != len(digits) or not 2 <= places <= 8:
        raise NotUnderstood("whether digits may be repeated", node.start)
    starts = tuple(one for one in digits if one or "number" not in node.text)
    last = digits
    kind, over = first(node, "kind"), first(node, "over")
    if kind is not None and kind.text:
        last = tuple(one for one in digits if one % 2 == (kind.text == "odd"))
    if has(node, "fives"):
        last = tuple(one for one in last if one % 5 == 0)
    if over is not None:
        bound = int(re.findall(r"\d+", over.text)[0])
        if bound % 10 ** (places - 1) or len(str(bound)) != places or 0 in digits:
            raise NotUnderstood("a bound that more than the first digit settles", node.start)
        starts = tuple(one for one in starts if one >= bound // 10 ** (places - 1))
    if last == digits and over is None:
        raise NotUnderstood("no condition", node.start)
    return Digits(digits, places, has(repeat, "may"), starts, last)


def _read_as(task: TopicTask) -> str:
    match task:
        case Row(special, others, rule):
            return f"{special} and {others} in a row, the {special} {rule}"
        case Committee((one, other), (pool, rest), size, least, most):
            return f"{size} of {pool} {one} and {rest} {other}, {least} to {most} {one}"
        case Count(groups=groups):
            return " and ".join(f"{r} of {n}" for n, r in groups)
        case Digits(places=places, first=starts, last=last):
            return (
                f"{places} places, first one of {', '.join(map(str, starts))}, last one of {', '.join(map(str, last))}"
            )
    return task.in_words()


READERS = Readers(story=_story)
