"""Conditions and events in the words of a line of working: even, red, not a king."""

from paperaudit.model.chance_task import Both, Condition, Either, Is
from paperaudit.strands.statistics.lines import shown

_SIGNS = {"more": "more than", "less": "less than", "at least": "at least", "at most": "at most",
          "multiple": "multiple of", "factor": "factor of", "equal": ""}  # fmt: skip


def said(condition: Condition) -> str:
    """A condition as it stands in P(…).

    >>> from fractions import Fraction
    >>> said(Is("multiple", number=Fraction(3)))
    'multiple of 3'
    """
    match condition:
        case Either(options):
            return " or ".join(map(said, options))
        case Both(conditions):
            joint = " " if all(isinstance(one, Is) and one.what == "named" for one in conditions) else " and "
            return joint.join(map(said, conditions))
        case Is(what, name, number, upper, negated):
            if what == "named":
                text = name
            elif what == "between":
                text = f"{shown(number)} to {shown(upper)}"
            elif what in _SIGNS:
                text = f"{_SIGNS[what]} {shown(number)}".strip()
            else:
                text = what
            return f"not {text}" if negated else text
