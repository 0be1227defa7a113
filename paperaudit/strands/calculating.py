"""A calculation with numbers as a pupil's steps, and a second evaluation that every line must agree with."""

from collections.abc import Sequence
from fractions import Fraction

from paperaudit.errors import BudgetExceeded, NoValue
from paperaudit.maths.arithmetic import worked_lines
from paperaudit.maths.exact import NotSurd, rational_value
from paperaudit.maths.measure import unit_of, without_units
from paperaudit.maths.postfix import agree, decimal_value
from paperaudit.maths.settled import Numerals
from paperaudit.maths.surd_lines import has_roots, surd_lines
from paperaudit.maths.units import conversion
from paperaudit.maths.write import write
from paperaudit.model.derivation import Step, StepKind
from paperaudit.model.expression import (
    Expression,
    Letter,
    Measured,
    Negative,
    Number,
    NumberForm,
    Of,
    Power,
    Product,
    Quotient,
    Root,
    Sum,
    parts_of,
)
from paperaudit.strands.finishing import ChecksDisagree

CONFIRMED = "worked out a second time in postfix order, on decimals of eighty figures"


def calculated(expression: Expression, unit: str = "", surds: bool = True) -> tuple[Expression, ...]:
    """The lines of a calculation, each confirmed by the second evaluation; measures are added up in `unit`.

    Without `surds`, roots are not brought to simplest form: the result is to be rounded.

    Raises NoValue, UnitClash, BudgetExceeded, and ChecksDisagree where a line has another value.
    """
    if any(map(_has_a_percentage_of_what, _parts(expression))):
        raise NoValue("whether the percentage added or taken off is one of the amount in front of it is not said")
    try:
        lines = worked_lines(expression, unit)
    except NotSurd:
        lines = (expression,)
    if surds:
        lines = _with_surd_lines(lines)
    elif len(lines) > 1 and has_roots(lines[-1]) and not _roots_to_work_out(lines[-2]):
        lines = lines[:-1]
    confirm(lines)
    return lines


def _has_a_percentage_of_what(part: Expression) -> bool:
    """Whether a bare percentage stands in a sum with an amount: £350 − 20%; of 1 and of other shares it is no doubt."""
    if not isinstance(part, Sum):
        return False
    terms = [term.operand if isinstance(term, Negative) else term for term in part.terms]
    bare = [isinstance(term, Number) and term.form is NumberForm.PERCENT for term in terms]
    rest = [term for term, percentage in zip(terms, bare, strict=True) if not percentage]
    return any(bare) and any(isinstance(term, Measured) or _is_above_one(term) for term in rest)


def _is_above_one(term: Expression) -> bool:
    return isinstance(term, Number) and term.value > 1


def _roots_to_work_out(line: Expression) -> bool:
    """Whether something is still to be worked out under a root."""
    roots = [part for part in _parts(line) if isinstance(part, Root)]
    return any(not isinstance(root.radicand, Number) for root in roots)


def _with_surd_lines(lines: tuple[Expression, ...]) -> tuple[Expression, ...]:
    """The lines with those put in that a pupil writes between roots and their simplest form."""
    if len(lines) < 2 or unit_of(lines[-1]) or not has_roots(lines[-2]) or Numerals.of(lines[-2]).decimals:
        return lines
    return (*lines[:-2], *surd_lines(lines[-2], lines[-1]))


def confirm(lines: Sequence[Expression]) -> None:
    """Every line must have the value of the first; raises ChecksDisagree."""
    unit = unit_of(lines[0])
    expected = decimal_value(without_units(lines[0], unit))
    for line in lines[1:]:
        own = unit_of(line)
        if own != unit and conversion(own, unit) is None:
            raise ChecksDisagree(f"{write(lines[0])} is in {unit or 'no unit'}, {write(line)} in {own or 'none'}")
        if not agree(decimal_value(without_units(line, unit)), expected):
            raise ChecksDisagree(f"{write(line)} is not {write(lines[0])} by the second evaluation")


def calculation_steps(
    lines: Sequence[Expression], skill: str, uses: tuple[str, ...] = (), name: str = ""
) -> tuple[Step, ...]:
    """The lines as steps: "2 + 3 × 4 = 2 + 12", then "= 14"; `name` stands in place of the first line."""
    texts = [write(line) for line in lines]
    if len(texts) == 1:
        return (Step(f"{name} = {texts[0]}" if name else texts[0], StepKind.CALCULATION, None, uses, texts[0], skill),)
    first = Step(f"{name or texts[0]} = {texts[1]}", StepKind.CALCULATION, None, uses, texts[1], skill)
    return first, *continued_steps(lines[1:], skill, first.statement)


def continued_steps(lines: Sequence[Expression], skill: str, before: str) -> tuple[Step, ...]:
    """The lines behind the first one, which stands already in the statement `before`: "= 14"."""
    steps: list[Step] = []
    for line in lines[1:]:
        text = write(line)
        uses = (steps[-1].statement if steps else before,)
        steps.append(Step(f"= {text}", StepKind.CALCULATION, None, uses, text, skill))
    return tuple(steps)


def skill_of(expression: Expression) -> str:
    """The skill that a calculation shows first of all, by the names of `schemes/skills.yaml`."""
    parts = tuple(_parts(expression))
    numerals = Numerals.of(expression)
    negative = any(_is_directed(part) for part in parts)
    operations = {type(part) for part in parts if isinstance(part, Sum | Product | Quotient | Power | Root)}
    percentages = any(isinstance(part, Number) and part.form is NumberForm.PERCENT for part in parts)
    if percentages:
        whole = any(isinstance(part, Of) for part in parts)
        return "percentage of a quantity" if whole else "percentages"
    if numerals.fractions or any(isinstance(part, Of) for part in parts):
        return "fractions"
    if any(map(_is_surd, parts)):
        return "surds"
    if operations and operations <= {Power, Root}:
        return "powers and roots"
    if len(operations) > 1:
        return "order of operations"
    if _units(parts) > 1:
        return "units"
    if negative:
        return "directed numbers"
    return "decimals" if numerals.decimals else "order of operations"


def _parts(expression: Expression) -> Sequence[Expression]:
    return (expression, *(inner for part in parts_of(expression) for inner in _parts(part)))


def _is_surd(part: Expression) -> bool:
    """Whether a square root stands there that does not come out."""
    return isinstance(part, Root) and part.degree == 2 and isinstance(part.radicand, Number) and not _comes_out(part)


def _comes_out(root: Root) -> bool:
    try:
        return rational_value(root) is not None
    except (NoValue, BudgetExceeded):
        return True


def _is_directed(part: Expression) -> bool:
    """Whether a negative number stands there, not a difference."""
    match part:
        case Sum(terms):
            return isinstance(terms[0], Negative) or any(
                isinstance(term, Negative) and isinstance(term.operand, Negative) for term in terms
            )
        case Product() | Quotient() | Power():
            return any(isinstance(inner, Negative) for inner in parts_of(part))
    return False


def _units(parts: Sequence[Expression]) -> int:
    return len({part.unit for part in parts if isinstance(part, Measured)})


def is_numeric(expression: Expression) -> bool:
    """Whether an expression holds numbers only, π among them."""
    if isinstance(expression, Letter):
        return expression.name == "π"
    inside = parts_of(expression)
    return all(map(is_numeric, inside)) if inside else isinstance(expression, Number)


def rational(expression: Expression) -> Fraction:
    """The value of a settled number without its unit; raises NoValue where it is irrational."""
    value = rational_value(without_units(expression, unit_of(expression)))
    if value is None:
        raise NoValue(f"{write(expression)} is irrational")
    return value
