"""Makes mathematics_dataset 1.0.1 of 2018 run beside today's sympy and numpy.

It imports a name that sympy has moved, uses aliases that numpy 1.24 dropped, and a method of arrays that
numpy 2.0 dropped. Letters are drawn from sorted ones, so that the same seed gives the same questions each time.
"""

import importlib
from collections.abc import Callable, Iterable, Iterator
from functools import cache
from typing import Any

import numpy as np

ALIASES: dict[str, type] = {"int": int, "float": float, "bool": bool, "object": object}
Generator = Callable[[], Any]


class _Settable(np.ndarray[Any, Any]):
    """An array with `itemset`, as it was before numpy 2."""

    def itemset(self, at: Any, value: Any) -> None:
        self[at] = value


class _OlderNumpy:
    """numpy as one module of the package sees it: new arrays can be filled by `itemset`."""

    def __getattr__(self, name: str) -> Any:
        return getattr(np, name)

    @staticmethod
    def zeros(*arguments: Any, **named: Any) -> Any:
        return np.zeros(*arguments, **named).view(_Settable)

    @staticmethod
    def empty(*arguments: Any, **named: Any) -> Any:
        return np.empty(*arguments, **named).view(_Settable)


class _InOrder(frozenset[str]):
    """Letters that stand in the alphabet's order, however they are hashed."""

    def __iter__(self) -> Iterator[str]:
        return iter(sorted(super().__iter__()))

    def difference(self, *others: Iterable[object]) -> "_InOrder":
        return _InOrder(super().difference(*others))


@cache
def generators() -> dict[str, Generator]:
    """Every question type of the package, "numbers.gcd", with the function that makes one question of it.

    The whole range of difficulty of its training questions, as its own command makes them.
    """
    for name, kind in ALIASES.items():
        if name not in vars(np):
            setattr(np, name, kind)
    moved = importlib.import_module("sympy.solvers.diophantine")
    solver = importlib.import_module("sympy.solvers.diophantine.diophantine")
    vars(moved)["base_solution_linear"] = solver.base_solution_linear
    modules = importlib.import_module("mathematics_dataset.modules.modules")
    vars(importlib.import_module("mathematics_dataset.sample.polynomials"))["np"] = _OlderNumpy()
    letters = vars(importlib.import_module("mathematics_dataset.util.composition"))
    letters["_ALLOWED_SYMBOLS"] = _InOrder(letters["_ALLOWED_SYMBOLS"])
    topics = modules.train(lambda whole_range: whole_range)
    return {f"{topic}.{name}": make for topic, types in topics.items() for name, make in types.items()}
