"""What has to be done to a number, what lies half-way, and calculations told in two steps."""

import re
from fractions import Fraction

from paperaudit.wording.topics.calculations.form import NUMBER, Form, Pieces, form, value

AHEAD = re.compile(
    r"\b(?:added|subtracted|multiplied|divided|subtract|multiply|divide|exceeds?|half-?way|how much|lcm|hcf|sum"
    r"|squares?|cubes?|product|add)\b"
)
_FIND = r"(?:find|calculate|work out|determine|evaluate|what is) "
_SIGNED = rf"-?{NUMBER}"


def _n(name: str) -> str:
    return rf"(?P<{name}>{_SIGNED})"


def _size(piece: str) -> Fraction:
    return -value(piece[1:]) if piece.startswith("-") else value(piece)


def _written(piece: str, first: bool = False) -> str:
    """A number with the minus of print, in brackets where it stands behind a sign."""
    if not piece.startswith("-"):
        return piece
    return f"−{piece[1:]}" if first else f"(−{piece[1:]})"


def _needed(pieces: Pieces) -> str:
    """What has to be added, subtracted, multiplied with or divided by."""
    start, end = pieces["start"], pieces["end"]
    match pieces["way"]:
        case "added to":
            return f"{_written(end, True)} − {_written(start)}"
        case "subtracted from":
            return f"{_written(start, True)} − {_written(end)}"
        case "multiplied by":
            return f"{_written(end, True)} ÷ {_written(start)}" if _size(start) else ""
    return f"{_written(start, True)} ÷ {_written(end)}" if _size(end) else ""


def _apart(pieces: Pieces) -> str:
    more, less = pieces["more"], pieces["less"]
    return f"{_written(more, True)} − {_written(less)}" if _size(more) > _size(less) else ""


def _half_way(pieces: Pieces) -> str:
    return f"({_written(pieces['one'], True)} + {_written(pieces['other'])}) ÷ 2"


def _of_two(pieces: Pieces) -> str:
    """The sum, difference or product of two numbers, from which a third one is taken, or the like."""
    signs = {"sum": "+", "product": "×", "difference": "−"}
    one, other = pieces["one"], pieces["other"]
    if pieces["of"] == "difference" and _size(one) < _size(other):
        one, other = other, one
    inner = f"{_written(one, True)} {signs[pieces['of']]} {_written(other)}"
    last = _written(pieces["last"])
    match pieces["way"]:
        case "subtract":
            return f"({inner}) − {last}" if pieces["of"] != "product" else f"{inner} − {last}"
        case "add":
            return f"({inner}) + {last}" if pieces["of"] != "product" else f"{inner} + {last}"
        case "multiply":
            return f"({inner}) × {last}"
    return f"({inner}) ÷ {last}" if _size(pieces["last"]) else ""


def _square(pieces: Pieces) -> str:
    one, other = _written(pieces["one"], True), _written(pieces["other"])
    power = "²" if pieces["power"].startswith("square") else "³"
    if pieces["each"]:
        return f"{_written(pieces['one'])}{power} {'+' if pieces['of'] == 'sum' else '−'} {other}{power}"
    return f"({one} {'+' if pieces['of'] == 'sum' else '−'} {other}){power}"


def _other_number(pieces: Pieces) -> str:
    """The other of two numbers of which HCF, LCM and one are known."""
    hcf, lcm, one = (int(pieces[name]) for name in ("hcf", "lcm", "one"))
    fits = one and not (hcf * lcm) % one and not one % hcf and not lcm % one
    return f"{hcf} × {lcm} ÷ {one}" if fits else ""


_OF_TWO = rf"the (?P<of>sum|product|difference) of {_n('one')} and {_n('other')}"
FORMS: tuple[Form, ...] = (
    form(
        rf"what(?: number)? must (?:be )?(?P<way>added to|subtracted from) {_n('start')} to (?:give|get|make|leave"
        rf"|obtain)"
        rf" {_n('end')}",
        _needed,
    ),
    form(
        rf"by what(?: number)? must {_n('start')} be (?P<way>multiplied|divided) to (?:give|get|make|obtain)"
        rf" {_n('end')}",
        lambda pieces: _needed({**pieces, "way": f"{pieces['way']} by"}),
    ),
    form(rf"by how much does {_n('more')} exceed {_n('less')}", _apart),
    form(rf"how much (?:greater|more|larger|bigger) is {_n('more')} than {_n('less')}", _apart),
    form(rf"how much (?:less|smaller) is {_n('less')} than {_n('more')}", _apart),
    form(
        rf"{_FIND}(?:a|the) (?:number|fraction) (?:that is )?(?:exactly )?half-?way between {_n('one')} and"
        rf" {_n('other')}",
        _half_way,
    ),
    form(rf"from {_OF_TWO},? (?P<way>subtract) {_n('last')}", _of_two),
    form(rf"(?P<way>subtract) {_n('last')} from {_OF_TWO}", _of_two),
    form(rf"(?P<way>add) {_n('last')} to {_OF_TWO}", _of_two),
    form(rf"(?P<way>multiply|divide) {_OF_TWO} by {_n('last')}", _of_two),
    form(
        rf"{_FIND}{_OF_TWO},? (?:and )?(?:then )?(?P<way>multiply|divide) (?:the (?:result|answer)|it) by"
        rf" {_n('last')}",
        _of_two,
    ),
    form(
        rf"{_FIND}the (?P<power>square|cube) of the (?P<of>sum|difference) of {_n('one')} and"
        rf" {_n('other')}(?P<each>)",
        _square,
    ),
    form(
        rf"{_FIND}the (?P<of>sum|difference) of the (?P<each>(?P<power>squares|cubes)) of {_n('one')} and"
        rf" {_n('other')}",
        _square,
    ),
    form(
        r"(?:the )?hcf of 2 numbers is (?P<hcf>\d+) and their lcm is (?P<lcm>\d+)\. (?:if )?one (?:number|of"
        r" (?:them|the numbers)) is"
        r" (?P<one>\d+)[,.] (?:find|what is|calculate|determine) the other(?: number| one)?",
        _other_number,
    ),
    form(
        r"2 numbers have (?:an? )?hcf (?:of )?(?P<hcf>\d+) and (?:an? )?lcm (?:of )?(?P<lcm>\d+)\. (?:if )?one"
        r" (?:number|of (?:them|the numbers)) is"
        r" (?P<one>\d+)[,.] (?:find|what is|calculate|determine) the other(?: number| one)?",
        _other_number,
    ),
)
