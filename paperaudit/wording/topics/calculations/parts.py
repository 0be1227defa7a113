"""Parts of a whole: how many are left over, how many there are in all, which fraction or per cent a part is."""

import re

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
    form,
    value,
)

AHEAD = re.compile(r"%|\d/\d|\bfraction\b|\bproportion\b|\bpercentage\b")
_OPPOSITES = {
    frozenset(pair)
    for pair in (("boys", "girls"), ("men", "women"), ("males", "females"), ("male", "female"), ("adults", "children"))
}
_PART = rf"(?:(?P<percent>{NUMBER})%|(?P<fraction>\d+/\d+))"
_WHERE = rf"(?: (?:in|at|on) (?:an?|the|this|that|his|her) {WORD}(?: {WORD})?)?"
_REST = rf"(?:,? and (?:the rest|the others|the remainder|the remaining {WORD}) are (?P<rest>{WORD}))?"
_REST_BEHIND = rf"(?:\. (?:the rest|the others|the remaining {WORD}) are (?P<others>{WORD}))?"
_HOW_MANY = (
    rf"(?:how many (?P<asked>{WORD})(?: are(?: there)?| does it (?:have|contain))?{_WHERE}|{FIND}the number of"
    rf" (?P<number>{WORD}){_WHERE})"
)


def _share(pieces: Pieces) -> str:
    """A part as a factor; "" for one that is no part of a whole."""
    share = pieces["fraction"] or f"{pieces['percent']}%"
    size = value(pieces["fraction"]) if pieces["fraction"] else value(pieces["percent"]) / 100
    return share if 0 < size < 1 else ""


def _other_kind(part: str, wanted: str, rest: str) -> bool:
    return wanted == rest if rest else frozenset((part, wanted)) in _OPPOSITES


def _counted(pieces: Pieces) -> str:
    """How many of one kind there are among a known number."""
    share, wanted = _share(pieces), pieces["asked"] or pieces["number"]
    whole, rest = int(pieces["whole"]), pieces["rest"] or pieces["others"]
    exact = value(pieces["fraction"]) if pieces["fraction"] else value(pieces["percent"]) / 100
    if not share or (exact * whole).denominator != 1:
        return ""
    if wanted == pieces["part"]:
        return f"{share} of {whole}"
    if not _other_kind(pieces["part"], wanted, rest):
        return ""
    return f"({'1' if pieces['fraction'] else '100%'} − {share}) × {whole}"


def _in_all(pieces: Pieces) -> str:
    """How many there are in all, where those of one kind are known."""
    share, told = _share(pieces), pieces["told"]
    if not share or pieces["asked"] not in (pieces["things"], pieces["things"].split()[-1]):
        return ""
    same = told == pieces["part"]
    if not same and not _other_kind(pieces["part"], told, pieces["rest"] or pieces["others"]):
        return ""
    size = value(share) if "%" not in share else value(share[:-1]) / 100
    if (int(pieces["count"]) / (size if same else 1 - size)).denominator != 1:
        return ""
    if same:
        return f"{pieces['count']} ÷ {share}"
    return f"{pieces['count']} ÷ ({'1' if pieces['fraction'] else '100%'} − {share})"


def _one_of_two(pieces: Pieces) -> str:
    """The fraction or the per cent that one of two kinds is of both together."""
    counts = {pieces["one"]: pieces["first"], pieces["other"]: pieces["second"]}
    if len(counts) != 2 or pieces["asked"] not in counts or pieces["of"] in counts:
        return ""
    share = f"{counts[pieces['asked']]}/({pieces['first']} + {pieces['second']})"
    return f"Simplify {share}" if pieces["as"] != "percentage" else f"Write {share} as a percentage"


def _scored(pieces: Pieces) -> str:
    if value(pieces["got"]) > value(pieces["out_of"]):
        return ""
    return f"Write {pieces['got']}/{pieces['out_of']} as a percentage"


