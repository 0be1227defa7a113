"""Stories of events whose probabilities are told in words: conditions, independent events, trials that repeat."""

import re
from dataclasses import dataclass, field
from fractions import Fraction
from typing import Literal

from parsimonious.nodes import Node

from paperaudit.maths.tree import every, first, has, the
from paperaudit.model.chance_task import FromTable, Successes
from paperaudit.model.event_task import ChanceIs, ChanceOf, EventName, EventsAre
from paperaudit.model.fact import Given
from paperaudit.model.paper import Part, Question
from paperaudit.model.statistics_task import Told as Noted
from paperaudit.model.topic import TopicFact, TopicTask
from paperaudit.wording.scene import NotUnderstood, Scene
from paperaudit.wording.topics.event_targets import MANY, Target, target_of
from paperaudit.wording.topics.heard import Heard, Sentence, heard
from paperaudit.wording.topics.joined_events import amount_in
from paperaudit.wording.topics.named_events import Event, Events, stems
from paperaudit.wording.topics.outcomes_told import LARGEST, SAYS, chance_said, frequency_told, number_of, outcomes_told
from paperaudit.wording.topics.topic import Readers, Told

_EXPECTING = re.compile(
    r"\b(?:would|do|should|can|you|we|one|expect|expected|likely|times?|i|about|get|see|these|them|many|often)\b"
)
_FAIR = re.compile(r"\b(?:fair|unbiased|bag|pack)\b")


@dataclass(frozen=True, slots=True)
class _Clause:
    """P(event | condition) = amount, in words; `condition` "" for none, "else" for the opposite of the last one."""

    event: str
    printed: str
    condition: str
    amount: str
    sentence: Sentence


@dataclass(slots=True)
class _Known:
    clauses: list[_Clause] = field(default_factory=list)
    independent: list[Sentence] = field(default_factory=list)
    exclusive: bool = False
    trials: int = 0
    trial_sentence: Sentence | None = None
    names: tuple[str, ...] = ()
    sources: list[Sentence] = field(default_factory=list)


def _story(question: Question, part: Part, scene: Scene) -> Told | None:
    told = heard(question, part, scene)
    if told.too_long or question.table:
        return None
    plain = not any(_FAIR.search(one.text) for one in told.sentences[:1])
    return outcomes_told(told) or frequency_told(told) or (_events_told(told) if plain else None)


def _events_told(told: Heard) -> Told | None:
    heard_out = _hear(told)
    if heard_out is None:
        return None
    known, asked, ask = heard_out
    events = Events()
    try:
        facts = _facts(known, events)
        task = _task(ask, known, events)
    except NotUnderstood:
        return None
    if isinstance(task, ChanceOf):
        names = [one.name for one in events.known]
        if len(names) > 2 or (known.independent and len(names) != 2):
            return None
        kind: Literal["independent", "mutually exclusive"] = "mutually exclusive" if known.exclusive else "independent"
        if known.exclusive and len(known.independent) > 1:
            return None
        facts += [
            Given(one.source, (EventsAre(kind, (names[0], names[1]), one.source),), one.origin, one.place)
            for one in known.independent
        ]
    else:
        facts = [Given(one.source, (Noted(one.source),), one.origin, one.place) for one in known.sources]
    return Told(told.ask(task, asked.source, _read_as(task, facts), asked.place), tuple(facts))


def _hear(told: Heard) -> tuple[_Known, Sentence, Node] | None:
    """What every sentence says, and the one that asks; None where one is not understood."""
    known, asked = _Known(), list[tuple[Sentence, Node]]()
    explicit = any(one.asked for one in told.sentences)
    for sentence in told.sentences:
        node = chance_said(sentence.text.lower())
        if node is None:
            if SAYS.search(sentence.text.lower()):
                return None
            continue
        if (ask := first(node, "asked")) is not None:
            if sentence.asked or not explicit:
                asked.append((sentence, ask))
        elif not _take(node, sentence, known):
            return None
    return (known, *asked[0]) if len(asked) == 1 and known.clauses else None


def _take(node: Node, sentence: Sentence, known: _Known) -> bool:
    known.sources.append(sentence)
    if has(node, "independent") or has(node, "exclusive"):
        known.independent.append(sentence)
        known.exclusive = known.exclusive or has(node, "exclusive")
    elif (repeated := first(node, "repeated")) is not None:
        if known.trials or (count := number_of(repeated)) > LARGEST:
            return False
        known.trials, known.trial_sentence = count, sentence
    else:
        for clause in every(node, "chance", "otherwise", "more"):
            known.clauses.append(_clause(clause, sentence, known))
    return True


def _clause(node: Node, sentence: Sentence, known: _Known) -> _Clause:
    event, condition = first(node, "event"), first(node, "condition")
    last = known.clauses[-1] if known.clauses else None
    if event is not None:
        start = sentence.source.lower().find(event.text)
        text = event.text
        printed = sentence.source[start : start + len(text)] if start >= 0 else text
    else:
        text, printed = (last.event, last.printed) if last is not None else ("", "")
    under = condition.text if condition is not None else "else" if node.expr_name == "otherwise" else ""
    return _Clause(text, printed, under, the(node, "amount").text, sentence)


