"""Which givens an ask leads to: its letters and functions, and those that settle them."""

from collections.abc import Mapping, Sequence

from paperaudit.model.ask import Establish, Find, Rounded, Solve, Task, Transform, WriteAs
from paperaudit.model.expression import Expression, Quantity, leaves, letters_of
from paperaudit.model.fact import Holds
from paperaudit.model.topic import TopicTask
from paperaudit.strands.equation_checks import letters_in
from paperaudit.strands.functions_given import Formula
from paperaudit.strands.putting_in import expressions_in, functions_called, is_about_expressions
from paperaudit.strands.unknowns import Stated


def names_asked(task: Task, functions: Mapping[str, Formula]) -> tuple[str, ...] | None:
    """The letters of the ask, functions among them; None for an ask about a figure, or of another topic."""
    expressions = expressions_asked(task)
    called: tuple[str, ...] = ()
    if isinstance(task, TopicTask):
        called = functions_called(task) if is_about_expressions(task) else ()
        if not is_about_expressions(task) or set(called) - {*functions}:
            return None
    if expressions is None or any(isinstance(leaf, Quantity) for one in expressions for leaf in leaves(one)):
        return None
    return tuple(dict.fromkeys((*called, *(name for one in expressions for name in letters_of(one)))))


def expressions_asked(task: Task) -> Sequence[Expression] | None:
    """The expressions of a task; None for a task that has none, and for claims that are no equations."""
    match task:
        case Solve(relations):
            return [side for one in relations for side in (one.left, one.right)]
        case Transform(_, expression) | Rounded(expression) | WriteAs(expression):
            return [expression]
        case Find(wanted):
            return wanted
        case Establish(claims):
            held = [one.relation for one in claims if isinstance(one, Holds)]
            return [side for one in held for side in (one.left, one.right)] if len(held) == len(claims) else None
        case TopicTask():
            return expressions_in(task)
    return None


def needed(
    names: Sequence[str], equations: Sequence[Stated], functions: Mapping[str, Formula]
) -> tuple[list[Stated], dict[str, Formula]]:
    """The equations and functions that letters of the ask lead to, one through the other."""
    reached: set[str] = set()
    used: set[int] = set()
    waiting = {*names}
    while waiting - reached:
        reached |= waiting
        for name in reached & {*functions}:
            waiting.update(functions[name].others)
        for place, one in enumerate(equations):
            letters = _with_formulas(letters_in(one.relation), functions)
            if (reached - {*functions}) & letters:
                used.add(place)
                waiting.update(letters)
    return [equations[place] for place in sorted(used)], {
        name: functions[name] for name in functions if name in reached
    }


def _with_formulas(names: Sequence[str], functions: Mapping[str, Formula]) -> set[str]:
    """The names with the letters of the functions among them, and of the functions in these."""
    found, waiting = set[str](), [*names]
    while waiting:
        name = waiting.pop()
        if name not in found:
            found.add(name)
            waiting.extend(functions[name].others if name in functions else ())
    return found
