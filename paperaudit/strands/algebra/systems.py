"""Two equations in two letters, one linear and one not: substitution, line by line."""

from collections.abc import Sequence
from fractions import Fraction

from paperaudit.maths.algebra.terms import (
    NotTerms,
    Terms,
    added,
    collected,
    degree,
    expression_of,
    letters_in,
    negated,
    scaled,
    terms_of,
)
from paperaudit.maths.exact import NotSurd, exact_expression, exact_value
from paperaudit.maths.measure import unit_of
from paperaudit.maths.write import write
from paperaudit.model.ask import Ask
from paperaudit.model.derivation import Answer, Derived
from paperaudit.model.expression import Expression, Letter, Relation, letters_of, with_leaves
from paperaudit.strands.algebra.confirming import number_at, same_number
from paperaudit.strands.algebra.roots import solve_polynomial
from paperaudit.strands.algebra.working import Working
from paperaudit.strands.equation_checks import letters_in as letters_of_relation
from paperaudit.strands.finishing import ChecksDisagree, rounded_number

CONFIRMED = "put back into both equations; the number of solutions counted by elimination in another order"


def solve_system(relations: Sequence[Relation], ask: Ask, used: tuple[str, ...] = ()) -> Derived:
    """The pairs that satisfy a linear and another equation. Raises NotTerms, NoValue, ChecksDisagree."""
    letters = sorted({name for relation in relations for name in letters_of_relation(relation)})
    if len(relations) != 2 or len(letters) != 2 or any(relation.sign != "=" for relation in relations):
        raise NotTerms("equations other than a linear and a quadratic one in two letters")
    if any(unit_of(side) for relation in relations for side in (relation.left, relation.right)):
        raise NotTerms("equations with units")
    forms = [added(terms_of(relation.left), negated(terms_of(relation.right))) for relation in relations]
    place = next((at for at, form in enumerate(forms) if degree(form) == 1 and len(letters_in(form)) == 2), None)
    if place is None:
        place = next((at for at, form in enumerate(forms) if degree(form) == 1), None)
    if place is None:
        raise NotTerms("two equations of which none is linear")
    working = Working("linear and quadratic equations", used)
    first = working.say(f"(1): {write(relations[0])}", uses=used)
    second = working.say(f"(2): {write(relations[1])}", uses=used)
    name, value = _isolated(relations[place], forms[place])
    working.say(f"from ({place + 1}): {name} = {write(value)}", uses=(first, second)[place : place + 1])
    other = relations[1 - place]
    put_in = Relation(_put(other.left, name, value), "=", _put(other.right, name, value))
    working.say(f"in ({2 - place}): {write(put_in)}")
    kept = next(letter for letter in letters if letter != name)
    found = solve_polynomial(put_in, kept, working)
    if found.everything:
        raise NotTerms("equations with endlessly many solutions")
    solutions: list[dict[str, Expression]] = []
    last = working.steps[-1].statement
    for root in sorted(dict.fromkeys(found.values), key=lambda one: number_at(one, {})):
        behind = _put(value, kept, root)
        exact = _exact(behind)
        shown = f"{kept} = {write(root)}: {name} = {write(behind)}"
        working.say(shown if write(behind) == write(exact) else f"{shown} = {write(exact)}", uses=(last,))
        solutions.append({kept: root, name: exact})
    _confirm(relations, solutions, letters, forms)
    return _concluded(solutions, letters, ask, working)


def _concluded(solutions: list[dict[str, Expression]], letters: Sequence[str], ask: Ask, working: Working) -> Derived:
    if not solutions:
        working.conclude("so there are no real solutions", "no real solutions")
        return working.derived(Answer("no real solutions"), confirmed_by=CONFIRMED)
    if ask.accuracy is not None:
        accuracy = ask.accuracy
        solutions = [{name: rounded_number(value, accuracy) for name, value in one.items()} for one in solutions]
    text = " or ".join(", ".join(f"{name} = {write(one[name])}" for name in letters) for one in solutions)
    working.conclude(text)
    if len(solutions) == 1:
        (one,) = solutions
        answers = [Answer(f"{name} = {write(one[name])}", one[name], name) for name in letters]
        return working.derived(*answers, confirmed_by=CONFIRMED)
    return working.derived(Answer(text, None, "".join(letters), kind="solutions"), confirmed_by=CONFIRMED)


def _isolated(relation: Relation, form: Terms) -> tuple[str, Expression]:
    """A letter of a linear equation and what it equals, one with the coefficient 1 first."""
    for left, right in ((relation.left, relation.right), (relation.right, relation.left)):
        if isinstance(left, Letter) and left.name not in letters_of(right):
            return left.name, right
    names = list(letters_in(form))
    if len(names) == 1:
        chosen = names[0]
    else:
        chosen = next((one for one in reversed(names) if abs(_share(form, one)) == 1), names[-1])
    share = _share(form, chosen)
    rest = collected(term for term in form if not term.exponent(chosen))
    return chosen, expression_of(scaled(rest, -1 / share))


def _share(form: Terms, letter: str) -> Fraction:
    return next(term.coefficient for term in form if term.exponent(letter))


def _put(expression: Expression, name: str, value: Expression) -> Expression:
    return with_leaves(expression, lambda leaf: value if leaf == Letter(name) else leaf)


def _exact(expression: Expression) -> Expression:
    try:
        return exact_expression(exact_value(expression))
    except NotSurd as error:
        raise NotTerms(f"{write(expression)}, a root within a root") from error


def _confirm(
    relations: Sequence[Relation],
    solutions: Sequence[dict[str, Expression]],
    letters: Sequence[str],
    forms: Sequence[Terms],
) -> None:
    """Both equations must hold for every pair, and eliminating either letter must leave as many values."""
    for solution in solutions:
        for relation in relations:
            sides = [relation.left, relation.right]
            for name, value in solution.items():
                sides = [_put(side, name, value) for side in sides]
            if not same_number(number_at(sides[0], {}), number_at(sides[1], {})):
                raise ChecksDisagree(f"{write(relation)} does not hold for a pair that was found")
    for name in letters:
        values = {write(solution[name]) for solution in solutions}
        expected = _count(forms, letters, name)
        if expected is not None and len(values) != expected:
            raise ChecksDisagree(f"{len(values)} values of {name} were found, the equations have {expected}")


def _count(forms: Sequence[Terms], letters: Sequence[str], kept: str) -> int | None:
    """How many values of a letter the equations have, from the resultant; None where it is nought."""
    import sympy

    symbols = {name: sympy.Symbol(name) for name in letters}
    sides = []
    for form in forms:
        total = sympy.Integer(0)
        for term in form:
            piece = sympy.Rational(term.coefficient.numerator, term.coefficient.denominator)
            for name, exponent in term.powers:
                piece *= symbols[name] ** exponent
            total += piece
        sides.append(total)
    other = next(name for name in letters if name != kept)
    if not all(side.has(symbols[other]) for side in sides):
        return None
    resultant = sympy.Poly(sympy.resultant(sides[0], sides[1], symbols[other]), symbols[kept])
    return None if resultant.is_zero else len(set(resultant.real_roots()))
