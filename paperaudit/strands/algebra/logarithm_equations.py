"""Equations with logarithms of the letter: brought to one logarithm, undone, and every root tried in the arguments."""

from collections.abc import Callable, Iterator
from fractions import Fraction

from paperaudit.maths.algebra.logarithms import (
    ONE,
    LogTerm,
    has_logarithm,
    log_terms,
    one_base,
    powers_inside,
    raised,
    single_argument,
    total_of,
    worked_out,
)
from paperaudit.maths.algebra.ratios import has_letters_below
from paperaudit.maths.algebra.terms import NotTerms, degree, terms_of
from paperaudit.maths.exact import rational_value
from paperaudit.maths.number_forms import whole_or_fraction
from paperaudit.maths.parts import with_parts
from paperaudit.maths.write import write
from paperaudit.model.expression import (
    Euler,
    Expression,
    Letter,
    Logarithm,
    Negative,
    Number,
    Power,
    Quotient,
    Relation,
    Sum,
    letters_of,
    parts_of,
)
from paperaudit.strands.algebra.cleared import clear_fractions
from paperaudit.strands.algebra.confirming import number_at, put_in
from paperaudit.strands.algebra.roots import Roots, solve_polynomial
from paperaudit.strands.algebra.working import Working


def solve_logarithmic(relation: Relation, letter: str, working: Working) -> Roots:
    """The lines to the roots, those outside the domain rejected. Raises NotTerms where the form is another."""
    working.given(relation)
    sides = (relation.left, relation.right)
    logs = list(dict.fromkeys(log for side in sides for log in logarithms_in(side) if letter in letters_of(log)))
    if any(letter in letters_of(log.base) for log in logs):
        return _unknown_base(relation, letter, working)
    changed = _to_one_base(relation, logs, working)
    logs = list(dict.fromkeys(log for side in (changed.left, changed.right) for log in logarithms_in(side)))
    logs = [log for log in logs if letter in letters_of(log)]
    others = [log for side in (changed.left, changed.right) for log in logarithms_in(side) if log not in logs]
    if len(logs) == 1 and not (others and _is_sum(changed)):
        found = _in_one(changed, logs[0], letter, working)
    else:
        found = _joined(changed, letter, working)
    return _tried(relation, letter, found, working)


def logarithms_in(expression: Expression) -> Iterator[Logarithm]:
    """Every logarithm of an expression, from left to right."""
    if isinstance(expression, Logarithm):
        yield expression
    for part in parts_of(expression):
        yield from logarithms_in(part)


def _is_sum(relation: Relation) -> bool:
    """Whether both sides are sums of multiples of logarithms and numbers."""
    try:
        return bool([log_terms(side) for side in (relation.left, relation.right)])
    except NotTerms:
        return False


def _to_one_base(relation: Relation, logs: list[Logarithm], working: Working) -> Relation:
    """log₄ x as (1/2) log₂ x where the bases are powers of the smallest one."""
    bases = {log.base for log in logs}
    if len(bases) == 1:
        return relation
    sizes = {base: rational_value(base) for base in bases if not isinstance(base, Euler) and not letters_of(base)}
    if len(sizes) < len(bases) or any(size is None or size <= 1 for size in sizes.values()):
        raise NotTerms(f"{write(relation)}, with logarithms to several bases")
    if not sizes:
        raise NotTerms(f"{write(relation)}, with {' and '.join(map(write, logs)) or 'no logarithm of the letter'}")
    least = min(sizes, key=lambda base: sizes[base] or 0)
    shares = {base: worked_out(Logarithm(base, least)) for base in bases}
    if any(share is None for share in shares.values()):
        raise NotTerms(f"{write(relation)}, whose bases are not powers of one number")

    def changed(part: Expression) -> Expression:
        share = shares.get(part.base) if isinstance(part, Logarithm) else None
        if isinstance(part, Logarithm) and share is not None and part.base != least:
            return LogTerm(1 / share, Logarithm(part.argument, least)).expression()
        return with_parts(part, changed)

    for log in logs:
        if log.base != least:
            over = Quotient(Logarithm(log.argument, least), Logarithm(log.base, least))
            working.say(f"{write(log)} = {write(over)} = {write(changed(log))}")
    following = Relation(changed(relation.left), "=", changed(relation.right))
    working.say(following)
    return following


