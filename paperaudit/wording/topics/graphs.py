"""Asks about graphs of functions: "State the domain of f(x) = √(x − 3)", "For which values of x is f increasing?"."""

import re
from collections.abc import Callable

from parsimonious.nodes import Node

from paperaudit.errors import ExpressionNotRead
from paperaudit.maths.grammar import expression_grammar
from paperaudit.maths.peg import parsed
from paperaudit.maths.terms import expression_of
from paperaudit.maths.tree import every, first, has, the
from paperaudit.model.ask import Ask, Task
from paperaudit.model.expression import Expression, letters_of
from paperaudit.model.expression import Function as Ratio
from paperaudit.model.fact import Fact
from paperaudit.model.function_task import Derivative, Function, Stationary
from paperaudit.model.graph_task import (
    SOLE,
    Bending,
    DomainOf,
    GraphPoint,
    ImageOnGraph,
    Optimum,
    RegionBetween,
    Rising,
    ShiftedGraph,
)
from paperaudit.model.paper import Part, Question
from paperaudit.wording.asides import Asides
from paperaudit.wording.scene import NotUnderstood, Scene
from paperaudit.wording.tasks import has_quantity
from paperaudit.wording.topics.registry import topic_named
from paperaudit.wording.topics.topic import Readers, Told
from paperaudit.wording.topics.whole_text import whole_of


def _formula(node: Node) -> Expression:
    value = expression_of(node)
    if has_quantity(value):
        raise NotUnderstood("a size of a figure", node.start, "a formula")
    return value


def _letter(value: Expression, name: str = "") -> str:
    letters = [letter for letter in letters_of(value) if letter not in ("π", name)]
    if len(letters) > 1:
        raise NotUnderstood("more than one letter", 0, "a formula in one letter")
    return letters[0] if letters else "x"


def _function(node: Node) -> Function:
    """The function of `of_function`, by name, by formula or both."""
    if has(node, "noun_alone"):
        return Function(SOLE)
    called, measure, formula = first(node, "called"), first(node, "measure"), first(node, "expression")
    value = _formula(formula) if formula is not None else None
    if called is not None:
        return Function(the(called, "fname").text, the(called, "variable").text, value)
    if measure is not None:
        name = measure.text[0]
        variable = first(measure, "variable")
        letter = variable.text if variable is not None else _letter(value) if value is not None else ""
        return Function(name, letter, value)
    if has(node, "fname"):
        return Function(the(node, "fname").text)
    return Function("y", _letter(value) if value is not None else "x", value)


def _domain(node: Node) -> Task:
    word = the(node, "domain_word").text
    return DomainOf(_function(the(node, "of_function")), "domain and range" if " " in word else word)


def _rising(node: Node) -> Task:
    sloping = first(node, "slope_of")
    if sloping is not None:
        return Rising(Function(the(sloping, "fname").text), the(node, "slope_sign").text == "<", by_slope=True)
    return Rising(_function(the(node, "of_function")), the(node, "way", "way_noun").text.startswith("decreas"))


def _optimum(node: Node) -> Task:
    word = first(node, "extreme_word")
    text = word.text if word is not None else node.text
    greatest = re.search(r"maxim|greatest|largest", text) is not None
    function = _function(the(node, "optimised"))
    at = node.expr_name == "optimum_at"
    if not at and function.name in ("y", "f", "g", "h"):
        raise NotUnderstood("a curve", node.start)
    return Optimum(function, greatest, at)


def _rate(node: Node) -> Task:
    name, letter = the(node, "changing").text, the(node, "variable").text
    return Derivative(Function(name, letter), 1, _formula(the(node, "expression")))


def _region(node: Node) -> Task:
    one, other = (_formula(the(edge, "expression")) for edge in every(node, "edge"))
    if {*letters_of(one), *letters_of(other)} - {"x"}:
        raise NotUnderstood("curves in other letters than x", node.start)
    return RegionBetween(Function("y", "x", one), Function("y", "x", other))


def _number(text: str) -> Expression:
    return expression_of(parsed(expression_grammar(), "expression", text.replace(" ", "")))


