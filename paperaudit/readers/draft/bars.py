"""Fractions, roots and lines over letters: what stands above and below the rules of a region becomes one sign each."""

from collections.abc import Sequence
from dataclasses import replace
from statistics import median

from paperaudit.readers.draft.accents import STROKE
from paperaudit.readers.draft.grouped import as_fraction
from paperaudit.readers.draft.linear import inner_text
from paperaudit.readers.draft.pool import Pool
from paperaudit.readers.draft.root_signs import RootSigns, root_text
from paperaudit.readers.draft.rules import Rule, by_level
from paperaudit.readers.draft.sign import AXIS, Shape, Sign, around, built, has_cells

_GAP = 0.7
"""Ink farther from a fraction bar than this, in heights of its font, does not stand on it."""
_OVERHANG = 0.3
"""How far ink may stick out beyond the bar, in heights of its font."""
_BELOW = 0.63
"""How far below a bar that stands alone its divisor may begin, in heights of the font."""
_STRETCHED = 1.3
"""A sign this much larger than most of its region counts as one of this size."""
_JOINS = 0.2
"""Share of its ink that must be level with what stands on a bar for a sign to stand there too."""
_FEW = 8
"""Signs of which it is asked whether all are powers of something farther from the bar."""
_LARGER = 1.8
"""How much larger than others on its bar a sign may be: what they are powers and indices of, where these come first."""
_BEYOND = 0.04
"""How far beyond the bar the middle of a sign may be that stands on it, in heights of its font."""
_WIDER = 1.3
"""How much longer than what stands on it a bar may be, in heights of the font."""
_BESIDE = 1.2
"""How far beside a bar its row goes on, in heights of the font."""
_TALLEST = 70.0
"""Points above and below a bar within which its numbers are looked for."""
_OVERLINE = 0.3
"""Ink this near below a rule may have it as a bar over letters, in heights of its font."""
_CENTRED = 0.4
"""How far beside the middle of a bar that stands alone its numbers may be centred, in heights of the font."""


