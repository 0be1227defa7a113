"""Errors with percentages, shares, units, scales, times and solids; their tasks are loaded by need."""

from collections.abc import Callable, Iterator
from fractions import Fraction
from math import isqrt
from typing import TYPE_CHECKING

from paperaudit.marking.expected_errors.expected_error import ExpectedError
from paperaudit.marking.expected_errors.occasions import Occasion
from paperaudit.maths.exact import rational_value
from paperaudit.maths.measure import bare, unit_of
from paperaudit.maths.units import conversion
from paperaudit.model.ask import WriteAs
from paperaudit.model.expression import Expression, Measured, Number, Sum

if TYPE_CHECKING:
    from paperaudit.model.reckoning import Reckoning

Formula = Callable[["Reckoning", Fraction], Iterator[Fraction]]
"""From the amounts of a reckoning and its right answer to wrong answers."""

_POWERS = {"²": 2, "³": 3}


class _Reckoned:
    """The wrong answers of a reckoning of one kind in which one amount is wanted."""

    def __init__(self, kinds: tuple[str, ...], wanted: tuple[str, ...], formula: Formula) -> None:
        self._kinds = kinds
        self._wanted = wanted
        self._formula = formula

    def __call__(self, occasion: Occasion) -> Iterator[Expression]:
        if occasion.part.strand != "ratio and measures" or occasion.answer is None or occasion.answer.value is None:
            return
        from paperaudit.model.reckoning import Reckoning

        task, right = occasion.task, _number(occasion.answer.value)
        if not isinstance(task, Reckoning) or task.kind not in self._kinds or right is None:
            return
        if len(task.wanted) == 1 and task.wanted[0] in self._wanted:
            yield from (Number(wrong) for wrong in self._formula(task, right))


def _number(value: Expression) -> Fraction | None:
    """The bare number of a size."""
    return rational_value(bare(value)[0])


def _one(task: "Reckoning", name: str) -> Fraction | None:
    """The bare number of the only amount of a name."""
    found = task.one(name)
    return None if found is None else _number(found)


def _on_the_new_value(task: "Reckoning", _: Fraction) -> Iterator[Fraction]:
    """120 after a rise by 20%: 120 less 20% of 120."""
    new, share = _one(task, "new"), _one(task, "percentage")
    if new is not None and share is not None:
        yield new * (1 - share)


def _without_growth_of_growth(task: "Reckoning", right: Fraction) -> Iterator[Fraction]:
    """10% and 10% more as 20% more."""
    principal, rate, years = (_one(task, name) for name in ("principal", "rate", "time"))
    if principal is None or rate is None or years is None or task.details or unit_of(task.all_of("time")[0]) != "year":
        return
    gain = principal * rate * years
    yield gain if "interest" in task.wanted else principal + gain


def _divided_below_one(task: "Reckoning", _: Fraction) -> Iterator[Fraction]:
    """0.6 kg at R12 a kilogram as R12 ÷ 0.6, since multiplying is thought to make larger."""
    one, price, amount = (_one(task, name) for name in ("first number", "first amount", "second number"))
    if one == 1 and price is not None and amount is not None and 0 < amount < 1:
        yield price / amount


def _area_like_a_length(task: "Reckoning", right: Fraction) -> Iterator[Fraction]:
    """Three times as long, so three times the area."""
    drawn, real = task.one("length on the map"), task.one("real length")
    size = task.one("size on the map") or task.one("real size")
    if drawn is None or real is None or size is None or unit_of(drawn) != unit_of(real) or unit_of(size)[-1:] != "²":
        return
    one, other = _number(drawn), _number(real)
    if one and other:
        yield right * one / other if "real size" in task.wanted else right * other / one


def _volume_like_a_length(task: "Reckoning", right: Fraction) -> Iterator[Fraction]:
    """Lengths as 2 : 3, so volumes as 2 : 3."""
    sizes: dict[str, dict[str, Fraction]] = {}
    for amount in task.amounts:
        which, _, size = amount.name.partition(" ")
        value = _number(amount.value)
        if value:
            sizes.setdefault(size, {})[which] = value
    known = next((pair for pair in sizes.values() if set(pair) == {"smaller", "larger"}), None)
    which, _, size = task.wanted[0].partition(" ")
    given = next((value for name, value in sizes.get(size, {}).items() if name != which), None)
    if known is not None and given is not None:
        ratio = known["larger"] / known["smaller"]
        yield given * ratio if which == "larger" else given / ratio


def _hours_as_decimals(task: "Reckoning", right: Fraction) -> Iterator[Fraction]:
    """2 h 30 min as 2.30 hours."""
    match task.one("time"):
        case Sum((Measured(Number(hours), "hour"), Measured(Number(minutes), "minute"))):
            as_decimal = hours + minutes / 100
            true = hours + minutes / 60
            yield right * as_decimal / true if "distance" in task.wanted else right * true / as_decimal


