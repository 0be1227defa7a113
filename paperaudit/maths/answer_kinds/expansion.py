"""Expansions and their first terms, with or without dots behind them."""

import re
from fractions import Fraction

from paperaudit.errors import ExpressionNotRead, NoValue
from paperaudit.maths.algebra.intervals import Interval, Intervals, same_set
from paperaudit.maths.answer_kinds.solution_set import read_set
from paperaudit.maths.exact import rational_value
from paperaudit.maths.number_forms import whole_or_fraction
from paperaudit.maths.parse import read_expression
from paperaudit.maths.same_value import same_value
from paperaudit.maths.write import write
from paperaudit.model.ask import Ask
from paperaudit.model.derivation import Agreement, Answer, Comparison
from paperaudit.model.expression import Expression, Power, Product, Sum, parts_of

_DOTS = re.compile(r"\s*(?:[-+−–]\s*)?(?:…|\.{2,}|⋯)\s*$")


def compare_expansion(stated: str, derived: tuple[Answer, ...], ask: Ask) -> Comparison:
    """The stated terms against the derived ones; a bracket that is left is a wrong form."""
    answer = derived[0]
    assert answer.value is not None
    try:
        value = read_expression(_DOTS.sub("", stated.strip()).rstrip("."))
    except ExpressionNotRead as error:
        return Comparison(Agreement.CANNOT_TELL, f"the stated answer was not read: {error}")
    same = same_value(value, answer.value)
    if same is None:
        return Comparison(Agreement.CANNOT_TELL, f"“{stated.strip()}” could not be compared with {answer.text}")
    if not same:
        return Comparison(Agreement.DIFFERS, f"{write(value)} is not {answer.text}")
    if _has_brackets(value):
        return Comparison(Agreement.DIFFERS, "it is equal, but brackets are left")
    return Comparison(Agreement.AGREES)


def _has_brackets(value: Expression) -> bool:
    own = isinstance(value, Product | Power) and any(isinstance(part, Sum) for part in parts_of(value))
    return own or any(map(_has_brackets, parts_of(value)))


_RANGE = re.compile(
    r"^(?P<terms>.*?)[\s,;]*(?:\b(?:valid|which is valid)\b)?\s*(?:for|when|where|if|,|;)?\s*:?\s*"
    r"(?P<range>\|[^|]*\|\s*<[^<]*|[-−–]?\s*[\d/.]+\s*<\s*[a-z]\s*<[^<]*)$"
)


def compare_with_range(stated: str, derived: tuple[Answer, ...], ask: Ask) -> Comparison:
    """The terms, and the numbers for which the series converges: |x| < 1/3 or −1/3 < x < 1/3."""
    answer = derived[0]
    found = _RANGE.match(stated.strip().rstrip("."))
    if found is None:
        return Comparison(Agreement.CANNOT_TELL, "the stated answer does not say for which numbers the series is valid")
    terms = compare_expansion(found["terms"].rstrip(" ,;"), derived, ask)
    if terms.agreement is not Agreement.AGREES:
        return terms
    try:
        theirs, ours = (_limits(text, answer.letter) for text in (found["range"], answer.text.rpartition(", ")[2]))
    except (ExpressionNotRead, NoValue) as error:
        return Comparison(Agreement.CANNOT_TELL, f"the range of the series was not read: {error}")
    if not same_set(theirs, ours):
        return Comparison(Agreement.DIFFERS, f"the series is valid for {answer.text.rpartition(', ')[2]}")
    return terms


def _limits(text: str, letter: str) -> Intervals:
    """|ax| < b as −b/a < x < b/a."""
    bars = re.fullmatch(r"\|([^|]*)\|\s*<(.*)", text.strip())
    if bars is None:
        return read_set(text, letter)
    size = read_expression(bars[2].strip())
    inner = read_expression(bars[1].strip(), frozenset({letter}))
    slope = rational_value(inner, {letter: Fraction(1)})
    bound = rational_value(size)
    if not slope or bound is None or rational_value(inner, {letter: Fraction(2)}) != 2 * slope:
        raise NoValue(f"|{bars[1]}| < {bars[2]}")
    end = whole_or_fraction(bound / abs(slope))
    return (Interval(whole_or_fraction(-bound / abs(slope)), end),)
