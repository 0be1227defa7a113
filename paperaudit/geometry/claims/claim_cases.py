"""Whether a claim holds in the figures that the givens allow, and the figures that show that it need not."""

from collections.abc import Iterable, Sequence
from dataclasses import replace
from enum import Enum
from fractions import Fraction

from paperaudit.geometry.claims.claim_forms import claims_of, gap
from paperaudit.geometry.coordinates.arrangement import Arrangement
from paperaudit.geometry.coordinates.drawn import FIRST_SEEDS, MORE_SEEDS
from paperaudit.geometry.coordinates.realise import realise
from paperaudit.geometry.figure.build import FigureBuilder
from paperaudit.geometry.figure.figure import Balance, Figure
from paperaudit.geometry.figure.incidence import Unclear
from paperaudit.geometry.figure.sketch import FROM_SKETCH
from paperaudit.model.expression import Expression, Number, Product
from paperaudit.model.fact import Fact, Given

HOLDS_WITHIN = 1e-8
"""Share of the sizes in a claim within which it holds on a drawing that is exact to 1e-9."""
FAILS_FROM = 1e-6
"""Share from which it fails there."""
FAILS_ROUNDED = 1e-2
"""The same where the givens hold only once their decimals are rounded."""


APART = (Fraction(7, 10), Fraction(13, 10), Fraction(9, 10))
"""Shares of one size that another one is drawn to be."""


class Truth(Enum):
    """What drawings say of a claim."""

    HOLDS = "holds in every one"
    FAILS = "fails in every one"
    OPEN = "holds in some"
    UNCLEAR = "too near to tell"


def samples(figure: Figure, settled: Iterable[Arrangement]) -> list[Arrangement]:
    """Figures that meet every given: those examined, and more from the same starts."""
    found = list(settled)
    for arrangement in tuple(found):
        drawings = realise(arrangement.figure, FIRST_SEEDS)
        found += [Arrangement(arrangement.figure, drawing) for drawing in drawings]
    return found


def more_samples(figure: Figure) -> list[Arrangement]:
    """Further figures that meet every given, for a claim that holds in the first ones and was not proved."""
    return [Arrangement(figure, drawing) for drawing in realise(figure, MORE_SEEDS)]


def pulled_apart(arrangement: Arrangement, pairs: Iterable[tuple[Expression, Expression]]) -> list[Arrangement]:
    """Figures that meet every given in which two sizes are unequal that a claim says to be equal."""
    figure = arrangement.figure
    for one, two in pairs:
        for share in APART:
            condition = Balance(one, Product((Number(share), two), "×"), FROM_SKETCH)
            pulled = replace(figure, conditions=(*figure.conditions, condition))
            drawings = realise(pulled, FIRST_SEEDS, (arrangement.drawing,))
            if drawings:
                return [Arrangement(figure, drawings[0])]
    return []


def gaps(fact: Fact, builder: FigureBuilder, drawn: Sequence[Arrangement]) -> list[float]:
    """For each drawing, how far it is from what a fact claims."""
    return [
        max(gap(claim, one) for claim in claims_of(fact, builder, one)) if _any(fact, builder, one) else 0.0
        for one in drawn
    ]


def _any(fact: Fact, builder: FigureBuilder, one: Arrangement) -> bool:
    return next(claims_of(fact, builder, one), None) is not None


def truth(found: Sequence[float], rounded: bool = False) -> Truth:
    """What the gaps of a claim in the drawings say; those of a `rounded` figure say less."""
    fails_from = FAILS_ROUNDED if rounded else FAILS_FROM
    if any(HOLDS_WITHIN < off < fails_from for off in found):
        return Truth.UNCLEAR
    failing = sum(off >= fails_from for off in found)
    if not failing:
        return Truth.HOLDS
    return Truth.FAILS if failing == len(found) else Truth.OPEN


def with_claim(
    givens: tuple[Given, ...], fact: Fact, text: str, sketch: tuple[tuple[str, float, float], ...]
) -> Figure | None:
    """The figure of the givens in which the claim is given too; None where it cannot be built."""
    try:
        return FigureBuilder((*givens, Given(text, (fact,)))).figure(sketch)
    except Unclear:
        return None
