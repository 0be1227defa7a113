"""Says in words why the givens of a figure cannot hold together."""

from paperaudit.geometry.figure.figure import Measurable, Size, length
from paperaudit.geometry.figure.notation import Notation
from paperaudit.geometry.linear.derive import Node, Search
from paperaudit.geometry.linear.introduce import contradicting
from paperaudit.geometry.linear.line_writer import LineWriter
from paperaudit.geometry.linear.refute import Refutation
from paperaudit.geometry.linear.theory import close
from paperaudit.geometry.linear.working import Working
from paperaudit.geometry.theorems import ALL
from paperaudit.maths.linear import LinearForm
from paperaudit.maths.write import write
from paperaudit.model.derivation import Impossible, Step
from paperaudit.model.fact import Given

_SAYS = {theorem.name: theorem.says for theorem in reversed(ALL)}


def impossible_outcome(
    refutation: Refutation, givens: tuple[Given, ...], notation: Notation, otherwise: bool = False
) -> Impossible:
    """The clash as the texts of its givens, the lines that show it, and a value that would fit where one is known.

    `otherwise` says that the givens hold together if the points are arranged otherwise than in the sketch.
    """
    clash = tuple(dict.fromkeys(givens[label].text for label in refutation.clash if label >= 0))
    everything = frozenset(range(len(givens)))
    leave_out = everything - frozenset(refutation.clash)
    found = contradicting(refutation.found, refutation.arrangement.figure.letters, leave_out)
    why, suggestion = _contradiction(refutation, found, givens, notation)
    if otherwise:
        suggestion = f"{suggestion} Or arrange the points otherwise than the sketch does.".strip()
    return Impossible(clash, why, suggestion)


def _contradiction(
    refutation: Refutation, found: Search, givens: tuple[Given, ...], notation: Notation
) -> tuple[tuple[str, ...], str]:
    working = Working(LineWriter(refutation.arrangement, notation), givens)
    for beyond in found.impossible_sizes()[:1]:
        working.add(beyond)
        assert isinstance(beyond.subject, Measurable)
        name = write(refutation.arrangement.name(beyond.subject))
        value = write(notation.value(beyond.form, notation.unit_of(beyond.subject)))
        return (*_lines(working.steps), f"{name} cannot be {value}."), ""
    short = _short_sides(refutation, notation)
    if short:
        return short, ""
    if found.clash is not None:
        return _two_values(refutation, found.clash, working, notation)
    return ("Together these givens lead to a contradiction in the angles of the figure.",), ""


def _short_sides(refutation: Refutation, notation: Notation) -> tuple[str, ...]:
    """The line that shows two sides of a triangle no longer than the third (Euclid I.20), () where none are."""
    arrangement = refutation.arrangement
    theory = close(arrangement, refutation.found)
    for triangle in arrangement.triangles:
        for a, b, c in triangle.turned():
            sides = (length(a, b), length(a, c), length(b, c))
            one, two, third = (theory.value(LinearForm.of(side)) for side in sides)
            if one is not None and two is not None and third is not None and one + two <= third:
                both = write(notation.value(LinearForm.number(one + two), notation.length_unit))
                far = write(notation.value(LinearForm.number(third), notation.length_unit))
                names = [write(side) for side in sides]
                return (
                    f"{names[0]} + {names[1]} = {both}, but {names[2]} = {far}: "
                    "two sides of a triangle are together longer than the third.",
                )
    return ()


def _two_values(
    refutation: Refutation, clash: Node, working: Working, notation: Notation
) -> tuple[tuple[str, ...], str]:
    for before in clash.inputs:
        working.add(before)
    claims = [working.add(before) for before in clash.inputs]
    if clash.instance is None:
        last = f"So {claims[0]} and {claims[1]} at once, which cannot be."
        return (*_lines(working.steps), last), _fits(refutation, clash, notation)
    relation = working.writer.equation_text(clash)
    says = _SAYS.get(clash.instance.theorem, "")
    if clash.instance.theorem in ("given", "angle-bisector"):
        return (*_lines(working.steps), f"The paper's own statement would then say {relation}, which cannot be."), ""
    told = working.writer.false_equation(clash) or f"{relation} would have to hold, which cannot be"
    return (*_lines(working.steps), f"{says.rstrip('.')}, but {told}."), ""


def _fits(refutation: Refutation, clash: Node, notation: Notation) -> str:
    derived = [node for node in clash.inputs if node.inputs]
    subject: Size | object = clash.subject
    if len(derived) != 1 or not isinstance(subject, Measurable) or not derived[0].is_number():
        return ""
    name = write(refutation.arrangement.name(subject))
    return f"{name} = {write(notation.value(derived[0].form, notation.unit_of(subject)))} would fit the other givens."


def _lines(steps: list[Step]) -> list[str]:
    lines = []
    for step in steps:
        says = _SAYS.get(step.reason.name, "") if step.reason else ""
        lines.append(f"{step.statement}: {says[0].lower()}{says[1:]}" if says else step.statement)
    return lines
