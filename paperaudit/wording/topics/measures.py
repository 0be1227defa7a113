"""Asks about units and times of day: how many grams there are in 2.5 kg, what is 90 minutes after 10:45 AM."""

import re
from fractions import Fraction

from parsimonious.nodes import Node

from paperaudit.maths.number_forms import whole_or_fraction
from paperaudit.maths.number_words import BELOW_TWENTY, PARTS, TENS
from paperaudit.maths.parse import read_expression
from paperaudit.maths.tree import every, has, the
from paperaudit.maths.units import unit_named
from paperaudit.model.ask import Task, WriteAs
from paperaudit.model.expression import Expression, Measured, Number, Sum
from paperaudit.model.paper import Part, Question
from paperaudit.model.reckoning import Amount, Reckoning
from paperaudit.wording.asides import Asides
from paperaudit.wording.scene import NotUnderstood, Scene
from paperaudit.wording.topics.registry import topic_named
from paperaudit.wording.topics.topic import Readers, Told
from paperaudit.wording.topics.whole_text import story_of

_NAMED_PARTS = {**PARTS, "halve": 2}
_SHORT = {"um": "micrometre", "nm": "nanometre", "ug": "microgram", "ng": "nanogram", "us": "microsecond",
          "ns": "nanosecond", "ms": "millisecond"}  # fmt: skip
_CLOCK = re.compile(r"(\d{1,2})[:h.](\d\d) ?(a|p)?", re.IGNORECASE)
_DAY = 24 * 60


def _task(node: Node, asides: Asides) -> Task:
    if asides.terms:
        raise NotUnderstood("letters", 0)
    return _asked(node, asides.unit)


def _reckoning(node: Node) -> Reckoning:
    task = _asked(node, "")
    if not isinstance(task, Reckoning):
        raise NotUnderstood("a measure to write in another unit", 0)
    return task


def _asked(node: Node, wished: str) -> Task:
    chosen = node.children[0].children[0]
    match chosen.expr_name:
        case "conversion":
            return _conversion(chosen, wished)
        case "clock_after":
            span = _span(read_expression(the(chosen, "number").text), the(chosen, "clock_unit").text)
            if has(chosen, "next_day"):
                raise NotUnderstood("a day later", 0)
            return _shifted(the(chosen, "clock").text, span, " before " in chosen.text)
        case "lasting":
            spans = [
                _span(read_expression(number.text), unit.text)
                for number, unit in zip(
                    every(the(chosen, "clock_span"), "number"), every(the(chosen, "clock_span"), "clock_unit"),
                    strict=True,
                )
            ]  # fmt: skip
            if has(chosen, "next_day"):
                raise NotUnderstood("a day later", 0)
            return _shifted(the(chosen, "clock").text, spans[0] if len(spans) == 1 else Sum(tuple(spans)), False)
    start, end = (_minutes(piece.text) for piece in every(chosen, "clock"))
    unit = "hour" if "how many hours" in chosen.text else "minute" if "how many minutes" in chosen.text else ""
    amounts = (_clock("start", start), _clock("end", end))
    later = ("the next day",) if has(chosen, "next_day") else ()
    return Reckoning("time between", amounts, ("time",), (*((unit,) if unit else ()), *later))


def _span(number: Expression, unit: str) -> Expression:
    known = unit_named(unit)
    assert known is not None
    return Measured(number, known.symbol)


def _shifted(clock: str, span: Expression, back: bool) -> Reckoning:
    style = "12 hours" if re.search(r"[ap]", clock, re.IGNORECASE) else "24 hours"
    details = (style, "before") if back else (style,)
    return Reckoning("clock time", (_clock("start", _minutes(clock)), Amount("time", span)), ("end",), details)


def _clock(name: str, minutes: int) -> Amount:
    return Amount(name, Number(Fraction(minutes)))


def _minutes(text: str) -> int:
    """The minutes after midnight of 3:15 PM or 15:15."""
    found = _CLOCK.match(text)
    assert found is not None
    hour, minute, half = int(found[1]), int(found[2]), (found[3] or "").lower()
    if (half and not 1 <= hour <= 12) or hour > 23:
        raise NotUnderstood(text, 0, "a time of day")
    return (hour % 12 + (12 if half == "p" else 0) if half else hour) * 60 + minute


def _conversion(node: Node, wished: str) -> Task:
    """The unit is named in the sentence, or was cut out of its end as the unit of the answer."""
    chosen = the(node, "how_many", "in_unit", "into_unit", "in_unit_cut")
    value = _worded(the(chosen, "amount_worded").children[0])
    named = [one for one in every(chosen, "amount_worded", "unit_word_named") if one.expr_name == "unit_word_named"]
    if named:
        wished = _unit(named[0].text)
    if not wished:
        raise NotUnderstood("no unit to convert to", 0)
    told = chosen.expr_name in ("in_unit", "into_unit") and not chosen.text.startswith(("what", "how"))
    known = unit_named(wished)
    assert known is not None
    if told and isinstance(value, Measured) and known.dimension not in ("speed", "density"):
        return WriteAs(value, wished)
    return Reckoning("conversion", (Amount("measure", value),), (f"measure in {wished}",))


def _worded(node: Node) -> Expression:
    unit = _unit(the(node, "unit_word_named").text)
    match node.expr_name:
        case "share_worded":
            words = node.text.split(" of ", 1)[0]
            count, _, part = words.rpartition(" ")
            name = part if part in _NAMED_PARTS else part.removesuffix("s")
            return Measured(whole_or_fraction(Fraction(_counted(count), _NAMED_PARTS[name])), unit)
        case "share_figures":
            above, below = node.text.split(" ", 1)[0].split("/")
            if not int(below):
                raise NotUnderstood("a fraction over nought", 0)
            return Measured(whole_or_fraction(Fraction(int(above), int(below))), unit)
    return Measured(read_expression(the(node, "number").text), unit)


def _counted(words: str) -> int:
    """The number that words such as "forty-seven" name."""
    if words in ("a", "an"):
        return 1
    tens, _, ones = words.replace("fourty", "forty").partition("-")
    if tens in TENS and (not ones or ones in BELOW_TWENTY[1:10]):
        return TENS[tens] + (BELOW_TWENTY.index(ones) if ones else 0)
    if tens in BELOW_TWENTY and not ones:
        return BELOW_TWENTY.index(tens)
    raise NotUnderstood(words, 0, "a number in words")


def _unit(words: str) -> str:
    known = unit_named(_SHORT.get(words, words).replace("^2", "²").replace("^3", "³"))
    if known is None:
        raise NotUnderstood(words, 0, "a unit")
    return known.symbol


def _story(question: Question, part: Part, scene: Scene) -> Told | None:
    return story_of(lambda: topic_named("units and times"), _reckoning, question, part, scene)


READERS = Readers(task=_task, story=_story)
