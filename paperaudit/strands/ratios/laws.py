"""Laws that connect named amounts (V = πr²h, s = d/t), and a chain of them from what is known to what is wanted."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from decimal import Decimal
from fractions import Fraction

from paperaudit.errors import NoValue
from paperaudit.maths.number_forms import as_decimal
from paperaudit.maths.parse import read_relation
from paperaudit.maths.write import write
from paperaudit.model.derivation import StepKind
from paperaudit.model.expression import (
    Expression,
    Letter,
    Negative,
    Number,
    Power,
    Product,
    Quotient,
    Relation,
    Root,
    Sum,
    leaves,
    letters_of,
)
from paperaudit.strands.finishing import ChecksDisagree
from paperaudit.strands.numbers.working import Working
from paperaudit.strands.ratios.amounts_worked import has_decimals, simplest, size_of, worked
from paperaudit.strands.substitution import substituted

_CLOSE = Decimal("1e-30")
_LONGEST_DECIMAL, _SHOWN = 10, 4


@dataclass(frozen=True, slots=True)
class Law:
    """A law of letters as a pupil writes it: `Law("V = πr²h")`; `skill` where it has one of its own."""

    text: str
    skill: str = ""

    @property
    def relation(self) -> Relation:
        """The law as a relation."""
        return read_relation(self.text, frozenset("mghlstcL"))

    @property
    def letters(self) -> frozenset[str]:
        """The letters of the law, π left aside."""
        relation = self.relation
        return frozenset((*letters_of(relation.left), *letters_of(relation.right))) - {"π"}


@dataclass(slots=True)
class Known:
    """Letters with their values, and the line that states each of them last."""

    values: dict[str, Expression] = field(default_factory=dict)
    lines: dict[str, str] = field(default_factory=dict)
    pi: Number | None = None


def chain(laws: Iterable[Law], known: Iterable[str], wanted: str) -> tuple[tuple[Law, str], ...] | None:
    """The shortest run of laws that leads to the wanted letter, each with the letter that it gives; None for none."""
    laws = tuple(laws)
    waiting: list[tuple[frozenset[str], tuple[tuple[Law, str], ...]]] = [(frozenset(known), ())]
    seen = {frozenset(known)}
    while waiting:
        have, path = waiting.pop(0)
        if wanted in have:
            return path
        direct = sorted(laws, key=lambda law: law.relation.left != Letter(wanted))
        for law in direct:
            missing = law.letters - have
            if len(missing) == 1 and len(path) < 4:
                letter = next(iter(missing))
                if _times_met(law.relation, letter) == 1 and have | missing not in seen:
                    seen.add(have | missing)
                    waiting.append((have | missing, (*path, (law, letter))))
    return None


def _times_met(relation: Relation, letter: str) -> int:
    return sum(leaf == Letter(letter) for side in (relation.left, relation.right) for leaf in leaves(side))


def apply(law: Law, letter: str, known: Known, working: Working) -> Expression:
    """The letter's value by a law, with its lines; checked by putting it back into the law."""
    relation = law.relation
    values: dict[str, Expression] = dict(known.values)
    if known.pi is not None:
        values["π"] = known.pi
    decimals = has_decimals(*values.values())
    uses = tuple(dict.fromkeys(known.lines[name] for name in sorted(law.letters) if name in known.lines))
    law_text = write(relation).replace("^n", "ⁿ")
    first = working.say(law_text, law_text, uses or working.used, StepKind.EQUATION)
    left, right = substituted(relation.left, values), substituted(relation.right, values)
    if relation.left == Letter(letter):
        value = _forward(letter, right, working)
    else:
        put_in = f"{write(left)} = {write(right)}"
        if put_in != first:
            working.say(put_in, put_in)
        value = _backward(letter, left, right, decimals, working)
    known.values[letter] = value
    known.lines[letter] = working.steps[-1].statement
    _put_back(relation, values | {letter: value})
    return value


def _forward(letter: str, right: Expression, working: Working) -> Expression:
    lines = worked(right)
    for line in lines:
        if line is lines[-1] or not _is_long(line):
            said = _cut_off(line)
            working.say(f"= {said}", said)
    return lines[-1]


def _is_long(line: Expression) -> bool:
    """Whether a decimal of dozens of places stands in a line, which a pupil leaves in the calculator."""
    return any(isinstance(leaf, Number) and leaf.places > _LONGEST_DECIMAL for leaf in leaves(line))


def _cut_off(line: Expression) -> str:
    if not isinstance(line, Number) or line.places <= _LONGEST_DECIMAL:
        return write(line)
    scale = 10**_SHOWN
    return f"{write(as_decimal(Fraction((line.value * scale).__floor__(), scale), _SHOWN) or line)}…"


def _backward(letter: str, left: Expression, right: Expression, decimals: bool, working: Working) -> Expression:
    """Undoes one operation after the other, a line each, until the letter stands alone."""
    inside, value = (left, right) if letter in letters_of(left) else (right, left)
    given, value = value, simplest(value, decimals)
    if write(given) != write(value) and inside != Letter(letter):
        working.say(f"{write(inside)} = {write(value)}", write(value))
    while inside != Letter(letter):
        inside, undone = _undo(inside, value, letter)
        value = simplest(undone, decimals)
        shown = write(undone) if undone != value and not isinstance(undone, Root) else ""
        if shown:
            working.say(f"{write(inside)} = {shown}", shown)
        working.say(f"{write(inside)} = {write(value)}", write(value))
        if isinstance(undone, Root) and size_of(value) <= 0:
            raise NoValue(f"{letter} would be nought")
    return value


def _undo(side: Expression, value: Expression, letter: str) -> tuple[Expression, Expression]:
    """What stands inside after one operation is undone, and what it is equal to."""
    match side:
        case Negative(operand):
            return operand, Negative(value)
        case Sum(terms):
            mine, others = _split(terms, letter)
            rest = tuple(
                simplest(other.operand) if isinstance(other, Negative) else Negative(simplest(other))
                for other in others
            )
            return mine, Sum((value, *rest))
        case Product(factors):
            mine, others = _split(factors, letter)
            divisor = others[0] if len(others) == 1 else Product(others, "×")
            return mine, Quotient(value, simplest(divisor))
        case Quotient(above, below) if letter in letters_of(above):
            return above, Product((value, below), "×")
        case Quotient(above, below):
            return below, Quotient(above, value)
        case Power(base, Number(exponent)) if exponent.denominator == 1 and exponent > 1:
            if size_of(value) < 0:
                raise NoValue("a square of a length that is negative")
            return base, Root(value, int(exponent))
        case Root(radicand, degree):
            return radicand, Power(value, Number(Fraction(degree)))
    raise NoValue("this is not solved for the letter")


def _split(parts: tuple[Expression, ...], letter: str) -> tuple[Expression, tuple[Expression, ...]]:
    mine = next(part for part in parts if letter in letters_of(part))
    return mine, tuple(part for part in parts if part is not mine)


def _put_back(relation: Relation, values: Mapping[str, Expression]) -> None:
    left, right = (size_of(substituted(side, dict(values))) for side in (relation.left, relation.right))
    if abs(left - right) > _CLOSE * max(abs(left), abs(right), Decimal(1)):
        raise ChecksDisagree(f"put back into {write(relation)}, both sides differ")
