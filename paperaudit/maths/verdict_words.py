"""Answers that are words: no solution, infinitely many, yes and no, proved."""

import re
from typing import Literal, TypeAlias

VerdictWord: TypeAlias = Literal["no solution", "infinitely many solutions", "yes", "no", "proved"]

_WORDS: dict[str, VerdictWord] = {
    **dict.fromkeys(
        (
            "no solution",
            "no solutions",
            "none",
            "no real solution",
            "no real solutions",
            "no roots",
            "no real roots",
            "there is no solution",
            "there are no solutions",
            "has no solution",
            "no answer",
            "∅",
            "impossible",
            "inconsistent",
            "undefined",
        ),
        "no solution",
    ),
    **dict.fromkeys(
        (
            "infinitely many",
            "infinitely many solutions",
            "infinite solutions",
            "an infinite number of solutions",
            "infinite number of solutions",
            "there are infinitely many solutions",
            "all real numbers",
            "all numbers",
            "any number",
            "any real number",
            "every number",
            "all values",
            "all values of x",
            "any value",
            "identity",
            "an identity",
            "true for all values",
            "true for all values of x",
            "always true",
            "identity: all real numbers",
            "dependent",
            "x ∈ ℝ",
        ),
        "infinitely many solutions",
    ),
    **dict.fromkeys(("yes", "true", "correct", "it is", "they are", "it does", "they do"), "yes"),
    **dict.fromkeys(("no", "false", "incorrect", "it is not", "they are not", "it does not", "they do not"), "no"),
    **dict.fromkeys(
        ("proved", "shown", "proof", "proven", "as required", "qed", "q.e.d", "see proof", "hence proved"), "proved"
    ),
}
_PROPERTIES = frozenset(
    {
        "parallel",
        "perpendicular",
        "collinear",
        "similar",
        "congruent",
        "isosceles",
        "equilateral",
        "right-angled",
        "parallelogram",
        "rectangle",
        "rhombus",
        "square",
        "kite",
        "trapezium",
        "equal",
        "∥",
        "⊥",
        "≡",
        "∼",
    }
)
_BECAUSE = re.compile(r"\s*(?:;|,|\(|\bbecause\b|\bsince\b|\bas\b(?! required)).*", re.DOTALL)


def verdict_word(text: str) -> VerdictWord | None:
    """The answer that words stand for, or None where they are something else: a number, a sentence.

    >>> verdict_word("Infinitely many solutions."), verdict_word("not parallel"), verdict_word("17")
    ('infinitely many solutions', 'no', None)
    """
    plain = re.sub(r"\s+", " ", text).strip().rstrip(".!").casefold()
    for candidate in (plain, _BECAUSE.sub("", plain)):
        if candidate in _WORDS:
            return _WORDS[candidate]
    return _about_a_property(plain)


def _about_a_property(plain: str) -> VerdictWord | None:
    """Yes or no from a sentence about a property: "AB and CD are parallel", "not parallel", "AB ∦ CD"."""
    claim = _BECAUSE.sub("", plain)
    if "∦" in claim:
        return "no"
    if not any(word in _PROPERTIES or word.rstrip("s") in _PROPERTIES for word in claim.split()):
        return None
    return "no" if re.search(r"\b(?:not|no|isn't|aren't|never)\b", claim) else "yes"
