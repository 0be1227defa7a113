"""Writes a derivation that is not linear: the linear lines as `working.py` does, the others here."""

from dataclasses import dataclass, field

from paperaudit.geometry.beyond.amounts import is_linear
from paperaudit.geometry.beyond.further_texts import Texts
from paperaudit.geometry.beyond.quadratic_lines import solving_lines
from paperaudit.geometry.beyond.reached import Fact
from paperaudit.geometry.beyond.values import SIZED, Values, is_equality
from paperaudit.geometry.linear.derive import Node
from paperaudit.geometry.linear.working import Working
from paperaudit.geometry.theorems.further import SKILLS
from paperaudit.geometry.theorems.theorem import (
    AngleIs,
    AnglesEqual,
    Balanced,
    Claimed,
    Concyclic,
    Equation,
    Greater,
    Instance,
    IsDiameter,
    LinesParallel,
    Proportional,
    SegmentsEqual,
    Stated,
    Touches,
    TrianglesAlike,
)
from paperaudit.maths.linear import LinearForm
from paperaudit.model.derivation import Reason, Step, StepKind
from paperaudit.model.expression import Letter


@dataclass(slots=True)
class FurtherWorking:
    """Collects the lines behind some facts, each once, in an order in which they can be written."""

    working: Working
    values: Values
    texts: Texts
    _nodes: dict[int, Node] = field(default_factory=dict)
    _done: dict[int, str] = field(default_factory=dict)

    def add(self, fact: Fact) -> str:
        """Write the lines that lead to a fact and return the text that later lines refer to it by."""
        if id(fact) not in self._done:
            uses = [self.add(before) for before in fact.inputs]
            self._done[id(fact)] = self._write(fact, uses)
        return self._done[id(fact)]

    def _write(self, fact: Fact, uses: list[str]) -> str:
        if fact.kind == "linear":
            return self._from_linear_search(fact)
        node = self._node(fact)
        if self._is_linear(fact):
            return self.working.add(node)
        if isinstance(fact.source, Instance | Equation):
            for premise in fact.source.premises:
                if isinstance(premise, Stated):
                    self.working.used.setdefault(premise.label)
                    uses.append(self.working.givens[premise.label].text)
        text, steps = self._lines(fact, tuple(dict.fromkeys(use for use in uses if use)))
        for step in steps:
            self.working.draw_in(step.statement)
        self.working.steps.extend(steps)
        self.working.take(node, text)
        return text

    def _from_linear_search(self, fact: Fact) -> str:
        assert fact.plain is not None
        text = self.working.add(fact.plain)
        if not isinstance(fact.subject, AnglesEqual):
            return text
        claim = self.texts.claim(fact.subject)
        self.working.steps.append(Step(claim, StepKind.STATEMENT, None, (text,), "", "adding angles"))
        return claim

    def _node(self, fact: Fact) -> Node:
        """The fact in the form of the linear search, for the lines that are written as there."""
        if id(fact) not in self._nodes:
            inputs = tuple(self._node(before) for before in fact.inputs)
            form = self._form(fact) or LinearForm()
            instance = fact.source if isinstance(fact.source, Instance) else None
            kind = "size" if fact.kind == "linear" else fact.kind
            made = Node(kind, fact.subject, form, instance, inputs, fact.cost, 0)
            same = fact.plain is not None and fact.plain.subject == fact.subject
            self._nodes[id(fact)] = fact.plain if same and fact.plain is not None else made
        return self._nodes[id(fact)]

    def _form(self, fact: Fact) -> LinearForm[Letter] | None:
        if fact.kind in SIZED and not is_equality(fact):
            return is_linear(self.values.of(fact))
        return None

    def _is_linear(self, fact: Fact) -> bool:
        """Whether a fact's line is one of the linear search: its theorem is, and so are all values in it."""
        if fact.kind == "predicate":
            if isinstance(fact.subject, Concyclic | IsDiameter | Touches):
                sizes = [before for before in fact.inputs if before.kind in SIZED]
                return isinstance(fact.source, Instance) and all(self._form(before) is not None for before in sizes)
            return isinstance(fact.source, Instance) and isinstance(fact.subject, LinesParallel | SegmentsEqual)
        if fact.kind == "let":
            return True
        inputs = [before for before in fact.inputs if before.kind in SIZED and not is_equality(before)]
        known = all(self._form(before) is not None for before in inputs)
        if fact.kind == "letter":
            equations = [before for before in fact.inputs if before.kind == "equation"]
            return all(self._is_linear(equation) for equation in equations) and self._form(fact) is not None
        if fact.kind == "equation":
            return known and (fact.source is None or isinstance(fact.source, Instance))
        if fact.kind == "substituted":
            return known and self._form(fact) is not None
        return isinstance(fact.source, Instance) and known and self._form(fact) is not None

    def _lines(self, fact: Fact, uses: tuple[str, ...]) -> tuple[str, list[Step]]:
        match fact.kind:
            case "predicate":
                return self._predicate(fact, uses)
            case "size":
                return self._size(fact, uses)
            case "substituted":
                text = self.texts.substitution(fact, self.values)
                step = Step(text, StepKind.CALCULATION, Reason("substitution"), uses, self._said(fact), "substitution")
                return self.texts.value_claim(fact, self.values), [step]
            case "equation":
                *names, text = self.texts.equation_lines(fact, self.values)
                first = [
                    Step(line, StepKind.STATEMENT, self._reason(fact), uses, "", self._skill(fact)) for line in names
                ]
                reason = None if names else self._reason(fact)
                return text, [*first, Step(text, StepKind.EQUATION, reason, uses, "", "forming equations")]
            case "letter":
                return solving_lines(fact, self.values, self.texts)
        raise AssertionError(fact.kind)

    def _size(self, fact: Fact, uses: tuple[str, ...]) -> tuple[str, list[Step]]:
        claim = self.texts.value_claim(fact, self.values)
        if _is_stated(fact):
            return claim, []
        lines = self.texts.size_lines(fact, self.values)
        first = Step(lines[0], StepKind.STATEMENT, self._reason(fact), uses, "", self._skill(fact))
        if len(lines) == 1:
            first = Step(lines[0], StepKind.STATEMENT, self._reason(fact), uses, self._said(fact), self._skill(fact))
            return claim, [first]
        rest = [Step(line, StepKind.ALGEBRA, None, (lines[0],), "", self._skill(fact)) for line in lines[1:-1]]
        last = Step(lines[-1], StepKind.CALCULATION, None, (lines[0],), self._said(fact), self._skill(fact))
        return claim, [first, *rest, last]

    def _predicate(self, fact: Fact, uses: tuple[str, ...]) -> tuple[str, list[Step]]:
        subject = fact.subject
        match subject:
            case AnglesEqual(first, second) if first == second:
                text = f"{self.texts.name(first)} is common"
                return text, [Step(text, StepKind.STATEMENT, Reason("common-side"), (), "", "congruent triangles")]
            case SegmentsEqual(one, other) if one == other:
                text = f"{self.texts.name(one)} is common"
                return text, [Step(text, StepKind.STATEMENT, Reason("common-side"), (), "", "congruent triangles")]
            case AngleIs():
                return uses[0] if uses else self.texts.claim(subject), []
            case Claimed() if not isinstance(fact.source, Instance):
                return "", []
        if isinstance(subject, TrianglesAlike):
            self._list_parts(fact)
        text = self.texts.claim(subject, fact.source)  # type: ignore[arg-type]
        if fact.source is None and isinstance(subject, AnglesEqual | SegmentsEqual | Proportional | Balanced | Greater):
            text = self.texts.observed(fact, self.values)
        reason = self._reason(fact)
        if reason is not None and reason.about == text:
            reason = Reason(reason.name)
        return text, [Step(text, StepKind.STATEMENT, reason, uses, "", self._skill(fact))]

    def _list_parts(self, fact: Fact) -> None:
        """Write the equal parts of two triangles that are copied from the question: a pupil lists them all."""
        said = {step.statement for step in self.working.steps}
        for before in fact.inputs:
            subject = before.subject
            if not isinstance(subject, SegmentsEqual | AnglesEqual) or subject.first == subject.second:
                continue
            if before.source is not None:
                text = self.texts.claim(subject, before.source)
                if text not in said:
                    uses = (self._done[id(before)],)
                    step = Step(text, StepKind.GIVEN, self._reason(before), uses, "", self._skill(before))
                    self.working.steps.append(step)

    def _said(self, fact: Fact) -> str:
        return self.texts.value(self.values.of(fact), fact.subject)  # type: ignore[arg-type]

    def _reason(self, fact: Fact) -> Reason | None:
        """The reason of a line; an equal length has the reason for which the sides are equal."""
        if fact.source is None:
            return None
        if fact.source.theorem == "equal-sides":
            equal = (one for one in fact.inputs if isinstance(one.subject, SegmentsEqual) and one.source is not None)
            reasons = (reason for one in equal if (reason := self._reason(one)) is not None)
            return next(reasons, Reason("equal-sides-given"))
        return Reason(fact.source.theorem, fact.source.about)

    def _skill(self, fact: Fact) -> str:
        if fact.source is None:
            return ""
        return fact.source.skill or SKILLS.get(fact.source.theorem, "")


def _is_stated(fact: Fact) -> bool:
    """Whether the paper itself states a size's value, which costs no line: AC = 5√2."""
    source = fact.source
    return (
        isinstance(source, Equation)
        and source.theorem == "given"
        and not fact.inputs
        and fact.size in (source.left, source.right)
    )
