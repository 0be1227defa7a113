"""Takes what goes along with an ask out of its sentence: reasons, accuracy, the unit of the answer."""

import re
from dataclasses import dataclass

from paperaudit.maths.notation import UNIT_MARK, Notation
from paperaudit.maths.units import unit_named
from paperaudit.model.ask import Accuracy

_COUNTS = {word: str(count) for count, word in enumerate(
    ("zero", "one", "two", "three", "four", "five", "six", "seven", "eight"))}
_ANSWER = (
    r"(?:(?:please )?(?:giving|give|leave|leaving|write|writing|express|expressing|state|stating|round|rounding|rounded)"
    r"(?: off)? )?(?:(?:your|the|all|each|any) (?:final )?(?:answers?|results?|values?|solutions?),? )?"
)
_NUMBER = r"(\d+|one|two|three|four|five|six)"
_FIGURES = re.compile(
    rf"[,;(]? ?(?:and )?{_ANSWER}(?:(?:correct|accurate|rounded(?: off)?|round(?: off)?) )*to {_NUMBER} "
    r"(decimal places?|decimals?|d\.? ?p\.?(?![a-z])|significant (?:figures?|digits?)|s\.? ?f\.?(?![a-z])|sig\.? figs?\.?)"
    r"(?: if necessary| where necessary| if needed)?\)?"
)
_NEAREST = re.compile(
    rf"[,;(]? ?(?:and )?{_ANSWER}(?:(?:correct|accurate|rounded(?: off)?|round(?: off)?) )*to the nearest "
    rf"({UNIT_MARK}?[a-z°]+(?: (?:number|integer))?|\d+(?: \d{{3}})*(?:[.,]\d+)?(?:[ {UNIT_MARK}]?[a-z]+)?)\)?"
)
_NO_REASONS = re.compile(r"[,;(]? ?(?:no|without|reasons are not|reasons need not)(?: giving| be| any)? ?(?:reasons?|required|needed|given)(?: (?:are |is |need be )?(?:required|needed|given|necessary))?\)?")
_REASONS = re.compile(
    r"[,;(:]? ?(?:and )?(?:please )?(?:"
    r"(?:by )?(?:giving|give|with|stating|state|supplying|supply|providing|provide|showing|show|quoting|including|include)"
    r" (?:(?:all|full|clear|geometric|geometrical|a|an|the|your|suitable|valid|brief|necessary|appropriate|detailed|reasons|working) ?(?:and )?)*"
    r"(?:reasons?|justifications?|explanations?)(?: for (?:(?:your|each|every|all|any|the|of) ?)*(?:answers?|statements?|steps?|claims?|conclusions?|deductions?|working)?)?"
    r"|justify(?:ing)?(?: (?:(?:your|each|every|all|the|of) ?)*(?:answers?|statements?|steps?|claims?|conclusions?|working)?)?"
    r"|explain(?:ing)?(?: (?:your|fully|clearly))*(?: (?:answers?|reasoning|working))?(?= ?[.,)]|$)"
    r"|reasons? (?:must|should|are to|have to) be (?:given|stated|supplied)(?: for (?:(?:your|each|all) ?)*(?:answers?|statements?))?"
    r"|reasons? (?:are|is) required|give reasons?"
    r")\)?"
)
_WORKING = re.compile(
    r"[,;(]? ?(?:and )?(?:(?:show(?:ing)?|write down|include) (?:(?:all|your|full|clear|the|necessary|of) )*"
    r"(?:working|steps|calculations|workings)(?: out)?(?: clearly)?"
    r"|without (?:using |the use of )?a calculator|do not (?:use a calculator|measure)|you may use a calculator)\)?"
)
_FORM = re.compile(
    rf"[,;(]? ?(?:and )?{_ANSWER}(?:in|as) (?:an? |its |their )?(?:simplest|lowest|exact|surd|simplified)(?: surd)?(?: form| terms| value)\)?"
)
_TO_SCALE = re.compile(r"\(?(?:the (?:diagram|figure|sketch|drawing) is )?(?:not (?:drawn )?(?:to scale|accurately)|NOT (?:DRAWN )?TO SCALE)\)?", re.I)
_TERMS = re.compile(r",? (?:answer )?in terms of ([a-z](?: and [a-z])?)(?![a-z])")
_IN_UNIT = re.compile(
    rf"[,;(]? ?(?:and )?(?:{_ANSWER})in ((?:square |cubic )?[a-z°]{{1,12}}[²³]?(?:/[a-z]+)?)\)?(?= ?[.?,)]? ?$)"
)


@dataclass(frozen=True, slots=True)
class Asides:
    """What was said along with an ask, and the sentence that is left without it."""

    rest: Notation
    accuracy: Accuracy | None = None
    unit: str = ""
    reasons: bool | None = None
    not_to_scale: bool = False
    terms: str = ""
    lowest: bool = False


def asides_of(notation: Notation) -> Asides:
    """The asides of a sentence and its rest."""
    accuracy, rest = _accuracy(notation)
    denied, rest = _taken(rest, _NO_REASONS)
    wanted, rest = _taken(rest, _REASONS)
    to_scale, rest = _taken(rest, _TO_SCALE)
    _, rest = _taken(rest, _WORKING)
    terms, rest = _taken(rest, _TERMS)
    form, rest = _taken(rest, _FORM)
    unit, rest = _unit(rest)
    reasons = False if denied else True if wanted else None
    return Asides(rest, accuracy, unit, reasons, bool(to_scale), terms.group(1) if terms else "", bool(form))


def _taken(notation: Notation, pattern: re.Pattern[str]) -> tuple[re.Match[str] | None, Notation]:
    found = pattern.search(notation.text)
    if found is None:
        return None, notation
    while (more := pattern.search(notation.text)) is not None and more.end() > more.start():
        comma = more.group().startswith((",", ";")) and notation.text[more.end():more.end() + 1] == ","
        notation = notation.without(more.start(), more.end() + comma)
    return found, notation


def _accuracy(notation: Notation) -> tuple[Accuracy | None, Notation]:
    found, rest = _taken(notation, _FIGURES)
    if found is not None:
        amount = _COUNTS.get(found.group(1), found.group(1))
        kind = found.group(2)
        return Accuracy("decimal places" if kind.startswith("d") else "significant figures", amount), rest
    found, rest = _taken(notation, _NEAREST)
    if found is None:
        return None, notation
    return Accuracy("nearest", _step(found.group(1).replace(UNIT_MARK, " ").strip())), rest


_STEPS = {
    "whole number": "1", "integer": "1", "whole": "1", "unit": "1", "ten": "10", "hundred": "100", "thousand": "1000",
    "million": "1000000", "tenth": "0.1", "hundredth": "0.01", "thousandth": "0.001", "rand": "R", "dollar": "$", "euro": "€",
}


def _step(words: str) -> str:
    if words in _STEPS:
        return _STEPS[words]
    unit = unit_named(words)
    return unit.symbol if unit is not None and len(words) > 2 else words


def _unit(notation: Notation) -> tuple[str, Notation]:
    if re.match(r"(?:write|express|convert|change|rewrite)\b", notation.text):
        return "", notation
    found = _IN_UNIT.search(notation.text)
    unit = unit_named(found.group(1)) if found is not None else None
    if found is None or unit is None:
        return "", notation
    return unit.symbol, notation.without(found.start(), found.end())
