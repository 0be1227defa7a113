"""Errors with angles, by the reason of the line that gives the answer: lines, triangles, polygons, circles."""

from collections.abc import Callable, Iterator
from fractions import Fraction
from typing import TypeAlias

from paperaudit.errors import BudgetExceeded, NoValue
from paperaudit.marking.expected_errors.expected_error import ExpectedError
from paperaudit.marking.expected_errors.occasions import Occasion
from paperaudit.maths.exact import NotSurd, rational_value
from paperaudit.maths.measure import unit_of
from paperaudit.model.expression import Expression, Number

Degrees: TypeAlias = Fraction
Formula: TypeAlias = Callable[[Degrees, tuple[Degrees, ...]], Iterator[Degrees]]
"""From the right answer and the angles that its line rests on to wrong answers."""


class _Angles:
    """The wrong angles of a part whose answer comes by one of some reasons."""

    def __init__(self, reasons: tuple[str, ...], formula: Formula) -> None:
        self._reasons = reasons
        self._formula = formula

    def __call__(self, occasion: Occasion) -> Iterator[Expression]:
        answer, line = occasion.answer, occasion.reasoned
        if answer is None or answer.value is None or unit_of(answer.value) != "°" or line is None:
            return
        right = _degrees(line.answer)
        inputs = tuple(size for size in map(_degrees, line.inputs) if size is not None)
        if right is None or line.reason not in self._reasons:
            return
        for wrong in self._formula(right, inputs):
            if 0 < wrong < 360:
                yield Number(wrong)


def _degrees(expression: Expression) -> Degrees | None:
    try:
        return rational_value(expression)
    except (NotSurd, NoValue, BudgetExceeded):
        return None


def _other_whole(right: Degrees, _: tuple[Degrees, ...]) -> Iterator[Degrees]:
    yield right + 180


def _half_whole(right: Degrees, _: tuple[Degrees, ...]) -> Iterator[Degrees]:
    yield right - 180


def _supplement(right: Degrees, _: tuple[Degrees, ...]) -> Iterator[Degrees]:
    yield 180 - right


def _complement(right: Degrees, _: tuple[Degrees, ...]) -> Iterator[Degrees]:
    yield 90 - right


def _not_halved(right: Degrees, inputs: tuple[Degrees, ...]) -> Iterator[Degrees]:
    """(180° − 40°) ÷ 2 without the halving."""
    if len(inputs) == 1 and right == (180 - inputs[0]) / 2:
        yield 180 - inputs[0]


def _base_and_apex(right: Degrees, inputs: tuple[Degrees, ...]) -> Iterator[Degrees]:
    """180° − 2 × 50° as (180° − 50°) ÷ 2, or as 50°."""
    if len(inputs) == 1 and right == 180 - 2 * inputs[0]:
        yield (180 - inputs[0]) / 2
        yield inputs[0]


def _one_remote(right: Degrees, inputs: tuple[Degrees, ...]) -> Iterator[Degrees]:
    if sum(inputs) == right:
        yield from inputs


def _supplement_of_sum(right: Degrees, inputs: tuple[Degrees, ...]) -> Iterator[Degrees]:
    if sum(inputs) == right:
        yield 180 - right


def _centre_reversed(right: Degrees, inputs: tuple[Degrees, ...]) -> Iterator[Degrees]:
    """Twice where half is right and the other way round; or the angle as it is."""
    for given in inputs:
        if right == 2 * given:
            yield from (given / 2, given)
        elif right == given / 2:
            yield from (2 * given, given)


def _reflex_missed(right: Degrees, inputs: tuple[Degrees, ...]) -> Iterator[Degrees]:
    """360° − 220° not done."""
    if 360 - right in inputs:
        yield 360 - right


def _too_many_triangles(right: Degrees, inputs: tuple[Degrees, ...]) -> Iterator[Degrees]:
    """540° − … as 720° − … or 900° − …"""
    if len(inputs) > 3 and (right + sum(inputs)) == 180 * (len(inputs) - 1):
        yield from (right + 180, right + 360)


class _RadiusForgotten:
    """180° − 2 × 44° as 180° − 2 × 46°: the angle at the chord taken for the one between tangent and chord."""

    def __call__(self, occasion: Occasion) -> Iterator[Expression]:
        derivation = occasion.part.derivation()
        reasons = {step.reason.name for step in derivation.steps if step.reason} if derivation else set()
        if {"tangents-from-point", "tangent-radius"} <= reasons:
            yield from _Angles(("angle-sum-triangle",), _other_base)(occasion)


def _other_base(right: Degrees, inputs: tuple[Degrees, ...]) -> Iterator[Degrees]:
    if len(inputs) == 1 and right == 180 - 2 * inputs[0]:
        yield 180 - 2 * (90 - inputs[0])


