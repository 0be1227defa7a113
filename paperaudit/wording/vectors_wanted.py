"""Sums of vectors that an ask names by their letters alone: "find 2a − b" beside a = (3, −1) and b = (−2, 4)."""

from dataclasses import replace
from fractions import Fraction

from paperaudit.model.ask import Find
from paperaudit.model.expression import Expression, Letter, Negative, Number, Product, Sum
from paperaudit.model.movement_task import OfVectors, Vector
from paperaudit.model.reading import Reading

_ONE = Number(Fraction(1))


def with_vectors(reading: Reading) -> Reading:
    """The reading with a sum of letters as one of vectors, where every given is a vector and names them all."""
    facts = [fact for given in reading.givens for fact in given.facts]
    if reading.ask is None or not isinstance(reading.ask.task, Find) or len(reading.ask.task.wanted) != 1:
        return reading
    if not facts or not all(isinstance(fact, Vector) for fact in facts):
        return reading
    (wanted,) = reading.ask.task.wanted
    names = {fact.name for fact in facts if isinstance(fact, Vector)}
    terms = tuple(map(_multiple, wanted.terms if isinstance(wanted, Sum) else (wanted,)))
    known = [one for one in terms if one is not None and one[1] in names]
    if len(known) < len(terms):
        return reading
    return replace(reading, ask=replace(reading.ask, task=OfVectors("vector", tuple(known))))


def _multiple(term: Expression) -> tuple[Expression, str] | None:
    """A multiple and the letter that it is of; None for anything else."""
    match term:
        case Letter(name):
            return _ONE, name
        case Negative(Letter(name)):
            return Negative(_ONE), name
        case Product((Number() as share, Letter(name))):
            return share, name
        case Negative(Product((Number() as share, Letter(name)))):
            return Negative(share), name
    return None
