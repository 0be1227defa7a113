"""Angles between the hands of a clock, and those that a hand turns through."""

import re
from fractions import Fraction

from paperaudit.wording.topics.calculations.form import FIND, NUMBER, Form, Pieces, form, value

AHEAD = re.compile(r"\bhands?\b")
_HALF_DAY = 12 * 60
_TIME = (
    r"(?:\d{1,2} o'clock|\d{1,2}[:.]\d\d(?: ?[ap]\.?m\b\.?)?|\d{1,2} ?[ap]\.?m\b\.?|half past \d{1,2}"
    r"|(?:a )?quarter (?:past|to) \d{1,2}|\d{1,2} (?:minutes )?(?:past|to) \d{1,2}|noon|midday|midnight)"
)
_CLOCK = r"(?:(?:of|on) (?:an?|the) (?:(?:analogue|12 hour|wall|round|large) )?(?:clock|watch)(?: face)?)"
_HANDS = (
    r"(?:the (?:two |2 )?hands|the hour hand and (?:the )?minute hand|the minute hand and (?:the )?hour hand"
    r"|the hour and (?:the )?minute hands?|the minute and (?:the )?hour hands?|its (?:two |2 )?hands)"
)
_ANGLE_BETWEEN = (
    r"(?:the )?(?:size of the )?(?P<which>smaller |acute |obtuse |reflex |larger )?angle"
    rf"(?: that is)? (?:between|made by|formed by|formed between) {_HANDS}(?: {_CLOCK})?"
)
_SPAN = (
    rf"(?:(?:in|during|over) (?P<span>{NUMBER} (?:of an )?(?:hours?|minutes?|seconds?)(?: and)?"
    rf"(?: {NUMBER} minutes?)?|an? (?:quarter of an )?hour|an? minute)"
    rf"|(?:between|from) (?P<start>{_TIME}|\d{{1,2}}) (?:and|to|until) (?P<end>{_TIME}|\d{{1,2}}))"
)
_HAND = rf"the (?P<hand>minute|hour|second) hand(?: {_CLOCK})?"
_TURNED = r"(?:turned?|moved?|rotated?)"
_DEGREES = rf"(?:turn|rotate|move)(?: through)? (?P<degrees>{NUMBER}) ?°"
_TURNS = r"(?:turns?|rotates?|moves?|sweeps?|travels?)(?: clockwise)?(?: through)?"


def _minutes(time: str) -> tuple[int, bool]:
    """The minutes of a time since midnight, and whether the half of the day is told.

    >>> _minutes("quarter to 5"), _minutes("6:30 pm")
    ((285, False), (1110, True))
    """
    if time in ("noon", "midday", "midnight"):
        return (0 if time == "midnight" else _HALF_DAY), True
    numbers = [int(one) for one in re.findall(r"\d+", time)]
    if re.search(r"past|to ", time):
        past = 30 if "half" in time else 15 if "quarter" in time else numbers[0]
        hour, minute = numbers[-1], past if "past" in time else -past
    else:
        hour, minute = numbers[0], numbers[1] if len(numbers) > 1 else 0
    afternoon = re.search(r"([ap])\.?m", time)
    if hour > 24 or minute > 59 or (hour > 12 and (afternoon or not re.search(r"[:.]", time))):
        raise ValueError(time)
    if afternoon:
        hour = hour % 12 + (12 if afternoon[1] == "p" else 0)
    return hour * 60 + minute, afternoon is not None or hour > 12


def _between(pieces: Pieces) -> str:
    """The angle between the hands at a time, the smaller one where no other is asked for."""
    at = _minutes(pieces["time"])[0] % _HALF_DAY
    hour, minute = divmod(at, 60)
    hours, turned = Fraction(at, 2), minute * 6
    apart = abs(hours - turned)
    smaller, which = min(apart, 360 - apart), pieces["which"].strip()
    fits = {"acute": 0 < smaller < 90, "obtuse": 90 < smaller < 180, "": smaller > 0}
    if not fits.get(which, 0 < smaller < 180):
        return ""
    reflex = which in ("reflex", "larger")
    if not minute:
        return f"{hour if (hour < 6) != reflex or hour == 6 else 12 - hour} × 30°"
    hand = f"{hour} × 30° + {minute} × 0.5°" if hour else f"{minute} × 0.5°"
    if hours > turned:
        said = f"{hand} − {minute} × 6°"
    else:
        said = f"{minute} × 6° − ({hand})" if hour else f"{minute} × 6° − {hand}"
    return said if (apart > 180) == reflex else f"360° − ({said})"


