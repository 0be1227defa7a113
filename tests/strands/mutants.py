"""Derivations broken by machine: one operator, comparison or number of a function changed, and what comes of it.

`python -m tests.strands.mutants [--each N] [--seed S] [MODULE…]` changes N places of every function of the named
modules of `paperaudit/strands/` (all of them by default), puts the small questions of the fixtures that reach the
function, and prints those that got another answer. An answer that a second way has not confirmed must never come out.
"""

import argparse
import ast
import inspect
import random
import signal
import sys
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from functools import cache
from importlib import import_module
from pathlib import Path
from types import CodeType, FrameType, FunctionType, ModuleType
from typing import Any

import paperaudit.strands
from paperaudit.model.derivation import Derived, NotRead, Outcome, Several
from paperaudit.model.reading import Reading
from paperaudit.strands.registry import derive
from tests.strands.asked import cases
from tests.strands.told import reading_of

PACKAGE = Path(paperaudit.strands.__file__).parent
MOST_CASES = 6
"""Questions put to one mutant."""

SECONDS = 4
"""After this long a mutant counts as one that gives no answer."""

FILES = (
    "number", "numbers", "numbers-worded", "ratios", "money", "solids", "equations", "algebra", "coordinates",
    "sequences", "functions", "trigonometry", "transformations", "statistics", "statistics-told", "probability",
    "chance-told", "measures-told", "words",
)  # fmt: skip
_OPERATORS: dict[type[ast.operator], ast.operator] = {
    ast.Add: ast.Sub(), ast.Sub: ast.Add(), ast.Mult: ast.Div(), ast.Div: ast.Mult(), ast.FloorDiv: ast.Mult(),
    ast.Mod: ast.FloorDiv(), ast.Pow: ast.Mult(),
}  # fmt: skip
_COMPARISONS: dict[type[ast.cmpop], ast.cmpop] = {
    ast.Lt: ast.LtE(), ast.LtE: ast.Lt(), ast.Gt: ast.GtE(), ast.GtE: ast.Gt(), ast.Eq: ast.NotEq(),
    ast.NotEq: ast.Eq(), ast.In: ast.NotIn(), ast.NotIn: ast.In(), ast.Is: ast.IsNot(), ast.IsNot: ast.Is(),
}  # fmt: skip
_GRAMMARS = {
    f"paperaudit.maths.{name}"
    for name in ("beginnings", "grammar", "matching", "needed_letters", "parse", "peg", "peg_reader", "shapes")
}
_NAMES = {"min": "max", "max": "min", "any": "all", "all": "any"}


@dataclass(frozen=True)
class Put:
    """A small question, read, with the answer that the sound program derives."""

    words: str
    reading: Reading
    outcome: Outcome

    @property
    def answer(self) -> tuple[str, ...]:
        """The answers, or the verdict in their place."""
        return answer_of(self.outcome)


@dataclass(frozen=True)
class Survivor:
    """A mutant that led to another answer, with the question and both answers."""

    place: str
    change: str
    words: str
    right: tuple[str, ...]
    wrong: tuple[str, ...]


def answer_of(outcome: Outcome) -> tuple[str, ...]:
    """What is said of a part: its answers, or the verdict that takes their place; () where it is declined."""
    match outcome:
        case NotRead():
            return ()
        case Derived() | Several():
            return (type(outcome).__name__, *(answer.text for answer in outcome.answers))
    return (type(outcome).__name__,)


def _derived(reading: Reading) -> tuple[str, ...]:
    """The answer; an error of a broken program leaves a part unread in the audit, so it counts as declined."""
    before = signal.signal(signal.SIGALRM, _out_of_time)
    signal.setitimer(signal.ITIMER_REAL, SECONDS)
    try:
        return answer_of(derive(reading)[1])
    except Exception:
        return ()
    finally:
        signal.setitimer(signal.ITIMER_REAL, 0)
        signal.signal(signal.SIGALRM, before)


