"""Expressions beyond the first degree expanded, factorised, simplified."""

from collections.abc import Sequence

from paperaudit.maths.algebra.expanding import expanded_lines
from paperaudit.maths.algebra.factorising import Factorised, factorised_lines
from paperaudit.maths.algebra.fractions import fraction_lines
from paperaudit.maths.algebra.indices import index_lines, monomial_of
from paperaudit.maths.algebra.ratios import excluded, has_letters_below
from paperaudit.maths.algebra.terms import NotTerms, Terms, degree, letters_in
from paperaudit.maths.measure import unit_of, without_units
from paperaudit.maths.write import write
from paperaudit.model.ask import Command
from paperaudit.model.derivation import Derivation, Derived, Step, StepKind
from paperaudit.model.expression import Expression, Power, Root, letters_of, parts_of
from paperaudit.strands.algebra.confirming import EVALUATED, confirm_equal
from paperaudit.strands.algebra.letter_exponents import has_letter_exponent, letter_exponent_lines
from paperaudit.strands.finishing import ChecksDisagree, answer_of

Line = Expression | str

_SKILLS = {
    "expand": "expanding brackets",
    "factorise": "factorising",
    "simplify": "simplifying",
    "fractions": "algebraic fractions",
    "indices": "laws of indices",
}


def rewritten(
    expression: Expression, command: Command, positive: bool = False, used: tuple[str, ...] = (), limits: bool = False
) -> Derived:
    """An expression under a command, with its lines; `limits` adds the values that letters may not have.

    Raises NotTerms, NoValue, BudgetExceeded, ChecksDisagree.
    """
    unit = unit_of(expression)
    bare = without_units(expression, unit)
    lines, skill = _lines(bare, command, positive)
    confirm_equal([line for line in lines if not isinstance(line, str)], positive or skill == "indices")
    steps = steps_of(lines, _SKILLS[skill], used)
    final = next(line for line in reversed(lines) if not isinstance(line, str))
    forbidden = excluded(bare) if limits else ()
    if forbidden:
        said = " and ".join(forbidden)
        steps = (*steps, Step(f"for {said}", StepKind.CONCLUSION, None, (steps[-1].statement,), "", _SKILLS[skill]))
    return Derived((answer_of(final, unit),), (Derivation(steps, EVALUATED, used),))


def _lines(expression: Expression, command: Command, positive: bool) -> tuple[Sequence[Line], str]:
    if command == "simplify" and has_letter_exponent(expression):
        try:
            return letter_exponent_lines(expression), "indices"
        except NotTerms:
            pass
    if command == "factorise":
        lines, found = factorised_lines(expression)
        _confirm_complete(found)
        return lines, command
    if command == "expand" or not has_letters_below(expression):
        try:
            return expanded_lines(expression), command
        except NotTerms:
            if command == "expand":
                raise
    try:
        monomial_of(expression)
    except NotTerms:
        return fraction_lines(expression), "fractions"
    _refuse_doubtful_root(expression, positive)
    return index_lines(expression), "indices"


def _refuse_doubtful_root(expression: Expression, positive: bool) -> None:
    """√(x²) is x only where x is not negative."""
    roots = isinstance(expression, Root) and expression.degree % 2 == 0 and letters_of(expression)
    if roots and not positive:
        inner = monomial_of(expression)
        if any(power.denominator == 1 and power % 2 for _, power in inner.powers):
            raise NotTerms(f"{write(expression)}, whose letters are not said to be positive")
    for part in parts_of(expression):
        if isinstance(expression, Root | Power) or letters_of(part):
            _refuse_doubtful_root(part, positive)


def _confirm_complete(found: Factorised) -> None:
    """No factor may come apart further, by a method that the derivation does not use."""
    for factor in dict.fromkeys(found.factors):
        if degree(factor) > 1 and not _is_irreducible(factor):
            raise ChecksDisagree("a factor comes apart further")


def _is_irreducible(factor: Terms) -> bool:
    import sympy

    symbols = {letter: sympy.Symbol(letter) for letter in letters_in(factor)}
    total = sympy.Integer(0)
    for term in factor:
        piece = sympy.Rational(term.coefficient.numerator, term.coefficient.denominator)
        for letter, exponent in term.powers:
            piece *= symbols[letter] ** exponent
        total += piece
    return bool(sympy.Poly(total, *symbols.values()).is_irreducible)


def steps_of(lines: Sequence[Line], skill: str, used: tuple[str, ...] = ()) -> tuple[Step, ...]:
    """The lines as steps: "x² − 9 = x² − 3²", then "= (x − 3)(x + 3)"; a remark stands by itself."""
    steps: list[Step] = []
    shown = [write(line) if not isinstance(line, str) else line for line in lines]
    opened = False
    for place, (line, text) in enumerate(zip(lines, shown, strict=True)):
        before = (steps[-1].statement,) if steps else used
        if isinstance(line, str):
            steps.append(Step(text, StepKind.ALGEBRA, None, before, "", skill))
        elif place:
            said = f"= {text}" if opened else f"{shown[0]} = {text}"
            opened = True
            steps.append(Step(said, StepKind.ALGEBRA, None, before, text, skill))
    if not steps:
        steps.append(Step(shown[0], StepKind.ALGEBRA, None, used, shown[0], skill))
    return tuple(steps)
