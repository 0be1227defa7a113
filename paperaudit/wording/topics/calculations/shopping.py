"""What is paid for several things, the change from a note, a dearer first hour, wages for weeks, a loan paid back."""

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
    form,
    one_currency,
    value,
)

AHEAD = re.compile(r"\b(?:each|first|tickets?|hour|instalments?|payments?|box|pack|packet|discount|service)\b")
_HE = rf"(?:he|she|they|{WHO})"
_UNITS = r"(?:hour|day|km|kilometre|minute|week)"
_ITEM = r"(?P<{0}_many>\d+) (?:[a-z]+ ){{0,2}}?[a-z]+ (?:at|for|costing) (?P<{0}_price>[R$£€₦₹] ?\d+(?:\.\d\d)?) each"
_BOUGHT = rf"{WHO} (?:buys|bought) {_ITEM.format('one')}(?: and {_ITEM.format('other')})?"


def _bill(pieces: Pieces) -> str:
    other = f" + {pieces['other_many']} × {pieces['other_price']}" if pieces["other_many"] else ""
    return f"{pieces['one_many']} × {pieces['one_price']}{other}"


def _paid(pieces: Pieces) -> str:
    return _bill(pieces) if one_currency(pieces["one_price"], pieces["other_price"]) else ""


def _change(pieces: Pieces) -> str:
    """What is left of a note; it must be enough."""
    if not one_currency(pieces["one_price"], pieces["other_price"], pieces["note"]):
        return ""
    bill = int(pieces["one_many"]) * value(pieces["one_price"])
    if pieces["other_many"]:
        bill += int(pieces["other_many"]) * value(pieces["other_price"])
    return f"{pieces['note']} − ({_bill(pieces)})" if bill < value(pieces["note"]) else ""


def _dearer_first(pieces: Pieces) -> str:
    more = int(pieces["many"]) - 1
    if more < 1 or not one_currency(pieces["first"], pieces["rate"]):
        return ""
    units = {re.sub(r"kilometre", "km", pieces[name].rstrip("s")) for name in ("unit", "unit_too", "units")}
    return f"{pieces['first']} + {more} × {pieces['rate']}" if len(units) == 1 else ""


def _wages(pieces: Pieces) -> str:
    return f"{pieces['weeks']} × {pieces['hours']} × {pieces['rate']}"


def _loan(pieces: Pieces) -> str:
    paid = int(pieces["times"]) * value(pieces["payment"])
    if not one_currency(pieces["loan"], pieces["payment"]) or paid <= value(pieces["loan"]):
        return ""
    return f"{pieces['times']} × {pieces['payment']} − {pieces['loan']}"


def _one_of_many(pieces: Pieces) -> str:
    cents = value(pieces["price"]) * 100 / int(pieces["many"])
    same = pieces["things"].rstrip("s") == pieces["thing"]
    return f"{pieces['price']} ÷ {pieces['many']}" if cents.denominator == 1 and same else ""


def _discounted(pieces: Pieces) -> str:
    return f"{pieces['price']} − {pieces['percent']}% of {pieces['price']}"


def _with_service(pieces: Pieces) -> str:
    return f"{pieces['price']} + {pieces['percent']}% of {pieces['price']}"


FORMS: tuple[Form, ...] = (
    form(
        rf"{_BOUGHT}\. how much change (?:does|did|will|should) {_HE} (?:get|receive)(?: back)? (?:from|out of)"
        rf" (?:an? )?"
        rf"(?P<note>{MONEY})(?: note)?",
        _change,
    ),
    form(rf"{_BOUGHT}\. how much (?:does|did|will|must) {_HE} (?:pay|spend)(?: altogether| in total)?", _paid),
    form(rf"{_BOUGHT}\. {FIND}the total cost", _paid),
    form(
        rf"{WHO}(?: {WORD})? (?:charges|costs) (?P<first>{MONEY}) for the first (?P<unit>{_UNITS}) and"
        rf" (?P<rate>{MONEY})"
        rf" (?:for each|for every|per) (?:additional|further|extra|other) (?P<unit_too>{_UNITS})\. (?:how much"
        rf"|what) (?:does it cost"
        rf"|will it cost|is the (?:cost|charge)|is charged)(?: (?:to park|for parking|to hire it|to stay|for a"
        rf" (?:journey|trip|ride|hire)))?"
        rf" (?:for|of) (?P<many>\d+) (?P<units>{_UNITS}s?)",
        _dearer_first,
    ),
    form(
        rf"{WHO} (?:earns|is paid) (?P<rate>{MONEY}) (?:an|per) hour and works (?P<hours>{NUMBER}) hours (?:a|per"
        rf"|each|every) week\."
        rf" how much (?:does|will) {_HE} earn in (?P<weeks>{WHOLE}) weeks",
        _wages,
    ),
    form(
        rf"an? loan of (?P<loan>{MONEY}) is (?:repaid|paid back) (?:in|by) (?P<times>{WHOLE}) (?:equal )?(?:monthly"
        rf"|weekly|yearly)"
        rf" (?:instalments|payments|repayments) of (?P<payment>{MONEY})(?: each)?\. (?:how much interest is paid(?:"
        rf" altogether)?"
        rf"|{FIND}the (?:total )?interest(?: paid)?)",
        _loan,
    ),
    form(
        rf"an? (?:box|pack|packet|bag|set) of (?P<many>{WHOLE}) (?P<things>{WORD}) costs (?P<price>{MONEY})\."
        rf" (?:how much does one"
        rf" (?P<thing>{WORD}) cost)",
        _one_of_many,
    ),
    form(
        rf"(?:an?|the) {WORD}(?: {WORD})? (?:priced|marked) at (?P<price>{MONEY}) is sold at (?:an? discount of"
        rf" (?P<percent>{NUMBER})%"
        rf"|an? (?P<share>{NUMBER})% discount)\. {FIND}the (?:sale|selling) price(?: of the [a-z]+)?",
        lambda pieces: _discounted({**pieces, "percent": pieces["percent"] or pieces["share"]}),
    ),
    form(
        rf"the (?:cost|price) of (?:an?|the) {WORD}(?: for \d+)? is (?P<price>{MONEY}) before an?"
        rf" (?P<percent>{NUMBER})% (?:service charge|tip)"
        rf" is added\. {FIND}the total(?: (?:cost|price|bill))?(?: to be paid)?",
        _with_service,
    ),
)
