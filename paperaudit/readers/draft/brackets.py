"""Tall brackets: put together from pieces, round columns of numbers, before the equations of a system."""

import itertools
from collections.abc import Sequence
from dataclasses import replace

from paperaudit.readers.draft.linear import inner_text
from paperaudit.readers.draft.pool import Pool
from paperaudit.readers.draft.sign import Sign, around, built

_PIECES = {
    **dict.fromkeys("⎛⎜⎝", "("),
    **dict.fromkeys("⎞⎟⎠", ")"),
    **dict.fromkeys("⎡⎢⎣", "["),
    **dict.fromkeys("⎤⎥⎦", "]"),
    **dict.fromkeys("⎧⎨⎩⎪", "{"),
    **dict.fromkeys("⎫⎬⎭", "}"),
}
_CLOSING = {"(": ")", "[": "]", "{": "}", "⟨": "⟩"}
_WIDEST = 320.0
"""Points between two brackets that belong together."""
_MOST = 1500
"""Brackets of a region behind which columns are looked for."""
_USUAL_REACH = 1.1
_LARGER_REACH = 3.5
"""How far from its middle a bracket of the usual width and a wider one may have rows, in heights of its font."""
_EVEN = 0.3
"""By how much rows in a bracket may lie unevenly about its middle, in heights of their font."""
_ROWS_APART = 1.9
"""How far the rows in a bracket may be apart, in heights of their font."""
_COLUMNS_APART = 0.8
"""A gap that parts columns, in heights of the font."""
_SYSTEM_ENDS = 2.6
"""A gap through all rows that ends a system, in heights of the font."""
_USUAL_WIDTH = 0.42
"""A bracket wider than this, in heights of its font, has been made larger."""


def joined_pieces(signs: Sequence[Sign]) -> list[Sign]:
    """The signs with the pieces of tall brackets put together."""
    whole = [replace(sign, text=_PIECES[sign.text], shape="piece") if sign.text in _PIECES else sign for sign in signs]
    pieces = sorted(
        (sign for sign in whole if sign.shape == "piece"), key=lambda one: (one.text, round(one.left), one.top)
    )
    joined: list[list[Sign]] = []
    for piece in pieces:
        last = joined[-1][-1] if joined else None
        beside = last is not None and last.text == piece.text and abs(last.middle - piece.middle) < 0.4 * piece.size
        if last is not None and beside and piece.top - last.bottom < 0.9 * piece.size:
            joined[-1].append(piece)
        else:
            joined.append([piece])
    return [sign for sign in whole if sign.shape != "piece"] + [_one(group) for group in joined]


def _one(pieces: Sequence[Sign]) -> Sign:
    _, top, _, bottom = around(pieces)
    return built(pieces[0].text, pieces, (top + bottom) / 2, pieces[0].size, "large")


def join_columns(pool: Pool) -> None:
    """Each bracket before several rows becomes one sign with them: "(3; −2)", or "x + y = 5; x − y = 1" behind {."""
    openings = [sign for sign in pool.all() if sign.text in _CLOSING]
    for opening in reversed(openings[:_MOST]):  # the inner ones first
        if _holds_one_row(pool, opening):
            continue
        closing = _closing(pool, opening)
        if closing is not None:
            _join_column(pool, opening, closing)
        elif opening.text == "{":
            _join_system(pool, opening)


def _holds_one_row(pool: Pool, opening: Sign) -> bool:
    """Whether a bracket of the usual size has its row right behind it, or stands over one like it: marks do."""
    if opening.shape != "large" and _has_one_like_it(pool, opening):
        return True
    reach = 0.12 * opening.size
    window = pool.near(opening.right, opening.right + opening.size, opening.axis - reach, opening.axis + reach)
    closing = _CLOSING[opening.text]
    near = (sign for sign in window if sign.text != closing and abs(sign.axis - opening.axis) < 0.06 * sign.size)
    beside = next((sign for sign in near if sign.left - opening.right < 0.3 * sign.size), None)
    return beside is not None and not _is_tall(opening, beside.size)


