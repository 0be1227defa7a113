"""Judges an outcome against a figure known from its coordinates, and counts what became of each family."""

import math
import re
from collections import Counter, defaultdict
from collections.abc import Mapping
from dataclasses import dataclass, field, replace

from paperaudit.model.derivation import (
    Answer,
    Case,
    Impossible,
    NotDetermined,
    NotRead,
    Outcome,
    Position,
    Several,
)
from paperaudit.model.expression import (
    Expression,
    Function,
    Letter,
    Measured,
    Negative,
    Number,
    Power,
    Product,
    Quotient,
    Root,
    Sum,
)
from paperaudit.model.paper import Line, Part, Question
from paperaudit.strands.geometry import GeometryStrand
from paperaudit.wording import read
from tests.geometry import measured_sizes
from tests.geometry.freedom import fitted_letters
from tests.geometry.measuring import CLOSE, gaps, rims_of
from tests.geometry.school_sheet import SchoolQuestion, turns

NEAR = 1e-6
"""How near an answer has to be to the truth, as a share of it."""

Verdict = str
SOLVED, SEVERAL, OPEN, IMPOSSIBLE = "solved", "several", "open", "impossible"
DECLINED, UNREAD, CRASHED, WRONG, ELSEWHERE = "declined", "unread", "crashed", "wrong", "elsewhere"
ORDER = (SOLVED, SEVERAL, OPEN, IMPOSSIBLE, ELSEWHERE, DECLINED, UNREAD, CRASHED, WRONG)


class NotUnderstood(Exception):
    """A statement or an ask that the wording or the strand does not take in."""


@dataclass(frozen=True)
class Judged:
    """What became of a question, and why."""

    verdict: Verdict
    why: str = ""


def outcome_of(question: SchoolQuestion) -> Outcome:
    """The strand's outcome; NotUnderstood names what was not read."""
    part = Part(id="1", number="1", ask=Line(question.ask))
    asked = Question(
        "1",
        (part,),
        figure=tuple(map(Line, question.figure)),
        given=tuple(map(Line, question.given)),
        sketch=tuple((name, float(x), float(y)) for name, (x, y) in question.sketch.items()),
    )
    reading = read(asked, part)
    if reading.unread:
        raise NotUnderstood("; ".join(unread.text for unread in reading.unread))
    strand = GeometryStrand()
    if not strand.recognises(reading):
        raise NotUnderstood(f"ask {question.ask}")
    return strand.derive(reading)


def value_of(expression: Expression) -> float:
    """The number that an exact answer is, degrees and units bare."""
    match expression:
        case Number(value):
            return float(value)
        case Letter("π"):
            return math.pi
        case Measured(amount):
            return value_of(amount)
        case Negative(operand):
            return -value_of(operand)
        case Sum(terms):
            return sum(map(value_of, terms))
        case Product(factors):
            return math.prod(map(value_of, factors))
        case Quotient(numerator, denominator):
            return value_of(numerator) / value_of(denominator)
        case Power(base, exponent):
            return float(value_of(base) ** value_of(exponent))
        case Root(radicand, degree):
            return float(value_of(radicand) ** (1 / degree))
        case Function(name, argument):
            inside = value_of(argument)
            if name.endswith("⁻¹"):
                inverse = {"sin⁻¹": math.asin, "cos⁻¹": math.acos, "tan⁻¹": math.atan}[name]
                return math.degrees(inverse(max(-1.0, min(1.0, inside)) if name != "tan⁻¹" else inside))
            return {"sin": math.sin, "cos": math.cos, "tan": math.tan}[name](math.radians(inside))
    raise ValueError(f"no value for {expression}")


def amount_of(answer: Answer) -> float:
    assert answer.value is not None, answer
    return value_of(answer.value)


def agrees(value: float, truth: float) -> bool:
    return abs(value - truth) <= NEAR * max(abs(truth), 1e-9)


