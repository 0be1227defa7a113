"""Properties of integers proved in letters: a common factor, or every case of a remainder; false ones by an example."""

from collections.abc import Iterator
from fractions import Fraction
from itertools import product
from math import gcd

from paperaudit.errors import BudgetExceeded
from paperaudit.maths.algebra.expanding import expanded_lines
from paperaudit.maths.algebra.factorising import factors_of
from paperaudit.maths.algebra.terms import (
    NotTerms,
    Term,
    Terms,
    added,
    degree,
    expression_of,
    letters_in,
    number_terms,
    scaled,
    terms_of,
    value_at,
    written,
)
from paperaudit.maths.exact import rational_value
from paperaudit.maths.integer_claims import has_property
from paperaudit.maths.number_forms import whole_or_fraction
from paperaudit.maths.primes import factors, powers, prime_factors
from paperaudit.maths.write import write
from paperaudit.model.algebra_task import Identity
from paperaudit.model.derivation import Answer, Derived
from paperaudit.model.expression import Expression, Letter, Number, Product, Sum, letters_of
from paperaudit.model.proof_task import EqualSums, IntegerClaim
from paperaudit.model.reading import Reading
from paperaudit.strands.algebra.confirming import put_in
from paperaudit.strands.algebra.identities import show_identity
from paperaudit.strands.algebra.working import Working
from paperaudit.strands.finishing import ChecksDisagree

SKILL = "algebraic proof"
CONFIRMED = "worked out for every remainder that the integers can leave"
_MOST_TRIED, _LARGEST_CASE, _LARGEST_DIVISOR = 40_000, 7, 1000


def integer_claim(task: IntegerClaim, reading: Reading) -> Derived:
    """The proof in lines, or the first integers at which the claim fails."""
    working = Working(SKILL)
    terms = terms_of(task.expression)
    if any(term.coefficient.denominator > 1 for term in terms) or task.divisor > _LARGEST_DIVISOR:
        raise NotTerms(f"{write(task.expression)}, whose coefficients are not all integers")
    failing = _failing(task)
    if failing is not None:
        said = _example(task, failing)
        if _has_again(value_at(terms, failing), task) != task.never:
            raise ChecksDisagree(said)
        working.conclude(said, "false")
        return working.derived(Answer(f"false: {said}"), confirmed_by="worked out at these integers")
    if task.claim == "prime":
        raise NotTerms(f"primes, for which {write(task.expression)} is tried and not proved")
    if task.setting:
        working.say(task.setting, uses=())
    _expanded(task.expression, working)
    if task.claim == "square":
        _as_square(terms, working)
    elif task.never:
        _never(task, terms, working)
    else:
        _as_multiple(task, terms, working)
    return working.derived(Answer("proved"), confirmed_by=CONFIRMED)


def equal_sums(task: EqualSums, reading: Reading) -> Derived:
    """Both sides in the same integers, multiplied out."""
    found = show_identity(Identity(task.left, task.right), reading)
    working = Working(SKILL)
    working.say(task.setting, uses=())
    for step in found.derivations[0].steps:
        working.say(step.statement, step.value, uses=step.uses or (task.setting,))
    return working.derived(*found.answers, confirmed_by=found.derivations[0].confirmed_by)


def _tried(task: IntegerClaim) -> Iterator[dict[str, Fraction]]:
    """Integers with every remainder by the divisor, simple ones first; some negative ones too."""
    letters = letters_of(task.expression)
    span = max(task.divisor, 100 if task.claim == "prime" else 12)
    if span ** len(letters) > _MOST_TRIED:
        raise BudgetExceeded("a claim about remainders by a large number")
    low = 1 if task.positive else -span
    sizes = [*range(max(low, 0), span + 2), *range(-1, low - 1, -1)]
    if len(letters) > 1:
        sizes = sizes[: span + 1]
    for numbers in product(sizes, repeat=len(letters)):
        yield dict(zip(letters, map(Fraction, numbers), strict=True))


def _failing(task: IntegerClaim) -> dict[str, Fraction] | None:
    """Integers at which the claim is false; polynomials repeat their remainders, so that a span of them is all."""
    for values in _tried(task):
        value = rational_value(task.expression, values)
        if value is not None and has_property(value, task.claim, task.divisor, task.remainder) == task.never:
            return values
    return None


def _has_again(value: Fraction, task: IntegerClaim) -> bool:
    """The property once more, by what such a number is made of."""
    if task.claim == "positive":
        return value == abs(value) != 0
    if value.denominator != 1:
        return False
    whole = int(value)
    match task.claim:
        case "prime":
            return whole > 1 and factors(whole) == (1, whole)
        case "square":
            return whole == 0 or (whole > 0 and all(count % 2 == 0 for _, count in powers(prime_factors(whole))))
    return Fraction(whole - task.remainder, task.divisor).denominator == 1


def _example(task: IntegerClaim, values: dict[str, Fraction]) -> str:
    said = ", ".join(f"{name} = {write(whole_or_fraction(value))}" for name, value in values.items())
    value = value_at(terms_of(task.expression), values)
    verb = "is" if task.never else "is not"
    return f"for {said}, {write(task.expression)} = {write(whole_or_fraction(value))}, which {verb} {task.said}"


def _expanded(expression: Expression, working: Working) -> None:
    lines = [write(line) for line in expanded_lines(expression)]
    lines = list(dict.fromkeys(lines))
    if len(lines) > 1:
        working.say(f"{lines[0]} = {lines[1]}", lines[1])
        for line in lines[2:]:
            working.say(f"= {line}", line)
    else:
        working.say(lines[0], lines[0])


