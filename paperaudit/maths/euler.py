"""The letter e where it is the number e."""

from paperaudit.model.expression import Euler, Expression, Letter, Logarithm, Power, letters_of, parts_of, with_leaves


def has_euler(expression: Expression) -> bool:
    """Whether e or a natural logarithm stands in an expression."""
    return isinstance(expression, Euler) or any(map(has_euler, parts_of(expression)))


def with_euler(expression: Expression) -> Expression:
    """The letter e as the number e.

    >>> with_euler(Letter("e"))
    Euler()
    """
    return with_leaves(expression, lambda leaf: Euler() if leaf == Letter("e") else leaf)


def means_euler(expression: Expression) -> bool:
    """Whether a letter e can only be the number: it is raised to a power with a letter, or ln stands beside it."""
    match expression:
        case Power(Letter("e"), exponent) if letters_of(exponent):
            return True
        case Logarithm(_, Euler()):
            return True
    return any(map(means_euler, parts_of(expression)))