class Bars:
    """Works through the rules of a region, from the shortest to the longest, so that the inner ones come first."""

    def __init__(self, pool: Pool, rules: Sequence[Rule]) -> None:
        self._pool = pool
        # Brackets that were stretched to a height are in larger fonts than the text that they go round.
        self._largest = _STRETCHED * median([sign.size for sign in pool.all()] or [0.0])
        self._levels = by_level(rules)
        self._roots = RootSigns(pool, self._levels)

    def work_in(self, rules: Sequence[Rule]) -> None:
        """Each rule becomes a root, a fraction, a bar over letters, or is none of these and is left alone."""
        for rule in sorted(rules, key=lambda one: (round(one.width, 1), self._roots.has_sign(one), one.y, one.left)):
            _ = self._angle(rule) or self._root(rule) or self._fraction(rule) or self._overline(rule)

    def _angle(self, rule: Rule) -> bool:
        """The sign ∠ that TeX makes of a slash and a rule."""
        window = self._pool.near(rule.left - 8, rule.right, rule.y - 8, rule.y + 2)
        slash = [sign for sign in window if sign.text == STROKE and rule.left - 2 < sign.left < rule.right]
        if len(slash) != 1 or not 0.4 < rule.width / slash[0].size < 1.4:
            return False
        size = slash[0].size / 0.73  # the slash is in the size of a power
        axis = rule.y - AXIS * size
        sign = built("∠", slash, axis, size, "glyph")
        self._pool.replace(slash, replace(sign, left=rule.left, right=rule.right, top=axis - size / 2, bottom=rule.y))
        return True

    def _root(self, rule: Rule) -> bool:
        hook = self._roots.sign_of(rule)
        if hook is None and rule.hook is None:
            return False
        left = hook.left if hook is not None else rule.hook or rule.left
        inside = [one for one in self._stack(rule, 1) if one is not hook and not self._roots.has_lower_rule(one, rule)]
        if not inside:
            return False
        content = inner_text(inside)
        index = self._roots.index(left, rule, content.size, hook)
        text = root_text(inner_text(index).text if index else "", content.text)
        doubts = () if content.rows == 1 else ("what stands under a root has several rows",)
        parts = [*inside, *index, *([hook] if hook is not None else [])]
        sign = built(text, parts, content.axis, content.size, "root", doubts)
        # The sign of a root hangs from its baseline in some fonts; its ink begins at the rule in all of them.
        bottom = max(part.bottom for part in inside)
        self._pool.replace(
            parts, replace(sign, left=left, right=max(rule.right, sign.right), top=rule.y, bottom=bottom)
        )
        return True

    def _stack(self, rule: Rule, side: int) -> list[Sign]:
        """What stands on the rule (`side` -1) or hangs below it (1), within its ends."""
        top, bottom = (rule.y, rule.y + _TALLEST) if side > 0 else (rule.y - _TALLEST, rule.y)
        # A long fraction is lower than its own numerator's axis by its descenders only, so axes are on their side.
        window = list(self._pool.near(rule.left - 3, rule.right + 3, top, bottom))
        window = [sign for sign in window if self._within(rule, sign)]
        close = [sign for sign in window if self._gap(rule, sign, side) < _GAP * self._size(sign)]
        if not close:
            return []
        near = [min(close, key=lambda sign: (self._gap(rule, sign, side), sign.key))]
        while True:
            upper = min(min(sign.top, sign.axis - 0.5 * sign.size) for sign in near)
            lower = max(max(sign.bottom, sign.axis + AXIS * sign.size) for sign in near)
            size = _LARGER * max(self._size(sign) for sign in near)
            held = set(near)
            more = [
                sign
                for sign in window
                if sign not in held
                and (
                    (
                        self._size(sign) < size
                        and min(lower, sign.bottom) - max(upper, sign.top) > _JOINS * (sign.bottom - sign.top)
                    )
                    or (len(near) <= _FEW and any(_may_be_power(other, sign) for other in near))
                )
            ]
            if not more:
                return near
            near += more

    def _size(self, sign: Sign) -> float:
        return min(sign.size, self._largest)

    @staticmethod
    def _gap(rule: Rule, sign: Sign, side: int) -> float:
        return rule.y - sign.bottom if side < 0 else sign.top - rule.y

    @staticmethod
    def _within(rule: Rule, sign: Sign) -> bool:
        return rule.left - _BEYOND * sign.size <= sign.middle <= rule.right + _BEYOND * sign.size

    def _fraction(self, rule: Rule) -> bool:
        if rule.framed:
            return False
        above, below = self._stack(rule, -1), self._stack(rule, 1)
        if self._is_of_table(rule, above, -1) or self._is_of_table(rule, below, 1):
            return False
        if not above or not below or not self._fits(rule, above) or not self._fits(rule, below):
            return False
        size = max(sign.size for sign in (*above, *below))
        if any(has_cells(row, size) for row in (above, below)):
            return False
        widest = max(around(above)[2] - around(above)[0], around(below)[2] - around(below)[0])
        if rule.width > widest + _WIDER * size:
            return False
        beside = self._goes_on_beside(rule, size)
        if not beside and not (self._stands_alone(rule, above, -1) and self._stands_alone(rule, below, 1)):
            return False
        if not beside and self._is_column_sum(rule, above):
            return False
        sure = beside or self._balanced(rule, above, below) or self._is_raised(rule, size)
        self._set_fraction(rule, above, below, sure)
        return True

    def _is_column_sum(self, rule: Rule, above: Sequence[Sign]) -> bool:
        """Whether a number stands right over the row on the rule: numbers written one below the other to be added."""
        row = inner_text(above)
        aside, top, bottom = 2 * row.size, row.axis - 1.7 * row.size, row.axis - 0.9 * row.size
        higher = list(self._pool.near(rule.left - aside, rule.right + aside, top, bottom))
        aligned = bool(higher) and abs(max(sign.right for sign in higher) - around(above)[2]) < 0.3 * row.size
        return aligned and all(
            rule.left < sign.middle < rule.right and (sign.text.isdecimal() or sign.text in ".,") for sign in higher
        )

    def _is_of_table(self, rule: Rule, row: Sequence[Sign], side: int) -> bool:
        """Whether another rule as long as this one has but one row between them: lines of a table."""
        if not row:
            return False
        size = max(sign.size for sign in row)
        top, bottom = sorted((int(rule.y) + side, int(rule.y + side * 3 * size)))
        for y in range(top, bottom + 1):
            for other in self._levels.get(y, ()):
                same = abs(other.left - rule.left) < 1 and abs(other.right - rule.right) < 1
                if same and (other.y - rule.y) * side > 0.5 * size and not self._roots.has_sign(other):
                    between = self._pool.near(rule.left, rule.right, *sorted((rule.y, other.y)))
                    return set(between) <= set(row)
        return False

    def _set_fraction(self, rule: Rule, above: list[Sign], below: list[Sign], sure: bool) -> None:
        number, divisor = inner_text(above), inner_text(below)
        doubts = [] if number.rows == divisor.rows == 1 else ["several rows stand over or under one fraction bar"]
        if not sure:
            doubts.append("a line between two rows may be a fraction bar or an underline")
        text = as_fraction(number.text, divisor.text)
        plain = number.text.isdecimal() and divisor.text.isdecimal()
        shape: Shape = "number fraction" if plain else "fraction"
        sign = built(text, [*above, *below], rule.y, max(number.size, divisor.size), shape, doubts)
        self._pool.replace([*above, *below], _reaching(sign, left=rule.left, right=rule.right))

    @staticmethod
    def _fits(rule: Rule, signs: Sequence[Sign]) -> bool:
        left, _, right, _ = around(signs)
        size = max(sign.size for sign in signs)
        return left >= rule.left - _OVERHANG * size and right <= rule.right + _OVERHANG * size

    def _goes_on_beside(self, rule: Rule, size: float) -> bool:
        """Whether something stands left or right of the bar in the row of which the bar is the middle."""
        ends = ((rule.left - _BESIDE * size - 8, rule.left), (rule.right, rule.right + _BESIDE * size + 8))
        for start, end in ends:
            for sign in self._pool.near(start, end, rule.y - 0.2 * size, rule.y + 0.2 * size):
                gap = max(rule.left - sign.right, sign.left - rule.right)
                if gap < _BESIDE * size and sign.size > 0.8 * size and abs(sign.axis - rule.y) < 0.14 * sign.size:
                    return True
        return False

    def _is_raised(self, rule: Rule, size: float) -> bool:
        """Whether the bar is that of a power: it stands higher right behind something larger."""
        behind = self._pool.near(rule.left - 8, rule.left + 1, rule.y, rule.y + 12)
        return any(
            size < 0.88 * sign.size
            and 0.1 < (sign.axis - rule.y) / sign.size < 0.9
            and -0.1 < (rule.left - sign.right) / sign.size < 0.25
            for sign in behind
        )

    def _stands_alone(self, rule: Rule, signs: Sequence[Sign], side: int) -> bool:
        """Whether the row above or below the bar ends where the bar does, is centred on it and near to it."""
        row = inner_text(signs)
        left, _, right, _ = around(signs)
        if abs((left + right) / 2 - (rule.left + rule.right) / 2) > _CENTRED * row.size:
            return False
        if side > 0 and min(min(sign.top, sign.axis - 0.47 * sign.size) for sign in signs) - rule.y > _BELOW * row.size:
            return False
        reach = 0.15 * row.size
        for start, end in ((left - 1.5 * row.size, left), (right, right + 1.5 * row.size)):
            for sign in self._pool.near(start, end, row.axis - reach, row.axis + reach):
                other_size = not 0.8 * row.size < sign.size < 1.25 * row.size
                if sign in signs or other_size or sign.text == "√":
                    continue
                if max(left - sign.right, sign.left - right) > 0.6 * row.size:
                    continue
                if not self._under_another(rule, sign):
                    return False
        return True

    def _under_another(self, rule: Rule, sign: Sign) -> bool:
        """Whether a sign stands on another bar of the same row, as in a/b + c/d."""
        return any(
            other is not rule and other.left - 1 <= sign.middle <= other.right + 1
            for y in range(int(rule.y) - 1, int(rule.y) + 2)
            for other in self._levels.get(y, ())
        )

    @staticmethod
    def _balanced(rule: Rule, above: Sequence[Sign], below: Sequence[Sign]) -> bool:
        """Whether both stand about equally near to the bar; a heading's underline is much nearer to its words."""
        over = rule.y - inner_text(above).baseline
        size = max(sign.size for sign in above)
        return over > 0.16 * size

    def _overline(self, rule: Rule) -> bool:
        if rule.framed:
            return False
        below = [sign for sign in self._stack(rule, 1) if sign.top - rule.y < _OVERLINE * sign.size]
        if not below or self._stack_touches(rule):
            return False
        left, _, right, _ = around(below)
        size = max(sign.size for sign in below)
        if max(abs(left - rule.left), abs(right - rule.right)) > 0.22 * size:
            return False
        row = inner_text(below)
        text = row.text
        if text.isdecimal():
            text = text[0] + "\u0307" + (text[1:-1] + text[-1] + "\u0307" if len(text) > 1 else "")
        elif len(text) == 1 and text.isalpha():
            text += "\u0304"
        elif not (text.isalpha() and text.isupper()):
            return False
        self._pool.replace(below, _reaching(built(text, below, row.axis, row.size, "glyph"), top=rule.y))
        return True

    def _stack_touches(self, rule: Rule) -> bool:
        """Whether something above the rule has it as its underline."""
        return any(self._gap(rule, sign, -1) < 0.3 * sign.size for sign in self._stack(rule, -1))


def _may_be_power(sign: Sign, of: Sign) -> bool:
    """Whether a sign is small, raised, and right behind another."""
    lift = (of.baseline - sign.baseline) / of.size
    behind = (sign.left - of.right) / of.size
    return sign.size < 0.88 * of.size and 0.1 < lift < 0.62 and -0.1 < behind < 0.3


def _reaching(sign: Sign, left: float | None = None, right: float | None = None, top: float | None = None) -> Sign:
    """The sign with its ink as far as the rule goes."""
    return Sign(
        sign.text,
        min(sign.left, left if left is not None else sign.left),
        max(sign.right, right if right is not None else sign.right),
        min(sign.top, top if top is not None else sign.top),
        sign.bottom,
        sign.axis,
        sign.size,
        sign.font,
        sign.shape,
        sign.italic,
        sign.glyphs,
        sign.doubts,
    )
