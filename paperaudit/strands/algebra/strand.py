"""The strand of algebra beyond the first degree: which derivation takes which task."""

from paperaudit.errors import BudgetExceeded, NoValue
from paperaudit.maths.algebra.logarithms import has_logarithm
from paperaudit.maths.algebra.terms import NotTerms
from paperaudit.maths.linear_terms import NotLinear
from paperaudit.maths.measure import UnitClash, unit_of, without_units
from paperaudit.maths.rewriting import rewritten_lines
from paperaudit.model.algebra_task import (
    AlgebraTask,
)
from paperaudit.model.ask import Establish, Find, Rounded, Solve, Subject, Transform, WriteAs
from paperaudit.model.derivation import NotRead, Outcome
from paperaudit.model.expression import Relation, letters_of
from paperaudit.model.fact import Holds
from paperaudit.model.reading import Reading
from paperaudit.strands.equation_kinds import refusal_of_expression, refusal_of_relation
from paperaudit.strands.refusals import or_not_read
from paperaudit.strands.substitution import is_substitution
from paperaudit.strands.unknowns import equations_given, is_algebraic


class AlgebraStrand:
    """Takes equations, inequalities and expressions that are not of the first degree, and formulas."""

    name = "algebra"

    def recognises(self, reading: Reading) -> bool:
        """Whether the ask is about letters and numbers alone, and not of the first degree."""
        if reading.ask is None:
            return False
        match reading.ask.task:
            case Transform(_, expression) | Rounded(expression) | Find((expression,)) if has_logarithm(expression):
                return not is_substitution(reading)
            case WriteAs(expression, form) if form.startswith("power of "):
                return is_algebraic(expression) and not reading.givens
            case Solve(relations):
                return _beyond(relations, reading)
            case Transform("simplify" | "expand" | "factorise", expression):
                return is_algebraic(expression) and _needs_algebra(reading.ask.task)
            case Subject(_, relation):
                return all(is_algebraic(side) or not letters_of(side) for side in (relation.left, relation.right))
            case Find(wanted):
                equations = equations_given(reading.givens)
                plain = all(map(is_algebraic, wanted)) and not is_substitution(reading)
                return bool(equations) and plain and _beyond((), reading)
            case Establish(claims, "show" | "prove"):
                return (
                    not reading.givens
                    and len(claims) == 1
                    and isinstance(claims[0], Holds)
                    and _is_identity(claims[0].relation)
                )
        return isinstance(reading.ask.task, AlgebraTask)

    def derive(self, reading: Reading) -> Outcome:
        """The answer with its lines, or NotRead with what stopped it."""
        assert reading.ask is not None
        # The derivations are many modules; a paper without algebra does not wait for them.
        from paperaudit.strands.algebra.deriving import derive_algebra

        ask = reading.ask
        try:
            return or_not_read(lambda: derive_algebra(reading, ask))
        except (NotTerms, NotLinear) as fault:
            return NotRead(f"this kind is not derived yet: {fault}")


def _needs_algebra(task: Transform) -> bool:
    """Whether an expression is more than the linear strand rewrites."""
    try:
        if refusal_of_expression(task.expression):
            return True
        if task.command != "factorise":
            rewritten_lines(without_units(task.expression, unit_of(task.expression)), task.command)
    except (BudgetExceeded, NotLinear):
        return True
    except (NoValue, UnitClash):
        return False
    return False


def _is_identity(relation: Relation) -> bool:
    sides = (relation.left, relation.right)
    return (
        relation.sign == "="
        and any(map(is_algebraic, sides))
        and all(is_algebraic(side) or not letters_of(side) for side in sides)
    )


def _beyond(relations: tuple[Relation, ...], reading: Reading) -> bool:
    """Whether some equation is not linear, and all are about letters alone."""
    given = equations_given(reading.givens)
    if given is None:
        return False
    everything = relations or tuple(stated.relation for stated in given)
    plain = all(is_algebraic(side) or not letters_of(side) for one in everything for side in (one.left, one.right))
    return plain and any(refusal_of_relation(relation) for relation in everything)
