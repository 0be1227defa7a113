"""Answers a question for sizes of a figure: derived, impossible, open, or several."""

from collections.abc import Mapping
from fractions import Fraction
from functools import partial
from typing import Any

from paperaudit.geometry.coordinates.drawn import conceded
from paperaudit.geometry.figure.build import FigureBuilder
from paperaudit.geometry.figure.figure import Angular, Balance, Figure, SizeRelation
from paperaudit.geometry.figure.notation import Notation, notation_of, number
from paperaudit.geometry.figure.wanted import Wanted, positions, wanted_of
from paperaudit.geometry.linear.clash import impossible_outcome
from paperaudit.geometry.linear.derive import Node
from paperaudit.geometry.linear.examine import (
    Settled,
    agrees_with_drawing,
    derive_targets,
    examine,
    in_degrees,
    measured_nodes_agree,
)
from paperaudit.geometry.linear.line_writer import LineWriter
from paperaudit.geometry.linear.open_case import open_case
from paperaudit.geometry.linear.working import CONFIRMED, Working
from paperaudit.maths.linear import LinearForm
from paperaudit.maths.write import write
from paperaudit.model.derivation import (
    Answer,
    Case,
    Derivation,
    Derived,
    NotRead,
    Outcome,
    Reason,
    Several,
    Step,
    StepKind,
)
from paperaudit.model.expression import (
    AngleOf,
    ArcOf,
    Expression,
    LengthOf,
    Letter,
    Sum,
    letters_of,
)
from paperaudit.model.fact import Given


def find_outcome(
    builder: FigureBuilder,
    figure: Figure,
    givens: tuple[Given, ...],
    asked: tuple[Expression, ...],
    in_letters: bool = False,
    leave_out: bool = True,
) -> Outcome:
    """The outcome for sizes asked for: every one has to be settled, `in_letters` as a form in the paper's letters.

    A figure that cannot be drawn is also refuted by what the givens say with one of them left out.
    """
    resolved = [builder.resolved(item) for item in asked]
    wanted = [wanted_of(item, builder.unit) for item in resolved]
    unused = [letter for item in wanted for letter in letters_of(item.expression) if not _occurs(figure, letter)]
    if unused:
        return NotRead(f"the letter {unused[0]} does not occur in the givens")
    notation = notation_of(builder.unit, givens)
    result = examine(figure, [item.form for item in wanted])
    if result.refutation:
        return impossible_outcome(result.refutation, givens, notation, result.otherwise)
    if not result.settled:
        return _not_drawn(figure, givens, notation, leave_out)
    if any(settled.theory.clash is not None for settled in result.settled):
        return NotRead("the equations of the figure and its drawing contradict each other")
    if not in_letters and all(_settles(one, wanted) for one in result.settled):
        plain = _answered(figure, result.settled, wanted, givens, notation)
        return conceded(_else_beyond(plain, figure, result.settled, wanted, givens, notation), result.concession)
    left_open = None if in_letters else open_case(result.settled, wanted, notation)
    if left_open:
        return left_open
    from paperaudit.geometry import find_beyond as beyond  # most questions never need its theorems

    if in_letters:
        return beyond.in_letters_outcome(result.settled[0], wanted, givens, notation)
    return conceded(beyond.unsettled(figure, result.settled, wanted, givens, notation), result.concession)


def _not_drawn(figure: Figure, givens: tuple[Given, ...], notation: Notation, leave_out: bool) -> Outcome:
    """A figure that cannot be drawn: refuted by what the other givens make of one, or by all its lengths together."""
    from paperaudit.geometry import find_beyond as beyond  # loaded by need, as above

    clash = beyond.overdetermined(givens, partial(_size_from, figure)) if leave_out else None
    if clash:
        return clash
    return beyond.no_lengths(figure, givens, notation)


def _size_from(figure: Figure, givens: tuple[Given, ...], size: Expression) -> Outcome:
    """What some of the givens of a figure say of a size."""
    builder = FigureBuilder(givens, (size,))
    return find_outcome(builder, builder.figure(figure.sketch, (size,)), givens, (size,), leave_out=False)


def _settles(one: Settled, wanted: list[Wanted]) -> bool:
    """Whether the linear theory of an arrangement has a value for everything asked for."""
    return all(value is not None and item.linear for item, value in zip(wanted, one.values, strict=True))


def _occurs(figure: Figure, letter: str) -> bool:
    """Whether some condition of the figure is about a letter."""
    for condition in figure.conditions:
        match condition:
            case SizeRelation(form) if Letter(letter) in form.terms:
                return True
            case Balance(left, right) if letter in letters_of(Sum((left, right))):
                return True
    return False


def answer_of(item: Wanted, value: Fraction, figure: Figure, notation: Notation) -> Answer:
    """The answer's text and exact value with its unit: 68°, x = 20°, 7.5 cm."""
    if isinstance(item.expression, Letter):
        exact = notation.letter_value(value, in_degrees(figure, item.expression))
        return Answer(f"{item.expression.name} = {write(exact)}", exact, item.expression.name)
    angular = any(isinstance(size, Angular) for size in item.form.terms)
    unit = "°" if angular else notation.length_unit
    exact = notation.value(LinearForm.number(value), unit)
    return Answer(write(exact), exact)


