"""Stories of a path or a frame of one width all round a rectangle."""

import re
from collections.abc import Sequence
from fractions import Fraction

from paperaudit.model.expression import Number
from paperaudit.model.story import Added, Amount, Multiplied, Named, Said, Same, Scaled, Size, Sought, StoryTask, Wanted
from paperaudit.wording.scene import NotUnderstood
from paperaudit.wording.topics.stories.plain import Plain
from paperaudit.wording.topics.stories.sentence_forms import FIND, NUMBER, Form, forms_of, only, some

AHEAD = re.compile(r"\b(?:path|border|frame|walkway|strip|pavement)\b")
_INSIDE = (
    r"(?:swimming pool|pool|garden|lawn|field|photograph|photo|picture|flower bed|pond|court|carpet|painting|park|plot)"
)
_RING = r"(?:path|border|frame|walkway|strip|pavement)"
_UNIFORM = r"(?:uniform|constant|equal|the same) width"
_UNIT = r"(?:m|cm|metres|centimetres)"
_SIZES = (
    rf"(?P<length>{NUMBER}) ?(?P<unit>{_UNIT})(?: long)?(?: by|,? and| ×| x) (?P<breadth>{NUMBER}) ?(?P<unit2>{_UNIT})"
    r"(?: wide)?"
)
_ROUND = (
    rf"(?:(?:is )?(?:surrounded|bordered|enclosed) by|has) an? {_RING} of {_UNIFORM}(?: (?:all )?(?:round|around) it)?"
)
_FORMS = {
    "both": (
        re.compile(
            rf"an? {_RING} of (?P<uniform>{_UNIFORM}) (?:surrounds|runs (?:round|around)|goes (?:round|around)"
            rf"|is (?:built"
            rf"|laid|made) (?:round|around)) an? (?:rectangular )?{_INSIDE}(?: of| measuring| that measures"
            rf"| which is|,)? {_SIZES}"
        ),
        re.compile(
            rf"an? (?:rectangular )?{_INSIDE}(?: is| measures| measuring|,| of|,? which is)* {_SIZES},?"
            rf"(?: and)?(?: which)? "
            rf"(?P<uniform>{_ROUND})"
        ),
    ),
    "inside": (
        re.compile(rf"(?:an?|the) (?:rectangular )?{_INSIDE} (?:is|measures|has dimensions|has sides of) {_SIZES}"),
    ),
    "round": (
        re.compile(rf"(?:it|the {_INSIDE}) (?P<uniform>{_ROUND})"),
        re.compile(
            rf"an? {_RING} of (?P<uniform>{_UNIFORM}) (?:surrounds|runs (?:round|around)|goes (?:round|around)"
            rf"|is (?:built"
            rf"|laid|made) (?:all )?(?:round|around)) (?:it|the {_INSIDE})"
        ),
    ),
    "ring": (re.compile(rf"(?:if )?the area of the {_RING} is (?P<area>{NUMBER}) ?{_UNIT}²"),),
    "whole": (
        re.compile(
            rf"(?:if )?the (?:total |combined |whole )?area (?:of|covered by) (?:the )?{_INSIDE} and (?:the )?{_RING}"
            rf"(?: together)? is (?P<area>{NUMBER}) ?{_UNIT}²"
        ),
    ),
    "ask": (
        re.compile(rf"{FIND}the width of the {_RING}"),
        re.compile(rf"how wide is the {_RING}"),
    ),
}
_TWO = Number(Fraction(2))


def borders_story(sentences: Sequence[Plain]) -> StoryTask | None:
    """The story of a part as one of a rectangle with a path round it; raises NotUnderstood where it is none."""
    forms = forms_of(sentences, _FORMS)
    sizes, area = only(forms, "both", "inside"), only(forms, "ring", "whole")
    only(forms, "ask")
    units = {sizes.pieces["unit"][0], sizes.pieces["unit2"][0]}
    if len(units) != 1 or not any("width" in form.pieces.get("uniform", "") for form in some(forms, "both", "round")):
        raise NotUnderstood("a path of one width", 0)
    return _task(sizes, area, "m" if units == {"m"} else "cm")


def _task(sizes: Form, area: Form, unit: str) -> StoryTask:
    length, breadth, width = Named("length"), Named("breadth"), Named("width")
    outside = Multiplied(_wider(length, width), _wider(breadth, width))
    told: Size = Amount(area.number("area").number, f"{unit}²")
    whole: Size = told if area.name == "whole" else Added((Multiplied(length, breadth), told))
    sought = tuple(Sought(key, meaning, unit, "positive", False, kind) for key, meaning, kind in (
        ("length", "the length inside", "a length"), ("breadth", "the breadth inside", "a breadth"),
        ("width", "the width", "a width")))  # fmt: skip
    claims = (
        Said(sizes.said, Same(length, sizes.number("length", unit))),
        Said(sizes.said, Same(breadth, sizes.number("breadth", unit))),
        Said(area.said, Same(outside, whole)),
    )
    return StoryTask(sought, claims, (Wanted(width, "the width", unit),))


def _wider(side: Size, width: Size) -> Size:
    return Added((side, Scaled(_TWO, width)))
