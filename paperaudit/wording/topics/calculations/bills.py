"""A fixed charge with a rate on top, and what paying by instalments costs."""

import re

from paperaudit.wording.topics.calculations.form import (
    FIND,
    MONEY,
    NUMBER,
    WHO,
    WORD,
    Form,
    Pieces,
    form,
    one_currency,
    value,
)

AHEAD = re.compile(r"\b(?:charges?|plus|deposit|instalments?)\b")
_EACH = r"(?:per|for each|for every|an|a|each|every)"
_FIXED = r"(?:fixed|call-out|call out|booking|basic|standing|flat|initial|monthly|delivery|hire|standard)"
_TARIFF = (
    rf"(?:{WHO}|{WHO}'s (?:monthly |weekly )?[a-z]+ bill) (?:charges|charge|costs|is|are|asks)"
    rf" (?:an? {_FIXED} (?:fee|charge|cost|price) of (?P<fee>{MONEY}),? (?:plus|and|and then)|(?P<fixed>{MONEY}),?"
    rf" plus)"
    rf" (?:an? (?:further|extra|additional) )?(?P<rate>{MONEY}) {_EACH} (?P<unit>{WORD})"
    r"(?: (?:travelled|worked|used|driven|hired))?"
)
_MANY = rf"(?P<many>{NUMBER}) (?P<units>{WORD})"
_PAID = rf"{WHO} (?:paid|pays|was charged|is charged) (?P<paid>{MONEY})(?: for (?:a|the|one) [a-z]+)?"
_CASH = (
    rf"(?:an?|the) (?P<thing>{WORD}(?: {WORD})?) (?:can be bought|is sold|is priced at|costs|is advertised)"
    rf" ?(?:for |at )?(?P<cash>{MONEY})(?: in)? cash,?"
)
_TERMS = (
    rf"(?:an? (?:(?P<share>{NUMBER})% deposit|deposit of (?:(?P<deposit>{MONEY})|(?P<percent>{NUMBER})%(?: of the"
    rf" cash price)?)))"
    rf"(?:,? (?:and|plus|followed by|and then))+ (?P<times>\d+) (?:equal )?(?:monthly|weekly) (?:payments"
    rf"|instalments)"
    rf" of (?P<payment>{MONEY})(?: each)?"
)
_ON_TERMS = (
    r"(?: (?:on|by|using|with|under) (?:hire purchase|hp|credit|the credit plan|instalments|this plan|these terms))"
)


def _same(unit: str, units: str) -> bool:
    """Whether a unit of charge and the unit of an amount are one: km and km, hour and hours."""
    names = {"kilometre": "km", "kilometer": "km", "litre": "l", "minute": "min"}
    one, other = (names.get(word.rstrip("s"), word.rstrip("s")) for word in (unit, units))
    return one == other


def _bill(pieces: Pieces) -> str:
    fee = pieces["fee"] or pieces["fixed"]
    if not one_currency(fee, pieces["rate"]) or not _same(pieces["unit"], pieces["units"]):
        return ""
    return f"{fee} + {pieces['many']} × {pieces['rate']}"


def _how_many(pieces: Pieces) -> str:
    fee = pieces["fee"] or pieces["fixed"]
    if not one_currency(fee, pieces["rate"], pieces["paid"]) or value(pieces["paid"]) < value(fee):
        return ""
    unit = pieces["unit"].rstrip("s")
    named = pieces["units"]
    if named and not _same(unit, named):
        return ""
    far = {"km": "km", "kilometre": "km", "kilometer": "km", "mile": "mile"}.get(unit, "")
    if not named and not far:
        return ""
    measured = f" × 1 {far}" if far else ""
    return f"({pieces['paid']} − {fee}) ÷ {pieces['rate']}{measured}"


def _price_on_terms(pieces: Pieces) -> str:
    share = pieces["share"] or pieces["percent"]
    if not one_currency(pieces["cash"], pieces["deposit"], pieces["payment"]):
        return ""
    deposit = pieces["deposit"] or f"{share}% of {pieces['cash']}"
    return f"{deposit} + {pieces['times']} × {pieces['payment']}"


def _extra_on_terms(pieces: Pieces) -> str:
    price = _price_on_terms(pieces)
    return f"{price} − {pieces['cash']}" if price else ""


_OFFER = (
    rf"{_CASH} or (?:(?:by|with|on|for|on hire purchase (?:by|with|for)|on credit (?:by|with|for)|by paying)"
    rf" )?{_TERMS}"
)
_COST = rf"(?:does|will|would|do) (?:{WHO} (?:pay|charge)|(?:it|he|she|they) (?:cost|pay|charge))"
FORMS: tuple[Form, ...] = (
    form(
        rf"{_TARIFF}\. (?:how much|what) (?:{_COST}|does|will|would|is)(?: (?:for )?an? [a-z]+)? ?"
        rf"(?:of|for|that takes|that lasts|lasting|which takes|if (?:he|she|it) (?:works|takes|uses)"
        rf"|in a (?:month|week) in which (?:he|she|they) uses?) (?:an? [a-z]+ of )?{_MANY}(?: cost)?",
        _bill,
    ),
    form(
        rf"{_TARIFF}\. {FIND}the (?:total )?(?:cost|charge|price|bill) (?:of|for) (?:an? [a-z]+ (?:of|for|lasting)"
        rf" )?{_MANY}",
        _bill,
    ),
    form(
        rf"{_TARIFF}\. {_PAID}\. (?:how far did (?:he|she|they|{WHO}) (?:travel|go|ride|drive)"
        rf"|how many (?P<units>{WORD}) (?:did|does|was|were) (?:he|she|it|they|{WHO}) ?(?:travel|hired|hire|use"
        rf"|work|worked|take|ride|drive)?)",
        _how_many,
    ),
    form(
        rf"{_OFFER}\. (?:how much (?:more|extra) does (?:it|the [a-z ]+) cost{_ON_TERMS}|how much (?:money )?(?:is"
        rf"|would be|can be)"
        rf" saved by paying cash|{FIND}the extra cost of (?:buying|paying)(?: it| for it)?{_ON_TERMS})",
        _extra_on_terms,
    ),
    form(
        rf"{_OFFER}\. (?:{FIND}the total (?:hire purchase |credit |hp )?(?:price|cost)(?:{_ON_TERMS}| of the"
        rf" [a-z]+{_ON_TERMS})?"
        rf"|how much does (?:it|the [a-z]+) cost(?: altogether| in total)?{_ON_TERMS})",
        _price_on_terms,
    ),
)
