"""On which side of a circle a point is, as an answer: inside, on the circle, outside."""

import re

from paperaudit.model.ask import Ask
from paperaudit.model.derivation import Agreement, Answer, Comparison

_SIDES = (("inside", r"\binside\b|\bwithin\b"), ("outside", r"\boutside\b"), ("on the circle", r"\bon\b"))


def compare_side(stated: str, answers: tuple[Answer, ...], ask: Ask) -> Comparison:
    """One of three words among others; two of them cannot be told.

    >>> from paperaudit.model.ask import Find
    >>> compare_side("It lies outside.", (Answer("inside"),), Ask(Find(()), "")).agreement.value
    'differs'
    """
    text = stated.lower()
    said = [side for side, words in _SIDES if re.search(words, text)]
    if len(said) != 1 or re.search(r"\bnot\b", text):
        return Comparison(Agreement.CANNOT_TELL, f"“{stated.strip()}” does not say on which side the point is")
    return Comparison(Agreement.AGREES if said[0] == answers[0].text else Agreement.DIFFERS)
