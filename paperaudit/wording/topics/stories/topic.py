"""Puts a part to the readers of stories: exactly one of them must understand every sentence."""

import re
from collections.abc import Callable, Iterator, Sequence
from fractions import Fraction

from paperaudit.errors import ExpressionNotRead, PaperauditError
from paperaudit.maths.limits import check_limits
from paperaudit.maths.story_equations import read_as
from paperaudit.maths.story_numbers import numbers_of
from paperaudit.model.ask import Accuracy, Ask
from paperaudit.model.fact import Given, Origin
from paperaudit.model.paper import Line, Part, Question
from paperaudit.model.place import Place
from paperaudit.model.story import StoryTask
from paperaudit.wording.asides import asides_of
from paperaudit.wording.scene import NotUnderstood, Scene
from paperaudit.wording.sentences import sentences
from paperaudit.wording.topics.stories.ages import AHEAD as AGES_AHEAD
from paperaudit.wording.topics.stories.ages import ages_story
from paperaudit.wording.topics.stories.amounts import number_in
from paperaudit.wording.topics.stories.baskets import AHEAD as BASKETS_AHEAD
from paperaudit.wording.topics.stories.baskets import baskets_story
from paperaudit.wording.topics.stories.borders import AHEAD as BORDERS_AHEAD
from paperaudit.wording.topics.stories.borders import borders_story
from paperaudit.wording.topics.stories.figures import AHEAD as FIGURES_AHEAD
from paperaudit.wording.topics.stories.figures import figures_story
from paperaudit.wording.topics.stories.meetings import AHEAD as MEETINGS_AHEAD
from paperaudit.wording.topics.stories.meetings import meetings_story
from paperaudit.wording.topics.stories.mixtures import AHEAD as MIXTURES_AHEAD
from paperaudit.wording.topics.stories.mixtures import mixtures_story
from paperaudit.wording.topics.stories.multiples import AHEAD as MULTIPLES_AHEAD
from paperaudit.wording.topics.stories.multiples import multiples_story
from paperaudit.wording.topics.stories.numbers import AHEAD as NUMBERS_AHEAD
from paperaudit.wording.topics.stories.numbers import numbers_story
from paperaudit.wording.topics.stories.percents import AHEAD as PERCENTS_AHEAD
from paperaudit.wording.topics.stories.percents import percents_story
from paperaudit.wording.topics.stories.plain import Plain, plain
from paperaudit.wording.topics.stories.price_mixtures import AHEAD as PRICE_MIXTURES_AHEAD
from paperaudit.wording.topics.stories.price_mixtures import price_mixtures_story
from paperaudit.wording.topics.stories.prices import AHEAD as PRICES_AHEAD
from paperaudit.wording.topics.stories.prices import prices_story
from paperaudit.wording.topics.stories.quicker import AHEAD as QUICKER_AHEAD
from paperaudit.wording.topics.stories.quicker import quicker_story
from paperaudit.wording.topics.stories.rests import AHEAD as RESTS_AHEAD
from paperaudit.wording.topics.stories.rests import rests_story
from paperaudit.wording.topics.stories.shapes import AHEAD as SHAPES_AHEAD
from paperaudit.wording.topics.stories.shapes import shapes_story
from paperaudit.wording.topics.stories.shares import AHEAD as SHARES_AHEAD
from paperaudit.wording.topics.stories.shares import shares_story
from paperaudit.wording.topics.stories.streams import AHEAD as STREAMS_AHEAD
from paperaudit.wording.topics.stories.streams import streams_story
from paperaudit.wording.topics.stories.tariffs import AHEAD as TARIFFS_AHEAD
from paperaudit.wording.topics.stories.tariffs import tariffs_story
from paperaudit.wording.topics.stories.towns import AHEAD as TOWNS_AHEAD
from paperaudit.wording.topics.stories.towns import towns_story
from paperaudit.wording.topics.stories.trips import AHEAD as TRIPS_AHEAD
from paperaudit.wording.topics.stories.trips import trips_story
from paperaudit.wording.topics.stories.two_kinds import AHEAD as TWO_KINDS_AHEAD
from paperaudit.wording.topics.stories.two_kinds import two_kinds_story
from paperaudit.wording.topics.stories.work import AHEAD as WORK_AHEAD
from paperaudit.wording.topics.stories.work import work_story
from paperaudit.wording.topics.topic import Readers, Told

