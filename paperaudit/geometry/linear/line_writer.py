"""Writes single lines of a derivation: names, values, equations, and what was worked out to reach them."""

from dataclasses import dataclass
from fractions import Fraction

from paperaudit.geometry.beyond.spelled import as_bearing
from paperaudit.geometry.coordinates.arrangement import Arrangement
from paperaudit.geometry.figure.circle_texts import circle_text
from paperaudit.geometry.figure.figure import Angular, Measurable, Size
from paperaudit.geometry.figure.notation import Notation, bracketed
from paperaudit.geometry.linear.derive import Node
from paperaudit.geometry.linear.equation_lines import Sides, Term, sum_of
from paperaudit.geometry.theorems.theorem import Concyclic, LinesParallel, SegmentsEqual, Touches
from paperaudit.maths.linear import LinearForm
from paperaudit.maths.write import write
from paperaudit.model.expression import BearingOf, Letter

SILENT = frozenset(
    {
        "given",
        "equal-sides-given",
        "perpendicular-given",
        "parallelogram-definition",
        "trapezium-parallel-sides",
        "midpoint",
        "rhombus-sides",
        "kite-sides",
        "equilateral-sides",
        "isosceles-trapezium-legs",
        "radii",
    }
)
"""Reasons of facts that are copied from the question: a pupil uses them without a line of their own."""

NAMED_PARTS = frozenset({"adjacent-angles", "segment-addition", "exterior-angle-triangle", "perimeter"})
"""Theorems whose line names its parts before the numbers: ∠ABD = ∠ABC + ∠CBD = 30° + 40° = 70°."""


