"""Points and equations of curves as answers: (5, 7), x = 5 and y = 7, y = 2x − 1 or 2x − y = 1."""

import re
from collections.abc import Sequence

from paperaudit.errors import BudgetExceeded, ExpressionNotRead, NoValue
from paperaudit.maths.exact import NotSurd
from paperaudit.maths.parse import read_expression, read_relation
from paperaudit.maths.polynomial import Polynomial, algebraic_fraction
from paperaudit.maths.same_value import same_value
from paperaudit.model.ask import Ask
from paperaudit.model.derivation import Agreement, Answer, Comparison
from paperaudit.model.expression import Expression, Negative, Relation, Sum

_AGREES = Comparison(Agreement.AGREES)
_PAIR = re.compile(r"\(((?:[^(),;]|\([^()]*\))+)[,;]((?:[^(),;]|\([^()]*\))+)\)")
_NAMED = re.compile(r"x\s*=\s*([^,;=]+?)\s*(?:[,;]|and|,\s*and)\s*y\s*=\s*([^,;=]+)")
_BARE = re.compile(r"([^,;()=]+)[,;]([^,;()=]+)")
_LEFT_OVER = re.compile(r"[\s,;.]|and|or|[A-Z]['′’]*(?:\s*=)?|point|mid-?point|turning|vertex|at|the|is|are|they|meet")
_NONE = ("none", "no points", "they do not meet", "no intersection", "no intercepts", "no x-intercepts")
Pair = tuple[Expression, Expression]


def read_points(text: str) -> tuple[Pair, ...]:
    """The points of a text: (2, 3), A(2; 3), x = 2 and y = 3. Raises ExpressionNotRead for other words."""
    plain = text.strip().rstrip(".")
    if plain.casefold() in _NONE:
        return ()
    found = _PAIR.findall(plain)
    rest = _PAIR.sub("", plain)
    if not found:
        found, rest = _NAMED.findall(plain), _NAMED.sub("", plain)
    if not found and (bare := _BARE.fullmatch(plain)):
        found, rest = [bare.groups()], ""
    if not found or _LEFT_OVER.sub("", rest):
        raise ExpressionNotRead(f"“{plain}” is not read as a point", 0, "a point such as (2, 3)")
    return tuple((read_expression(x), read_expression(y)) for x, y in found)


def compare_points(stated: str, derived: tuple[Answer, ...], ask: Ask) -> Comparison:
    """One point or several, in any order."""
    text = derived[0].text
    try:
        theirs = read_points(stated)
    except ExpressionNotRead as error:
        return Comparison(Agreement.CANNOT_TELL, f"the stated answer was not read: {error}")
    ours = read_points(text)
    if _mislabelled(_labelled(stated, theirs), _labelled(text, ours)):
        return Comparison(Agreement.DIFFERS, f"the answer is {text}")
    matched = [[_same_pair(one, other) for other in ours] for one in theirs]
    if any(True not in row and None in row for row in matched):
        return Comparison(Agreement.CANNOT_TELL, f"“{stated.strip()}” could not be compared with {text}")
    all_ours = all(any(row[at] for row in matched) for at in range(len(ours)))
    if all(True in row for row in matched) and all_ours:
        return _AGREES
    return Comparison(Agreement.DIFFERS, f"the answer is {text}")


def _labelled(text: str, pairs: Sequence[Pair]) -> dict[str, Pair]:
    """The points by their letters, none where not every point has one of its own."""
    letters = re.findall(r"([A-Z])['′’]*\s*=?\s*(?=\()", text)
    return dict(zip(letters, pairs, strict=True)) if len(letters) == len(set(letters)) == len(pairs) else {}


def _mislabelled(stated: dict[str, Pair], derived: dict[str, Pair]) -> bool:
    """Whether a letter that both sides use stands for another point."""
    shared = stated.keys() & derived.keys() if len(derived) > 1 else ()
    return any(_same_pair(stated[letter], derived[letter]) is False for letter in shared)


def _same_pair(one: Pair, other: Pair) -> bool | None:
    both = [same_value(a, b) for a, b in zip(one, other, strict=True)]
    return False if False in both else None if None in both else True


def compare_intercept(stated: str, derived: tuple[Answer, ...], ask: Ask) -> Comparison:
    """An intercept as a point, as a number, or as x = 4."""
    answer = derived[0]
    if _PAIR.search(stated):
        return compare_points(stated, derived, ask)
    plain = re.sub(rf"^\s*{answer.letter}\s*(?:-\s*intercept)?\s*[=:]\s*", "", stated.strip().rstrip("."))
    assert answer.value is not None
    try:
        same = same_value(read_expression(plain), answer.value)
    except ExpressionNotRead as error:
        return Comparison(Agreement.CANNOT_TELL, f"the stated answer was not read: {error}")
    return _AGREES if same else Comparison(Agreement.DIFFERS, f"the answer is {answer.text}")


