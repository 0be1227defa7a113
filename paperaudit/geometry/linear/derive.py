"""Finds the cheapest derivation: a shortest hyperpath from the givens to the sizes asked for.

Every size is known as a linear form in letters (the paper's x and y, or a letter that a pupil would
introduce: "let this angle be t"). Each line costs what it costs a pupil to write; Knuth's
generalisation of Dijkstra's algorithm settles nodes in order of cost.
"""

import heapq
from collections.abc import Iterable
from dataclasses import dataclass, field
from fractions import Fraction
from typing import Literal, TypeAlias

from paperaudit.errors import BudgetExceeded
from paperaudit.geometry.budget import Budget
from paperaudit.geometry.figure.figure import Measurable, Size
from paperaudit.geometry.theorems.theorem import Instance, Predicate, Stated
from paperaudit.maths.linear import Elimination, LinearForm, Rational, combination
from paperaudit.model.expression import AngleOf, Letter

SUBSTITUTION = 6
SOLVING = 10
SIMULTANEOUS = 20
DIVIDING = 2
INTRODUCTION = 15
"""Weights in tenths of a line: putting a letter's value in, solving an equation, dividing by its
coefficient at the end, introducing a letter."""

MOST_SETTLED = 20_000
"""Nodes that one search may settle before it gives up."""

Kind = Literal["size", "substituted", "letter", "predicate", "equation", "let"]


@dataclass(frozen=True, slots=True, eq=False)
class Node:
    """One line of a derivation: what it establishes, by which instance, from which earlier lines.

    `form` is the form of the size or letter, or the form that an equation sets to 0. `cost` is the
    weight of the whole derivation behind it, `lines` their number.
    """

    kind: Kind
    subject: Size | Predicate | None
    form: LinearForm[Letter]
    instance: Instance | None
    inputs: "tuple[Node, ...]"
    cost: int
    lines: int

    def is_number(self) -> bool:
        """Whether the form holds no letter."""
        return self.form.is_constant


Assumptions: TypeAlias = tuple[tuple[Size, LinearForm[Letter]], ...]
"""Sizes that are called by a letter, or by a multiple of one, at the start of a search."""