def _as_square(terms: Terms, working: Working) -> None:
    """4n² + 12n + 9 = (2n + 3)²."""
    found = factors_of(terms)
    front = found.front
    counts = {factor: found.factors.count(factor) for factor in found.factors}
    size = front.coefficient
    root = int(size**0.5) if size >= 0 else 0
    if root * root != size or any(count % 2 for count in counts.values()) or any(e % 2 for _, e in front.powers):
        raise NotTerms(f"{written(terms)}, which is not seen to be a square")
    inside: Terms = (Term(Fraction(root), tuple((name, e // 2) for name, e in front.powers)),)
    for factor, count in counts.items():
        for _ in range(count // 2):
            inside = terms_of(Product((expression_of(inside), expression_of(factor))))
    for values in ({name: Fraction(size + at) for at, name in enumerate(letters_in(terms))} for size in range(9)):
        if value_at(inside, values) ** 2 != value_at(terms, values):
            raise ChecksDisagree(f"{written(terms)} as the square of {written(inside)}")
    text = written(inside)
    bracketed = f"({text})" if len(inside) > 1 or inside[0].coefficient != 1 else text
    working.say(f"= {bracketed}²")
    working.conclude(f"{text} is an integer, so this is a square number", "proved")


def _as_multiple(task: IntegerClaim, terms: Terms, working: Working) -> None:
    """A common factor that does it, or what is left of it in every case."""
    number, remainder = task.divisor, task.remainder
    rest = added(terms, number_terms(-remainder))
    common = 0
    for term in rest:
        common = gcd(common, int(term.coefficient))
    share = gcd(common, number) if rest else number
    _confirm(task, share, scaled(rest, Fraction(1, share)), remainder)
    if share == number or not rest:
        inside = scaled(rest, Fraction(1, number))
        working.say(f"= {_multiple(number, inside)}{_tail(remainder)}")
        working.conclude(f"{written(inside)} is an integer, so this is {task.said}", "proved")
        return
    inside = scaled(rest, Fraction(1, share))
    if share > 1 or remainder:
        front = _multiple(share, inside) if share > 1 else written(inside)
        working.say(f"= {front}{_tail(remainder)}")
    for part in _coprime_parts(number // share):
        _cases(inside, part, working)
    conclusion = f"so {written(inside)} is a multiple of {number // share}"
    if share > 1 or remainder:
        conclusion += f" and the whole is {task.said}"
    working.conclude(conclusion, "proved")


def _confirm(task: IntegerClaim, share: int, inside: Terms, remainder: int) -> None:
    """What is taken out, put back at integers, must be the expression as it is claimed of."""
    for values in _tried(task):
        if share * value_at(inside, values) + remainder != rational_value(task.expression, values):
            raise ChecksDisagree(f"{write(task.expression)} as {_multiple(share, inside)}{_tail(remainder)}")


def _multiple(number: int, inside: Terms) -> str:
    """3(n + 1), 4n."""
    if len(inside) == 1 and inside[0].powers and inside[0].coefficient == 1:
        return write(Product((Number(Fraction(number)), expression_of(inside))))
    return f"{number}({written(inside)})"


def _tail(remainder: int) -> str:
    return "" if not remainder else f" + {remainder}" if remainder > 0 else f" − {-remainder}"


def _coprime_parts(number: int) -> list[int]:
    parts = [prime**count for prime, count in powers(prime_factors(number))]
    if max(parts) > _LARGEST_CASE:
        raise NotTerms(f"a multiple of {max(parts)} in {max(parts)} cases")
    return parts


def _cases(terms: Terms, part: int, working: Working) -> None:
    """n = 2k and n = 2k + 1, one after the other."""
    letters = letters_in(terms)
    if len(letters) != 1 or degree(terms) > 6:
        raise NotTerms(f"{written(terms)} by cases")
    (letter,) = letters
    name = next(other for other in "kmpqt" if other != letter)
    start = working.steps[-1].statement
    for remainder in range(part):
        value: Expression = Product((Number(Fraction(part)), Letter(name)))
        if remainder:
            value = Sum((value, Number(Fraction(remainder))))
        put = put_in(expression_of(terms), letter, value)
        result = terms_of(put)
        inside = scaled(result, Fraction(1, part))
        if any(term.coefficient.denominator > 1 for term in inside):
            raise ChecksDisagree(f"{written(terms)} in the case {letter} = {write(value)}")
        line = f"{letter} = {write(value)}: {written(terms)} = {written(result)} = {_multiple(part, inside)}"
        working.say(line, uses=(start,))


def _never(task: IntegerClaim, terms: Terms, working: Working) -> None:
    """A remainder that is the same for every integer and not 0."""
    remainders = {int(value_at(terms, values)) % task.divisor for values in _tried(task)}
    if len(remainders) != 1:
        raise NotTerms(f"{write(task.expression)}, whose remainders are different ones")
    (remainder,) = remainders
    inside = scaled(added(terms, number_terms(-remainder)), Fraction(1, task.divisor))
    _confirm(task, task.divisor, inside, remainder)
    if any(term.coefficient.denominator > 1 for term in inside):
        raise NotTerms(f"{write(task.expression)} by cases")
    working.say(f"= {_multiple(task.divisor, inside)}{_tail(remainder)}")
    working.conclude(f"it leaves the remainder {remainder}, so it is never {task.said}", "proved")