def _in_one(relation: Relation, log: Logarithm, letter: str, working: Working) -> Roots:
    """One logarithm in the equation, perhaps squared: an equation in u = log x."""
    if relation.left == log and not letters_of(relation.right):
        return _undone(log, relation.right, letter, working)
    name = next(other for other in "utvw" if other != letter)

    def replaced(part: Expression) -> Expression:
        return Letter(name) if part == log else with_parts(part, replaced)

    inner = Relation(replaced(relation.left), "=", replaced(relation.right))
    if letter in (*letters_of(inner.left), *letters_of(inner.right)):
        raise NotTerms(f"{write(relation)}, with {letter} outside the logarithm")
    if degree(terms_of(Sum((inner.left, Negative(inner.right))))) > 1:
        working.say(f"let {name} = {write(log)}: {write(inner)}")
        quiet, last = Working(working.skill), ""
        found = solve_polynomial(inner, name, quiet)
        for step in quiet.steps[1:]:
            last = working.say(step.statement)
        sources = (last,) if last else None
    else:
        quiet = Working(working.skill)
        found = solve_polynomial(inner, name, quiet)
        for step in quiet.steps[1:]:
            working.say(_with_log(step.statement, name, log))
        sources = None
    values: list[Expression] = []
    for value in found.values:
        if len(found.values) > 1:
            working.say(Relation(log, "=", value), uses=sources)
        values.extend(_undone(log, value, letter, working).values)
    return Roots(values)


def _with_log(line: str, name: str, log: Logarithm) -> str:
    """A line about u as one about log x."""
    text = write(log)
    return "".join(
        (" " if place and line[place - 1].isdecimal() else "") + text if character == name else character
        for place, character in enumerate(line)
    )


def _undone(log: Logarithm, value: Expression, letter: str, working: Working) -> Roots:
    """log₂ f(x) = 3, so f(x) = 2³."""
    size = rational_value(value)
    if size is None:
        raise NotTerms(f"{write(log)} = {write(value)}, which is no fraction")
    if log.argument != Letter(letter) or size.denominator > 1 or not isinstance(log.base, Euler):
        working.say(Relation(log.argument, "=", Power(log.base, whole_or_fraction(size))))
    return _solved(log.argument, raised(log.base, size), letter, working)


def _joined(relation: Relation, letter: str, working: Working) -> Roots:
    """Sums of logarithms to one base on both sides: each made one logarithm, then compared."""
    (left, number), (right, other) = log_terms(relation.left), log_terms(relation.right)
    base = one_base([*left, *right])
    if number or other:
        right = [LogTerm(-term.size, term.log) for term in right]
        left, right, number = [*left, *right], [], other - number
        working.say(Relation(total_of(left), "=", whole_or_fraction(number)))
    if not left or (not right and len(left) > 1 and all(term.size < 0 for term in left)):
        left, right = right, left
        left, number = [LogTerm(-term.size, term.log) for term in left], -number
    left, right = powers_inside(left), powers_inside(right)
    working.say(Relation(total_of(left), "=", total_of(right, number)))
    one = single_argument(left)
    if right:
        two = single_argument(right)
        working.say(Relation(Logarithm(one, base), "=", Logarithm(two, base)))
    else:
        working.say(Relation(Logarithm(one, base), "=", whole_or_fraction(number)))
        working.say(Relation(one, "=", Power(base, whole_or_fraction(number))))
        two = raised(base, number) if number else ONE
    return _solved(one, two, letter, working)


def _solved(left: Expression, right: Expression, letter: str, working: Working) -> Roots:
    """The equation behind the logarithms."""
    relation = Relation(left, "=", right)
    working.say(relation)
    if left == Letter(letter) and not letters_of(right):
        return Roots([right])
    if not letters_of(right) and (isinstance(right, Power) or rational_value(right) is None):
        return _linear(left, right, letter, working)
    if any(map(has_letters_below, (left, right))):
        relation, _ = clear_fractions(relation, working)
    return solve_polynomial(relation, letter, working)


