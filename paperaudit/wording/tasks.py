"""Turns the parse tree of an ask into its task."""

import re

from parsimonious.nodes import Node

from paperaudit.maths.notation import UNIT_MARK
from paperaudit.maths.numerals import number_of
from paperaudit.maths.related import relations_of
from paperaudit.maths.terms import expression_of
from paperaudit.maths.tree import every, the
from paperaudit.maths.units import MONEY, conversion, unit_named
from paperaudit.model.ask import Command, Establish, Find, Rounded, Solve, Subject, Task, Transform, WriteAs
from paperaudit.model.expression import (
    AnswerTo,
    ArcLengthOf,
    ArcOf,
    Expression,
    Letter,
    Measured,
    Negative,
    Number,
    Of,
    Quantity,
    Quotient,
    Relation,
    Sum,
    leaves,
    letters_of,
    with_leaves,
)
from paperaudit.model.fact import Circle, Diameter, Fact, Given, Holds, Shape, Tangent
from paperaudit.wording.asides import Asides
from paperaudit.wording.clauses import facts_of
from paperaudit.wording.scene import NotUnderstood, Scene
from paperaudit.wording.shapes import introduced
from paperaudit.wording.wanted import wanted_of

_COMMANDS: tuple[tuple[str, Command], ...] = (
    ("expand", "expand"),
    ("multiply", "expand"),
    ("remove", "expand"),
    ("factor", "factorise"),
    ("simplify", "simplify"),
    ("evaluate", "evaluate"),
)
_FORMS = (
    (r"recurring decimal(?: fraction)?", "recurring decimal"),
    (r"(?:terminating )?decimal(?: fraction| number)?", "decimal"),
    (r"(?:standard(?: index)?|scientific) (?:form|notation)", "standard form"),
    (r"(?:ordinary|normal)(?: decimal)? (?:number|form|notation|decimal)|full", "ordinary number"),
    (r"(?:index|exponential|power) (?:form|notation)|single power", "index form"),
    (r"(?:common |proper |vulgar |(?:single |one )?(?:algebraic )?)?fraction", "fraction"),
    (r"percentage|percent|%", "percentage"),
    (r"mixed (?:number|fraction)", "mixed number"),
    (r"improper fraction", "improper fraction"),
    (r"(?:fraction in )?(?:its )?(?:lowest terms|simplest form)", "lowest terms"),
)

_WRITTEN = ("write", "express", "give")


def task_of(node: Node, conditions: tuple[Given, ...], asides: Asides, scene: Scene) -> Task:
    """The task of one alternative of `ask`. Raises NotUnderstood where its parts do not fit."""
    match node.expr_name:
        case "establish":
            return Establish(_claims(node, scene), "prove" if node.text.startswith("prove") else "show")
        case "decide":
            return Establish(_claims(node, scene), "decide")
        case "solve":
            return _solve(node)
        case "changed":
            return Transform("evaluate", _changed(node))
        case "transform":
            return Transform(_command(node.text), expression_of(the(node, "expression")))
        case "write_as":
            return _written_as(expression_of(the(node, "expression")), form_named(the(node, "form_name").text))
        case "subject":
            relation, *more = relations_of(the(node, "relation"))
            if more:
                raise NotUnderstood("more than one sign in the formula", node.start, "a formula with one equals sign")
            return Subject(letters_named(node)[0], relation)
        case _:
            return _find(node, conditions, asides, scene)


def _written_as(value: Expression, form: str) -> WriteAs | Transform:
    """Money in the unit of a mass, $65 in pounds, is money in another currency, at a rate that stands elsewhere."""
    if isinstance(value, Measured) and value.unit in MONEY and unit_named(form) and not conversion(value.unit, form):
        raise NotUnderstood("money in another currency", 0)
    if form in ("fraction", "lowest terms") and _is_in_letters(value):
        return Transform("simplify", value)
    if form in ("integer", "whole number", "number", "single number"):
        return Transform("evaluate", value)
    return WriteAs(value, form)


def _is_in_letters(value: Expression) -> bool:
    """Whether letters, no sizes of a figure and no units make up an expression."""
    return not has_quantity(value) and bool({*letters_of(value)} - {"π"}) and not isinstance(value, Letter)


def in_form(task: Task, form: str) -> Task:
    """A calculation with numbers whose answer is asked for in a form: WriteAs; any other task as it is."""
    match task:
        case Transform("evaluate" | "simplify", expression) | Rounded(expression) if form and is_numeric(expression):
            return WriteAs(expression, form)
    return task


def form_named(words: str) -> str:
    """The model's name of a form: "a decimal fraction" is "decimal", "metres" is "m"."""
    plain = words.replace(UNIT_MARK, " ").strip()
    for pattern, name in _FORMS:
        if re.fullmatch(pattern, plain):
            return name
    unit = unit_named(plain)
    return unit.symbol if unit is not None else plain


def letters_named(node: Node) -> tuple[str, ...]:
    """The letters that a `solve_for` or a `subject` names."""
    return tuple(
        {"pi": "π", "theta": "θ", "alpha": "α", "beta": "β", "gamma": "γ"}.get(letter.text, letter.text)
        for letter in every(node, "letter", "relation")
        if letter.expr_name == "letter"
    )


def _changed(node: Node) -> Expression:
    """R250 increased by 15% is R250 + 15% of R250."""
    whole, share = expression_of(the(node, "expression")), number_of(the(node, "percentage"))
    change = Of(share, whole)
    return Sum((whole, change if node.text.startswith("increase") else Negative(change)))


