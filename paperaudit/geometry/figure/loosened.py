"""Figures with some of their conditions left open."""

from dataclasses import replace

from paperaudit.geometry.figure.figure import Balance, Compared, Figure, ParallelPair, SameWay, SizeRelation
from paperaudit.model.expression import Letter


def with_loose_directions(figure: Figure) -> Figure:
    """The same figure with the direction in which lines are named left open: a convention, not a given."""
    loose = tuple(
        replace(condition, same_way=None)
        if isinstance(condition, ParallelPair) and condition.reason == "given"
        else condition
        for condition in figure.conditions
        if not isinstance(condition, SameWay)
    )
    return replace(figure, conditions=loose)


def without_numbers(figure: Figure) -> Figure:
    """The same figure with its sizes left open: only equalities of two sizes are kept among relations.

    Every figure that meets the givens meets these conditions too.
    """
    kept = tuple(
        condition
        for condition in figure.conditions
        if not isinstance(condition, SizeRelation | Balance | Compared)
        or (
            isinstance(condition, SizeRelation)
            and not condition.form.constant
            and len(condition.form.terms) == 2
            and condition.kind != "letters"
            and not any(isinstance(size, Letter) for size in condition.form.terms)
        )
    )
    return replace(figure, conditions=kept)


def without_lengths(figure: Figure) -> Figure:
    """The same figure with every relation of lengths, areas and letters left open; angles, shapes and equal sides stay.

    Every figure that meets the givens meets these conditions too.
    """
    kept = tuple(
        condition
        for condition in figure.conditions
        if not isinstance(condition, Balance | Compared)
        and not (isinstance(condition, SizeRelation) and condition.kind != "angle")
    )
    return replace(figure, conditions=kept)
