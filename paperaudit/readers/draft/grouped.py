"""Brackets that a printed fraction, root or power does without and its linear form needs."""

import re

_NUMBER = r"\d+(?:[.,]\d+)?"
_LETTER = r"(?:[A-Za-zα-ωπ]′?)"
_POWER = r"(?:[⁻]?[⁰¹²³⁴⁵⁶⁷⁸⁹]+|\^[a-z])"
_SIZE = r"(?:[A-Z]′?){2,3}"
"""A length or an area by the letters of its points."""
_WORD = r"[a-z]{3,}"
_CALLED = re.compile(r"(?:sin|cos|tan|cot|sec|cosec|csc|log|ln|lim)(?![a-z])")
_ATOM = re.compile(rf"(?:{_NUMBER}|{_LETTER}{_POWER}?|{_NUMBER}{_POWER}?|{_SIZE}|[½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞]|{_WORD})")
_FACTOR = rf"(?:{_LETTER}[₀-₉]*{_POWER}?|\([^()]*\){_POWER}?|√(?:{_NUMBER}|{_LETTER}|\([^()]*\)))"
_PRODUCT = re.compile(rf"(?:{_NUMBER}{_POWER}?)?(?:\s?{_FACTOR})*|{_SIZE}|{_WORD}")
_POWER_OF_BRACKETS = re.compile(rf"\([^()]*\){_POWER}")
_DERIVATIVE = re.compile("d[A-Za-zθ]?")


def as_fraction(above: str, below: str) -> str:
    """A fraction on one line.

    >>> as_fraction("x + 1", "2x"), as_fraction("2x", "3"), as_fraction("dy", "dx"), as_fraction("6a", "2b")
    ('(x + 1)/(2x)', '2x/3', 'dy/dx', '(6a)/(2b)')
    """
    if _DERIVATIVE.fullmatch(above) and _DERIVATIVE.fullmatch(below) and len(below) == 2:
        return f"{above}/{below}"
    over, under = as_numerator(above), as_denominator(below)
    alike = under != below and over == above and not (in_brackets(above) or _is_root(above) or _ATOM.fullmatch(above))
    return f"({over})/{under}" if alike and not _POWER_OF_BRACKETS.fullmatch(over) else f"{over}/{under}"


def as_numerator(text: str) -> str:
    """A numerator with the brackets that it needs before a slash.

    >>> [as_numerator(text) for text in ("x + 1", "2x", "(x + 1)", "−b", "sin x")]
    ['(x + 1)', '2x', '(x + 1)', '(−b)', '(sin x)']
    """
    if in_brackets(text) or _is_root(text) or (_PRODUCT.fullmatch(text) and not _CALLED.search(text)):
        return text
    return f"({text})"


def as_denominator(text: str) -> str:
    """A denominator with the brackets that it needs behind a slash: (2x), but x² and 2.

    >>> [as_denominator(text) for text in ("x + 1", "2x", "x²", "12", "AB")]
    ['(x + 1)', '(2x)', 'x²', '12', 'AB']
    """
    return text if in_brackets(text) or _is_root(text) or _ATOM.fullmatch(text) else f"({text})"


def as_radicand(text: str) -> str:
    """What stands under a root, behind the sign of the root.

    >>> as_radicand("x + 1"), as_radicand("50"), as_radicand("x²")
    ('(x + 1)', '50', '(x²)')
    """
    return text if in_brackets(text) or re.fullmatch(rf"{_NUMBER}|{_LETTER}", text) else f"({text})"


def as_exponent(text: str) -> str:
    """A power that is no plain number, behind its caret.

    >>> as_exponent("n"), as_exponent("x + 1")
    ('n', '(x + 1)')
    """
    return (
        text
        if (len(text) == 1 and not text.isdigit()) or re.fullmatch(_LETTER, text) or in_brackets(text)
        else f"({text})"
    )


def in_brackets(text: str) -> bool:
    """Whether one pair of brackets goes round the whole.

    >>> in_brackets("(x + 1)"), in_brackets("(a)(b)")
    (True, False)
    """
    if not (text.startswith("(") and text.endswith(")")):
        return False
    depth = 0
    for at, letter in enumerate(text):
        depth += (letter == "(") - (letter == ")")
        if depth == 0:
            return at == len(text) - 1
    return False


def _is_root(text: str) -> bool:
    """Whether the whole is one root: √2, √(x + 1)."""
    rest = re.sub(r"^(?:[⁰¹²³⁴⁵⁶⁷⁸⁹ⁿ]*√|∛|∜)", "", text)
    return rest != text and (in_brackets(rest) or re.fullmatch(rf"{_NUMBER}|{_LETTER}", rest) is not None)
