"""Money and numbers that grow by a rate: effective rates, times to a goal, instalments, rates that change."""

import re
from fractions import Fraction

from paperaudit.wording.topics.calculations.form import (
    FIND,
    MONEY,
    NUMBER,
    THING,
    WHO,
    WHOLE,
    Form,
    Pieces,
    form,
    one_currency,
    value,
)

AHEAD = re.compile(r"%|\brate of simple interest\b|\bin the ratio\b")
_PER = r"(?: ?(?:p\.? ?a\.?|per annum|per year|a year|each year|every year|annually|yearly))?"
_OFTEN = r"(?:annually|yearly|half-yearly|semi-annually|quarterly|monthly|weekly|daily)"
_TIMES = {
    "annually": 1, "yearly": 1, "half-yearly": 2, "semi-annually": 2, "quarterly": 4, "monthly": 12, "weekly": 52,
    "daily": 365,
}  # fmt: skip
_RATE = rf"(?P<rate>{NUMBER})%{_PER}"
_COMPOUNDED = rf",? (?:interest )?(?:is )?compounded (?P<often>{_OFTEN})"
_SIMPLE = r"(?: at)? simple interest"
_YEARS = rf"(?P<years>{WHOLE}) years?"
_NOW = rf"(?:an (?:amount|investment) of |a (?:sum|loan) of )?(?P<now>{MONEY})"
_GOAL = rf"(?P<goal>{MONEY})"
_GROW = r"(?:to )?(?:grow|amount|increase|accumulate)(?:s)? to|to (?:become|reach|be worth)|to be worth|become|reach"
_PEOPLE = r"(?:population|number of [a-z]+)"


def _effective(pieces: Pieces) -> str:
    times = _TIMES[pieces["often"]]
    if times == 1:
        return ""
    return f"Write (1 + {pieces['rate']}%/{times})^{times} − 1 as a percentage correct to 2 decimal places"


def _simple_rate(pieces: Pieces) -> str:
    now, goal = pieces["now"], pieces["goal"]
    if not one_currency(now, goal) or value(goal) <= value(now):
        return ""
    return f"Write ({goal} − {now})/({now} × {pieces['years']}) as a percentage"


def _simple_time(pieces: Pieces) -> str:
    """Years, from the interest that is wanted and that of one year."""
    now, goal = pieces["now"], pieces["goal"]
    if not one_currency(now, goal) or value(goal) <= value(now):
        return ""
    return f"({value(goal) - value(now)}) ÷ ({value(now)} × {pieces['rate']}%) in years"


def _compound_time(pieces: Pieces) -> str:
    now, goal = pieces["now"], pieces["goal"]
    if not one_currency(now, goal) or value(goal) <= value(now) or not _yearly(pieces):
        return ""
    return f"Solve for n: {value(goal)} = {value(now)} × {_figure(1 + value(pieces['rate']) / 100)}^n"


def _yearly(pieces: Pieces) -> bool:
    return pieces["often"] in ("", "annually", "yearly")


def _figure(number: Fraction) -> str:
    """A number of hundredths in figures: 1.08."""
    return f"{float(number):.10f}".rstrip("0").rstrip(".")


def _many_times(pieces: Pieces) -> str:
    """The years in which money doubles or trebles."""
    many = 2 if pieces["many"] in ("double", "twice") else 3
    if pieces["simple"]:
        return f"({many} − 1) ÷ {pieces['rate']}% in years"
    return f"Solve for n: {many} = {_figure(1 + value(pieces['rate']) / 100)}^n" if _yearly(pieces) else ""


def _instalment(pieces: Pieces) -> str:
    price = pieces["now"]
    deposit = pieces.get("deposit", "")
    left = price
    if deposit.endswith("%"):
        left = f"({price} − {deposit} of {price})"
    elif deposit:
        if not one_currency(price, deposit):
            return ""
        left = f"({price} − {deposit})"
    years = int(pieces["years"])
    return _in_cents(f"{left} × (1 + {pieces['rate']}% × {years}) ÷ {12 * years}")


def _in_cents(calculation: str) -> str:
    return f"{calculation} correct to 2 decimal places"


def _in_prices(pieces: Pieces) -> str:
    return _in_cents(f"{pieces['now']} × (1 + {pieces['rate']}%)^{pieces['years']}")


def _from_year_to_year(pieces: Pieces) -> str:
    years = int(pieces["end"]) - int(pieces["start"])
    since, till = (pieces[one].replace("beginning", "start") for one in ("since", "till"))
    if years < 1 or since != till or pieces["asked"] != pieces["what"]:
        return ""
    sign = "+" if pieces["way"].startswith(("inc", "gr", "ris")) else "−"
    return f"{pieces['count']} × (1 {sign} {pieces['rate']}%)^{years} correct to the nearest whole number"


def _two_rates(pieces: Pieces) -> str:
    growth = " × ".join(
        f"(1 + {pieces[rate]}%/{times})^{times * int(pieces[years])}"
        for rate, often, years in (("rate", "often", "years"), ("then_rate", "then_often", "then_years"))
        for times in (_TIMES[pieces[often]],)
    )
    if pieces["all"] and int(pieces["all"]) != int(pieces["years"]) + int(pieces["then_years"]):
        return ""
    return _in_cents(f"{pieces['now']} × {growth}")


def _in_ratio(pieces: Pieces) -> str:
    """An amount changed in a ratio, whose first term is the new one: up in 5 : 4, down in 4 : 5."""
    new, old = int(pieces["one"]), int(pieces["other"])
    up = pieces["way"] == "increase"
    return f"{pieces['what']} × {new}/{old}" if new != old and (new > old) == up else ""


