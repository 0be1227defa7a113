"""Decimals of dozens of places, which a pupil leaves in the calculator, cut off in the lines of a working."""

import re
from dataclasses import replace

from paperaudit.model.derivation import Derived, Outcome, Step

_LONG = re.compile(r"(\d+\.0*\d{4})\d{7,}(?!\d*…)")
"""More than ten places behind the leading zeros."""


def cut_off(text: str) -> str:
    """A line with every long decimal cut off behind four figures.

    >>> cut_off("= 1.093806897670983 − 1")
    '= 1.09380… − 1'
    >>> cut_off("= 0.52200625")
    '= 0.52200625'
    """
    return _LONG.sub(r"\1…", text)


def with_short_lines(outcome: Outcome) -> Outcome:
    """The outcome with long decimals cut off in its lines, unless such a one is asked for."""
    if not isinstance(outcome, Derived) or any(_LONG.search(answer.text) for answer in outcome.answers):
        return outcome
    return replace(
        outcome,
        derivations=tuple(replace(one, steps=tuple(map(_short, one.steps))) for one in outcome.derivations),
    )


def _short(step: Step) -> Step:
    return replace(
        step, statement=cut_off(step.statement), uses=tuple(map(cut_off, step.uses)), value=cut_off(step.value)
    )
