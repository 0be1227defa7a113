"""Claims that do not hold: the lines or the figure that shows it, and what is missing where they might."""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import combinations

from paperaudit.geometry.claims.claim_cases import FAILS_FROM, Truth, gaps, pulled_apart, with_claim
from paperaudit.geometry.claims.claim_forms import Claim, claims_of, gap
from paperaudit.geometry.claims.claim_proofs import Proof
from paperaudit.geometry.claims.claim_texts import measured_text
from paperaudit.geometry.claims.missing_fact import missing_fact
from paperaudit.geometry.claims.telling import shown_by_values, telling_pairs
from paperaudit.geometry.coordinates.arrangement import Arrangement
from paperaudit.geometry.coordinates.realise import realise
from paperaudit.geometry.figure.build import FigureBuilder
from paperaudit.geometry.figure.figure import Size
from paperaudit.geometry.figure.notation import Notation
from paperaudit.geometry.figure.wanted import positions
from paperaudit.geometry.linear.examine import Settled, derive_targets, measured_nodes_agree
from paperaudit.geometry.linear.line_writer import LineWriter
from paperaudit.geometry.linear.refute import refute
from paperaudit.geometry.linear.working import CONFIRMED, Working
from paperaudit.geometry.theorems.theorem import Greater, LinesParallel, SegmentsEqual, segments_equal
from paperaudit.maths.linear import LinearForm
from paperaudit.maths.write import write
from paperaudit.model.ask import Establish
from paperaudit.model.derivation import (
    Answer,
    Case,
    Derivation,
    Derived,
    NotDetermined,
    NotRead,
    Outcome,
    Step,
    StepKind,
)
from paperaudit.model.fact import Fact, Given

MEASURED = "measured on a figure drawn from the givens, exact to nine decimals"
MORE_STARTS = range(24)
"""Starts of the figures in which a claim is looked for that fails in those drawn so far."""
SAME_GAP = 1e-6
"""Share within which a claim is off by the same in all figures that the givens allow."""


@dataclass(frozen=True, slots=True)
class Refusal:
    """A claim that fails in a figure drawn from the givens, and all that is known of it."""

    fact: Fact
    builder: FigureBuilder
    givens: tuple[Given, ...]
    task: Establish
    notation: Notation
    sketch: tuple[tuple[str, float, float], ...]
    settled: tuple[Settled, ...]

    def outcome(self, found: Truth, drawn: Sequence[Arrangement], off: Sequence[float]) -> Outcome:
        """False, with lines or a figure that shows it; or open, with two figures; or why it cannot be told."""
        claim = self._worst(drawn[off.index(max(off))])
        if found is Truth.UNCLEAR:
            return NotRead(f"{claim.text} is too near to being true in the drawing to tell")
        failing = [one for one, share in zip(drawn, off, strict=True) if share >= FAILS_FROM]
        if found is Truth.OPEN:
            holding = [one for one, share in zip(drawn, off, strict=True) if share < FAILS_FROM]
            return self._open(claim, failing, holding)
        by_lines = [self._by_lines(one) for one in self.settled]
        if all(by_lines):
            return by_lines[0]  # type: ignore[return-value]
        holding = self._imposed()
        if holding:
            return self._open(claim, failing, holding)
        by_values = [self._by_values(one) for one in self.settled]
        if all(by_values):
            return by_values[0]  # type: ignore[return-value]
        return self._false(claim, failing[0], max(off) - min(off) < SAME_GAP)

    def pulled_apart(self) -> list[Arrangement]:
        """Figures in which sizes that the claim says to be equal are drawn apart, where the givens allow that."""
        first = self.settled[0].arrangement
        pairs = [pair for claim in claims_of(self.fact, self.builder, first) for pair in telling_pairs(first, claim)]
        return pulled_apart(first, pairs)

    def _worst(self, arrangement: Arrangement) -> Claim:
        return max(claims_of(self.fact, self.builder, arrangement), key=lambda claim: gap(claim, arrangement))

    def _open(self, claim: Claim, failing: Sequence[Arrangement], holding: Sequence[Arrangement]) -> Outcome:
        """Two figures that meet every given: in one the claim holds, in the other it does not."""
        cases = (
            Case(f"{claim.text} holds", (), positions(holding[0])),
            Case(measured_text(self._worst(failing[0]), failing[0]), (), positions(failing[0])),
        )
        apart = {one.signature for one in failing} & {one.signature for one in holding}
        if not apart and len(self.settled) > 1:
            return NotDetermined(cases, "which arrangement of the figure is meant")
        missing = missing_fact(self.givens, self.fact, self.sketch, failing, holding)
        return NotDetermined(cases, missing or f"a given from which {claim.text} follows")

    def _imposed(self) -> list[Arrangement]:
        """Figures that meet the givens and the claim."""
        figure = with_claim(self.givens, self.fact, "the claim", self.sketch)
        if figure is None:
            return []
        found = []
        for drawing in realise(figure, MORE_STARTS):
            one = Arrangement(figure, drawing)
            try:
                if gaps(self.fact, self.builder, [one])[0] < FAILS_FROM:
                    found.append(one)
            except KeyError:
                continue
        return found

    def _by_lines(self, one: Settled) -> Outcome | None:
        """The lines that show what holds in the claim's place, where the linear theory has it."""
        claim = next((c for c in claims_of(self.fact, self.builder, one.arrangement) if _contradicted(one, c)), None)
        sizes = _telling_sizes(one.arrangement, claim) if claim else ()
        found = derive_targets(one, sizes) if sizes else None
        if claim is None or not found or not measured_nodes_agree(found.arrangement, found.nodes):
            return None
        working = Working(LineWriter(found.arrangement, self.notation), self.givens, found.words)
        texts = [working.add(node) for node in found.nodes]
        statement = f"{' and '.join(texts)}, so {claim.text} does not hold"
        working.steps.append(Step(statement, StepKind.CONCLUSION, None, tuple(texts)))
        used = tuple(self.givens[label].text for label in sorted(working.used))
        derivation = Derivation(tuple(working.steps), CONFIRMED, used)
        return self._refused(", ".join(texts), derivation, one.arrangement)

    def _by_values(self, one: Settled) -> Outcome | None:
        """The lines that work out two sizes which the claim says to be equal and which are not."""
        for claim in claims_of(self.fact, self.builder, one.arrangement):
            if isinstance(claim.predicate, Greater):
                return self._by_the_opposite(one, claim, claim.predicate)
            shown = shown_by_values(one, claim, self.givens, self.notation)
            if shown is not None:
                return self._refused(shown.instead, shown.derivation, one.arrangement)
        return None

    def _by_the_opposite(self, one: Settled, claim: Claim, greater: Greater) -> Outcome | None:
        """The proof that the other size is the greater one."""
        one_text, two_text = (write(size) for size in (greater.left, greater.right))
        opposite = Claim(f"{two_text} > {one_text}", Greater(greater.right, greater.left))
        working = Working(LineWriter(one.arrangement, self.notation), self.givens)
        if gap(opposite, one.arrangement) or not Proof(one, self.notation, working).add(opposite):
            return None
        statement = f"{opposite.text}, so {claim.text} does not hold"
        working.steps.append(Step(statement, StepKind.CONCLUSION, None, (opposite.text,)))
        used = tuple(self.givens[label].text for label in sorted(working.used))
        return self._refused(opposite.text, Derivation(tuple(working.steps), CONFIRMED, used), one.arrangement)

    def _refused(self, instead: str, derivation: Derivation, arrangement: Arrangement) -> Outcome:
        answer = "no" if self.task.how == "decide" else f"false: {instead}"
        return Derived((Answer(answer),), (derivation,), positions(arrangement))

    def _false(self, claim: Claim, failing: Arrangement, always: bool) -> Outcome:
        """A figure in which the claim fails; "is it so?" is answered only where no other figure can have it."""
        if self.task.how == "decide" and not always:
            figure = with_claim(self.givens, self.fact, "the claim", self.sketch)
            if figure is None or refute(figure) is None:
                return NotRead(f"{claim.text} fails in the figures drawn; whether it ever holds was not found out")
        text = measured_text(claim, failing)
        step = Step(f"{text}, so {claim.text} does not hold", StepKind.CONCLUSION, None, (), "", "")
        return self._refused(text, Derivation((step,), MEASURED), failing)


