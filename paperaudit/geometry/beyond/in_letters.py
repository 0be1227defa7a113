"""Answers that are forms in the paper's own letters: ∠ABC = 180° − 2x."""

from paperaudit.geometry.figure.notation import Notation
from paperaudit.geometry.figure.wanted import Wanted, positions
from paperaudit.geometry.linear.derive import Search
from paperaudit.geometry.linear.examine import Settled, measured_nodes_agree
from paperaudit.geometry.linear.line_writer import LineWriter
from paperaudit.geometry.linear.working import CONFIRMED, Working
from paperaudit.maths.write import write
from paperaudit.model.derivation import Answer, Derivation, Derived, NotRead, Outcome
from paperaudit.model.expression import AngleOf
from paperaudit.model.fact import Given


def in_letters_outcome(one: Settled, wanted: list[Wanted], givens: tuple[Given, ...], notation: Notation) -> Outcome:
    """The answer as a form in the paper's letters: ∠ABC = 180° − 2x."""
    search = Search(one.found)
    sizes = [one.arrangement.canonical(item.expression) for item in wanted if isinstance(item.expression, AngleOf)]
    search.run()
    working = Working(LineWriter(one.arrangement, notation), givens)
    answers = []
    for item, size in zip(wanted, sizes, strict=False):
        form = one.theory.in_letters(item.form)
        node = search.known.get(size)
        if form is None or node is None or node.form != form or not measured_nodes_agree(one.arrangement, [node]):
            return NotRead(f"{write(item.expression)} was not found in terms of the letters of the figure")
        working.add(node)
        exact = notation.value(form, "°")
        answers.append(Answer(write(exact), exact))
    used = tuple(givens[label].text for label in sorted(working.used))
    return Derived(tuple(answers), (Derivation(tuple(working.steps), CONFIRMED, used),), positions(one.arrangement))
