"""The limits of what is read as mathematics: length, nesting, digits."""

import re

from paperaudit.errors import ExpressionNotRead

LONGEST_TEXT = 2_000
DEEPEST_NESTING = 50
MOST_DIGITS = 60
MOST_ROOTS = 6
_DIGITS = re.compile(r"\d[\d .,]*\d")
_ROOTS = re.compile(rf"(?:[√∛∜] ?|(?:square|cube) root of (?:the )?){{{MOST_ROOTS},}}")


def check_limits(text: str, longest: int = LONGEST_TEXT) -> None:
    """Raises ExpressionNotRead for text that is too long, nested too deeply, or with endless numbers."""
    if len(text) > longest:
        raise ExpressionNotRead(f"longer than {longest} characters", longest, "a shorter text")
    depth = 0
    for position, character in enumerate(text):
        if character in "([{":
            depth += 1
            if depth > DEEPEST_NESTING:
                raise ExpressionNotRead(f"brackets nested deeper than {DEEPEST_NESTING}", position, "fewer brackets")
        elif character in ")]}":
            depth -= 1
    if roots := _ROOTS.search(text):
        raise ExpressionNotRead("roots of roots of roots", roots.start(), "fewer roots")
    for digits in _DIGITS.finditer(text):
        if sum(character.isdigit() for character in digits.group()) > MOST_DIGITS:
            raise ExpressionNotRead(f"a number of more than {MOST_DIGITS} digits", digits.start(), "a shorter number")
