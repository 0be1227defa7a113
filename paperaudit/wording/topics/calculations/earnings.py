"""What somebody earns: overtime, commission; what is taken off: tax above an allowance."""

import re

from paperaudit.wording.topics.calculations.form import (
    FIND,
    MONEY,
    NUMBER,
    WHO,
    Form,
    Pieces,
    form,
    one_currency,
    value,
)

AHEAD = re.compile(r"\b(?:overtime|commission|tax(?:ed|able)?|tax-free)\b")
_HE = rf"(?:he|she|they|{WHO})"
_IN = r"(?: (?:last|this|that|one|the|in one|in that|that) (?:week|month)| in (?:a|one|the|that) (?:week|month))"
_FACTORS = {
    "time and a half": "1.5",
    "time and a 1/2 of": "1.5",
    "time and a quarter": "1.25",
    "twice time": "2",
    "double time": "2",
}
_TIMES = rf"(?:(?P<times>{'|'.join(_FACTORS)})|(?P<factor>{NUMBER}) times (?:the|his|her) (?:normal|basic|usual) rate)"
_RATE = (
    rf"(?:earns|is paid|gets|receives) (?:a basic rate of )?(?P<rate>{MONEY}) (?:an|per|each|for each|for every) hour"
)
_WEEK = (
    r"(?:for a (?P<week>\d+)[ -]hour (?:working )?week|for the first (?P<first>\d+) hours(?: of (?:the|each) week)?)"
)
_EARNS = (
    rf"(?:how much (?:did|does|will) {_HE} earn(?: altogether| in total)?{_IN}?|{FIND}(?:his|her|their|{WHO}'s) "
    rf"(?:total |gross )?(?:wages?|earnings|pay|income|salary)(?: for (?:the|that|this) (?:week|month)| for [a-z]+)?"
    rf"{_IN}?)"
)
_PERIOD = r"(?: (?:a|per|each|every) (?:month|week|year)| per annum)"
_SALES = (
    r"(?:all |all of |the value of |the total value of )?(?:his|her|the|their|any|all)? ?"
    r"(?:total |monthly |weekly )?sales(?: (?:he|she) makes)?"
)
_BASIC = (
    rf"{WHO} (?:receives|earns|is paid|gets|has) (?:a )?(?:basic |fixed |monthly |weekly )*(?:salary|wage|pay) of"
    rf" (?P<basic>{MONEY}){_PERIOD}?(?: plus|,? and) (?:a )?(?:commission of )?(?P<percent>{NUMBER})% "
    rf"(?:commission )?(?:on|of) {_SALES}"
)
_SOLD = (
    rf"(?:(?:in|during) (?:[a-z]+|one month|a certain month|one week),? |last (?:month|week),? |one (?:month"
    rf"|week),? )?"
    rf"(?:{_HE}|(?:his|her|the) (?:total )?sales) (?:sold|sells|made sales of|makes sales of|were|was|amounted to"
    rf"|came to)"
    rf" (?:goods (?:worth|to the value of) |[a-z]+ worth )?(?P<sales>{MONEY})(?: worth of [a-z]+)?{_IN}?"
)
_TAXED = (
    rf"(?:income |earnings )?(?:above|over|in excess of|that exceeds|exceeding)(?: a| the)?(?: tax-free allowance"
    rf" of| personal allowance of)? (?P<free>{MONEY})"
)
_ALLOWANCE = (
    rf"(?:the first (?P<first>{MONEY}) (?:of (?:his|her|the) (?:income|salary) )?is (?:tax-free|not taxed|free of"
    rf" tax)"
    r",? and (?:the rest|the remainder) is taxed at (?P<percent>\d+(?:\.\d+)?)%)"
)
_INCOME = rf"{WHO} (?:earns|has an? (?:annual )?(?:income|salary) of|earned) (?P<income>{MONEY}){_PERIOD}?"
_HOW_MUCH_TAX = (
    rf"(?:how much (?:income )?tax (?:does|did|must|will|has) {_HE}(?: to| have to)? pay{_PERIOD}?|{FIND}(?:the"
    rf" )?(?:amount of )?(?:income )?tax (?:that )?{_HE} (?:pays|paid|must pay|has to pay){_PERIOD}?)"
)


