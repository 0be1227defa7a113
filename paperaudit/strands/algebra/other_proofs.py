"""Expressions shown to be positive by their completed square, and counter-examples to false statements."""

from fractions import Fraction

from paperaudit.maths.algebra.roots import count_real_roots
from paperaudit.maths.algebra.terms import NotTerms, coefficients, degree, letters_in, negated, terms_of, value_at
from paperaudit.maths.exact import rational_value
from paperaudit.maths.integer_claims import fails_at, numbers_to_try
from paperaudit.maths.number_forms import whole_or_fraction
from paperaudit.maths.primes import prime_factors
from paperaudit.maths.write import write
from paperaudit.model.algebra_task import CompletedSquare
from paperaudit.model.derivation import Answer, Derived, Impossible
from paperaudit.model.expression import Expression, Negative, Number, letters_of
from paperaudit.model.proof_task import CounterExample, PositiveClaim
from paperaudit.model.reading import Reading
from paperaudit.strands.algebra.forms import completed_square
from paperaudit.strands.algebra.working import Working
from paperaudit.strands.finishing import ChecksDisagree
from paperaudit.strands.substitution import substituted

SKILL = "algebraic proof"


def positive_claim(task: PositiveClaim, reading: Reading) -> Derived:
    """A square is never negative, so a square and a positive number are positive; a false claim by an example."""
    terms = terms_of(task.expression)
    letters = letters_in(terms)
    if len(letters) != 1 or degree(terms) != 2:
        raise NotTerms(f"{write(task.expression)}, which is not quadratic in one letter")
    (letter,) = letters
    c, b, a = coefficients(terms, letter)
    sign = -1 if task.negative else 1
    at = -b / (2 * a)
    extreme = value_at(terms, {letter: at})
    word = "negative" if task.negative != task.zero else "positive"
    word = f"not {word}" if task.zero else word
    working = Working(SKILL)
    holds = sign * a > 0 and (sign * extreme > 0 or (task.zero and not extreme))
    if not holds:
        where = at if sign * a > 0 else _far(sign, a, b, c)
        value = value_at(terms, {letter: where})
        point, there = (write(whole_or_fraction(size)) for size in (where, value))
        said = f"for {letter} = {point} it is {there}, which is not {word}".replace("is not not", "is")
        working.conclude(said, "false")
        return working.derived(Answer(f"false: {said}"), confirmed_by="worked out at this number")
    _confirm_sign(coefficients(terms if sign > 0 else negated(terms), letter), task)
    found = completed_square(CompletedSquare(task.expression), reading)
    for step in found.derivations[0].steps:
        working.say(step.statement, step.value)
    form = found.answers[0].text
    compared = "≥" if sign > 0 else "≤"
    bound = write(whole_or_fraction(extreme))
    working.say(f"a square is never negative, so {form} {compared} {bound}", uses=(working.steps[-1].statement,))
    ending = f", and {bound} {'>' if sign > 0 else '<'} 0" if extreme else ""
    line = f"{write(task.expression)} {compared} {bound}{ending}, so it is {word} for every {letter}"
    working.conclude(line, "proved")
    return working.derived(Answer("proved"), confirmed_by="the number of real roots by Sturm's theorem, and a value")


def _far(sign: int, a: Fraction, b: Fraction, c: Fraction) -> Fraction:
    """A whole number at which the leading term decides."""
    return Fraction(int(abs(b / a) + abs(c / a)) + 2)


def _confirm_sign(numbers: list[Fraction], task: PositiveClaim) -> None:
    roots = count_real_roots(numbers)
    if roots > (1 if task.zero else 0) or numbers[0] < 0 or (not task.zero and not numbers[0]):
        raise ChecksDisagree(f"the sign of {write(task.expression)}")


def counter_example(task: CounterExample, reading: Reading) -> Derived | Impossible:
    """The first numbers at which the statement fails."""
    for values in numbers_to_try(task):
        if fails_at(task, values):
            break
    else:
        raise NotTerms(f"“{task.said}”, for which no counter-example was found among small numbers")
    working = Working(SKILL)
    said = ", ".join(f"{name} = {write(whole_or_fraction(value))}" for name, value in values.items())
    working.conclude(_shown(task, values, said), said)
    if not _fails_again(task, values):
        raise ChecksDisagree(f"the statement at {said}")
    return working.derived(Answer(said, kind="counter-example"), confirmed_by="worked out a second time in decimals")


def _fails_again(task: CounterExample, values: dict[str, Fraction]) -> bool:
    """By the decimal evaluator, and by division for primes."""
    from paperaudit.maths.near import near_value

    if task.relation is not None:
        left, right = (near_value(side, values) for side in (task.relation.left, task.relation.right))
        signs = {"=": left == right, "<": left < right, ">": left > right, "≤": left <= right, "≥": left >= right}
        return not signs.get(task.relation.sign, left != right)
    assert task.expression is not None
    size = int(near_value(task.expression, values))
    if task.claim == "prime":
        return size < 2 or len(prime_factors(size)) > 1
    if task.claim == "square":
        return size < 0 or all(one * one != size for one in range(size + 1))
    return size <= 0 if task.claim == "positive" else bool((size - task.remainder) % task.divisor)


def _shown(task: CounterExample, values: dict[str, Fraction], said: str) -> str:
    numbers: dict[str, Expression] = {name: _number(value) for name, value in values.items()}
    if task.relation is not None:
        left, right = task.relation.left, task.relation.right
        worked = [rational_value(side, values) for side in (left, right)]
        texts = [write(whole_or_fraction(value)) for value in worked if value is not None]
        return f"for {said}: {write(left)} = {texts[0]} and {write(right)} = {texts[1]}, so it is false"
    assert task.expression is not None
    value = rational_value(task.expression, values)
    assert value is not None
    text = write(whole_or_fraction(value))
    put_in = write(substituted(task.expression, numbers)) if letters_of(task.expression) else ""
    calculation = text if put_in in ("", text) else f"{put_in} = {text}"
    size = abs(int(value))
    factors = prime_factors(size) if task.claim == "prime" and size > 1 else ()
    product = f" = {factors[0]} × {size // factors[0]}" if len(factors) > 1 else ""
    return f"for {said}: {calculation}{product}, which is not {task.said}"


def _number(value: Fraction) -> Expression:
    size = Number(abs(value)) if value.denominator == 1 else whole_or_fraction(abs(value))
    return Negative(size) if value < 0 else size
