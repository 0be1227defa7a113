"""Formulas of functions as answers: 6x − 4, f′(x) = 6x − 4, integrals with their constant, stationary points."""

import re
from decimal import Decimal
from fractions import Fraction

from paperaudit.errors import BudgetExceeded, ExpressionNotRead, NoValue
from paperaudit.maths.answer_kinds.plane import read_points
from paperaudit.maths.near import near_value
from paperaudit.maths.parse import read_expression
from paperaudit.maths.powers import NotPowers, power_sum
from paperaudit.maths.same_value import same_value
from paperaudit.model.ask import Ask
from paperaudit.model.derivation import Agreement, Answer, Comparison
from paperaudit.model.expression import Expression, letters_of

_TRIED = (Fraction(1, 2), Fraction(2), Fraction(7, 3))
_CLOSE = Decimal("1e-20")
_AGREES = Comparison(Agreement.AGREES)
_NAME = re.compile(
    r"^\s*(?:[a-z]+(?:⁻¹|\^\{?-1\}?|['′’]+|\s*[∘°]\s*[a-z])?\s*\([^=]*\)|\(.*?\)\(.*?\)|y['′’]*|d[²2]?[yf]?/d[a-z][²2]?|[a-z]⁻¹)\s*=\s*"
)
_CONSTANT = re.compile(r"\s*\+\s*[cCkK]\s*$")
_PAIR = re.compile(r"\([^()]*(?:\([^()]*\)[^()]*)*[,;][^()]*(?:\([^()]*\)[^()]*)*\)")
_KINDS = (("max", "maximum"), ("min", "minimum"), ("inflection", "inflection"), ("inflexion", "inflection"))


def compare_function(stated: str, derived: tuple[Answer, ...], ask: Ask) -> Comparison:
    """A formula with or without the name of the function before it."""
    answer = derived[0]
    assert answer.value is not None
    return _compare(_NAME.sub("", stated.strip().rstrip(".")), answer.value, answer.text)


def _compare(stated: str, value: Expression, text: str) -> Comparison:
    try:
        theirs = read_expression(stated, frozenset(letters_of(value)))
    except ExpressionNotRead as error:
        return Comparison(Agreement.CANNOT_TELL, f"the stated answer was not read: {error}")
    same = same_value(theirs, value)
    if same is None:
        same = _same_powers(theirs, value)
    if same is None and _apart(theirs, value):
        same = False
    if same is None:
        return Comparison(Agreement.CANNOT_TELL, f"“{stated}” could not be compared with {text}")
    return _AGREES if same else Comparison(Agreement.DIFFERS, f"the answer is {text}")


def _apart(one: Expression, other: Expression) -> bool:
    """Whether two formulas in one letter have different values at some number."""
    letters = tuple(dict.fromkeys((*letters_of(one), *letters_of(other))))
    if len(letters) != 1:
        return False
    for number in _TRIED:
        try:
            first, second = (near_value(side, {letters[0]: number}) for side in (one, other))
        except (NoValue, BudgetExceeded):
            continue
        if abs(first - second) > _CLOSE * max(abs(first), abs(second), Decimal(1)):
            return True
    return False


def _same_powers(one: Expression, other: Expression) -> bool | None:
    """Whether two sums of powers, roots among them, are the same."""
    letters = dict.fromkeys((*letters_of(one), *letters_of(other)))
    if len(letters) != 1:
        return None
    (letter,) = letters
    try:
        return power_sum(one, letter) == power_sum(other, letter)
    except NotPowers:
        return None


def compare_integral(stated: str, derived: tuple[Answer, ...], ask: Ask) -> Comparison:
    """An indefinite integral; without its constant it differs."""
    answer = derived[0]
    assert answer.value is not None
    plain = _NAME.sub("", stated.strip().rstrip("."))
    if not _CONSTANT.search(plain):
        found = _compare(plain, answer.value, answer.text)
        if found.agreement is Agreement.AGREES:
            return Comparison(Agreement.DIFFERS, "the constant of integration is missing")
        return found
    return _compare(_CONSTANT.sub("", plain), answer.value, answer.text)


def compare_stationary(stated: str, derived: tuple[Answer, ...], ask: Ask) -> Comparison:
    """Stationary points with their kinds: (−1, 4) maximum, (1, 0) minimum."""
    ours, theirs = _kinds(derived[0].text), _kinds(stated)
    if theirs is None or ours is None:
        return Comparison(Agreement.CANNOT_TELL, f"“{stated.strip()}” is not read as points with their nature")
    for point, kind in theirs:
        match = [own for at, own in ours if all(same_value(a, b) for a, b in zip(at, point, strict=True))]
        if match != [kind]:
            return Comparison(Agreement.DIFFERS, f"the answer is {derived[0].text}")
    return _AGREES if len(ours) == len(theirs) else Comparison(Agreement.DIFFERS, f"the answer is {derived[0].text}")


def _kinds(text: str) -> list[tuple[tuple[Expression, Expression], str]] | None:
    pairs = list(_PAIR.finditer(text))
    between = _PAIR.split(text)
    before = any(word in between[0].casefold() for word, _ in _KINDS)
    words = between[:-1] if before else between[1:]
    found = []
    for pair, said in zip(pairs, words, strict=False):
        named = {name for word, name in _KINDS if word in said.casefold()}
        if len(named) != 1:
            return None
        try:
            (point,) = read_points(pair[0])
        except (ExpressionNotRead, ValueError):
            return None
        found.append((point, named.pop()))
    return found or None
