"""Circles in everyday words: a chord and its distance, a tangent, a sector, a circle in or round a regular polygon."""

import re
from collections.abc import Callable

from paperaudit.model.paper import Part, Question
from paperaudit.wording.scene import Scene
from paperaudit.wording.topics.figure_letters import Lettered
from paperaudit.wording.topics.stories.plain import plain
from paperaudit.wording.topics.topic import Readers, Told
from paperaudit.wording.topics.whole_text import whole_of
from paperaudit.wording.topics.written_in_letters import in_letters

Sizes = dict[str, str]

_FIND = r"(?:find|calculate|work out|determine|write down|what is|give|state|hence find) (?:the )?"
_LENGTH = r"\d+(?:\.\d+)?(?: ?√ ?\d+)?(?: ?(?:cm|mm|m|km|units?)\b)?"
_VALUES = {
    "kind": "radius|diameter",
    "ring": _LENGTH,
    "chord": _LENGTH,
    "far": _LENGTH,
    "side": _LENGTH,
    "angle": r"\d+(?:\.\d+)? ?(?:°|degrees)",
    "shape": r"square|equilateral triangle|regular (?:pentagon|hexagon|octagon|decagon|dodecagon)",
    "wanted": "area|perimeter|arc length|length of (?:the|its) arc",
}
_CIRCLE = r"(?:a|the) circle(?: (?:of|with|whose|which has|that has) (?:a )?@kind@(?: of| is)? @ring@)?"
_CHORD = r"(?:a|the) chord(?: of the circle)?(?:,? (?:of length|which is|that is|of) @chord@(?: long)?)?"
_SIZED_CHORD = r"(?:a chord (?:of length )?@chord@(?: long)?|a @chord@ chord)"
_CENTRE = rf"(?:the|its) cent(?:re|er)(?: of {_CIRCLE})?"
_AT_CENTRE = r"(?: at the cent(?:re|er)(?: of the circle)?)?"
_ANGLE = rf"(?:an? |the )?(?:central |centre )?angle (?:of )?@angle@{_AT_CENTRE}"
_SECTOR = r"(?:a|the) sector(?: of (?:a|the) circle)?"

