"""How often something is to be expected: one probability in words, how often it is tried, and the ask."""

import re
from collections.abc import Iterator
from dataclasses import dataclass, field
from fractions import Fraction

from paperaudit.maths.number_words import BELOW_TWENTY
from paperaudit.model.chance_task import FromTable
from paperaudit.model.paper import Part, Question
from paperaudit.model.statistics_task import Told as Noted
from paperaudit.wording.scene import NotUnderstood, Scene
from paperaudit.wording.topics.heard import Heard, Sentence, givens_of, heard
from paperaudit.wording.topics.joined_events import amount_in
from paperaudit.wording.topics.named_events import denied, stem
from paperaudit.wording.topics.topic import Readers, Told

_AMOUNT = r"(?P<amount>\d+ ?/ ?\d+|\d+(?:[.,]\d+)?(?: ?%)?|0?\.\d+)"
_CHANCES = (
    re.compile(rf"(?:the )?(?:probability|chance) (?:that|of|for) (?P<event>[a-z′ -]+?) (?:is|was) {_AMOUNT}"),
    re.compile(rf"there is an? {_AMOUNT} (?:chance|probability) (?:that|of) (?P<event>[a-z′ -]+)"),
    re.compile(rf"(?P<thing>an? [a-z ]+?) has an? (?:probability|chance) of {_AMOUNT} of (?P<event>[a-z′ -]+)"),
    re.compile(rf"(?P<thing>an? [a-z ]+?) has an? {_AMOUNT} (?:chance|probability) of (?P<event>[a-z′ -]+)"),
    re.compile(
        rf"(?:the )?(?:probability|chance) of (?P<thing>an? [a-z ]+?) (?P<event>[a-z]+ing [a-z′ -]+?) is {_AMOUNT}"
    ),
)
_WORD_NUMBERS = BELOW_TWENTY[2:11]
_COUNT = r"(?P<count>\d{1,3}(?: \d{3})+|\d{1,6})"
_TIMES = re.compile(
    rf"(?:(?:it|she|he|they|this|the [a-z]+|[a-z]+) (?:is|are|was|were|will be) "
    rf"(?:spun|rolled|thrown|tossed|dropped|played|repeated|done|flipped|fired|used) {_COUNT} times"
    rf"|(?:she|he|they|[a-z]+|the [a-z]+) (?:spins|rolls|throws|tosses|plays|repeats|does|takes|fires|kicks)"
    rf"(?: (?:it|this|the [a-z]+))? {_COUNT.replace('count', 'count2')} times"
    rf"|(?:an?|the|one|this) (?:box|batch|bag|sample|field|group|crate|packet|school|town|factory) (?:contains"
    rf"|holds|has|of|makes|produces) {_COUNT.replace('count', 'count3')} (?P<thing3>[a-z]+)"
    rf"|(?:she|he|they|[a-z]+|a [a-z]+|the [a-z]+) (?:plants|tests|sows|buys|checks|examines|makes|produces|takes|plays"
    rf"|shoots|fires) {_COUNT.replace('count', 'count4')} (?P<thing4>[a-z]+)"
    rf"|if {_COUNT.replace('count', 'count6')} (?P<thing6>[a-z]+) (?:play|try|take part|are tested"
    rf"|are planted)(?: the game)?"
    rf"|{_COUNT.replace('count', 'count5')} (?P<thing5>[a-z]+) are (?:planted|tested|sown|bought|checked|examined|made"
    rf"|chosen|selected|picked|taken|produced|inspected)(?: at random)?)"
)
_MONTHS = {"january": 31, "march": 31, "april": 30, "may": 31, "june": 30, "july": 31, "august": 31, "september": 30,
           "october": 31, "november": 30, "december": 31}  # fmt: skip
