"""Puts a question in the statement language through the wording and the geometry strand."""

from collections.abc import Iterable, Mapping

from paperaudit.model.derivation import Outcome
from paperaudit.model.paper import Line, Part, Question
from paperaudit.model.reading import Reading
from paperaudit.strands.geometry import GeometryStrand
from paperaudit.wording import read

Sketch = Mapping[str, tuple[float, float]]


def outcome(
    figure: Iterable[str] = (), given: Iterable[str] = (), ask: str = "", sketch: Sketch | None = None, text: str = ""
) -> Outcome:
    """The strand's outcome; a statement that the wording cannot read fails the test that asks."""
    reading = reading_of(figure, given, ask, sketch, text)
    strand = GeometryStrand()
    assert strand.recognises(reading), reading.ask
    return strand.derive(reading)


def reading_of(
    figure: Iterable[str] = (), given: Iterable[str] = (), ask: str = "", sketch: Sketch | None = None, text: str = ""
) -> Reading:
    """What the wording makes of a question; a statement that it cannot read fails the test that asks."""
    part = Part(id="1", number="1", ask=Line(ask) if ask else None)
    question = Question(
        "1",
        (part,),
        text=Line(text) if text else None,
        figure=tuple(Line(line) for line in figure),
        given=tuple(Line(line) for line in given),
        sketch=tuple((name, float(x), float(y)) for name, (x, y) in (sketch or {}).items()),
    )
    reading = read(question, part)
    assert not reading.unread, reading.unread
    return reading


def answers(result: Outcome) -> list[str]:
    """The texts of the answers, empty where the outcome has none."""
    return [answer.text for answer in getattr(result, "answers", ())]
