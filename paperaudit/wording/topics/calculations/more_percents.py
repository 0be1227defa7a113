"""Stories of one percentage: what is left, what it was before, one amount more or less than another."""

import re

from paperaudit.wording.topics.calculations.form import (
    FIND,
    MONEY,
    NUMBER,
    WHO,
    WHOLE,
    WORD,
    Form,
    Pieces,
    bare,
    form,
    one_currency,
    value,
)

AHEAD = re.compile(r"%|\bper ?cent(?:age)?\b")
_P = rf"(?P<percent>{NUMBER})%"
_HE = rf"(?:he|she|they|{WHO})"
_RISES = r"(?:rose|increased|went up|grew|has risen|has increased)"
_FALLS = r"(?:fell|decreased|dropped|went down|has fallen|has decreased)"


def _remaining(pieces: Pieces) -> str:
    """A whole of which so many per cent are gone and the rest is known."""
    rest = pieces["rest"]
    if value(pieces["percent"]) >= 100:
        return ""
    whole = f"{rest} ÷ (100% − {pieces['percent']}%)"
    if rest[0].isdigit() and (value(rest) / (1 - value(pieces["percent"]) / 100)).denominator != 1:
        return ""
    return whole


def _before(pieces: Pieces) -> str:
    up = bool(pieces["up"])
    now = pieces["now"]
    factor = 1 + (1 if up else -1) * value(pieces["percent"]) / 100
    if factor <= 0 or (now[0].isdigit() and (value(now) / factor).denominator != 1):
        return ""
    return f"{now} ÷ (100% {'+' if up else '−'} {pieces['percent']}%)"


def _compared(pieces: Pieces) -> str:
    """By how many per cent one amount is more or less than another."""
    one, other = pieces["one"], pieces["other"]
    more = pieces["way"] == "more"
    signs = {amount[0] for amount in (one, other) if not amount[0].isdigit()}
    if (value(one) > value(other)) != more or not value(other) or (signs and not one_currency(one, other)):
        return ""
    one, other = bare(one), bare(other)
    return (
        f"Write ({one} − {other})/{other} as a percentage"
        if more
        else f"Write ({other} − {one})/{other} as a percentage"
    )


def _by_an_amount(pieces: Pieces) -> str:
    if not one_currency(pieces["price"], pieces["change"]):
        return ""
    return f"Write {bare(pieces['change'])}/{bare(pieces['price'])} as a percentage"


def _part_from_part(pieces: Pieces) -> str:
    """So many per cent of a number from other per cents of it."""
    return f"{pieces['part']} ÷ {pieces['percent']}% × {pieces['wanted']}%"


_SOLD = r"(?:profit|gain)"
FORMS: tuple[Form, ...] = (
    form(
        rf"{WHO} (?:saves|spends) {_P} of (?:his|her|their) (?:salary|income|wages?|money|earnings) and (?:spends"
        rf"|saves) the (?:remaining|other)"
        rf" (?P<rest>{MONEY})\. {FIND}(?:his|her|their) (?:salary|income|wages?|money|earnings)",
        _remaining,
    ),
    form(
        rf"in an? (?:exam|examination|test|election), {_P} of the (?P<who>{WORD}) (?:failed|were absent|did not"
        rf" pass)\. if (?P<rest>{WHOLE})"
        rf"(?: (?P=who))? (?:passed|were present|pupils passed), how many (?:(?P=who) )?(?:sat|took|wrote|entered)"
        rf" the (?:exam|examination|test)",
        _remaining,
    ),
    form(
        rf"the (?:number of {WORD}|population|attendance|membership)(?: (?:in|at|of) (?:an?|the) [a-z]+)?"
        rf" (?:(?P<up>{_RISES})|{_FALLS}) by {_P}"
        rf" to (?P<now>{WHOLE})\. (?:how many {WORD} were there (?:before|originally)(?: the (?:increase|decrease"
        rf"|rise))?"
        rf"|{FIND}the (?:original|previous) (?:number|population|attendance|membership)(?: of {WORD})?"
        rf"|what was (?:it|the (?:number|population|attendance|membership)) (?:before|originally)(?: the"
        rf" (?:increase|decrease|rise))?)",
        _before,
    ),
    form(
        rf"by selling (?:an?|the|his|her) {WORD}(?: {WORD})? for (?P<now>{MONEY}),? {WHO} (?:makes|made|gains"
        rf"|gained|loses|lost)(?: an?)?"
        rf" (?:(?P<up>{_SOLD}) of |loss of )?{_P}(?: (?:profit|loss))?\. (?:what did {_HE} pay for it|how much did"
        rf" {_HE} pay for it"
        rf"|{FIND}the cost price(?: of the [a-z]+)?)",
        lambda pieces: _before(pieces),
    ),
    form(
        rf"(?P<one>{MONEY}|{NUMBER}) is (?:what|how many) (?:%|percentage|per cent) (?P<way>more|less) than"
        rf" (?P<other>{MONEY}|{NUMBER})",
        _compared,
    ),
    form(
        rf"by what (?:%|percentage|per cent) is (?P<one>{MONEY}|{NUMBER}) (?P<way>more|less) than (?P<other>{MONEY}"
        rf"|{NUMBER})",
        _compared,
    ),
    form(
        rf"(?:the|an?) price of (?:(?:an?|the) [a-z]+,? (?:which )?(?:is|was) )?(?P<price>{MONEY}) (?:goes up|rises"
        rf"|is increased|is reduced|goes down|falls)"
        rf" by (?P<change>{MONEY})\. {FIND}the percentage (?:increase|decrease|change)(?: in (?:the )?price)?",
        _by_an_amount,
    ),
    form(
        rf"{_P} of a (?:certain )?number is (?P<part>{NUMBER})\. {FIND}(?P<wanted>{NUMBER})% of the(?: same)? number",
        _part_from_part,
    ),
)
