"""Direct and inverse proportion of letters: y = kx², y = k/√x."""

from collections.abc import Mapping
from decimal import Decimal
from fractions import Fraction

from paperaudit.errors import NoValue
from paperaudit.maths.write import write
from paperaudit.model.derivation import Answer, Case, Outcome, Several, StepKind
from paperaudit.model.expression import Expression, Letter, Negative, Number, Power, Product, Quotient, Relation, Root
from paperaudit.model.reading import Reading
from paperaudit.model.reckoning import Reckoning
from paperaudit.strands.numbers.working import Working, require
from paperaudit.strands.ratios.amounts_worked import simplest, size_of
from paperaudit.strands.ratios.ending import ended
from paperaudit.strands.ratios.plain_amounts import working_of
from paperaudit.strands.substitution import substituted

_CONFIRMED = "the constant of both pairs"


def in_letters(task: Reckoning, reading: Reading) -> Outcome:
    """The constant, the formula, or one letter for a value of the other; the constant of both pairs is compared."""
    assert reading.ask is not None
    working = working_of("proportion", reading)
    (name, first), (base, second), (_, power) = ((one.name, one.value) for one in task.amounts[:3])
    inverse = task.kind.startswith("inverse")
    k = _k(name, first, base, second, power, inverse, working)
    require(_pair_has(k, power, {name: first, base: second}, name, inverse), "the pair has another constant")
    wanted = task.wanted[0]
    if wanted == "k":
        return working.derived(ended(k, reading.ask, working, "k"), confirmed_by="the pair put back into the law")
    right = _right(k, power, inverse)
    if wanted == "formula":
        there, said = size_of(substituted(right, {base: second})), size_of(first)
        require(abs(there - said) <= abs(said) / 10**30, "the pair does not fit the formula")
        text = write(Relation(Letter(name), "=", right))
        working.conclude(text, text)
        return working.derived(
            Answer(text, right, name, kind="formula"), confirmed_by="the pair put back into the formula"
        )
    value = task.amounts[3].value
    if wanted == name:
        row = substituted(Quotient(k, power) if inverse else Product((k, power), "×"), {base: value})
        working.say(f"{name} = {write(row)}", write(row))
        result = simplest(row)
    else:
        reached = _reached(k, power, value, inverse, name, working)
        result = _base_of(power, reached)
        if _even(power) and "positive" not in task.details:
            return _both_signs(k, power, result, {name: value}, wanted, name, inverse, working)
    answer = ended(result, reading.ask, working, wanted)
    pair = {name: value, base: result} if wanted == base else {name: result, base: value}
    require(_pair_has(k, power, pair, name, inverse), "the two pairs have different constants")
    if wanted == base and "positive" not in task.details and isinstance(power, Power):
        other = {name: value, base: simplest(Negative(result))}
        require(not _pair_has(k, power, other, name, inverse), f"−{base} fits the law as well")
    return working.derived(answer, confirmed_by=_CONFIRMED)


def _k(
    name: str, first: Expression, base: str, second: Expression, power: Expression, inverse: bool, working: Working
) -> Expression:
    """The constant, with its lines."""
    k: Expression = Letter("k")
    right = Quotient(k, power) if inverse else Product((k, power))
    law = Relation(Letter(name), "=", right)
    working.say(write(law), write(law), working.used, StepKind.EQUATION)
    put_in = write(Relation(first, "=", substituted(right, {base: second})))
    working.say(put_in, put_in)
    at = substituted(power, {base: second})
    row = write(Product((first, at), "×") if inverse else Quotient(first, at))
    k = constant(first, at, inverse)
    if row != write(k):
        working.say(f"k = {row}", row)
    working.say(f"k = {write(k)}", write(k))
    return k


def constant(first: Expression, at: Expression, inverse: bool) -> Expression:
    """The constant of y = k·p or y = k/p from y and p."""
    return simplest(Product((first, at), "×") if inverse else Quotient(first, at))


def _right(k: Expression, power: Expression, inverse: bool) -> Expression:
    """The right side of the formula: 4x², 36/x², x²/2."""
    match k:
        case Number(value) if not inverse and value == 1:
            return power
        case Number(value) if value.denominator != 1:
            above: Expression = Number(Fraction(value.numerator))
            below: Expression = Number(Fraction(value.denominator))
            if inverse:
                return Quotient(above, Product((below, power)))
            return Quotient(power if value.numerator == 1 else Product((above, power)), below)
    return Quotient(k, power) if inverse else Product((k, power))


def _reached(
    k: Expression, power: Expression, value: Expression, inverse: bool, name: str, working: Working
) -> Expression:
    """What the power of the letter comes to for a value of the other."""
    turned = Quotient(k, power) if inverse else Product((k, power))
    put_in = write(Relation(value, "=", turned))
    working.say(put_in, put_in)
    row = Quotient(k, value) if inverse else Quotient(value, k)
    reached = simplest(row)
    if not isinstance(power, Letter):
        working.say(f"{write(power)} = {write(reached)}", write(reached))
    elif write(row) != write(reached):
        working.say(f"{write(power)} = {write(row)}", write(row))
    return reached


def _even(power: Expression) -> bool:
    return isinstance(power, Power) and isinstance(power.exponent, Number) and power.exponent.value == 2


def _base_of(power: Expression, reached: Expression) -> Expression:
    match power:
        case Letter():
            return reached
        case Root():
            return simplest(Power(reached, Number(Fraction(2))))
        case Power(_, Number(exponent)) if exponent in (2, 3):
            if exponent == 2 and size_of(reached) < 0:
                raise NoValue("a square would be negative")
            return simplest(Root(reached, int(exponent)))
    raise NoValue("this power is not undone")


def _both_signs(
    k: Expression,
    power: Expression,
    result: Expression,
    other: dict[str, Expression],
    wanted: str,
    name: str,
    inverse: bool,
    working: Working,
) -> Several:
    """A square is reached by two numbers."""
    values = (result, simplest(Negative(result)))
    answers = tuple(Answer(f"{wanted} = {write(value)}", value, wanted) for value in values)
    said = " or ".join(answer.text for answer in answers)
    working.conclude(said, said)
    for value in values:
        require(_pair_has(k, power, other | {wanted: value}, name, inverse), "the pairs have different constants")
    given = f"{name} = {write(other[name])}"
    cases = tuple(Case(f"{answer.text} gives {given}", (answer,)) for answer in answers)
    derived = working.derived(*answers, confirmed_by=_CONFIRMED)
    return Several(answers, cases, derived.derivations)


def _pair_has(k: Expression, power: Expression, pair: Mapping[str, Expression], name: str, inverse: bool) -> bool:
    """Whether a pair of values has the constant k."""
    at = size_of(substituted(power, dict(pair)))
    found = size_of(pair[name]) * at if inverse else size_of(pair[name]) / at
    return abs(found - size_of(k)) <= abs(found) / Decimal(10) ** 30
