"""Answers for sizes that linear relations do not settle: the search beyond them, worked out and checked."""

import math
from collections.abc import Iterator, Sequence
from contextlib import suppress
from dataclasses import dataclass
from fractions import Fraction
from itertools import chain, islice

from paperaudit.errors import BudgetExceeded
from paperaudit.geometry.beyond.amounts import NoExactValue, Value, fraction_of
from paperaudit.geometry.beyond.drawn_in import drawn_in, drawn_in_first
from paperaudit.geometry.beyond.further import Further, Path
from paperaudit.geometry.beyond.further_answers import unit_of
from paperaudit.geometry.beyond.further_lines import FurtherWorking
from paperaudit.geometry.beyond.further_texts import Texts
from paperaudit.geometry.beyond.other_roots import figures_with, set_aside
from paperaudit.geometry.beyond.reached import Fact
from paperaudit.geometry.beyond.spelled import spelled
from paperaudit.geometry.beyond.values import SIZED, Values
from paperaudit.geometry.budget import Budget
from paperaudit.geometry.coordinates.arrangement import Arrangement
from paperaudit.geometry.coordinates.drawn import is_special
from paperaudit.geometry.coordinates.solutions import other_solutions
from paperaudit.geometry.figure.canonical import canonical
from paperaudit.geometry.figure.figure import Figure, Size
from paperaudit.geometry.figure.notation import Notation
from paperaudit.geometry.linear.examine import Settled
from paperaudit.geometry.linear.line_writer import LineWriter
from paperaudit.geometry.linear.theory import close
from paperaudit.geometry.linear.working import Working
from paperaudit.geometry.theorems import instances
from paperaudit.geometry.theorems.further import SKILLS
from paperaudit.geometry.theorems.theorem import Equation
from paperaudit.maths.cancelling import is_number
from paperaudit.maths.write import write
from paperaudit.model.derivation import Derivation, Reason, Step, StepKind
from paperaudit.model.expression import Expression, Letter
from paperaudit.model.fact import Given

CONFIRMED = "every line worked exactly, and measured on the figure drawn from the givens"

MOST_PATHS = 6
"""Derivations that are tried until one can be worked out exactly."""
SMALL, CLOSE = 150, 1e-9
"""A decimal within this share of a fraction with no larger denominator is taken to come from an exact value."""
SAME = 1e-6
"""Share of a value within which two figures count as having the same answer."""


@dataclass(frozen=True, slots=True)
class Attempt:
    """One arrangement's answer: the value of each thing asked for, its derivation, and roots that were set aside.

    `may_be_exact` says of a derivation with rounded numbers that an exact one is likely.
    """

    arrangement: Arrangement
    values: tuple[Value, ...]
    derivation: Derivation
    set_aside: tuple[tuple[Size, Value], ...]
    may_be_exact: bool = False


def attempts(
    figure: Figure,
    settled: Sequence[Settled],
    asked: Sequence[Expression],
    givens: tuple[Given, ...],
    notation: Notation,
    deep: bool = False,
    budget: Budget | None = None,
) -> list[Attempt] | None:
    """One attempt for every arrangement and every root that another figure has; None where one is not derived.

    Only a `deep` search introduces letters and draws lines in. Raises BudgetExceeded.
    """
    found: list[Attempt] = []
    budget = budget or Budget()
    for one in settled:
        attempt = attempted(one, asked, givens, notation, deep, budget)
        if attempt is None:
            return None
        if not any(_has_values(one.arrangement, asked, known) for known in found):
            found.append(attempt)
        elsewhere = other_solutions(one.arrangement, asked) if _leaves_a_choice(one, attempt) else ()
        for other in chain(figures_with(one.arrangement.figure, attempt.set_aside), elsewhere):
            if is_special(figure, other.drawing) or any(_has_values(other, asked, known) for known in found):
                continue
            further = attempted(_settled(other), asked, givens, notation, deep, budget)
            if further is None:
                return None
            found.append(further)
    return found