_DEPOSIT = rf"(?: with| after| and pays)? a deposit of (?P<deposit>{NUMBER}%|{MONEY})(?: is paid)?"
_INSTALMENT = (
    rf"{FIND}(?:the|his|her|each|the amount of each|the value of each)(?: equal)? (?:monthly )?"
    r"(?:instalment|repayment|payment)s?"
)
FORMS: tuple[Form, ...] = (
    form(
        rf"(?P<way>increase|decrease|reduce) (?P<what>(?:{MONEY}|{NUMBER}(?: ?[a-z]+)?)) in the ratio"
        rf" (?P<one>{WHOLE}) ?: ?(?P<other>{WHOLE})",
        _in_ratio,
    ),
    form(
        rf"(?:convert|change) (?:a|the) nominal (?:interest )?rate of {_RATE}{_COMPOUNDED} (?:in)?to (?:an|the)"
        r" (?:equivalent )?(?:annual )?effective (?:annual )?(?:interest )?rate",
        _effective,
    ),
    form(
        rf"{FIND}the (?:annual )?effective (?:annual )?(?:interest )?rate(?: per annum)?,? (?:if|of|for|that is"
        rf" equivalent to|equivalent to|when|corresponding to) (?:a|the)? ?(?:nominal (?:interest )?rate (?:is|of) )?"
        rf"{_RATE}{_COMPOUNDED}",
        _effective,
    ),
    form(
        rf"(?:at what|what|{FIND}the)(?: (?:annual|yearly))? rate of simple interest (?:per annum |per year )?(?:will"
        rf"|is needed for|must|would|at which|if) {_NOW} (?:{_GROW}) {_GOAL} (?:in|after|over) {_YEARS}",
        _simple_rate,
    ),
    form(
        rf"how (?:long|many years) (?:will|does|would) it take (?:for )?{_NOW} (?:{_GROW}) {_GOAL} at {_RATE}{_SIMPLE}",
        _simple_time,
    ),
    form(
        rf"{_NOW} is (?:invested|borrowed) at {_RATE}{_SIMPLE}\. (?:after|in) how many years will (?:it|the investment"
        rf"|the loan|the amount) (?:be worth|amount to|grow to|become|reach) {_GOAL}",
        _simple_time,
    ),
    form(
        rf"how (?:long|many years) (?:will|does|would) it take (?:for )?{_NOW} (?:{_GROW}) {_GOAL} at {_RATE}"
        rf"(?: compound interest|{_COMPOUNDED})",
        _compound_time,
    ),
    form(
        rf"how (?:long|many years) (?:will|does|would) it take (?:for )?(?:an?|the) (?:investment|amount|sum|sum of"
        rf" money|deposit) to (?P<many>double|twice|treble|triple|3 times)(?: in value| itself)? at {_RATE}"
        rf"(?:(?P<simple>{_SIMPLE})|(?: at)? compound interest|{_COMPOUNDED})",
        _many_times,
    ),
    form(
        rf"{WHO} borrows {_NOW} at {_RATE}{_SIMPLE},? and (?:repays|pays back|pays) (?:it|the loan|the money)(?: back)?"
        rf" (?:over|in|after) {_YEARS} (?:in|by|with) equal monthly (?:instalments|payments|repayments)\."
        rf" {_INSTALMENT}",
        _instalment,
    ),
    form(
        rf"(?:an?|the) {THING} costs {_NOW}\. (?:it|the {THING}) is bought on hire purchase{_DEPOSIT},? and the"
        rf" (?:balance|rest|remainder) is (?:paid|repaid) (?:off )?over {_YEARS} at {_RATE}{_SIMPLE}\. {_INSTALMENT}",
        _instalment,
    ),
    form(
        rf"(?:the )?(?:average )?(?:annual )?inflation rate is {_RATE}\. what will (?:an?|the) {THING}(?: of {THING})?"
        rf" (?:that|which) costs {_NOW} (?:now|today) cost in {_YEARS}(?:'|′|’)?(?: time)?",
        _in_prices,
    ),
    form(
        rf"the (?P<what>{_PEOPLE}) (?:of|in) (?:an?|the) [a-z]+ (?P<way>increases|decreases|grows|falls|drops|rises) by"
        rf" {_RATE}\. (?P<since>at the (?:start|beginning|end) of|in) (?P<start>[12]\d{{3}},?) the {_PEOPLE} was"
        rf" (?P<count>{WHOLE})\. {FIND}the (?P<asked>{_PEOPLE}) (?P<till>at the (?:start|beginning|end) of|in)"
        rf" (?P<end>[12]\d{{3}})",
        lambda pieces: _from_year_to_year({**pieces, "start": pieces["start"].rstrip(",")}),
    ),
    form(
        rf"{WHO} (?:invests|deposits) {_NOW} (?:in|into) an? (?:[a-z]+ )?(?:account|fund|bank)(?:,? (?:that|which))?"
        rf" (?:pays|paying|earns|earning) (?:interest at )?{_RATE}{_COMPOUNDED},? (?:for|during) the first {_YEARS},?"
        rf" (?:and|then|and then) (?P<then_rate>{NUMBER})%{_PER},? compounded (?P<then_often>{_OFTEN}),? (?:for|during)"
        rf" the (?:next|following|last) (?P<then_years>{WHOLE}) years?\. (?:how much (?:money )?(?:is|will be) in the"
        rf" (?:account|fund)|{FIND}(?:the (?:value|balance|amount)(?: of the (?:investment|account))?|how much is in"
        rf" the account))(?: (?:after|at the end of)(?: the)? (?P<all>{WHOLE}) years)?",
        _two_rates,
    ),
)
