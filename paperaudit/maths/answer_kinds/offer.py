"""The better of several packs as an answer: 750 g, the 750 g pack, pack B, they cost the same."""

import re

from paperaudit.errors import ExpressionNotRead
from paperaudit.maths.parse import read_expression
from paperaudit.maths.same_value import number_of
from paperaudit.maths.units import conversion
from paperaudit.model.ask import Ask
from paperaudit.model.derivation import Agreement, Answer, Comparison
from paperaudit.model.expression import Expression, Measured
from paperaudit.model.reckoning import Reckoning

_SAME = re.compile(r"\b(?:same|equal|equally|neither|no difference)\b", re.IGNORECASE)
_WORDS = re.compile(
    r"^(?:the |a |an )|\b(?:of|pack|packet|box|bottle|bag|tin|jar|can|tube|carton|size|one|is|the|better|best|buy|value"
    r"|for|money|cheaper|cheapest|deal|offer)\b|[.:]$",
    re.IGNORECASE,
)
_PRICE = re.compile(r",? ?(?:for|at|costing|\() ?([R$£€₦₹] ?\d+(?:\.\d+)?)\)?")
_LABEL = re.compile(r"(?:the |an? )?(?:(?P<kind>[a-z]+) )?(?P<letter>[A-Z])(?: is .*)?\.?", re.IGNORECASE)


def compare_offer(stated: str, derived: tuple[Answer, ...], ask: Ask) -> Comparison:
    """A pack by its name or its size; anything that names neither cannot be told."""
    answer = derived[0]
    different = Comparison(Agreement.DIFFERS, f"the answer is {answer.text}")
    if answer.value is None or _SAME.search(stated):
        same = answer.value is None and _SAME.search(stated) is not None
        return Comparison(Agreement.AGREES) if same else different
    if answer.letter:
        named = _named(stated, answer.letter)
        if named is not None:
            return Comparison(Agreement.AGREES) if named else different
    priced, stated = _PRICE.search(stated), _PRICE.sub("", stated)
    words = _WORDS.sub(" ", _WORDS.sub(" ", stated.strip()))
    try:
        value = read_expression(" ".join(re.sub(r"(?<=[a-z0-9²³]) [a-z]{3,}$", "", words.strip()).split()))
    except ExpressionNotRead as error:
        return Comparison(Agreement.CANNOT_TELL, f"the stated answer was not read as a pack: {error}")
    if not _equal(value, answer.value):
        return different
    if priced is not None and not _is_its_price(priced[1], answer.value, ask):
        return Comparison(Agreement.CANNOT_TELL, f"it names another price than that of {answer.text}")
    return Comparison(Agreement.AGREES)


def _is_its_price(price: str, size: Expression, ask: Ask) -> bool:
    """Whether a price is the one that the paper has for the pack of this size."""
    if not isinstance(ask.task, Reckoning):
        return False
    packs = zip(ask.task.all_of("size"), ask.task.all_of("price"), strict=False)
    return any(_equal(one, size) and _equal(read_expression(price), paid) for one, paid in packs)


def _named(stated: str, label: str) -> bool | None:
    """Whether a text names the pack of a label; None where it names none."""
    text = " ".join(stated.strip().rstrip(".").split()).casefold()
    if text in (label.casefold(), f"the {label.casefold()}"):
        return True
    found = _LABEL.fullmatch(stated.strip())
    if found is None or not re.search(r" [A-Z]$", label):
        return None
    return found["letter"].upper() == label[-1]


def _equal(one: Expression, other: Expression) -> bool:
    (first, unit), (second, own) = (_bare(value) for value in (one, other))
    scale = conversion(unit, own) if unit and own else 1
    return scale is not None and first is not None and second is not None and first * scale == second


def _bare(value: Expression):  # type: ignore[no-untyped-def]
    amount, unit = (value.amount, value.unit) if isinstance(value, Measured) else (value, "")
    return number_of(amount), unit
