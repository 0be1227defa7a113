"""A series written in sigma notation: 2 + 5 + 8 + … + 29 is the sum of 3k − 1 from k = 1 to 10."""

from fractions import Fraction

from paperaudit.errors import NoValue
from paperaudit.maths.powers import put_in
from paperaudit.maths.write import write
from paperaudit.model.derivation import Answer, Outcome
from paperaudit.model.expression import Letter, Product, Sum
from paperaudit.model.reading import Reading
from paperaudit.model.sequence_task import OfSequence
from paperaudit.strands.numbers.working import require
from paperaudit.strands.sequences.rules import Rule, rule_of
from paperaudit.strands.sequences.terms import SERIES, number_text, place_of, say_formula

_MOST = 5_000


def as_sigma(task: OfSequence, reading: Reading) -> Outcome:
    """The series with its formula and its number of terms."""
    rule, working = rule_of(task, reading, SERIES)
    if rule.formula is None:
        raise NoValue("a formula for the sums of the two terms before")
    say_formula(rule, working)
    end = "∞"
    if rule.last is not None:
        count = place_of(rule, rule.last, working)
        if count is None or count > _MOST:
            raise NoValue(f"{number_text(rule.last)} is no term of the series")
        end = str(count)
        require(_counted(rule, rule.last) == int(end), "the number of terms")
    formula = put_in(rule.formula, "n", Letter("k"))
    body = f"({write(formula)})" if isinstance(formula, Sum) else write(formula)
    if isinstance(formula, Product) and any(isinstance(one, Sum) for one in formula.factors):
        body = f"[{write(formula)}]"
    text = f"Σ (k = 1 to {end}) {body}"
    working.conclude(text, text)
    for place, value in enumerate(rule.terms, 1):
        require(rule.term(place) == Fraction(value), f"term {place} of the series")
    return working.derived(Answer(text, formula, end, kind="sigma"), confirmed_by="its terms are those of the series")


def _counted(rule: Rule, last: Fraction) -> int:
    """The number of terms up to the last one, counted term by term."""
    return next((place for place in range(1, _MOST + 1) if rule.term(place) == last), 0)