@dataclass(frozen=True, slots=True)
class LineWriter:
    """The texts of one arrangement's lines in the paper's own notation."""

    arrangement: Arrangement
    notation: Notation

    def name(self, size: Size) -> str:
        """A size as the paper names it."""
        return write(self.arrangement.name(size))

    def value(self, node: Node) -> str:
        """The value or form that a size's node arrives at, with its unit."""
        assert isinstance(node.subject, Measurable)
        text = write(self.notation.value(node.form, self.notation.unit_of(node.subject)))
        return as_bearing(text) if isinstance(node.subject, BearingOf) else text

    def claim(self, node: Node) -> str:
        """What a node establishes, in short: ∠ABC = 68°, AB = AC, AB ∥ CD."""
        if isinstance(node.subject, SegmentsEqual):
            return equal_segments_text(node.subject)
        if isinstance(node.subject, LinesParallel):
            assert node.instance
            return node.instance.about
        if isinstance(node.subject, Measurable):
            return f"{self.name(node.subject)} = {self.value(node)}"
        return circle_text(self.arrangement, node.subject)

    def statement(self, node: Node) -> str:
        """∠ACB = 180° − 112° = 68°."""
        assert node.instance and isinstance(node.subject, Measurable)
        relation, subject = node.instance.relation, node.subject
        value = self.value(node)
        others = [
            (size, -coefficient / relation.coefficient(subject))
            for size, coefficient in relation.terms.items()
            if size != subject
        ]
        constant = -relation.constant / relation.coefficient(subject)
        name = self.name(subject)
        share = abs(relation.coefficient(subject))
        if not others and node.instance.theorem == "perimeter":
            whole = self.notation.value(LinearForm.number(constant * share), self.notation.unit_of(subject))
            return f"{name} = {write(whole)} ÷ {share} = {value}"
        if not others or (node.instance.theorem == "given" and not node.form.is_constant):
            return f"{name} = {value}"
        if len(others) == 1 and others[0][1] == 1 and not constant:
            return f"{name} = {self.name(others[0][0])} = {value}"
        worked = self._worked(node, others, constant, subject)
        middle = ""
        if node.instance.theorem in NAMED_PARTS and not constant and all(abs(share) == 1 for _, share in others):
            parts = sorted(others, key=lambda part: part[1] < 0)
            middle = " = " + _signed([(self.name(size), share > 0) for size, share in parts])
        tail = f" = {value}" if worked != value else ""
        return f"{name}{middle} = {worked}{tail}"

    def met(self, node: Node) -> str:
        """The line in which two angles are seen to be equal, or to add up, for something to follow for a circle."""
        relation = node.instance.relation if node.instance else None
        if relation is None or len(relation.terms) != 2 or not isinstance(node.subject, Concyclic | Touches):
            return ""
        one, two = relation.terms
        forms = {before.subject: before.form for before in node.inputs}
        values = [bracketed(self.notation.value(forms[size], "°")) for size in (one, two) if size in forms]
        if len(values) < 2:
            return ""
        if relation.constant:
            whole = write(self.notation.value(LinearForm.number(-relation.constant), "°"))
            return f"{self.name(one)} + {self.name(two)} = {values[0]} + {values[1]} = {whole}"
        return f"{self.name(one)} = {self.name(two)} = {values[0]}"

    def _worked(self, node: Node, others: list[tuple[Size, Fraction]], constant: Fraction, subject: Size) -> str:
        unit = self.notation.unit_of(subject)
        if unit != "°" and not node.form.is_constant:
            # Lengths in letters are bare numbers: x + 2, not x + 2 m.
            unit = ""
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

    def stated_form(self, node: Node) -> str:
        """The form in letters in which the paper states a size: 3y + 6°."""
        assert node.instance and isinstance(node.subject, Measurable)
        relation, subject = node.instance.relation, node.subject
        terms = {
            size: -v / relation.coefficient(subject) for size, v in relation.terms.items() if isinstance(size, Letter)
        }
        stated: LinearForm[Letter] = LinearForm(terms, -relation.constant / relation.coefficient(subject))
        return write(self.notation.value(stated, self.notation.unit_of(subject)))

    def substitution(self, node: Node) -> str:
        """∠ABC = 2x + 10° = 2 × 20° + 10° = 50°."""
        assert isinstance(node.subject, Measurable)
        before, unit = node.inputs[0].form, self.notation.unit_of(node.subject)
        bare = self.notation.bare_letters and unit == "°"
        found = {entry.subject: entry.form for entry in node.inputs[1:]}
        pieces: list[tuple[str, bool]] = []
        for letter, coefficient in before.terms.items():
            value = bracketed(self.notation.value(found[letter], "" if bare else unit))
            times = bracketed(self.notation.value(LinearForm.number(abs(Fraction(coefficient))), ""))
            pieces.append((value if abs(coefficient) == 1 else f"{times} × {value}", coefficient > 0))
        if before.constant:
            constant = write(
                self.notation.value(LinearForm.number(abs(Fraction(before.constant))), "" if bare else unit)
            )
            pieces.append((constant, before.constant > 0))
        pieces.sort(key=lambda piece: not piece[1])
        worked, value = _signed(pieces), self.value(node)
        if bare:
            worked = f"({worked})°" if len(pieces) > 1 or "×" in worked else f"{worked}°"
        tail = f" = {value}" if worked != value else ""
        return f"{self.name(node.subject)} = {write(self.notation.value(before, unit))} = {worked}{tail}"

    def sides(self, node: Node) -> Sides:
        """The two sides of an equation node as lists of forms with their multiples."""
        left: list[Term] = []
        right: list[Term] = []
        if node.instance is None:
            return [(Fraction(1), node.inputs[0].form)], [(Fraction(1), node.inputs[1].form)]
        solved = {before.subject: before.form for before in node.inputs if isinstance(before.subject, Letter)}
        forms = {before.subject: before.form.replaced(solved) for before in node.inputs}
        for size, coefficient in node.instance.relation.terms.items():
            form = forms.get(size) or LinearForm.of(size)  # type: ignore[arg-type]
            (left if coefficient > 0 else right).append((abs(Fraction(coefficient)), form))
        constant = node.instance.relation.constant
        if constant:
            (right if constant < 0 else left).append((Fraction(1), LinearForm.number(abs(Fraction(constant)))))
        return (right, left) if _more_letters(right, left) else (left, right)

    def false_equation(self, node: Node) -> str:
        """70° + 60° + 60° = 190°, not 180°; "" where a letter stands in the equation."""
        unit = "°" if isinstance(node.subject, Angular) else self.notation.length_unit
        left, right = self.sides(node)
        totals = [sum_of(side) for side in (left, right)]
        if not all(total.is_constant for total in totals):
            return ""
        here, there = (write(self.notation.value(total, unit)) for total in totals)
        return f"{self._side_text(left, unit)} = {here}, not {there}" if len(left) > 1 else f"{here} is not {there}"

    def equation_text(self, node: Node) -> str:
        """2x + 10° + 3x = 180°."""
        unit = "°" if isinstance(node.subject, Angular) else ""
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
