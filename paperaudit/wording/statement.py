"""Reads one statement or sentence about a figure into its facts, or says where reading stopped."""

import re
from dataclasses import replace
from functools import lru_cache
from typing import Literal

from parsimonious.nodes import Node

from paperaudit.errors import ExpressionNotRead
from paperaudit.maths.limits import check_limits
from paperaudit.maths.notation import Notation
from paperaudit.maths.peg import parsed
from paperaudit.maths.tree import every
from paperaudit.model.fact import Drawn, Given, Origin
from paperaudit.model.place import NOWHERE, Place
from paperaudit.model.reading import Unread
from paperaudit.wording.clauses import facts_of, statement_grammar
from paperaudit.wording.contacts import NOT_SAID
from paperaudit.wording.implied import implied
from paperaudit.wording.scene import NotUnderstood, Scene
from paperaudit.wording.the_circle import Known, together
from paperaudit.wording.topics.reading import topic_facts
from paperaudit.wording.unread import not_read

LONGEST_SENTENCE = 1_000
Where = Literal["figure", "given", "ask", "text", "answer"]
_NAME = re.compile(r"[A-Z]{2}")
_PATHS = re.compile(r"[A-Z]{2}(?:(?:,\s*(?:and\s+)?|\s+and\s+)[A-Z]{2})*\.?")
"""Paths alone, under `figure`, are segments that are drawn."""
_ORIGINS = {
    "figure": Origin.FIGURE,
    "given": Origin.GIVEN,
    "ask": Origin.TEXT,
    "text": Origin.TEXT,
    "answer": Origin.GIVEN,
}


def read_statement(
    text: str, place: Place = NOWHERE, where: Where = "given", scene: Scene | None = None
) -> Given | Unread:
    """One statement under `figure` or `given`, with every fact that its clauses amount to.

    >>> read_statement("D lies on AC").facts
    (Collinear(points=('A', 'D', 'C'), ordered=True),)
    """
    given = read_given(text, place, where, scene or Scene())
    if isinstance(given, Unread):
        return given
    known = Known(given.facts)
    if any(map(known.is_untouched, given.facts)):
        return Unread(text.strip(), where, 0, NOT_SAID, "", place)
    return replace(given, facts=known.settled(given.facts))


def read_given(text: str, place: Place, where: Where, scene: Scene) -> Given | Unread:
    """One statement as it stands; which circle "the circle" is, the whole question says."""
    statement = text.strip()
    if where == "figure" and _PATHS.fullmatch(statement):
        drawn = tuple(Drawn("segment", (name[0], name[1])) for name in _NAME.findall(statement))
        return Given(statement, drawn, _ORIGINS[where], place)
    clauses = read_clauses(statement, place, where, scene)
    if isinstance(clauses, Unread):
        return clauses
    facts = tuple(dict.fromkeys(fact for given in clauses for fact in given.facts))
    return Given(statement, facts, _ORIGINS[where], place)


def read_clauses(text: str, place: Place, where: Where, scene: Scene) -> tuple[Given, ...] | Unread:
    """The clauses of a sentence, a given for each, named by the clause's own words."""
    notation = scene.notation(text[:LONGEST_SENTENCE])
    try:
        check_limits(text, LONGEST_SENTENCE)
        facts = topic_facts(notation, scene)
        if facts is not None:
            return (Given(text.strip(), facts, _ORIGINS[where], place),)
        tree = _tree(notation.text)
        return givens_of(tree, notation, place, where, scene)
    except NotUnderstood as error:
        expected = error.expected or str(error)
        return Unread(text, where, notation.offset(error.start), expected, "", place)
    except ExpressionNotRead as error:
        return not_read(notation, where, place, error)


@lru_cache(maxsize=1024)
def _tree(text: str) -> Node:
    """The tree of a statement; the parts of a question read its givens again, and papers repeat themselves."""
    return parsed(statement_grammar(), "statement", text)


def givens_of(tree: Node, notation: Notation, place: Place, where: Where, scene: Scene) -> tuple[Given, ...]:
    """A given for each `clause` of a tree; what the scene holds grows with them."""
    return tuple(given_of(clause, notation, place, where, scene) for clause in every(tree, "clause"))


def given_of(clause: Node, notation: Notation, place: Place, where: Where, scene: Scene) -> Given:
    """The given of one `clause`; the scene remembers it."""
    facts = facts_of(clause, scene)
    facts = together((*implied(clause, scene, facts), *facts))
    scene.take(facts)
    return Given(notation.source_of(clause.start, clause.end), facts, _ORIGINS[where], place)
