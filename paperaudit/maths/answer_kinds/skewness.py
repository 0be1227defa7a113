"""The side to which values are skewed, in the words that are in use for it."""

import re

from paperaudit.model.ask import Ask
from paperaudit.model.derivation import Agreement, Answer, Comparison

_WORDS = (
    ("symmetrical", re.compile(r"symmetric(?:al)?(?:ly)?|not skewed|no skew(?:ness)?|normal", re.IGNORECASE)),
    ("positively skewed", re.compile(r"positive(?:ly)?|right", re.IGNORECASE)),
    ("negatively skewed", re.compile(r"negative(?:ly)?|left", re.IGNORECASE)),
)


def compare_skewness(stated: str, derived: tuple[Answer, ...], ask: Ask) -> Comparison:
    """Skewed to the right is positively skewed, to the left negatively.

    >>> from paperaudit.model.ask import Solve
    >>> ask = Ask(Solve(()), "comment on the skewness")
    >>> compare_skewness("skewed to the right", (Answer("positively skewed", kind="skewness"),), ask).agreement.value
    'agrees'
    """
    named = [name for name, words in _WORDS if words.search(stated)]
    if len(named) != 1 or len(derived) != 1:
        return Comparison(Agreement.CANNOT_TELL, f"“{stated.strip()}” does not say one side")
    if named[0] == derived[0].text:
        return Comparison(Agreement.AGREES)
    return Comparison(Agreement.DIFFERS, f"the values are {derived[0].text}")