def _claims(node: Node, scene: Scene) -> tuple[Fact, ...]:
    """The facts to be shown: of a circle, the tangent or diameter alone, or the points and not their polygon."""
    facts = tuple(fact for clause in _claims_and_suppositions(node)[0] for fact in facts_of(clause, scene))
    lines = any(isinstance(fact, Tangent | Diameter) for fact in facts)
    points = any(isinstance(fact, Circle) for fact in facts)
    return tuple(
        fact
        for fact in facts
        if not (lines and isinstance(fact, Circle) and len(fact.points) < 3)
        and not (points and isinstance(fact, Shape) and not fact.qualities)
    )


def _claims_and_suppositions(node: Node) -> tuple[list[Node], list[Node]]:
    """The clauses of what is to be shown, and those behind "if" or "in rectangle ABCD", which are given."""
    claims: list[Node] = []
    supposed: list[Node] = []
    given = False
    for piece in every(node, "clause", "joint"):
        if piece.expr_name == "joint":
            given = given or _SUPPOSED.search(piece.text) is not None
        else:
            (supposed if given else claims).append(piece)
    return claims, supposed


_SUPPOSED = re.compile(r"\b(?:if|when|given that|where|for which|in(?= which| $|$))(?![a-z])")


def suppositions(node: Node) -> list[Node]:
    """The clauses of an ask to show something that are given: "is AB = AC if ∠B = ∠C?"."""
    return _claims_and_suppositions(node)[1]


def named_in_claims(node: Node, scene: Scene) -> tuple[Fact, ...]:
    """The figures that a claim names in passing, which are given: the diagonals of rectangle ABCD are equal."""
    claims = _claims_and_suppositions(node)[0]
    return tuple(fact for clause in claims for fact in introduced(clause, scene, facts_of(clause, scene)))


def _command(words: str) -> Command:
    return next(command for start, command in _COMMANDS if words.startswith(start))


def _solve(node: Node) -> Solve:
    system = the(node, "system")
    chains = tuple(every(system, "relation"))
    if len(chains) > 1 and " each " in node.text[: system.start - node.start]:
        raise NotUnderstood("equations that are no system", node.start, "one equation in a part")
    relations = tuple(relation for chain in chains for relation in relations_of(chain))
    letters = tuple(
        name
        for part in every(node, "solve_for", "solve_letter", "system")
        if part.expr_name in ("solve_for", "solve_letter")
        for name in letters_named(part)
    )
    return Solve(relations, letters)


def _find(node: Node, conditions: tuple[Given, ...], asides: Asides, scene: Scene) -> Task:
    """Find, or what a plain "write" or "work out" comes to with the accuracy and the conditions."""
    wanted = wanted_of(the(node, "wanted"), scene)
    if node.text.startswith("how long"):
        wanted = tuple(with_leaves(size, _long) for size in wanted)
    if asides.terms:
        return WriteAs(wanted[0], f"in terms of {asides.terms}")
    if relations := _equations_for(wanted, conditions):
        return Solve(relations, tuple(name for item in wanted for name in letters_of(item)))
    of_letters = len(wanted) == 1 and _is_in_letters(wanted[0]) and ":" not in node.text
    if of_letters and asides.lowest and node.text.startswith(_WRITTEN):
        return Transform("simplify", wanted[0])
    if len(wanted) > 1 or not is_numeric(wanted[0]):
        return Find(wanted)
    if asides.accuracy is not None and is_plain(wanted[0]):
        return Rounded(wanted[0])
    if asides.lowest and isinstance(wanted[0], Quotient | Number):
        return WriteAs(wanted[0], "lowest terms")
    return Transform("evaluate", wanted[0])


def _long(leaf: Expression) -> Expression:
    return ArcLengthOf(leaf) if isinstance(leaf, ArcOf) else leaf


def _equations_for(wanted: tuple[Expression, ...], conditions: tuple[Given, ...]) -> tuple[Relation, ...]:
    """The conditions, where letters are wanted and these are equations in them and nothing else."""
    facts = [fact for given in conditions for fact in given.facts]
    relations = tuple(fact.relation for fact in facts if isinstance(fact, Holds))
    letters = {name for relation in relations for side in (relation.left, relation.right) for name in letters_of(side)}
    sized = any(has_quantity(side) for relation in relations for side in (relation.left, relation.right))
    plain = all(isinstance(item, Letter) and item.name in letters for item in wanted)
    return relations if plain and not sized and len(relations) == len(facts) else ()


def is_algebra(task: Task) -> bool:
    """Whether a task is worked on numbers and letters alone, without a figure."""
    match task:
        case Solve(relations):
            return not any(has_quantity(side) for relation in relations for side in (relation.left, relation.right))
        case Transform(_, expression) | WriteAs(expression) | Rounded(expression):
            return not has_quantity(expression)
        case _:
            return isinstance(task, Subject)


def has_quantity(expression: Expression) -> bool:
    """Whether a size of the figure, or the answer to another part, occurs in an expression."""
    return any(isinstance(leaf, Quantity | AnswerTo) for leaf in leaves(expression))


def is_numeric(expression: Expression) -> bool:
    """Whether an expression holds numbers and units only."""
    return all(isinstance(leaf, Number) or leaf == Letter("π") for leaf in leaves(expression))


def is_plain(expression: Expression) -> bool:
    """Whether an expression is one number, with or without a unit and a sign."""
    match expression:
        case Measured(amount) | Negative(amount):
            return is_plain(amount)
        case Quotient(above, below):
            return isinstance(above, Number) and isinstance(below, Number)
        case _:
            return isinstance(expression, Number)