_DISTANCE = r"the (?:perpendicular |shortest )?distance"
_CHORD_TOLD = (
    rf"(?:{_CHORD}|{_SIZED_CHORD}) is drawn (?:in|inside) {_CIRCLE}",
    rf"in {_CIRCLE},? (?:{_CHORD}|{_SIZED_CHORD}) is drawn",
    rf"{_CIRCLE} has (?:{_CHORD}|{_SIZED_CHORD})",
    rf"(?:{_CHORD}|{_SIZED_CHORD})(?: of a circle)? is @far@ (?:away )?from {_CENTRE}",
    rf"{_DISTANCE} (?:from|of) {_CENTRE} (?:to|from) (?:{_CHORD}|{_SIZED_CHORD}) is @far@",
    rf"{_DISTANCE} (?:from|of) {_CHORD} (?:to|from) {_CENTRE} is @far@",
    r"the @kind@(?: of the circle)? is @ring@",
    r"(?:a|the) circle has (?:a )?@kind@(?: of)? @ring@",
    r"(?:a|the) chord(?: of (?:a|the) circle)? (?:is|has length|has a length of|measures) @chord@(?: long)?",
    r"the length of (?:a|the) chord(?: of (?:a|the) circle)? is @chord@",
)
_CHORD_ASKED = {
    "far": rf"how far is (?:the|this) chord from {_CENTRE}|{_FIND}(?:perpendicular |shortest )?distance (?:from "
    rf"{_CENTRE} to the chord|of the chord from {_CENTRE}|from the chord to {_CENTRE}"
    rf"|between the chord and {_CENTRE})",
    "chord": rf"{_FIND}length of (?:the|this) chord|how long is (?:the|this) chord",
    "radius": rf"{_FIND}(?:length of the )?radius(?: of the circle)?",
    "diameter": rf"{_FIND}(?:length of the )?diameter(?: of the circle)?",
}
_TANGENT = (
    rf"a tangent is drawn to {_CIRCLE} from a point(?: which is| that is)? @far@ (?:away )?from the cent(?:re|er)"
    rf"(?: of the circle)?\. (?:{_FIND}length of (?:the|this) tangent|how long is (?:the|this) tangent)",
    rf"from a point @far@ (?:away )?from the cent(?:re|er) of {_CIRCLE},? a tangent is drawn(?: to the circle)?"
    rf"\. (?:{_FIND}length of (?:the|this) tangent|how long is (?:the|this) tangent)",
    rf"{_FIND}length of (?:a|the) tangent(?: drawn)? to {_CIRCLE} from a point @far@ (?:away )?from (?:the|its) "
    r"cent(?:re|er)(?: of the circle)?",
)
_SECTOR_TOLD = (
    rf"a sector of {_CIRCLE} has {_ANGLE}",
    rf"{_SECTOR} has (?:a )?@kind@(?: of)? @ring@ and {_ANGLE}",
    rf"{_SECTOR} (?:of|with) @kind@ @ring@ (?:and|has|with) {_ANGLE}",
    rf"a sector of {_CIRCLE} (?:and|with) {_ANGLE}",
    rf"the (?:central |centre )?angle of a sector of {_CIRCLE} is @angle@",
    rf"an arc of {_CIRCLE} subtends an angle of @angle@{_AT_CENTRE}",
)
_SECTOR_ASKED = rf"{_FIND}@wanted@(?: of (?:the|this) (?:sector|arc))?|how long is (?:the|its) arc"
_HALF = r"(?P<quarter>quarter[- ]circle|quadrant)|semi-?circle"
_HALVES = (
    rf"an? (?:{_HALF}) (?:has (?:a )?|of |with )@kind@(?: of)? @ring@"
    r"\. (?:find|calculate|work out|determine|what is) (?:the |its )?(?P<size>area|perimeter)(?: of the .*)?",
    rf"{_FIND}(?P<size>area|perimeter) of an? (?:{_HALF}) (?:of|with) @kind@(?: of)? @ring@",
)
_WITHIN = r"(?: so that it (?:touches|just touches) (?:all |each )?(?:of )?(?:the |its |4 )*sides?(?: of the [a-z]+)?)?"
_SHAPE = r"an? @shape@(?: (?:of|with|whose) (?:side|sides|side length)(?: of| is| length)? @side@)?"
_IN_OR_ROUND = (
    rf"(?P<inside>{_CIRCLE} is (?:inscribed|drawn|cut) (?:in|inside|from) {_SHAPE}{_WITHIN})",
    rf"{_SHAPE} is inscribed in {_CIRCLE}",
    rf"{_CIRCLE} is circumscribed (?:about|around) {_SHAPE}",
)
_THE_SHAPE = r"the (?:square|triangle|equilateral triangle|(?:regular )?(?:pentagon|hexagon|octagon|decagon|dodecagon))"
_BETWEEN = (
    rf"(?:of (?:the )?)?(?:region |part |area |space )?(?:enclosed )?between "
    rf"(?:the circle and {_THE_SHAPE}|{_THE_SHAPE} and the circle)"
)
_PART = r"area of (?:the )?(?:(?:part|region|area) )?(?:of |inside )?"
_OUTSIDE = r",? (?:(?:that|which|but|and) )?(?:(?:is|lies|lying) )?(?:outside|not covered by|not inside)"
_IN_OR_ROUND_ASKED = {
    "radius of circle O": rf"{_FIND}(?:exact )?(?:length of the )?radius(?: of the circle)?",
    "diameter of circle O": rf"{_FIND}(?:exact )?(?:length of the )?diameter(?: of the circle)?",
    "area of circle O": rf"{_FIND}(?:exact )?area of the circle",
    "circumference of circle O": rf"{_FIND}(?:exact )?circumference(?: of the circle)?",
    "AB": rf"{_FIND}(?:exact )?(?:length of (?:a|each|the|1) )?side(?: length)?(?: of {_THE_SHAPE})?",
    "perimeter of {0}": rf"{_FIND}(?:exact )?perimeter of {_THE_SHAPE}",
    "area of {0}": rf"{_FIND}(?:exact )?area of {_THE_SHAPE}",
    "inside": rf"{_FIND}(?:exact )?{_PART}{_THE_SHAPE}{_OUTSIDE} the circle",
    "outside": rf"{_FIND}(?:exact )?{_PART}the circle{_OUTSIDE} {_THE_SHAPE}",
    "between": rf"{_FIND}(?:exact )?area {_BETWEEN}",
}
_CORNERS = {"triangle": 3, "square": 4, "pentagon": 5, "hexagon": 6, "octagon": 8, "decagon": 10, "dodecagon": 12}
_LETTERS = "ABCDEFGHIJKLM"


def _match(form: str, text: str) -> Sizes | None:
    """The sizes of a text that has this form throughout; None where it has not, or has one size twice."""
    count = 0

    def group(token: re.Match[str]) -> str:
        nonlocal count
        count += 1
        return f"(?P<{token[1]}_{count}>{_VALUES[token[1]]})"

    read = re.fullmatch(re.sub("@([a-z]+)@", group, form), text)
    if read is None:
        return None
    found: Sizes = {}
    for name, value in read.groupdict().items():
        key = name.split("_")[0]
        if value is not None and found.setdefault(key, value) != value:
            return None
    return found


def _told(forms: tuple[str, ...], sentences: list[str]) -> Sizes | None:
    """What sentences tell, each in one of these forms; None where one is in none, or a size is told twice."""
    whole: Sizes = {}
    for sentence in sentences:
        found = next((sizes for form in forms if (sizes := _match(form, sentence)) is not None), None)
        if found is None or set(found) & set(whole):
            return None
        whole |= found
    return whole


def _ring(sizes: Sizes, radius: str) -> tuple[str, ...]:
    """The radius or the diameter of the circle, as a statement."""
    if "ring" not in sizes:
        return ()
    return (f"{'2 × ' if sizes['kind'] == 'diameter' else ''}{radius} = {sizes['ring']}",)