def _leaves_a_choice(one: Settled, attempt: Attempt) -> bool:
    """Whether another figure may have another answer.

    A sketch settles the arrangement; in it a root that was set aside leaves a choice, and a line that was drawn in,
    since the sketch does not say on which side of a corner its foot falls.
    """
    drawn_in = any(step.kind is StepKind.CONSTRUCTION for step in attempt.derivation.steps)
    return bool(attempt.set_aside) or drawn_in or not one.arrangement.figure.sketch


def _has_values(arrangement: Arrangement, asked: Sequence[Expression], attempt: Attempt) -> bool:
    """Whether a figure measures what an attempt has found."""
    return all(
        math.isclose(arrangement.measured(item), value.number, rel_tol=SAME)
        for item, value in zip(asked, attempt.values, strict=True)
    )


def _settled(arrangement: Arrangement) -> Settled:
    found = tuple(instances(arrangement))
    return Settled(arrangement, close(arrangement, found), found, ())


def attempted(
    one: Settled,
    asked: Sequence[Expression],
    givens: tuple[Given, ...],
    notation: Notation,
    deep: bool = False,
    budget: Budget | None = None,
) -> Attempt | None:
    """The first derivation that can be worked out, an exact one before one that rounds on its way.

    A `deep` search introduces letters and draws lines in. Raises BudgetExceeded, unless something was found.
    """
    rounded: Attempt | None = None
    try:
        for attempt in _tried(one, asked, givens, notation, deep, budget or Budget()):
            if not any(value.approx and value.exact is None for value in attempt.values):
                return attempt
            rounded = rounded or attempt
            if not rounded.may_be_exact:
                break
    except BudgetExceeded:
        if rounded is None:
            raise
    return rounded


def _tried(
    one: Settled,
    asked: Sequence[Expression],
    givens: tuple[Given, ...],
    notation: Notation,
    deep: bool,
    budget: Budget,
) -> Iterator[Attempt]:
    """Derivations that can be worked out: without angles from their functions, with them, with lines drawn in."""
    if deep:
        yield from _without_letters(one, asked, givens, notation, budget)
    rounds = False
    for further, words in widened(one, budget, deep):
        for by_inverse in (False, True):
            if by_inverse and rounds:
                continue
            for path in islice(further.paths(asked, with_letters=deep, by_inverse=by_inverse), MOST_PATHS):
                try:
                    yield worked_out(further.arrangement, path, asked, givens, notation, words)
                except NoExactValue:
                    continue
                rounds = rounds or by_inverse
                break


def _without_letters(
    one: Settled, asked: Sequence[Expression], givens: tuple[Given, ...], notation: Notation, budget: Budget
) -> Iterator[Attempt]:
    """Derivations with the diagonals and the crossings of named quadrilaterals drawn in, no size called by a letter.

    Before these, radii and the axes of tangents. They are short where they lead on; a letter, tried first, would
    use up the budget.
    """
    for extended in drawn_in_first(one.arrangement):
        theory = close(extended.arrangement, extended.found)
        further = Further(extended.arrangement, theory, extended.found, (), budget)
        for path in islice(further.paths(asked, with_letters=False, by_inverse=False), 1):
            with suppress(NoExactValue):
                yield worked_out(further.arrangement, path, asked, givens, notation, {**one.words, **extended.words})


def looks_exact(value: Value) -> bool:
    """Whether a rounded value, or its square, is nearly a fraction of small numbers: an exact way is then likely."""
    if not value.approx:
        return False
    for number_of in (value.number, value.number**2):
        near = Fraction(number_of).limit_denominator(SMALL)
        if abs(float(near) - number_of) < CLOSE * abs(number_of):
            return True
    return False