ANGLE_ERRORS = (
    ExpectedError(
        "line taken as a full turn",
        3,
        "takes a straight line for 360°",
        "Ryan and Williams 2007",
        _Angles(("angles-on-a-line",), _other_whole),
        {"figure": ["triangle ABC, BC is produced to D"], "given": ["∠ACB = 50°"], "ask": "∠ACD"},
        "310°",
    ),
    ExpectedError(
        "full turn taken as a line",
        3,
        "takes the angles round a point for 180°",
        "Ryan and Williams 2007",
        _Angles(("angles-round-a-point", "reflex-angle"), _half_whole),
        {
            "figure": ["segments OA, OB, OC", "OA, OB, OC in order round O"],
            "given": ["∠AOB = 80°", "∠BOC = 70°"],
            "ask": "reflex ∠AOC",
        },
        "30°",
    ),
    ExpectedError(
        "co-interior taken as equal",
        4,
        "takes co-interior angles to be equal",
        "Biber, Tuna and Korkmaz 2013",
        _Angles(("co-interior-angles",), _supplement),
        {"figure": ["AB ∥ CD", "EF cuts AB at P and CD at Q"], "given": ["∠BPQ = 70°"], "ask": "∠DQP"},
        "70°",
    ),
    ExpectedError(
        "equal pair taken as supplementary",
        5,
        "takes equal angles to add up to 180°",
        "Biber, Tuna and Korkmaz 2013; WAEC examiners' reports",
        _Angles(("alternate-angles", "corresponding-angles", "vertically-opposite"), _supplement),
        {"figure": ["AB ∥ CD", "EF cuts AB at P and CD at Q"], "given": ["∠APQ = 62°"], "ask": "∠DQP"},
        "118°",
    ),
    ExpectedError(
        "halving forgotten",
        7,
        "does not halve what is left for the two base angles",
        "Ryan and Williams 2007",
        _Angles(("angle-sum-triangle",), _not_halved),
        {"figure": ["triangle ABC"], "given": ["AB = AC", "∠BAC = 40°"], "ask": "∠ABC"},
        "140°",
    ),
    ExpectedError(
        "base and apex swapped",
        8,
        "takes the base angle for the apex angle",
        "Ryan and Williams 2007; Clements and Battista 1992",
        _Angles(("angle-sum-triangle",), _base_and_apex),
        {"figure": ["triangle ABC"], "given": ["AB = AC", "∠ABC = 50°"], "ask": "∠BAC"},
        "65°",
    ),
    ExpectedError(
        "supplement of the sum",
        9,
        "takes the third angle of the triangle for the exterior angle",
        "Clements and Battista 1992",
        _Angles(("exterior-angle-triangle",), _supplement_of_sum),
        {
            "figure": ["triangle ABC, BC is produced to D"],
            "given": ["∠BAC = 50°", "∠ABC = 60°"],
            "ask": "∠ACD",
        },
        "70°",
    ),
    ExpectedError(
        "one remote angle",
        10,
        "takes the exterior angle to be equal to one interior angle",
        "Clements and Battista 1992",
        _Angles(("exterior-angle-triangle",), _one_remote),
        {
            "figure": ["triangle ABC, BC is produced to D"],
            "given": ["∠BAC = 50°", "∠ABC = 60°"],
            "ask": "∠ACD",
        },
        "60°",
    ),
    ExpectedError(
        "interior and exterior of a polygon",
        11,
        "takes the exterior angle of a regular polygon for the interior one",
        "Ryan and Williams 2007",
        _Angles(("regular-polygon",), _supplement),
        {"figure": ["regular pentagon ABCDE"], "ask": "∠ABC"},
        "72°",
    ),
    ExpectedError(
        "centre and circumference",
        13,
        "doubles where it should halve, or halves where it should double, or does neither",
        "WAEC examiners' reports",
        _Angles(("angle-at-centre",), _centre_reversed),
        {
            "figure": ["circle with centre O through A, B, C", "C lies on the major arc AB"],
            "given": ["∠AOB = 80°"],
            "ask": "∠ACB",
        },
        "160°",
    ),
    ExpectedError(
        "reflex missed",
        14,
        "stops at the reflex angle at the centre",
        "examiners' reports",
        _Angles(("angles-round-a-point", "reflex-angle"), _reflex_missed),
        {
            "figure": ["circle with centre O through A, B, C", "C lies on the minor arc AB"],
            "given": ["∠ACB = 110°"],
            "ask": "∠AOB",
        },
        "220°",
    ),
    ExpectedError(
        "opposite angles taken as equal",
        15,
        "takes opposite angles of a cyclic quadrilateral to be equal",
        "examiners' reports",
        _Angles(("cyclic-quadrilateral",), _supplement),
        {"figure": ["cyclic quadrilateral ABCD"], "given": ["∠ABC = 105°"], "ask": "∠ADC"},
        "105°",
    ),
    ExpectedError(
        "tangent and chord as a right angle",
        16,
        "takes the angle between tangent and chord and the one in the segment to add up to 90°",
        "examiners' reports",
        _Angles(("tangent-chord",), _complement),
        {
            "figure": ["circle through A, B, C", "TAS is a tangent to the circle at A", "triangle ABC"],
            "given": ["∠ABC = 65°"],
            "ask": "∠CAS",
            "sketch": {"A": [0, -10], "B": [-9, 4], "C": [8, 6], "T": [-12, -10], "S": [12, -10]},
        },
        "25°",
    ),
    ExpectedError(
        "one triangle too many",
        12,
        "takes the angle sum of a polygon with one or two sides more",
        "Ryan and Williams 2007",
        _Angles(("angle-sum-polygon", "angle-sum-quadrilateral"), _too_many_triangles),
        {
            "figure": ["pentagon ABCDE"],
            "given": ["∠ABC = 100°", "∠BCD = 110°", "∠CDE = 120°", "∠DEA = 110°"],
            "ask": "∠EAB",
        },
        "280°",
    ),
    ExpectedError(
        "radius forgotten",
        17,
        "takes the angle between radius and chord for the one between tangent and chord",
        "cf. a tangent item of WAEC",
        _RadiusForgotten(),
        {
            "figure": [
                "circle with centre O",
                "PA is a tangent to the circle at A",
                "PB is a tangent to the circle at B",
                "segments OA, OB, AB",
            ],
            "given": ["∠OAB = 46°"],
            "ask": "∠APB",
        },
        "88°",
    ),
)
"""Rows 3 to 5 and 7 to 17 of the table of documented errors."""
