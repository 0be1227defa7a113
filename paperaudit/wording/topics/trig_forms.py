"""Asks about trigonometric expressions: identities, simplest forms, exact values, one ratio from another."""

import re
from fractions import Fraction

from parsimonious.nodes import Node

from paperaudit.errors import BudgetExceeded, NoValue
from paperaudit.maths.exact import NotSurd
from paperaudit.maths.related import relations_of
from paperaudit.maths.terms import expression_of
from paperaudit.maths.tree import every, first, the
from paperaudit.maths.trig.angles import angle_of, functions_in, lettered
from paperaudit.maths.trig.measured import angle_letters, apart
from paperaudit.maths.trig.radians import has_radians, in_degrees
from paperaudit.maths.trig.rewriting import chains
from paperaudit.maths.write import write
from paperaudit.model.ask import Task
from paperaudit.model.expression import Expression, Number, Relation
from paperaudit.model.trig_task import ExactRatio, Identity, RatioFrom, SimplerTrig
from paperaudit.wording.scene import NotUnderstood
from paperaudit.wording.tasks import has_quantity

_SPECIAL = 15
"""Degrees of which every multiple has an exact value that school knows."""
_QUADRANTS = {"acute": (0, 90), "obtuse": (90, 180), "reflex": (180, 360)}
_NUMBERED = {"first": (0, 90), "second": (90, 180), "third": (180, 270), "fourth": (270, 360),
             "1st": (0, 90), "2nd": (90, 180), "3rd": (180, 270), "4th": (270, 360)}  # fmt: skip


def _in_letters(node: Node) -> Expression:
    value = lettered(expression_of(node))
    if has_quantity(value) or not functions_in(value):
        raise NotUnderstood("no trigonometric expression", node.start)
    return value


def identity(node: Node) -> Task:
    """Two sides to be shown equal; one with an angle named by a capital is left to figures where it is not true."""
    sides = [lettered(expression_of(side)) for side in every(node, "expression")]
    radians = any(map(has_radians, sides))
    sides = [_degrees(side, node) for side in sides] if radians else sides
    if any(map(has_quantity, sides)) or not any(map(functions_in, sides)):
        raise NotUnderstood("no trigonometric identity", node.start)
    letters = [name for side in sides for name in angle_letters(side)]
    if not letters:
        raise NotUnderstood("no angle that may be any", node.start)
    if any(name.isupper() for name in letters):
        try:
            differ = apart(sides[0], sides[1])
        except NoValue:
            differ = {}
        if differ is not None:
            raise NotUnderstood("angles of a figure", node.start)
    return Identity(Relation(sides[0], "=", sides[1]), radians)


def simplest(node: Node) -> Task:
    """An expression to simplify, or an exact value where no letter stands in it."""
    value, printed = _without_radians(_in_letters(the(node, "expression")), node)
    if not angle_letters(value):
        return ExactRatio(value, printed)
    return SimplerTrig(value, printed)


def _without_radians(value: Expression, node: Node) -> tuple[Expression, Expression | None]:
    """The expression with its angles in degrees, and as it is printed where that has radians."""
    return (_degrees(value, node), value) if has_radians(value) else (value, None)


def _degrees(value: Expression, node: Node) -> Expression:
    try:
        return in_degrees(value)
    except NotSurd:
        raise NotUnderstood("angles in radians without π", node.start, "multiples of π") from None


def exact_value(node: Node) -> Task:
    """The exact value of functions of special angles, or of such that belong together (20° and 70°)."""
    value, printed = _without_radians(_in_letters(the(node, "expression")), node)
    if angle_letters(value):
        raise NotUnderstood("a letter in an exact value", node.start)
    try:
        angles = [angle_of(function.argument).degrees for function in functions_in(value)]
    except NotSurd:
        raise NotUnderstood("an angle in degrees", node.start) from None
    if any(angle % _SPECIAL for angle in angles) and not _comes_to_a_number(value):
        raise NotUnderstood("a value that is no exact one", node.start)
    return ExactRatio(value, printed)


def _comes_to_a_number(value: Expression) -> bool:
    """Whether functions of other angles cancel: sin 20°/cos 70°."""
    try:
        return len(functions_in(value)) > 1 and not all(functions_in(chain.end) for chain in chains(value))
    except (NotSurd, NoValue, BudgetExceeded):
        return False


def ratio_from(node: Node) -> Task:
    """One ratio from another: "Given that sin A = 3/5 and A is obtuse, find cos A"."""
    relations = relations_of(the(node, "known"))
    if len(relations) != 1 or relations[0].sign != "=":
        raise NotUnderstood("no single equation", node.start)
    known = Relation(lettered(relations[0].left), "=", lettered(relations[0].right))
    wanted = _in_letters(the(node, "wanted_ratio"))
    letters = set(angle_letters(known.left)) | set(angle_letters(known.right))
    if len(letters) != 1 or set(angle_letters(wanted)) - letters or not functions_in(known.left):
        raise NotUnderstood("no one angle", node.start)
    (letter,) = letters
    low, high, signs = None, None, []
    for condition in every(node, "where_it_is"):
        found, sign = _condition(condition, letter)
        if found is not None:
            low, high = found
        if sign is not None:
            signs.append(sign)
    return RatioFrom(known, letter, wanted, low, high, tuple(signs))


Bounds = tuple[Expression, Expression]


def _condition(node: Node, letter: str) -> tuple[Bounds | None, tuple[str, int] | None]:
    """Between which angles, or the sign of a function, that a clause says of the letter."""
    named = first(node, "of_letter")
    if named is not None and named.text.strip().replace("theta", "θ").replace("the angle ", "") not in (
        letter,
        "the angle",
        "it",
    ):
        raise NotUnderstood("another angle", node.start)
    signed = first(node, "sign_clause")
    if signed is not None:
        (function,) = functions_in(lettered(expression_of(the(signed, "expression"))))
        if angle_letters(function) != (letter,) or write(function.argument) != letter:
            raise NotUnderstood("another angle", node.start)
        return None, (function.name, 1 if ">" in signed.text else -1)
    word = re.search(r"acute|obtuse|reflex|first|second|third|fourth|[1-4](?:st|nd|rd|th)", node.text)
    if word is not None:
        ends = {**_QUADRANTS, **_NUMBERED}[word[0]]
        return _ends(ends), None
    numbers = re.findall(r"-?\d+", re.sub(r"[≤<]|°", " ", node.text))
    if len(numbers) != 2:
        raise NotUnderstood("between which angles", node.start, "an interval such as 90° < A < 180°")
    return _ends((int(numbers[0]), int(numbers[1]))), None


def _ends(ends: tuple[int, int]) -> Bounds:
    return Number(Fraction(ends[0])), Number(Fraction(ends[1]))
