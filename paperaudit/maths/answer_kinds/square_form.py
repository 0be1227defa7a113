"""A completed square, and the nature of roots in words, as answers."""

import re

from paperaudit.errors import ExpressionNotRead
from paperaudit.maths.parse import read_expression
from paperaudit.maths.same_value import same_value
from paperaudit.model.ask import Ask
from paperaudit.model.derivation import Agreement, Answer, Comparison
from paperaudit.model.expression import Expression, Negative, Number, Power, Product, Quotient, Sum, letters_of


def compare_square(stated: str, derived: tuple[Answer, ...], ask: Ask) -> Comparison:
    """A stated completed square: the same value, with the letter only inside one square."""
    answer = derived[0]
    assert answer.value is not None
    text = stated.strip().rstrip(".").rpartition("=")[2]
    try:
        value = read_expression(text)
    except ExpressionNotRead as error:
        return Comparison(Agreement.CANNOT_TELL, f"the stated answer was not read: {error}")
    same = same_value(value, answer.value)
    if same is None:
        return Comparison(Agreement.CANNOT_TELL, f"“{stated.strip()}” could not be compared with {answer.text}")
    if not same:
        return Comparison(Agreement.DIFFERS, f"the answer is {answer.text}")
    if not is_completed(value):
        return Comparison(Agreement.DIFFERS, "it is equal, but not a completed square")
    return Comparison(Agreement.AGREES)


def is_completed(expression: Expression) -> bool:
    """Whether letters stand only inside one square, with numbers in front, below and behind."""
    match expression:
        case Sum(terms):
            return sum(bool(letters_of(term)) for term in terms) == 1 and all(map(is_completed, terms))
        case Negative(operand) | Quotient(operand, Number()):
            return is_completed(operand)
        case Product(factors):
            return sum(bool(letters_of(factor)) for factor in factors) == 1 and all(map(is_completed, factors))
        case Power(base, Number(value)) if letters_of(base):
            return value == 2
    return not letters_of(expression)


_NOT_REAL = re.compile(
    r"\bno\b.*\breal\b|\bnon-?real\b|\bnot real\b|\bno roots?\b|\bno solutions?\b|\bcomplex\b|\bimaginary\b"
)
_UNEQUAL = re.compile(r"\bunequal\b|\bdifferent\b|\bdistinct\b|\btwo real\b|\bnot equal\b|\b2 real\b")
_EQUAL = re.compile(r"\bequal\b|\brepeated\b|\bone real\b|\bcoincident\b|\bdouble\b|\b1 real\b")
_KIND = re.compile(r"\b(ir)?rational\b")


def compare_nature(stated: str, derived: tuple[Answer, ...], ask: Ask) -> Comparison:
    """Words about roots: real or not, equal or not, and rational or not where the answer says it."""
    answer, text = derived[0], stated.casefold()
    ours, theirs = _nature(answer.text), _nature(text)
    if theirs is None:
        return Comparison(Agreement.CANNOT_TELL, f"“{stated.strip()}” was not read as the nature of roots")
    kind, our_kind = _KIND.search(text), _KIND.search(answer.text)
    if ours != theirs or (kind and our_kind and kind.group() != our_kind.group()):
        return Comparison(Agreement.DIFFERS, f"the roots are {answer.text}")
    return Comparison(Agreement.AGREES)


def _nature(text: str) -> str | None:
    if _NOT_REAL.search(text):
        return "none"
    if _UNEQUAL.search(text):
        return "two"
    return "one" if _EQUAL.search(text) else None