def _answered(
    figure: Figure, settled: tuple[Settled, ...], wanted: list[Wanted], givens: tuple[Given, ...], notation: Notation
) -> Outcome:
    groups: dict[tuple[Fraction | None, ...], Settled] = {}
    for one in settled:
        groups.setdefault(one.values, one)
    outcomes = []
    for values, one in groups.items():
        agreed = all(
            value is not None and agrees_with_drawing(one.arrangement, item.form, value)
            for item, value in zip(wanted, values, strict=True)
        )
        if not agreed:
            return NotRead("elimination and the figure drawn from the givens disagree")
        derivation = _derivation(one, wanted, values, givens, notation)
        if derivation is None:
            found = ", ".join(
                answer_of(i, v or Fraction(0), figure, notation).text for i, v in zip(wanted, values, strict=True)
            )
            return NotRead(f"elimination gives {found}, but no chain of school theorems that reaches it was found")
        answers = tuple(
            answer_of(item, value or Fraction(0), figure, notation) for item, value in zip(wanted, values, strict=True)
        )
        outcomes.append((answers, derivation, one))
    if len(outcomes) == 1:
        answers, derivation, one = outcomes[0]
        return Derived(answers, (derivation,), positions(one.arrangement))
    cases = tuple(
        Case(f"{said(wanted, answers)} in one arrangement of the figure", answers, positions(one.arrangement))
        for answers, _, one in outcomes
    )
    every = tuple(dict.fromkeys(answer for answers, _, _ in outcomes for answer in answers))
    return Several(every, cases, tuple(derivation for _, derivation, _ in outcomes))


def _else_beyond(
    plain: Outcome,
    figure: Figure,
    settled: tuple[Settled, ...],
    wanted: list[Wanted],
    givens: tuple[Given, ...],
    notation: Notation,
) -> Outcome:
    """The lines of the search beyond linear relations to what elimination found, where the plain search has none.

    A sum may be settled while none of its terms is: BE + EA where EA = EC and BC = 12 cm.
    """
    if not isinstance(plain, NotRead) or len(settled) != 1:
        return plain
    from paperaudit.geometry import find_beyond as beyond  # loaded by need, as above

    further = beyond.unsettled(figure, settled, wanted, givens, notation)
    values = [value or Fraction(0) for value in settled[0].values]
    expected = tuple(answer_of(item, value, figure, notation) for item, value in zip(wanted, values, strict=True))
    return further if isinstance(further, Derived) and further.answers == expected else plain


def said(wanted: list[Wanted], answers: tuple[Answer, ...]) -> str:
    """What was asked for with its answers: ∠ABC = 40°, AB = 5 cm."""
    return ", ".join(
        answer.text if answer.letter else f"{write(item.expression)} = {answer.text}"
        for item, answer in zip(wanted, answers, strict=True)
    )


def _derivation(
    one: Settled,
    wanted: list[Wanted],
    values: tuple[Fraction | None, ...],
    givens: tuple[Given, ...],
    notation: Notation,
) -> Derivation | None:
    sizes = [size for item in wanted for size in one.arrangement.canonical_form(item.form).terms]
    found = derive_targets(one, sizes)
    if found is None or not measured_nodes_agree(found.arrangement, found.nodes):
        return None
    arrangement = found.arrangement
    reached = dict(zip(sizes, found.nodes, strict=True))
    working = Working(LineWriter(arrangement, notation), givens, found.words)
    for node in found.nodes:
        working.add(node)
    for item, value in zip(wanted, values, strict=True):
        form = one.arrangement.canonical_form(item.form)
        total = sum((v * reached[size].form.constant for size, v in form.terms.items()), Fraction(form.constant))
        if total != value:
            return None
        if not isinstance(item.expression, AngleOf | ArcOf | LengthOf | Letter):
            working.steps.append(_total_line(item, reached, one, notation, Fraction(total)))
        else:
            _copied(working, reached[next(iter(form.terms))])
    used = tuple(givens[label].text for label in sorted(working.used))
    return Derivation(tuple(working.steps), CONFIRMED, used)


def _copied(working: Working, node: Node) -> None:
    """A size that the question itself states still gets its line when it is asked for."""
    if not working.steps:
        text = working.add(node)
        working.steps.append(Step(text, StepKind.GIVEN, Reason("given"), (text,), text.split("= ")[-1]))


def _total_line(item: Wanted, reached: Mapping[Any, Node], one: Settled, notation: Notation, total: Fraction) -> Step:
    form = one.arrangement.canonical_form(item.form)
    angular = any(isinstance(size, Angular) for size in form.terms)
    unit = "°" if angular else notation.length_unit
    pieces = []
    for size, share in form.terms.items():
        text = write(notation.value(reached[size].form, unit))
        pieces.append(text if share == 1 else f"{write(number(Fraction(share)))} × {text}")
    value = write(notation.value(LinearForm.number(total), unit))
    statement = f"{write(item.expression)} = {' + '.join(pieces)} = {value}"
    skill = "adding angles" if angular else "perimeter"
    return Step(statement, StepKind.CALCULATION, None, tuple(pieces), value, skill)
