"""Answers for sizes that linear relations do not settle: the search beyond them, worked out and checked."""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from itertools import chain, islice

from paperaudit.geometry.amounts import NoExactValue, Value, as_fraction, fraction_of
from paperaudit.geometry.arrangement import Arrangement
from paperaudit.geometry.canonical import canonical
from paperaudit.geometry.constructions import with_crossings, with_extensions, with_parallels, with_radii
from paperaudit.geometry.diagonals import with_diagonals
from paperaudit.geometry.drawn import FIRST_SEEDS
from paperaudit.geometry.examine import Settled
from paperaudit.geometry.figure import Angular, Figure, Size, SizeRelation
from paperaudit.geometry.further import Further, Path
from paperaudit.geometry.further_lines import FurtherWorking
from paperaudit.geometry.further_texts import Texts
from paperaudit.geometry.line_writer import LineWriter
from paperaudit.geometry.notation import Notation, number
from paperaudit.geometry.reached import Budget, Fact
from paperaudit.geometry.realise import realise
from paperaudit.geometry.sketch import FROM_SKETCH
from paperaudit.geometry.solutions import other_solutions
from paperaudit.geometry.spelled import size_unit, spelled
from paperaudit.geometry.theorems import instances
from paperaudit.geometry.theory import close
from paperaudit.geometry.values import SIZED, Values
from paperaudit.geometry.working import Working
from paperaudit.maths.cancelling import fraction_expression, is_number
from paperaudit.maths.linear import LinearForm
from paperaudit.maths.write import write
from paperaudit.model.derivation import Answer, Derivation, Reason, Step, StepKind
from paperaudit.model.expression import (
    AngleOf,
    Expression,
    LengthOf,
    Letter,
    Measured,
    Negative,
    Number,
    PerimeterOf,
    Sum,
    leaves,
)
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
    """One arrangement's answer: the value of each thing asked for, its derivation, and roots that were set aside."""

    arrangement: Arrangement
    values: tuple[Value, ...]
    derivation: Derivation
    set_aside: tuple[tuple[Size, Value], ...]


def attempts(
    figure: Figure,
    settled: Sequence[Settled],
    asked: Sequence[Expression],
    givens: tuple[Given, ...],
    notation: Notation,
    deep: bool = False,
) -> list[Attempt] | None:
    """One attempt for every arrangement and every root that another figure has; None where one is not derived.

    Only a `deep` search introduces letters and draws lines in. Raises BudgetExceeded.
    """
    found: list[Attempt] = []
    for one in settled:
        attempt = attempted(one, asked, givens, notation, deep)
        if attempt is None:
            return None
        if not any(_has_values(one.arrangement, asked, known) for known in found):
            found.append(attempt)
        for other in chain(_with_other_roots(figure, attempt), other_solutions(one.arrangement, asked)):
            if any(_has_values(other, asked, known) for known in found):
                continue
            further = attempted(_settled(other), asked, givens, notation, deep)
            if further is None:
                return None
            found.append(further)
    return found


def _has_values(arrangement: Arrangement, asked: Sequence[Expression], attempt: Attempt) -> bool:
    """Whether a figure measures what an attempt has found."""
    return all(
        math.isclose(arrangement.measured(item), value.number, rel_tol=SAME)
        for item, value in zip(asked, attempt.values, strict=True)
    )


def _with_other_roots(figure: Figure, attempt: Attempt) -> Iterator[Arrangement]:
    """Figures that meet every given and have one of the roots that the derivation set aside."""
    for size, value in attempt.set_aside:
        kind = "angle" if isinstance(size, Angular) else "length" if isinstance(size, LengthOf) else "letters"
        aim = Fraction(value.number).limit_denominator(10**9)
        pinned = SizeRelation(LinearForm.of(size) - LinearForm.number(aim), kind, FROM_SKETCH)  # type: ignore[arg-type]
        base = attempt.arrangement.figure
        if not set(figure.points) >= set(base.points):
            base = figure
        drawings = realise(replace(base, conditions=(*base.conditions, pinned)), FIRST_SEEDS)
        if drawings:
            yield Arrangement(base, drawings[0])


def _settled(arrangement: Arrangement) -> Settled:
    found = tuple(instances(arrangement))
    return Settled(arrangement, close(arrangement, found), found, ())


