"""Asks of algebra: methods of solving, completed squares, discriminants, remainders, identities."""

import re
from fractions import Fraction
from typing import Literal

from parsimonious.nodes import Node

from paperaudit.maths.algebra.logarithms import has_logarithm
from paperaudit.maths.related import relations_of
from paperaudit.maths.terms import expression_of
from paperaudit.maths.tree import every, first, has, the
from paperaudit.model.algebra_task import (
    CoefficientFor,
    CompletedSquare,
    Discriminant,
    DividedBy,
    Identity,
    InForm,
    LeastValue,
    OfRoots,
    Rewritten,
    RootsFor,
    RootsWanted,
    SolveBy,
    SolvingMethod,
)
from paperaudit.model.ask import Solve, Subject, Task, Transform
from paperaudit.model.expression import Expression, Letter, Number, Relation, letters_of
from paperaudit.model.fact import Fact, Holds
from paperaudit.model.paper import Part, Question
from paperaudit.wording.asides import Asides
from paperaudit.wording.scene import NotUnderstood, Scene
from paperaudit.wording.tasks import letters_named
from paperaudit.wording.topics.one_text import told_in_one
from paperaudit.wording.topics.topic import Readers, Told

ZERO = Number(Fraction(0))
_FUNCTION = re.compile(r"\b[a-z] ?\([-a-z0-9]+\)")
_RULES = (
    "solve_by", "solve_method", "what_in", "integers", "end_integer", "perfect_square",
    "set_of", "zeros", "subject_in_words", "completed",
    "in_form", "extreme", "discriminant", "nature", "of_roots", "root_count", "roots_for", "factor_for",
    "remainder_for", "remainder", "quotient", "is_factor", "show_factor", "identity", "rewritten", "collected",
)  # fmt: skip


def _task(node: Node, asides: Asides) -> Task:
    chosen = the(node, *_RULES)
    if asides.unit:
        raise NotUnderstood("a unit with a question of algebra", chosen.start)
    match chosen.expr_name:
        case "solve_by" | "solve_method":
            return SolveBy(_relations(chosen), _method(chosen.text))
        case "integers":
            return SolveBy(_relations(chosen), "", True)
        case "end_integer":
            largest = the(chosen, "end_word").text in ("largest", "greatest", "biggest", "maximum", "highest")
            relations = _relations(chosen)
            if has(chosen, "natural"):
                relations = (*relations, Relation(Letter(_sole_letter(relations)), "≥", Number(Fraction(1))))
            return SolveBy(relations, "", True, (), "largest" if largest else "smallest")
        case "perfect_square":
            return _perfect_square(chosen)
        case "what_in":
            return Solve((_relation(chosen),), letters_named(chosen)[:1])
        case "set_of":
            return Solve(_relations(chosen), ())
        case "zeros":
            return Solve((_equation(chosen),), ())
        case "subject_in_words":
            if not asides.terms and "in terms of" not in chosen.text:
                raise NotUnderstood("a letter without those it is to be written in", chosen.start)
            return Subject(letters_named(chosen)[0], _relation(chosen))
        case "completed":
            return CompletedSquare(_expressions(chosen)[0])
        case "in_form":
            return _in_form(chosen, asides)
        case "extreme":
            return _extreme(chosen)
        case "discriminant" | "nature" | "root_count":
            names: dict[str, Literal["value", "nature", "count"]] = {"discriminant": "value", "nature": "nature"}
            return Discriminant(_equation(chosen), names.get(chosen.expr_name, "count"))
        case "of_roots":
            return _of_roots(chosen)
        case "roots_for":
            return _roots_for(chosen)
        case "identity":
            return Identity(*_expressions(chosen))
        case "rewritten" | "collected":
            return _rewritten(chosen)
    return _divided(chosen)


def _facts(node: Node, scene: Scene) -> tuple[Fact, ...]:
    """Equations that a sentence states; f(x) = 2x + 1 is a function, which is not for this topic."""
    if _FUNCTION.search(node.text):
        raise NotUnderstood("a function", node.start)
    named = first(node, "let_be")
    if named is not None:
        name, value = letters_named(named)[0], expression_of(the(named, "expression"))
        return (Holds(Relation(Letter(name), "=", value)),)
    return tuple(Holds(relation) for relation in _relations(node))


def _relations(node: Node) -> tuple[Relation, ...]:
    return tuple(relation for chain in every(node, "relation") for relation in relations_of(chain))


def _sole_letter(relations: tuple[Relation, ...]) -> str:
    names = {name for one in relations for side in (one.left, one.right) for name in letters_of(side)}
    if len(names) != 1:
        raise NotUnderstood("an inequality in several letters", 0, "an inequality in one letter")
    return names.pop()


def _relation(node: Node) -> Relation:
    relation, *more = relations_of(the(node, "relation"))
    if more:
        raise NotUnderstood("more than one sign", node.start, "an equation with one sign")
    return relation


def _expressions(node: Node) -> tuple[Expression, ...]:
    return tuple(expression_of(one) for one in every(node, "expression"))


def _equation(node: Node) -> Relation:
    if has(node, "relation"):
        return _relation(node)
    expression = expression_of(the(node, "expression"))
    if isinstance(expression, Letter):  # the zeros of f are not those of the letter
        raise NotUnderstood("an expression or an equation, not a letter alone", node.start)
    return Relation(expression, "=", ZERO)


