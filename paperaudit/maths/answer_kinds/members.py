"""Sets as answers: {2, 4}, in any order, with or without braces; ∅ for a set without members."""

import re

from paperaudit.model.ask import Ask
from paperaudit.model.derivation import Agreement, Answer, Comparison

_EMPTY = ("∅", "{}", "{ }", "the empty set", "empty set", "empty", "ø", "none", "no members")
_LEAD = re.compile(r"^[^={]*=\s*")
_SPLIT = re.compile(r"\s*(?:;|\s+and\s+|,\s*(?:and\s+)?)\s*")


def compare_members(stated: str, derived: tuple[Answer, ...], ask: Ask) -> Comparison:
    """The same members, each once."""
    ours, theirs = _members(derived[0].text), _members(stated)
    if theirs is None or ours is None:
        return Comparison(Agreement.CANNOT_TELL, f"“{stated.strip()}” is not read as a set")
    if extra := [one for one in theirs if one not in ours]:
        return Comparison(Agreement.DIFFERS, f"{extra[0]} is not a member: {derived[0].text}")
    if missing := [one for one in ours if one not in theirs]:
        return Comparison(Agreement.DIFFERS, f"{', '.join(missing)} is missing: {derived[0].text}")
    return Comparison(Agreement.AGREES)


def _members(text: str) -> tuple[str, ...] | None:
    plain = _LEAD.sub("", text.strip().rstrip(".")).strip()
    if plain.casefold() in _EMPTY:
        return ()
    braces = plain.startswith("{") and plain.endswith("}")
    inside = plain[1:-1].strip() if braces else plain
    if not inside or "{" in inside or "}" in inside:
        return None
    pieces = tuple(one.replace("−", "-") for one in _SPLIT.split(inside) if one)
    plain_words = all(re.fullmatch(r"-?[\w./]+", one) for one in pieces)
    return pieces if plain_words and (braces or all(len(one) < 8 for one in pieces)) else None
