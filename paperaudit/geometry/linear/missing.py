"""Which one given would settle a size that the paper leaves open."""

from fractions import Fraction

from paperaudit.geometry.figure.figure import Size
from paperaudit.geometry.linear.examine import Settled
from paperaudit.geometry.linear.theory import close
from paperaudit.geometry.theorems.theorem import Instance
from paperaudit.maths.linear import LinearForm
from paperaudit.model.expression import AngleOf, ArcOf, LengthOf


def _tells_the_same(settled: Settled, form: LinearForm[Size], target: LinearForm[Size]) -> bool:
    """Whether a size is equal to the target or its supplement, so that giving it would give the answer away."""
    return any(settled.theory.value(form.plus(target, share)) is not None for share in (Fraction(1), Fraction(-1)))


def missing_given(settled: Settled, target: LinearForm[Size]) -> Size | None:
    """A size other than the target whose value would settle it: angles that the paper names come first.

    None where no single size does.
    """
    arrangement = settled.arrangement
    named = [
        arrangement.canonical(size) for size in arrangement.figure.fixed_names if not arrangement.is_straight(size)
    ]
    every = [
        size
        for instance in settled.found
        for size in instance.relation.terms
        if isinstance(size, AngleOf | ArcOf | LengthOf)
    ]
    asked = set(arrangement.canonical_form(target).terms)
    for size in dict.fromkeys([*named, *every]):
        form: LinearForm[Size] = LinearForm.of(size)
        if size in asked or (isinstance(size, AngleOf) and size.reflex) or settled.theory.value(form) is not None:
            continue
        if _tells_the_same(settled, form, target):
            continue
        stated = Instance(
            "given", (), form - LinearForm.number(Fraction(arrangement.measured(size)).limit_denominator(1000))
        )
        if close(arrangement, (*settled.found, stated)).value(target) is not None:
            return size
    return None
