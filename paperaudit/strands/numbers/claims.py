"""Claims about numbers alone: "Show that √50 + √8 = 7√2"."""

from paperaudit.errors import BudgetExceeded, ExpressionNotRead, NoValue
from paperaudit.maths.exact import NotSurd
from paperaudit.maths.measure import UnitClash
from paperaudit.maths.postfix import agree, decimal_value
from paperaudit.maths.same_value import same_value
from paperaudit.maths.write import write
from paperaudit.model.ask import Ask, Establish
from paperaudit.model.derivation import Answer, Derivation, Derived, NotRead, Outcome, Step, StepKind
from paperaudit.model.expression import Expression, Relation
from paperaudit.model.fact import Holds
from paperaudit.model.reading import Reading
from paperaudit.strands.calculating import CONFIRMED, calculated, calculation_steps, is_numeric, skill_of
from paperaudit.strands.finishing import ChecksDisagree
from paperaudit.strands.numbers.working import require

_HOLDS = {"show": "shown", "prove": "proved", "decide": "yes"}


class NumericClaimsStrand:
    """Takes claims that two calculations with numbers are equal."""

    name = "number"

    def recognises(self, reading: Reading) -> bool:
        """Whether one equation of numbers is to be shown, and nothing else."""
        return _claim(reading.ask) is not None

    def derive(self, reading: Reading) -> Outcome:
        """The left side worked out to the right one, or what it comes to instead."""
        claim = _claim(reading.ask)
        assert reading.ask is not None and claim is not None and isinstance(reading.ask.task, Establish)
        try:
            return _derived(claim, reading.ask.task.how)
        except (NoValue, UnitClash, BudgetExceeded, ExpressionNotRead, NotSurd, ChecksDisagree) as fault:
            return NotRead(f"it could not be worked out: {fault}")


def _claim(ask: Ask | None) -> Relation | None:
    if ask is None or not isinstance(ask.task, Establish) or len(ask.task.claims) != 1:
        return None
    (fact,) = ask.task.claims
    relation = fact.relation if isinstance(fact, Holds) else None
    if relation is None or relation.sign != "=":
        return None
    return relation if is_numeric(relation.left) and is_numeric(relation.right) else None


def _derived(claim: Relation, how: str) -> Outcome:
    lines = calculated(claim.left)
    same = same_value(claim.left, claim.right)
    if same is None:
        return NotRead("whether both sides are equal could not be told")
    require(agree(decimal_value(claim.left), decimal_value(claim.right)) == same, "whether both sides are equal")
    steps = list(calculation_steps(lines, skill_of(claim.left)))
    if not same:
        text = (
            "no" if how == "decide" else f"false: {write(claim.left)} is {write(lines[-1])}, not {write(claim.right)}"
        )
        return Derived((Answer(text),), (Derivation(tuple(steps), CONFIRMED),))
    steps += _to_the_right_side(lines[-1], claim.right, steps[-1].statement)
    return Derived((Answer(_HOLDS[how]),), (Derivation(tuple(steps), CONFIRMED),))


def _to_the_right_side(reached: Expression, right: Expression, before: str) -> list[Step]:
    """The right side as the claim has it, where the calculation ended in another form of it."""
    if write(reached) == write(right):
        return []
    text = write(right)
    return [Step(f"= {text}", StepKind.CONCLUSION, None, (before,), text, "")]
