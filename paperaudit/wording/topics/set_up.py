"""What the sentences of a story of chance set up, piece by piece: throws, contents of a bag, draws, replacement."""

import re
from collections.abc import Callable
from dataclasses import dataclass, field

from parsimonious.nodes import Node

from paperaudit.maths.tree import every, first, has, the
from paperaudit.model.chance_task import Experiment, Source
from paperaudit.model.statistics_task import Clashing
from paperaudit.wording.scene import NotUnderstood
from paperaudit.wording.topics import outcomes
from paperaudit.wording.topics.heard import Sentence
from paperaudit.wording.topics.outcomes import LARGEST
from paperaudit.wording.topics.value_lists import COUNT_WORDS

MOST_DRAWS = 6


@dataclass(slots=True)
class SetUp:
    """What is known of the experiment while its sentences are read."""

    thrown: list[Source] = field(default_factory=list)
    source: Source | None = None
    draws: int = 0
    replaced: bool | None = None
    together: bool = False
    times: int = 1
    trials: int = 0
    clash: Clashing | None = None


def _count(node: Node) -> int:
    words = node.text.strip()
    return {"a": 1, "an": 1, "another": 1, "the": 1}.get(words) or COUNT_WORDS.get(words) or int(words)


def take(node: Node, known: SetUp, sentence: Sentence) -> bool:
    """Puts what a sentence states into the experiment; whether it states anything."""
    stated = every(node, "setup")
    for setup in stated:
        chosen = setup.children[0]
        _TAKES[chosen.expr_name](chosen, known, sentence)
    return bool(stated)


def _throw(node: Node, known: SetUp, sentence: Sentence) -> None:
    times = _times(node)
    again = bool(known.thrown) and all(the(one, "count").text == "the" for one in every(node, "thrown"))
    if not again:
        for one in every(node, "thrown"):
            sided, faces = first(one, "sided"), first(one, "dice_faces")
            sides = int(re.split(r"[- ]", sided.text)[0]) if sided is not None and sided.text[0].isdigit() else 6
            if sided is not None and not sided.text[0].isdigit():
                sides = COUNT_WORDS[re.split(r"[- ]", sided.text)[0]]
            if faces is not None and sided is not None and _count(the(faces, "count")) != sides:
                raise NotUnderstood("faces that are numbered in another way", node.start)
            source = outcomes.coin() if first(one, "coin") is not None else outcomes.dice(sides)
            if not 2 <= sides <= 100 or _count(the(one, "count")) > MOST_DRAWS:
                raise NotUnderstood("too many dice", node.start)
            known.thrown.extend([source] * _count(the(one, "count")))
    _repeat(known, times)


def _times(node: Node) -> int:
    found = first(node, "times")
    if found is None:
        return 1
    word = found.text.strip().removesuffix(" times")
    return {"once": 1, "twice": 2, "thrice": 3}.get(word) or COUNT_WORDS.get(word) or int(word)


def _repeat(known: SetUp, times: int) -> None:
    """A few throws are one experiment; many are trials of it."""
    if times > MOST_DRAWS:
        known.trials = times
    elif times > 1:
        known.times = times


def _spinner(node: Node, known: SetUp, sentence: Sentence) -> None:
    parts = _count(the(node, "count"))
    if int(the(node, "high").text) != parts or parts > 100:
        raise NotUnderstood("sections that are not numbered one by one", node.start)
    known.thrown.append(outcomes.numbers(range(1, parts + 1), "spinner"))
    _repeat(known, _times(node))


def _from(source: Source, node: Node, known: SetUp, drawn: bool = True) -> None:
    if known.source is not None or source.size > LARGEST:
        raise NotUnderstood("a second thing to draw from", node.start)
    known.source = source
    count = first(node, "count")
    if drawn and count is not None:
        known.draws += _count(count)
    _manner(node, known)


def _manner(node: Node, known: SetUp) -> None:
    if has(node, "with") or has(node, "put_back"):
        known.replaced = True
    if has(node, "without") or has(node, "not_back"):
        known.replaced = False
    if has(node, "together"):
        known.replaced = False


def _pack(node: Node, known: SetUp, sentence: Sentence) -> None:
    _from(outcomes.pack(), node, known)


def _dataset(node: Node, known: SetUp, sentence: Sentence) -> None:
    known.replaced = False
    _from(outcomes.letters(the(node, "letter_set").text), node, known)


def _numbers_drawn(node: Node, known: SetUp, sentence: Sentence) -> None:
    _from(outcomes.numbers(_number_set(the(node, "number_set")), "numbers"), node, known)


