"""One ratio of an angle from another: sin A = 3/5, A obtuse, so cos A = −4/5."""

from fractions import Fraction
from math import atan2, degrees, lcm

from paperaudit.errors import NoValue
from paperaudit.maths.exact import ExactValue, NotSurd, exact_expression, exact_value
from paperaudit.maths.parts import with_parts
from paperaudit.maths.plane_curves import decimal_of
from paperaudit.maths.surd import Surd
from paperaudit.maths.trig.angles import Angle, angle_of, functions_in, with_functions
from paperaudit.maths.trig.measured import measured
from paperaudit.maths.trig.rewriting import chains
from paperaudit.maths.write import write
from paperaudit.model.derivation import Answer, Case, Derivation, Derived, Impossible, Outcome, Several
from paperaudit.model.expression import Expression, Function, Letter, Product, Quotient
from paperaudit.model.reading import Reading
from paperaudit.model.trig_task import RatioFrom
from paperaudit.strands.finishing import answer_of
from paperaudit.strands.numbers.working import Working, exact, require
from paperaudit.strands.waves.single_ratio import ratio_values

SKILL = "trigonometric ratios"
_CLOSE = 1e-9
Sides = tuple[ExactValue, ExactValue, ExactValue]
"""x, y and r of the point on the arm of an angle."""


def ratio_from(task: RatioFrom, reading: Reading) -> Outcome:
    """The wanted expression, by the point (x, y) on the arm of the angle at the distance r."""
    name, value = _given(task)
    if name != "tan" and abs(decimal_of(value)) > 1:
        says = f"{name} {task.letter} = {write(exact_expression(value))}"
        return Impossible((write(task.relation),), (says, f"a {_WORD[name]} lies between −1 and 1: {says} is false"))
    found = [sides for sides in _all_sides(name, value) if _fits(sides, task)]
    if not found:
        where = _where(task)
        return Impossible(
            (write(task.relation), where),
            (f"{name} {task.letter} = {write(exact_expression(value))} is false for every angle with {where}",),
        )
    worked = [_derived(task, name, value, sides) for sides in found]
    texts = dict.fromkeys(answer.text for answer, _ in worked)
    if len(texts) > 1:
        cases = tuple(
            Case(f"{task.letter} = {_angle_text(sides)} gives {answer.text}", (answer,))
            for sides, (answer, _) in zip(found, worked, strict=True)
        )
        return Several(tuple(answer for answer, _ in worked), cases, tuple(one for _, one in worked))
    answer, derivation = worked[0]
    return Derived((answer,), (derivation,))


_WORD = {"sin": "sine", "cos": "cosine", "tan": "tangent"}


def _given(task: RatioFrom) -> tuple[str, ExactValue]:
    ratio, values = ratio_values(task.relation, task.letter)
    angle = angle_of(ratio.argument)
    if angle != Angle(Fraction(0), ((task.letter, Fraction(1)),)) or len(values) != 1:
        raise NotSurd("a given that is not one ratio of the angle")
    return ratio.name, values[0]


def _all_sides(name: str, value: ExactValue) -> list[Sides]:
    """The points that the ratio allows, one in each quadrant where it has the value."""
    top, bottom = _parts(value)
    if name == "tan":
        far = _root(_square(top) + _square(bottom))
        return [(bottom, top, far), (_minus(bottom), _minus(top), far)]
    beside = _root(_square(bottom) - _square(top))
    others = [beside, _minus(beside)] if decimal_of(beside) else [beside]
    return [(other, top, bottom) if name == "sin" else (top, other, bottom) for other in others]


def _parts(value: ExactValue) -> tuple[ExactValue, ExactValue]:
    """A numerator and a positive denominator."""
    if isinstance(value, Fraction):
        return Fraction(value.numerator), Fraction(value.denominator)
    below = lcm(*(share.denominator for share in value.parts.values()))
    return value * Surd.rational(below), Fraction(below)


def _square(value: ExactValue) -> Fraction:
    if isinstance(value, Fraction):
        return value * value
    squared = (value * value).fraction
    if squared is None:
        raise NotSurd("a root of a root")
    return squared


def _root(square: Fraction) -> ExactValue:
    root = Surd.root(square)
    return root if root.fraction is None else root.fraction


def _minus(value: ExactValue) -> ExactValue:
    return -value


def _fits(sides: Sides, task: RatioFrom) -> bool:
    x, y, _ = (float(decimal_of(side)) for side in sides)
    signs = {"sin": y, "cos": x, "tan": x * y}
    if any(signs[name] * sign <= 0 for name, sign in task.signs):
        return False
    if task.low is None or task.high is None:
        return True
    low, high = float(exact(task.low)), float(exact(task.high))
    angle = degrees(atan2(y, x))
    return any(low - _CLOSE <= angle + 360 * turn <= high + _CLOSE for turn in range(-2, 4))


