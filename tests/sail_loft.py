"""Audited parts and papers made by hand, for tests of what comes after the audit."""

from dataclasses import replace
from fractions import Fraction

from paperaudit.model.ask import Accuracy, Ask, Establish, Find, Solve
from paperaudit.model.audited import AuditedPaper, AuditedPart
from paperaudit.model.derivation import (
    Answer,
    Derivation,
    Derived,
    Impossible,
    NotDetermined,
    NotRead,
    Reason,
    Step,
    StepKind,
)
from paperaudit.model.expression import AngleOf, Letter, Measured, Number, NumberForm, Relation
from paperaudit.model.fact import Parallel
from paperaudit.model.finding import Finding, Severity
from paperaudit.model.paper import Line, Paper, Part, Question, Section
from paperaudit.model.reading import Reading

S, E, A, C = StepKind.STATEMENT, StepKind.EQUATION, StepKind.ALGEBRA, StepKind.CALCULATION

PANEL = Question(
    "1",
    (),
    text=Line("The sketch shows one panel of a sail. Its seam AB is as long as its seam AC."),
    figure=(Line("triangle ABC, BC is produced to D"),),
    given=(Line("AB = AC"), Line("∠ACD = 112°")),
    total=9,
)
BOOM = Question("2", (), text=Line("The boom of the Kittiwake is x metres longer than her mast."))
TANK = Question("3", (), text=Line("A water tank in the loft holds 240 litres. It is filled to 65% of its capacity."))
HULL = Question("4", (), figure=(Line("AB ∥ CD, line EF cuts AB at G and CD at H"),), given=(Line("∠EGB = ∠EHD"),))

PANEL_STEPS = (
    Step("∠ACB = 180° − 112° = 68°", S, Reason("angles-on-a-line"), ("∠ACD = 112°",), "68°"),
    Step(
        "∠ABC = ∠ACB = 68°",
        S,
        Reason("isosceles-base-angles", "AB = AC"),
        ("AB = AC", "∠ACB = 180° − 112° = 68°"),
        "68°",
    ),
)
APEX_STEPS = (
    *PANEL_STEPS,
    Step("∠BAC = 180° − 68° − 68° = 44°", S, Reason("angle-sum-triangle", "△ABC"), ("∠ABC = ∠ACB = 68°",), "44°"),
)
SOLVING_STEPS = (
    Step("3(x − 4) = 2x + 5", StepKind.GIVEN, Reason("given"), (), ""),
    Step("3x − 12 = 2x + 5", A, None, ("3(x − 4) = 2x + 5",), ""),
    Step("3x − 2x = 5 + 12", A, None, ("3x − 12 = 2x + 5",), ""),
    Step("x = 17", A, None, ("3x − 2x = 5 + 12",), "x = 17"),
)
SHARE_STEPS = (
    Step("65% of 240 = 65/100 × 240", C, None, (), ""),
    Step("= 156 litres", C, None, ("65% of 240 = 65/100 × 240",), "156 litres"),
)
PARALLEL_STEPS = (
    Step("∠EGB = ∠EHD", StepKind.GIVEN, Reason("given"), (), ""),
    Step(
        "AB ∥ CD",
        StepKind.CONCLUSION,
        Reason("corresponding-angles-converse", "∠EGB = ∠EHD"),
        ("∠EGB = ∠EHD",),
        "AB ∥ CD",
    ),
)
PANEL_FIGURE = (("A", 30.0, 74.3), ("B", 0.0, 0.0), ("C", 60.0, 0.0), ("D", 95.0, 0.0))


def degrees(size: int) -> Answer:
    return Answer(f"{size}°", Measured(Number(Fraction(size)), "°"))


def angle(
    part: str, number: str, steps: tuple[Step, ...], size: int, marks: int | None, **written: object
) -> AuditedPart:
    """A part that asks for an angle of the panel."""
    text = written.pop("text", None)
    reasons = bool(written.pop("reasons", False))
    paper_part = Part(
        part,
        number,
        text=Line(str(text)) if text else None,
        ask=Line("∠ABC"),
        marks=marks,
        reasons=reasons or None,
        **written,
    )  # type: ignore[arg-type]
    ask = Ask(Find((AngleOf("A", "B", "C"),)), "∠ABC", reasons=reasons)
    outcome = Derived((degrees(size),), (Derivation(steps, "measured on the figure"),), PANEL_FIGURE)
    return AuditedPart(PANEL, paper_part, Reading(PANEL, paper_part, (), ask), outcome, "confirmed", strand="geometry")


def base_angle(marks: int | None = 3, **written: object) -> AuditedPart:
    written.setdefault("text", "Calculate, giving reasons, the size of ∠ABC.")
    written.setdefault("reasons", True)
    return angle("1.a", "a", PANEL_STEPS, 68, marks, **written)


def apex_angle(marks: int | None = 6) -> AuditedPart:
    return angle("1.b", "b", APEX_STEPS, 44, marks, text="Hence find ∠BAC.", reasons=True)


