"""Finds a cheapest derivation where relations are not linear: which size follows from which.

Every size has its value in the drawing, so the search asks only what is settled: a size is known with
the slopes by which it changes with the letters still unknown (the paper's x, or a letter that is
introduced); without slopes it is a number. `values.py` then works the path out exactly.
"""

import heapq
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field
from itertools import combinations

from paperaudit.geometry.beyond.reached import Assumed, Fact, Kind, LetterSlopes
from paperaudit.geometry.beyond.rows import Row, Source
from paperaudit.geometry.beyond.standing import has_function_of, is_squared
from paperaudit.geometry.budget import Budget
from paperaudit.geometry.figure.figure import Size
from paperaudit.geometry.linear.derive import DIVIDING, INTRODUCTION, SIMULTANEOUS, SOLVING, SUBSTITUTION
from paperaudit.geometry.theorems.theorem import AnglesEqual, Equation, Predicate, Stated, angles_equal
from paperaudit.model.expression import AngleOf, Letter

CANCELS = 1e-7
"""Share of the terms' own size below which a sum of slopes counts as 0."""
ROUNDING = 30
"""Weight of a line that rounds: an exact way of two or three lines more is the better one."""
ROOT_OF_LETTERS = 15
"""Weight of a length as a root of letters, √(289 − t²): one without a root, 23 − t, leads on."""
MOST_TOGETHER = 3
"""Equations that are solved together at most."""


