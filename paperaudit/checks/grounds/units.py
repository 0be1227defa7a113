"""The units of stated answers and of given sizes, beside those that belong there."""

from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache

from paperaudit.errors import ExpressionNotRead
from paperaudit.maths.equality import compare_answers
from paperaudit.maths.measure import UnitClash, bare
from paperaudit.maths.stated import Stated, read_stated
from paperaudit.maths.units import unit_named
from paperaudit.model.ask import Ask, Find
from paperaudit.model.audited import AuditedPart
from paperaudit.model.derivation import Agreement, Answer, Derived, Several
from paperaudit.model.expression import (
    AngleAt,
    AngleOf,
    AreaOf,
    Expression,
    LengthOf,
    Number,
    PerimeterOf,
    leaves,
)
from paperaudit.model.fact import Given, Holds


@dataclass(frozen=True, slots=True)
class Pair:
    """A value of the key beside the derived answer that it stands for."""

    answer: Answer
    derived: Expression
    derived_unit: str
    stated: Expression
    stated_unit: str

    def units_clash(self) -> bool:
        """Whether both units are known and measure different things."""
        ours, theirs = dimension_named(self.derived_unit), dimension_named(self.stated_unit)
        return bool(ours and theirs) and ours != theirs

    def same_number(self) -> bool:
        """Whether the two are equal as bare numbers."""
        compared = compare_answers(self.stated, (Answer("", self.derived),), _BY_VALUE_ALONE)
        return compared.agreement is Agreement.AGREES


_BY_VALUE_ALONE = Ask(Find(()), "")


def only_the_unit_clashes(part: AuditedPart) -> bool:
    """Whether the key has the right numbers throughout, and some unit of another kind than the answer's."""
    held = pairs(part)
    return any(pair.units_clash() for pair in held) and all(pair.same_number() for pair in held)


def pairs(part: AuditedPart) -> tuple[Pair, ...]:
    """The values of the key beside the derived ones, in order; none where they cannot be told apart."""
    outcome, key = part.outcome, part.part.answer
    if key is None or part.part.options or not isinstance(outcome, Derived | Several):
        return ()
    letters = frozenset(answer.letter for answer in outcome.answers if answer.letter)
    try:
        stated = read_key(key.text, len(outcome.answers), letters)
        if len(stated) != len(outcome.answers):
            return ()
        return tuple(
            _pair(answer, value.value)
            for answer, value in zip(outcome.answers, stated, strict=True)
            if answer.value is not None
        )
    except UnitClash:
        return ()


@lru_cache(maxsize=1024)
def read_key(text: str, count: int, letters: frozenset[str] = frozenset()) -> tuple[Stated, ...]:
    """The values that a key or an option states, none where it is not read; kept, as several checks ask for them."""
    try:
        return read_stated(text, count, letters)
    except ExpressionNotRead:
        return ()


def _pair(answer: Answer, stated: Expression) -> Pair:
    assert answer.value is not None
    derived, derived_unit = bare(answer.value)
    value, unit = bare(stated)
    return Pair(answer, derived, derived_unit, value, unit)


@dataclass(frozen=True, slots=True)
class GivenSize:
    """A given that states a size in numbers: the quantity, and the unit that it is stated in, "" for none."""

    given: Given
    quantity: Expression
    unit: str


def given_sizes(part: AuditedPart) -> Iterator[GivenSize]:
    """Every given of the kind AB = 7.5 cm; sums, ratios and letters are left aside."""
    for given in part.reading.givens:
        for fact in given.facts:
            if isinstance(fact, Holds) and fact.relation.sign == "=":
                quantity, size = fact.relation.left, fact.relation.right
                if isinstance(quantity, AngleOf | AngleAt | LengthOf | AreaOf | PerimeterOf) and _is_number(size):
                    try:
                        yield GivenSize(given, quantity, bare(size)[1])
                    except UnitClash:
                        continue


def _is_number(size: Expression) -> bool:
    """Whether a size is a number with or without a unit, and no other quantity or letter is in it."""
    return all(isinstance(leaf, Number) for leaf in leaves(size))


def dimension_of(quantity: Expression) -> str:
    """What a quantity's unit must measure: "angle", "length" or "area"; "" for what is none."""
    match quantity:
        case AngleOf() | AngleAt():
            return "angle"
        case LengthOf() | PerimeterOf():
            return "length"
        case AreaOf():
            return "area"
        case _:
            return ""


def dimension_named(unit: str) -> str:
    """What a unit measures, "" where it is not known."""
    known = unit_named(unit)
    return known.dimension if known else ""