def measured_case(question: SchoolQuestion, figure: tuple[Position, ...]) -> tuple[float | None, list[str]]:
    """What is asked, measured on an outcome's figure, and the statements that are false there."""
    spots = {name: (x, y) for name, x, y in figure}
    missing = [name for name in question.at if name not in spots]
    if missing:
        return None, [f"no point {name}" for name in missing]
    letters = fitted_letters(question.statements, spots, dict(question.letters))
    measured = measured_sizes.Measured(spots, letters, rims_of(question.statements))
    false = [line for line in question.statements if any(abs(gap) > CLOSE for gap in gaps(line, measured))]
    return measured.size(question.ask), false


def as_sketched(question: SchoolQuestion, figure: tuple[Position, ...]) -> bool:
    """Whether three points turn on an outcome's figure as they do on the true one, or all the other way."""
    spots = {name: (x, y) for name, x, y in figure if name in question.at}
    if len(spots) < len(question.at):
        return False
    true, now = turns(question.at), turns(spots)
    return any(all(turn == 0 or now[trio] == way * turn for trio, turn in true.items()) for way in (1, -1))


def judge(question: SchoolQuestion) -> Judged:
    """What became of a question that the coordinates answer."""
    try:
        result = outcome_of(question)
    except NotUnderstood as obstacle:
        return Judged(UNREAD, str(obstacle))
    except Exception as fault:
        return Judged(CRASHED, f"{type(fault).__name__}: {fault}")
    try:
        return judged(question, result)
    except ValueError as fault:
        return Judged(WRONG, f"{[answer.text for answer in getattr(result, 'answers', ())]}: {fault}")


def judged(question: SchoolQuestion, result: Outcome) -> Judged:
    match result:
        case NotRead(why):
            return Judged(DECLINED, why)
        case Impossible(clash):
            return Judged(WRONG, f"impossible: {clash}")
        case NotDetermined(cases):
            return judged_open(question, cases)
        case Several(answers):
            if any(agrees(amount_of(answer), question.truth) for answer in answers):
                return Judged(SEVERAL if question.loose else ELSEWHERE, "; ".join(a.text for a in answers))
            return Judged(WRONG, f"several, the true one not among them: {[a.text for a in answers]}")
    if not question.settled():
        return Judged(WRONG, f"derived {result.answers[0].text}, but it is open")
    value = amount_of(result.answers[0])
    if not agrees(value, question.truth):
        asked, false = measured_case(question, result.figure)
        if question.loose and not false and asked is not None and agrees(value, asked):
            return Judged(WRONG, f"derived {result.answers[0].text}, one answer of several")
        return Judged(WRONG, f"derived {result.answers[0].text}")
    asked, false = measured_case(question, result.figure)
    if false:
        return Judged(WRONG, f"right, but its figure makes false: {false}")
    if asked is None or abs(asked - question.truth) > CLOSE * max(1, abs(question.truth)):
        return Judged(WRONG, f"right, but its figure measures {asked}")
    return Judged(SOLVED)


def judged_open(question: SchoolQuestion, cases: tuple[Case, ...]) -> Judged:
    """An open outcome has to show two figures that meet every statement and differ."""
    found = []
    for case in cases:
        asked, false = measured_case(question, case.figure)
        if false:
            return Judged(WRONG, f"open, but its figure makes false: {false}")
        assert asked is not None
        found.append(asked)
    if max(found) - min(found) <= 1e-4 * max(map(abs, found)):
        return Judged(WRONG, f"open, but both figures measure {found}")
    if not question.settled():
        return Judged(OPEN)
    kept = [as_sketched(question, case.figure) for case in cases]
    return Judged(ELSEWHERE, f"open: {found}, drawn as sketched: {kept}")


