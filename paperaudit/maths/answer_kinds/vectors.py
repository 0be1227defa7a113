"""Vectors as answers: (3, −2), [3; −2], ⟨3, −2⟩ or 3i − 2j."""

import re

from paperaudit.errors import ExpressionNotRead
from paperaudit.maths.parse import read_expression
from paperaudit.maths.same_value import same_value
from paperaudit.model.ask import Ask
from paperaudit.model.derivation import Agreement, Answer, Comparison
from paperaudit.model.expression import Expression

_COLUMN = re.compile(r"(?:.*=)?\s*[(\[⟨<]\s*([^(),;\s]+)\s*(?:[,;]|\s|\n)\s*([^(),;\s]+)\s*[)\]⟩>]ᵀ?")
_IJ = re.compile(r"(?:.*=)?\s*([-−–]?\s*[\d./]*)\s*i\s*([-−–+]\s*[\d./]*)\s*j")


def compare_vector(stated: str, derived: tuple[Answer, ...], ask: Ask) -> Comparison:
    """A vector by its two components."""
    text = derived[0].text
    try:
        ours, theirs = _components(text), _components(stated)
    except ExpressionNotRead as error:
        return Comparison(Agreement.CANNOT_TELL, f"the stated answer was not read: {error}")
    same = [same_value(one, other) for one, other in zip(ours, theirs, strict=True)]
    return Comparison(Agreement.AGREES) if all(same) else Comparison(Agreement.DIFFERS, f"the answer is {text}")


def _components(text: str) -> tuple[Expression, Expression]:
    plain = text.strip().rstrip(".")
    column, letters = _COLUMN.fullmatch(plain), _IJ.fullmatch(plain)
    if column is not None:
        return read_expression(column[1]), read_expression(column[2])
    if letters is not None:
        x, y = (_share(part) for part in letters.groups())
        return read_expression(x), read_expression(y)
    raise ExpressionNotRead(f"“{plain}” is not read as a vector", 0, "a vector such as (3, −2)")


def _share(text: str) -> str:
    plain = re.sub(r"\s|\+", "", text)
    return f"{plain}1" if plain in ("", "-", "−", "–") else plain
