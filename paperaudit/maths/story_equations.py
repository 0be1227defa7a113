"""Turns what a story says into the letters and equations that a pupil sets up."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from fractions import Fraction

from paperaudit.errors import NoValue, PaperauditError
from paperaudit.maths.exact import rational_value
from paperaudit.maths.number_forms import as_decimal, whole_or_fraction
from paperaudit.maths.write import write
from paperaudit.model.expression import (
    Expression,
    Letter,
    Negative,
    Number,
    NumberForm,
    Power,
    Product,
    Quotient,
    Relation,
    Sum,
    letters_of,
)
from paperaudit.model.story import (
    Added,
    Amount,
    Claim,
    Consecutive,
    Divided,
    Extreme,
    Figures,
    Gap,
    Job,
    Later,
    Mover,
    Multiplied,
    Named,
    NotLess,
    Said,
    Same,
    Scaled,
    Size,
    Squared,
    StoryTask,
    Stream,
    Taken,
)

_LETTERS = "xyzwuv"
_TWO = Number(Fraction(2))


@dataclass(frozen=True, slots=True)
class Formed:
    """What a pupil writes before solving.

    `letters` gives each free size its letter, by key; `named` has the expression of every size of the story;
    `defined` the sizes that a sentence expresses by others, in order and as it has them; `equations` the rest.
    """

    letters: dict[str, str]
    named: dict[str, Expression]
    defined: tuple[tuple[str, Said, Expression], ...]
    equations: tuple[tuple[Relation, Said], ...]


def formed(task: StoryTask) -> Formed:
    """The letters and equations of a story."""
    found = _definitions(task)
    free = [sought.key for sought in task.sought if sought.key not in found]
    letters = dict(zip(free, _LETTERS, strict=False)) if len(free) <= len(_LETTERS) else {}
    named: dict[str, Expression] = {key: Letter(letter) for key, letter in letters.items()}
    for key in found:
        _put(key, found, named)
    equations: list[tuple[Relation, Said]] = []
    for said, sides in _claims(task):
        if not any(said is by and sides == own for by, own, _ in found.values()):
            equations.append((Relation(expressed(sides[0], named), "=", expressed(sides[1], named)), said))
    defined = tuple((key, found[key][0], expressed(found[key][2], named)) for key in _in_order(found))
    return Formed(letters, named, defined, tuple(equations))


def read_as(task: StoryTask) -> str:
    """What a story was taken for, in mathematics, for the user to see."""
    form = formed(task)
    meaning = {sought.key: sought.meaning for sought in task.sought}
    lines = [f"{letter} = {meaning[key]}" for key, letter in form.letters.items()]
    lines += [f"{meaning[key]} = {write(form.named[key])}" for key, _, _ in form.defined]
    lines += [write(relation) for relation, _ in form.equations]
    return f"{'; '.join(lines)}; wanted: {task.in_words()}"


_Found = dict[str, tuple[Said, tuple[Size, Size], Size]]


def _claims(task: StoryTask) -> Iterator[tuple[Said, tuple[Size, Size]]]:
    for said in task.said:
        for sides in sides_of(said.claim):
            yield said, sides


def _definitions(task: StoryTask) -> _Found:
    """The sizes that a claim expresses by others: each once, none by itself, told ones first."""
    found: _Found = {}
    claims = list(_claims(task))
    told = [one for one in claims if any(isinstance(side, Amount) for side in one[1])]
    for said, (left, right) in (*told, *claims):
        if any(said is by and (left, right) == own for by, own, _ in found.values()):
            continue
        for name, size in ((left, right), (right, left)):
            if isinstance(name, Named) and name.key not in found and name.key not in _needs(size, found):
                found[name.key] = (said, (left, right), size)
                break
    return found


def _needs(size: Size, found: _Found) -> set[str]:
    """The keys that a size rests on, through definitions."""
    keys: set[str] = set()
    for key in keys_of(size):
        keys |= {key} | (_needs(found[key][2], found) if key in found else set())
    return keys


def _in_order(found: _Found) -> tuple[str, ...]:
    """The keys of definitions, each behind those that it rests on, told numbers first."""
    order: list[str] = []

    def put(key: str) -> None:
        for other in keys_of(found[key][2]):
            if other in found and other not in order:
                put(other)
        if key not in order:
            order.append(key)

    for key in sorted(found, key=lambda key: not isinstance(found[key][2], Amount)):
        put(key)
    return tuple(order)


def _put(key: str, found: _Found, named: dict[str, Expression]) -> None:
    if key in named:
        return
    size = found[key][2]
    for other in keys_of(size):
        if other in found:
            _put(other, found, named)
    named[key] = tidied(expressed(size, named))


def keys_of(size: Size) -> tuple[str, ...]:
    """The keys of the sizes that one is made of."""
    match size:
        case Named(key) | Later(key):
            return (key,)
        case Scaled(_, inner) | Squared(inner):
            return keys_of(inner)
        case Added(sizes):
            return tuple(key for one in sizes for key in keys_of(one))
        case Taken(one, other) | Multiplied(one, other) | Divided(one, other):
            return (*keys_of(one), *keys_of(other))
        case Figures(keys) | Extreme(keys):
            return keys
    return ()


def sides_of(claim: Claim) -> tuple[tuple[Size, Size], ...]:
    """The equations that a claim amounts to, as pairs of equal sizes."""
    match claim:
        case Same(left, right):
            return ((left, right),)
        case Consecutive(keys, step):
            steps = (Amount(Number(Fraction(step * at))) for at in range(1, len(keys)))
            return tuple((Named(key), Added((Named(keys[0]), by))) for key, by in zip(keys[1:], steps, strict=True))
        case NotLess():
            return ()
        case Gap():
            return (_gap(claim),)
        case Stream(speed, flow, direction, distance, time):
            along = Added((speed, flow)) if direction > 0 else Taken(speed, flow)
            return ((Multiplied(along, time), distance),)
        case Job(workers):
            shares: Size | None = None
            for alone, hours, sign in workers:
                share = Divided(hours, alone)
                shares = share if shares is None else Added((shares, share)) if sign > 0 else Taken(shares, share)
            assert shares is not None
            return ((shares, Amount(Number(Fraction(1)))),)


def _gap(gap: Gap) -> tuple[Size, Size]:
    """Opposite ways: the ways add up to what lies between; the same way: one way is the other and the start."""
    first, second = (_way(mover, gap.time) for mover in (gap.first, gap.second))
    if gap.first.direction != gap.second.direction:
        return Added((first, second)), _sum(gap.first.start, gap.second.start, gap.distance)
    return _sum(gap.first.start, first), _sum(gap.second.start, second, gap.distance)


def _way(mover: Mover, time: Size) -> Size:
    hours = time if _is_nothing(mover.late) else _after(time, mover.late)
    return Multiplied(mover.speed, hours)


def _after(time: Size, late: Size) -> Size:
    """The time on the road of somebody who leaves so much later, or earlier where that is negative."""
    if isinstance(late, Amount) and late.number.value < 0:
        return Added((time, Amount(replace(late.number, value=-late.number.value), late.unit)))
    return Taken(time, late)


def _sum(*sizes: Size) -> Size:
    kept = tuple(size for size in sizes if not _is_nothing(size))
    return Added(kept) if len(kept) > 1 else kept[0] if kept else Amount(Number(Fraction(0)))


def _is_nothing(size: Size) -> bool:
    return isinstance(size, Amount) and not size.number.value


def expressed(size: Size, named: Mapping[str, Expression]) -> Expression:
    """A size in the letters of its story, as a pupil writes it: 2(x + 3), x/2, 0.4x."""
    match size:
        case Amount(number):
            return number
        case Named(key):
            return named[key]
        case Later(key, years):
            return tidied(_plus(named[key], years))
        case Scaled(factor, inner):
            return _times(factor, expressed(inner, named))
        case Added(sizes):
            terms = [expressed(one, named) for one in sizes]
            return Sum(tuple(terms))
        case Taken(one, other):
            return Sum((expressed(one, named), Negative(expressed(other, named))))
        case Multiplied(one, other):
            return _product(expressed(one, named), expressed(other, named))
        case Divided(one, other):
            return Quotient(expressed(one, named), expressed(other, named))
        case Squared(inner):
            return Power(expressed(inner, named), _TWO)
        case Figures(keys):
            places = [Number(Fraction(10**place)) for place in reversed(range(1, len(keys)))]
            terms = [_product(place, named[key]) for place, key in zip(places, keys, strict=False)]
            return Sum((*terms, named[keys[-1]]))
        case Extreme():
            raise NoValue("the largest of sizes that are not known yet")


def _plus(base: Expression, number: Number) -> Expression:
    other = Number(abs(number.value), number.form, number.places)
    return Sum((base, Negative(other) if number.value < 0 else other)) if number.value else base


def _times(factor: Number, whole: Expression) -> Expression:
    if factor.form is NumberForm.PERCENT:
        factor = as_decimal(factor.value) or whole_or_fraction(factor.value)
    if factor.value.denominator > 1 and factor.form is not NumberForm.DECIMAL and letters_of(whole):
        above, below = (Number(Fraction(n)) for n in factor.value.as_integer_ratio())
        return Quotient(whole if above.value == 1 else _product(above, whole), below)
    return _product(factor, whole)


def _product(one: Expression, other: Expression) -> Expression:
    if isinstance(one, Number) and one.value == 1:
        return other
    if (isinstance(other, Number) and letters_of(one)) or (isinstance(other, Letter) and isinstance(one, Sum)):
        one, other = other, one
    factors = (*(one.factors if isinstance(one, Product) else (one,)), other)
    if isinstance(other, Letter) and factors[-2] == other:
        factors = (*factors[:-2], Power(other, _TWO))
        if len(factors) == 1:
            return factors[0]
    numbers = all(isinstance(factor, Number) for factor in factors)
    return Product(factors, "×" if numbers or isinstance(other, Number) else "")


def tidied(expression: Expression) -> Expression:
    """The expression of a size with like terms collected, where that is of the first degree in one letter or none."""
    from paperaudit.maths.linear_moves import Style, collect, expand_innermost, expression_of_side, has_brackets
    from paperaudit.maths.linear_terms import side_of

    if not letters_of(expression):
        value = rational_value(expression)
        return expression if value is None else as_decimal(value) or whole_or_fraction(value)
    if not isinstance(expression, Sum | Product) or len(letters_of(expression)) > 1:
        return expression
    try:
        side = side_of(expression)
        while has_brackets((side, side)):
            side = expand_innermost(side)
        collected = expression_of_side(collect(side), Style(True, ""))
    except PaperauditError:
        return expression
    return collected if len(write(collected)) <= len(write(expression)) else expression