def widened(one: Settled, budget: Budget, deep: bool) -> Iterator[tuple[Further, dict[str, str]]]:
    """The arrangement as it is, then, in a deep search, with lines drawn in that pupils draw."""
    yield Further(one.arrangement, one.theory, one.found, (), budget), one.words
    for extended in drawn_in(one.arrangement) if deep else ():
        theory = close(extended.arrangement, extended.found)
        yield Further(extended.arrangement, theory, extended.found, (), budget), {**one.words, **extended.words}


def worked_out(
    arrangement: Arrangement,
    path: Path,
    asked: Sequence[Expression],
    givens: tuple[Given, ...],
    notation: Notation,
    words: dict[str, str],
) -> Attempt:
    """The values and lines of a path, each worked exactly and measured; raises NoExactValue."""
    unknowns: dict[Expression, float] = {Letter(name): value for name, value in arrangement.drawing.letters.items()}
    unknowns.update({letter: arrangement.measured(size) for size, letter in path.introduced})
    values = Values(arrangement.measured, unknowns)
    texts = Texts(arrangement, notation)
    working = FurtherWorking(Working(LineWriter(arrangement, notation), givens, words), values, texts)
    found = []
    for item, fact in zip(asked, path.facts, strict=True):
        working.add(fact)
        if fact.kind in SIZED:
            found.append(values.of(fact))
            _copied(working, fact)
        else:
            meant = fact.source.right if isinstance(fact.source, Equation) else canonical(item, arrangement)
            value = fraction_of(meant, values.given(fact))
            if is_number(value.fraction) and not math.isclose(value.number, arrangement.measured(item), rel_tol=SAME):
                raise NoExactValue("a ratio that the drawing does not have")
            found.append(value)
            step = _total(item, value, fact, values, texts)
            working.working.draw_in(step.statement)
            working.working.steps.append(step)
    if not all(is_number(value.fraction) for value in found):
        raise NoExactValue("an answer in sizes that are not known")
    used = tuple(givens[label].text for label in sorted(working.working.used))
    derivation = Derivation(_each_once(working.working.steps), CONFIRMED, used)
    return Attempt(
        arrangement, tuple(found), derivation, set_aside(path, values), any(map(looks_exact, values.rounded_lengths()))
    )


def _each_once(steps: Sequence[Step]) -> tuple[Step, ...]:
    """The lines without those that were written before: "Let ∠BAC = t" for two of its consequences."""
    first: dict[tuple[str, StepKind], Step] = {}
    for step in steps:
        first.setdefault((step.statement, step.kind), step)
    return tuple(first.values())


def _copied(working: FurtherWorking, fact: Fact) -> None:
    """A size that the question itself states still gets its line when it is asked for."""
    if not working.working.steps:
        text = working.add(fact)
        working.working.steps.append(Step(text, StepKind.GIVEN, Reason("given"), (text,), text.split("= ")[-1]))


def _total(item: Expression, value: Value, fact: Fact, values: Values, texts: Texts) -> Step:
    """The last line of an expression asked for: AB : BC, AB + BC, sin ∠A."""
    given = values.given(fact)
    source = fact.source if isinstance(fact.source, Equation) else None
    meant = source.right if source else canonical(item, texts.arrangement)
    put = write(texts.put_in(meant, given))
    said = spelled(value, unit_of(item, texts.notation))
    middle = f" = {put}" if put != said.split(" ≈ ")[0] else ""
    sign = "≈" if value.approx and value.exact is None else "="
    uses = tuple(texts.value_claim(before, values) for before in fact.inputs if before.kind in SIZED)
    if source is None:
        return Step(f"{write(texts.named(item))}{middle} {sign} {said}", StepKind.CALCULATION, None, uses, said)
    middle = "".join(f" = {text}" for text in dict.fromkeys((write(texts.named(meant)), put)) if text != said)
    line, reason = f"{write(texts.named(item))}{middle} {sign} {said}", Reason(source.theorem, source.about)
    return Step(line, StepKind.STATEMENT, reason, uses, said, SKILLS.get(source.theorem, ""))
