"""Whether an answer is in the form that was asked for: simplified, expanded, factorised, as a decimal."""

from collections.abc import Iterable
from fractions import Fraction
from functools import reduce
from math import gcd, lcm

from paperaudit.errors import BudgetExceeded, NoValue
from paperaudit.maths.algebra.factorising import is_factorised_fully
from paperaudit.maths.algebra.terms import NotTerms, degree, terms_of
from paperaudit.maths.exact import NotSurd, rational_value
from paperaudit.maths.number_forms import form_of
from paperaudit.maths.polynomial import ONE, Polynomial, algebraic_fraction
from paperaudit.maths.standard_form import standard_fault
from paperaudit.maths.surd import square_part
from paperaudit.maths.units import unit_named
from paperaudit.maths.write import write
from paperaudit.model.ask import Ask, Rounded, Transform, WriteAs
from paperaudit.model.expression import (
    Expression,
    Letter,
    Measured,
    Negative,
    Number,
    NumberForm,
    Of,
    Power,
    Product,
    Quotient,
    Root,
    Sum,
    leaves,
    parts_of,
)
from paperaudit.model.number_form_task import InSurdForm

_WRITTEN_FORMS = {
    "ordinary number": (NumberForm.DECIMAL, NumberForm.INTEGER),
    "decimal": (NumberForm.DECIMAL, NumberForm.INTEGER),
    "fraction": (NumberForm.FRACTION, NumberForm.MIXED, NumberForm.INTEGER),
    "improper fraction": (NumberForm.FRACTION, NumberForm.INTEGER),
    "mixed number": (NumberForm.MIXED, NumberForm.INTEGER),
    "percentage": (NumberForm.PERCENT,),
}
_LOWEST = ("lowest terms", "simplest form", "fraction in lowest terms", "fraction in simplest form", "simplest terms")


def form_fault(stated: Expression, ask: Ask) -> str | None:
    """What is wrong with the form of an answer of the right value: "" for nothing, None if it cannot be told.

    >>> from paperaudit.model.ask import Transform
    >>> form_fault(Number(Fraction(2)), Ask(Transform("simplify", Letter("x")), "simplify"))
    ''
    """
    match ask.task:
        case Transform("simplify") | InSurdForm():
            rooted = "ationali" in ask.text and _has_root_below(stated)
            return simplified_fault(stated) or ("a root is left in the denominator" if rooted else "")
        case Transform("expand"):
            return "brackets are left" if _has_brackets(stated) else simplified_fault(stated)
        case Transform("factorise"):
            return factorised_fault(stated)
        case Transform("evaluate") | Rounded():
            return "" if _is_worked_out(stated) else "it is not worked out"
        case WriteAs(form=form):
            return _written_fault(stated, form)
    return ""


def _has_root_below(stated: Expression) -> bool:
    """Whether a root stands in a denominator."""
    below = [part.denominator for part in _everything(stated) if isinstance(part, Quotient)]
    return any(isinstance(inner, Root) for part in below for inner in _everything(part))


def _written_fault(stated: Expression, form: str) -> str | None:
    if form == "standard form":
        return standard_fault(stated)
    if form in _LOWEST:
        return simplified_fault(stated)
    if unit_named(form) is not None:
        return ""
    wanted = _WRITTEN_FORMS.get(form)
    if wanted is None:
        return None
    found = form_of(stated)
    if form == "mixed number" and found is NumberForm.FRACTION and _is_proper(stated):
        return ""
    return "" if found in wanted else f"it is not written as a {form}"


def _is_proper(stated: Expression) -> bool:
    """Whether a fraction is below 1, so that it has no mixed number."""
    value = rational_value(stated)
    return value is not None and abs(value) < 1


def simplified_fault(stated: Expression) -> str:
    """Why an expression is not in simplest form, "" where it is.

    Brackets are let stand in a product (2(x + 3)), not in a sum with other terms.
    """
    match stated:
        case Sum(terms):
            if any(isinstance(term, Product | Negative) and _has_brackets(term) for term in terms):
                return "brackets are left in a sum"
            if _like_terms(terms):
                return "like terms are not collected"
        case Product(factors):
            if fault := _product_fault([inner for factor in factors for inner in _flat(factor)]):
                return fault
        case Quotient(numerator, denominator):
            if _common_factor(numerator, denominator):
                return "the fraction is not in lowest terms"
        case Root(Number(value), 2):
            if value.denominator > 1 or (value >= 0 and square_part(value.numerator)[0] > 1):
                return "the root is not in simplest form"
        case Power(Number(), Number()):
            return "a power is not worked out"
        case Of():
            return "it is not worked out"
    return next(filter(None, map(simplified_fault, parts_of(stated))), "")


def factorised_fault(stated: Expression) -> str:
    """Why an expression is not factorised fully by its common factors, "" where it is."""
    factors = _factors(stated)
    if len(factors) == 1 and isinstance(factors[0], Sum):
        return "it is not a product"
    for factor in factors:
        if isinstance(factor, Sum) and (_like_terms(factor.terms) or _common_factor_of_terms(factor)):
            return "a factor can be taken out of a bracket"
        if isinstance(factor, Sum) and _comes_apart(factor):
            return f"{write(factor)} can be factorised further"
    return ""


