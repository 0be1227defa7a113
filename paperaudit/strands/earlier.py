"""Parts that build on another: "answer to a" stands for what the earlier part was found to be."""

import re
from collections.abc import Sequence
from dataclasses import replace

from paperaudit.errors import PaperauditError
from paperaudit.model.ask import Find, Solve, Transform
from paperaudit.model.audited import AuditedPart
from paperaudit.model.derivation import Answer, Derived
from paperaudit.model.expression import AnswerTo, Expression, Letter, Quantity, Relation, leaves, with_leaves
from paperaudit.model.fact import Fact, Given, Holds
from paperaudit.model.reading import Reading, Unread

_NAMED = re.compile(r"(?:the\s+)?answer\s+to\s+(?:part\s+|question\s+)?([0-9a-z.() ]+)", re.IGNORECASE)
_LEVEL = re.compile(r"[0-9]+|[a-z]+", re.IGNORECASE)


class NoEarlierAnswer(PaperauditError):
    """A part builds on one that is not above it, or that has not the one answer that is meant."""


def names_a_part_alone(unread: Unread) -> bool:
    """Whether a given is nothing but "answer to a", which is no statement, and no fault either."""
    return unread.where == "given" and _NAMED.fullmatch(unread.text.strip()) is not None


def with_earlier_answers(reading: Reading, before: Sequence[AuditedPart]) -> Reading:
    """The reading with the derived answers of the parts that it names; `before` are the parts above it.

    The derived answer counts, whatever the key says. Raises NoEarlierAnswer.
    """
    givens: list[Given] = [_settled(given, reading, before) for given in reading.givens]
    for unread in reading.unread:
        named = _NAMED.fullmatch(unread.text.strip()) if names_a_part_alone(unread) else None
        if named:
            name = ".".join(_LEVEL.findall(named.group(1)))
            givens.extend(_whole_answer(name, unread, reading, before))
    unread_left = tuple(one for one in reading.unread if not names_a_part_alone(one))
    return replace(_with_ask(reading, before), givens=tuple(givens), unread=unread_left)


def _earlier(name: str, reading: Reading, before: Sequence[AuditedPart]) -> tuple[AuditedPart, tuple[Answer, ...]]:
    """The part that is named, the nearest one above, in the same question first; and its answers.

    A part may go by its whole number or by its last levels: 2.c.i, c.i or i.
    """
    above = [part for part in reversed(before) if f".{part.part.id}".endswith(f".{name}") or part.part.number == name]
    above.sort(key=lambda part: (part.question != reading.question, part.part.id != name))
    if not above:
        raise NoEarlierAnswer(f"it builds on the answer to {name}, and no part {name} stands above it")
    part = above[0]
    if not isinstance(part.outcome, Derived):
        raise NoEarlierAnswer(f"it builds on part {part.part.id}, which has no single derived answer")
    return part, part.outcome.answers


def _value(name: str, letter: str, reading: Reading, before: Sequence[AuditedPart]) -> Answer:
    """The one answer of an earlier part, or that for `letter` where it has several."""
    part, answers = _earlier(name, reading, before)
    fitting = [answer for answer in answers if answer.letter == letter] if len(answers) > 1 else answers
    if len(fitting) != 1 or fitting[0].value is None:
        raise NoEarlierAnswer(f"it builds on part {part.part.id}, whose answer is no single value")
    return fitting[0]


def _in_expression(expression: Expression, letter: str, reading: Reading, before: Sequence[AuditedPart]) -> Expression:
    def settled(leaf: Expression) -> Expression:
        value = _value(leaf.part, letter, reading, before).value if isinstance(leaf, AnswerTo) else None
        return value or leaf

    return with_leaves(expression, settled)


def _in_relation(relation: Relation, reading: Reading, before: Sequence[AuditedPart]) -> Relation:
    alone = [side.name for side in (relation.left, relation.right) if isinstance(side, Letter)]
    letter = alone[0] if len(alone) == 1 else ""
    left, right = (_in_expression(side, letter, reading, before) for side in (relation.left, relation.right))
    return replace(relation, left=left, right=right)


def _settled(given: Given, reading: Reading, before: Sequence[AuditedPart]) -> Given:
    names = [
        leaf.part
        for fact in given.facts
        if isinstance(fact, Holds)
        for side in (fact.relation.left, fact.relation.right)
        for leaf in leaves(side)
        if isinstance(leaf, AnswerTo)
    ]
    if not names:
        return given
    facts: tuple[Fact, ...] = tuple(
        Holds(_in_relation(fact.relation, reading, before)) if isinstance(fact, Holds) else fact for fact in given.facts
    )
    return replace(given, facts=facts)


def _with_ask(reading: Reading, before: Sequence[AuditedPart]) -> Reading:
    """The reading with earlier answers put into what is asked for."""
    if reading.ask is None:
        return reading
    task = reading.ask.task
    match task:
        case Find(wanted):
            task = Find(tuple(_in_expression(one, "", reading, before) for one in wanted))
        case Solve(relations, letters):
            task = Solve(tuple(_in_relation(one, reading, before) for one in relations), letters)
        case Transform(command, expression):
            task = Transform(command, _in_expression(expression, "", reading, before))
    return replace(reading, ask=replace(reading.ask, task=task))


def _whole_answer(name: str, unread: Unread, reading: Reading, before: Sequence[AuditedPart]) -> tuple[Given, ...]:
    """The given that "answer to a" amounts to: what part a asked for has the size that was found.

    The result of a plain calculation is the size of nothing that a given could name: then there is none, and
    the ask itself says where the result goes (5 × answer to a).
    """
    part, answers = _earlier(name, reading, before)
    asked = part.reading.ask.task if part.reading.ask else None
    wanted = asked.wanted if isinstance(asked, Find) and len(asked.wanted) == len(answers) else ()
    facts: list[Fact] = []
    for at, answer in enumerate(answers):
        if answer.value is None:
            raise NoEarlierAnswer(f"it builds on part {part.part.id}, whose answer is no single value")
        left = Letter(answer.letter) if answer.letter else wanted[at] if wanted else None
        if left is not None and any(isinstance(leaf, Letter | Quantity) for leaf in leaves(left)):
            facts.append(Holds(Relation(left, "=", answer.value)))
    return (Given(unread.text.strip(), tuple(facts), place=unread.place),) if facts else ()
