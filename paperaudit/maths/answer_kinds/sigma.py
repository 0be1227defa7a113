"""Sums in sigma notation as answers: Σ_{k=1}^{10} (3k − 1), Σ (i = 0 to 9) (3i + 2)."""

import re
from fractions import Fraction

from paperaudit.errors import BudgetExceeded, ExpressionNotRead, NoValue
from paperaudit.maths.exact import NotSurd, rational_value
from paperaudit.maths.parse import read_expression
from paperaudit.maths.powers import put_in
from paperaudit.model.ask import Ask
from paperaudit.model.derivation import Agreement, Answer, Comparison
from paperaudit.model.expression import Expression, Number, letters_of

_FORM = re.compile(
    r"(?:[Σ∑]|\\sum|sum) ?_?[({]? ?(?:from )?(?P<letter>[a-z]) ?= ?(?P<low>-?\d+)[,;]? ?[)}]?"
    r" ?(?:\^ ?[({]?|to|…|\.\.) ?[({]?(?P<high>\d+|∞|n)[)}]?(?: of)? ?(?P<body>.+)"
)
_MOST, _TRIED = 200, 12


def compare_sigma(stated: str, derived: tuple[Answer, ...], ask: Ask) -> Comparison:
    """The same terms in the same order, wherever the letter begins to count."""
    answer = derived[0]
    assert answer.value is not None
    found = _FORM.fullmatch(" ".join(stated.strip().rstrip(".").split()).replace("−", "-"))
    if found is None:
        return Comparison(Agreement.CANNOT_TELL, f"“{stated.strip()}” is not read as a sum in sigma notation")
    low = int(found["low"])
    endless = found["high"] == "∞"
    try:
        body = read_expression(found["body"], frozenset(found["letter"]))
        if not set(letters_of(body)) <= {found["letter"]} or found["high"] == "n":
            raise NoValue("other letters")
        count = 0 if endless else int(found["high"]) - low + 1
        known = 0 if answer.letter == "∞" else int(answer.letter)
        if count != known:
            return Comparison(Agreement.DIFFERS, f"it has not as many terms as {answer.text}")
        tried = range(min(count, _MOST) or _TRIED)
        same = all(_at(body, found["letter"], low + at) == _at(answer.value, "k", 1 + at) for at in tried)
    except (ExpressionNotRead, NoValue, NotSurd, BudgetExceeded):
        return Comparison(Agreement.CANNOT_TELL, f"“{stated.strip()}” could not be compared with {answer.text}")
    return Comparison(Agreement.AGREES) if same else Comparison(Agreement.DIFFERS, f"the series is {answer.text}")


def _at(formula: Expression, letter: str, place: int) -> Fraction:
    value = rational_value(put_in(formula, letter, Number(Fraction(place))))
    if value is None:
        raise NoValue("an irrational term")
    return value