def _shifted(node: Node) -> Task:
    steps: list[tuple[str, Expression | None]] = []
    for step in every(the(node, "steps"), "step_word"):
        kind = the(step, "mirrored", "stretched", "slid")
        if kind.expr_name == "mirrored":
            steps.append((f"reflected {the(kind, 'mirror_axis').text[0]}", None))
        elif kind.expr_name == "stretched":
            steps.append(("stretched", _number(the(kind, "amount_word").text)))
        else:
            way = re.match(r"right|left|up|down", the(kind, "slid_way").text)
            assert way is not None
            steps.append((way[0], _number(the(kind, "amount_word").text)))
    return ShiftedGraph(_function(the(node, "of_function")), tuple(steps))


def _point(node: Node) -> tuple[Expression, Expression]:
    x, y = (_number(one.text) for one in every(node, "coordinate"))
    return x, y


_CALL = re.compile(r"([fgh]) ?\(")


def _call(node: Node) -> tuple[str, Expression, Expression]:
    """The name, what stands in the brackets, and the rest with t for the call: of 2f(x − 2) + 3."""
    found = list(_CALL.finditer(node.text))
    if len(found) != 1:
        raise NotUnderstood("no function of x", node.start, "a formula such as f(x − 2) + 3")
    depth, at = 0, found[0].end() - 1
    for place in range(at, len(node.text)):
        depth += {"(": 1, ")": -1}.get(node.text[place], 0)
        if not depth:
            break
    inner = _number(node.text[at + 1 : place])
    outer = _number(f"{node.text[: found[0].start()]}(t){node.text[place + 1 :]}")
    if set(letters_of(inner)) != {"x"} or set(letters_of(outer)) != {"t"} or isinstance(inner, Ratio):
        raise NotUnderstood("no simple change of a graph", node.start)
    return found[0][1], inner, outer


def _image_on(node: Node) -> Task:
    goes = the(node, "where_it_goes")
    name, inner, outer = _call(the(goes, "expression"))
    points = every(node, "point") or every(goes, "point")
    named = first(node, "fname")
    if named is not None and named.text != name:
        raise NotUnderstood("another function", node.start)
    return ImageOnGraph(name, inner, outer, _point(points[0]) if points else None)


def _described(node: Node) -> Task:
    name, inner, outer = _call(the(node, "expression"))
    if the(node, "fname").text != name:
        raise NotUnderstood("another function", node.start)
    return ImageOnGraph(name, inner, outer, describe=True)


_READERS: dict[str, Callable[[Node], Task]] = {
    "domain": _domain,
    "inflection": lambda node: Bending(_function(the(node, "of_function")), "x" if has(node, "only_x") else "point"),
    "concave": lambda node: Bending(_function(the(node, "of_function")), the(node, "bend").text),
    "rising": _rising,
    "falling_of": _rising,
    "nature": lambda node: Stationary(_function(the(node, "of_function")), nature="nature" in node.text),
    "optimum_at": _optimum,
    "optimum": _optimum,
    "rate": _rate,
    "region": _region,
    "shifted": _shifted,
    "image_on": _image_on,
    "described": _described,
}


def _task(node: Node, asides: Asides) -> Task:
    chosen = the(node, *_READERS)
    return _READERS[chosen.expr_name](chosen)


def _facts(node: Node, scene: Scene) -> tuple[Fact, ...]:
    said = the(node, "given_formula", "graph_point")
    if said.expr_name == "graph_point":
        return (GraphPoint(the(said, "fname").text, *_point(the(said, "point"))),)
    value = _formula(the(said, "expression"))
    measure = the(said, "measure")
    variable = first(measure, "variable")
    letters = [name for name in letters_of(value) if name != "π"]
    if len(letters) != 1 or (variable is not None and [variable.text] != letters):
        raise NotUnderstood("no formula in one letter", said.start)
    return (Function(measure.text[0], letters[0], value),)


def _story(question: Question, part: Part, scene: Scene) -> Told | None:
    """A graph that one sentence moves and another asks for, or a point on one graph and its image on another."""
    whole = whole_of(question, part, scene)
    if whole is None:
        return None
    try:
        chosen = the(parsed(topic_named("graphs of functions").rules(), "ask", ". ".join(whole.pieces)), *_READERS)
        task = _READERS[chosen.expr_name](chosen)
    except (ExpressionNotRead, NotUnderstood):
        return None
    if not isinstance(task, ShiftedGraph | ImageOnGraph):
        return None
    return Told(Ask(task, whole.said, whole.accuracy, whole.unit, read_as=task.in_words(), place=whole.place))


READERS = Readers(task=_task, facts=_facts, story=_story)