LONGEST_STORY = 1_500
MOST_RELATIONS = 15
"""In one sentence; a story of school has five at most."""
_RELATIONS = re.compile(r"\b(?:twice|times|square|sum|product|difference|more|less|of)\b")
_Reader = Callable[[Sequence[Plain]], StoryTask | None]
_NUMBERS = re.compile(r"(?:\d+ \d+/\d+|\d+/\d+|\d+\.\d+|\d+)%?")
_COUNTED = (
    "numbers|integers|pieces|parts|lengths|sides|angles|legs|friends|sisters|brothers|boys|girls|of (?:them|these)|"
    "digits?|figures|items|people|cars|boats|pipes|trains|buses|cyclists|walkers|runners|planes|lorries|trucks|yachts|ferries|"
    "ships|riders|taxis|motorists|hikers|joggers|dinghies|tugs|machines|workers|painters|learners|children|equations|"
    "shares|kinds|types|taps|pumps|stages|sizes|towns|cities|harbours|ports|villages|stations|places|points"
)
_COUNTS = re.compile(
    rf"\b[23](?= (?:(?:different|positive|whole|natural|equal|unequal|other) )*(?:{_COUNTED})\b)|(?<=other )[23]\b"
)
_SCALES = (
    Fraction(1),
    Fraction(1, 100),
    Fraction(100),
    Fraction(1, 1000),
    Fraction(1000),
    Fraction(1, 60),
    Fraction(60),
    Fraction(-1),
)
KINDS_OF_STORY: tuple[tuple[re.Pattern[str], _Reader], ...] = (
    (NUMBERS_AHEAD, numbers_story),
    (PERCENTS_AHEAD, percents_story),
    (MIXTURES_AHEAD, mixtures_story),
    (TRIPS_AHEAD, trips_story),
    (STREAMS_AHEAD, streams_story),
    (MEETINGS_AHEAD, meetings_story),
    (WORK_AHEAD, work_story),
    (FIGURES_AHEAD, figures_story),
    (SHAPES_AHEAD, shapes_story),
    (AGES_AHEAD, ages_story),
    (SHARES_AHEAD, shares_story),
    (PRICES_AHEAD, prices_story),
    (BASKETS_AHEAD, baskets_story),
    (TARIFFS_AHEAD, tariffs_story),
    (TWO_KINDS_AHEAD, two_kinds_story),
    (BORDERS_AHEAD, borders_story),
    (MULTIPLES_AHEAD, multiples_story),
    (PRICE_MIXTURES_AHEAD, price_mixtures_story),
    (RESTS_AHEAD, rests_story),
    (TOWNS_AHEAD, towns_story),
    (QUICKER_AHEAD, quicker_story),
)
_ASKS = re.compile(
    r"\?\s*$|\b(?:find|calculate|determine|work out|what|how (?:many|much|long|old|far|fast)|show|write down|which|"
    r"solve|"
    r"express|hence|set up|form|let)\b",
    re.IGNORECASE,
)
_ONLY_ASIDE = re.compile(r"[\s.,;:!()]*")
_HOW_TO = re.compile(
    r"(?:by )?(?:(?:form(?:ing)?|set(?:ting)? up|writ(?:e|ing)(?: down)?|us(?:e|ing)) (?:and solv(?:e|ing) )?"
    r"(?:an?|the|suitable|two|2|simultaneous|a pair of|algebraic|linear|quadratic|\s)*(?:equations?|algebra)"
    r"(?: (?:and|to) solve it| in [a-z](?: and [a-z])?)?,?(?: and)?(?: hence| then| use it)?(?: to)?|hence,?) ?",
)