def _number_set(node: Node) -> list[int]:
    listed = first(node, "number_list")
    if listed is None:
        low, high = int(the(node, "low").text), int(the(node, "high").text)
    else:
        values = [int(one) for one in re.findall(r"\d+", listed.text)]
        if "." not in listed.text:
            return values
        low, high = values[0], values[-1]
        if values[:-1] != list(range(low, low + len(values) - 1)) or len(values) < 3:
            raise NotUnderstood("numbers in a row that do not follow on each other", node.start)
    if not 1 < high - low + 1 <= LARGEST:
        raise NotUnderstood("numbers from the larger to the smaller", node.start)
    return list(range(low, high + 1))


def _numbered(node: Node, known: SetUp, sentence: Sentence) -> None:
    low, high, count = int(the(node, "low").text), int(the(node, "high").text), first(node, "count")
    if count is not None and count.text.isdigit() and int(count.text) != high - low + 1:
        known.clash = Clashing(
            (sentence.source,),
            (f"from {low} to {high} there are {high - low + 1}", f"{high - low + 1} = {count.text}: false"),
        )
    if not 1 < high - low + 1 <= LARGEST:
        raise NotUnderstood("numbers from the larger to the smaller", node.start)
    _from(outcomes.numbers(range(low, high + 1), "numbers"), node, known, drawn=False)


def _word(node: Node, known: SetUp, sentence: Sentence) -> None:
    _from(outcomes.letters(the(node, "spelled").text.strip('′"')), node, known)


def _ballset(node: Node, known: SetUp, sentence: Sentence) -> None:
    contents = the(node, "contents")
    total, rest = first(contents, "total"), first(contents, "rest_are")
    whole = _count(the(total, "count")) if total is not None else 0
    pairs = [(the(one, "colour").text, _count(the(one, "count"))) for one in every(contents, "item", "item_are")]
    given = sum(count for _, count in pairs)
    if rest is not None:
        if whole <= given:
            raise NotUnderstood("nothing is left for the rest", node.start)
        pairs.append((the(rest, "colour").text, whole - given))
    elif whole > given and " of which " in contents.text:
        raise NotUnderstood("whether there are others besides those named", node.start)
    elif whole and whole != given:
        said = " + ".join(str(count) for _, count in pairs)
        known.clash = Clashing((sentence.source,), (f"{said} = {given}", f"{given} = {whole}: false"))
    names = [outcomes.singular(name) for name, _ in pairs]
    if len(set(names)) != len(names) or len(names) < 2:
        raise NotUnderstood("the same name twice", node.start)
    source = outcomes.bag([(name, count) for name, (_, count) in zip(names, pairs, strict=True)])
    drawn = first(node, "draw")
    if drawn is not None:
        _draw(drawn, known, sentence)
    _from(source, node, known, drawn=False)


def _draw(node: Node, known: SetUp, sentence: Sentence) -> None:
    known.draws += _count(the(node, "count"))
    _manner(node, known)


def _second(node: Node, known: SetUp, sentence: Sentence) -> None:
    known.draws = 2
    _manner(node, known)


def _kept(node: Node, known: SetUp, sentence: Sentence) -> None:
    known.replaced = " not" not in the(node, "back").text


def _repeated(node: Node, known: SetUp, sentence: Sentence) -> None:
    _repeat(known, _times(node))


def _scenery(node: Node, known: SetUp, sentence: Sentence) -> None:
    """Says nothing that a probability depends on."""


_TAKES: dict[str, Callable[[Node, SetUp, Sentence], None]] = {
    "throw": _throw, "pack": _pack, "dataset": _dataset, "numbers_drawn": _numbers_drawn, "numbered": _numbered,
    "word": _word, "ballset": _ballset, "spinner": _spinner, "draw": _draw, "second": _second, "kept": _kept,
    "repeated": _repeated, "scenery": _scenery,
}  # fmt: skip


def experiment_of(known: SetUp) -> Experiment:
    """The experiment that was set up; raises NotUnderstood where something of it is not said."""
    if (known.source is None) == (not known.thrown):
        raise NotUnderstood("nothing, or two things, to draw from", 0)
    if known.source is None:
        draws = tuple(known.thrown * known.times)
        if len(draws) > MOST_DRAWS:
            raise NotUnderstood("too many throws", 0)
        return Experiment(draws)
    count = max(known.draws, 1)
    if count > 1 and known.replaced is None:
        raise NotUnderstood("whether what is drawn is put back", 0, "with or without replacement")
    if count > MOST_DRAWS or known.times > 1:
        raise NotUnderstood("too many draws", 0)
    return Experiment((known.source,) * count, known.replaced is not False)
