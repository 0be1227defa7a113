"""Proofs: the lines from the givens to a claim, by the linear search or by the one beyond it."""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from itertools import chain, islice

from paperaudit.errors import BudgetExceeded
from paperaudit.geometry.beyond.amounts import NoExactValue, Value, fraction_of
from paperaudit.geometry.beyond.combining import combined
from paperaudit.geometry.beyond.find_further import MOST_PATHS, widened
from paperaudit.geometry.beyond.further import Further
from paperaudit.geometry.beyond.further_lines import FurtherWorking
from paperaudit.geometry.beyond.further_texts import Texts
from paperaudit.geometry.beyond.reached import Fact
from paperaudit.geometry.beyond.rows import Source, rows_of, sides_of
from paperaudit.geometry.beyond.values import Values
from paperaudit.geometry.budget import Budget
from paperaudit.geometry.claims.claim_forms import Claim
from paperaudit.geometry.coordinates.arrangement import Arrangement
from paperaudit.geometry.figure.canonical import canonical
from paperaudit.geometry.figure.figure import Size
from paperaudit.geometry.figure.notation import Notation
from paperaudit.geometry.linear.derive import Node
from paperaudit.geometry.linear.examine import Settled, derive_targets, measured_nodes_agree
from paperaudit.geometry.linear.line_writer import LineWriter
from paperaudit.geometry.linear.working import Working
from paperaudit.geometry.theorems.further import comparisons, perpendiculars
from paperaudit.geometry.theorems.theorem import (
    Claimed,
    Concyclic,
    Greater,
    Instance,
    IsDiameter,
    IsShape,
    LinesParallel,
    LinesPerpendicular,
    OnOneLine,
    Predicate,
    SegmentsEqual,
    Touches,
    TrianglesAlike,
)
from paperaudit.maths.cancelling import reduced
from paperaudit.maths.linear import LinearForm
from paperaudit.model.derivation import Step, StepKind
from paperaudit.model.expression import Expression, LengthOf, Letter, Measured, Negative, Number, Sum

Introduced = tuple[tuple[Size, Letter], ...]
CLAIM = Claimed(1000)
"""The target that stands for the claim in a search."""
MOST_TRIALS = 200_000
"""Trials of a row that one search for a proof may make."""
SAME_ON_DRAWING = 1e-8
"""Share within which two sizes that are known rounded have to agree on a drawing that is exact to 1e-9."""


@dataclass(slots=True)
class Proof:
    """The lines of the claims of one part, as they are added."""

    one: Settled
    notation: Notation
    working: Working

    def add(self, claim: Claim) -> bool:
        """Write the lines that prove a claim; False where no chain of theorems was found."""
        before = len(self.working.steps)
        lengths = _of_lengths(claim)
        done = (
            (not lengths and self._linear(claim))
            or self._further(claim, deep=False)
            or (lengths and self._linear(claim))
            or self._further(claim, deep=True)
        )
        if done and len(self.working.steps) == before:
            self.working.steps.append(Step(claim.text, StepKind.CONCLUSION, None, (claim.text,), "", ""))
        return done

    def _linear(self, claim: Claim) -> bool:
        if not forced(self.one, claim):
            return False
        straight = isinstance(claim.predicate, LinesParallel | SegmentsEqual | Concyclic | IsDiameter | Touches)
        target: Predicate = claim.predicate if straight and claim.predicate is not None else CLAIM
        extra: tuple[Instance, ...] = ()
        if target == CLAIM:
            assert claim.form is not None
            relation = self.one.arrangement.canonical_form(claim.form)
            extra = (Instance("claim", (), relation, CLAIM, claim.text, 5),)
        found = derive_targets(self.one, (target,), extra)
        if found is None or not measured_nodes_agree(found.arrangement, found.nodes):
            return False
        self.working.writer, self.working.words = LineWriter(found.arrangement, self.notation), found.words
        _write_linear(self.working, claim, found.nodes[0], target == CLAIM)
        return True

    def _further(self, claim: Claim, deep: bool) -> bool:
        try:
            for further, words in widened(self.one, Budget(MOST_TRIALS), deep):
                for last, introduced in _ends(further, claim, deep):
                    if self._written(further.arrangement, last, introduced, claim, words):
                        return True
        except BudgetExceeded:
            pass
        return False

    def _written(
        self, arrangement: Arrangement, last: Fact, introduced: Introduced, claim: Claim, words: dict[str, str]
    ) -> bool:
        unknowns: dict[Expression, float] = {Letter(name): v for name, v in arrangement.drawing.letters.items()}
        unknowns.update({letter: arrangement.measured(size) for size, letter in introduced})
        values = Values(arrangement.measured, unknowns)
        working = Working(LineWriter(arrangement, self.notation), self.working.givens, words)
        lines = FurtherWorking(working, values, Texts(arrangement, self.notation))
        try:
            uses = tuple(dict.fromkeys(text for before in last.inputs if (text := lines.add(before))))
            if not _exact(last, values, arrangement) or not _balances(claim, last, values, arrangement):
                return False
        except NoExactValue:
            return False
        if working.steps and any(before.subject == claim.predicate for before in last.inputs):
            _name_as_asked(working.steps, claim)
        said = {(step.statement, step.reason) for step in self.working.steps}
        self.working.steps.extend(step for step in working.steps if (step.statement, step.reason) not in said)
        self.working.used.update(working.used)
        if not working.steps or not _says(working.steps[-1], claim):
            self.working.steps.append(Step(claim.text, StepKind.CONCLUSION, None, uses, "", ""))
        return True


