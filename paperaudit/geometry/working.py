"""Turns a derivation into the lines that a pupil writes, each with its reason."""

from dataclasses import dataclass, field
from fractions import Fraction

from paperaudit.geometry.arrangement import Arrangement
from paperaudit.geometry.derive import Node
from paperaudit.geometry.equation_lines import Sides, Term, letter_steps
from paperaudit.geometry.figure import Size
from paperaudit.geometry.notation import Notation, bracketed
from paperaudit.geometry.theorems import SKILLS
from paperaudit.geometry.theorems.theorem import Instance, LinesParallel, SegmentsEqual, Stated
from paperaudit.maths.linear import LinearForm
from paperaudit.maths.write import write
from paperaudit.model.derivation import Reason, Step, StepKind
from paperaudit.model.expression import AngleOf, LengthOf, Letter
from paperaudit.model.fact import Given

SILENT = frozenset({
    "given", "equal-sides-given", "perpendicular-given", "parallelogram-definition", "trapezium-parallel-sides",
    "midpoint", "rhombus-sides", "kite-sides", "equilateral-sides", "regular-polygon-sides", "isosceles-trapezium-legs",
    "isosceles-sides",
})
"""Reasons of facts that are copied from the question: a pupil uses them without a line of their own."""

NAMED_PARTS = frozenset({"adjacent-angles", "segment-addition", "exterior-angle-triangle", "perimeter"})
"""Theorems whose line names its parts before the numbers: ∠ABD = ∠ABC + ∠CBD = 30° + 40° = 70°."""