def _visible_faces(task: "Reckoning", _: Fraction) -> Iterator[Fraction]:
    """2 by 3 by 4 cubes as the 6 + 8 + 12 squares that are seen."""
    length, width, height = (_one(task, name) for name in ("length", "width", "height"))
    if length is not None and width is not None and height is not None:
        yield length * width + length * height + width * height


def _unit_of_length(occasion: Occasion) -> Iterator[Expression]:
    """3 m² as 300 cm²."""
    measure, target = _conversion(occasion)
    if measure is None or target[-1:] not in _POWERS:
        return
    size, unit = _number(measure), unit_of(measure)
    factor = conversion(unit, target)
    if size is None or factor is None:
        return
    up = max(factor, 1 / factor)
    length = next((n for n in range(isqrt(int(up)) + 1) if n ** _POWERS[target[-1]] == up), None)
    if length and length > 1:
        yield Number(size * length if factor > 1 else size / length)


def _conversion(occasion: Occasion) -> tuple[Expression | None, str]:
    """The measure to be converted and its new unit."""
    match occasion.task:
        case WriteAs(Measured() as measure, form):
            return measure, form
    if occasion.part.strand == "ratio and measures":
        from paperaudit.model.reckoning import Reckoning

        task = occasion.task
        if isinstance(task, Reckoning) and task.kind == "conversion":
            return task.one("measure"), task.wanted[0].removeprefix("measure in ")
    return None, ""


MEASURE_ERRORS = (
    ExpectedError(
        "percentage of the new value",
        49,
        "takes the percentage of the new value where it is of the old one",
        "examiners' reports",
        _Reckoned(("changed by percentages",), ("original",), _on_the_new_value),
        {"text": "After a 20% discount, a coat costs R360. Find the original price."},
        "R432",
    ),
    ExpectedError(
        "percentages added",
        50,
        "adds the percentages of changes that follow one another",
        "Ryan and Williams 2007",
        _Reckoned(("compound interest",), ("final", "interest"), _without_growth_of_growth),
        {"text": "R100 is invested at 10% per year compound interest for 2 years. Find the final amount."},
        "R120",
    ),
    ExpectedError(
        "multiplying makes larger",
        47,
        "divides by a number below 1 where it is to be multiplied",
        "Bell, Swan and Taylor 1981; Fischbein 1985",
        _Reckoned(("direct proportion",), ("second amount",), _divided_below_one),
        {"text": "1 kg of rice costs R12. How much does 0.6 kg of rice cost?"},
        "R20",
    ),
    ExpectedError(
        "area like a length",
        52,
        "enlarges an area by the factor of the lengths",
        "De Bock, Verschaffel and Janssens 1998",
        _Reckoned(("map scale",), ("real size", "size on the map"), _area_like_a_length),
        {"text": "A model of a deck is built to a scale of 1 : 20. The area of the model is 6 cm²."
                 " Find the area of the real deck in cm²."},
        "120 cm²",
    ),
    ExpectedError(
        "volume like a length",
        52,
        "enlarges a volume or a surface by the factor of the lengths",
        "De Bock, Verschaffel and Janssens 1998",
        _Reckoned(
            ("similar solids",),
            ("larger volume", "smaller volume", "larger surface area", "smaller surface area"),
            _volume_like_a_length,
        ),
        {"text": "Two similar cylinders have heights 4 cm and 6 cm. The volume of the smaller cylinder is 80 cm³."
                 " Find the volume of the larger cylinder."},
        "120 cm³",
    ),
    ExpectedError(
        "unit of length",
        56,
        "converts an area or a volume by the factor of the lengths",
        "Ryan and Williams 2007",
        _unit_of_length,
        {"text": "How many cm² are there in 3 m²?"},
        "300 cm²",
    ),
    ExpectedError(
        "hours as decimals",
        59,
        "reads hours and minutes as a decimal number of hours",
        "Ryan and Williams 2007",
        _Reckoned(("motion",), ("speed", "distance"), _hours_as_decimals),
        {"text": "A car travels 184 km in 2 h 30 min. Find its average speed in km/h."},
        "80 km/h",
    ),
    ExpectedError(
        "visible faces",
        58,
        "counts the faces that are seen",
        "Battista and Clements 1996",
        _Reckoned(("cuboid",), ("volume",), _visible_faces),
        {"text": "A cuboid measures 2 cm by 3 cm by 4 cm. Find its volume."},
        "26 cm³",
    ),
)  # fmt: skip
"""Rows 47, 49, 50, 52, 56, 58 and 59 of the table of documented errors."""