_THERE = re.compile(
    r"(?:find |calculate |work out )?how many (?P<things>[a-z]+ [a-z]+) (?:are there|are)(?: in (?:the|this) [a-z]+)?"
)
_PICKED = re.compile(r"(?:picking|taking|drawing|choosing|selecting|getting) (?:an? )?(?P<thing>[a-z]+ [a-z]+)")
_ASKS = re.compile(
    r"(?:about |approximately )?(?:on )?how (?:many|often)\b.*\b(?:expect|expected|likely)\b.*"
    r"|(?:calculate|find|estimate|work out|determine|what is|write down|give)\b.*\bexpected (?:number|frequency)\b.*"
    r"|estimate (?:the number of|how many|how often)\b.*"
    r"|(?:calculate|find|work out) an estimate (?:for|of) the number of\b.*"
)
_FILLER = frozenset(
    re.findall(
        r"[a-z]+",
        "a about an and approximately are at be by calculate can determine did do does down each "
        "estimate expect expected find for frequency from get give given going have he her him his how i "
        "if in is it land likely many number of often on one or out random she should that the them "
        "there these they this those time to us was we were what when which will with work would write "
        "you",
    )
)
_PLAIN_THINGS = frozenset(map(stem, ("times", "trials", "spins", "throws", "rolls", "games", "attempts")))
_PEOPLE = frozenset(map(stem, ("people", "learners", "players", "students")))
_CONDITION = re.compile(r"\b(?:if|given|when|unless|or|and|both|neither|either|first|second|twice|then|after|before)\b")


@dataclass(frozen=True, slots=True)
class _Trials:
    """How often it is tried, and what is counted: "60 days"."""

    count: int
    thing: str = ""


@dataclass(slots=True)
class _Story:
    """What the sentences say: the event with its subject and its probability, the trials, the ask."""

    event: str = ""
    subject: str = ""
    value: Fraction = Fraction(0)
    trials: list[_Trials] = field(default_factory=list)
    asked: tuple[Sentence, str] | None = None
    sources: list[Sentence] = field(default_factory=list)


def _story(question: Question, part: Part, scene: Scene) -> Told | None:
    told = heard(question, part, scene)
    if told.too_long or question.table:
        return None
    try:
        return _expected(told)
    except NotUnderstood:
        return None


def _expected(told: Heard) -> Told | None:
    story = _heard(told)
    if story is None or story.asked is None or not 0 <= story.value <= 1 or not story.event:
        return None
    sentence, ask = story.asked
    about = f"{story.event} {story.subject}"
    known = _stems(about)
    there = _THERE.fullmatch(ask)
    if there is not None:
        tried, words = None, sorted(known)
        if not _all_are_there(there["things"], story):
            return None
    else:
        tried, words = _asked(ask, known)
    trials = [*story.trials, *((tried,) if tried is not None else ())]
    if len(trials) != 1 or trials[0].count < 2 or not _is_told(words, known, trials[0], about):
        return None
    turned = denied(story.event) != denied(" ".join(words))
    name = " ".join(word for word in story.event.split() if word not in ("a", "an", "the"))
    chances = (1 - story.value, story.value) if turned else (story.value, 1 - story.value)
    names = (f"not {name}", name) if turned else (name, f"not {name}")
    task = FromTable(names, chances, "expected", (0,), trials[0].count)
    read_as = f"P({names[0]}) = {chances[0]}, {trials[0].count} times: the expected number"
    return Told(told.ask(task, sentence.source, read_as, sentence.place), givens_of(story.sources, Noted))


def _heard(told: Heard) -> _Story | None:
    """The one chance, the trials and the ask of the sentences; None where one of them says something else."""
    story = _Story()
    for sentence, text in _pieces(told):
        found = next((read for pattern in _CHANCES if (read := pattern.fullmatch(text))), None)
        if found is not None:
            if story.event or _CONDITION.search(found["event"]):
                return None
            story.event, story.subject = found["event"], found.groupdict().get("thing") or ""
            story.value = amount_in(found["amount"])
            story.sources.append(sentence)
        elif _ASKS.fullmatch(text) or _THERE.fullmatch(text):
            if story.asked is not None:
                return None
            story.asked = (sentence, text)
        elif (times := _TIMES.fullmatch(text)) is not None:
            count = next(size for name, size in times.groupdict().items() if name.startswith("count") and size)
            thing = next((name for key, name in times.groupdict().items() if key.startswith("thing") and name), "")
            story.trials.append(_Trials(int(count.replace(" ", "")), thing))
            story.sources.append(sentence)
        elif re.search(r"\d|\b(?:two|three|four|five|six|twice|each|every|probab\w*|chance|not|never)\b", text):
            return None
    return story


