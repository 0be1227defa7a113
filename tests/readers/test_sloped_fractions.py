"""Fractions set with a raised and a lowered run beside a slash: what the text does not keep is a doubt."""

import pytest

from paperaudit.readers.draft.sign import Sign
from paperaudit.readers.draft.slashed import slope_is_doubtful


def signs(printed: str) -> list[Sign]:
    """Signs in a row; what stands between ‹ and › is small."""
    found: list[Sign] = []
    size, left = 12.0, 0.0
    for sign in printed:
        if sign in "‹›":
            size = 9.0 if sign == "‹" else 12.0
        elif sign != " ":
            found.append(Sign(sign, left, left + size / 2, 0.0, size, size / 2, size))
        left += 6
    return found


@pytest.mark.parametrize(
    ("printed", "text", "doubtful"),
    [
        ("Solve for x: ‹x + 1›⁄‹2› = 5", "Solve for x: x + ¹⁄₂ = 5", True),
        ("Simplify ‹x2 − 9›⁄‹x + 3›", "Simplify x² − 9⁄_(x + 3)", True),
        ("Calculate 1‹1›⁄‹2› now", "Calculate 11⁄₂ now", True),
        ("Calculate 1‹1›⁄‹2› now", "Calculate 1¹⁄₂ now", False),
        ("Calculate ‹3›⁄‹4› now", "Calculate³⁄₄ now", False),
        ("Calculate ‹3›⁄‹4› now", "Calculate 3⁄₄ now", False),
        ("Simplify ‹(x2 − 9)›⁄‹(x + 3)›", "Simplify (x² − 9)⁄_(x + 3)", False),
        ("Simplify x2 / (x + 3)", "Simplify x² / (x + 3)", False),
    ],
)
def test_what_the_text_does_not_keep_is_a_doubt(printed: str, text: str, doubtful: bool) -> None:
    assert slope_is_doubtful(text, signs(printed)) is doubtful
