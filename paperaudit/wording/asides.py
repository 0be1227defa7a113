"""Takes what goes along with an ask out of its sentence: reasons, accuracy, form and unit of the answer."""

import re
from dataclasses import dataclass

from paperaudit.maths.limits import LONGEST_TEXT
from paperaudit.maths.notation import Notation, read_notation
from paperaudit.maths.units import unit_named
from paperaudit.model.ask import Accuracy
from paperaudit.wording.accuracy import YOUR_ANSWER, accuracy_of

_OF_WHAT = r"""(?: (?: your | each | every | all | any | the | of ) \s?)*
    (?: answers? | statements? | steps? | claims? | conclusions? | deductions? | working | reasoning )?"""
_NO_REASONS = re.compile(
    r"""[,;(]? \s? (?: without \s (?: giving \s )? (?: any \s )? reasons?
      | (?: no \s )? reasons? \s (?: (?: are | is | need ) \s )? (?: not \s )? (?: be \s )? (?<=[toe]\s)
        (?: required | needed | necessary | given ) )\)?""",
    re.VERBOSE,
)
_REASONS = re.compile(
    rf"""[,;(:]? \s? (?: and \s )? (?: please \s )? (?:
        (?: by \s )? (?: giv(?:e|ing) | with | stat(?:e|ing) | suppl(?:y|ying) | provid(?:e|ing) | show(?:ing)?
            | quot(?:e|ing) | includ(?:e|ing) ) \s
        (?: (?: all | full | clear | geometric(?:al)? | an? | the | your | suitable | valid | brief | necessary
            | detailed | appropriate | reasons | working ) \s (?: and \s )? )*
        (?: reasons? | justifications? | explanations? ) (?! \w ) (?: \s for \s {_OF_WHAT} )?
      | justif(?:y|ying) (?! \w ) (?: \s {_OF_WHAT} )?
      | explain(?:ing)? (?: \s (?: your | fully | clearly ) )* (?: \s (?: answers? | reasoning | working ) )?
        (?= \s? [.,)] | $ )
      | reasons? \s (?: must | should | are \s to | have \s to ) \s be \s (?: given | stated | supplied )
        (?: \s for \s {_OF_WHAT} )?
      | reasons? \s (?: are | is ) \s required
    )\)?""",
    re.VERBOSE,
)
_WORKING = re.compile(
    r"""[,;(]? \s? (?: and \s )? (?:
        (?: show(?:ing)? | write \s down | includ(?:e|ing) )
        \s (?: (?: all | your | full | clear | the | necessary | of ) \s )*
        (?: working | workings | steps | calculations ) (?: \s out )? (?: \s clearly )?
      | giv(?:e|ing) \s (?: both | all ) \s (?: the \s )? (?: possible \s )? (?: answers | solutions | values )
        (?= \s? [.)]? \s? $ )
      | without \s (?: using \s | the \s use \s of \s )? a \s calculator
      | do \s not \s (?: use \s a \s calculator | measure ) | you \s may \s use \s a \s calculator
    )\)?""",
    re.VERBOSE,
)
_FORM = re.compile(
    rf"""[,;(]? \s? (?: and \s )? {YOUR_ANSWER} (?: in | as ) \s (?: an? \s | its \s | their \s )?
    (?: simplest | lowest | exact | surd | simplified ) (?: \s surd )? (?: \s (?: form | terms | value ) )? \)?""",
    re.VERBOSE,
)
_ANSWER_AS = re.compile(
    r",? ?(?:and )?(?:giv(?:e|ing)|leav(?:e|ing)|writ(?:e|ing)) (?:your|the) answers? (?:as|in) (?:an? )?"
    r"(?P<form>(?:common |decimal |mixed |improper |proper )?(?:fraction|number)|decimal|percentage|terms of π"
    r"|(?:surd|exponential|index|standard|scientific|standard index|power) (?:form|notation)|words"
    r"|the (?:exact |surd )?form (?:[a-z] ?π|[a-z]? ?√ ?(?:\d+|[a-z]))(?! ?[-+]))"
    r"(?: in (?:its |the )?(?:simplest form|lowest terms))?"
    r"|,? (?:giving your answers? )?in terms of (?:π|pi)(?![a-z])"
    r"|,? ?(?:and )?leav(?:e|ing) (?:π|pi) in (?:your|the) answer"
    r"|,? ?(?:and )?(?:giv(?:e|ing)|leav(?:e|ing)) your answer as a multiple of (?:π|pi)(?![a-z])"
)
_FORMS = {
    "standard": "standard form",
    "scientific": "standard form",
    "index": "index form",
    "exponential": "index form",
    "power": "index form",
    "mixed": "mixed number",
}
_TO_SCALE = re.compile(
    r"""[,;(]? \s? (?: the \s )? (?: (?: diagram | figure | sketch | drawing ) s? \s (?: is | are )? \s? )?
    not \s (?: drawn \s )? (?: to \s scale | accurately ) (?: \s drawn )? \)?""",
    re.VERBOSE | re.IGNORECASE,
)
_SCALE_WORD = re.compile(r"scale|accurate", re.IGNORECASE)
_TERMS = re.compile(
    r",? (?:your answers? )?in terms of ([a-z](?:(?:, [a-z])*,? and [a-z]|, [a-z](?=,| if))?)(?![a-z]),?"
)
_IN_UNIT = re.compile(
    rf"""[,;(]? \s? (?: and \s )? {YOUR_ANSWER} in \s
    ( (?: (?: square | cubic ) \s )? [a-z°]{{1,12}} [²³]? (?: /[a-z]+[²³]? )? )
    \)? (?= \s? [.?]? \s? $ )""",
    re.VERBOSE,
)
_KEEPS_UNIT = re.compile(r"(?:write|express|convert|change|rewrite)\b")


