"""Equal pieces of a length, tiles on a floor, boxes in a box, and things that come together again."""

import re
from fractions import Fraction

from paperaudit.wording.topics.calculations.form import NUMBER, THING, WHOLE, Form, Pieces, form, value

AHEAD = re.compile(r"\b(?:pieces?|tiles?|tiled|cubes?|together|same time)\b")
_SIZES = {"mm": 1, "cm": 10, "m": 1000, "km": 1_000_000}


def _measure(name: str) -> str:
    return rf"(?P<{name}>{NUMBER} ?(?:mm|cm|km|m)(?![a-z]))"


def _millimetres(piece: str) -> Fraction:
    """A length in millimetres.

    >>> _millimetres("1.5 m")
    Fraction(1500, 1)
    """
    number, unit = re.findall(rf"({NUMBER}) ?(mm|cm|km|m)", piece)[0]
    return value(number) * _SIZES[unit]


def _fits(whole: str, piece: str) -> bool:
    part = _millimetres(piece)
    return part > 0 and (_millimetres(whole) / part).denominator == 1


def _cut(pieces: Pieces) -> str:
    return f"{pieces['whole']} ÷ {pieces['piece']}" if _fits(pieces["whole"], pieces["piece"]) else ""


def _tiles(pieces: Pieces) -> str:
    """Tiles that lie along both sides without being cut."""
    long, wide, side = pieces["long"], pieces["wide"], pieces["side"]
    if not (_fits(long, side) and _fits(wide, side)):
        return ""
    return f"({long} ÷ {side}) × ({wide} ÷ {side})"


def _cubes(pieces: Pieces) -> str:
    sides = [pieces[name] for name in ("long", "wide", "high")]
    if not all(_fits(side, pieces["side"]) for side in sides):
        return ""
    return " × ".join(f"({side} ÷ {pieces['side']})" for side in sides)


def _meet_again(pieces: Pieces) -> str:
    """The least time after which things that come round regularly come together again."""
    times = [piece for piece in (pieces["one"], pieces["other"], pieces["third"]) if piece]
    units = {
        piece.rstrip("s")
        for piece in (pieces["unit"], pieces["unit_too"], pieces["unit_three"], pieces["asked"])
        if piece
    }
    if len(units) != 1:
        return ""
    *before, last = times
    return f"Find the lowest common multiple of {', '.join(before)} and {last}"


_UNIT = r"(?:seconds?|minutes?|hours?|days?)"
_EVERY = (
    rf"(?:every|at intervals of) (?P<one>{WHOLE}) ?(?P<unit>{_UNIT})?(?:,? (?:every )?(?P<third>{WHOLE})"
    rf" ?(?P<unit_three>{_UNIT})?)?,? and (?:{THING} )?(?:every )?(?P<other>{WHOLE}) (?P<unit_too>{_UNIT})(?:"
    rf" respectively)?"
)
_DOES = r"(?:flash|ring|toll|leave|start|sound|blink|chime|beep)"
FORMS: tuple[Form, ...] = (
    form(
        rf"(?:an?|the) (?:piece of )?{THING},? (?:(?:which|that) is )?{_measure('whole')} (?:long|in length),? is"
        rf" (?:to be )?cut into (?:equal )?"
        rf"(?:pieces|lengths)(?:,? (?:each|of length|that are each|which are each|each of length))?"
        rf" {_measure('piece')}(?: long| in length| each)?\."
        r" how many (?:pieces|lengths) (?:are there|can be cut|will there be|are cut|does this give|can be made)",
        _cut,
    ),
    form(
        rf"how many (?:pieces|lengths)(?: of [a-z]+)?,? (?:each )?{_measure('piece')} (?:long|in length),? can be"
        rf" cut from (?:an?|the) (?:piece of )?{THING}"
        rf" (?:that is |which is )?{_measure('whole')} (?:long|in length)",
        _cut,
    ),
    form(
        rf"(?:an?|the) (?:rectangular )?(?:floor|wall|patio|yard|terrace),? (?:which )?(?:(?:is|measures|measuring"
        rf"|of) )?{_measure('long')} (?:long )?by {_measure('wide')}(?: wide)?,?"
        rf" is (?:to be )?(?:tiled|covered) (?:with|by|using) (?:identical )?square tiles (?:of|with) sides? (?:of "
        rf"|length )?{_measure('side')}\. how many (?:such )?tiles"
        r" (?:are|will be) (?:needed|required|used)",
        _tiles,
    ),
    form(
        rf"how many (?:identical )?square tiles (?:of|with) sides? (?:of |length )?{_measure('side')} (?:are|will"
        rf" be) (?:needed|required) to (?:cover|tile)"
        rf" (?:an?|the) (?:rectangular )?(?:floor|wall|patio|yard|terrace) (?:that (?:is|measures) |measuring"
        rf" )?{_measure('long')} (?:long )?by {_measure('wide')}(?: wide)?",
        _tiles,
    ),
    form(
        rf"how many (?:small )?cubes (?:of|with) (?:side|edge)s? (?:of |length )?{_measure('side')} (?:can be"
        rf" packed|can be placed|will fit|fit|can fit) (?:into|in|inside)"
        rf" (?:an?|the) (?:rectangular )?(?:box|carton|crate|cuboid) (?:(?:that |which )?(?:measuring|measures|of"
        rf" dimensions|with dimensions|is) )?{_measure('long')} (?:by|×|x)"
        rf" {_measure('wide')} (?:by|×|x) {_measure('high')}",
        _cubes,
    ),
    form(
        rf"(?:2|3|two|three) {THING} {_DOES} {_EVERY}\. (?:if )?they (?:all |both )?{_DOES} together(?: (?:at|now)"
        rf" ?[a-z0-9:. ]{{0,10}})?[,.] (?:after )?how many (?P<asked>{_UNIT})"
        rf" (?:later )?will (?:it be before )?they (?:next )?{_DOES} together(?: again)?(?: for the next time)?",
        _meet_again,
    ),
)