def _filled(pieces: Pieces) -> str:
    """The capacity of what is filled from one part of it to another."""
    start, end = value(pieces["start"]), value(pieces["end"])
    if not min(start, end) > 0 or max(start, end) > 1 or (start < end) != pieces["way"].startswith(("add", "pour")):
        return ""
    more, less = (pieces["end"], pieces["start"]) if start < end else (pieces["start"], pieces["end"])
    return f"{pieces['amount']} ÷ ({more} − {less})"


_LITRES = rf"(?P<amount>{NUMBER} ?(?:litres|ml|l|gallons))"
_FULL = r"(?P<{}>\d+/\d+) full(?: of [a-z]+)?"
_SIZE = rf"(?:{NUMBER} ?[a-z]+|{MONEY})"
FORMS: tuple[Form, ...] = (
    form(
        rf"(?:(?:express|write|give) (?P<one>{_SIZE}) as a fraction of (?P<other>{_SIZE})"
        rf"|what fraction of (?P<whole>{_SIZE}) is (?P<part>{_SIZE}))"
        r"(?:,? in (?:its )?(?:simplest|lowest) (?:form|terms))?",
        lambda pieces: (
            f"Write ({pieces['one'] or pieces['part']})/({pieces['other'] or pieces['whole']}) as a fraction"
        ),
    ),
    form(
        rf"(?:in|of|there are)(?: an?)?(?: [a-z]+ of)?(?: the)? (?P<whole>{WHOLE}) {WORD}{_WHERE}[,.]? (?:and"
        rf" )?{_PART}"
        rf"(?: of (?:them|the {WORD}))? are (?P<part>{WORD}){_REST}{_REST_BEHIND}\. {_HOW_MANY}",
        _counted,
    ),
    form(
        rf"{_PART} of the (?P<things>{THING}){_WHERE} are (?P<part>{WORD}){_REST}{_REST_BEHIND}\. there are"
        rf" (?P<count>{WHOLE}) (?P<told>{WORD}){_WHERE}\. how many (?P<asked>{THING}) are(?: there)?(?: altogether|"
        rf" in all)?{_WHERE}",
        _in_all,
    ),
    form(
        rf"(?:{WHO} (?:has|contains|holds|consists of)|there are) (?P<first>{WHOLE}) (?P<one>{WORD}) and"
        rf" (?P<second>{WHOLE})"
        rf" (?P<other>{WORD})(?: {WORD})?{_WHERE}\. what (?P<as>fraction|proportion|percentage) of the"
        rf" (?P<of>{WORD}){_WHERE}"
        rf" (?:are|is)"
        rf" (?P<asked>{WORD})",
        _one_of_two,
    ),
    form(
        rf"{WHO} (?:scored|got|obtained|scores|gets|achieved) (?P<got>{WHOLE})(?: marks)? out of(?: a (?:total"
        rf"|possible))?"
        rf" (?P<out_of>{WHOLE})(?: marks)?(?: (?:in|for|on) (?:an?|the|his|her) (?:[a-z]+ )?[a-z]+)?\. (?:what"
        rf" percentage"
        rf" did (?:he|she|{WORD}) (?:score|get|achieve|obtain)|(?:{FIND}|write |express )(?:his|her|this) (?:mark"
        rf"|score|result)"
        rf" as a percentage|{FIND}(?:his|her) percentage (?:mark|score)?)",
        _scored,
    ),
    form(
        rf"(?:an?|the) (?:[a-z]+ )?(?P<vessel>{WORD}) is {_FULL.format('start')}\. (?:after|when|if) {_LITRES}(?:"
        rf" of [a-z]+)?"
        rf" (?:are|is|have been|has been) (?P<way>added|poured in|removed|taken out|drawn off|used)(?: to it)?,?"
        rf" (?:it|the"
        rf" [a-z]+) is (?:now )?{_FULL.format('end')}\. (?:{FIND}(?:the )?(?:full )?capacity of the (?:[a-z]+"
        rf" )?[a-z]+"
        rf"|how (?:much|many litres)(?: [a-z]+)? does the [a-z]+ hold(?: when (?:it is )?full)?)",
        _filled,
    ),
)
