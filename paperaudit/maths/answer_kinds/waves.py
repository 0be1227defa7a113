"""General solutions and ranges as answers: x = 30° + k × 360° or x = 150° + k × 360°; −2 ≤ y ≤ 4."""

import re
from fractions import Fraction

from paperaudit.errors import ExpressionNotRead, NoValue
from paperaudit.maths.exact import NotSurd, rational_value
from paperaudit.maths.parse import read_expression
from paperaudit.maths.trig.angles import lettered
from paperaudit.maths.trig.measured import angle_letters, apart
from paperaudit.model.ask import Ask
from paperaudit.model.derivation import Agreement, Answer, Comparison
from paperaudit.model.expression import leaves

_AGREES = Comparison(Agreement.AGREES)
_TAIL = re.compile(r"[,;]?\s*(?:where |with |for )?\(?[kn]\s*(?:∈|is |a |an |element).*$")
_FAMILY = re.compile(
    r"(?:[a-zα-ω]|theta)?\s*=?\s*(±)?\s*(-?[\d.,/]+)\s*°?\s*([+±-])\s*(?:[kn]\s*[×·.*]?\s*\(?\s*([\d.,/]+)\s*°?\s*\)?|([\d.,/]+)\s*°?\s*[×·.*]?\s*[kn])"
)
_LONE = re.compile(
    r"(?:[a-zα-ω]|theta)?\s*=?\s*(?:[kn]\s*[×·.*]?\s*\(?([\d.,/]+)\s*°?\)?|([\d.,/]+)\s*°?\s*[×·.*]?\s*[kn])"
)


def _families(text: str) -> set[tuple[Fraction, Fraction]] | None:
    """The starts, taken within one period, and the periods; None for what is not read."""
    plain = text.replace("−", "-").replace("–", "-").strip().rstrip(".")
    found: set[tuple[Fraction, Fraction]] = set()
    for piece in re.split(r"\s+or\s+|\s*;\s*|\s+and\s+|,\s+(?=[a-zα-ω]\s*=)", _TAIL.sub("", plain)):
        if not piece.strip():
            continue
        match, lone = _FAMILY.fullmatch(piece.strip()), _LONE.fullmatch(piece.strip())
        try:
            if match is not None:
                period = _number(match[4] or match[5])
                base = _number(match[2])
                starts = {base, -base} if match[1] else {base}
            elif lone is not None:
                period, starts = _number(lone[1] or lone[2]), {Fraction(0)}
            else:
                return None
        except ExpressionNotRead:
            return None
        if period <= 0:
            return None
        found.update((start % period, period) for start in starts)
    return found or None


def _number(text: str) -> Fraction:
    value = rational_value(read_expression(text))
    if value is None:
        raise ExpressionNotRead(f"{text} is irrational", 0, "a number of degrees")
    return value


def compare_general(stated: str, derived: tuple[Answer, ...], ask: Ask) -> Comparison:
    """Families of angles, compared angle by angle over a full turn and more."""
    ours, theirs = _families(derived[0].text), _families(stated)
    if theirs is None or ours is None:
        return Comparison(Agreement.CANNOT_TELL, f"“{stated.strip()}” is not read as a general solution")
    if _within_turns(ours) == _within_turns(theirs):
        return _AGREES
    return Comparison(Agreement.DIFFERS, f"the general solution is {derived[0].text}")


def _within_turns(families: set[tuple[Fraction, Fraction]]) -> set[Fraction]:
    top = Fraction(720)
    return {start + period * turn for start, period in families for turn in range(int(top / period) + 1)
            if start + period * turn < top}  # fmt: skip


_BOTH = re.compile(r"(.+?)\s*(≤|<|<=)\s*(?:y|[fgh]\s*\(.\))\s*(≤|<|<=)\s*(.+)")
_INTERVAL = re.compile(r"(?:[yfgh](?:\(.\))?\s*∈\s*)?([\[(])\s*([^,;]+?)\s*[,;]\s*([^,;]+?)\s*([\])])")


def compare_range(stated: str, derived: tuple[Answer, ...], ask: Ask) -> Comparison:
    """The range of a graph as −2 ≤ y ≤ 4 or [−2, 4]."""
    ours, theirs = _ends(derived[0].text), _ends(stated)
    if theirs is None or ours is None:
        return Comparison(Agreement.CANNOT_TELL, f"“{stated.strip()}” is not read as a range")
    return _AGREES if ours == theirs else Comparison(Agreement.DIFFERS, f"the range is {derived[0].text}")


def _ends(text: str) -> tuple[Fraction, bool, Fraction, bool] | None:
    plain = text.strip().rstrip(".").replace("<=", "≤")
    both, interval = _BOTH.fullmatch(plain), _INTERVAL.fullmatch(plain)
    try:
        if both is not None:
            return _number(both[1]), both[2] == "≤", _number(both[4]), both[3] == "≤"
        if interval is not None:
            return _number(interval[2]), interval[1] == "[", _number(interval[3]), interval[4] == "]"
    except ExpressionNotRead:
        return None
    return None


def compare_trigonometric(stated: str, derived: tuple[Answer, ...], ask: Ask) -> Comparison:
    """An expression in functions of an angle: another form as short agrees, a longer one cannot be judged."""
    answer = derived[0]
    assert answer.value is not None
    plain = stated.strip().rstrip(".")
    try:
        theirs = read_expression(plain.rpartition("=")[2], frozenset(angle_letters(answer.value)))
        differ = apart(lettered(theirs), answer.value)
    except (ExpressionNotRead, NoValue, NotSurd) as error:
        return Comparison(Agreement.CANNOT_TELL, f"the stated answer was not read: {error}")
    if differ is not None:
        return Comparison(Agreement.DIFFERS, f"the answer is {answer.text}")
    if len(leaves(theirs)) > len(leaves(answer.value)) + 3:
        return Comparison(Agreement.CANNOT_TELL, f"“{plain}” is equal to {answer.text}; it may have to be simpler")
    return _AGREES
