"""Turns a derivation into the lines that a pupil writes, each with its reason."""

from dataclasses import dataclass, field

from paperaudit.geometry.figure.figure import Angular
from paperaudit.geometry.linear.derive import Node
from paperaudit.geometry.linear.equation_lines import letter_steps
from paperaudit.geometry.linear.line_writer import SILENT, LineWriter
from paperaudit.geometry.theorems import SKILLS
from paperaudit.geometry.theorems.theorem import Instance, SegmentsEqual, Stated
from paperaudit.model.derivation import Reason, Step, StepKind
from paperaudit.model.expression import Letter
from paperaudit.model.fact import Given

CONFIRMED = "exact elimination on line directions, and measurement on the figure drawn from the givens"
"""How the answers of the linear search are confirmed, in words."""


@dataclass(slots=True)
class Working:
    """Collects the lines behind some nodes, each once, in an order in which they can be written."""

    writer: LineWriter
    givens: tuple[Given, ...]
    words: dict[str, str] = field(default_factory=dict)
    steps: list[Step] = field(default_factory=list)
    used: dict[int, None] = field(default_factory=dict)
    _done: dict[int, str] = field(default_factory=dict)

    def add(self, node: Node) -> str:
        """Write the lines that lead to a node and return the text that later lines refer to it by."""
        if id(node) in self._done:
            return self._done[id(node)]
        uses = [self.add(before) for before in node.inputs]
        if node.instance:
            for premise in node.instance.premises:
                if isinstance(premise, Stated):
                    self.used.setdefault(premise.label)
                    uses.append(self.givens[premise.label].text)
        text, steps = self._lines(node, tuple(dict.fromkeys(uses)))
        for step in steps:
            self.draw_in(step.statement)
        self.steps.extend(steps)
        self._done[id(node)] = text
        return text

    def take(self, node: Node, text: str) -> None:
        """Have later lines refer to a node by a text whose lines were written elsewhere."""
        self._done[id(node)] = text

    def draw_in(self, statement: str) -> None:
        """Say what was drawn in before the first line that names a point of it."""
        for point, words in self.words.items():
            if point in statement and all(step.statement != words for step in self.steps):
                self.steps.append(
                    Step(words, StepKind.CONSTRUCTION, Reason("construction-parallel") if "parallel" in words else None)
                )

    def _lines(self, node: Node, uses: tuple[str, ...]) -> tuple[str, list[Step]]:
        instance = node.instance
        if instance and instance.theorem in SILENT and not node.inputs and node.kind != "equation":
            return uses[0] if uses else self.writer.claim(node), []
        if _states_letter(node):
            return uses[0] if uses else self.writer.equation_text(node), []
        match node.kind:
            case "let":
                text = f"Let {self.writer.claim(node)}"
                return self.writer.claim(node), [Step(text, StepKind.CONSTRUCTION, None, (), "", "forming equations")]
            case "predicate" if instance and instance.theorem == "construction-parallel":
                return instance.about, []
            case "predicate":
                text = self.writer.claim(node)
                met = self.writer.met(node)
                first = [Step(met, StepKind.CALCULATION, None, uses, "", "adding angles")] if met else []
                step = Step(
                    text, StepKind.STATEMENT, self._reason(node), (met,) if met else uses, "", self._skill(instance)
                )
                return text, [*first, step]
            case "size" if instance and instance.theorem == "given" and _holds_letter(instance):
                return self.writer.claim(node), [self._put_in(node, uses)]
            case "size":
                statement = self.writer.statement(node)
                step = Step(
                    statement,
                    StepKind.STATEMENT,
                    self._reason(node),
                    uses,
                    self.writer.value(node),
                    self._skill(instance),
                )
                return self.writer.claim(node), [*self._lead(instance, uses), step]
            case "substituted":
                return self.writer.claim(node), [self._substitution(node, uses)]
            case "equation":
                relation = self.writer.equation_text(node)
                reason = self._reason(node)
                step = Step(relation, StepKind.EQUATION, reason, uses, "", self._skill(instance) or "forming equations")
                return relation, [*self._lead(instance, uses), step]
            case "letter":
                steps = letter_steps(node, self.writer.sides, self.writer.notation, self._is_angular(node))
                written = {step.statement for step in self.steps if step.kind is StepKind.ALGEBRA}
                return steps[-1].statement, [step for step in steps if step.statement not in written]
        raise AssertionError(node.kind)

    def _lead(self, instance: Instance | None, uses: tuple[str, ...]) -> list[Step]:
        """The equality that a line rests on without its own value: ∠ABC = ∠ACB (isosceles)."""
        if instance is None or instance.lead is None:
            return []
        one, two = instance.lead.relation.terms
        text = f"{self.writer.name(one)} = {self.writer.name(two)}"
        skill = self._skill(instance.lead)
        return [Step(text, StepKind.STATEMENT, Reason(instance.lead.theorem, instance.lead.about), uses[:1], "", skill)]

    def _is_angular(self, node: Node) -> bool:
        subjects = [before.subject for before in node.inputs]
        return any(isinstance(subject, Angular) for subject in subjects)

    def _skill(self, instance: Instance | None) -> str:
        return (instance.skill or SKILLS.get(instance.theorem, "")) if instance else ""

    def _reason(self, node: Node) -> Reason | None:
        instance = node.instance
        if instance is None:
            behind = next(
                (before for before in node.inputs if before.instance and before.instance.theorem not in SILENT), None
            )
            return self._reason(behind) if behind else Reason("given")
        if instance.theorem == "equal-sides":
            premise = next((before for before in node.inputs if isinstance(before.subject, SegmentsEqual)), None)
            if premise is not None and premise.instance and premise.instance.theorem != "equal-sides":
                return self._reason(premise)
            return Reason("equal-sides-given", "")
        return Reason(instance.theorem, instance.about)

    def _put_in(self, node: Node, uses: tuple[str, ...]) -> Step:
        """A size that the paper states in a letter whose value it gives too: ∠ADC = 3y + 6° = 3 × 16° + 6° = 54°."""
        text = self.writer.statement(node).replace(" = ", f" = {self.writer.stated_form(node)} = ", 1)
        return Step(text, StepKind.CALCULATION, Reason("substitution"), uses, self.writer.value(node), "substitution")

    def _substitution(self, node: Node, uses: tuple[str, ...]) -> Step:
        text = self.writer.substitution(node)
        return Step(
            text, StepKind.CALCULATION, Reason("substitution"), uses, self.writer.value(node), "linear equations"
        )


def _holds_letter(instance: Instance) -> bool:
    return any(isinstance(size, Letter) for size in instance.relation.terms)


def _states_letter(node: Node) -> bool:
    """Whether the paper itself gives a letter's value, so that a pupil copies it without a line."""
    if node.kind == "letter":
        return len(node.inputs) == 1 and _states_letter(node.inputs[0])
    instance = node.instance
    return (
        node.kind == "equation"
        and instance is not None
        and instance.theorem == "given"
        and len(instance.relation.terms) == 1
        and isinstance(next(iter(instance.relation.terms)), Letter)
    )
