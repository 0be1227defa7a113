"""Stories of chance: what is thrown or drawn, how, and the event whose probability is asked for."""

import re
from collections.abc import Iterator
from dataclasses import replace

from parsimonious.nodes import Node

from paperaudit.errors import ExpressionNotRead
from paperaudit.maths.peg import parsed
from paperaudit.maths.tree import every, first, has, the
from paperaudit.model.chance_task import Experiment, OutcomesOf, ProbabilityOf, Single, Source
from paperaudit.model.paper import Part, Question
from paperaudit.model.statistics_task import Told as Noted
from paperaudit.model.topic import TopicTask
from paperaudit.wording.scene import NotUnderstood, Scene
from paperaudit.wording.topics.events import condition_of, event_of
from paperaudit.wording.topics.heard import Sentence, givens_of, heard
from paperaudit.wording.topics.registry import topic_named
from paperaudit.wording.topics.set_up import SetUp, experiment_of, take
from paperaudit.wording.topics.topic import Readers, Told
from paperaudit.wording.topics.value_lists import COUNT

_CONTAINERS = r"bag|box|jar|tin|drawer|bowl|basket|hat|sack|packet|crate|bucket|chest|tub|urn"
_NOUNS = (r"ball|bead|counter|marble|sweet|disc|disk|token|button|sock|pen|pencil|card|ticket|cube|block|flag|rope|sail"
          r"|tile|shell|crayon|bulb|peg|chip|scarf|shirt|hook|shackle")  # fmt: skip
_SPELLINGS = (
    (r"\b(?:die|dice)\b", "dice"),
    (
        r"\b(?:fair|unbiased|ordinary|standard|normal|regular|balanced|well[- ]shuffled|shuffled|cubical|opaque"
        r"|six[- ]sided) ",
        "",
    ),
    (r",? (?:at random|randomly)\b", ""),
    (rf"\b(?:{_CONTAINERS})\b", "container"),
    (rf"\b(?:{_NOUNS}|item|thing|object)(s?)\b(?! of 52)", r"ball\1"),
    (r"\b(?:pack|deck) of (?:52 )?(?:playing )?balls\b", "pack of cards"),
    (r"\b52 playing balls\b|\bplaying balls\b", "balls"),
)
_UNFAIR = re.compile(r"\b(?:biased|unfair|loaded|weighted|twice as likely|lost|adds|added to|eaten)\b")
_SAYS = re.compile(
    r"\d|\b(?:two|three|four|five|six|seven|eight|nine|ten|replace\w*|put back|returned|first|second|third|each|without"
    r"|not"
    r"|dice|coins?|cards?|contains?|spinner|rolled|thrown|tossed|drawn|probability)\b"
)


_COUNTED = re.compile(rf"\b{COUNT} (?P<noun>{_NOUNS})s?\b")
_KEPT = r"\b(?:item|thing|object)(s?)\b"


def spelled(text: str, several: bool = False) -> str:
    """A sentence in small letters, with "ball" for what is drawn and "container" for what it is drawn from.

    Where there are `several` kinds of things in the bag, 3 pens and 4 pencils, these keep their names.
    """
    found = text.lower()
    for pattern, instead in _SPELLINGS:
        found = re.sub(_KEPT if several and instead == r"ball\1" else pattern, instead, found)
    return re.sub(r"\s+", " ", found).strip()


_HOLDS = re.compile(rf".*\b(?:contains|has|holds|are) {COUNT} [a-z ]+", re.IGNORECASE)
_WHICH_ARE = re.compile(rf"(?:(?:of (?:these|them),? )?)(?={COUNT} (?:of them )?are )", re.IGNORECASE)


def _story(question: Question, part: Part, scene: Scene) -> Told | None:
    told = heard(question, part, scene)
    if told.too_long or question.table or any(_UNFAIR.search(one.text) for one in told.sentences):
        return None
    known, asked, sources = SetUp(), None, []
    explicit = any(one.asked for one in told.sentences)
    several = any(len({one["noun"] for one in _COUNTED.finditer(said.text.lower())}) > 1 for said in told.sentences)
    for sentence in _joined(told.sentences):
        text = spelled(sentence.text, several)
        node = _said(text)
        if node is None:
            if not _SAYS.search(text):
                continue
            return None
        try:
            stated = take(node, known, sentence)
        except NotUnderstood:
            return None
        ask = first(node, "asked")
        if ask is not None and (sentence.asked or not explicit):
            if asked is not None:
                return None
            asked = (sentence, ask, first(node, "known_event"))
        if stated or ask is None:
            sources.append(sentence)
    if asked is None:
        return None
    try:
        task = known.clash or _task(asked[1], asked[2], known)
    except NotUnderstood:
        return None
    return Told(told.ask(task, asked[0].source, _read_as(task), asked[0].place), givens_of(sources, Noted))


def _joined(told: list[Sentence]) -> Iterator[Sentence]:
    """The sentences, one that counts what a bag holds together with the next that says which these are."""
    rest = list(told)
    while rest:
        one = rest.pop(0)
        whole = _HOLDS.fullmatch(one.text.strip(" .")) if rest else None
        parts = _WHICH_ARE.match(rest[0].text) if whole is not None else None
        if whole is not None and parts is not None:
            other = rest.pop(0)
            text = f"{whole[0]}, of which {other.text[parts.end() :]}"
            one = replace(one, text=text, source=f"{one.source} {other.source}")
        yield one


def _said(text: str) -> Node | None:
    try:
        return parsed(topic_named("chance").rules(), "said", text)
    except ExpressionNotRead:
        return None


def _read_as(task: TopicTask) -> str:
    match task:
        case ProbabilityOf(Experiment(draws, replaced)) | OutcomesOf(Experiment(draws, replaced)):
            drawn = " and ".join(_source_words(draw) for draw in dict.fromkeys(draws))
            how = "" if len(draws) == 1 else f", {len(draws)} draws" + ("" if replaced else " without replacement")
            return f"{drawn}{how}"
    return task.in_words()


def _source_words(source: Source) -> str:
    if source.kind == "cards":
        return "52 cards"
    listed = ", ".join(f"{thing.count} {thing.name}" if thing.count > 1 or source.kind == "bag" else thing.name
                       for thing in source.things[:12])  # fmt: skip
    return f"{source.kind}: {listed}{' …' if len(source.things) > 12 else ''}"


def _task(node: Node, known_event: Node | None, known: SetUp) -> TopicTask:
    experiment = experiment_of(known)
    if known_event is not None and (has(node, "outcomes") or has(node, "expected")):
        raise NotUnderstood("an event that is known with a count", node.start)
    if has(node, "outcomes"):
        return OutcomesOf(experiment)
    if (expected := first(node, "expected")) is not None:
        if not known.trials or len(experiment.draws) > 1:
            raise NotUnderstood("how often it is done", node.start)
        things = list(experiment.draws[0].things)
        return ProbabilityOf(experiment, Single(condition_of(the(expected, "condition"), things)), known.trials)
    if known.trials:
        raise NotUnderstood("trials without an expected number", node.start)
    if known_event is None:
        return ProbabilityOf(experiment, event_of(the(node, "event"), experiment))
    chosen = [one for one in every(node, "event", "known_event") if one.expr_name == "event"]
    given = event_of(the(known_event, "event"), experiment)
    return ProbabilityOf(experiment, event_of(chosen[0], experiment), known=given)


READERS = Readers(story=_story)