def _turned(pieces: Pieces) -> str:
    """What a hand turns through in a span of time, between two times or between two figures of the face."""
    hand = pieces["hand"]
    if pieces["start"].isdigit() and pieces["end"].isdigit():
        steps = (int(pieces["end"]) - int(pieces["start"])) % 12
        on_face = all(1 <= int(one) <= 12 for one in (pieces["start"], pieces["end"]))
        return f"{steps} × 30°" if steps and on_face and hand != "second" else ""
    span = _from_to(pieces) if pieces["start"] else _span(pieces["span"])
    if hand == "second":
        return f"{span * 60} × 6°" if (span * 60).denominator == 1 and pieces["span"] else ""
    hours = span / 60
    if hand == "hour":
        told = _decimal(hours)
        return f"{told} × 30°" if told else f"{_decimal(span)} × 0.5°" if _decimal(span) else ""
    return f"{_decimal(span)} × 6°" if _decimal(span) else ""


def _from_to(pieces: Pieces) -> Fraction:
    (start, told), (end, told_too) = _minutes(pieces["start"]), _minutes(pieces["end"])
    if told != told_too:
        raise ValueError("one half of the day is told and the other is not")
    span = (end - start) % (24 * 60 if told else _HALF_DAY)
    if not span or (told and end < start):
        raise ValueError("no time passes, or a night")
    return Fraction(span)


def _span(text: str) -> Fraction:
    """A span of time in minutes: 3/4 of an hour, 1 hour 20 minutes."""
    text = re.sub(r"\ba quarter of an hour\b", "15 minutes", text)
    text = re.sub(r"\ban? (?=hour|minute)", "1 ", text.replace("of an ", ""))
    units = {"hour": Fraction(60), "minute": Fraction(1), "second": Fraction(1, 60)}
    found = re.findall(rf"({NUMBER}) (hour|minute|second)", text)
    return sum((value(number) * units[unit] for number, unit in found), Fraction(0))


def _decimal(amount: Fraction) -> str:
    """A number of at most two decimals in figures, "" for any other."""
    if (amount * 100).denominator != 1:
        return ""
    return str(amount.numerator) if amount.denominator == 1 else f"{float(amount):.2f}".rstrip("0")


def _how_long(pieces: Pieces) -> str:
    rates = {"minute": ("6°", "1 minute"), "hour": ("30°", "1 hour"), "second": ("6°", "1 second")}
    rate, unit = rates[pieces["hand"]]
    return f"{pieces['degrees']}° ÷ {rate} × {unit}"


FORMS: tuple[Form, ...] = (
    form(
        rf"{FIND}{_ANGLE_BETWEEN}(?:,? (?:when|if))?(?: the clock (?:shows|reads))?(?: (?:the time|it) is)?(?: at)?"
        rf"(?: exactly)? (?P<time>{_TIME})",
        _between,
    ),
    form(
        rf"(?:a|the) clock (?:shows|reads)(?: the time)?(?: exactly)? (?P<time>{_TIME})\. {FIND}{_ANGLE_BETWEEN}"
        r"(?: at this time)?",
        _between,
    ),
    form(rf"(?:the time is|it is)(?: exactly)? (?P<time>{_TIME})\. {FIND}{_ANGLE_BETWEEN}(?: at this time)?", _between),
    form(
        rf"(?:(?:through |by )?(?:what angle|how many degrees)|what angle) does {_HAND} {_TURNS} {_SPAN}",
        _turned,
    ),
    form(rf"{FIND}the (?:size of the )?angle (?:through which|that) {_HAND} {_TURNS} {_SPAN}", _turned),
    form(
        rf"{FIND}the (?:size of the )?angle (?:turned(?: through)?|swept(?: out)?|moved through) by {_HAND} {_SPAN}",
        _turned,
    ),
    form(
        rf"{_HAND} {_TURNS} {_SPAN}\. (?:(?:through |by )?(?:what angle|how many degrees) does it {_TURNS}"
        rf"|{FIND}the angle (?:through which it {_TURNS}|(?:it has )?turned(?: through)?))",
        _turned,
    ),
    form(
        rf"{_HAND} is at (?P<start>\d{{1,2}})(?: and|\. it)(?: then)? (?:moves|turns)(?: clockwise)? to"
        rf" (?P<end>\d{{1,2}})"
        rf"\. through (?:what angle|how many degrees) (?:has|does|did) it {_TURNED}",
        _turned,
    ),
    form(rf"how (?:long|many (?:minutes|hours|seconds)) does it take (?:for )?{_HAND}(?: to)? {_DEGREES}", _how_long),
    form(rf"how (?:long|many (?:minutes|hours|seconds)) does {_HAND} take to {_DEGREES}", _how_long),
)