@dataclass(slots=True)
class Working:
    """Collects the lines behind some nodes, each once, in an order in which they can be written."""

    arrangement: Arrangement
    givens: tuple[Given, ...]
    notation: Notation
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
            self._draw_in(step.statement)
        self.steps.extend(steps)
        self._done[id(node)] = text
        return text

    def _draw_in(self, statement: str) -> None:
        """Say what was drawn in before the first line that names a point of it."""
        for point, words in self.words.items():
            if point in statement and all(step.statement != words for step in self.steps):
                self.steps.append(Step(words, StepKind.CONSTRUCTION, Reason("construction-parallel") if "parallel" in words else None))

    def _lines(self, node: Node, uses: tuple[str, ...]) -> tuple[str, list[Step]]:
        instance = node.instance
        if instance and instance.theorem in SILENT and not node.inputs and node.kind != "equation":
            return uses[0] if uses else self._claim(node), []
        if _states_letter(node):
            return uses[0] if uses else self.equation_text(node), []
        match node.kind:
            case "let":
                text = f"Let {self._claim(node)}"
                return self._claim(node), [Step(text, StepKind.CONSTRUCTION, None, (), "", "forming equations")]
            case "predicate" if instance and instance.theorem == "construction-parallel":
                return instance.about, []
            case "predicate":
                text = self._claim(node)
                return text, [Step(text, StepKind.STATEMENT, self._reason(node), uses, "", self._skill(instance))]
            case "size" if instance and instance.theorem == "given" and _holds_letter(instance):
                return self._claim(node), [self._put_in(node, instance, uses)]
            case "size":
                statement = self._statement(node)
                step = Step(statement, StepKind.STATEMENT, self._reason(node), uses, self._value(node), self._skill(instance))
                return self._claim(node), [*self._lead(instance, uses), step]
            case "substituted":
                return self._claim(node), [self._substitution(node, uses)]
            case "equation":
                relation = self.equation_text(node)
                reason = self._reason(node)
                step = Step(relation, StepKind.EQUATION, reason, uses, "", self._skill(instance) or "forming equations")
                return relation, [*self._lead(instance, uses), step]
            case "letter":
                steps = letter_steps(node, self.sides, self.notation, self._is_angular(node))
                written = {step.statement for step in self.steps if step.kind is StepKind.ALGEBRA}
                return steps[-1].statement, [step for step in steps if step.statement not in written]
        raise AssertionError(node.kind)

    def _lead(self, instance: Instance | None, uses: tuple[str, ...]) -> list[Step]:
        """The equality that a line rests on without its own value: ∠ABC = ∠ACB (isosceles)."""
        if instance is None or instance.lead is None:
            return []
        one, two = instance.lead.relation.terms
        text = f"{self._name(one)} = {self._name(two)}"
        skill = self._skill(instance.lead)
        return [Step(text, StepKind.STATEMENT, Reason(instance.lead.theorem, instance.lead.about), uses[:1], "", skill)]

    def _is_angular(self, node: Node) -> bool:
        subjects = [before.subject for before in node.inputs]
        return any(isinstance(subject, AngleOf) for subject in subjects)

    def _name(self, size: Size) -> str:
        return write(self.arrangement.name(size))

    def _value(self, node: Node) -> str:
        assert isinstance(node.subject, AngleOf | LengthOf)
        return write(self.notation.value(node.form, self.notation.unit_of(node.subject)))

    def _claim(self, node: Node) -> str:
        if isinstance(node.subject, SegmentsEqual):
            return equal_segments_text(node.subject)
        if isinstance(node.subject, LinesParallel):
            assert node.instance
            return node.instance.about
        if isinstance(node.subject, AngleOf | LengthOf):
            return f"{self._name(node.subject)} = {self._value(node)}"
        return ""

    def _skill(self, instance: Instance | None) -> str:
        return (instance.skill or SKILLS.get(instance.theorem, "")) if instance else ""

    def _reason(self, node: Node) -> Reason | None:
        instance = node.instance
        if instance is None:
            behind = next((before for before in node.inputs if before.instance and before.instance.theorem not in SILENT), None)
            return self._reason(behind) if behind else Reason("given")
        if instance.theorem == "equal-sides":
            premise = next((before for before in node.inputs if isinstance(before.subject, SegmentsEqual)), None)
            if premise is not None and premise.instance and premise.instance.theorem != "equal-sides":
                return self._reason(premise)
            return Reason("equal-sides-given", "")
        return Reason(instance.theorem, instance.about)

    def _statement(self, node: Node) -> str:
        """∠ACB = 180° − 112° = 68°."""
        assert node.instance and isinstance(node.subject, AngleOf | LengthOf)
        relation, subject = node.instance.relation, node.subject
        value = self._value(node)
        others = [(size, -coefficient / relation.coefficient(subject)) for size, coefficient in relation.terms.items() if size != subject]
        constant = -relation.constant / relation.coefficient(subject)
        name = self._name(subject)
        if not others:
            return f"{name} = {value}"
        if len(others) == 1 and others[0][1] == 1 and not constant:
            return f"{name} = {self._name(others[0][0])} = {value}"
        worked = self._worked(node, others, constant, subject)
        middle = ""
        if node.instance.theorem in NAMED_PARTS and not constant and all(abs(share) == 1 for _, share in others):
            parts = sorted(others, key=lambda part: part[1] < 0)
            middle = " = " + _signed([(self._name(size), share > 0) for size, share in parts])
        tail = f" = {value}" if worked != value else ""
        return f"{name}{middle} = {worked}{tail}"

    def _worked(self, node: Node, others: list[tuple[Size, Fraction]], constant: Fraction, subject: Size) -> str:
        unit = self.notation.unit_of(subject)
        divisor = max((share.denominator for _, share in others), default=1)
        forms = {before.subject: before.form for before in node.inputs}
        pieces: list[tuple[str, bool]] = []
        if constant:
            pieces.append((write(self.notation.value(LinearForm.number(abs(constant) * divisor), unit)), constant > 0))
        for size, share in others:
            form: LinearForm[Letter] = forms.get(size) or LinearForm.of(size)  # type: ignore[arg-type]
            text = bracketed(self.notation.value(form, unit))
            times = abs(share) * divisor
            pieces.append((text if times == 1 else f"{times} × {text}", share > 0))
        if constant and node.instance and node.instance.theorem in SILENT:
            pieces.append(pieces.pop(0))
        pieces.sort(key=lambda piece: not piece[1])
        inner = _signed(pieces)
        if divisor == 1:
            return inner
        return f"({inner}) ÷ {divisor}" if len(pieces) > 1 else f"{inner} ÷ {divisor}"

    def _put_in(self, node: Node, instance: Instance, uses: tuple[str, ...]) -> Step:
        """A size that the paper states in a letter whose value it gives too: ∠ADC = 3y + 6° = 3 × 16° + 6° = 54°."""
        assert isinstance(node.subject, AngleOf | LengthOf)
        stated: LinearForm[Letter] = LinearForm(
            {size: -v / instance.relation.coefficient(node.subject)
             for size, v in instance.relation.terms.items() if isinstance(size, Letter)},
            -instance.relation.constant / instance.relation.coefficient(node.subject),
        )
        form = write(self.notation.value(stated, self.notation.unit_of(node.subject)))
        text = self._statement(node).replace(" = ", f" = {form} = ", 1)
        return Step(text, StepKind.CALCULATION, Reason("substitution"), uses, self._value(node), "substitution")

    def _substitution(self, node: Node, uses: tuple[str, ...]) -> Step:
        assert isinstance(node.subject, AngleOf | LengthOf)
        before = node.inputs[0]
        unit = self.notation.unit_of(node.subject)
        pieces: list[tuple[str, bool]] = []
        for letter, coefficient in before.form.terms.items():
            found = next(entry.form.constant for entry in node.inputs[1:] if entry.subject == letter)
            value = bracketed(self.notation.value(LinearForm.number(found), unit))
            times = abs(coefficient)
            pieces.append((value if times == 1 else f"{bracketed(self.notation.value(LinearForm.number(times), ''))} × {value}", coefficient > 0))
        if before.form.constant:
            constant = write(self.notation.value(LinearForm.number(abs(before.form.constant)), unit))
            pieces.append((constant, before.form.constant > 0))
        pieces.sort(key=lambda piece: not piece[1])
        worked = _signed(pieces)
        value = self._value(node)
        form = write(self.notation.value(before.form, unit))
        tail = f" = {value}" if worked != value else ""
        statement = f"{self._name(node.subject)} = {form} = {worked}{tail}"
        return Step(statement, StepKind.CALCULATION, Reason("substitution"), uses, value, "linear equations")

    def sides(self, node: Node) -> Sides:
        """The two sides of an equation node as lists of forms with their multiples."""
        left: list[Term] = []
        right: list[Term] = []
        if node.instance is None:
            return [(Fraction(1), node.inputs[0].form)], [(Fraction(1), node.inputs[1].form)]
        forms = {before.subject: before.form for before in node.inputs}
        for size, coefficient in node.instance.relation.terms.items():
            form = forms.get(size) or LinearForm.of(size)  # type: ignore[arg-type]
            (left if coefficient > 0 else right).append((abs(coefficient), form))
        constant = node.instance.relation.constant
        if constant:
            (right if constant < 0 else left).append((Fraction(1), LinearForm.number(abs(constant))))
        return (right, left) if _more_letters(right, left) else (left, right)

    def equation_text(self, node: Node) -> str:
        """2x + 10° + 3x = 180°."""
        unit = "°" if isinstance(node.subject, AngleOf) else ""
        left, right = self.sides(node)
        return f"{self._side_text(left, unit)} = {self._side_text(right, unit)}"

    def _side_text(self, side: list[Term], unit: str) -> str:
        texts = []
        for times, form in side:
            text = write(self.notation.value(form, unit))
            if times != 1:
                text = f"{times} × {text}" if form.is_constant else f"{times}({text})"
            texts.append(text)
        return " + ".join(texts).replace("+ −", "− ") or "0"