def _where(task: RatioFrom) -> str:
    said = [f"{name} {task.letter} {'>' if sign > 0 else '<'} 0" for name, sign in task.signs]
    if task.low is not None and task.high is not None:
        said.insert(0, f"{write(task.low)}° < {task.letter} < {write(task.high)}°")
    return " and ".join(said) or "that value"


def _angle_text(sides: Sides) -> str:
    x, y, _ = (float(decimal_of(side)) for side in sides)
    return f"{round(degrees(atan2(y, x)) % 360, 1):g}°"


def _text(value: ExactValue) -> str:
    return write(exact_expression(value))


def _derived(task: RatioFrom, name: str, value: ExactValue, sides: Sides) -> tuple[Answer, Derivation]:
    x, y, r = sides
    working = Working(SKILL)
    given = f"{name} {task.letter} = {_text(value)}"
    known = {"sin": ("y", y, "r", r), "cos": ("x", x, "r", r), "tan": ("y", y, "x", x)}[name]
    working.say(f"{given}: {known[0]} = {_text(known[1])}, {known[2]} = {_text(known[3])}", given)
    bracket = [f"({_text(side)})²" if decimal_of(side) < 0 or not isinstance(side, Fraction) else f"{_text(side)}²"
               for side in (x, y, r)]  # fmt: skip
    if name == "tan":
        working.say(f"r = √({bracket[0]} + {bracket[1]}) = {_text(r)}", _text(r))
    elif name == "sin":
        sign = "−" if decimal_of(x) < 0 else ""
        working.say(f"x = {sign}√({bracket[2]} − {bracket[1]}) = {_text(x)}", _text(x))
    else:
        sign = "−" if decimal_of(y) < 0 else ""
        working.say(f"y = {sign}√({bracket[2]} − {bracket[0]}) = {_text(y)}", _text(y))
    require(_square(x) + _square(y) == _square(r), "the sides")
    result = _worked(task, sides, working)
    _confirm(task, sides, result)
    answer = answer_of(result)
    return answer, Derivation(tuple(working.steps), "worked out again from the angle itself, in floating point", ())


def _worked(task: RatioFrom, sides: Sides, working: Working) -> Expression:
    """The wanted expression in plain ratios of the angle, these put in, and the value."""
    plain = {Function("sin", Letter(task.letter)), Function("cos", Letter(task.letter)),
             Function("tan", Letter(task.letter))}  # fmt: skip
    lines: tuple[Expression, ...] = (task.wanted,)
    if not set(functions_in(task.wanted)) <= plain:
        lines = min(
            (
                chain.lines[: count + 1]
                for chain in chains(task.wanted)
                for count in range(len(chain.lines))
                if set(functions_in(chain.lines[count])) <= plain
            ),
            key=len,
            default=(),
        )
        if not lines:
            raise NotSurd("an expression in other angles")
    x, y, r = sides
    shares = {"sin": _over(y, r), "cos": _over(x, r), "tan": _over(y, x)}
    if not decimal_of(sides[0]) and any(function.name == "tan" for function in functions_in(lines[-1])):
        raise NoValue(f"tan {task.letter} is not defined")
    put = with_functions(_signed_products(lines[-1]), lambda function: shares[function.name])
    for place, line in enumerate(lines[1:]):
        working.say(f"{write(lines[0])} = {write(line)}" if not place else f"= {write(line)}", write(line))
    value = exact_expression(exact_value(put))
    opening = f"{write(task.wanted)} = " if len(lines) == 1 else "= "
    shown = write(put)
    working.say(f"{opening}{shown}", shown)
    if write(value) != shown:
        working.say(f"= {write(value)}", write(value))
    return value


def _over(above: ExactValue, below: ExactValue) -> Expression:
    top = exact_expression(above)
    return top if below == 1 else Quotient(top, exact_expression(below))


def _signed_products(expression: Expression) -> Expression:
    changed = with_parts(expression, _signed_products)
    return Product(changed.factors, "×") if isinstance(changed, Product) else changed


def _confirm(task: RatioFrom, sides: Sides, result: Expression) -> None:
    x, y, _ = (float(decimal_of(side)) for side in sides)
    angle = degrees(atan2(y, x))
    one = measured(task.wanted, {task.letter: angle})
    other = measured(result, {})
    require(one is not None and other is not None and abs(one - other) < _CLOSE * max(1, abs(one)), "the ratio")
    left, right = (
        measured(task.relation.left, {task.letter: angle}),
        measured(task.relation.right, {task.letter: angle}),
    )
    require(left is not None and right is not None and abs(left - right) < _CLOSE * 10, "the angle")
