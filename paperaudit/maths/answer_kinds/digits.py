"""Answers that are digits or signs and no values: 1011₂, <, 400 or hundreds."""

import re

from paperaudit.errors import ExpressionNotRead
from paperaudit.maths.number_words import from_words
from paperaudit.maths.parse import read_expression
from paperaudit.maths.same_value import same_value
from paperaudit.model.ask import Ask
from paperaudit.model.derivation import Agreement, Answer, Comparison

_NAMED_BASE = re.compile(r"\s*(?:\(?(?:in )?base (?:\d+|two|five|eight|ten|twelve|sixteen)\)?|_\{?(\d+)\}?|[₀-₉]+)\s*$")
_LOWERED = str.maketrans("₀₁₂₃₄₅₆₇₈₉", "0123456789")
_BASE = re.compile(r"(?:base |_\{?)(\d+)|([₀-₉]+)")
_SIGN_WORDS = {"less than": "<", "greater than": ">", "equal to": "=", "is equal to": "=", "is less than": "<",
               "is greater than": ">", "equals": "="}  # fmt: skip


def compare_digits(stated: str, derived: tuple[Answer, ...], ask: Ask) -> Comparison:
    """Digits in a base: the base may be left out of the key, and may not be another one."""
    ours, our_base = _digits(derived[0].text)
    theirs, base = _digits(stated)
    if not re.fullmatch(r"-?[0-9a-z]+", theirs):
        return Comparison(Agreement.CANNOT_TELL, f"“{stated.strip()}” is not read as digits")
    if base and base != (our_base or "10"):
        return Comparison(Agreement.DIFFERS, f"it is in base {base}, the answer is {derived[0].text}")
    same = theirs.lstrip("0") == ours.lstrip("0") or (theirs.strip("-0") == ours.strip("-0") == "")
    return Comparison(Agreement.AGREES) if same else Comparison(Agreement.DIFFERS, f"the answer is {derived[0].text}")


def _digits(text: str) -> tuple[str, str]:
    """The digits without spaces in small letters, and the base that is named with them."""
    plain = text.strip().rstrip(".").replace("−", "-").replace("–", "-")
    found = _BASE.search(plain)
    base = (found[1] or found[2].translate(_LOWERED)) if found else ""
    return re.sub(r"\s", "", _NAMED_BASE.sub("", plain)).lower(), base


def compare_sign(stated: str, derived: tuple[Answer, ...], ask: Ask) -> Comparison:
    """The sign <, > or =, alone, in words, or between the two numbers."""
    plain = stated.strip().rstrip(".")
    signs = re.findall(r"[<>=]", plain) or [_SIGN_WORDS.get(plain.casefold(), "")]
    if len(signs) != 1 or not signs[0]:
        return Comparison(Agreement.CANNOT_TELL, f"“{plain}” is not read as one of the signs <, > and =")
    same = signs[0] == derived[0].text
    return Comparison(Agreement.AGREES) if same else Comparison(Agreement.DIFFERS, f"the sign is {derived[0].text}")


def compare_place(stated: str, derived: tuple[Answer, ...], ask: Ask) -> Comparison:
    """What a digit is worth: as a number (400), in words (4 hundreds) or by the name of its place (hundreds)."""
    answer = derived[0]
    assert answer.value is not None
    plain = re.sub(r"^\d\s+(?=[a-z])", "", stated.strip().rstrip(".").casefold())
    if re.fullmatch(r"[a-z -]+", plain):
        same = plain.rstrip("s") in (answer.letter.rstrip("s"), f"{answer.letter.rstrip('s')} place")
        same = same or (answer.letter == "units" and plain.rstrip("s") in ("one", "unit"))
        known = any(word in plain for word in ("unit", "one", "ten", "hundred", "thousand", "million", "billion"))
        if not known:
            return Comparison(Agreement.CANNOT_TELL, f"“{stated.strip()}” is not read as the name of a place")
        return Comparison(Agreement.AGREES) if same else Comparison(Agreement.DIFFERS, f"it stands for {answer.text}")
    try:
        value = read_expression(plain)
    except ExpressionNotRead as error:
        return Comparison(Agreement.CANNOT_TELL, f"the stated answer was not read: {error}")
    same = same_value(value, answer.value) is True
    return Comparison(Agreement.AGREES) if same else Comparison(Agreement.DIFFERS, f"it stands for {answer.text}")


def compare_number_words(stated: str, derived: tuple[Answer, ...], ask: Ask) -> Comparison:
    """A number in words, by the number that they name."""
    try:
        value = from_words(stated)
    except ExpressionNotRead as error:
        return Comparison(Agreement.CANNOT_TELL, f"the stated answer was not read: {error}")
    same = value == from_words(derived[0].text)
    return Comparison(Agreement.AGREES) if same else Comparison(Agreement.DIFFERS, f"it is {derived[0].text}")


def compare_word(stated: str, derived: tuple[Answer, ...], ask: Ask) -> Comparison:
    """One of two words that the question gives: rational or irrational."""
    words = re.findall(r"\b(?:ir)?rational\b", stated.casefold())
    denied = re.search(r"\bnot\b", stated.casefold())
    if len(words) != 1 or denied:
        return Comparison(Agreement.CANNOT_TELL, f"“{stated.strip()}” could not be compared with {derived[0].text}")
    same = words[0] == derived[0].text
    return Comparison(Agreement.AGREES) if same else Comparison(Agreement.DIFFERS, f"it is {derived[0].text}")
