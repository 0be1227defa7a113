"""Strands that take the tasks of one topic: by a table of derivations, and loaded when a part has such a task."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from importlib import import_module
from typing import Any, TypeAlias

from paperaudit.model.derivation import Outcome
from paperaudit.model.reading import Reading
from paperaudit.strands.refusals import or_not_read
from paperaudit.strands.strand import Strand

Derivations: TypeAlias = Mapping[type, Callable[[Any, Reading], Outcome]]
"""By the kind of task."""


@dataclass(frozen=True, slots=True)
class StrandByTask:
    """A strand that takes every task for which its table has a derivation."""

    name: str
    derivations: Derivations

    def recognises(self, reading: Reading) -> bool:
        """Whether the ask is one of these tasks."""
        return reading.ask is not None and type(reading.ask.task) in self.derivations

    def derive(self, reading: Reading) -> Outcome:
        """The answer with its lines, or NotRead with what stopped it."""
        assert reading.ask is not None
        task = reading.ask.task
        return or_not_read(lambda: self.derivations[type(task)](task, reading))


@dataclass(frozen=True, slots=True)
class Awaited:
    """A strand that takes tasks of its own topics, or has their facts as givens, and nothing else.

    The `STRAND` of its module is loaded with the first of them. `tasks` names the modules of `model/` that hold the
    tasks and the facts.
    """

    name: str
    module: str
    tasks: tuple[str, ...]

    def recognises(self, reading: Reading) -> bool:
        """Whether the ask is a task of this strand."""
        if reading.ask is None:
            return False
        told = (reading.ask.task, *(fact for given in reading.givens for fact in given.facts))
        if not any(type(one).__module__.rpartition(".")[2] in self.tasks for one in told):
            return False
        return self._strand().recognises(reading)

    def derive(self, reading: Reading) -> Outcome:
        """What the strand makes of the part."""
        return self._strand().derive(reading)

    def _strand(self) -> Strand:
        strand: Strand = import_module(f"{__package__}.{self.module}").STRAND
        return strand