@dataclass(slots=True)
class Search:
    """The state of one search over the instances of an arrangement."""

    instances: tuple[Instance, ...]
    leave_out: frozenset[int] = frozenset()
    budget: Budget | None = None
    known: dict[Size, Node] = field(default_factory=dict)
    numeric: dict[Size, Node] = field(default_factory=dict)
    letters: dict[Letter, Node] = field(default_factory=dict)
    facts: dict[Predicate, Node] = field(default_factory=dict)
    equations: list[Node] = field(default_factory=list)
    clash: Node | None = None
    _heap: list[tuple[int, int, int, Node]] = field(default_factory=list)
    _uses: dict[object, list[Instance]] = field(default_factory=dict)
    _rows: Elimination[Letter, int] = field(default_factory=Elimination)
    _order: int = 0
    _settled: int = 0

    def run(self, targets: Iterable[Size | Predicate] = (), assume: Assumptions = ()) -> bool:
        """Settle nodes until every target is a number (or a fact), or nothing is left; whether all were reached."""
        wanted = tuple(targets)
        for size, form in assume:
            self._push("let", size, form, None, (), INTRODUCTION)
        for instance in self.instances:
            for key in (*instance.relation.terms, *instance.premises):
                self._uses.setdefault(key, []).append(instance)
        for instance in self.instances:
            self._try(instance)
        while self._heap and not (wanted and all(self.reached(target) for target in wanted)):
            self._settled += 1
            if self._settled > MOST_SETTLED:
                raise BudgetExceeded("the figure has more consequences than the search may settle")
            self._settle(heapq.heappop(self._heap)[3])
        return all(self.reached(target) for target in wanted)

    def impossible_sizes(self) -> list[Node]:
        """Sizes that came out as an angle of 0° or less or of a straight angle or more, or as no length."""
        return [
            node
            for size, node in self.numeric.items()
            if node.form.constant <= 0
            or (isinstance(size, AngleOf) and node.form.constant >= (360 if size.reflex else 180))
        ]

    def reached(self, target: Size | Predicate) -> Node | None:
        """The node that settles a target: a number for a size or letter, a line for a predicate."""
        if isinstance(target, Letter):
            return self.letters.get(target)
        if isinstance(target, Measurable):
            return self.numeric.get(target)
        return self.facts.get(target)

    def _push(
        self,
        kind: Kind,
        subject: Size | Predicate | None,
        form: LinearForm[Letter],
        instance: Instance | None,
        inputs: tuple[Node, ...],
        weight: int,
    ) -> None:
        if kind == "equation" and any(abs(coefficient) != 1 for coefficient in form.terms.values()):
            weight += DIVIDING
        cost = weight + sum(node.cost for node in inputs)
        lines = (weight > 2) + sum(node.lines for node in inputs)
        node = Node(kind, subject, form, instance, inputs, cost, lines)
        self._order += 1
        heapq.heappush(self._heap, (cost, lines, self._order, node))

    def _settle(self, node: Node) -> None:
        subject = node.subject
        if node.kind == "equation":
            self._settle_equation(node)
        elif node.kind == "letter":
            assert isinstance(subject, Letter)
            if subject not in self.letters:
                self.letters[subject] = node
                self._letter_found()
        elif node.kind == "predicate":
            assert subject is not None and not isinstance(subject, Size)
            if subject not in self.facts:
                self.facts[subject] = node
                self._try_all(subject)
        else:
            assert isinstance(subject, Measurable)
            self._settle_size(subject, node)

    def _settle_size(self, subject: Measurable, node: Node) -> None:
        first = self.known.get(subject)
        if first is None:
            self.known[subject] = node
        elif first.form != node.form and not (first.is_number() and node.is_number()):
            if node.kind != "substituted" and first.kind != "substituted":
                self._push("equation", subject, first.form - node.form, None, (first, node), 4)
        elif first.form != node.form and self.clash is None:
            self.clash = Node("equation", subject, first.form - node.form, None, (first, node), 0, 0)
        if node.is_number() and subject not in self.numeric:
            self.numeric[subject] = node
        elif first is not None:
            return
        self._try_all(subject)
        if not node.is_number():
            self._substitute(subject, node)

    def _settle_equation(self, node: Node) -> None:
        number = len(self.equations)
        if len(node.form.terms) == 1:
            ((letter, coefficient),) = node.form.terms.items()
            alone = LinearForm[Letter].number(-Fraction(node.form.constant) / coefficient)
            self._push("letter", letter, alone, None, (node,), SOLVING)
        rest, _ = self._rows.reduce(node.form)
        if rest.is_zero:
            return
        if rest.is_constant:
            self.clash = self.clash or node
            return
        self.equations.append(node)
        self._rows.add(node.form, number)
        for letter in sorted({key for row in self.equations for key in row.form.terms}, key=lambda key: key.name):
            value = self._rows.value(LinearForm.of(letter))
            if value is not None and letter not in self.letters:
                inputs = tuple(self.equations[row] for row in sorted(self._rows.support(LinearForm.of(letter))))
                weight = SOLVING if len(inputs) == 1 else SIMULTANEOUS * len(inputs)
                self._push("letter", letter, LinearForm.number(value), None, inputs, weight)

    def _letter_found(self) -> None:
        for size, node in list(self.known.items()):
            if not node.is_number() and size not in self.numeric:
                self._substitute(size, node)
        for instance in self.instances:
            if any(isinstance(key, Letter) or self._has_form(key) for key in instance.relation.terms):
                self._try(instance)

    def _has_form(self, size: Size) -> bool:
        """Whether a size is known in letters only."""
        return size in self.known and size not in self.numeric

    def _substitute(self, size: Size, node: Node) -> None:
        values = {letter: self.letters[letter] for letter in node.form.terms if letter in self.letters}
        if values and len(values) == len(node.form.terms):
            form = node.form.replaced({letter: found.form for letter, found in values.items()})
            self._push("substituted", size, form, None, (node, *values.values()), SUBSTITUTION)

    def _try_all(self, key: object) -> None:
        for instance in self._uses.get(key, ()):
            self._try(instance)

    def _try(self, instance: Instance) -> None:
        """Push what an instance yields now: a size, an equation in letters, or its conclusion."""
        if self.budget is not None:
            self.budget.spend()
        if not self._may_yield(instance):
            return
        inputs: list[Node] = []
        for premise in instance.premises:
            if isinstance(premise, Stated):
                if premise.label in self.leave_out:
                    return
                continue
            fact = self.facts.get(premise)
            if fact is None:
                return
            inputs.append(fact)
        unknown: Size | None = None
        parts: list[tuple[LinearForm[Letter], Rational]] = []
        for size, coefficient in instance.relation.terms.items():
            if isinstance(size, Letter):
                solved = self.letters.get(size)
                parts.append((solved.form if solved else LinearForm.of(size), coefficient))
                if solved:
                    inputs.append(solved)
                continue
            node = self.numeric.get(size) or self.known.get(size)
            if node is not None:
                parts.append((node.form, coefficient))
                inputs.append(node)
            elif unknown is None:
                unknown = size
            else:
                return
        rest = combination(parts, instance.relation.constant)
        valued = {letter: self.letters[letter] for letter in rest.terms if letter in self.letters}
        if valued and unknown is None:
            rest = rest.replaced({letter: known.form for letter, known in valued.items()})
            inputs += [known for known in valued.values() if known not in inputs]
        self._conclude(instance, unknown, rest, tuple(inputs))
        if unknown is None and not valued and instance.conclusion is None and rest.terms:
            self._find_number(instance, rest, tuple(inputs))

    def _may_yield(self, instance: Instance) -> bool:
        """Whether few enough sizes are open: one, or none where the instance has a conclusion that is still open."""
        if instance.conclusion is not None and instance.conclusion in self.facts:
            return False
        open_sizes = 0 if instance.conclusion is None else 1
        for size in instance.relation.terms:
            if size not in self.known and not isinstance(size, Letter):
                open_sizes += 1
                if open_sizes > 1:
                    return False
        return True

    def _find_number(self, instance: Instance, rest: LinearForm[Letter], inputs: tuple[Node, ...]) -> None:
        """A size that has only a form so far, as a number from an instance whose other sizes are numbers."""
        for node in inputs:
            size = node.subject
            if node.is_number() or not isinstance(size, Measurable):
                continue
            coefficient = instance.relation.terms.get(size, 0)
            others = rest.plus(node.form, -coefficient)
            if others.is_constant:
                behind = tuple(entry for entry in inputs if entry is not node)
                self._push("size", size, others.over(-coefficient), instance, behind, instance.weight)

    def _conclude(
        self, instance: Instance, unknown: Size | None, rest: LinearForm[Letter], inputs: tuple[Node, ...]
    ) -> None:
        if instance.conclusion is not None:
            if unknown is None and rest.is_zero and instance.conclusion not in self.facts:
                self._push("predicate", instance.conclusion, LinearForm(), instance, inputs, instance.weight)
        elif unknown is not None:
            form = rest.over(-instance.relation.terms[unknown])
            self._push("size", unknown, form, instance, inputs, instance.weight)
        elif rest.terms or rest.constant:
            subject = next((node.subject for node in inputs if isinstance(node.subject, Measurable)), None)
            if rest.is_constant:
                self.clash = self.clash or Node("equation", subject, rest, instance, inputs, 0, 0)
            else:
                self._push("equation", subject, rest, instance, inputs, instance.weight)
