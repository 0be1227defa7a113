"""The signs of roots: which rule belongs to which sign, and the small number in a sign's arm."""

from collections.abc import Mapping, Sequence

from paperaudit.readers.draft.grouped import as_radicand
from paperaudit.readers.draft.pool import Pool
from paperaudit.readers.draft.rules import Rule
from paperaudit.readers.draft.sign import Sign

_MEETS = 0.15
"""How near to the sign of a root its rule begins, in heights of its font."""
_PLAIN = 16.0
"""Points; signs of larger fonts have been stretched."""
_SPAN = 1.9
"""How far above its baseline the sign of a root may have its rule, in heights of its font."""
_INDEX = {"": "√", "2": "√", "3": "∛", "4": "∜"}
_RAISED = str.maketrans("0123456789n", "⁰¹²³⁴⁵⁶⁷⁸⁹ⁿ")


class RootSigns:
    """The signs of the roots of a region, among rules given by their height."""

    def __init__(self, pool: Pool, levels: Mapping[int, Sequence[Rule]]) -> None:
        self._pool = pool
        self._levels = levels

    def has_sign(self, rule: Rule) -> bool:
        """Whether a rule is that of a root."""
        return rule.hook is not None or self.sign_of(rule) is not None

    def sign_of(self, rule: Rule) -> Sign | None:
        """The sign √ at whose right end the rule begins."""
        window = self._pool.near(rule.left - 25, rule.left + 3, rule.y - 12, rule.y + 40)
        found = [
            sign
            for sign in window
            if sign.text == "√"
            and sign.shape != "root"
            and abs(sign.right - rule.left) < _meets(sign)
            and _spans(sign, rule.y)
        ]
        nearest = min(found, key=lambda sign: (sign.baseline, sign.key), default=None)
        return None if nearest is None or self._covered(rule, nearest) else nearest

    def has_lower_rule(self, root: Sign, rule: Rule) -> bool:
        """Whether a sign is that of a root whose own rule lies lower than `rule`: one of a divisor under it."""
        return root.text == "√" and any(
            other.y > rule.y + 0.5 and abs(other.left - root.right) < _meets(root) and _spans(root, other.y)
            for y in range(int(rule.y) + 1, int(root.baseline + 0.2 * root.size) + 1)
            for other in self._levels.get(y, ())
        )

    def _covered(self, rule: Rule, root: Sign) -> bool:
        """Whether a higher rule begins at the root's sign as well: then `rule` is a fraction bar under it."""
        highest = int(root.baseline - _SPAN * root.size) if root.shape != "large" else int(root.top - 2)
        return any(
            other.y < rule.y - 0.5
            and abs(other.left - root.right) < _meets(root)
            and other.right > rule.right - 0.5
            and _spans(root, other.y)
            and not self._of_the_row_above(other, root)
            for y in range(highest, int(rule.y) + 1)
            for other in self._levels.get(y, ())
        )

    def _of_the_row_above(self, rule: Rule, root: Sign) -> bool:
        """Whether a rule begins at the sign of another root, one that stands higher."""
        reach = _meets(root)
        return any(
            sign.text == "√" and sign is not root and abs(sign.right - rule.left) < reach and _spans(sign, rule.y)
            for sign in self._pool.near(
                root.left - reach, root.right + reach, rule.y - root.size, root.axis - 0.4 * root.size
            )
        )

    def index(self, left: float, rule: Rule, size: float, hook: Sign | None) -> list[Sign]:
        """The small number in the arm of a root."""
        window = self._pool.near(left - 0.4 * size, rule.left, rule.y - 0.2 * size, rule.y + 0.8 * size)
        small = (sign for sign in window if sign is not hook and sign.size <= 0.8 * size and sign.text.isalnum())
        return sorted((sign for sign in small if sign.baseline > rule.y + 0.1 * size), key=lambda sign: sign.key)


def _meets(root: Sign) -> float:
    """How near to the sign of a root its rule begins; a sign that was made higher is no wider."""
    return _MEETS * min(root.size, _PLAIN)


def _spans(root: Sign, y: float) -> bool:
    """Whether a rule at `y` may be that of the root's sign."""
    if root.shape == "large":
        return abs(y - root.top) < 2
    return root.baseline - _SPAN * root.size < y < root.baseline + 0.2 * root.size


def root_text(index: str, content: str) -> str:
    """A root on one line.

    >>> root_text("", "x + 1"), root_text("3", "27")
    ('√(x + 1)', '∛27')
    """
    return f"{_INDEX.get(index) or index.translate(_RAISED) + '√'}{as_radicand(content)}"
