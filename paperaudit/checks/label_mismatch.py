"""The text, the ask or a given names a point or an angle that the figure does not have."""

from collections.abc import Iterator

from paperaudit.checks.check import Check
from paperaudit.checks.grounds.labels import points_named_in, points_of_ask, points_of_fact
from paperaudit.checks.grounds.words import called, listed
from paperaudit.model.audited import AuditedPaper, AuditedPart
from paperaudit.model.derivation import Derived, Several
from paperaudit.model.fact import AngleName, Holds, Origin, Shape
from paperaudit.model.finding import Finding, Severity
from paperaudit.model.reading import Reading


def find(audited: AuditedPaper) -> Iterator[Finding]:
    """One finding a part. Questions whose figure is not known at all are left to `figure-missing`.

    A derived answer proves that every point is there that it was derived about.
    """
    for audited_part in audited.parts:
        known = _points_there(audited_part)
        absent = [point for point in _points_named(audited_part) if point not in known]
        if known and absent:
            part, question = audited_part.part, audited_part.question
            noun = "the point" if len(absent) == 1 else "the points"
            yield CHECK.found(
                f"{called(question, part)} names {noun} {listed(absent)}, which the figure does not have.",
                part=part.id,
                places=(part.ask.place if part.ask else part.place, part.place, question.place),
                because=(f"points of the figure: {', '.join(sorted(known))}",),
                suggestion=f"Correct the letter, or say in the figure where {listed(absent)} "
                f"{'lies' if len(absent) == 1 else 'lie'}.",
            )


def _points_there(audited_part: AuditedPart) -> frozenset[str]:
    """The points that the figure has: those of every statement that says where points lie, and of the sketch.

    A size (∠ABD = 40°) does not draw what it speaks of; where only sizes are stated, there is no figure. Where an
    answer was derived, its givens and its ask have told enough of every point in them.
    """
    drawn = {
        point
        for given in audited_part.reading.givens
        for fact in given.facts
        if not isinstance(fact, Holds)
        for point in points_of_fact(fact)
    }
    if not drawn:
        return frozenset()
    derived = isinstance(audited_part.outcome, Derived | Several)
    return frozenset(
        {
            *drawn,
            *(point for point, *_ in audited_part.reading.sketch),
            *(_points_derived_about(audited_part.reading) if derived else ()),
        }
    ) - _corners_not_drawn(audited_part)


def _corners_not_drawn(audited_part: AuditedPart) -> set[str]:
    """Corners of a figure that the text names and the drawing shows with another letter: PQRT of a drawn PQRS.

    Only where the drawing was read from a page without a doubt, shows two other corners at least, and nothing else
    says where the corner is.
    """
    reading = audited_part.reading
    at = {point for point, *_ in reading.sketch}
    if not (audited_part.question.drawn or audited_part.part.drawn) or audited_part.part.doubts or not at:
        return set()
    corners: set[str] = set()
    placed: set[str] = set()
    for given in reading.givens:
        points = {point for fact in given.facts if not isinstance(fact, Holds) for point in points_of_fact(fact)}
        named = given.origin is Origin.TEXT and any(isinstance(fact, Shape) for fact in given.facts)
        (corners if named and len(points & at) > 1 else placed).update(points)
    return corners - placed - at


def _points_derived_about(reading: Reading) -> Iterator[str]:
    """The points of the givens and of the ask."""
    for given in reading.givens:
        for fact in given.facts:
            yield from points_of_fact(fact)
    if reading.ask is not None:
        yield from points_of_ask(reading.ask)


def _points_named(audited_part: AuditedPart) -> tuple[str, ...]:
    """The points that the text, the sizes and the ask speak of, each once, in order."""
    reading = audited_part.reading
    named: dict[str, None] = {}
    for line in (audited_part.question.text, audited_part.part.text):
        named.update(dict.fromkeys(points_named_in(line.text) if line else ()))
    for given in reading.givens:
        for fact in given.facts:
            if isinstance(fact, Holds | AngleName) and given.origin is not Origin.CONVENTION:
                named.update(dict.fromkeys(points_of_fact(fact)))
    if reading.ask is not None:
        named.update(dict.fromkeys(points_of_ask(reading.ask)))
    named.update(dict.fromkeys(sorted(_corners_not_drawn(audited_part))))
    return tuple(named)


CHECK = Check(
    name="label-mismatch",
    severity=Severity.ERROR,
    title="A point is named that the figure does not have",
    meaning="The text, a given or the ask names a point, and nothing in the figure says where that point is.",
    matters="Learners search the figure for a letter that is not there. Often a label was changed in the figure and "
    "not in the text.",
    mend="Use the same letters in the figure and in the text.",
    faulty="""
questions:
  - number: 1
    figure: triangle ABC
    given: [∠A = 70°, ∠B = 60°]
    ask: ∠ADB
    marks: 1
""",
    clean="""
questions:
  - number: 1
    figure: triangle ABC
    given: [∠A = 70°, ∠B = 60°]
    ask: ∠ACB
    answer: 50°
    marks: 1
""",
    find=find,
    alongside=("not-read", "not-determined"),
)