def _all_are_there(things: str, story: _Story) -> bool:
    """Whether one of all that there are is picked, so that the chance times all of them is how many there are."""
    picked = _PICKED.match(story.event)
    if picked is None or _stems(picked["thing"]) != _stems(things) or len(story.trials) != 1:
        return False
    return bool(story.trials[0].thing) and (story.value * story.trials[0].count).denominator == 1


def _pieces(told: Heard) -> Iterator[tuple[Sentence, str]]:
    """Every sentence in small letters, an ask behind a condition apart from it."""
    for sentence in told.sentences:
        for piece in re.split(r", (?=how (?:many|often) |find |calculate |estimate )", sentence.text.lower()):
            yield sentence, re.sub(r"(\d+)-([a-z]+) (?:period|stretch)", r"\1 \2s", piece.strip(" .?!"))


def _stems(text: str) -> frozenset[str]:
    words = re.findall(r"[a-z]+", text.replace("′s", ""))
    return frozenset(_stem(word) for word in words if word not in _FILLER and word not in ("not", "no"))


def _stem(word: str) -> str:
    return stem(re.sub(r"ies$", "y", word))


def _asked(text: str, known: frozenset[str]) -> tuple[_Trials | None, list[str]]:
    """The number of trials that an ask names, and its other words that carry meaning."""
    numbers = list(re.finditer(rf"{_COUNT}(?: (?P<thing>[a-z]+))?", text))
    month = re.search(rf"\bin ({'|'.join(_MONTHS)})\b", text)
    if len(numbers) > 1 or (numbers and month) or any(word in text.split() for word in _WORD_NUMBERS):
        raise NotUnderstood("one number of trials", 0)
    if month is not None:
        # "On any day" makes the days of the month the trials.
        if stem("day") not in known:
            raise NotUnderstood("what is counted in a month", 0)
        return _Trials(_MONTHS[month[1]], "days"), _words(text[: month.start()] + text[month.end() :])
    if not numbers:
        return None, _words(text)
    (found,) = numbers
    thing = found["thing"] or ""
    trials = _Trials(int(found["count"].replace(" ", "")), "" if thing in _FILLER else thing)
    rest = text[: found.start()] + " " + (thing if thing in _FILLER else "") + text[found.end() :]
    rest = re.sub(r"\b(?:batch|box|sample|group|crate|bag|packet|field|total) of\b", " ", rest)
    return trials, _words(rest)


def _words(text: str) -> list[str]:
    return [
        word for word in re.findall(r"[a-z]+", text.replace("n′t", " not").replace("′s", "")) if word not in _FILLER
    ]


def _is_told(words: list[str], known: frozenset[str], trials: _Trials, event: str) -> bool:
    """Whether the ask's words are those of the event, and what is counted is what the chance is told of."""
    counted = _stem(trials.thing) if trials.thing else ""
    plain = [_stem(word) for word in words if word not in ("not", "no")]
    own = [word for word in plain if word != counted and word not in _PLAIN_THINGS]
    doing = counted in _PEOPLE and re.match(r"[a-z]+ing\b", event) is not None
    if counted and counted not in _PLAIN_THINGS and counted not in known and not doing:
        return False
    rest = set(own) - known
    told_of = {_stem(word) for word in re.findall(r"[a-z]+", event)}
    return bool(set(own) & known) and not rest and (not counted or doing or counted in told_of | _PLAIN_THINGS)


READERS = Readers(story=_story)