def attempted(
    one: Settled, asked: Sequence[Expression], givens: tuple[Given, ...], notation: Notation, deep: bool = False
) -> Attempt | None:
    """The first derivation that can be worked out, an exact one before one that rounds on its way.

    A `deep` search introduces letters and draws lines in.
    """
    budget = Budget()
    rounded: Attempt | None = None
    for further, words in widened(one, budget, deep):
        for by_inverse in (False, True):
            if rounded and (by_inverse or not any(looks_exact(value) for value in rounded.values)):
                break
            for path in islice(further.paths(asked, with_letters=deep, by_inverse=by_inverse), MOST_PATHS):
                try:
                    attempt = worked_out(further.arrangement, path, asked, givens, notation, words)
                except NoExactValue:
                    continue
                if not any(value.approx and value.exact is None for value in attempt.values):
                    return attempt
                rounded = rounded or attempt
                break
    return rounded


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
    """The arrangement as it is, then, in a deep search, with radii, diagonals, crossings, parallels, extensions."""
    yield Further(one.arrangement, one.theory, one.found, (), budget), one.words
    for construct in (with_radii, with_diagonals, with_crossings, with_parallels, with_extensions) if deep else ():
        extended = construct(one.arrangement)
        if extended:
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
            value = fraction_of(canonical(item, arrangement), values.given(fact))
            found.append(value)
            working.working.steps.append(_total(item, value, fact, values, texts))
    used = tuple(givens[label].text for label in sorted(working.working.used))
    derivation = Derivation(tuple(working.working.steps), CONFIRMED, used)
    return Attempt(arrangement, tuple(found), derivation, _set_aside(path, values))


def _copied(working: FurtherWorking, fact: Fact) -> None:
    """A size that the question itself states still gets its line when it is asked for."""
    if not working.working.steps:
        text = working.add(fact)
        working.working.steps.append(Step(text, StepKind.GIVEN, Reason("given"), (text,), text.split("= ")[-1]))


def _total(item: Expression, value: Value, fact: Fact, values: Values, texts: Texts) -> Step:
    """The last line of an expression asked for: AB : BC, AB + BC, sin ∠A."""
    given = values.given(fact)
    put = write(texts.put_in(canonical(item, texts.arrangement), given))
    said = spelled(value, unit_of(item, texts.notation))
    middle = f" = {put}" if put != said.split(" ≈ ")[0] else ""
    sign = "≈" if value.approx and value.exact is None else "="
    uses = tuple(texts.value_claim(before, values) for before in fact.inputs if before.kind in SIZED)
    return Step(f"{write(texts.named(item))}{middle} {sign} {said}", StepKind.CALCULATION, None, uses, said)


def unit_of(item: Expression, notation: Notation) -> str:
    """The unit of an expression asked for: that of its sizes where it is a sum of them, none for a ratio."""
    match item:
        case Sum(terms):
            units = {unit_of(term, notation) for term in terms} - {""}
            return units.pop() if len(units) == 1 else ""
        case Negative(operand):
            return unit_of(operand, notation)
        case PerimeterOf():
            return notation.length_unit
        case _ if item in leaves(item) and not isinstance(item, Letter | Number):
            return size_unit(item, notation.length_unit)
    return ""


def _set_aside(path: Path, values: Values) -> tuple[tuple[Size, Value], ...]:
    """Roots that the path's equations have besides those of the figure and that could be a size."""
    introduced = {letter: size for size, letter in path.introduced}
    seen: dict[int, Fact] = {}
    pending = list(path.facts)
    while pending:
        fact = pending.pop()
        if id(fact) not in seen:
            seen[id(fact)] = fact
            pending.extend(fact.inputs)
    found: list[tuple[Size, Value]] = []
    for key, fact in seen.items():
        solved = values.solved.get(key)
        for other in solved.others if solved else ():
            size = introduced.get(fact.size, fact.size) if isinstance(fact.size, Letter) else fact.size
            if _could_be(size, other) and not math.isclose(other.number, solved.chosen.number, rel_tol=SAME):  # type: ignore[union-attr]
                found.append((size, other))
    return tuple(found)


def _could_be(size: Size, value: Value) -> bool:
    if not is_number(value.fraction):
        return False
    if isinstance(size, Letter):
        return True
    return value.number > 0 and not (isinstance(size, AngleOf) and value.number >= 180)


def answer_of(item: Expression, value: Value, notation: Notation, about_angles: bool) -> Answer:
    """The answer's text and exact value with its unit."""
    if isinstance(item, Letter):
        unit = "°" if about_angles and not notation.bare_letters else ""
        return Answer(f"{item.name} = {spelled(value, unit)}", _exact(value, unit), item.name, _is_rounded(value))
    unit = unit_of(item, notation)
    return Answer(spelled(value, unit), _exact(value, unit), rounded=_is_rounded(value))


def _is_rounded(value: Value) -> bool:
    return value.approx and value.exact is None


def _exact(value: Value, unit: str) -> Expression:
    rational = as_fraction(value)
    if rational is not None:
        amount: Expression = number(rational)
    elif value.approx:
        amount = value.exact or Number(_endless(value.number))
    else:
        amount = fraction_expression(value.fraction)
    return Measured(amount, unit) if unit else amount


def _endless(value: float) -> Fraction:
    """A fraction with endless decimals within 1e-13 of a rounded value, so that it is compared as one that has none."""
    scale = 10 ** max(0, 13 - len(str(int(abs(value)))))
    return Fraction(round(value * scale) * 3 + 1, 3 * scale)