def _name_as_asked(steps: list[Step], claim: Claim) -> None:
    """The last line in the words of the claim, where it says the same of triangles or a shape in another order."""
    if isinstance(claim.predicate, TrianglesAlike | IsShape | Concyclic | OnOneLine):
        steps[-1] = replace(steps[-1], statement=claim.text)


def _of_lengths(claim: Claim) -> bool:
    """Whether a claim relates lengths: the linear search would call them by letters, one after the other."""
    return claim.form is not None and any(isinstance(size, LengthOf) for size in claim.form.terms)


def _says(step: Step, claim: Claim) -> bool:
    """Whether a line already arrives at the claim: ∠AEC = 180° − 40° − 50° = 90°."""
    return claim.text in (step.statement, f"{step.statement.split(' = ')[0]} = {step.value}")


def _write_linear(working: Working, claim: Claim, node: Node, as_relation: bool) -> None:
    if not as_relation:
        text = working.add(node)
        if working.steps and isinstance(claim.predicate, Concyclic):
            _name_as_asked(working.steps, claim)
            return
        if not working.steps or working.steps[-1].statement != text:
            working.steps.append(Step(text, StepKind.CONCLUSION, None, (text,), "", ""))
        return
    uses = tuple(working.add(before) for before in node.inputs)
    if uses and working.steps and claim.text == working.steps[-1].statement:
        return
    working.steps.append(Step(claim.text, StepKind.CONCLUSION, None, uses, "", ""))


def _ends(further: Further, claim: Claim, deep: bool) -> Iterator[tuple[Fact, Introduced]]:
    """Facts that stand for the claim: by its predicate, by relations put together, by its two sides' values."""
    if claim.predicate is not None:
        said = Instance("claim", (claim.predicate,), LinearForm(), CLAIM, claim.text, 0)
        more = tuple(_for_claims(further.arrangement, claim.predicate))
        further.rows.extend(rows_of(further.arrangement, (said, *more)))
        for path in islice(further.paths([CLAIM], with_letters=deep), MOST_PATHS):
            yield path.facts[0], path.introduced
    if claim.left is not None and claim.right is not None:
        by_values = _by_values(further, claim, deep)
        together = _put_together(further, claim)
        yield from chain(by_values, together) if _is_number(claim.right) else chain(together, by_values)


def _for_claims(arrangement: Arrangement, predicate: Predicate) -> Iterator[Source]:
    """Instances of theorems that only claims of this kind ask for."""
    if isinstance(predicate, Greater):
        yield from comparisons(arrangement)
    elif isinstance(predicate, LinesPerpendicular):
        yield from perpendiculars(arrangement)


def _by_values(further: Further, claim: Claim, deep: bool) -> Iterator[tuple[Fact, Introduced]]:
    assert claim.left is not None and claim.right is not None
    difference = Sum((claim.left, Negative(claim.right)))
    for path in islice(further.paths([difference], with_letters=deep), MOST_PATHS):
        yield path.facts[0], path.introduced


def _put_together(further: Further, claim: Claim) -> Iterator[tuple[Fact, Introduced]]:
    assert claim.left is not None and claim.right is not None
    facts = combined(further.exhausted(), further.arrangement, claim.left, claim.right)
    if facts is not None:
        said = Instance("claim", (), LinearForm(), CLAIM, claim.text, 0)
        yield Fact("predicate", CLAIM, {}, said, facts, sum(fact.cost for fact in facts)), ()


def _is_number(expression: Expression) -> bool:
    return isinstance(expression, Number) or (
        isinstance(expression, Measured) and isinstance(expression.amount, Number)
    )


def forced(one: Settled, claim: Claim) -> bool:
    """Whether the linear theory has the claim."""
    theory = one.theory
    if isinstance(claim.predicate, LinesParallel):
        first, second = claim.predicate.first, claim.predicate.second
        return theory.rows.value(one.arrangement.direction_difference(first, second, False)) == 0
    if (
        isinstance(claim.predicate, SegmentsEqual | Concyclic | IsDiameter | Touches)
        and claim.predicate in theory.predicates
    ):
        return True
    return claim.form is not None and theory.value(claim.form) == 0


def _exact(last: Fact, values: Values, arrangement: Arrangement) -> bool:
    """Whether every equality that was only seen of values holds for the exact values too."""
    seen: dict[int, Fact] = {}
    pending = [last]
    while pending:
        fact = pending.pop()
        if id(fact) not in seen:
            seen[id(fact)] = fact
            pending.extend(fact.inputs)
    observed = [fact for fact in seen.values() if fact.kind == "predicate" and fact.source is None]
    return all(_agrees(fact, values, arrangement) for fact in observed)


def _agrees(fact: Fact, values: Values, arrangement: Arrangement) -> bool:
    sides = sides_of(fact.subject) if isinstance(fact.subject, Predicate) else None
    given = values.given(fact)
    if sides is None or sides[0] == sides[1] or not given:
        return True
    one, two = (fraction_of(side, given) for side in sides)
    if one.approx or two.approx:
        here, there = (arrangement.measured(side) for side in sides)
        return abs(here - there) <= SAME_ON_DRAWING * (abs(here) + abs(there))
    return _same(one, two)


def _balances(claim: Claim, last: Fact, values: Values, arrangement: Arrangement) -> bool:
    """Whether the two sides of a claim come to the same exactly, where it was reached by their values."""
    if last.source is not None or claim.left is None or claim.right is None:
        return True
    given = values.given(last)
    one, two = (fraction_of(canonical(side, arrangement), given) for side in (claim.left, claim.right))
    return not one.approx and not two.approx and _same(one, two)


def _same(one: Value, two: Value) -> bool:
    return not reduced(one.fraction + -two.fraction).above.terms