def _holds_letter(instance: Instance) -> bool:
    return any(isinstance(size, Letter) for size in instance.relation.terms)


def _states_letter(node: Node) -> bool:
    """Whether the paper itself gives a letter's value, so that a pupil copies it without a line."""
    if node.kind == "letter":
        return len(node.inputs) == 1 and _states_letter(node.inputs[0])
    instance = node.instance
    return (
        node.kind == "equation" and instance is not None and instance.theorem == "given"
        and len(instance.relation.terms) == 1 and isinstance(next(iter(instance.relation.terms)), Letter)
    )


def _more_letters(one: list[Term], other: list[Term]) -> bool:
    """Whether the letters weigh more on one side than on the other: that side is written first."""
    weights = [sum(times * sum(form.terms.values()) for times, form in side) for side in (one, other)]
    return weights[0] > weights[1]


def _signed(pieces: list[tuple[str, bool]]) -> str:
    """Pieces with their signs between them: 180° − 50° − 60°."""
    text = ""
    for piece, positive in pieces:
        if not text:
            text = piece if positive else f"−{piece}"
        else:
            text += f" {'+' if positive else '−'} {piece}"
    return text


def equal_segments_text(equal: SegmentsEqual) -> str:
    """AB = AC, a common end written first."""
    one, two = equal.first, equal.second
    common = {one.start, one.end} & {two.start, two.end}
    if len(common) == 1:
        shared = common.pop()
        far = [size.end if size.start == shared else size.start for size in (one, two)]
        return f"{shared}{far[0]} = {shared}{far[1]}"
    return f"{one.start}{one.end} = {two.start}{two.end}"