def _out_of_time(_signal: int, _frame: FrameType | None) -> None:
    raise TimeoutError


@cache
def questions() -> tuple[Put, ...]:
    """Every small question of the fixtures that is answered."""
    found = []
    for case in (case for name in FILES for case in cases(name)):
        told = {"ask": case[0]} if isinstance(case, list) else case
        if not all(isinstance(told.get(key, ""), str) for key in ("text", "part", "ask")) or not isinstance(
            told.get("table", {}), dict
        ):
            continue
        reading = reading_of({key: told[key] for key in ("text", "part", "ask", "given", "table") if told.get(key)})
        if reading.ask is None or reading.unread:
            continue
        outcome = derive(reading)[1]
        if answer_of(outcome):
            words = " ".join(str(told[key]) for key in ("text", "part", "ask", "given") if told.get(key))
            found.append(Put(words, reading, outcome))
    return tuple(found)


@cache
def reached() -> dict[CodeType, tuple[Put, ...]]:
    """The questions that reach each function."""
    found: dict[CodeType, list[Put]] = {}
    for put in questions():
        seen: set[CodeType] = set()

        def note(frame: FrameType, event: str, _: Any, seen: set[CodeType] = seen) -> None:
            if event == "call":
                seen.add(frame.f_code)

        sys.setprofile(note)
        try:
            _derived(put.reading)
        finally:
            sys.setprofile(None)
        for code in seen:
            found.setdefault(code, []).append(put)
    return {code: tuple(puts) for code, puts in found.items()}


def functions(module: ModuleType) -> Iterator[FunctionType]:
    """The functions and methods that a module defines, behind their caches."""
    for value in list(vars(module).values()):
        inside = vars(value).values() if inspect.isclass(value) and value.__module__ == module.__name__ else (value,)
        for one in inside:
            one = inspect.unwrap(getattr(one, "func", getattr(one, "fget", one)) or one)
            if isinstance(one, FunctionType) and one.__module__ == module.__name__:
                yield one


def _places(tree: ast.AST) -> list[tuple[ast.AST, Callable[[], None], str]]:
    """What can be changed in a function: the node, the change, and the change in words."""
    found: list[tuple[ast.AST, Callable[[], None], str]] = []

    def add(node: ast.AST, name: str, value: Any) -> None:
        found.append((node, lambda: setattr(node, name, value), f"{name} → {_said(value)}"))

    for node in ast.walk(tree):
        match node:
            case ast.BinOp(op=operator) | ast.AugAssign(op=operator) if type(operator) in _OPERATORS:
                add(node, "op", _OPERATORS[type(operator)])
            case ast.Compare(ops=[comparison]) if type(comparison) in _COMPARISONS:
                add(node, "ops", [_COMPARISONS[type(comparison)]])
            case ast.Constant(value=bool()):
                add(node, "value", not node.value)
            case ast.Constant(value=int()):
                add(node, "value", node.value + 1)
            case ast.BoolOp(op=operator):
                add(node, "op", ast.Or() if isinstance(operator, ast.And) else ast.And())
            case ast.UnaryOp(op=ast.USub()):
                add(node, "op", ast.UAdd())
            case ast.UnaryOp(op=ast.Not()):
                add(node, "operand", ast.UnaryOp(ast.Not(), node.operand))
            case ast.Name(id=name) if name in _NAMES:
                add(node, "id", _NAMES[name])
            case ast.Call(args=[one, two]) if not isinstance(node.func, ast.Name) or node.func.id != "isinstance":
                add(node, "args", [two, one])
    return found


def _said(value: Any) -> str:
    if isinstance(value, list):
        return ", ".join(map(_said, value))
    return (
        ast.unparse(value)
        if isinstance(value, ast.expr)
        else getattr(type(value), "__name__", "") + str("" if isinstance(value, ast.AST) else f" {value}")
    )


def _codes(code: CodeType) -> Iterator[CodeType]:
    for constant in code.co_consts:
        if isinstance(constant, CodeType):
            yield constant
            yield from _codes(constant)