def _has_one_like_it(pool: Pool, opening: Sign) -> bool:
    """Whether the same bracket opens right above or below; the rows of a tall one have none."""
    reach, near = _ROWS_APART * opening.size, 0.1 * opening.size
    column = pool.near(opening.left - near, opening.right + near, opening.axis - reach, opening.axis + reach)
    alike = (sign for sign in column if sign is not opening and sign.text == opening.text)
    return any(abs(sign.left - opening.left) < near and abs(sign.size - opening.size) < near for sign in alike)


def _closing(pool: Pool, opening: Sign) -> Sign | None:
    """The bracket at the same height that closes `opening`."""
    reach = 0.2 * opening.size
    row = sorted(
        (
            sign
            for sign in pool.near(opening.right, opening.right + _WIDEST, opening.axis - reach, opening.axis + reach)
            if sign.text in (opening.text, _CLOSING[opening.text]) and sign is not opening
        ),
        key=lambda sign: sign.key,
    )
    depth = 1
    for sign in row:
        depth += 1 if sign.text == opening.text else -1
        if depth == 0:
            return sign
    return None


def _join_column(pool: Pool, opening: Sign, closing: Sign) -> None:
    inside = [
        sign for sign in _window(pool, opening, closing.left) if sign.left > opening.left and sign.right < closing.right
    ]
    rows = _own_rows(pool, _even_rows(opening, inside), opening, closing)
    if len(rows) < 2:
        return
    text = "; ".join(_columns(row) for row in rows)
    size = max(sign.size for row in rows for sign in row)
    parts = [opening, *(sign for row in rows for sign in row), closing]
    pool.replace(parts, built(f"{opening.text}{text}{closing.text}", parts, opening.axis, size, "bracketed"))


def _join_system(pool: Pool, opening: Sign) -> None:
    """Rows behind a curly bracket that nothing closes, up to where the row of the bracket goes on."""
    window = _window(pool, opening, opening.right + _WIDEST)
    level = min(
        (sign.left for sign in window if abs(sign.axis - opening.axis) < 0.15 * sign.size),
        default=opening.right + _WIDEST,
    )
    if level - opening.right > 1.2 * opening.size:  # the row that the bracket stands in goes on behind the system
        window = [sign for sign in window if sign.right < level + 1]
    rows = _own_rows(pool, _even_rows(opening, window), opening, None)
    rows = _up_to_gap(rows, opening.right)
    if len(rows) < 2 or not all(rows):
        return
    text = "; ".join(_columns(row) for row in rows)
    parts = [opening, *(sign for row in rows for sign in row)]
    size = max(sign.size for row in rows for sign in row)
    pool.replace(parts, built(text, parts, opening.axis, size, "bracketed"))


def _own_rows(pool: Pool, rows: list[list[Sign]], opening: Sign, closing: Sign | None) -> list[list[Sign]]:
    """The rows without those of the lines of print above and below."""
    while len(rows) > 1 and any(_goes_on(pool, row, opening, closing) for row in (rows[0], rows[-1])):
        rows = rows[1:-1]
    return rows


def _goes_on(pool: Pool, row: Sequence[Sign], opening: Sign, closing: Sign | None) -> bool:
    """Whether a row inside the brackets is part of a line of print that goes on outside."""
    size, axis = row[0].size, row[0].axis
    ends = [(opening.left - 1.5 * size, opening.left)]
    if closing is not None:
        ends.append((closing.right, closing.right + 1.5 * size))
    return any(
        0.8 * size < sign.size < 1.25 * size
        for left, right in ends
        for sign in pool.near(left, right, axis - 0.15 * size, axis + 0.15 * size)
    )


