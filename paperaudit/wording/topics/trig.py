"""Asks about sines, cosines and tangents: "Solve sin x = 0.5 for 0° ≤ x ≤ 360°", "State the period of y = 3 sin 2x"."""

import re
from collections.abc import Callable
from fractions import Fraction
from typing import Literal

from parsimonious.nodes import Node

from paperaudit.errors import ExpressionNotRead
from paperaudit.maths.exact import PI, NotSurd, rational_value
from paperaudit.maths.grammar import expression_grammar
from paperaudit.maths.number_forms import whole_or_fraction
from paperaudit.maths.peg import parsed
from paperaudit.maths.powers import put_in
from paperaudit.maths.related import relations_of
from paperaudit.maths.terms import expression_of
from paperaudit.maths.tree import every, first, the
from paperaudit.maths.trig.angles import functions_in
from paperaudit.maths.trig.radians import has_radians, in_degrees
from paperaudit.model.ask import Ask, Task
from paperaudit.model.expression import Expression, Measured, Number, Relation, letters_of
from paperaudit.model.paper import Part, Question
from paperaudit.model.trig_task import InRadians, OfWave, SolveTrig
from paperaudit.wording.asides import Asides
from paperaudit.wording.scene import NotUnderstood, Scene
from paperaudit.wording.tasks import has_quantity
from paperaudit.wording.topics import trig_forms
from paperaudit.wording.topics.registry import topic_named
from paperaudit.wording.topics.topic import Readers, Told
from paperaudit.wording.topics.whole_text import whole_of

_WAVES: dict[str, Literal["amplitude", "period", "range", "greatest value", "least value"]] = {
    "amplitude": "amplitude",
    "period": "period",
    "range": "range",
    "maximum value": "greatest value",
    "greatest value": "greatest value",
    "minimum value": "least value",
    "least value": "least value",
}


_FEWEST_DEGREES = 30
"""Bounds without a sign for degrees below this may be meant in radians."""

_FORMS: dict[str, Callable[[Node], Task]] = {
    "identity": trig_forms.identity,
    "simplest": trig_forms.simplest,
    "exact_value": trig_forms.exact_value,
    "ratio_from": trig_forms.ratio_from,
}


def _task(node: Node, asides: Asides) -> Task:
    chosen = the(node, "general", "solve_bounded", "wave", "radians", "back", *_FORMS)
    if chosen.expr_name in _FORMS:
        if asides.accuracy is not None or asides.terms:
            raise NotUnderstood("a form of a trigonometric expression to an accuracy, or in other terms", 0)
        return _FORMS[chosen.expr_name](chosen)
    match chosen.expr_name:
        case "general":
            return _solve(chosen, None)
        case "solve_bounded":
            bounds = first(chosen, "bounds")
            if bounds is None:
                raise NotUnderstood("between which angles", chosen.start, "an interval such as 0° ≤ x ≤ 360°")
            return _solve(chosen, bounds)
        case "wave":
            formula = expression_of(the(chosen, "expression"))
            if not functions_in(formula) or has_quantity(formula):
                raise NotUnderstood("no sine, cosine or tangent", chosen.start)
            return OfWave(_WAVES[the(chosen, "wave_word").text], formula)
        case "radians":
            return InRadians(_degrees(the(chosen, "degree_end")))
    value = expression_of(the(chosen, "expression"))
    if ("π" not in chosen.text and "rad" not in chosen.text) or any(name != "π" for name in letters_of(value)):
        raise NotUnderstood("no angle in radians", chosen.start)
    return InRadians(value, back=True)