def judge_open(question: SchoolQuestion, other: SchoolQuestion) -> Judged:
    """What became of a question that two figures, both known, answer differently."""
    try:
        result = outcome_of(question)
    except NotUnderstood as obstacle:
        return Judged(UNREAD, str(obstacle))
    except Exception as fault:
        return Judged(CRASHED, f"{type(fault).__name__}: {fault}")
    match result:
        case NotRead(why):
            return Judged(DECLINED, why)
        case NotDetermined(cases):
            return judged_open(question, cases)
        case Impossible(clash):
            return Judged(WRONG, f"impossible: {clash}")
    texts = [answer.text for answer in result.answers]
    return Judged(WRONG, f"answered {texts}, and {question.truth:.6g} and {other.truth:.6g} are possible")


def contradicted(question: SchoolQuestion, share: float) -> SchoolQuestion:
    """The same question with one more given: what is asked, but of another size."""
    value = round(question.truth * (1 + share), 1)
    return replace(question, given=(*question.given, f"{question.ask} = {value:g}{'°' if '∠' in question.ask else ''}"))


def judge_contradicted(question: SchoolQuestion) -> Judged:
    """What became of a question that nothing satisfies, in the arrangement that is sketched."""
    try:
        result = outcome_of(question)
    except NotUnderstood as obstacle:
        return Judged(UNREAD, str(obstacle))
    except Exception as fault:
        return Judged(CRASHED, f"{type(fault).__name__}: {fault}")
    match result:
        case NotRead(why):
            return Judged(DECLINED, why)
        case Impossible(clash):
            return Judged(IMPOSSIBLE) if clash else Judged(WRONG, "impossible without a clash")
    figures = [case.figure for case in getattr(result, "cases", ())] or [getattr(result, "figure", ())]
    for figure in figures:
        asked, false = measured_case(question, figure)
        if false or asked is None:
            return Judged(WRONG, f"{type(result).__name__}, its figure makes false: {false}")
    return Judged(ELSEWHERE, f"{type(result).__name__}: another arrangement meets it")


@dataclass
class Table:
    """Counts by family, and the first example of each verdict worth a look."""

    counts: dict[str, Counter[Verdict]] = field(default_factory=lambda: defaultdict(Counter))
    examples: dict[tuple[str, Verdict], tuple[SchoolQuestion, Judged]] = field(default_factory=dict)

    def add(self, family: str, question: SchoolQuestion, found: Judged) -> None:
        self.counts[family][found.verdict] += 1
        self.examples.setdefault((family, found.verdict), (question, found))

    def total(self) -> Counter[Verdict]:
        return sum(self.counts.values(), Counter())

    def wrong(self) -> list[str]:
        """Every family with a wrong outcome, by its first question."""
        return [
            f"{family} ({verdict}): {found.why}\n    {question.as_yaml()}"
            for (family, verdict), (question, found) in self.examples.items()
            if verdict in (WRONG, CRASHED)
        ]

    def lines(self, weights: Mapping[str, float] | None = None) -> list[str]:
        """The table, worst families first."""
        used = [verdict for verdict in ORDER if self.total()[verdict]]
        head = f"{'family':40}" + "".join(f"{verdict:>10}" for verdict in used) + "  first thing not read"
        rows = []
        for family, counts in sorted(self.counts.items(), key=lambda item: (_share(item[1]), item[0])):
            why = next(
                (
                    self.examples[(family, v)][1].why
                    for v in (WRONG, CRASHED, UNREAD, DECLINED)
                    if (family, v) in self.examples
                ),
                "",
            )
            weight = f" ({weights[family]:g})" if weights else ""
            rows.append(f"{family + weight:40}" + "".join(f"{counts[v] or '·':>10}" for v in used) + "  " + _short(why))
        total = self.total()
        return [head, *rows, f"{'all':40}" + "".join(f"{total[verdict]:>10}" for verdict in used)]


def _share(counts: Counter[Verdict]) -> float:
    return (counts[SOLVED] + counts[SEVERAL] + counts[OPEN] + counts[IMPOSSIBLE]) / sum(counts.values())


def _short(why: str) -> str:
    return re.sub(r"\s+", " ", why)[:90]