@dataclass(frozen=True, slots=True)
class Asides:
    """What was said along with an ask, and the sentence that is left without it.

    `reasons` is None where nothing was said of them; `terms` are the letters of "in terms of x"; `form` names
    the form of the answer where it changes what counts as right ("standard form", "index form").
    """

    rest: Notation
    accuracy: Accuracy | None = None
    unit: str = ""
    reasons: bool | None = None
    not_to_scale: bool = False
    terms: str = ""
    lowest: bool = False
    form: str = ""


def asides_of(notation: Notation) -> Asides:
    """The asides of a sentence, and its rest."""
    accuracy, rest = accuracy_of(notation)
    denied, rest = _taken(rest, _NO_REASONS)
    wanted, rest = _taken(rest, _REASONS)
    marked, rest = _taken(rest, _TO_SCALE)
    _, rest = _taken(rest, _WORKING)
    terms, rest = _taken(rest, _TERMS)
    form, rest = _taken(rest, _FORM)
    unit, rest = _unit(rest)
    written, rest = _taken(rest, _ANSWER_AS)
    if rest.text.startswith(", "):
        rest = rest.without(0, 2)
    reasons = False if denied else True if wanted else None
    wanted_form = _FORMS.get((written["form"] or "").split(" ")[0], "") if written else ""
    in_terms = terms.group(1) if terms else ""
    return Asides(rest, accuracy, unit, reasons, bool(marked), in_terms, bool(form), wanted_form)


def is_not_to_scale(text: str, alone: bool = False) -> bool:
    """Whether a figure is marked "not to scale", `alone` if nothing else is said."""
    if not _SCALE_WORD.search(text):
        return False
    found, rest = _taken(read_notation(text[:LONGEST_TEXT]), _TO_SCALE)
    return found is not None and not (alone and rest.text.strip(" .,;()"))


def _taken(notation: Notation, pattern: re.Pattern[str]) -> tuple[re.Match[str] | None, Notation]:
    """The first match, and the text without any."""
    found = more = pattern.search(notation.text)
    while more is not None:
        comma = more.group().startswith((",", ";")) and notation.text[more.end() : more.end() + 1] == ","
        notation = notation.without(more.start(), more.end() + comma)
        more = pattern.search(notation.text)
    return found, notation


def _unit(notation: Notation) -> tuple[str, Notation]:
    found = None if _KEEPS_UNIT.match(notation.text) else _IN_UNIT.search(notation.text)
    unit = unit_named(found.group(1)) if found is not None else None
    if found is None or unit is None:
        return "", notation
    return unit.symbol, notation.without(*found.span())
