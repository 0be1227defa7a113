"""The linear theory of an arrangement: what follows exactly, and which givens clash.

Angles are differences of line directions, so that angle sums, straight lines and parallels hold by
themselves and a contradiction names givens, not theorems. What is not linear (equal sides from
equal angles, parallels from equal angles) is added until nothing new follows.
"""

from collections.abc import Iterable
from dataclasses import dataclass, field
from fractions import Fraction

from paperaudit.geometry.coordinates.arrangement import Arrangement
from paperaudit.geometry.coordinates.circle_order import circle_rows
from paperaudit.geometry.figure.figure import ParallelPair, RightAngle, Size
from paperaudit.geometry.theorems.theorem import Instance, Predicate, Stated
from paperaudit.maths.linear import Elimination, LinearForm
from paperaudit.model.expression import LengthOf, Letter

Labels = frozenset[int]
NO_LABELS: Labels = frozenset()


@dataclass(slots=True)
class Theory:
    """Rows and predicates closed under every instance; `clash` is the set of givens in the first contradiction."""

    arrangement: Arrangement
    rows: Elimination[object, int] = field(default_factory=Elimination)
    supports: list[Labels] = field(default_factory=list)
    entries: list[LinearForm[object]] = field(default_factory=list)
    predicates: dict[Predicate, Labels] = field(default_factory=dict)
    clash: Labels | None = None

    def value(self, form: LinearForm[Size]) -> Fraction | None:
        """The number that the givens force on a form, None where they leave it open in this theory."""
        return self.rows.value(self.arrangement.directions(form))

    def in_letters(self, form: LinearForm[Size]) -> LinearForm[Letter] | None:
        """The form in the paper's letters alone that the givens force on `form`, None where there is none."""
        rest, _ = self.rows.reduce(self.arrangement.directions(form))
        if all(isinstance(key, Letter) for key in rest.terms):
            return LinearForm(
                {key: value for key, value in rest.terms.items() if isinstance(key, Letter)}, rest.constant
            )
        return None

    def support(self, form: LinearForm[Size]) -> Labels:
        """The givens that a determined value rests on."""
        return self.labels_of(self.rows.support(self.arrangement.directions(form)))

    def labels_of(self, rows: Iterable[int]) -> Labels:
        """The givens behind some rows."""
        return frozenset(label for row in rows for label in self.supports[row])

    def _add(self, form: LinearForm[object], support: Labels) -> None:
        if form.is_zero or self.clash is not None:
            return
        self.supports.append(support)
        self.entries.append(form)
        contradiction = self.rows.add(form, len(self.supports) - 1, prefer=_letters_last)
        if contradiction:
            self.clash = self.labels_of(contradiction.multiples)


def _letters_last(key: object) -> int:
    if isinstance(key, Letter):
        return 2
    return 1 if isinstance(key, LengthOf) else 0


def close(arrangement: Arrangement, found: tuple[Instance, ...], leave_out: Labels = NO_LABELS) -> Theory:
    """The theory of an arrangement; `leave_out` are givens that are not to be used."""
    theory = Theory(arrangement)
    for condition in arrangement.figure.conditions:
        if isinstance(condition, ParallelPair | RightAngle) and condition.label not in leave_out:
            one, two = (arrangement.figure.line_of(*path) for path in (condition.first, condition.second))
            row = arrangement.direction_difference(one, two, isinstance(condition, RightAngle))
            theory._add(row, frozenset((condition.label,)))
    for form, labels in circle_rows(arrangement.figure, arrangement.lines, arrangement.bearings, arrangement.rounds):
        if not labels & leave_out:
            theory._add(form, labels)
    waiting = list(found)
    progress = True
    while progress and waiting and theory.clash is None:
        progress = False
        rest = []
        for instance in waiting:
            support = _support(theory, instance, leave_out)
            if support is None or not _take(theory, instance, support):
                rest.append(instance)
            else:
                progress = True
            if theory.clash is not None:
                break
        waiting = rest
    return theory


def _support(theory: Theory, instance: Instance, leave_out: Labels) -> Labels | None:
    """The givens behind an instance's premises, None while one of them is not known."""
    labels: set[int] = set()
    for premise in instance.premises:
        if isinstance(premise, Stated):
            if premise.label in leave_out:
                return None
            labels.add(premise.label)
        elif premise in theory.predicates:
            labels |= theory.predicates[premise]
        else:
            return None
    return frozenset(labels)


def _take(theory: Theory, instance: Instance, support: Labels) -> bool:
    """Use an instance whose premises hold; False if it has to wait for its relation."""
    if instance.conclusion is not None and instance.conclusion in theory.predicates:
        return True
    form = theory.arrangement.directions(instance.relation)
    if instance.conclusion is None:
        theory._add(form, support)
        return True
    rest, multiples = theory.rows.reduce(form)
    if not rest.is_zero:
        return False
    theory.predicates[instance.conclusion] = support | theory.labels_of(multiples)
    return True
