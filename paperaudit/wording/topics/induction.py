"""Claims to be proved by induction: 1 + 2 + … + n = n(n + 1)/2, and 7^n − 1 is divisible by 6."""

import re
from fractions import Fraction

from parsimonious.nodes import Node

from paperaudit.maths.powers import put_in
from paperaudit.maths.same_value import same_value
from paperaudit.maths.terms import expression_of
from paperaudit.maths.tree import every, first, the
from paperaudit.model.ask import Task
from paperaudit.model.expression import Expression, Negative, Number, Sum, letters_of
from paperaudit.model.proof_task import InductiveMultiple, InductiveSum
from paperaudit.wording.asides import Asides
from paperaudit.wording.scene import NotUnderstood
from paperaudit.wording.topics.topic import Readers


def _task(node: Node, asides: Asides) -> Task:
    chosen = the(node, "summed", "listed", "divisible")
    if asides.unit or asides.accuracy is not None:
        raise NotUnderstood("a unit or an accuracy with a proof", chosen.start)
    start = _start(node)
    if chosen.expr_name == "divisible":
        expression = expression_of(the(chosen, "expression"))
        divisor = int(the(chosen, "divisor").text)
        if divisor < 2:
            raise NotUnderstood("a multiple of 0 or 1", chosen.start)
        return InductiveMultiple(expression, _letter(expression, chosen), divisor, 1 if start is None else start)
    if chosen.expr_name == "summed":
        return _summed(chosen, start)
    return _listed(chosen, start)


def _start(node: Node) -> int | None:
    """The first integer that the words name; None where they say positive integers, or nothing."""
    said = first(node, "for_all", "leading")
    if said is None:
        return None
    bound = re.search(r"([>≥]) ?(\d+)", said.text)
    if bound is None:
        return 0 if "non-negative" in said.text else None
    return int(bound[2]) + (bound[1] == ">")


def _letter(expression: Expression, node: Node) -> str:
    letters = letters_of(expression)
    if len(letters) != 1 or letters[0] == "π":
        raise NotUnderstood("a claim in several letters, or in none", node.start, "an expression in n")
    return letters[0]


def _summed(node: Node, start: int | None) -> InductiveSum:
    sigma = the(node, "sigma")
    term, total = (expression_of(one) for one in every(node, "expression"))
    index, upper = the(sigma, "index").text[0], the(sigma, "upper").text
    low = int(the(sigma, "first_number").text)
    if set(letters_of(term)) - {index} or set(letters_of(total)) != {upper} or (start is not None and start != low):
        raise NotUnderstood("a sum with other letters", node.start, "a sum from 1 to n")
    return InductiveSum(term, index, total, upper, low)


def _listed(node: Node, start: int | None) -> InductiveSum:
    *pieces, total = every(node, "expression", "last_term")
    terms = [expression_of(piece) for piece in pieces]
    if isinstance(terms[0], Sum):
        terms[:1] = terms[0].terms
    *shown, last = terms
    value = expression_of(total)
    letter = _letter(value, node)
    if letters_of(last) != (letter,) or any(map(letters_of, shown)) or len(shown) < 2:
        raise NotUnderstood("a sum whose last term is not said", node.start, "terms up to one in n")
    if start not in (None, 1) or any(isinstance(one, Negative) for one in shown):
        raise NotUnderstood("a sum that does not begin at 1", node.start)
    for place, one in enumerate(shown, 1):
        if same_value(put_in(last, letter, Number(Fraction(place))), one) is not True:
            raise NotUnderstood("first terms that are not what the last one says", node.start)
    return InductiveSum(last, letter, value, letter, 1, tuple(shown))


READERS = Readers(task=_task)
"""The claim with its letter and the integer from which on it is said to hold."""
