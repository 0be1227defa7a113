"""Answers that are forms in the paper's own letters: ∠ABC = 180° − 2x."""

from paperaudit.geometry.figure.notation import Notation
from paperaudit.geometry.figure.wanted import Wanted, positions
from paperaudit.geometry.linear.derive import Search
from paperaudit.geometry.linear.examine import Settled, measured_nodes_agree
from paperaudit.geometry.linear.line_writer import LineWriter
from paperaudit.geometry.linear.working import CONFIRMED, Working
from paperaudit.maths.linear import LinearForm, combination
from paperaudit.maths.write import write
from paperaudit.model.derivation import Answer, Derivation, Derived, NotRead, Outcome, Step, StepKind
from paperaudit.model.fact import Given


def in_letters_outcome(one: Settled, wanted: list[Wanted], givens: tuple[Given, ...], notation: Notation) -> Outcome:
    """The answer as a form in the paper's letters: ∠ABC = 180° − 2x, or the perimeter 4x + 2y."""
    search = Search(one.found)
    search.run()
    working = Working(LineWriter(one.arrangement, notation), givens)
    answers = []
    for item in wanted:
        form = one.theory.in_letters(item.form) if item.linear else None
        parts = one.arrangement.canonical_form(item.form)
        nodes = {size: node for size in parts.terms if (node := search.known.get(size))}
        found = combination(((node.form, parts.coefficient(size)) for size, node in nodes.items()), parts.constant)
        if form is None or not nodes or len(nodes) < len(parts.terms) or found != form:
            return _not_found(item)
        if not measured_nodes_agree(one.arrangement, list(nodes.values())):
            return _not_found(item)
        for node in nodes.values():
            working.add(node)
        exact = notation.value(form, notation.unit_of(next(iter(nodes))))
        if parts != LinearForm.of(next(iter(nodes))):
            working.steps.append(Step(f"{write(item.expression)} = {write(exact)}", StepKind.CALCULATION))
        answers.append(Answer(write(exact), exact))
    used = tuple(givens[label].text for label in sorted(working.used))
    return Derived(tuple(answers), (Derivation(tuple(working.steps), CONFIRMED, used),), positions(one.arrangement))


def _not_found(item: Wanted) -> NotRead:
    return NotRead(f"{write(item.expression)} was not found in terms of the letters of the figure")
