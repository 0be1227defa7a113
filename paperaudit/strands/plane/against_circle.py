"""Whether a point lies inside a circle, on it or outside."""

from fractions import Fraction

from paperaudit.maths.plane_curves import plane_terms
from paperaudit.model.coordinates_task import OfCurve
from paperaudit.model.derivation import Answer, Derived
from paperaudit.model.reading import Reading
from paperaudit.strands.numbers.working import Working, require
from paperaudit.strands.plane.places import equation_for, fraction_text, in_brackets, pair_text, placed
from paperaudit.strands.plane.round import circle_of


def position(task: OfCurve, reading: Reading) -> Derived:
    """The square of the distance from the centre against the square of the radius."""
    relation, used = equation_for(task.curve, reading)
    assert task.at is not None
    place = placed(task.at, reading)
    x, y, square = circle_of(relation)
    working = Working("coordinates", tuple(dict.fromkeys((*used, *place.texts))))
    working.say(f"centre {pair_text(x, y)}, r² = {fraction_text(square)}")
    away = (place.x - x) ** 2 + (place.y - y) ** 2
    across, up = (f"({fraction_text(a)} − {in_brackets(b)})²" for a, b in ((place.x, x), (place.y, y)))
    working.say(f"d² = {across} + {up} = {fraction_text(away)}", fraction_text(away))
    where = "inside" if away < square else "outside" if away > square else "on the circle"
    sign = "<" if away < square else ">" if away > square else "="
    working.conclude(f"d² {sign} r²: {where}", where)
    terms = plane_terms(relation)
    total = sum((share * place.x**i * place.y**j for (i, j), share in terms.items()), Fraction(0))
    total *= 1 if terms[(2, 0)] > 0 else -1
    require((total > 0, total < 0) == (away > square, away < square), "on which side of the circle the point is")
    return working.derived(Answer(where, kind="side"), confirmed_by="the sign of the equation's left side at the point")
