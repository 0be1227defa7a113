"""Whole numbers in English words and back: three thousand four hundred and five."""

import re

from paperaudit.errors import ExpressionNotRead

BELOW_TWENTY = (
    "zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve",
    "thirteen", "fourteen", "fifteen", "sixteen", "seventeen", "eighteen", "nineteen",
)  # fmt: skip
"""The words of 0 to 19, each at its own place."""
TENS = {word: 10 * ten for ten, word in enumerate(
    ("twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety"), 2)}  # fmt: skip
PARTS = {
    "half": 2, "third": 3, "quarter": 4, "fourth": 4, "fifth": 5, "sixth": 6, "seventh": 7, "eighth": 8, "ninth": 9,
    "tenth": 10, "eleventh": 11, "twelfth": 12, "twentieth": 20, "hundredth": 100, "thousandth": 1000,
}  # fmt: skip
"""What a whole is divided by for a part of this name."""
_GROUPS = ((10**9, "billion"), (10**6, "million"), (1000, "thousand"))
LARGEST = 10**12
_VALUES = {
    **{word: value for value, word in enumerate(BELOW_TWENTY)},
    **TENS,
    "nought": 0,
    "a": 1,
    "fourty": 40,
}
_SCALES = {word: value for value, word in _GROUPS}


def in_words(value: int) -> str:
    """A whole number below a billion billions in words, with "and" in front of what is below a hundred.

    >>> in_words(3405), in_words(1000012)
    ('three thousand four hundred and five', 'one million and twelve')
    """
    if not 0 <= value < LARGEST:
        raise ExpressionNotRead(f"{value} in words", 0, "a whole number below a thousand billions")
    if value == 0:
        return "zero"
    pieces = []
    rest = value
    for size, name in _GROUPS:
        count, rest = divmod(rest, size)
        if count:
            pieces.append(f"{_below_thousand(count)} {name}")
    if rest:
        last = _below_thousand(rest)
        pieces.append(f"and {last}" if pieces and rest < 100 else last)
    return " ".join(pieces)


def _below_thousand(value: int) -> str:
    hundreds, rest = divmod(value, 100)
    pieces = [f"{BELOW_TWENTY[hundreds]} hundred"] if hundreds else []
    if rest:
        tens = "" if rest < 20 else next(word for word, value in TENS.items() if value == rest - rest % 10)
        small = BELOW_TWENTY[rest] if not tens else tens + (f"-{BELOW_TWENTY[rest % 10]}" if rest % 10 else "")
        pieces.append(f"and {small}" if hundreds else small)
    return " ".join(pieces)


def from_words(text: str) -> int:
    """The whole number that words name; raises ExpressionNotRead where they name none.

    >>> from_words("three thousand and five"), from_words("Two million, four hundred thousand")
    (3005, 2400000)
    """
    refused = ExpressionNotRead(f"“{text.strip()}” is no number in words", 0, "a number such as “three hundred”")
    words = [word for word in re.split(r"[\s,\-]+", text.strip().rstrip(".").casefold()) if word and word != "and"]
    total, group, last = 0, 0, 10**15
    seen = False
    for word in words:
        if word in _VALUES:
            value = _VALUES[word]
            fits = (group % 100 == 0) if value >= 10 else (group % 10 == 0 and group % 100 not in (10,))
            if not fits:
                raise ExpressionNotRead(
                    f"“{text.strip()}” is no number in words", 0, "a number such as “three hundred”"
                )
            group += value
        elif word == "hundred" and 0 < group < 10:
            group *= 100
        elif word in _SCALES and group > 0 and _SCALES[word] < last:
            last = _SCALES[word]
            total, group = total + group * last, 0
        else:
            raise refused
        seen = True
    if not seen:
        raise refused
    return total + group