def _contradicted(one: Settled, claim: Claim) -> bool:
    """Whether the linear theory forces the opposite of a claim."""
    theory, arrangement = one.theory, one.arrangement
    if isinstance(claim.predicate, LinesParallel):
        first, second = claim.predicate.first, claim.predicate.second
        value = theory.rows.value(arrangement.direction_difference(first, second, False))
        return value is not None and value != 0
    value = theory.value(claim.form) if claim.form is not None else None
    if value is None and isinstance(claim.predicate, SegmentsEqual):
        return _opposite_angles_differ(one, claim.predicate)
    return value is not None and value != 0


def _opposite_angles_differ(one: Settled, equal: SegmentsEqual) -> bool:
    """Whether the sides belong to one triangle whose angles opposite them are known and differ (Euclid I.19)."""
    for triangle in one.arrangement.triangles:
        for a, b, c in triangle.turned():
            if segments_equal((a, b), (a, c)) == equal:
                corners = (one.arrangement.corner(a, b, c), one.arrangement.corner(b, c, a))
                if one.theory.value(LinearForm.of(corners[0]) - LinearForm.of(corners[1])):  # type: ignore[arg-type]
                    return True
    return False


def _telling_sizes(arrangement: Arrangement, claim: Claim) -> tuple[Size, ...]:
    if isinstance(claim.predicate, LinesParallel):
        return _cut_angles(arrangement, claim.predicate.first, claim.predicate.second)
    if isinstance(claim.predicate, SegmentsEqual):
        for triangle in arrangement.triangles:
            for a, b, c in triangle.turned():
                if segments_equal((a, b), (a, c)) == claim.predicate:
                    return arrangement.corner(a, b, c), arrangement.corner(b, c, a)
    return tuple(arrangement.canonical_form(claim.form).terms) if claim.form is not None else ()


def _cut_angles(arrangement: Arrangement, first: int, second: int) -> tuple[Size, ...]:
    """Two co-interior angles where some third line cuts two lines."""
    for third in range(len(arrangement.lines)):
        near, far = arrangement.meet(first, third), arrangement.meet(second, third)
        if third in (first, second) or near is None or far is None:
            continue
        for one, two in combinations((*arrangement.rays[near], *arrangement.rays[far]), 2):
            if one.line == first and two.line == second:
                return (
                    arrangement.between(one, arrangement.ray(near, far)),
                    arrangement.between(two, arrangement.ray(far, near)),
                )
    return ()