def _linear(left: Expression, right: Expression, letter: str, working: Working) -> Roots:
    """2x + 1 = e³: a right side that is no fraction."""
    from paperaudit.maths.algebra.terms import coefficients

    terms = terms_of(left)
    numbers = coefficients(terms, letter)
    if len(numbers) != 2:
        raise NotTerms(f"{write(left)} = {write(right)}")
    constant, slope = numbers
    alone: Expression = Letter(letter)
    if constant:
        shift = whole_or_fraction(abs(constant))
        right = Sum((right, Negative(shift) if constant > 0 else shift))
        alone = terms_expression(slope, letter)
        if slope != 1:
            working.say(Relation(alone, "=", right))
    value = right if slope == 1 else Quotient(right, whole_or_fraction(slope))
    if slope.denominator > 1 or slope < 0:
        raise NotTerms(f"{write(left)} = {write(right)}")
    working.say(f"{letter} = {write(value)}")
    return Roots([value])


def terms_expression(slope: Fraction, letter: str) -> Expression:
    """3x."""
    from paperaudit.maths.algebra.terms import expression_of, from_coefficients

    return expression_of(from_coefficients([Fraction(0), slope], letter))


def _unknown_base(relation: Relation, letter: str, working: Working) -> Roots:
    """log_x 9 = 2, so x² = 9 with a positive x that is not 1."""
    left, right = relation.left, relation.right
    if not isinstance(left, Logarithm):
        left, right = right, left
    size = None if letters_of(right) or has_logarithm(right) else rational_value(right)
    if not isinstance(left, Logarithm) or size is None or left.base != Letter(letter) or letters_of(left.argument):
        raise NotTerms(f"{write(relation)}, with {letter} in a base")
    if not size:
        raise NotTerms(f"{write(relation)}, a logarithm that is 0")
    working.say(Relation(Power(left.base, whole_or_fraction(size)), "=", left.argument))
    if size.denominator > 1 or size < 0:
        value = raised(left.argument, 1 / size)
        working.say(Relation(left.base, "=", Power(left.argument, whole_or_fraction(1 / size))))
        working.say(f"{letter} = {write(value)}")
        return _tried(relation, letter, Roots([value]), working)
    found = solve_polynomial(Relation(Power(left.base, Number(size)), "=", left.argument), letter, working)
    return _tried(relation, letter, found, working)


def _tried(relation: Relation, letter: str, found: Roots, working: Working) -> Roots:
    """Every root put into what the logarithms are taken of, which must be positive."""
    kept: list[Expression] = []
    if len(found.values) > 1 and any(_outside(relation, letter, value) for value in found.values):
        working.say(" or ".join(f"{letter} = {write(value)}" for value in found.values))
    found_at = working.steps[-1].statement
    for value in found.values:
        reason = _outside(relation, letter, value)
        if reason:
            working.say(f"{letter} = {write(value)} is rejected: {reason}", uses=(found_at,))
        else:
            kept.append(value)
    if found.everything:
        raise NotTerms(f"{write(relation)}, which holds wherever it has a meaning")
    if found.values and not kept:
        working.say("so there are no solutions")
    return Roots(kept)


def _outside(relation: Relation, letter: str, value: Expression) -> str:
    """What is not positive at a root, "" where everything is."""
    tests: tuple[tuple[str, Callable[[Logarithm], Expression]], ...] = (
        ("a logarithm is taken of positive numbers only", lambda log: log.argument),
        ("a base is positive", lambda log: log.base),
    )
    for log in dict.fromkeys((*logarithms_in(relation.left), *logarithms_in(relation.right))):
        for words, part in tests:
            if letter not in letters_of(part(log)):
                continue
            size = Fraction(number_at(put_in(part(log), letter, value), {}))
            if size <= 0:
                shown = part(log)
                text = (
                    f"{write(shown)} = {write(whole_or_fraction(size))}"
                    if size.denominator < 1000
                    else f"{write(shown)} < 0"
                )
                return f"{text}, and {words}" if shown != Letter(letter) else words
            if size == 1 and part(log) == log.base:
                return "a base is not 1"
    return ""