def equation(marks: int | None = 3, **written: object) -> AuditedPart:
    part = Part("2", "2", text=Line("Solve for x."), ask=Line("solve 3(x − 4) = 2x + 5"), marks=marks, **written)  # type: ignore[arg-type]
    left, right = Letter("x"), Number(Fraction(17))
    ask = Ask(Solve((Relation(left, "=", right),), ("x",)), "solve 3(x − 4) = 2x + 5")
    outcome = Derived((Answer("x = 17", right, "x"),), (Derivation(SOLVING_STEPS, "put back into the equation"),))
    return AuditedPart(BOOM, part, Reading(BOOM, part, (), ask), outcome, "confirmed", strand="equations")


def share(marks: int | None = 2) -> AuditedPart:
    part = Part("3", "3", text=Line("How much water is in it?"), ask=Line("65% of 240 litres"), marks=marks)
    value = Measured(Number(Fraction(156)), "litre")
    ask = Ask(Find((value,)), "65% of 240 litres", accuracy=Accuracy("nearest", "1"))
    outcome = Derived((Answer("156 litres", value),), (Derivation(SHARE_STEPS, "worked out as a fraction"),))
    return AuditedPart(TANK, part, Reading(TANK, part, (), ask), outcome, "derived", strand="number")


def proof(marks: int | None = 2) -> AuditedPart:
    part = Part("4", "4", text=Line("Prove that AB ∥ CD."), marks=marks, reasons=True)
    ask = Ask(Establish((Parallel((("A", "B"), ("C", "D"))),), "prove"), "prove that AB ∥ CD", reasons=True)
    outcome = Derived((Answer("proved"),), (Derivation(PARALLEL_STEPS, "measured on the figure"),))
    return AuditedPart(HULL, part, Reading(HULL, part, (), ask), outcome, "derived", strand="geometry")


def half(marks: int | None = 1) -> AuditedPart:
    """A multiple-choice part with a fraction for its answer."""
    options = tuple((letter, Line(text)) for letter, text in (("A", "1/4"), ("B", "1/2"), ("C", "2/3"), ("D", "3/4")))
    question = Question("5", (), text=Line("Six of the twelve buoys in the harbour are red."))
    text = Line("What fraction of the buoys is red?")
    part = Part("5", "5", text=text, answer=Line("B"), options=options, marks=marks)
    value = Number(Fraction(1, 2), NumberForm.FRACTION)
    steps = (Step("6/12 = 1/2", C, None, (), "1/2"),)
    outcome = Derived((Answer("1/2", value),), (Derivation(steps, "as decimals"),))
    return AuditedPart(question, part, Reading(question, part, (), Ask(Find((value,)), "6/12")), outcome, "confirmed")


def not_read(text: str = "Describe how the sailmaker found her mistake.") -> AuditedPart:
    question = Question("6", ())
    part = Part("6", "6", text=Line(text), answer=Line("She measured the wrong seam."), marks=2)
    outcome = NotRead("the task asks for a description, which this program cannot derive")
    return AuditedPart(question, part, Reading(question, part, (), None), outcome, "not-read")


def impossible() -> AuditedPart:
    question = Question("7", (), figure=(Line("triangle PQR"),), given=(Line("∠P = 100°"), Line("∠Q = 95°")))
    part = Part("7", "7", ask=Line("∠R"), answer=Line("15°"), marks=2)
    outcome = Impossible(("∠P = 100°", "∠Q = 95°"), ("100° + 95° > 180°",))
    return AuditedPart(question, part, Reading(question, part, (), None), outcome, "impossible")


def open_part() -> AuditedPart:
    question = Question("8", (), figure=(Line("triangle STU"),), given=(Line("∠S = 40°"),))
    part = Part("8", "8", ask=Line("∠T"), marks=1)
    return AuditedPart(question, part, Reading(question, part, (), None), NotDetermined(()), "not-determined")


def paper(*parts: AuditedPart, title: str = "Harbour Loft School: Term 2 test", **cover: object) -> AuditedPaper:
    """A paper of these parts, every question with the parts that name it."""
    sound = (base_angle(), apex_angle(), equation(), share(), proof(), half())
    chosen = parts or (*sound, not_read(), impossible(), open_part())
    numbers = tuple(dict.fromkeys(part.question.number for part in chosen))
    questions = {}
    for number in numbers:
        own = [part for part in chosen if part.question.number == number]
        questions[number] = replace(own[0].question, parts=tuple(part.part for part in own))
    written: dict[str, object] = {"level": "Grade 9", "minutes": 30, "total": 24, "marking": "statement-reason"} | cover
    whole = Paper(title, (Section(tuple(questions.values())),), **written)  # type: ignore[arg-type]
    audited = tuple(replace(part, question=questions[part.question.number]) for part in chosen)
    finding = Finding("impossible-givens", Severity.ERROR, "Nothing satisfies ∠P = 100° and ∠Q = 95°.", "7")
    return AuditedPaper(whole, audited, (finding,) if any(part.part.id == "7" for part in chosen) else ())
