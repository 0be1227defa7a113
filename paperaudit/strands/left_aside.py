"""Refuses an answer that leaves aside what the text says of a letter of the task: A = 2x − 3 beside A + B."""

from collections.abc import Iterator

from paperaudit.model.ask import Solve, Transform
from paperaudit.model.derivation import Derived, NotDetermined, NotRead, Outcome, Several
from paperaudit.model.expression import Expression, Letter, Relation, letters_of
from paperaudit.model.fact import Holds
from paperaudit.model.reading import Reading


def unless_left_aside(reading: Reading, outcome: Outcome) -> Outcome:
    """The outcome, or NotRead where it rests on letters as if nothing were said of them.

    Only an equation with the letter alone on one side says what it stands for; which givens the lines rest on, the
    derivations say.
    """
    if reading.ask is None or not isinstance(outcome, Derived | Several | NotDetermined):
        return outcome
    derivations = outcome.derivations if isinstance(outcome, Derived | Several) else ()
    used = {
        text for one in derivations for text in (*one.givens_used, *(use for step in one.steps for use in step.uses))
    }
    names = {name for expression in _asked(reading) for name in letters_of(expression)}
    for text, letter in _explained(reading):
        if letter in names and text not in used:
            return NotRead(f"the text says something of {letter} that was not put to use: “{text}”")
    return outcome


def _asked(reading: Reading) -> Iterator[Expression]:
    match reading.ask.task if reading.ask is not None else None:
        case Transform(_, expression):
            yield expression
        case Solve(relations):
            for one in relations:
                yield from (one.left, one.right)


def _explained(reading: Reading) -> Iterator[tuple[str, str]]:
    """The texts that say what a letter stands for, with the letter."""
    own: tuple[Relation, ...] = ()
    if reading.ask is not None and isinstance(reading.ask.task, Solve):
        own = reading.ask.task.relations
    for given in reading.givens:
        for fact in given.facts:
            if isinstance(fact, Holds) and fact.relation.sign == "=" and fact.relation not in own:
                for side in (fact.relation.left, fact.relation.right):
                    if isinstance(side, Letter):
                        yield given.text, side.name
