"""Formulas of sequences, and which term it is, as answers: 3n + 2, Tₙ = 3n + 2, the 50th term."""

import re
from fractions import Fraction

from paperaudit.errors import BudgetExceeded, ExpressionNotRead, NoValue
from paperaudit.maths.exact import NotSurd, exact_value
from paperaudit.maths.parse import read_expression
from paperaudit.maths.same_value import same_value
from paperaudit.model.ask import Ask
from paperaudit.model.derivation import Agreement, Answer, Comparison
from paperaudit.model.expression import Expression, Letter, Number, letters_of, with_leaves

_AGREES = Comparison(Agreement.AGREES)
_NAME = re.compile(r"^\s*(?:[A-Za-z]_?\{?[a-zₙ]?\}?|[a-z]\([a-z]\)|(?:the )?nth term|general term)\s*(?:=|is|:)\s*")
_TRIED = range(1, 13)


def compare_nth_term(stated: str, derived: tuple[Answer, ...], ask: Ask) -> Comparison:
    """A formula with the same values for n = 1, 2, 3 …; which letter it is in counts for nothing."""
    answer = derived[0]
    assert answer.value is not None
    try:
        theirs = read_expression(_NAME.sub("", stated.strip().rstrip(".")), frozenset("n"))
    except ExpressionNotRead as error:
        return Comparison(Agreement.CANNOT_TELL, f"the stated answer was not read: {error}")
    letters = letters_of(theirs)
    if len(letters) > 1:
        return Comparison(Agreement.CANNOT_TELL, "the stated formula has more than one letter")
    try:
        same = all(_at(theirs, count) == _at(answer.value, count) for count in _TRIED)
    except (NoValue, NotSurd, BudgetExceeded):
        return Comparison(Agreement.CANNOT_TELL, f"“{stated.strip()}” could not be compared with {answer.text}")
    return _AGREES if same else Comparison(Agreement.DIFFERS, f"the nth term is {answer.text}")


def _at(formula: Expression, count: int) -> object:
    value = Number(Fraction(count))
    return exact_value(with_leaves(formula, lambda leaf: value if isinstance(leaf, Letter) else leaf))


def compare_which_term(stated: str, derived: tuple[Answer, ...], ask: Ask) -> Comparison:
    """The number of a term: 50, n = 50, the 50th term, T₅₀."""
    plain = re.sub(r"[₀-₉]", lambda digit: str("₀₁₂₃₄₅₆₇₈₉".index(digit[0])), stated.strip().rstrip("."))
    found = re.fullmatch(
        r"(?:n\s*=\s*|the\s+|T_?\{?|term\s+(?:number\s+)?)?(\S+?)\}?(?:st|nd|rd|th)?(?:\s+term)?", plain
    )
    answer = derived[0]
    assert answer.value is not None
    try:
        value = read_expression(found[1] if found else plain)
    except ExpressionNotRead as error:
        return Comparison(Agreement.CANNOT_TELL, f"the stated answer was not read: {error}")
    return _AGREES if same_value(value, answer.value) else Comparison(Agreement.DIFFERS, f"it is term {answer.text}")


def compare_no_sum(stated: str, derived: tuple[Answer, ...], ask: Ask) -> Comparison:
    """That a series has no sum to infinity."""
    plain = stated.strip().casefold()
    if re.search(r"no sum|does not|diverge|not exist|none|infinite", plain):
        return _AGREES
    try:
        read_expression(plain)
    except ExpressionNotRead:
        return Comparison(Agreement.CANNOT_TELL, f"“{stated.strip()}” could not be compared")
    return Comparison(Agreement.DIFFERS, "there is no sum to infinity")