def _comes_apart(bracket: Expression) -> bool:
    """Whether a bracket is a product of two others of the first degree or more."""
    try:
        terms = terms_of(bracket)
        return degree(terms) > 1 and not is_factorised_fully(terms)
    except (NotTerms, NoValue, BudgetExceeded):
        return False


def _factors(expression: Expression) -> list[Expression]:
    match expression:
        case Negative(operand):
            return _factors(operand)
        case Product(factors):
            return [inner for factor in factors for inner in _factors(factor)]
        case Power(base):
            return [base, base]
        case Quotient(numerator, denominator):
            return [*_factors(numerator), denominator]
    return [expression]


def _is_worked_out(stated: Expression) -> bool:
    match stated:
        case Number() | Letter():
            return True
        case Negative(operand) | Measured(operand):
            return _is_worked_out(operand)
        case Quotient(numerator, denominator, "/"):
            return _is_worked_out(numerator) and _is_worked_out(denominator)
        case Root() | Sum() | Product(sign=""):
            surd = any(isinstance(part, Root) for part in _everything(stated))
            return (surd or any(isinstance(leaf, Letter) for leaf in leaves(stated))) and not simplified_fault(stated)
    return False


def _everything(expression: Expression) -> Iterable[Expression]:
    yield expression
    for part in parts_of(expression):
        yield from _everything(part)


def _has_brackets(expression: Expression) -> bool:
    """Whether a sum stands inside a product or a power."""
    return any(
        isinstance(part, Product | Power | Negative) and any(isinstance(inner, Sum) for inner in parts_of(part))
        for part in _everything(expression)
    )


def _flat(factor: Expression) -> tuple[Expression, ...]:
    if not isinstance(factor, Product):
        return (factor,)
    return tuple(inner for part in factor.factors for inner in _flat(part))


def _product_fault(factors: list[Expression]) -> str:
    if sum(isinstance(factor, Number) or _is_fraction(factor) for factor in factors) > 1:
        return "a product of numbers is not worked out"
    bases = [factor.base if isinstance(factor, Power) else factor for factor in factors]
    if len(set(bases)) < len(bases):
        return "a repeated factor is not written as a power"
    return ""


def _is_fraction(factor: Expression) -> bool:
    """Whether a factor is a fraction of numbers; √17/4 holds a root, and 9 × √17/4 is worked out."""
    if not isinstance(factor, Quotient) or any(isinstance(part, Root) for part in _everything(factor)):
        return False
    return all(isinstance(leaf, Number) for leaf in leaves(factor))


def _polynomial(expression: Expression) -> Polynomial | None:
    try:
        fraction = algebraic_fraction(expression)
    except (NotSurd, NoValue, BudgetExceeded):
        return None
    return fraction.above if fraction.below == ONE else None


def _like_terms(terms: tuple[Expression, ...]) -> bool:
    seen: set[object] = set()
    for term in terms:
        polynomial = _polynomial(term)
        for monomial, surd in (polynomial.terms if polynomial else {}).items():
            for root in surd.parts:
                if (monomial, root) in seen:
                    return True
                seen.add((monomial, root))
    return False


def common_content(polynomial: Polynomial) -> tuple[Fraction, dict[Expression, int]]:
    """The largest number and the letters with powers that divide every term; irrational parts count as 1.

    The number is a fraction where the coefficients are: of (1/2)x + 3/2 it is 1/2.
    """
    shares = [share.fraction for share in polynomial.terms.values()]
    known = [share for share in shares if share]
    above = reduce(gcd, (share.numerator for share in known), 0) if len(known) == len(shares) else 1
    below = reduce(lcm, (share.denominator for share in known), 1)
    exponents = [dict(monomial) for monomial in polynomial.terms]
    letters = {
        letter: min(powers.get(letter, 0) for powers in exponents) for letter in (exponents[0] if exponents else {})
    }
    return Fraction(above or 1, below), {letter: power for letter, power in letters.items() if power}


def _common_factor(numerator: Expression, denominator: Expression) -> bool:
    above, below = _polynomial(numerator), _polynomial(denominator)
    if above is None or below is None or not above.terms:
        return False
    (one, letters), (two, others) = common_content(above), common_content(below)
    if one.denominator > 1 or two.denominator > 1:
        return True
    if gcd(one.numerator, two.numerator) > 1 or set(letters) & set(others):
        return True
    return above.degree > 0 and below.degree > 0 and _proportional(above, below)


def _proportional(one: Polynomial, two: Polynomial) -> bool:
    if one.terms.keys() != two.terms.keys():
        return False
    monomial = next(iter(one.terms))
    return one * Polynomial.number(two.terms[monomial]) == two * Polynomial.number(one.terms[monomial])


def _common_factor_of_terms(bracket: Sum) -> bool:
    polynomial = _polynomial(bracket)
    if polynomial is None:
        return False
    number, letters = common_content(polynomial)
    return number.numerator > 1 or bool(letters)
