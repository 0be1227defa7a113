"""Givens that only give numbers to letters, put into what is asked for: 4x² − 15x + 1 for x = 3."""

from paperaudit.maths.parts import with_parts
from paperaudit.model.ask import Find, Transform
from paperaudit.model.expression import (
    Expression,
    Letter,
    Number,
    Product,
    Quantity,
    Relation,
    leaves,
    letters_of,
)
from paperaudit.model.fact import Given, Holds
from paperaudit.model.reading import Reading


def numbers_given(givens: tuple[Given, ...]) -> dict[str, tuple[Expression, Given]] | None:
    """What each letter is given as, with the given; None where some given is more than letter = number."""
    found: dict[str, tuple[Expression, Given]] = {}
    for given in givens:
        for fact in given.facts:
            value = _number_for(fact.relation) if isinstance(fact, Holds) else None
            if value is None or value[0] in found:
                return None
            found[value[0]] = (value[1], given)
    return found


def _number_for(relation: Relation) -> tuple[str, Expression] | None:
    if relation.sign != "=":
        return None
    for name, value in ((relation.left, relation.right), (relation.right, relation.left)):
        if isinstance(name, Letter) and all(isinstance(leaf, Number) for leaf in leaves(value)):
            return name.name, value
    return None


def wanted_values(reading: Reading) -> tuple[Expression, ...]:
    """What is to be worked out: the wanted quantities of a Find, the expression of an evaluate."""
    if reading.ask is None:
        return ()
    match reading.ask.task:
        case Find(wanted):
            return wanted
        case Transform("evaluate", expression):
            return (expression,)
    return ()


def is_substitution(reading: Reading) -> bool:
    """Whether all letters of what is asked for have their numbers in the givens."""
    wanted = wanted_values(reading)
    if not wanted or any(isinstance(leaf, Quantity) for item in wanted for leaf in leaves(item)):
        return False
    letters = {letter for item in wanted for letter in letters_of(item)} - {"π"}
    known = numbers_given(reading.givens)
    return bool(letters) and known is not None and letters <= known.keys()


def with_numbers(relation: Relation, values: dict[str, Expression]) -> Relation:
    """The relation with numbers for its letters: 2 × 3 + z = 10."""
    return Relation(substituted(relation.left, values), relation.sign, substituted(relation.right, values))


def substituted(expression: Expression, values: dict[str, Expression]) -> Expression:
    """The expression with numbers for its letters, a × sign where numbers come to stand side by side."""
    if isinstance(expression, Letter):
        return values.get(expression.name, expression)
    changed = with_parts(expression, lambda part: substituted(part, values))
    if isinstance(changed, Product) and changed != expression and not all(map(_is_letter, values.values())):
        return Product(changed.factors, "×")
    return changed


def _is_letter(value: Expression) -> bool:
    return isinstance(value, Letter)
