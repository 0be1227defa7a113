"""Stories of workers, what they make and how long it takes, where two of the three change."""

import re
from fractions import Fraction

from paperaudit.maths.units import unit_named
from paperaudit.model.ask import Ask
from paperaudit.model.expression import Expression, Measured
from paperaudit.model.paper import Part, Question
from paperaudit.model.reckoning import Amount, Reckoning
from paperaudit.wording.scene import NotUnderstood, Scene
from paperaudit.wording.topics.named_events import stem
from paperaudit.wording.topics.stories.amounts import number_in
from paperaudit.wording.topics.stories.plain import plain
from paperaudit.wording.topics.topic import Readers, Told
from paperaudit.wording.topics.whole_text import read_as, whole_of

_N = r"\d+(?:\.\d+)?(?: \d+/\d+)?"
_VERB = (
    r"(?:build|paint|dig|make|produce|eat|consume|plough|harvest|lay|clean|print|sew|pack|pick|type|assemble|complete"
    r"|finish|mow|plant|repair|weave|knit|use|drink|wash|load|unload|process|plaster|tile|pump)s?"
)
_WORKER = (
    r"(?:identical |similar )?(?:workers?|men|man|women|woman|people|painters?|builders?|pumps?|machines?|sailors?"
    r"|learners?|printers?|cleaners?|tractors?|boys?|girls?|students?|bricklayers?|gardeners?|labourers?|horses?|cows?"
    r"|goats?|sheep|robots?|tailors?|volunteers?|diggers?|typists?)"
)
_TIME = r"(?:seconds?|minutes?|hours?|days?|weeks?|months?)"
_Q = r"[a-z²³]+(?: of (?:the |a )?[a-z]+| (?!in\b|per\b|each\b|to\b|do\b|can\b|will\b)[a-z]+)?"
_SAME = r"(?:,? (?:if they )?(?:all )?(?:work(?:ing)?|at) (?:all )?(?:at )?(?:the )?same (?:rate|speed|pace))?"
_TOLD = (
    re.compile(
        rf"(?:if )?(?P<w>{_N}) (?P<wn>{_WORKER}) (?:(?:can|could|will|together|working together) )*(?P<v>{_VERB}) "
        rf"(?P<q>{_N}) (?P<qn>{_Q}) in (?P<t>{_N}) (?P<tn>{_TIME}){_SAME}"
    ),
    re.compile(
        rf"(?:if )?(?:it takes )?(?P<w>{_N}) (?P<wn>{_WORKER}) (?:take |need |can take )?(?P<t>{_N}) "
        rf"(?P<tn>{_TIME}) to (?P<v>{_VERB}) (?P<q>{_N}) (?P<qn>{_Q}){_SAME}"
    ),
)
_ASKED = (
    re.compile(
        rf"how (?:long|many (?P<tn>{_TIME})) (?:will|would|do|does|should|did) (?:it take )?(?P<w>{_N}) "
        rf"(?P<wn>{_WORKER})(?: (?:take|need))? to (?P<v>{_VERB}) (?P<q>{_N}) (?P<qn>{_Q}){_SAME}"
    ),
    re.compile(
        rf"how (?:many|much) (?P<qn>{_Q}) (?:can|will|would|do|could) (?P<w>{_N}) (?P<wn>{_WORKER}) (?P<v>{_VERB}) in "
        rf"(?P<t>{_N}) (?P<tn>{_TIME}){_SAME}"
    ),
    re.compile(
        rf"how many (?P<wn>{_WORKER}) (?:(?:are|will be|would be) (?:needed|required) to|do you need to|can|could"
        rf"|will) (?P<v>{_VERB}) (?P<q>{_N}) (?P<qn>{_Q}) in (?P<t>{_N}) (?P<tn>{_TIME}){_SAME}"
    ),
)
_OF_WORK = frozenset(map(stem, ("day", "days", "week", "weeks", "month", "months")))
_SPLIT = re.compile(r"[.?;] ?|, (?=how )")


def _story(question: Question, part: Part, scene: Scene) -> Told | None:
    whole = whole_of(question, part, scene)
    if whole is None:
        return None
    pieces = [piece for text in map(plain, whole.pieces) for piece in _SPLIT.split(text) if piece]
    try:
        reckoning = _reckoning(pieces)
    except NotUnderstood:
        return None
    ask = Ask(reckoning, whole.said, whole.accuracy, whole.unit, read_as=read_as(reckoning), place=whole.place)
    return Told(ask, tuple(given for given in whole.givens if any(map(str.isdigit, given.text))))


def _reckoning(pieces: list[str]) -> Reckoning:
    if len(pieces) != 2:
        raise NotUnderstood("one thing that is told and one that is asked", 0)
    told = next((found for one in _TOLD if (found := one.fullmatch(pieces[0]))), None)
    asked = next((found for one in _ASKED if (found := one.fullmatch(pieces[1]))), None)
    if told is None or asked is None:
        raise NotUnderstood("workers, what they make and their time", 0)
    said = {"w": None, "q": None, "t": None} | asked.groupdict()
    if stem(told["wn"].split()[-1]) != stem((said["wn"] or "nobody").split()[-1]) or stem(told["v"]) != stem(
        said["v"] or ""
    ):
        raise NotUnderstood("the same workers at the same work", 0)
    own, other = told["qn"], said["qn"] or ""
    if not _same_thing(own, other):
        raise NotUnderstood("more or less of the same thing", 0)
    times = {stem(one) for one in (told["tn"], said["tn"]) if one}
    if len(times) > 1 and times & _OF_WORK:
        raise NotUnderstood("how many hours of work a day has", 0)
    amounts = [Amount("workers", number_in(told["w"])), Amount("work", _of(told["q"], own)),
               Amount("time", _of(told["t"], told["tn"]))]  # fmt: skip
    wanted = {"w": "workers", "q": "work", "t": "time"}[next(key for key in "wqt" if said[key] is None)]
    if said["w"] is not None:
        amounts.append(Amount("workers", number_in(said["w"])))
    if said["q"] is not None:
        amounts.append(Amount("work", _of(said["q"], other)))
    if said["t"] is not None:
        amounts.append(Amount("time", _of(said["t"], said["tn"] or "")))
    asked_in = unit_named(said["tn"]) if wanted == "time" and said["tn"] else None
    return Reckoning("two proportions", tuple(amounts), (wanted,), (f"in {asked_in.symbol}",) if asked_in else ())


def _same_thing(one: str, other: str) -> bool:
    """Whether two names of things are of one kind: "m of trench" and "m", "boats" and "boats"."""
    units = [unit_named(name.split()[0]) for name in (one, other) if name]
    if len(units) == 2 and units[0] is not None:
        stuff = [name.split(" of ")[1] for name in (one, other) if " of " in name]
        same = units[1] is not None and units[0].dimension == units[1].dimension
        return (same and len(set(stuff)) < 2) or (len(stuff) == 1 and stem(other) == stem(stuff[0].split()[-1]))
    return bool(other) and {stem(word) for word in one.split()} == {stem(word) for word in other.split()}


def _of(figure: str, name: str) -> Expression:
    unit = unit_named(name.split()[0]) if name else None
    value = number_in(figure)
    if value.value <= Fraction(0):
        raise NotUnderstood("an amount that is not positive", 0)
    return Measured(value, unit.symbol) if unit is not None else value


READERS = Readers(story=_story)
