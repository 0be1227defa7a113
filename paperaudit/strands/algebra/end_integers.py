"""The largest or smallest integer that satisfies inequalities."""

from collections.abc import Sequence
from fractions import Fraction
from math import ceil, floor
from typing import Literal

from paperaudit.maths.algebra.intervals import end_size
from paperaudit.maths.algebra.terms import NotTerms
from paperaudit.maths.answer_kinds.solution_set import read_set
from paperaudit.maths.write import write
from paperaudit.model.derivation import Answer, Derived
from paperaudit.model.expression import Number, Relation
from paperaudit.strands.algebra.confirming import number_at
from paperaudit.strands.algebra.inequalities import solve_inequalities
from paperaudit.strands.algebra.signs import compare_sizes
from paperaudit.strands.algebra.working import Working
from paperaudit.strands.equation_checks import letters_in
from paperaudit.strands.finishing import ChecksDisagree, answer_of

CONFIRMED = "the integer and the next one put into the inequality"


def end_integer(relations: Sequence[Relation], extreme: Literal["largest", "smallest"]) -> Derived:
    """The inequality solved, and the integer next to its end. Raises NotTerms where there is no such end."""
    names = tuple(dict.fromkeys(name for relation in relations for name in letters_in(relation)))
    if len(names) != 1:
        raise NotTerms("inequalities in several letters")
    (letter,) = names
    found = solve_inequalities(relations, letter)
    intervals = read_set(found.answers[0].text, letter)
    largest = extreme == "largest"
    last = (intervals[-1] if largest else intervals[0]) if intervals else None
    end = None if last is None else end_size(last.high if largest else last.low)
    if last is None or end is None:
        raise NotTerms(f"{found.answers[0].text}, in which no integer is the {extreme}")
    whole = Fraction(floor(end) if largest else ceil(end))
    if whole == end and not (last.has_high if largest else last.has_low):
        whole += -1 if largest else 1
    if not _holds(relations, letter, whole) or _holds(relations, letter, whole + (1 if largest else -1)):
        raise ChecksDisagree(f"{letter} = {whole}")
    working = Working("inequalities")
    working.steps.extend(found.derivations[0].steps)
    answer: Answer = answer_of(Number(whole), "", letter)
    working.conclude(f"the {extreme} integer is {write(Number(whole))}", answer.text)
    return working.derived(answer, confirmed_by=CONFIRMED)


def _holds(relations: Sequence[Relation], letter: str, at: Fraction) -> bool:
    """Whether all of them are true at an integer."""
    for relation in relations:
        left, right = (Fraction(number_at(side, {letter: at})) for side in (relation.left, relation.right))
        if not compare_sizes(left, relation.sign, right):
            return False
    return True
