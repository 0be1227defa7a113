"""The answers to several asks in one text: amplitude 3 and period 180°; 3x² − 4, 8."""

import re
from collections.abc import Callable, Iterator
from dataclasses import replace
from itertools import combinations

from paperaudit.model.ask import Ask, Establish
from paperaudit.model.derivation import Agreement, Answer, Comparison

Compare = Callable[[str, tuple[Answer, ...], Ask], Comparison]
_CUT = re.compile(r"\s*(?:;|\band\b|,(?!\d)|\n|&)\s*")
_LABEL = re.compile(
    r"(?:\(?(?:[a-h]|i{1,3}|iv|v)\)\s*)?(?:the )?[A-Za-z][A-Za-z′'⁻¹₀-₉ₙ]*(?:\(\w+\))?(?:[ -][A-Za-z]+)*"
    r"(?:\s*[=:]\s*| is | )(?=.)"
)
_MOST_CUTS = 9


def compare_each(stated: str, derived: tuple[Answer, ...], asks: tuple[Ask, ...], compare: Compare) -> Comparison:
    """A text cut into as many pieces as there are asks, in their order or, of two, the other way round.

    It differs only where some way of cutting leaves no piece that cannot be told, and none of them agrees.
    """
    if (needed := [at for at in range(len(asks)) if not _is_claim(asks[at])]) and len(needed) < len(asks):
        # What is to be shown needs no answer in the key.
        kept = tuple(replace(one, of=needed.index(one.of)) for one in derived if one.of in needed)
        without = compare_each(stated, kept, tuple(asks[at] for at in needed), compare)
        if without.agreement is Agreement.AGREES:
            return without
    groups = [tuple(one for one in derived if one.of == at) for at in range(len(asks))]
    best: tuple[int, Comparison] | None = None
    for pieces in _ways(stated.strip().rstrip("."), len(asks)):
        found = [_told(piece, group, ask, compare) for piece, group, ask in zip(pieces, groups, asks, strict=True)]
        if all(one.agreement is Agreement.AGREES for one in found):
            return Comparison(Agreement.AGREES)
        if any(one.agreement is Agreement.CANNOT_TELL for one in found):
            continue
        right = sum(one.agreement is Agreement.AGREES for one in found)
        if best is None or right > best[0]:
            best = right, next(one for one in found if one.agreement is Agreement.DIFFERS)
    return best[1] if best is not None else Comparison(Agreement.CANNOT_TELL, "the stated answers were not told apart")


def _is_claim(ask: Ask) -> bool:
    return isinstance(ask.task, Establish) and ask.task.how != "decide"


def _told(piece: str, answers: tuple[Answer, ...], ask: Ask, compare: Compare) -> Comparison:
    """A piece as it stands, or without the name in front of it where that says more."""
    found = compare(piece, answers, ask)
    label = _LABEL.match(piece)
    if found.agreement is Agreement.AGREES or label is None:
        return found
    bare = compare(piece[label.end() :], answers, ask)
    return found if bare.agreement is Agreement.CANNOT_TELL else bare


def _ways(text: str, count: int) -> Iterator[tuple[str, ...]]:
    cuts = list(_CUT.finditer(text))
    if len(cuts) > _MOST_CUTS:
        return
    for chosen in combinations(cuts, count - 1):
        ends = [0, *(cut.end() for cut in chosen)]
        starts = [*(cut.start() for cut in chosen), len(text)]
        pieces = tuple(text[one:other].strip() for one, other in zip(ends, starts, strict=True))
        if all(pieces):
            yield pieces
            if count == 2:
                yield pieces[::-1]
