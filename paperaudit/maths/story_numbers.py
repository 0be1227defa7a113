"""The numbers that the claims of a story hold, so that none of its text is lost."""

from collections.abc import Iterator
from dataclasses import fields, is_dataclass
from fractions import Fraction

from paperaudit.model.expression import Number
from paperaudit.model.story import StoryTask


def numbers_of(task: StoryTask) -> Iterator[Fraction]:
    """Every number that the claims and the asked sizes of a story hold, the parts of a ratio multiplied out."""
    return _numbers((task.said, task.wanted))


def _numbers(value: object) -> Iterator[Fraction]:
    if isinstance(value, Number):
        yield value.value
        yield from map(Fraction, value.value.as_integer_ratio())
    elif isinstance(value, tuple):
        for part in value:
            yield from _numbers(part)
    elif is_dataclass(value):
        for each in fields(value):
            yield from _numbers(getattr(value, each.name))