def _chord(text: str) -> Lettered | None:
    """AB is the chord, M its midpoint: of its length, its distance and the radius two are told, one is asked for."""
    *told, last = re.split(r"\. |,? and (?=the |its )", text)
    asked = next((name for name, form in _CHORD_ASKED.items() if _match(form, last) == {}), None)
    sizes = _told(_CHORD_TOLD, told) if asked and told else None
    if asked is None or sizes is None or len({"chord", "far", "ring"} & set(sizes)) != 2:
        return None
    if {"radius": "ring", "diameter": "ring"}.get(asked, asked) in sizes:
        return None
    statements = ["AB is a chord of circle O", "M is the midpoint of AB", *_ring(sizes, "OA")]
    statements += [f"AB = {sizes['chord']}"] if "chord" in sizes else []
    statements += [f"OM = {sizes['far']}"] if "far" in sizes else []
    wanted = {"far": "OM", "chord": "AB", "radius": "OA", "diameter": "diameter of circle O"}[asked]
    return Lettered(tuple(statements), wanted)


def _tangent(text: str) -> Lettered | None:
    """PT is the tangent from P, which is so far from the centre O."""
    sizes = next((sizes for form in _TANGENT if (sizes := _match(form, text)) is not None), None)
    if sizes is None or "ring" not in sizes:
        return None
    return Lettered(("PT is a tangent to circle O at T", *_ring(sizes, "OT"), f"OP = {sizes['far']}"), "PT")


def _sector(text: str) -> Lettered | None:
    """OAB is the sector, by its radius and an angle below 180°."""
    told, _, last = text.rpartition(". ")
    whole = re.fullmatch(rf"{_FIND}(area|perimeter|arc length) of (a sector .*)", last) if not told else None
    if whole is not None:
        told, last = whole[2], f"find the {whole[1]} of the sector"
    sizes = _told(_SECTOR_TOLD, [told])
    asked = _match(_SECTOR_ASKED, last)
    if sizes is None or asked is None or "ring" not in sizes or "angle" not in sizes:
        return None
    angle = sizes["angle"].replace("degrees", "°").replace(" ", "")
    what = asked.get("wanted", "arc length")
    if not 0 < float(angle.rstrip("°")) < 180 or (told.startswith("an arc") and what in ("area", "perimeter")):
        return None
    wanted = "length of arc AB" if "arc" in what else f"{what} of sector OAB"
    return Lettered(("OAB is a sector of a circle with centre O", *_ring(sizes, "OA"), f"∠AOB = {angle}"), wanted)


def _half(text: str) -> Lettered | None:
    """A semicircle or a quarter circle by its radius or diameter: its area, its perimeter."""
    sizes = next((sizes for form in _HALVES if (sizes := _match(form, text)) is not None), None)
    if sizes is None or ("quarter" in sizes and sizes["kind"] != "radius"):
        return None
    if "quarter" in sizes:
        told = ("OAB is a sector of a circle with centre O", f"OA = {sizes['ring']}", "∠AOB = 90°")
        return Lettered(told, f"{sizes['size']} of sector OAB")
    size = f"AB = {sizes['ring']}" if sizes["kind"] == "diameter" else f"OA = {sizes['ring']}"
    wanted = "1/2 × area of circle O" if sizes["size"] == "area" else "AB + 1/2 × circumference of circle O"
    return Lettered(("AB is a diameter of circle O", size), wanted)


def _in_or_round(text: str) -> Lettered | None:
    """A circle in a regular polygon or round it, by the radius or by the side."""
    told, _, last = text.rpartition(". ")
    sizes = _told(_IN_OR_ROUND, [told])
    asked = next((name for name, form in _IN_OR_ROUND_ASKED.items() if _match(form, last) == {}), None)
    if sizes is None or asked is None or ("ring" in sizes) == ("side" in sizes):
        return None
    inside = "inside" in sizes
    letters = _LETTERS[: _CORNERS[sizes["shape"].split(" ")[-1]]]
    if asked in ("inside", "outside", "between"):
        if asked != "between" and (asked == "inside") != inside:
            return None
        one, other = (letters, "circle O") if inside else ("circle O", letters)
        asked = f"area of the region inside {one} and outside {other}"
    shape = sizes["shape"] + " " + letters
    placed = f"circle O is inscribed in {letters}" if inside else f"{letters} is inscribed in circle O"
    side = (f"AB = {sizes['side']}",) if "side" in sizes else ()
    return Lettered((shape, placed, *_ring(sizes, "radius of circle O"), *side), asked.format(letters))


_FIGURES: tuple[Callable[[str], Lettered | None], ...] = (_chord, _tangent, _sector, _half, _in_or_round)


def _story(question: Question, part: Part, scene: Scene) -> Told | None:
    whole = whole_of(question, part, scene)
    if whole is None or question.table:
        return None
    text = ". ".join(map(plain, whole.pieces))
    figure = next((figure for read in _FIGURES if (figure := read(text)) is not None), None)
    return in_letters(figure, whole, scene) if figure is not None else None


READERS = Readers(story=_story)