@dataclass(slots=True)
class Reach:
    """The state of one search over the rows of an arrangement.

    Without `by_inverse` no angle is taken from its sine, cosine or tangent, which mostly means rounding.
    """

    rows: Sequence[Row]
    budget: Budget = field(default_factory=Budget)
    leave_out: frozenset[int] = frozenset()
    by_inverse: bool = True
    known: dict[Size, Fact] = field(default_factory=dict)
    numeric: dict[Size, Fact] = field(default_factory=dict)
    letters: dict[Letter, Fact] = field(default_factory=dict)
    facts: dict[Predicate, Fact] = field(default_factory=dict)
    equations: list[Fact] = field(default_factory=list)
    _equal: dict[AngleOf, dict[AngleOf, Fact]] = field(default_factory=dict)
    _heap: list[tuple[int, int, Fact]] = field(default_factory=list)
    _uses: dict[object, list[Row]] = field(default_factory=dict)
    _order: int = 0

    def start(self, assume: Assumed = (), more: Iterable[Fact] = ()) -> None:
        """Try every row once; `assume` are sizes called by a letter, `more` facts found in another way."""
        for size, letter in assume:
            self._push("let", size, {letter: 1.0}, None, (), INTRODUCTION)
        for fact in more:
            self._queue(fact)
        for row in self.rows:
            for key in (*row.terms, *row.premises):
                self._uses.setdefault(key, []).append(row)
        for row in self.rows:
            self._try(row)

    def run(self, targets: Iterable[Size | Predicate]) -> bool:
        """Settle facts until every target is, or nothing is left; whether all were reached."""
        wanted = tuple(targets)
        while self._heap and not (wanted and all(self.reached(target) for target in wanted)):
            self._settle(heapq.heappop(self._heap)[2])
        return all(self.reached(target) for target in wanted)

    def add(self, fact: Fact) -> None:
        """Queue a fact that was found in another way."""
        self._queue(fact)

    def reached(self, target: Size | Predicate) -> Fact | None:
        """The fact that settles a target."""
        if isinstance(target, Letter):
            return self.letters.get(target)
        if _is_predicate(target):
            return self.facts.get(target)  # type: ignore[arg-type]
        return self.numeric.get(target)  # type: ignore[arg-type]

    def _push(
        self,
        kind: Kind,
        subject: Size | Predicate | None,
        slopes: LetterSlopes,
        source: Source | None,
        inputs: tuple[Fact, ...],
        weight: int,
    ) -> None:
        self._queue(Fact(kind, subject, slopes, source, inputs, weight + sum(fact.cost for fact in inputs)))

    def _queue(self, fact: Fact) -> None:
        self._order += 1
        heapq.heappush(self._heap, (fact.cost, self._order, fact))

    def _settle(self, fact: Fact) -> None:
        subject = fact.subject
        if fact.kind == "equation":
            self._settle_equation(fact)
        elif isinstance(subject, Letter):
            if subject not in self.letters:
                self.letters[subject] = fact
                self._letter_found(subject)
        elif _is_predicate(subject):
            if subject not in self.facts:
                self.facts[subject] = fact  # type: ignore[index]
                self._try_all(subject)
                if isinstance(subject, AnglesEqual):
                    self._chain(subject, fact)
        else:
            self._settle_size(subject, fact)  # type: ignore[arg-type]

    def _settle_size(self, subject: Size, fact: Fact) -> None:
        first = self.known.get(subject)
        if first is None:
            self.known[subject] = fact
        elif first.slopes and fact.kind != "substituted" and first.kind != "substituted":
            slopes, size_of = dict(first.slopes), {key: abs(value) for key, value in first.slopes.items()}
            for key, value in fact.slopes.items():
                slopes[key] = slopes.get(key, 0.0) - value
                size_of[key] = size_of.get(key, 0.0) + abs(value)
            self._equation(subject, _cleaned(slopes, size_of), None, (first, fact), 4)
        if not fact.slopes and subject not in self.numeric:
            self.numeric[subject] = fact
        elif first is not None:
            return
        self._try_all(subject)
        if fact.slopes:
            self._substitute(subject, fact)

    def _chain(self, equal: AnglesEqual, fact: Fact) -> None:
        """Angles equal to the same angle are equal."""
        for one, two in ((equal.first, equal.second), (equal.second, equal.first)):
            for third, other in self._equal.get(one, {}).items():
                if third != two and angles_equal(two, third) not in self.facts:
                    self._push("predicate", angles_equal(two, third), {}, None, (fact, other), 3)
        self._equal.setdefault(equal.first, {})[equal.second] = fact
        self._equal.setdefault(equal.second, {})[equal.first] = fact

    def _equation(
        self, subject: Size | None, slopes: LetterSlopes, source: Source | None, inputs: tuple[Fact, ...], weight: int
    ) -> None:
        if slopes:
            self._push("equation", subject, slopes, source, inputs, weight + DIVIDING)

    def _settle_equation(self, fact: Fact) -> None:
        self.equations.append(fact)
        self._solve_with(fact)

    def _solve_with(self, fact: Fact) -> None:
        """Solve for the letters of an equation: alone, or with one or two others, as soon as they suffice."""
        open_letters = self._open(fact)
        if len(open_letters) == 1:
            (letter,) = open_letters
            behind = tuple(self.letters[other] for other in fact.slopes if other in self.letters)
            self._push("letter", letter, {}, None, (fact, *behind), SOLVING)
            return
        others = [other for other in self.equations if other is not fact and self._open(other)]
        for count in range(1, MOST_TOGETHER):
            for chosen in combinations(others, count):
                group = (fact, *chosen)
                letters = sorted({letter for entry in group for letter in self._open(entry)}, key=lambda x: x.name)
                if len(letters) == len(group) and _independent(group, letters):
                    behind = tuple(
                        {
                            id(found): found
                            for entry in group
                            for other in entry.slopes
                            if (found := self.letters.get(other))
                        }.values()
                    )
                    for letter in letters:
                        self._push("letter", letter, {}, None, (*group, *behind), SIMULTANEOUS * len(group))
                    return

    def _open(self, fact: Fact) -> list[Letter]:
        return [letter for letter in fact.slopes if letter not in self.letters]

    def _letter_found(self, letter: Letter) -> None:
        for size, fact in list(self.known.items()):
            if letter in fact.slopes and size not in self.numeric:
                self._substitute(size, fact)
        for fact in list(self.equations):
            if letter in fact.slopes and self._open(fact):
                self._solve_with(fact)
        self._try_all(letter)

    def _substitute(self, size: Size, fact: Fact) -> None:
        if all(letter in self.letters for letter in fact.slopes):
            values = tuple(self.letters[letter] for letter in fact.slopes)
            self._push("substituted", size, {}, None, (fact, *values), SUBSTITUTION)

    def _try_all(self, key: object) -> None:
        for row in self._uses.get(key, ()):
            self._try(row)

    def _try(self, row: Row) -> None:
        """Push what a row yields now: a size, an equation in letters, or its conclusion."""
        self.budget.spend()
        if row.conclusion is not None and row.conclusion in self.facts:
            return
        inputs: list[Fact] = []
        for premise in row.premises:
            if isinstance(premise, Stated):
                if premise.label in self.leave_out:
                    return
                continue
            fact = self.facts.get(premise)
            if fact is None:
                return
            inputs.append(fact)
        unknown: Size | None = None
        slopes: LetterSlopes = {}
        size_of: LetterSlopes = {}
        for size, slope in row.terms.items():
            own = self._slopes_of(size, inputs)
            if not slope and (own is None or own):
                return
            if own is None:
                if unknown is not None:
                    return
                unknown = size
                continue
            for letter, value in own.items():
                slopes[letter] = slopes.get(letter, 0.0) + slope * value
                size_of[letter] = size_of.get(letter, 0.0) + abs(slope * value)
        self._conclude(row, unknown, _cleaned(slopes, size_of), tuple(inputs))

    def _slopes_of(self, size: Size, inputs: list[Fact]) -> LetterSlopes | None:
        """How a size changes with the open letters, its fact added to `inputs`; None where it is not known."""
        if isinstance(size, Letter):
            solved = self.letters.get(size)
            if solved:
                inputs.append(solved)
                return {}
            return {size: 1.0}
        fact = self.numeric.get(size) or self.known.get(size)
        if fact is None:
            return None
        inputs.append(fact)
        return fact.slopes

    def _conclude(self, row: Row, unknown: Size | None, slopes: LetterSlopes, inputs: tuple[Fact, ...]) -> None:
        if row.conclusion is not None:
            if unknown is None and not slopes:
                self._push("predicate", row.conclusion, {}, row.source, inputs, row.weight)
            return
        in_function = bool(slopes) and has_function_of(row.source, [one.subject for one in inputs if one.slopes])
        if unknown is not None:
            if in_function or (not self.by_inverse and isinstance(unknown, AngleOf) and _is_worked_out(row)):
                return
            share = -1 / row.terms[unknown]
            if unknown not in self.known or (not slopes and unknown not in self.numeric):
                turned = {letter: value * share for letter, value in slopes.items()}
                weight = row.weight + (ROUNDING if unknown in row.rounded else 0)
                weight += ROOT_OF_LETTERS if slopes and is_squared(unknown, row.source) else 0
                self._push("size", unknown, turned, row.source, inputs, weight)
        elif slopes:
            solved = {letter: value for letter, value in slopes.items() if letter not in self.letters}
            if solved and not in_function:
                self._equation(None, slopes, row.source, inputs, row.weight)
            self._find_number(row, inputs)

    def _find_number(self, row: Row, inputs: tuple[Fact, ...]) -> None:
        """A size that is known in letters only, as a number from a row whose other sizes are numbers."""
        lettered = [fact for fact in inputs if fact.slopes]
        if len(lettered) == 1 and not any(isinstance(size, Letter) for size in row.terms):
            size = lettered[0].subject
            rest = tuple(fact for fact in inputs if fact is not lettered[0])
            if not self.by_inverse and isinstance(size, AngleOf) and _is_worked_out(row):
                return
            if size in row.terms and size not in self.numeric:
                weight = row.weight + (ROUNDING if size in row.rounded else 0)
                self._push("size", size, {}, row.source, rest, weight)


def _is_worked_out(row: Row) -> bool:
    """Whether an angle from this row would come from a function that a theorem gives, not from one that is stated."""
    return isinstance(row.source, Equation) and row.source.theorem != "given"


def _is_predicate(subject: object) -> bool:
    return isinstance(subject, Predicate)


def _cleaned(slopes: LetterSlopes, size_of: LetterSlopes) -> LetterSlopes:
    return {letter: value for letter, value in slopes.items() if abs(value) > CANCELS * size_of[letter]}


def _independent(group: Sequence[Fact], letters: Sequence[Letter]) -> bool:
    """Whether the equations fix the letters: the determinant of their slopes is not 0."""
    import numpy as np

    matrix = np.array([[fact.slopes.get(letter, 0.0) for letter in letters] for fact in group])
    sizes = np.linalg.norm(matrix, axis=1)
    return bool(sizes.all() and abs(np.linalg.det(matrix / sizes[:, None])) > 1e-6)
