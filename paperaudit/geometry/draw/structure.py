"""The figure of a reading as it is drawn: all that can be taken in of its givens, whatever follows from them."""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace

from paperaudit.geometry.figure.build import FigureBuilder
from paperaudit.geometry.figure.figure import Figure, SameWay
from paperaudit.geometry.figure.incidence import Unclear, drawn_paths
from paperaudit.geometry.figure.sizes import NotLinear
from paperaudit.geometry.figure.sketch import FROM_SKETCH
from paperaudit.model.ask import Establish, Find
from paperaudit.model.expression import Expression
from paperaudit.model.fact import Collinear, Drawn, Fact, Given, Parallel
from paperaudit.model.reading import Reading


class NotDrawable(Exception):
    """A figure whose statements or coordinates are not enough to draw it; caught where a drawing was asked for."""


def wanted(reading: Reading) -> tuple[Expression, ...]:
    """The sizes that are asked for; none where a claim is to be shown."""
    task = reading.ask.task if reading.ask else None
    return task.wanted if isinstance(task, Find) else ()


def structure(reading: Reading) -> tuple[FigureBuilder, Figure]:
    """The figure as the geometry strand builds it; statements that it cannot take in leave their lines. NotDrawable."""
    task = reading.ask.task if reading.ask else None
    asked: tuple[Expression | Fact, ...] = task.claims if isinstance(task, Establish) else wanted(reading)
    try:
        builder, figure = _built(reading, reading.givens, asked)
    except (Unclear, NotLinear):
        builder, figure = _built_in_part(reading, asked)
    # Lines that are claimed to be parallel stand as parallels do, but nothing marks them.
    claimed = [fact for fact in asked if isinstance(fact, Parallel)]
    named = [SameWay(fact.paths[0], other, FROM_SKETCH) for fact in claimed for other in fact.paths[1:]]
    return builder, replace(figure, conditions=(*figure.conditions, *named))


def _built(
    reading: Reading, givens: tuple[Given, ...], asked: Iterable[Expression | Fact]
) -> tuple[FigureBuilder, Figure]:
    builder = FigureBuilder(givens, asked)
    return builder, builder.figure(reading.sketch, wanted(reading))


def _built_in_part(reading: Reading, asked: Sequence[Expression | Fact]) -> tuple[FigureBuilder, Figure]:
    taken: tuple[Given, ...] = ()
    for given in reading.givens:
        facts: tuple[Fact, ...] = ()
        for fact in given.facts:
            try:
                _built(reading, (*taken, replace(given, facts=(*facts, fact))), ())
                facts = (*facts, fact)
            except (Unclear, NotLinear):
                facts = (*facts, *_lines_of(fact))
        taken = (*taken, replace(given, facts=facts))
    try:
        return _built(reading, taken, asked)
    except (Unclear, NotLinear) as obstacle:
        raise NotDrawable(str(obstacle)) from None


def _lines_of(fact: Fact) -> Iterator[Fact]:
    """The lines alone that a statement puts on the page."""
    for path in drawn_paths(fact):
        if len(path) > 2:
            yield Collinear(path, ordered=False)
        elif len(path) == 2:
            yield Drawn("segment", (path[0], path[1]))
