"""Exact sines, cosines and tangents of the angles that a school paper uses."""

from fractions import Fraction

from paperaudit.maths.surd import Surd

EXACT_ANGLES = {
    ("sin", 0): Surd({}),
    ("sin", 30): Surd.rational(Fraction(1, 2)),
    ("sin", 45): Surd({2: Fraction(1, 2)}),
    ("sin", 60): Surd({3: Fraction(1, 2)}),
    ("sin", 90): Surd.rational(1),
    ("tan", 0): Surd({}),
    ("tan", 30): Surd({3: Fraction(1, 3)}),
    ("tan", 45): Surd.rational(1),
    ("tan", 60): Surd({3: Fraction(1)}),
}
"""The exact values that a school paper uses, for angles up to 90°."""


def usual_angles(name: str) -> tuple[int, ...]:
    """The angles whose sine, cosine or tangent a pupil knows exactly, but 0°."""
    return tuple(degrees for degrees in (30, 45, 60, 90, 120, 135, 150) if not (name == "tan" and degrees == 90))


def exact_function(name: str, degrees: int) -> Surd | None:
    """The exact value of a function of a usual angle between 0° and 180°, None for any other.

    >>> exact_function("cos", 120)
    Surd({1: Fraction(-1, 2)})
    """
    if name == "cos":
        mirrored = exact_function("sin", abs(90 - degrees))
        return mirrored if mirrored is None or degrees <= 90 else -mirrored
    if degrees > 90:
        mirrored = exact_function(name, 180 - degrees)
        return mirrored if mirrored is None or name == "sin" else -mirrored
    return EXACT_ANGLES.get((name, degrees))