def _overtime(pieces: Pieces) -> str:
    """A week with hours beyond the normal ones."""
    normal = pieces["week"] or pieces["first"]
    over = int(pieces["hours"]) - int(normal)
    factor = pieces["factor"] or _FACTORS[pieces["times"]]
    return f"{normal} × {pieces['rate']} + {over} × {factor} × {pieces['rate']}" if over > 0 else ""


def _both_kinds(pieces: Pieces) -> str:
    factor = pieces["factor"] or _FACTORS[pieces["times"]]
    return f"{pieces['hours']} × {pieces['rate']} + {pieces['over']} × {factor} × {pieces['rate']}"


def _commission(pieces: Pieces) -> str:
    if not one_currency(pieces["basic"], pieces["sales"], pieces["above"]):
        return ""
    sales = f"({pieces['sales']} − {pieces['above']})" if pieces["above"] else pieces["sales"]
    if pieces["above"] and value(pieces["above"]) >= value(pieces["sales"]):
        return ""
    earned = f"{pieces['percent']}% of {sales}"
    return f"{pieces['basic']} + {earned}" if pieces["basic"] else earned


def _tax(pieces: Pieces) -> str:
    free = pieces.get("free") or pieces["first"]
    if not one_currency(free, pieces["income"]) or value(free) >= value(pieces["income"]):
        return ""
    return f"{pieces['percent']}% of ({pieces['income']} − {free})"


_ABOVE = rf"(?: (?:above|over|in excess of|exceeding) (?P<above>{MONEY}))?"
_PERCENT = rf"(?P<percent>{NUMBER})%"
_TAX_AT = (
    rf"(?:income )?tax is (?:charged|paid|levied|payable) at (?:a rate of )?{_PERCENT} (?:on|of) (?:all |any"
    rf" )?{_TAXED}"
)
FORMS: tuple[Form, ...] = (
    form(
        rf"{WHO} {_RATE},? {_WEEK},? and (?:is paid |gets |earns )?{_TIMES} for (?:any |all |each hour of |every"
        rf" hour of )?"
        rf"overtime(?: hours?)?\. (?:(?:last|this|one|in one) week,? )?{_HE} (?:worked|works) (?P<hours>\d+)"
        rf" hours{_IN}?"
        rf"\. {_EARNS}",
        _overtime,
    ),
    form(
        rf"{WHO} {_RATE}\. overtime is paid at {_TIMES}\. (?:{_EARNS}|how much (?:does|did|will) {_HE} earn) "
        rf"(?:if (?:he|she) works|for working|for) (?P<hours>\d+) (?:normal )?hours(?: at (?:the )?normal rate"
        rf"|(?: at)? normal time)? and (?P<over>\d+) (?:hours? (?:of )?overtime|overtime hours?){_IN}?",
        _both_kinds,
    ),
    form(rf"{_BASIC}{_ABOVE}\. {_SOLD}\. {_EARNS}", _commission),
    form(
        rf"{WHO} (?:receives|earns|is paid|gets) (?P<basic>)(?:a )?(?:commission of )?{_PERCENT} (?:commission"
        rf" )?(?:on|of)"
        rf" {_SALES}{_ABOVE}\. {_SOLD}\. (?:{_EARNS}|{FIND}(?:his|her) commission(?: for [a-z ]+)?"
        rf"|how much commission (?:does|did|will) {_HE} (?:earn|receive|get){_IN}?)",
        _commission,
    ),
    form(rf"{_TAX_AT}\. {_INCOME}\. {_HOW_MUCH_TAX}", _tax),
    form(rf"{_INCOME}\. {_TAX_AT}\. {_HOW_MUCH_TAX}", _tax),
    form(rf"{_INCOME}\. {_ALLOWANCE}\. {_HOW_MUCH_TAX}", _tax),
)