def _facts(known: _Known, events: Events) -> list[Given]:
    """The clauses as statements of probabilities; the events without a condition are named first."""
    placed: list[tuple[_Clause, tuple[Event, bool]]] = []
    for clause in sorted(known.clauses, key=lambda one: bool(one.condition)):
        found = events.add(clause.event, clause.printed)
        if found is None:
            raise NotUnderstood("an event without a name", 0)
        placed.append((clause, found))
    by_clause = {id(clause): found for clause, found in placed}
    facts: list[Given] = []
    last: tuple[Event, bool] | None = None
    for clause in known.clauses:
        event, happens = by_clause[id(clause)]
        name = EventName((event.name, happens))
        if clause.condition:
            last = _condition(clause.condition, last, events)
            if last[0] == event:
                raise NotUnderstood("an event under itself", 0)
            name = EventName((event.name, happens), "given", (last[0].name, last[1]))
        fact: TopicFact = ChanceIs(name, amount_in(clause.amount), f"= {clause.amount}")
        one = clause.sentence
        if facts and facts[-1].text == one.source:
            facts[-1] = Given(one.source, (*facts[-1].facts, fact), one.origin, one.place)
        else:
            facts.append(Given(one.source, (fact,), one.origin, one.place))
    return facts


def _condition(text: str, last: tuple[Event, bool] | None, events: Events) -> tuple[Event, bool]:
    if text == "else" or not stems(text):
        turned = text == "else" or re.search(r"\bnot\b|n′t\b", text)
        if last is None or not turned:
            raise NotUnderstood("a condition that is not said", 0)
        return last[0], not last[1]
    found = events.add(text, text)
    if found is None:
        raise NotUnderstood("a condition that is not said", 0)
    return found


def _task(ask: Node, known: _Known, events: Events) -> TopicTask:
    under = first(ask, "condition")
    condition = events.find(under.text) if under is not None else None
    if under is not None and condition is None:
        raise NotUnderstood("a condition that is not said", 0)
    expected = first(ask, "expected")
    if expected is not None:
        return _expected(the(expected, "words").text, known, events)
    target = target_of(the(ask, "target").text, events, known.trials)
    if known.trials > 1:
        return _successes(target, known, events)
    if target.of is not None and condition is not None:
        if target.of.join or condition[0].name == target.of.first[0]:
            raise NotUnderstood("a condition on joined events", 0)
        return ChanceOf(EventName(target.of.first, "given", (condition[0].name, condition[1])))
    if condition is not None:
        raise NotUnderstood("a condition on several events", 0)
    if target.of is None:
        return _several(target, known, events)
    if not target.of.join and len(known.clauses) == 1 and not known.clauses[0].condition:
        return _opposite(target, known, events)
    return ChanceOf(target.of)


def _expected(words: str, known: _Known, events: Events) -> FromTable:
    found = events.find(_EXPECTING.sub(" ", words))
    clauses = known.clauses
    if found is None or len(clauses) != 1 or clauses[0].condition or known.trials < 2:
        raise NotUnderstood("how often it is done", 0)
    value = amount_in(clauses[0].amount)
    stated = events.find(clauses[0].event)
    assert stated is not None
    value = value if stated[1] else 1 - value
    name = found[0].name
    return FromTable((name, f"not {name}"), (value, 1 - value), "expected", (0 if found[1] else 1,), known.trials)


def _opposite(target: Target, known: _Known, events: Events) -> FromTable:
    """The opposite of the only event; its own probability is no question."""
    assert target.of is not None
    stated = events.find(known.clauses[0].event)
    if stated is None or stated[1] == target.of.first[1]:
        raise NotUnderstood("a probability that is stated", 0)
    name = stated[0].name
    names = (name, f"not {name}") if stated[1] else (f"not {name}", name)
    return FromTable(names, (amount_in(known.clauses[0].amount), None), "missing")


def _chances(known: _Known, events: Events) -> list[tuple[str, Fraction]]:
    found = []
    for clause in known.clauses:
        event = events.find(clause.event)
        if clause.condition or event is None:
            raise NotUnderstood("a condition", 0)
        value = amount_in(clause.amount)
        if not 0 <= value <= 1:
            raise NotUnderstood("a probability beyond 1", 0)
        found.append((event[0].name, value if event[1] else 1 - value))
    if len({name for name, _ in found}) != len(found):
        raise NotUnderstood("one event twice", 0)
    return found


def _successes(target: Target, known: _Known, events: Events) -> Successes:
    """So many of several trials of one event."""
    chances = _chances(known, events)
    if len(chances) != 1 or target.least < 0:
        raise NotUnderstood("trials of several events", 0)
    (name, value), trials = chances[0], known.trials
    least, most = _span(target, trials)
    decimal = "/" not in known.clauses[0].amount
    return Successes((name,) * trials, (value,) * trials, least, most, decimal)


def _span(target: Target, count: int) -> tuple[int, int]:
    """From how many to how many of so many events are to happen."""
    least, most = min(target.least, count) if target.least == MANY else target.least, min(target.most, count)
    if not target.happens:
        least, most = count - most, count - least
    if not 0 <= least <= most <= count:
        raise NotUnderstood("more than there are", 0)
    return least, most


def _several(target: Target, known: _Known, events: Events) -> TopicTask:
    """So many of several independent events; of two the rules for joined events tell more."""
    chances = _chances(known, events)
    if not known.independent or known.exclusive or len(chances) < 3 or target.least < 0:
        raise NotUnderstood("how many events happen", 0)
    count = len(chances)
    least, most = _span(target, count)
    decimal = all("/" not in clause.amount for clause in known.clauses)
    return Successes(tuple(name for name, _ in chances), tuple(value for _, value in chances), least, most, decimal)


def _read_as(task: TopicTask, facts: list[Given]) -> str:
    match task:
        case Successes(names, chances, least, most):
            each = f"P({names[0]}) = {chances[0]} each time" if len(set(names)) == 1 else ", ".join(names)
            return f"{len(names)} independent trials, {each}; {least} to {most} of them"
        case ChanceOf(of):
            said = "; ".join(fact.of.text() + f" {fact.text}" for given in facts for fact in given.facts
                             if isinstance(fact, ChanceIs))  # fmt: skip
            return f"{said}; {of.text()}"
    return task.in_words()


READERS = Readers(story=_story)