def compare_equation(stated: str, derived: tuple[Answer, ...], ask: Ask) -> Comparison:
    """The equation of a line or curve, in any form with the same points."""
    text = derived[0].text
    try:
        theirs = read_relation(_without_name(stated))
        same = same_curve(theirs, read_relation(text))
    except ExpressionNotRead as error:
        return Comparison(Agreement.CANNOT_TELL, f"the stated answer was not read as an equation: {error}")
    if same is None:
        return Comparison(Agreement.CANNOT_TELL, f"“{stated.strip()}” could not be compared with {text}")
    return _AGREES if same else Comparison(Agreement.DIFFERS, f"the answer is {text}")


def _without_name(text: str) -> str:
    """An equation without the words before it, f(x) = as y =."""
    plain = text.strip().rstrip(".").strip()
    plain = re.sub(r"^(?:[A-Za-z -]+:|axis of symmetry is|the (?:line|equation) is)\s*", "", plain)
    return re.sub(r"^[fgh]\s*\(\s*x\s*\)\s*=", "y =", plain)


def same_curve(one: Relation, other: Relation) -> bool | None:
    """Whether two equations have the same points: one is a multiple of the other. None where it cannot be told."""
    try:
        first, second = (_whole(relation) for relation in (one, other))
    except (NotSurd, NoValue, BudgetExceeded):
        return None
    if one.sign != "=" or other.sign != "=" or not first.terms or not second.terms:
        return False
    if first.terms.keys() != second.terms.keys():
        return False
    key = next(iter(first.terms))
    turned = first.terms[key] * second.terms[key].reciprocal()
    return all(first.terms[name] == second.terms[name] * turned for name in first.terms)


def _whole(relation: Relation) -> Polynomial:
    return algebraic_fraction(Sum((relation.left, Negative(relation.right)))).above


def compare_equations(stated: str, derived: tuple[Answer, ...], ask: Ask) -> Comparison:
    """Several equations, such as those of two asymptotes, in any order."""
    ours = [read_relation(one) for one in derived[0].text.split(" and ")]
    try:
        theirs = [
            read_relation(_without_name(one)) for one in re.split(r"\s*(?:,|;|\band\b)\s*", stated.strip(" .")) if one
        ]
    except ExpressionNotRead as error:
        return Comparison(Agreement.CANNOT_TELL, f"the stated answer was not read as equations: {error}")
    right = all(any(same_curve(one, other) for other in ours) for one in theirs)
    complete = all(any(same_curve(one, other) for one in theirs) for other in ours)
    return _AGREES if right and complete else Comparison(Agreement.DIFFERS, f"the answer is {derived[0].text}")


def compare_circle(stated: str, derived: tuple[Answer, ...], ask: Ask) -> Comparison:
    """Centre and radius of a circle: the point, and the number behind the word radius or r =."""
    answer = derived[0]
    found = re.search(r"(?:radius|\br)\s*(?:is|=|:|of)?\s*(.+?)\s*(?:units?)?\.?\s*$", stated)
    pairs = _PAIR.findall(stated)
    ours = read_points(_PAIR.search(answer.text)[0])  # type: ignore[index]
    if found is None or len(pairs) != 1 or _PAIR.search(found[1]):
        return Comparison(Agreement.CANNOT_TELL, f"“{stated.strip()}” is not read as a centre and a radius")
    assert answer.value is not None
    try:
        point = _same_pair((read_expression(pairs[0][0]), read_expression(pairs[0][1])), ours[0])
        radius = same_value(read_expression(found[1]), answer.value)
    except ExpressionNotRead as error:
        return Comparison(Agreement.CANNOT_TELL, f"the stated answer was not read: {error}")
    return _AGREES if point and radius else Comparison(Agreement.DIFFERS, f"the answer is {answer.text}")


def compare_undefined(stated: str, derived: tuple[Answer, ...], ask: Ask) -> Comparison:
    """A gradient that there is none of."""
    plain = stated.strip().rstrip(".").casefold()
    if plain in ("undefined", "not defined", "infinite", "∞", "no gradient", "does not exist"):
        return _AGREES
    try:
        read_expression(plain)
    except ExpressionNotRead:
        return Comparison(Agreement.CANNOT_TELL, f"“{stated.strip()}” could not be compared with “undefined”")
    return Comparison(Agreement.DIFFERS, "it is undefined")
