"""What each line of a derivation can earn under a convention, from nothing up to its most."""

import re
from collections.abc import Collection
from dataclasses import dataclass, replace

from paperaudit.marking.carried import carried_lines
from paperaudit.marking.convention import Convention, LineKind, Spot, Tariff
from paperaudit.marking.moves import Move, moves
from paperaudit.marking.reasons import routine
from paperaudit.model.derivation import Answer, Derivation, Step, StepKind

_OPERATION = re.compile(r"(?<=[\w°%)²³])\s*[+−×÷/·*-]\s*(?=[\w(√∠−-])")
_FRACTION = re.compile(r"\d+/\d+")
_ACCURACY = re.compile(r" \(to [^()]*\)$")
_EQUALS = re.compile(r"[=≤≥<>≈]")
_SEGMENT = re.compile(r"[A-Z]{2}")
_ANGLE = re.compile(r"∠([A-Z])([A-Z])([A-Z])")

Rung = tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Earning:
    """One line that can bear marks.

    `rungs` go up by one mark each; `floor` is the lowest that a fit may go to, `usual` the natural
    one. `routine` lines give up their marks before others do, and of lines of algebra and calculation those
    whose `move` is less of the method.
    """

    step: int
    kind: LineKind
    spot: Spot
    rungs: tuple[Rung, ...]
    floor: int
    usual: int
    routine: bool
    move: Move = Move.STEP


def earnings(
    derivation: Derivation,
    convention: Convention,
    reasons_required: bool,
    answers: tuple[Answer, ...] = (),
    known: Collection[str] = (),
) -> tuple[Earning, ...]:
    """The lines of a derivation that can bear marks, in order, with what each can earn.

    Lines that say what is `known` from an earlier part are left out, unless nothing else is there. The
    last of the rest is the answer's line, and so is one that states one of several answers ("x = 2").
    """
    steps = derivation.steps
    about_figure = any(step.kind is StepKind.STATEMENT for step in steps)
    kinds = {at: _kind(step, about_figure) for at, step in enumerate(steps) if not _only_restates(at, steps)}
    carried = carried_lines(derivation, known)
    new = [at for at in kinds if at not in carried]
    bearing = [at for at in new if kinds[at] != "given"] or new or list(kinds)
    texts = {answer.text for answer in answers} if len(answers) > 1 else set()
    carries = moves(steps)
    rewarded: set[str] = set()
    found = []
    for at in bearing:
        step = steps[at]
        reached = at == bearing[-1] or as_answer(step) in texts
        spot: Spot = "only line" if len(bearing) == 1 else "answer" if reached else "on the way"
        tariff = convention.tariff(kinds[at], spot, reasons_required and step.reason is not None)
        repeats = reasons_required and kinds[at] in ("statement", "equation") and _is_routine(step, rewarded)
        if reached:
            tariff = _for_each(tariff, sum(text in step.statement for text in texts))
        earning = _earning(at, kinds[at], spot, tariff, repeats, shows_working(step))
        found.append(replace(earning, move=carries[at], floor=int(at == bearing[-1])))
        if step.reason is not None:
            rewarded.add(step.reason.name)
    return tuple(found)


def as_answer(step: Step) -> str:
    """A line as an answer is printed: "x = 2.69" for "x ≈ 2.69 (to 2 decimal places)"."""
    return _ACCURACY.sub("", step.statement).replace("≈", "=")


def _for_each(tariff: Tariff, answers: int) -> Tariff:
    """A line that states several answers has a mark for each of two, at most three where it must bear more.

    M1 A1 A1 for a quadratic with two roots is common practice, no source.
    """
    if answers < 2 or len(tariff.usual) != 1:
        return tariff
    code = tariff.usual
    return replace(tariff, usual=code * 2, most=max(tariff.most, code * min(answers, 3), key=len))


