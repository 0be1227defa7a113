"""Stories of two, each of which leaves a town of its own, and which travel towards each other."""

import re
from collections.abc import Sequence

from paperaudit.model.story import NOTHING, Gap, Mover, Multiplied, Named, Said, Same, Sought, StoryTask, Wanted
from paperaudit.wording.scene import NotUnderstood
from paperaudit.wording.topics.stories.meetings import ONE, OTHER, TIME
from paperaudit.wording.topics.stories.plain import Plain
from paperaudit.wording.topics.stories.sentence_forms import FIND, NUMBER, Form, forms_of, only, some

AHEAD = re.compile(r"\b(?:towns|cities|harbours|ports|villages|stations)\b")
_PLACES = r"(?:towns|cities|harbours|ports|villages|stations|places|points)"
_PLACE = r"(?:town|city|harbour|port|village|station|place|point)"
_THING = r"(?:car|train|bus|truck|lorry|van|cyclist|motorist|boat|ship|ferry|yacht|motorcyclist|taxi|driver)"
_KM, _SPEED = rf"(?P<far>{NUMBER}) ?(?:km|kilometres)", r"(?:km/h|km per hour|kilometres per hour)"
_AT = (
    r"(?:,? (?:and )?(?:travels|travelling|drives|driving|sailing|cycling))?(?: at)?(?: an?)?(?: (?:average"
    r"|constant|steady))?(?: speed of)? "
)
_TOWARDS = (
    r"(?:,? (?:and )?(?:they )?(?:both )?(?:travel|travelling|drive|driving|sail|sailing|heading|moving"
    r"|cycle|cycling)?,? ?towards each other)"
)
_SAME_TIME = r"(?:,? at the same time)"
_FORMS = {
    "apart": (
        re.compile(rf"(?:the )?(?:2 )?{_PLACES}(?:,? [a-z] and [a-z],?)? are {_KM} apart"),
        re.compile(rf"the distance between (?:the )?(?:2 )?{_PLACES}(?: [a-z] and [a-z])? is {_KM}"),
    ),
    "leave": (
        re.compile(
            rf"(?:at the same time,? )?an? {_THING} leaves (?:1 {_PLACE}|one {_PLACE}|the first {_PLACE}"
            rf"|(?:{_PLACE} )?a)"
            rf"(?: for (?:the other|(?:{_PLACE} )?b))?{_SAME_TIME}?{_AT}(?P<one>{NUMBER}) ?{_SPEED},? (?:and|while) "
            rf"(?:an?|another)(?: {_THING})? leaves (?:the other(?: {_PLACE})?|the second {_PLACE}|(?:{_PLACE} )?b)"
            rf"(?: for (?:the first|(?:{_PLACE} )?a))?{_SAME_TIME}?{_AT}(?P<other>{NUMBER}) ?{_SPEED}{_SAME_TIME}?"
            rf"(?P<towards>{_TOWARDS})?{_SAME_TIME}?"
        ),
    ),
    "towards": (
        re.compile(rf"they (?:start|leave|set out|travel|drive){_SAME_TIME}?(?P<towards>{_TOWARDS})?{_SAME_TIME}?"),
    ),
    "when": (
        re.compile(r"(?:after how (?:long|many hours)|in how many hours|how long after (?:starting|they start"
                   r"|leaving)|when"
                   r"|after what time) (?:do|will|would) (?:they|the 2 [a-z]+) (?:meet|pass each other)"),
        re.compile(r"how (?:long|many hours) (?:will it (?:take|be)|does it take)(?: them)?(?: for them)? "
                   r"(?:to meet|until they meet"
                   r"|before they meet)"),
    ),
    "where": (
        re.compile(rf"{FIND}?how far from (?:{_PLACE} )?a (?:do|will|would|they)? ?(?:they )?meet"),
        re.compile(rf"how far (?:from (?:{_PLACE} )?a )(?:are they|is it) when they meet"),
    ),
}  # fmt: skip


def towns_story(sentences: Sequence[Plain]) -> StoryTask | None:
    """The story of a part as one of two towns; raises NotUnderstood where it is none."""
    forms = forms_of(sentences, _FORMS)
    asks = some(forms, "when", "where")
    far, speeds = only(forms, "apart"), only(forms, "leave")
    if not any(form.pieces.get("towards") for form in forms) or len(asks) != 1:
        raise NotUnderstood("two that travel towards each other", 0)
    return StoryTask(_sought(), tuple(_claims(far, speeds)), (_wanted(asks[0]),))


def _sought() -> tuple[Sought, ...]:
    return (Sought(ONE, "the speed of the first", "km/h", "positive", False, "a speed"),
            Sought(OTHER, "the speed of the second", "km/h", "positive", False, "a speed"),
            Sought(TIME, "the time", "hour", "positive", False, "a time"))  # fmt: skip


def _claims(far: Form, speeds: Form) -> list[Said]:
    distance = far.number("far", "km")
    gap = Gap(Mover(NOTHING, 1, Named(ONE), NOTHING), Mover(distance, -1, Named(OTHER), NOTHING), Named(TIME), NOTHING)
    return [Said(speeds.said, Same(Named(ONE), speeds.number("one", "km/h"))),
            Said(speeds.said, Same(Named(OTHER), speeds.number("other", "km/h"))), Said(far.said, gap)]  # fmt: skip


def _wanted(ask: Form) -> Wanted:
    if ask.name == "where":
        return Wanted(Multiplied(Named(ONE), Named(TIME)), "the distance", "km")
    return Wanted(Named(TIME), "the time", "hour")
