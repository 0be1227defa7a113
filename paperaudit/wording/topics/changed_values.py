"""Measures of values that are all changed in one way: each is doubled, or 5 is added to each."""

import re
from fractions import Fraction

from paperaudit.model.ask import Ask
from paperaudit.model.expression import Expression, Measured, Number
from paperaudit.model.paper import Part, Question
from paperaudit.model.reckoning import Amount, Reckoning
from paperaudit.wording.scene import NotUnderstood, Scene
from paperaudit.wording.topics.stories.amounts import number_in
from paperaudit.wording.topics.stories.plain import plain
from paperaudit.wording.topics.stories.sentence_forms import NUMBER
from paperaudit.wording.topics.topic import Readers, Told
from paperaudit.wording.topics.whole_text import read_as, whole_of

_MEASURE = (
    r"(?:mean|average|median|mode|range|interquartile range|inter-quartile range|standard deviation|variance"
    r"|lower quartile|upper quartile)"
)
_OF = (
    r"(?: (?:of|for) (?:the |a |this |these )?(?:set of (?:\d+ )?(?:data|numbers|values|marks)|data set|data"
    r"|\d* ?(?:numbers|values|marks|scores)))?"
)
_IS = rf"(?P<name>{_MEASURE}){_OF} (?:is|of|was) (?P<value>{NUMBER})(?: ?(?P<unit>kg|g|cm|m|mm))?"
_TOLD = (
    re.compile(
        rf"(?:the )?{_IS}(?:,? and (?:the |their |its )?(?P<second>{_MEASURE}) (?:is|of|was) "
        rf"(?P<value2>{NUMBER}))?"
    ),
    re.compile(
        rf"(?:a|the) (?:set of (?:\d+ )?(?:data|numbers|values|marks)|data set) (?:has|have) an? {_IS}"
        rf"(?:,? and an? (?P<second>{_MEASURE}) of (?P<value2>{NUMBER}))?"
    ),
)
_EACH = (
    r"(?:each|every)(?: (?:value|number|mark|score|one|data value|of the (?:values|numbers|marks)|of these "
    r"(?:values|numbers)))?"
)
_STEP = (
    rf"(?:doubled|halved|tripled|trebled|multiplied by {NUMBER}|divided by {NUMBER}|increased by {NUMBER}"
    rf"|decreased by {NUMBER}|reduced by {NUMBER})(?! ?%)"
)
_CHANGED = (
    re.compile(
        rf"(?:if )?{_EACH}(?: in the set)? is (?:now )?(?P<first>{_STEP})(?:,? (?:and )?then "
        rf"(?P<then>{_STEP}))?"
    ),
    re.compile(rf"(?:if )?(?P<added>{NUMBER}) is (?P<way>added to|subtracted from) {_EACH}(?: in the set)?"),
)
_ASKED = re.compile(
    rf"(?:find|write down|state|what is|determine|calculate|give) (?:the )?new (?P<name>{_MEASURE})"
    rf"(?:,? and (?:the )?(?:new )?(?P<second>{_MEASURE}))?"
)
_SAME = {"average": "mean", "inter-quartile range": "interquartile range"}
_SPLIT = re.compile(r"[.?;] ?|, (?=(?:find|write down|state|what is|determine|calculate) )")


def _story(question: Question, part: Part, scene: Scene) -> Told | None:
    whole = whole_of(question, part, scene)
    if whole is None:
        return None
    pieces = [piece.strip() for text in map(plain, whole.pieces) for piece in _SPLIT.split(text) if piece.strip()]
    try:
        reckoning = _reckoning(pieces)
    except NotUnderstood:
        return None
    ask = Ask(reckoning, whole.said, whole.accuracy, whole.unit, read_as=read_as(reckoning), place=whole.place)
    return Told(ask, tuple(whole.givens))


def _reckoning(pieces: list[str]) -> Reckoning:
    measures: dict[str, Expression] = {}
    change: tuple[Fraction, Fraction] | None = None
    wanted: tuple[str, ...] = ()
    for piece in pieces:
        if (told := next((found for one in _TOLD if (found := one.fullmatch(piece))), None)) is not None:
            for key, value in (("name", "value"), ("second", "value2")):
                if told[key]:
                    number = number_in(told[value])
                    unit = told["unit"] or ""
                    name = _SAME.get(told[key], told[key])
                    if name in measures:
                        raise NotUnderstood("a measure told twice", 0)
                    measures[name] = Measured(number, unit) if unit and name != "variance" else number
        elif (changed := next((found for one in _CHANGED if (found := one.fullmatch(piece))), None)) is not None:
            if change is not None:
                raise NotUnderstood("two changes", 0)
            change = _change(changed)
        elif (asked := _ASKED.fullmatch(piece)) is not None and not wanted:
            wanted = tuple(_SAME.get(name, name) for name in (asked["name"], asked["second"]) if name)
        else:
            raise NotUnderstood(piece, 0)
    if change is None or not wanted or not set(wanted) <= measures.keys():
        raise NotUnderstood("a change of values with known measures", 0)
    amounts = [Amount(name, value) for name, value in measures.items()]
    amounts += [Amount("times", Number(change[0])), Amount("plus", Number(change[1]))]
    return Reckoning("changed values", tuple(amounts), wanted)


def _change(found: re.Match[str]) -> tuple[Fraction, Fraction]:
    """A change as times and plus: doubled and then increased by 5 is 2 and 5."""
    pieces = found.groupdict()
    if pieces.get("added"):
        by = Fraction(number_in(pieces["added"]).value)
        return Fraction(1), by if pieces["way"] == "added to" else -by
    times, plus = Fraction(1), Fraction(0)
    for step in (pieces["first"], pieces["then"]):
        if not step:
            continue
        number = re.search(NUMBER, step)
        by = Fraction(number_in(number.group()).value) if number else Fraction(0)
        if step.startswith(("increased", "decreased", "reduced")):
            plus += by if step.startswith("increased") else -by
            continue
        named = {"doubled": Fraction(2), "halved": Fraction(1, 2), "tripled": Fraction(3), "trebled": Fraction(3)}
        factor = named.get(step, by if step.startswith("multiplied") else 1 / by if by else Fraction(0))
        if not factor:
            raise NotUnderstood("a division by nought", 0)
        times, plus = times * factor, plus * factor
    return times, plus


READERS = Readers(story=_story)