def mutants(module: ModuleType, each: int, chance: random.Random) -> Iterator[tuple[FunctionType, CodeType, str]]:
    """A function of the module, the code of it with one change, and the change in words."""
    source = inspect.getsource(module)
    for function in functions(module):
        name, line = function.__code__.co_qualname, function.__code__.co_firstlineno
        count = len(_places(_definition(ast.parse(source), name, line)))
        for place in sorted(chance.sample(range(count), min(each, count))):
            tree = ast.parse(source)
            node, change, said = _places(_definition(tree, name, line))[place]
            before = ast.unparse(node)
            change()
            ast.fix_missing_locations(tree)
            compiled = compile(tree, module.__file__ or "", "exec")
            code = next(code for code in _codes(compiled) if code.co_qualname == name and code.co_firstlineno == line)
            if code.co_freevars == function.__code__.co_freevars:
                yield function, code, f"line {getattr(node, 'lineno', line)}: {before}: {said}"


def _definition(tree: ast.AST, name: str, line: int) -> ast.AST:
    """The definition of a function; its first line is that of its decorators."""
    last = name.rpartition(".")[2]
    for node in ast.walk(tree):
        if isinstance(node, ast.FunctionDef) and node.name == last:
            first = min([node.lineno, *(decorator.lineno for decorator in node.decorator_list)])
            if first == line:
                return node
        if isinstance(node, ast.Lambda) and last == "<lambda>" and node.lineno == line:
            return node
    return ast.Module([], [])


def survivors(module: ModuleType, each: int, chance: random.Random) -> tuple[int, list[Survivor]]:
    """How many mutants were tried, and those that changed an answer."""
    tried, found = 0, []
    for function, code, change in mutants(module, each, chance):
        sound = function.__code__
        puts = reached().get(sound, ())
        if not puts:
            continue
        tried += 1
        function.__code__ = code
        forget()
        try:
            for put in chance.sample(puts, min(MOST_CASES, len(puts))):
                answer = _derived(put.reading)
                if answer and answer != put.answer:
                    place = f"{module.__name__.removeprefix('paperaudit.')}.{code.co_qualname}"
                    found.append(Survivor(place, change, put.words, put.answer, answer))
                    break
        finally:
            function.__code__ = sound
            forget()
    return tried, found


def forget() -> None:
    """Empties the caches that a mutant may have filled; grammars stay compiled."""
    for name, module in list(sys.modules.items()):
        if name.startswith("paperaudit.strands") or (name.startswith("paperaudit.maths") and name not in _GRAMMARS):
            for value in list(vars(module).values()):
                if hasattr(value, "cache_clear"):
                    value.cache_clear()


def modules(names: list[str]) -> list[str]:
    """The modules of the strands, those whose name holds one of the given ones."""
    every = sorted(
        str(path.relative_to(PACKAGE.parent.parent).with_suffix("")).replace("/", ".")
        for path in PACKAGE.rglob("*.py")
        if path.name != "__init__.py"
    )
    return [name for name in every if not names or any(part in name for part in names)]


def main() -> None:
    """Prints the survivors of every module, and how many mutants were tried."""
    parser = argparse.ArgumentParser(description=(__doc__ or "").partition("\n")[0])
    parser.add_argument("modules", nargs="*")
    parser.add_argument("--each", type=int, default=4)
    parser.add_argument("--seed", type=int, default=1)
    options = parser.parse_args()
    total = 0
    for name in modules(options.modules):
        tried, found = survivors(import_module(name), options.each, random.Random(f"{options.seed} {name}"))
        total += tried
        print(f"{name}: {tried} tried, {len(found)} changed an answer", flush=True)
        for one in found:
            print(f"  {one.place}, {one.change}\n    {one.words}\n    {one.right} became {one.wrong}", flush=True)
    print(f"{total} mutants")


if __name__ == "__main__":
    main()
