"""Where in a part an error can be made: the expression that is asked, the equation, the last line with a reason."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from functools import cached_property

from paperaudit.errors import BudgetExceeded, ExpressionNotRead, NoValue
from paperaudit.maths.exact import NotSurd, rational_value
from paperaudit.maths.measure import UnitClash, bare
from paperaudit.maths.parse import read_expression
from paperaudit.model.ask import Find, Solve, Task, Transform, WriteAs
from paperaudit.model.audited import AuditedPart
from paperaudit.model.derivation import Answer, Derived
from paperaudit.model.expression import (
    Expression,
    Function,
    Letter,
    Measured,
    Negative,
    Number,
    Of,
    Power,
    Product,
    Quotient,
    Relation,
    Root,
    Sum,
    leaves,
)

Rewriting = Callable[[Expression], Iterator[Expression]]
"""The wrong forms that a learner may give to one expression."""


@dataclass(frozen=True, slots=True)
class Reasoned:
    """The last line with a reason: the reason's name, the bare sizes that it rests on, and the answer itself."""

    reason: str
    inputs: tuple[Expression, ...]
    answer: Expression


@dataclass(frozen=True)
class Occasion:
    """What a part gives occasion for an error with; each is looked up once, however many errors ask for it."""

    part: AuditedPart

    @property
    def task(self) -> Task | None:
        """The task of the ask."""
        return self.part.reading.ask.task if self.part.reading.ask else None

    @cached_property
    def answer(self) -> Answer | None:
        """The one derived answer that has a value, or None."""
        outcome = self.part.outcome
        if isinstance(outcome, Derived) and len(outcome.answers) == 1 and outcome.answers[0].value is not None:
            return outcome.answers[0]
        return None

    @cached_property
    def expression(self) -> Expression | None:
        """The expression of numbers and letters that is to be worked out or brought to another form."""
        match self.task:
            case Transform(_, expression) | WriteAs(expression):
                return expression
            case Find((expression,)) if not isinstance(expression, Letter):
                return expression
        return None

    @cached_property
    def equation(self) -> Relation | None:
        """The one equation in one letter that is to be solved."""
        task = self.task
        if isinstance(task, Solve) and len(task.relations) == 1 and task.relations[0].sign == "=":
            return task.relations[0]
        return None

    @cached_property
    def reasoned(self) -> Reasoned | None:
        """The last line with a reason of a part with one answer, where only working stands behind it."""
        derivation = self.part.derivation()
        if self.answer is None or self.answer.value is None or derivation is None:
            return None
        step = next((step for step in reversed(derivation.steps) if step.reason is not None), None)
        if step is None or step.reason is None:
            return None
        sizes = (size_of(text) for text in step.uses)
        bare_answer, _ = bare(self.answer.value)
        return Reasoned(step.reason.name, tuple(size for size in sizes if size is not None), bare_answer)


def rewritten(expression: Expression, rewrite: Rewriting) -> Iterator[Expression]:
    """The expression with one place in it brought into a wrong form, for each place.

    >>> places = rewritten(Sum((Letter("x"), Letter("y"))), lambda part: iter([Letter("z")] * isinstance(part, Letter)))
    >>> [whole.terms for whole in places if isinstance(whole, Sum)][0]
    (Letter(name='z'), Letter(name='y'))
    """
    yield from rewrite(expression)
    for place, inside in enumerate(_inside(expression)):
        for changed in rewritten(inside, rewrite):
            yield _with_inside(expression, place, changed)


def rewritten_relation(relation: Relation, rewrite: Rewriting) -> Iterator[Relation]:
    """The relation with one place of one of its sides brought into a wrong form."""
    for left in rewritten(relation.left, rewrite):
        yield replace(relation, left=left)
    for right in rewritten(relation.right, rewrite):
        yield replace(relation, right=right)


def _inside(expression: Expression) -> tuple[Expression, ...]:
    match expression:
        case Sum(terms):
            return terms
        case Product(factors):
            return factors
        case Negative(operand):
            return (operand,)
        case Quotient(above, below):
            return (above, below)
        case Power(base):
            return (base,)
        case Root(radicand):
            return (radicand,)
        case Of(share, whole):
            return (share, whole)
        case Measured(amount) | Function(_, amount):
            return (amount,)
    return ()


def _with_inside(expression: Expression, place: int, changed: Expression) -> Expression:
    match expression:
        case Sum(terms):
            return Sum((*terms[:place], changed, *terms[place + 1 :]))
        case Product(factors, sign):
            return Product((*factors[:place], changed, *factors[place + 1 :]), sign)
        case Negative():
            return Negative(changed)
        case Quotient(above, below, sign):
            return Quotient(changed, below, sign) if place == 0 else Quotient(above, changed, sign)
        case Power(_, exponent):
            return Power(changed, exponent)
        case Root(_, degree):
            return Root(changed, degree)
        case Of(share, whole):
            return Of(changed, whole) if place == 0 else Of(share, changed)
        case Measured(_, unit):
            return Measured(changed, unit)
        case Function(name):
            return Function(name, changed)
    return changed


def size_of(text: str) -> Expression | None:
    """The bare number behind the last equals sign of a line: 40 of "∠BAC = 40°"."""
    if "=" not in text:
        return None
    try:
        value, _ = bare(read_expression(text.rpartition("=")[2].split("≈")[0].strip()))
    except (ExpressionNotRead, UnitClash, NotSurd, NoValue, BudgetExceeded):
        return None
    return value if all(isinstance(leaf, Number) for leaf in leaves(value)) else None


def is_number(expression: Expression) -> bool:
    """Whether an expression is a rational number."""
    try:
        return rational_value(expression) is not None
    except (NotSurd, NoValue, BudgetExceeded):
        return False
