"""Claims that school proves by contradiction: √2 is irrational, there is no largest even number, primes do not end."""

import re
from fractions import Fraction

from parsimonious.nodes import Node

from paperaudit.maths.algebra.terms import NotTerms, terms_of
from paperaudit.maths.related import relations_of
from paperaudit.maths.tree import every, the
from paperaudit.model.ask import Task
from paperaudit.model.proof_task import ByContradiction
from paperaudit.wording.asides import Asides
from paperaudit.wording.scene import NotUnderstood
from paperaudit.wording.topics.topic import Readers

_RULES = ("root", "no_end", "primes", "parity", "no_integers", "sum_of")


def _task(node: Node, asides: Asides) -> Task:
    chosen = the(node, *_RULES)
    if asides.unit or asides.accuracy is not None:
        raise NotUnderstood("a unit or an accuracy with a proof", chosen.start)
    match chosen.expr_name:
        case "root":
            cube = "³" in chosen.text or "∛" in chosen.text or "cube" in chosen.text
            return ByContradiction("root", (int(the(chosen, "plain_whole").text), 3 if cube else 2))
        case "no_end":
            return _no_end(chosen)
        case "primes":
            return ByContradiction("primes")
        case "parity":
            return _parity(chosen)
        case "no_integers":
            return _no_integers(chosen)
    return ByContradiction("sum irrational")


def _no_end(node: Node) -> ByContradiction:
    small = the(node, "end_word").text in ("smallest", "least")
    kind = the(node, "kind").text
    positive = "positive" in node.text
    multiple = re.search(r"multiple of (\d+)", kind)
    if "rational" in kind:
        numbers: tuple[int, ...] = ()
    elif multiple is not None:
        numbers = (int(multiple[1]), 0)
    elif "square" in kind:
        raise NotUnderstood("square numbers", node.start)
    else:
        numbers = (2, int("odd" in kind)) if "even" in kind or "odd" in kind else (1, 0)
    bounded = small and (positive or "natural" in kind)
    if (bounded and numbers) or (numbers and not numbers[0]):
        raise NotUnderstood("a claim that is false", node.start, "a kind of numbers without an end")
    said = kind.removeprefix("positive ")
    return ByContradiction(
        "no end", numbers, "smallest" if small else "largest", f"positive {said}" if positive else said
    )


def _parity(node: Node) -> ByContradiction:
    raised = the(node, "raised").text
    given, claimed = (_divided(one.text) for one in every(node, "divided"))
    letters = re.findall(r"(?:if|when) ([a-z])|([a-z]) is(?: also)? (?:an|ev|odd|a m|div)", node.text)
    names = {name for pair in letters for name in pair if name}
    if given != claimed or len(names) != 1 or not 2 <= given[0] <= 60:
        raise NotUnderstood("different numbers", node.start, "the same property of n and its power")
    return ByContradiction("parity", (*given, 3 if "3" in raised or "³" in raised else 2), said=names.pop())


def _divided(text: str) -> tuple[int, int]:
    number = re.search(r"\d+", text)
    return (int(number[0]), 0) if number else (2, int("odd" in text))


def _no_integers(node: Node) -> ByContradiction:
    relations = relations_of(the(node, "relation"))
    if len(relations) != 1 or relations[0].sign != "=":
        raise NotUnderstood("no single equation", node.start)
    try:
        left, right = terms_of(relations[0].left), terms_of(relations[0].right)
    except NotTerms:
        raise NotUnderstood("an equation of another kind", node.start) from None
    if [term.degree for term in left] != [1, 1] or len(right) != 1 or right[0].degree:
        raise NotUnderstood("an equation of another kind", node.start, "an equation such as 2a + 4b = 1")
    found = (*(term.coefficient for term in left), right[0].coefficient)
    if any(Fraction(one).denominator != 1 for one in found):
        raise NotUnderstood("fractions", node.start, "whole numbers")
    letters = "".join(term.powers[0][0] for term in left)
    return ByContradiction("no integers", tuple(int(one) for one in found), said=letters)


READERS = Readers(task=_task)
"""The claim by its kind, with its numbers."""