def _solve(node: Node, bounds: Node | None) -> SolveTrig:
    relations = relations_of(the(node, "relation"))
    if len(relations) != 1 or relations[0].sign != "=":
        raise NotUnderstood("no single equation", node.start)
    relation: Relation = relations[0]
    letters = dict.fromkeys((*letters_of(relation.left), *letters_of(relation.right)))
    ratio = bool(functions_in(relation.left) or functions_in(relation.right))
    letters.pop(PI, None)
    if len(letters) != 1 or not ratio or any(map(has_quantity, (relation.left, relation.right))):
        raise NotUnderstood("no equation in one angle", node.start)
    (letter,) = letters
    radians = has_radians(relation.left) or has_radians(relation.right)
    if bounds is None:
        if radians:
            raise NotUnderstood("a general solution in radians", node.start, "an equation in degrees")
        return SolveTrig(relation, letter)
    ends = every(bounds, "degree_end")
    in_pi = ["π" in end.text or "pi" in end.text for end in ends]
    if any(in_pi) or radians:
        if not all(told or end.text.strip() == "0" for told, end in zip(in_pi, ends, strict=True)) or not any(in_pi):
            raise NotUnderstood("bounds in degrees beside radians", bounds.start, "bounds as multiples of π")
        radians = True
        relation = Relation(_plain(relation.left, node), "=", _plain(relation.right, node))
    low, high = (_degrees(end) for end in ends)
    if not radians and not any("°" in end.text for end in ends) and max(map(_size, (low, high))) < _FEWEST_DEGREES:
        raise NotUnderstood("bounds that may be radians", bounds.start, "bounds in degrees, or multiples of π")
    named = first(bounds, "letter_name")
    if named is not None and named.text.replace("theta", "θ") != letter:
        raise NotUnderstood("bounds of another letter", bounds.start)
    signs = [piece.text for piece in every(bounds, "less", "opening", "closing")]
    opened = [sign in ("<", "(", ")") for sign in signs] or [False, False]
    return SolveTrig(relation, letter, low, high, opened[0], opened[-1], radians)


def _plain(side: Expression, node: Node) -> Expression:
    """A side of an equation in radians with its angles in degrees."""
    try:
        return in_degrees(side)
    except NotSurd:
        raise NotUnderstood("an angle in radians without π", node.start, "multiples of π") from None


def _degrees(node: Node) -> Expression:
    value = expression_of(parsed(expression_grammar(), "expression", node.text.strip().rstrip("° ")))
    if PI in letters_of(value):
        value = whole_or_fraction(_times_half_turn(value))
    assert not isinstance(value, Measured)
    return value


def _size(end: Expression) -> Fraction:
    return abs(rational_value(end) or Fraction(0))


def _times_half_turn(value: Expression) -> Fraction:
    """A multiple of π in degrees."""
    found = rational_value(put_in(value, PI, Number(Fraction(180))))
    if found is None:
        raise NotUnderstood("an irrational multiple of π", 0, "a multiple of π")
    return found


_LEAD = re.compile(r"^(?:it is )?(?:given|if|suppose|let|you are given)(?: that)?:? ?")


def _story(question: Question, part: Part, scene: Scene) -> Told | None:
    """One ratio from another where the angle's place has a sentence of its own: "sin A = 3/5. A is obtuse."."""
    whole = whole_of(question, part, scene) if not (question.figure or part.figure) else None
    if whole is None or not 2 <= len(whole.pieces) <= _MOST_SENTENCES or whole.accuracy is not None or whole.unit:
        return None
    *told, asked = (piece for one in whole.pieces for piece in re.split(r"\. (?!\d)", one))
    told = sorted((_LEAD.sub("", piece) for piece in told), key=lambda piece: "=" not in piece)
    text = f"given that {' and '.join(told)}, {asked}"
    try:
        chosen = the(parsed(topic_named("trigonometry").rules(), "ask", text), *_FORMS)
        task = trig_forms.ratio_from(chosen) if chosen.expr_name == "ratio_from" else None
    except (ExpressionNotRead, NotUnderstood):
        return None
    if task is None:
        return None
    ask = Ask(task, whole.said, read_as=text, place=whole.place)
    return Told(ask, tuple(whole.givens[:-1]))


_MOST_SENTENCES = 4

READERS = Readers(task=_task, story=_story)
