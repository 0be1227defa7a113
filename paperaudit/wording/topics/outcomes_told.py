"""One thing with several outcomes in words: all but one with a probability, or how often one of them came."""

import re
from fractions import Fraction

from parsimonious.nodes import Node

from paperaudit.errors import ExpressionNotRead
from paperaudit.maths.peg import parsed
from paperaudit.maths.tree import every, first, has, the
from paperaudit.model.chance_task import FromTable, Observed
from paperaudit.model.fact import Given
from paperaudit.model.statistics_task import Told as Noted
from paperaudit.wording.topics.heard import Heard, Sentence, givens_of
from paperaudit.wording.topics.joined_events import amount_in
from paperaudit.wording.topics.named_events import Events, denied, stems
from paperaudit.wording.topics.registry import topic_named
from paperaudit.wording.topics.topic import Told
from paperaudit.wording.topics.value_lists import COUNT_WORDS

SAYS = re.compile(
    r"\d|\b(?:two|three|four|five|six|seven|eight|nine|ten|twice|once|probab\w*|chance|exclusive|events?|depend\w*|never|always|cannot|both|either|same|until|again|only|one|them|they|each|other|together|happen\w*|not|if|likely|independent\w*"
    r"|replace\w*|exactly|otherwise|biased)\b"
)
LARGEST = 100_000
"""The most trials that a paper has."""


def chance_said(text: str) -> Node | None:
    """A sentence of chances in words, in small letters; None where it is none."""
    try:
        return parsed(topic_named("chances in words").rules(), "said", text)
    except ExpressionNotRead:
        return None


def number_of(node: Node) -> int:
    """How many trials a sentence tells of: "twice" is 2."""
    written = first(node, "number")
    if written is None:
        return 2 if node.text.endswith("twice") else 1
    return COUNT_WORDS.get(written.text) or int(written.text)


def frequency_told(told: Heard) -> Told | None:
    """How often something came of how many times, and its relative frequency asked for."""
    whole, counts, asked, sources = 0, list[tuple[str, int]](), list[tuple[Sentence, Node]](), list[Sentence]()
    explicit = any(one.asked for one in told.sentences)
    for sentence in told.sentences:
        node = chance_said(sentence.text.lower())
        if node is None:
            if SAYS.search(sentence.text.lower()):
                return None
            continue
        if (ask := first(node, "asked")) is not None:
            asked += [(sentence, ask)] if sentence.asked or not explicit else []
            continue
        if has(node, "chances") or has(node, "independent") or has(node, "outcomes"):
            return None
        size = first(node, "repeated", "whole")
        if size is not None:
            if whole:
                return None
            whole = number_of(size)
        if (often := first(node, "how_often")) is not None:
            counts.append((the(node, "counted_event").text, number_of(often)))
        sources.append(sentence)
    if len(asked) != 1 or len(counts) != 1 or not 1 < whole <= LARGEST or has(asked[0][1], "condition"):
        return None
    (sentence, ask), (name, count) = asked[0], counts[0]
    target = first(ask, "target")
    events = Events()
    named = events.add(name, name)
    found = events.find(target.text) if target is not None and " or " not in target.text else None
    if named is None or found is None or denied(name) or not found[1]:
        return None
    task = Observed(named[0].name, count, whole)
    read_as = f"{count} of {whole} times {named[0].name}"
    return Told(told.ask(task, sentence.source, read_as, sentence.place), givens_of(sources, Noted))


def outcomes_told(told: Heard) -> Told | None:
    """One thing with several outcomes that are listed, all but one with a probability."""
    listed: list[tuple[str, ...]] = []
    clauses, asked, sources = dict[str, Fraction](), list[tuple[Sentence, Node]](), list[Sentence]()
    trials = 0
    rest: list[tuple[Sentence, Node]] = []
    for sentence in told.sentences:
        node = chance_said(sentence.text.lower())
        if node is None:
            if SAYS.search(sentence.text.lower()):
                return None
            continue
        if (outcomes := first(node, "list")) is not None and "only" not in sentence.text and has(node, "only_in"):
            return None
        if outcomes is not None:
            listed.append(tuple(item.text for item in every(outcomes, "item")))
            sources.append(sentence)
        elif (ask := first(node, "asked")) is not None:
            asked.append((sentence, ask))
        elif (repeated := first(node, "repeated")) is not None:
            trials = number_of(repeated) if not trials else LARGEST + 1
            sources.append(sentence)
        else:
            rest.append((sentence, node))
    if len(listed) != 1 or len(asked) != 1 or not rest or trials > LARGEST:
        return None
    for sentence, node in rest:
        sources.append(sentence)
        for clause in every(node, "chance", "more", "otherwise", "independent"):
            event = first(clause, "event")
            name = _outcome(event.text, listed[0]) if event is not None else ""
            if not name or name in clauses or has(clause, "condition"):
                return None
            clauses[name] = amount_in(the(clause, "amount").text)
    return _table_told(told, listed[0], clauses, asked[0], trials, sources)


def _table_told(
    told: Heard,
    names: tuple[str, ...],
    clauses: dict[str, Fraction],
    asked: tuple[Sentence, Node],
    trials: int,
    sources: list[Sentence],
) -> Told | None:
    sentence, ask = asked
    expected = first(ask, "expected")
    words = the(ask, "words").text if expected is not None else the(ask, "target").text
    if (expected is not None) != (trials > 1) or has(ask, "condition") or re.search(r"\b(?:not|no)\b|n′t", words):
        return None
    wanted = [_outcome(piece, names) for piece in re.split(r" or (?:an? )?", words)]
    if "" in wanted or len(set(wanted)) != len(wanted) or len(names) - len(clauses) > 1 or len(set(names)) < len(names):
        return None
    chances = tuple(clauses.get(name) for name in names)
    total = sum(clauses.values(), Fraction(0))
    if total > 1 or (None not in chances and total != 1):
        return None
    of = tuple(names.index(name) for name in wanted)
    missing = expected is None and len(of) == 1 and chances[of[0]] is None
    task = FromTable(names, chances, "missing" if missing else "expected" if expected is not None else "of", of, trials)
    givens = tuple(Given(one.source, (Noted(one.source),), one.origin, one.place) for one in sources)
    read_as = ", ".join(f"P({name}) = {'?' if one is None else one}" for name, one in zip(names, chances, strict=True))
    return Told(told.ask(task, sentence.source, read_as, sentence.place), givens)


def _outcome(words: str, names: tuple[str, ...]) -> str:
    """The listed outcome that words name; "" where it is none, or more than one."""
    said = stems(words)
    found = [name for name in names if stems(name) and stems(name) <= said]
    return found[0] if len(found) == 1 else ""
