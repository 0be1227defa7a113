"""Trigonometric expressions simplified, identities proved, exact values of special angles."""

from collections.abc import Mapping

from paperaudit.errors import NoValue
from paperaudit.maths.exact import NotSurd
from paperaudit.maths.trig.angles import RIGHT, angle_of, functions_in, with_functions
from paperaudit.maths.trig.measured import angle_letters, apart, measured
from paperaudit.maths.trig.radians import in_radians
from paperaudit.maths.trig.rewriting import Chain, chains, sorted_text
from paperaudit.maths.write import write
from paperaudit.model.derivation import Answer, Outcome
from paperaudit.model.expression import Expression, Function, Letter, Relation
from paperaudit.model.reading import Reading
from paperaudit.model.trig_task import ExactRatio, Identity, SimplerTrig
from paperaudit.strands.finishing import answer_of
from paperaudit.strands.numbers.working import Working, require

SKILL = "trigonometric identities"
_AT_ANGLES = "every line worked out at eight angles"


def simpler(task: SimplerTrig, reading: Reading) -> Outcome:
    """The expression brought to its shortest form by school identities."""
    _refuse_givens(reading)
    best = chains(task.expression)[0]
    _confirm(best)
    working = Working(SKILL)
    _say_in_degrees(task, working)
    _say(best, working)
    end = best.end if task.printed is None else in_radians(best.end)
    if end != best.end:
        working.say(f"= {write(end)}", write(end))
    return working.derived(Answer(write(end), best.end, kind="trigonometric form"), confirmed_by=_AT_ANGLES)


def _say_in_degrees(task: SimplerTrig | ExactRatio, working: Working) -> None:
    """The line from radians to degrees."""
    if task.printed is not None:
        working.say(f"π is 180°: {write(task.printed)} = {write(task.expression)}", write(task.expression))


def exact_ratio(task: ExactRatio, reading: Reading) -> Outcome:
    """The exact value of functions of special angles."""
    whole = task.expression
    if isinstance(whole, Function) and whole.name == "tan" and angle_of(whole.argument).degrees % 180 == RIGHT:
        working = Working("special angles")
        _say_in_degrees(task, working)
        working.say(f"cos {write(whole.argument)} = 0, so {write(whole)} is not defined", "undefined")
        return working.derived(Answer("undefined", kind="undefined"), confirmed_by="the denominator of sin/cos is 0")
    found = [chain for chain in chains(whole) if not functions_in(chain.end)]
    if not found:
        raise NotSurd("functions of angles whose values a pupil does not know")
    _confirm(found[0])
    working = Working("special angles")
    _say_in_degrees(task, working)
    _say(found[0], working)
    answer = answer_of(found[0].end)
    return working.derived(answer, confirmed_by="worked out again in floating point")


def identity(task: Identity, reading: Reading) -> Outcome:
    """Both sides brought to one expression; an equation that some angle contradicts is refuted by it."""
    left, right = task.relation.left, task.relation.right
    working = Working(SKILL)
    if task.radians:
        working.say("π is 180°", "")
    differs = apart(left, right)
    if differs is not None:
        _refuse_givens(reading)
        said = ", ".join(f"{name} = {_short(degrees)}°" for name, degrees in differs.items() if name in _names(task))
        sides = [f"the {name} side is {_near(side, differs)}" for name, side in (("left", left), ("right", right))]
        working.conclude(f"{f'for {said} ' if said else ''}{' and '.join(sides)}", "false")
        return working.derived(Answer(f"false: {working.steps[-1].statement}"), confirmed_by="worked out at an angle")
    if _is_definition(task.relation):
        return _by_definition(task.relation, working)
    one, other = _meeting(left, right)
    for chain in (one, other):
        _confirm(chain)
    _say(one, working, "left side = ")
    if len(other.lines) > 1:
        _say(other, working, "right side = ", uses=())
    working.conclude("left side = right side", "proved")
    return working.derived(Answer("proved"), confirmed_by=_AT_ANGLES)


_DEFINITIONS = {
    "sin² A + cos² A = 1": ("(y/r)² + (x/r)²", "(x² + y²)/r²", "r²/r² (theorem of Pythagoras: x² + y² = r²)", "1"),
    "tan A = sin A/cos A": ("(y/r)/(x/r)", "y/x", "tan A"),
}
"""The two identities from which the others follow, by the point (x, y) on the arm of the angle at the distance r."""


def _is_definition(relation: Relation) -> str:
    """Which of the two identities an equation is, in either order, with A for its angle; "" for another."""
    functions = [*functions_in(relation.left), *functions_in(relation.right)]
    argument = functions[0].argument if functions else None
    if any(function.argument != argument for function in functions):
        return ""
    plain = [
        with_functions(side, lambda function: Function(function.name, Letter("A")))
        for side in (relation.left, relation.right)
    ]
    said = {f"{sorted_text(one)} = {sorted_text(other)}" for one, other in (plain, plain[::-1])}
    known = {"(cos² A + sin² A) = 1": "sin² A + cos² A = 1", "tan A = sin A/cos A": "tan A = sin A/cos A"}
    return next((known[text] for text in said if text in known), "")


def _by_definition(relation: Relation, working: Working) -> Outcome:
    name = _is_definition(relation)
    letter = write(functions_in(relation.left)[0].argument)
    start = name.partition(" = ")[0] if "²" in name else name.rpartition(" = ")[2]
    working.say(f"{start} = {_DEFINITIONS[name][0]}".replace("A", letter), "", ())
    for line in _DEFINITIONS[name][1:]:
        working.say(f"= {line}".replace("A", letter), line.replace("A", letter))
    return working.derived(Answer("proved"), confirmed_by=_AT_ANGLES)


def _names(task: Identity) -> tuple[str, ...]:
    return (*angle_letters(task.relation.left), *angle_letters(task.relation.right))


def _short(degrees: float) -> str:
    return f"{degrees:g}"


def _near(side: Expression, degrees: Mapping[str, float]) -> str:
    value = measured(side, degrees)
    return f"{value:.4f}".replace("-", "−") if value is not None else "undefined"


def _meeting(left: Expression, right: Expression) -> tuple[Chain, Chain]:
    """Lines of both sides that end in the same expression, as few as there are."""
    pairs = [
        (len(one.lines) + 2 * len(other.lines), one, other)
        for one in _shown(left, right)
        for other in _shown(right, left)
        if sorted_text(one.end) == sorted_text(other.end)
    ]
    if not pairs:
        raise NotSurd("an identity that school rules did not bring to one form on both sides")
    _, one, other = min(pairs, key=lambda pair: pair[0])
    return one, other


def _shown(side: Expression, other: Expression) -> tuple[Chain, ...]:
    """The ways to rewrite a side, each cut off at every line."""
    found = chains(side, other)
    return tuple(Chain(chain.lines[:count]) for chain in found for count in range(1, len(chain.lines) + 1))


def _say(chain: Chain, working: Working, name: str = "", uses: tuple[str, ...] | None = None) -> None:
    first, *others = (write(line) for line in chain.lines)
    if not others or name:
        working.say(f"{name}{first}", first, uses)
    for place, line in enumerate(others):
        opening = f"{first} = " if not name and not place else "= "
        working.say(f"{opening}{line}", line)


def _confirm(chain: Chain) -> None:
    for line in chain.lines[1:]:
        require(apart(chain.lines[0], line) is None, f"the line {write(line)}")


def _refuse_givens(reading: Reading) -> None:
    if reading.givens:
        raise NoValue("the text states more than the identity, and that was not taken in")