def story(question: Question, part: Part, scene: Scene) -> Told | None:
    """What a whole part amounts to as a word problem, or None where some sentence is not wholly understood."""
    lines = [line for line in (question.text, *question.given, *part.given, part.text) if line is not None]
    if question.figure or part.figure or question.table:
        return None
    try:
        told, accuracy, unit, reasons = _sentences(lines, part.ask, scene)
    except ExpressionNotRead:
        return None
    tasks = [task for task in _tasks(told) if _settled(task) and _uses_all(task, told)]
    if not tasks or any(task != tasks[0] for task in tasks[1:]):
        return None
    task = tasks[0]
    place = (part.ask or part.text or question.text or Line("", part.place)).place
    asked = [sentence.said for sentence in told if sentence.question]
    ask = Ask(
        task,
        asked[-1] if asked else task.in_words(),
        accuracy,
        unit,
        bool(part.reasons or reasons),
        read_as(task),
        place,
    )
    return Told(ask, tuple(_givens(task, place)))


def _sentences(
    lines: Sequence[Line], asked: Line | None, scene: Scene
) -> tuple[list[Plain], Accuracy | None, str, bool]:
    """The sentences in plain spelling, and what they say along the way of accuracy, unit and reasons."""
    accuracy: Accuracy | None = None
    unit, reasons = "", False
    told: list[Plain] = []
    texts = [(line.text, False) for line in lines] + ([(asked.text, True)] if asked is not None else [])
    if sum(len(text) for text, _ in texts) > LONGEST_STORY:
        raise ExpressionNotRead("a longer story than is read")
    for text, is_ask in texts:
        for sentence in sentences(text):
            check_limits(sentence.text)
            asides = asides_of(scene.notation(sentence.text, units=False))
            accuracy, unit = asides.accuracy or accuracy, asides.unit or unit
            reasons = reasons or bool(asides.reasons)
            if _ONLY_ASIDE.fullmatch(asides.rest.text):
                continue
            words = _HOW_TO.sub("", plain(asides.rest.text)).strip()
            if len(_RELATIONS.findall(words)) > MOST_RELATIONS:
                raise ExpressionNotRead("a sentence with dozens of relations")
            if words:
                told.append(Plain(words, sentence.text.strip(" ."), is_ask or bool(_ASKS.search(sentence.text))))
    if asked is not None:
        told = [one for one in told if not one.question or one.said == asked.text.strip(" .") or "if" in one.text]
    return told, accuracy, unit, reasons


def _tasks(told: Sequence[Plain]) -> Iterator[StoryTask]:
    """What each reader makes of the story, of those that understand all of it."""
    words = " ".join(sentence.text for sentence in told)
    for ahead, reader in KINDS_OF_STORY:
        if not ahead.search(words):
            continue
        try:
            task = reader(told)
        except (ExpressionNotRead, NotUnderstood, LookupError, ValueError, ArithmeticError, RuntimeError):
            # A tree that the reader did not foresee is one that it does not understand.
            continue
        if task is not None:
            yield task


def _uses_all(task: StoryTask, told: Sequence[Plain]) -> bool:
    """Whether every number of the story stands in a claim or in what is asked; "2 numbers" only counts them."""
    used = set(numbers_of(task))
    words = " ".join(sentence.text for sentence in told)
    if "consecutive" in words:
        words = re.sub(r"\b[2-5](?= (?:[a-z]+ )*?consecutive\b)", "", words)
    words = _COUNTS.sub("", words)
    found = [number_in(text).value for text in _NUMBERS.findall(words)]
    return all(any(number * scale in used for scale in _SCALES) for number in found)


def _settled(task: StoryTask) -> bool:
    """Whether the story's equations can be written down at all."""
    try:
        read_as(task)
    except (PaperauditError, KeyError):
        return False
    return True


def _givens(task: StoryTask, place: Place) -> Iterator[Given]:
    """A given for each sentence that claims something, so that clashes can name it."""
    for text in dict.fromkeys(said.text for said in task.said):
        yield Given(text, (), Origin.TEXT, place)


READERS = Readers(story=story)