def _method(text: str) -> SolvingMethod:
    if "formula" in text:
        return "formula"
    return "completing the square" if re.search(r"complet\w+ (?:of )?the square", text) else "factorising"


def _in_form(node: Node, asides: Asides) -> Task:
    expression, form = _expressions(node)
    letters = first(node, "form_letters")
    named = tuple(letter.text for letter in every(letters, "letter")) if letters is not None else ()
    if named and not set(named) & set(letters_of(form)) and set(named) <= set(letters_of(expression)):
        expression, form = form, expression
    free = [name for name in letters_of(form) if name not in letters_of(expression)]
    if not (letters_of(expression) or has_logarithm(expression)) or not free or (named and not set(named) <= set(free)):
        raise NotUnderstood("a form without letters to be found", node.start, "a form such as (x + p)² + q")
    return InForm(expression, form, named)


def _extreme(node: Node) -> LeastValue:
    word = the(node, "extreme_word").text
    greatest = word in ("maximum", "greatest", "largest", "highest")
    expression = _expressions(node)[0]
    if isinstance(expression, Letter):
        raise NotUnderstood("a function or quantity by its letter", node.start, "an expression")
    return LeastValue(expression, bool(every(node, "letter", "expression")[0].expr_name == "letter"), greatest)


_KINDS: tuple[tuple[str, RootsWanted], ...] = (
    (r"\bno\b|non-?real", "none"),
    (r"different|distinct|unequal|two real", "different"),
    (r"equal|repeated|double|one", "equal"),
    (r"real", "real"),
)


def _roots_for(node: Node) -> RootsFor:
    words = the(node, "root_kind").text
    wanted = next(kind for pattern, kind in _KINDS if re.search(pattern, words))
    letter = next(one.text for one in every(node, "letter", "relation") if one.expr_name == "letter")
    relation = _relation(node)
    called = set(re.findall(r"(?<![a-z])[fgh](?= ?[(])", node.text))
    letters = (*letters_of(relation.left), *letters_of(relation.right))
    others = [name for name in letters if name not in (letter, *called)]
    if len(set(others)) != 1:
        raise NotUnderstood("an equation in several unknowns", node.start, f"an equation in {letter} and one unknown")
    return RootsFor(relation, letter, wanted, others[0])


def _of_roots(node: Node) -> OfRoots:
    one, other = letters_named(node)
    wanted = tuple(
        expression_of(piece) for piece in every(node, "expression", "relation") if piece.expr_name == "expression"
    )
    relation = _relation(node)
    if any(set(letters_of(piece)) - {one, other} for piece in wanted) or one == other:
        raise NotUnderstood("an expression with other letters", node.start, "an expression in the roots")
    return OfRoots(relation, (one, other), wanted)


def _perfect_square(node: Node) -> RootsFor:
    """The value for which a quadratic is a square: its equation has equal roots."""
    expression = _expressions(node)[0]
    letter = next(one.text for one in every(node, "letter", "expression") if one.expr_name == "letter")
    others = set(letters_of(expression)) - {letter}
    if len(others) != 1 or letter not in letters_of(expression):
        raise NotUnderstood("a square in several letters", node.start)
    return RootsFor(Relation(expression, "=", ZERO), letter, "equal", others.pop())


def _divided(node: Node) -> Task:
    expressions = _expressions(node)
    letter = next((one.text for one in every(node, "letter", "expression") if one.expr_name == "letter"), "")
    turned = " divided by " in node.text or " divisible by " in node.text or node.expr_name in ("remainder", "quotient")
    divisor, dividend = (expressions[1], expressions[0]) if turned else (expressions[0], expressions[1])
    match node.expr_name:
        case "factor_for":
            return CoefficientFor(dividend, divisor, ZERO, letter)
        case "remainder_for":
            if letters_of(expressions[2]):
                raise NotUnderstood("a remainder with letters", node.start)
            return CoefficientFor(dividend, divisor, expressions[2], letter)
        case "is_factor":
            if not letters_of(dividend) or not letters_of(divisor):
                raise NotUnderstood("a question about numbers", node.start)
            return DividedBy(dividend, divisor, "factor")
        case "show_factor":
            return DividedBy(dividend, divisor, "show factor")
        case "quotient":
            if not letters_of(divisor):
                raise NotUnderstood("a division by a number", node.start)
            return DividedBy(dividend, divisor, "quotient")
    if not letters_of(dividend):
        raise NotUnderstood("a division of numbers", node.start)
    return DividedBy(dividend, divisor, "remainder")


def _rewritten(node: Node) -> Rewritten | Transform:
    (expression,) = _expressions(node)
    if not letters_of(expression) or letters_of(expression) == ("π",):
        raise NotUnderstood("an expression without letters", node.start)
    word = node.text
    command: Literal["simplify", "expand", "factorise"] = (
        "factorise"
        if word.startswith("factor")
        else "expand"
        if word.startswith(("expand", "multiply"))
        else "simplify"
    )
    positive, restrictions = has(node, "positive"), has(node, "restricted")
    if not positive and not restrictions:
        return Transform(command, expression)
    return Rewritten(command, expression, positive, restrictions)


def _story(question: Question, part: Part, scene: Scene) -> Told | None:
    """What is said of an equation in a sentence of its own: it has equal roots, find k."""
    return told_in_one("algebra", _task, question, part, scene)


READERS = Readers(task=_task, facts=_facts, story=_story)