def _window(pool: Pool, opening: Sign, end: float) -> list[Sign]:
    """What may stand behind a bracket, as far up and down as the bracket can reach."""
    if opening.shape == "large":
        reach = (opening.bottom - opening.top) / 2 + 0.2 * opening.size
    else:
        reach = (_USUAL_REACH if opening.width <= _USUAL_WIDTH * opening.size else _LARGER_REACH) * opening.size
    return list(pool.near(opening.right, end, opening.axis - reach, opening.axis + reach))


def _even_rows(opening: Sign, inside: Sequence[Sign]) -> list[list[Sign]]:
    """The rows that lie evenly about the middle of a bracket, from top to bottom; one row where there are no more."""
    axis = opening.axis
    nearest = min(inside, key=lambda sign: (abs(sign.axis - axis), sign.key), default=None)
    if nearest is None:
        return []
    reach = abs(nearest.axis - axis) + 0.5 * nearest.size
    size = max(sign.size for sign in inside if abs(sign.axis - axis) <= reach)
    rows = _clustered(inside, size)
    axes = [_axis(row) for row in rows]
    middle = [row for row, at in zip(rows, axes, strict=True) if abs(at - axis) < 0.2 * size]
    if middle and not _is_tall(opening, size):
        return middle
    above = [(axis - at, row) for row, at in zip(rows, axes, strict=True) if at < axis and row not in middle]
    below = [(at - axis, row) for row, at in zip(rows, axes, strict=True) if at > axis and row not in middle]
    above.sort(key=lambda one: one[0])
    below.sort(key=lambda one: one[0])
    even: list[list[Sign]] = list(middle)
    reach = 0.0
    for (up, upper), (down, lower) in zip(above, below, strict=False):
        step = max(up, down) - reach
        first = not reach and not middle
        if abs(up - down) > _EVEN * size or step > (0.5 if first else 1) * _ROWS_APART * size:
            break
        even = [upper, *even, lower]
        reach = (up + down) / 2
    return even


def _is_tall(opening: Sign, size: float) -> bool:
    made_larger = opening.shape == "glyph" and opening.width > _USUAL_WIDTH * opening.size and opening.text != "{"
    return opening.bottom - opening.top > 1.7 * size or opening.size > 1.4 * size or made_larger


def _clustered(signs: Sequence[Sign], size: float) -> list[list[Sign]]:
    """Rows with their powers and indices, by the axes of the signs that are as high as `size`."""
    rows: list[list[Sign]] = []
    for sign in sorted((one for one in signs if one.size > 0.8 * size), key=lambda one: (one.axis, one.key)):
        if rows and sign.axis - _axis(rows[-1]) < 0.35 * size:
            rows[-1].append(sign)
        else:
            rows.append([sign])
    for sign in signs:
        if sign.size <= 0.8 * size and rows:
            nearest = min(rows, key=lambda row: abs(_axis(row) - sign.axis))
            if abs(_axis(nearest) - sign.axis) < 0.75 * size:
                nearest.append(sign)
    return rows


def _axis(row: Sequence[Sign]) -> float:
    return row[0].axis


def _columns(row: Sequence[Sign]) -> str:
    """A row's entries, parted by commas where there are several columns."""
    ordered = sorted(row, key=lambda sign: sign.key)
    entries: list[list[Sign]] = [[ordered[0]]]
    for before, sign in itertools.pairwise(ordered):
        if sign.left - before.right > _COLUMNS_APART * max(sign.size, before.size):
            entries.append([])
        entries[-1].append(sign)
    return ", ".join(inner_text(entry).text for entry in entries)


def _up_to_gap(rows: Sequence[Sequence[Sign]], start: float) -> list[list[Sign]]:
    """The rows up to where a wide gap goes through all of them; conditions stand behind a gap in one of them."""
    kept: list[list[Sign]] = [[] for _ in rows]
    end = start
    for sign, at in sorted(
        ((sign, at) for at, row in enumerate(rows) for sign in row), key=lambda one: (one[0].key, one[1])
    ):
        if sign.left - end > _SYSTEM_ENDS * sign.size:
            break
        kept[at].append(sign)
        end = max(end, sign.right)
    return kept
