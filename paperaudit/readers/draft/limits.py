"""What stands above and below a sign of a sum, a product or a limit."""

from collections.abc import Sequence
from dataclasses import replace

from paperaudit.readers.draft.linear import inner_text
from paperaudit.readers.draft.pool import Pool
from paperaudit.readers.draft.sign import Sign, built

_SUMS = {"∑": "Σ", "Σ": "Σ", "∏": "Π", "∫": "∫"}
_LETTERS = frozenset("∫Σ")
"""Signs that count only with both bounds: a Greek letter may stand without, an integral has them beside it else."""
_FARTHEST = 2.3
"""How far the axis of a bound may be from that of its sign, in heights of the sign's font."""
_NEAREST = 0.5
_CENTRED = 0.5
"""How far beside the middle of its sign a bound may be centred, in heights of the sign's font."""


def join_limits(pool: Pool) -> None:
    """Each sum becomes "Σ_{k=1}^{10}", each limit "lim_(x → 0)", where the bounds stand above and below."""
    signs = pool.all()
    for sign in signs:
        if sign.text in _SUMS:
            _join_sum(pool, sign)
        elif sign.text == "l":
            _join_limit(pool, sign)


def _join_sum(pool: Pool, sign: Sign) -> None:
    low, high = _bound(pool, [sign], 1), _bound(pool, [sign], -1)
    if not (low and high) if sign.text in _LETTERS else not (low or high):
        return
    text = _SUMS[sign.text]
    text += f"_{{{inner_text(low).text.replace(' ', '')}}}" if low else ""
    text += f"^{{{inner_text(high).text.replace(' ', '')}}}" if high else ""
    parts = [sign, *low, *high]
    whole = built(text, parts, sign.axis, sign.size, "large")
    # A bound may be wider than its sign; the row goes on beside the sign.
    pool.replace(parts, replace(whole, left=sign.left, right=sign.right))


def _join_limit(pool: Pool, first: Sign) -> None:
    word = [first]
    for letter in "im":
        reach = 0.1 * first.size
        window = pool.near(word[-1].right - reach, word[-1].right + first.size, first.axis - reach, first.axis + reach)
        found = [sign for sign in window if sign.text == letter and abs(sign.left - word[-1].right) < reach]
        if not found:
            return
        word.append(found[0])
    below = _bound(pool, word, 1)
    if below:
        parts = [*word, *below]
        whole = built(f"lim_({inner_text(below).text})", parts, first.axis, first.size, "large")
        pool.replace(parts, replace(whole, left=first.left, right=word[-1].right))


def _bound(pool: Pool, of: Sequence[Sign], side: int) -> list[Sign]:
    """The small signs of one row above (-1) or below (1), centred."""
    left, right = of[0].left, of[-1].right
    middle, size, axis = (left + right) / 2, of[0].size, of[0].axis
    nearest = max(_NEAREST * size, (of[0].bottom - of[0].top) / 2 * 0.7 if of[0].shape == "large" else 0.0)
    top, bottom = sorted((axis + side * nearest, axis + side * _FARTHEST * size))
    small = [sign for sign in pool.near(middle - 4 * size, middle + 4 * size, top, bottom) if sign.size < 0.86 * size]
    if not small:
        return []
    closest = min(small, key=lambda sign: (abs(sign.axis - axis), sign.key))
    row = sorted((sign for sign in small if abs(sign.axis - closest.axis) < 0.35 * sign.size), key=lambda one: one.key)
    groups: list[list[Sign]] = []
    for sign in row:
        if groups and sign.left - groups[-1][-1].right < 0.45 * sign.size:
            groups[-1].append(sign)
        else:
            groups.append([sign])
    for group in groups:
        if abs((group[0].left + group[-1].right) / 2 - middle) < _CENTRED * size:
            return group
    return []
