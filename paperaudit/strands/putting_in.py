"""The expressions in the tasks of topics, and these tasks with others in their place."""

from collections.abc import Callable
from dataclasses import fields, replace
from typing import Any, TypeAlias

from paperaudit.model.expression import Expression, Relation, letters_of
from paperaudit.model.topic import TopicTask

Change: TypeAlias = Callable[[Expression], Expression]
TOPICS = ("function_task", "graph_task", "algebra_task", "number_task")
"""The modules of `model/` whose tasks are about expressions: what is known of their letters can be put in."""


def is_about_expressions(task: TopicTask) -> bool:
    """Whether what the givens settle may be put into the task."""
    return _module(task) in TOPICS


def is_about_functions(task: TopicTask) -> bool:
    """Whether the task takes functions from the givens by their names."""
    return _module(task) in TOPICS[:2]


def is_about_numbers(task: TopicTask) -> bool:
    """Whether the derivation of the task puts in numbers that the givens state, in the form that they have there."""
    return _module(task) == "number_task"


def _module(task: object) -> str:
    return type(task).__module__.rpartition(".")[2]


def functions_called(task: TopicTask) -> tuple[str, ...]:
    """The names of the functions that the task takes from the givens."""
    if not is_about_functions(task):
        return ()
    # Tasks about functions are there with the first of them.
    from paperaudit.model.function_task import Function, ValueOf, WhereEqual

    if isinstance(task, ValueOf):
        return tuple(name.removesuffix("⁻¹") for name in task.names)
    if isinstance(task, WhereEqual):
        return tuple(filter(None, (task.name, task.other)))
    functions = [value for value in _values(task) if isinstance(value, Function)]
    return tuple(one.name for one in functions if one.formula is None)


def expressions_in(task: TopicTask) -> tuple[Expression, ...]:
    """Every expression of the task: arguments, values, formulas, both sides of equations."""
    found: list[Expression] = []

    def see(expression: Expression) -> Expression:
        found.append(expression)
        return expression

    put_into(task, see)
    return tuple(found)


def put_into(task: TopicTask, change: Change) -> TopicTask:
    """The task with every expression changed."""
    names = [one.name for one in fields(task)]
    changed = {name: _changed(value, change) for name, value in zip(names, _values(task), strict=True)}
    return _of_numbers(replace(task, **changed))


def _values(task: TopicTask) -> list[Any]:
    return [getattr(task, one.name) for one in fields(task)]


def _changed(value: Any, change: Change) -> Any:
    if isinstance(value, Expression):
        return change(value)
    if isinstance(value, Relation):
        return Relation(change(value.left), value.sign, change(value.right))
    if isinstance(value, tuple):
        return tuple(_changed(one, change) for one in value)
    formula = getattr(value, "formula", None)
    return value if formula is None else replace(value, formula=change(formula))


def _of_numbers(task: TopicTask) -> TopicTask:
    """A remainder of polynomials that has become one of numbers."""
    if _module(task) != "algebra_task":
        return task
    from paperaudit.model.algebra_task import DividedBy
    from paperaudit.model.number_task import Remainder

    if not isinstance(task, DividedBy) or task.asked != "remainder":
        return task
    open_letters = letters_of(task.dividend) or letters_of(task.divisor)
    return task if open_letters else Remainder(task.dividend, task.divisor)
