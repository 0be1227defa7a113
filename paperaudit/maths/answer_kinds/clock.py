"""Times of day as answers: 3:15 PM, 3.15 pm and 15:15 are the same."""

import re

from paperaudit.model.ask import Ask
from paperaudit.model.derivation import Agreement, Answer, Comparison

_CLOCK = re.compile(r"(?:at )?(\d{1,2})(?:[:h.](\d\d))? ?(?:(a|p)\.? ?m\.?)?(?: ?h(?:ours)?)?", re.IGNORECASE)


def minutes_of(text: str) -> tuple[int, bool] | None:
    """Minutes after midnight, and whether morning or afternoon is settled; None for no time of day.

    >>> minutes_of("3:15 PM"), minutes_of("3:15")
    ((915, True), (195, False))
    """
    found = _CLOCK.fullmatch(text.strip().rstrip("."))
    if found is None or (found[2] is None and found[3] is None):
        return None
    hour, minute, half = int(found[1]), int(found[2] or 0), (found[3] or "").lower()
    if hour > 23 or minute > 59 or (half and not 1 <= hour <= 12):
        return None
    settled = bool(half) or hour > 12 or not hour or found[1].startswith("0")
    return ((hour % 12 + (12 if half == "p" else 0)) if half else hour) * 60 + minute, settled


def compare_clock(stated: str, derived: tuple[Answer, ...], ask: Ask) -> Comparison:
    """The stated time of day against the derived one."""
    theirs, ours = minutes_of(stated), minutes_of(derived[0].text)
    if theirs is None or ours is None:
        return Comparison(Agreement.CANNOT_TELL, f"“{stated.strip()}” was not read as a time of day")
    if theirs[0] == ours[0]:
        return Comparison(Agreement.AGREES)
    if not theirs[1] and (theirs[0] - ours[0]) % 720 == 0:
        return Comparison(Agreement.CANNOT_TELL, "it is not said whether it is morning or afternoon")
    return Comparison(Agreement.DIFFERS, f"the answer is {derived[0].text}")
