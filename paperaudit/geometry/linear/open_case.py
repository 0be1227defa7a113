"""Sizes that the givens leave open: two figures that meet them all, measured."""

from fractions import Fraction

from paperaudit.geometry.coordinates.arrangement import Arrangement
from paperaudit.geometry.coordinates.freedom import holds_still
from paperaudit.geometry.figure.figure import Angular, Balance, Size, SizeRelation
from paperaudit.geometry.figure.notation import Notation
from paperaudit.geometry.figure.sketch import FROM_SKETCH
from paperaudit.geometry.figure.wanted import Wanted, positions
from paperaudit.geometry.linear.examine import Settled, in_degrees, measured_form, other_case, other_case_of
from paperaudit.geometry.linear.missing import missing_given
from paperaudit.maths.linear import LinearForm
from paperaudit.maths.write import write
from paperaudit.model.derivation import Case, NotDetermined, NotRead
from paperaudit.model.expression import AngleOf, Number


def open_case(settled: tuple[Settled, ...], wanted: list[Wanted], notation: Notation) -> NotDetermined | None:
    """Not determined, shown by two measured figures, where some arrangement can move so that a size changes."""
    for one in settled:
        for item in _unsettled(one, wanted):
            if holds_still(one.arrangement, _held(one.arrangement, item)):
                continue
            second = _second(one.arrangement, item)
            if second is None:
                continue
            missing = missing_given(one, item.form) if item.linear else None
            cases = tuple(_case(item, drawn, missing, notation) for drawn in (one.arrangement, second))
            return NotDetermined(cases, f"the size of {write(one.arrangement.name(missing))}" if missing else "")
    return None


def unreached(settled: tuple[Settled, ...], wanted: list[Wanted]) -> NotRead:
    """That no theorem leads to a size that the plane fixes, with its measure."""
    for one in settled:
        for item in _unsettled(one, wanted):
            name, about = write(item.expression), round(_measured(one.arrangement, item), 2)
            return NotRead(f"{name} measures about {about} in the drawing, but no theorem known here reaches it")
    return NotRead("no chain of school theorems that reaches what is asked was found")


def _unsettled(one: Settled, wanted: list[Wanted]) -> list[Wanted]:
    """What the linear theory of an arrangement leaves open."""
    return [item for item, value in zip(wanted, one.values, strict=True) if value is None or not item.linear]


def _held(arrangement: Arrangement, item: Wanted) -> SizeRelation | Balance:
    aim = Fraction(_measured(arrangement, item))
    if not item.linear:
        return Balance(item.expression, Number(aim), FROM_SKETCH)
    angular = all(isinstance(size, AngleOf) or in_degrees(arrangement.figure, size) for size in item.form.terms)
    return SizeRelation(item.form - LinearForm.number(aim), "angle" if angular else "length", FROM_SKETCH)


def _second(arrangement: Arrangement, item: Wanted) -> Arrangement | None:
    if item.linear:
        return other_case(arrangement, item.form)
    return other_case_of(arrangement, item.expression)


def _measured(arrangement: Arrangement, item: Wanted) -> float:
    return measured_form(arrangement, item.form) if item.linear else arrangement.measured(item.expression)


def _case(item: Wanted, drawn: Arrangement, missing: Size | None, notation: Notation) -> Case:
    angular = item.linear and all(
        isinstance(size, Angular) or in_degrees(drawn.figure, size) for size in item.form.terms
    )
    measured = f"{_measured(drawn, item):.1f}{'°' if angular else ''}"
    text = f"{write(item.expression)} = {measured}"
    if missing is not None:
        beside = f"{drawn.measured(missing):.1f}{'°' if isinstance(missing, Angular) else ''}"
        text += f" where {write(drawn.name(missing))} = {beside}"
    return Case(text, (), positions(drawn))
