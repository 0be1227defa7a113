"""Changes by per cent, one after the other, forwards and backwards, and gains on what is bought together."""

import re
from fractions import Fraction

from paperaudit.wording.topics.calculations.form import (
    FIND,
    MONEY,
    NUMBER,
    THING,
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

AHEAD = re.compile(r"%|\bpercentage\b")
_UP = r"(?:rose|rises|increased|increases|went up|goes up|grew|was increased|is increased|was raised|is raised)"
_DOWN = (
    r"(?:fell|falls|dropped|drops|decreased|decreases|went down|goes down|was reduced|is reduced|was decreased|is"
    r" decreased)"
)
_SUBJECT = (
    rf"(?:the )?(?:price|cost|value|population|number|salary|wage|rent|area|mass|length)(?: (?:of|in) (?:an?|the)?"
    rf" ?{THING})?|{WORD}'s (?:salary|wage|rent)"
)
_ANY = rf"(?:{_UP}|{_DOWN})"
_LOSS = r"reduction|discount|decrease|loss|markdown"
_RISE = r"increase|rise|mark-up|markup"
_BEFORE = (
    r"(?:what (?:was|is) (?:the|its) (?:original|normal|usual|full|marked|old) (?:price|cost|value)(?: of (?:the"
    r"|this) [a-z ]+)?"
    r"|(?:find|calculate|work out|determine) (?:the|its) (?:original|normal|usual|full|marked|old) (?:price|cost"
    r"|value)"
    r"(?: of (?:the|this) [a-z ]+)?|how much did (?:it|the [a-z]+) cost (?:originally|before the (?:reduction"
    r"|increase|discount|sale)))"
)
_TAX = r"(?:vat|gst|sales tax|tax)"


def _factor(percent: str, up: bool) -> str:
    return f"(100% {'+' if up else '−'} {percent}%)"


def _overall(pieces: Pieces) -> str:
    """The one change that two changes come to; a word for the direction must fit."""
    first = re.match(_UP, pieces["way"]) is not None
    second = re.match(_UP, pieces["then"]) is not None if pieces["then"] else first
    one, other = (
        1 + (1 if up else -1) * value(percent) / 100
        for up, percent in ((first, pieces["one"]), (second, pieces["other"]))
    )
    grows = one * other > 1
    if (
        one * other == 1
        or min(one, other) <= 0
        or pieces["kind"] not in ("change", "increase" if grows else "decrease")
    ):
        return ""
    product = f"{_factor(pieces['one'], first)} × {_factor(pieces['other'], second)}"
    return f"Write {product} − 1 as a percentage" if grows else f"Write 1 − {product} as a percentage"


def _before(pieces: Pieces) -> str:
    """What an amount was before a change that it has seen."""
    up = bool(pieces["up"])
    return f"{pieces['now']} ÷ {_factor(pieces['percent'], up)}" if up or value(pieces["percent"]) < 100 else ""


def _before_two(pieces: Pieces) -> str:
    return f"{pieces['now']} ÷ ({_factor(pieces['one'], False)} × {_factor(pieces['other'], False)})"


def _after_two(pieces: Pieces) -> str:
    return f"{pieces['price']} × {_factor(pieces['one'], False)} × {_factor(pieces['other'], False)}"


def _with_tax(pieces: Pieces) -> str:
    return f"{pieces['price']} + {pieces['percent']}% of {pieces['price']}"


def _without_tax(pieces: Pieces) -> str:
    return f"{pieces['price']} ÷ {_factor(pieces['percent'], True)}"


def _sale(pieces: Pieces) -> str:
    if pieces["asked"] and pieces["asked"] != pieces["thing"] and pieces["asked"] not in pieces["thing"].split():
        return ""
    return f"{pieces['price']} − {pieces['percent']}% of {pieces['price']}"


def _gain(pieces: Pieces) -> str:
    """The profit or loss in per cent on things bought together and sold one by one."""
    each = pieces["each"] if pieces["each"] else f"{pieces['price'][0]}{float(Fraction(int(pieces['cents']), 100)):.2f}"
    if not one_currency(pieces["price"], each):
        return ""
    cost, taken = value(pieces["price"]), int(pieces["many"]) * value(each)
    if not cost or taken == cost or (taken > cost) != (pieces["kind"] == "profit"):
        return ""
    price, sales = bare(pieces["price"]), f"{pieces['many']} × {bare(each)}"
    return (
        f"Write ({sales} − {price})/{price} as a percentage"
        if taken > cost
        else f"Write ({price} − {sales})/{price} as a percentage"
    )


_AMOUNT = rf"(?:{MONEY}|{WHOLE})"
_P = rf"(?P<percent>{NUMBER})%"
FORMS: tuple[Form, ...] = (
    form(
        rf"(?:{_SUBJECT}) (?P<way>{_ANY}) by (?P<one>{NUMBER})%,?(?: (?:and|in [a-z]+|last year|one year))*(?:"
        rf" then)?,?"
        rf"(?: (?P<then>{_ANY}))?(?: by)?(?: (?:a further|another))? ?(?P<other>{NUMBER})%(?: (?:in [a-z]+|the next"
        rf" year|the following year))?"
        rf"\. {FIND}the (?:overall|total|single|combined) percentage (?P<kind>increase|decrease|change)(?: in"
        rf" (?:the )?[a-z ]+)?",
        _overall,
    ),
    form(
        rf"(?:an?|the) {THING},? (?:costs|cost|is sold for|sells for|is on sale for|is worth|was sold for|is)"
        rf" (?P<now>{MONEY}) after"
        rf" (?:an? )?(?:{_P} (?:{_LOSS}|(?P<up>{_RISE}))|(?:{_LOSS}) of (?P<of>{NUMBER})%)\. {_BEFORE}",
        lambda pieces: _before({**pieces, "percent": pieces["percent"] or pieces["of"]}),
    ),
    form(
        rf"an? number is (?:(?P<up>increased)|decreased|reduced) by {_P} to (?:give|become|make)"
        rf" (?P<now>{NUMBER})\. {FIND}the(?: original)? number",
        _before,
    ),
    form(
        rf"after (?:2 )?successive discounts of (?P<one>{NUMBER})% and (?P<other>{NUMBER})%,? (?:an?|the) {THING}"
        rf" (?:costs|is sold for|cost)"
        rf" (?P<now>{MONEY})\. {_BEFORE}",
        _before_two,
    ),
    form(
        rf"(?:an?|the) {THING} loses (?P<one>{NUMBER})% of its value in (?:the|its) first year and"
        rf" (?P<other>{NUMBER})%(?: of its value)?"
        rf" in (?:the|its) second(?: year)?\. it (?:cost|was bought for) (?P<price>{MONEY})(?: when)?(?: new)?\."
        rf" (?:what is it worth|{FIND}its value)"
        r" (?:after|at the end of) (?:the )?2 years",
        _after_two,
    ),
    form(
        rf"{_TAX} (?:at|of) {_P} is added to (?:an?|the) (?:bill|price|cost) of (?P<price>{MONEY})\. {FIND}the"
        rf" total (?:bill|price|cost)"
        r"(?: to be paid)?",
        _with_tax,
    ),
    form(
        rf"(?:an?|the) (?:price|bill|cost)(?: of (?:an?|the) {THING})?,? (?:including|which includes|with) (?:{_P}"
        rf" {_TAX}|{_TAX} at (?P<at>{NUMBER})%)"
        rf",? is (?P<price>{MONEY})\."
        rf" {FIND}the (?:price|bill|cost) (?:before|without|excluding) (?:the )?{_TAX}(?: (?:was|is) added)?",
        lambda pieces: _without_tax({**pieces, "percent": pieces["percent"] or pieces["at"]}),
    ),
    form(
        rf"in a sale,? (?:all )?(?:the )?prices are (?:reduced|cut) by {_P}\. (?:an?|the) (?:pair of"
        rf" )?(?P<thing>{THING}) (?:normally|usually|originally)"
        rf" (?:costs?|sells? for) (?P<price>{MONEY})\. {FIND}the sale price(?: of (?:the|this) (?:pair of"
        rf" )?(?P<asked>{WORD}))?",
        _sale,
    ),
    form(
        rf"{WHO} (?:buys|bought) (?P<many>{WHOLE}) {WORD} for (?P<price>{MONEY}),? (?:and|then|and then) (?:sells"
        rf"|sold) (?:them|all of them|them all) (?:at|for)"
        rf" (?:(?P<each>{MONEY})|(?P<cents>\d+) ?(?:cents|c|p|pence)) each\. {FIND}(?:his|her|the) percentage"
        rf" (?P<kind>profit|loss)",
        _gain,
    ),
)