def shows_working(step: Step) -> bool:
    """Whether a line shows method and value apart, so that each can have a mark of its own.

    Two operations do, or outside algebra one with its result behind it; a fraction's bar is none.

    >>> shows_working(Step("∠ACB = 180° − 112° = 68°", StepKind.STATEMENT))
    True
    >>> shows_working(Step("65% of 240 = 65/100 × 240", StepKind.CALCULATION))
    False
    """
    statement = _FRACTION.sub("1", step.statement)
    operations = len(_OPERATION.findall(statement))
    *_, result = _EQUALS.split(statement)
    in_algebra = step.kind in (StepKind.ALGEBRA, StepKind.EQUATION)
    return operations >= 2 or (operations == 1 and not in_algebra and not _OPERATION.search(result))


def _kind(step: Step, about_figure: bool) -> LineKind:
    """The row of the tariff: whatever is given is given, a conclusion with a theorem behind it is a statement."""
    if step.reason is not None and step.reason.name == "given":
        return "given"
    if step.kind is StepKind.CONCLUSION and step.reason is not None and step.reason.name not in routine():
        return "statement"
    if step.kind is StepKind.CALCULATION and about_figure:
        return "arithmetic"
    rows: dict[StepKind, LineKind] = {
        StepKind.GIVEN: "given",
        StepKind.STATEMENT: "statement",
        StepKind.EQUATION: "equation",
        StepKind.ALGEBRA: "algebra",
        StepKind.CALCULATION: "calculation",
        StepKind.CONSTRUCTION: "construction",
        StepKind.CONCLUSION: "conclusion",
    }
    return rows[step.kind]


def most_of(lines: tuple[Earning, ...]) -> int:
    """The most marks that lines bear together."""
    return sum(len(line.rungs) - 1 for line in lines)


def _only_restates(at: int, steps: tuple[Step, ...]) -> bool:
    """A line that another one says as well: of each such pair one counts.

    It stands above already; or the next line says it with its value (AB = CD, then CD = AB = 8 cm);
    or it is a conclusion that says again what the line before it has reached.
    """
    step = steps[at]
    if any(step.statement == earlier.statement for earlier in steps[:at]):
        return True
    if step.kind is StepKind.STATEMENT and at + 1 < len(steps) and _says_as_much(steps[at + 1], step):
        return True
    return step.kind is StepKind.CONCLUSION and at > 0 and bool(step.value) and step.value == steps[at - 1].value


def _says_as_much(later: Step, earlier: Step) -> bool:
    """Whether a statement says what an earlier one says in other words, for the same reason where that has one."""
    if later.kind is not StepKind.STATEMENT or later.statement == earlier.statement:
        return False
    same_reason = earlier.reason is None or (later.reason is not None and later.reason.name == earlier.reason.name)
    return same_reason and _sides(earlier) <= _sides(later)


def _sides(step: Step) -> frozenset[str]:
    """What a line sets equal, with CA for AC and ∠CBA for ∠ABC; nothing for a line of another form."""
    sides = (side.strip() for side in step.statement.split("="))
    named = (
        _ANGLE.sub(lambda found: f"∠{min(found[1], found[3])}{found[2]}{max(found[1], found[3])}", side)
        for side in sides
    )
    return frozenset("".join(sorted(side)) if _SEGMENT.fullmatch(side) else side for side in named)


def _is_routine(step: Step, rewarded: set[str]) -> bool:
    """A line whose reason is no theorem, or one that an earlier line has used."""
    return step.reason is not None and step.reason.name in rewarded | routine()


def _earning(at: int, kind: LineKind, spot: Spot, tariff: Tariff, is_routine: bool, splits: bool) -> Earning:
    rungs = _ladder((), tariff.least, tariff.usual, tariff.most if splits else ())
    return Earning(at, kind, spot, rungs, 0, len(tariff.least if is_routine else tariff.usual), is_routine)


def _ladder(*columns: Rung) -> tuple[Rung, ...]:
    """The columns as rungs that rise by one mark each; a gap is filled with the first codes of the next column."""
    rungs: list[Rung] = [()]
    for column in columns:
        rungs.extend(column[:count] for count in range(len(rungs), len(column) + 1))
    return tuple(rungs)
