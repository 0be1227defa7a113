"""Proofs by induction: the first case, the step from k to k + 1, and false claims refuted by an integer."""

from fractions import Fraction

from paperaudit.errors import BudgetExceeded, NoValue
from paperaudit.maths.algebra.exponential_terms import exponential_terms
from paperaudit.maths.algebra.terms import NotTerms, added, degree, expression_of, negated, terms_of
from paperaudit.maths.exact import rational_value
from paperaudit.maths.number_forms import whole_or_fraction
from paperaudit.maths.parts import with_parts
from paperaudit.maths.same_value import same_value
from paperaudit.maths.write import write
from paperaudit.model.derivation import Answer, Derived
from paperaudit.model.expression import Expression, Letter, Number, Power, Product, Sum, letters_of
from paperaudit.model.proof_task import InductiveSum
from paperaudit.model.reading import Reading
from paperaudit.strands.algebra.confirming import confirm_equal
from paperaudit.strands.algebra.working import Working
from paperaudit.strands.finishing import ChecksDisagree
from paperaudit.strands.substitution import substituted

SKILL = "algebraic proof"
CASES = 40
"""So many first integers are worked out one by one, as the second way."""


def value_at(expression: Expression, letter: str, number: int) -> Fraction:
    """The exact value for an integer; raises NoValue without a rational one."""
    value = rational_value(expression, {letter: Fraction(number)})
    if value is None:
        raise NoValue(f"{write(expression)} for {letter} = {number}")
    return value


def put(expression: Expression, letter: str, value: Expression) -> Expression:
    """The expression with something for its letter, sums of the first degree collected: (k + 1) + 1 is k + 2."""
    return _collected(substituted(expression, {letter: value}))


def _collected(expression: Expression) -> Expression:
    if isinstance(expression, Sum) and len(letters_of(expression)) == 1:
        try:
            terms = terms_of(expression)
        except (NotTerms, BudgetExceeded):
            terms = ()
        if terms and degree(terms) == 1:
            return expression_of(terms)
    changed = with_parts(expression, _collected)
    if isinstance(changed, Product) and not any(map(_is_number, changed.factors[1:])):
        return Product(changed.factors)
    return changed


def _is_number(factor: Expression) -> bool:
    """Whether a factor begins with a number, so that × must stand before it."""
    return not letters_of(factor) or (isinstance(factor, Power) and not letters_of(factor.base))


def other_letter(letter: str) -> str:
    """k, or m where the claim is in k itself."""
    return "k" if letter != "k" else "m"


def after(name: str) -> Expression:
    """k + 1."""
    return Sum((Letter(name), Number(Fraction(1))))


def conclude(start: int, letter: str, name: str, working: Working) -> None:
    """The last line of every proof by induction."""
    working.conclude(
        f"true for {letter} = {start}, and true for {letter} = {name} + 1 where it is true for {letter} = {name}: "
        f"by induction it is true for every integer {letter} ≥ {start}", "proved")  # fmt: skip


def inductive_sum(task: InductiveSum, reading: Reading) -> Derived:
    """The claim about a sum proved, or refuted by the first integer at which it fails."""
    working = Working(SKILL)
    failing = _failing(task)
    if failing is not None:
        number, total, claimed = failing
        said = f"for {task.letter} = {number} the sum is {write(whole_or_fraction(total))}, the right side "
        said += write(whole_or_fraction(claimed))
        working.conclude(said, "false")
        return working.derived(Answer(f"false: {said}"), confirmed_by="the terms added up one by one")
    first = Number(Fraction(task.start))
    one = put(task.term, task.index, first)
    right = put(task.total, task.letter, first)
    value = write(whole_or_fraction(value_at(task.term, task.index, task.start)))
    sides = f"left side = {_worked(one, value)}, right side = {_worked(right, value)}"
    working.say(f"{task.letter} = {task.start}: {sides}",
                value, uses=())  # fmt: skip
    name = other_letter(task.letter)
    assumed = put(task.total, task.letter, Letter(name))
    working.say(f"assume it for {task.letter} = {name}: {_sum_to(task, Letter(name))} = {write(assumed)}", uses=())
    following = put(task.term, task.index, after(name))
    start = Sum((assumed, following))
    working.say(f"{task.letter} = {name} + 1: {_sum_to(task, after(name))} = {write(start)}", write(start))
    goal = put(task.total, task.letter, after(name))
    _say_step(start, goal, name, working)
    conclude(task.start, task.letter, name, working)
    confirmed = f"the sum worked out term by term for the first {CASES} integers"
    return working.derived(Answer("proved"), confirmed_by=confirmed)


def _worked(expression: Expression, value: str) -> str:
    text = write(expression)
    return text if text == value else f"{text} = {value}"


def _sum_to(task: InductiveSum, last: Expression) -> str:
    """1 + 2 + … + k, or the sigma."""
    if not task.shown:
        return f"the sum to {write(last)}"
    value = put(task.term, task.index, last)
    text = f"({write(value)})" if isinstance(value, Sum) else write(value)
    return f"{' + '.join(map(write, task.shown))} + … + {text}"


def _failing(task: InductiveSum) -> tuple[int, Fraction, Fraction] | None:
    """The first integer at which the sum is not the total."""
    total = Fraction(0)
    for number in range(task.start, task.start + CASES):
        total += value_at(task.term, task.index, number)
        claimed = value_at(task.total, task.letter, number)
        if total != claimed:
            return number, total, claimed
    return None


def _say_step(start: Expression, goal: Expression, name: str, working: Working) -> None:
    """The lines from the sum for k with one more term to the claim for k + 1."""
    try:
        left, right = exponential_terms(start, name), exponential_terms(goal, name)
    except NotTerms:
        _say_fractions(start, goal, working)
        return
    if left.bases != right.bases or added(left.terms, negated(right.terms)):
        raise NotTerms(f"{write(start)} and {write(goal)}, which do not multiply out to the same terms")
    expanded = left.expression(left.terms)
    confirm_equal((start, expanded, goal))
    if write(expanded) != write(start):
        working.say(f"= {write(expanded)}", write(expanded))
    if write(goal) != write(expanded):
        working.say(f"= {write(goal)}, as this is {write(expanded)} too", write(goal))


def _say_fractions(start: Expression, goal: Expression, working: Working) -> None:
    """Algebraic fractions added up."""
    from paperaudit.maths.algebra.fractions import fraction_lines

    lines = fraction_lines(start)
    confirm_equal((*lines, goal))
    if same_value(lines[-1], goal) is not True:
        raise ChecksDisagree(f"{write(start)} and {write(goal)}")
    for line in lines[1:]:
        working.say(f"= {write(line)}", write(line))
    if write(lines[-1]) != write(goal):
        working.say(f"= {write(goal)}", write(goal))
