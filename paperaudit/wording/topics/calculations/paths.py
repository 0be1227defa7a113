"""Paths of one width round a rectangle or inside it, and what is left of a rectangle."""

import re

from paperaudit.wording.topics.calculations.form import FIND, NUMBER, Form, Pieces, form, value

AHEAD = re.compile(r"\b(?:path|border|frame|margin|walkway)\b")
_LENGTHS = r" ?(?:mm|cm|m|km)(?![a-z])"


def _m(name: str) -> str:
    return rf"(?P<{name}>{NUMBER}{_LENGTHS})"


_PATH = (
    rf"an? (?:path|border|frame|margin|walkway)(?: (?:that is|which is|of width))? {_m('broad')}(?: wide| in width)?"
)
_GROUND = (
    r"(?:an?|the) (?:rectangular )?(?:lawn|garden|pool|swimming pool|field|plot|pond|flower bed|photograph|picture"
    r"|park|court)"
)
_SIDES = (
    rf"(?:,? (?:which )?(?:measuring|measures|is|of|that is|that measures))? {_m('long')}(?: long)? (?:by|and)"
    rf" {_m('wide')}(?: wide)?"
)
_AROUND = (
    r"(?:surrounds|runs round|runs around|goes round|goes around|is laid (?:round|around)|is built (?:round"
    r"|around)|runs around the outside of|runs round the outside of|is laid around the outside of)"
)
_ASK = rf"{FIND}the area of the (?:path|border|frame|margin|walkway)"


def _outside(pieces: Pieces) -> str:
    long, wide, broad = pieces["long"], pieces["wide"], pieces["broad"]
    return f"({long} + 2 × {broad}) × ({wide} + 2 × {broad}) − {long} × {wide}"


def _inside(pieces: Pieces) -> str:
    long, wide, broad = pieces["long"], pieces["wide"], pieces["broad"]
    if len({piece.split(" ")[-1] for piece in (long, wide, broad)}) > 1:
        return ""
    least = min(value(piece.rstrip("mck ")) for piece in (long, wide))
    if least <= 2 * value(broad.rstrip("mck ")):
        return ""
    return f"{long} × {wide} − ({long} − 2 × {broad}) × ({wide} − 2 × {broad})"


FORMS: tuple[Form, ...] = (
    form(rf"{_PATH} {_AROUND} {_GROUND}{_SIDES}\. {_ASK}", _outside),
    form(
        rf"{_GROUND}{_SIDES} (?:is surrounded by|has around it|is enclosed by) {_PATH}(?: all round| all around)?\."
        rf" {_ASK}",
        _outside,
    ),
    form(
        rf"{_PATH} (?:runs|is laid|is built|goes) (?:round|around|along) the (?:inside|inside edge) of"
        rf" {_GROUND}{_SIDES}\. {_ASK}",
        _inside,
    ),
)
