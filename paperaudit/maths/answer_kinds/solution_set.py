"""Solution sets as answers: x < 2, −1 ≤ x < 4, x < −2 or x > 3, (−∞; 2], x ∈ (3; ∞)."""

import re

from paperaudit.errors import ExpressionNotRead, NoValue
from paperaudit.maths.algebra.intervals import EVERYTHING, Interval, Intervals, both, joined, same_set
from paperaudit.maths.euler import with_euler
from paperaudit.maths.parse import read_expression, read_relations
from paperaudit.maths.verdict_words import verdict_word
from paperaudit.model.ask import Ask
from paperaudit.model.derivation import Agreement, Answer, Comparison
from paperaudit.model.expression import Expression, Letter, Relation, letters_of

LONGEST = 300
_SETS = re.compile(r"^\{\s*([a-zA-Z])\s*(?:∈\s*(?:ℝ|R)\s*)?[:|]\s*(.*)\}$", re.DOTALL)
_IN = re.compile(r"^[a-zA-Z]\s*(?:∈|in|ε)\s*(?=[(\[\]])")
_REALS = re.compile(r",?\s*\(?(?:[a-zA-Z]\s*∈\s*(?:ℝ|R)|where [a-z] is real)\)?\s*$")
_UNION = re.compile(r"\s*∪\s*|\s+[Uu]\s+(?=[(\[\]])|\s+or\s+", re.IGNORECASE)
_AND = re.compile(r"\s+(?:and|∩|but)\s+|\s*[,;]\s*(?=[a-zA-Z]\s*[<>≤≥≠=])|\s*[,;]\s*(?=\S+\s*[<>≤≥])")
_BOUNDED = re.compile(r"([(\[\]])\s*([^,;]+?)\s*[,;]\s*([^,;]+?)\s*([)\]\[])")
_INFINITE = re.compile(r"^\+?(?:∞|infinity|inf|oo)$", re.IGNORECASE)
_MINUS_INFINITE = re.compile(r"^[-−–]\s*(?:∞|infinity|inf|oo)$", re.IGNORECASE)


def read_set(text: str, letter: str) -> Intervals:
    """The set that an answer states. Raises ExpressionNotRead and NoValue.

    >>> from paperaudit.maths.algebra.intervals import text_of
    >>> text_of(read_set("x ∈ (−∞; 2] or 3 < x < 5", "x"), "x")
    'x ≤ 2 or 3 < x < 5'
    """
    if len(text) > LONGEST:
        raise ExpressionNotRead("an answer that is too long", LONGEST, "a shorter one")
    trimmed = text.strip().rstrip(".").strip()
    inside = _SETS.match(trimmed)
    trimmed = inside[2].strip() if inside else trimmed
    trimmed = _REALS.sub("", trimmed)
    word = verdict_word(trimmed)
    if word == "no solution":
        return ()
    if word == "infinitely many solutions" or trimmed.casefold() in ("ℝ", "all reals", "all real values"):
        return EVERYTHING
    pieces: list[Interval] = []
    for piece in _UNION.split(trimmed):
        whole: Intervals = EVERYTHING
        for part in _AND.split(_IN.sub("", piece.strip())) if not _BOUNDED.fullmatch(_bare(piece)) else [piece]:
            whole = both(whole, _one(part, letter))
        parts = _AND.split(piece.strip()) if not whole and "," in piece else []
        pieces.extend(whole or [interval for part in parts for interval in _one(part, letter)])
    return joined(pieces)


def _bare(piece: str) -> str:
    return _IN.sub("", piece.strip())


def _one(piece: str, letter: str) -> Intervals:
    bounded = _BOUNDED.fullmatch(_bare(piece))
    if bounded:
        low, high = _end(bounded[2]), _end(bounded[3])
        return (Interval(low, high, bounded[1] == "[" and low is not None, bounded[4] == "]" and high is not None),)
    whole = EVERYTHING
    for relation in read_relations(piece, frozenset({letter})):
        whole = both(whole, related(relation, letter))
    return whole


def _end(text: str) -> Expression | None:
    if _INFINITE.match(text) or _MINUS_INFINITE.match(text):
        return None
    return read_expression(text)


_TURNED = {"<": ">", ">": "<", "≤": "≥", "≥": "≤"}


def related(relation: Relation, letter: str) -> Intervals:
    """The numbers that an inequality with the letter alone on one side allows."""
    left, sign, right = relation.left, str(relation.sign), relation.right
    if right == Letter(letter):
        left, right, sign = right, left, _TURNED.get(sign, sign)
    if left != Letter(letter):
        raise ExpressionNotRead("the letter is not alone on one side", 0, f"such as {letter} < 2")
    closed = sign in "≤≥="
    if letter != "e" and letters_of(right) == ("e",):
        right = with_euler(right)
    match sign:
        case "<" | "≤":
            return (Interval(None, right, False, closed),)
        case ">" | "≥":
            return (Interval(right, None, closed, False),)
        case "≠":
            return (Interval(None, right), Interval(right, None))
    return (Interval(right, right, True, True),)


def compare_set(stated: str, derived: tuple[Answer, ...], ask: Ask) -> Comparison:
    """A stated set against the derived one; the letter stands in the answer."""
    answer = derived[0]
    try:
        ours, theirs = read_set(answer.text, answer.letter), read_set(stated, answer.letter)
        same = same_set(ours, theirs)
    except (ExpressionNotRead, NoValue) as error:
        return Comparison(Agreement.CANNOT_TELL, f"the stated answer was not read as a set of numbers: {error}")
    if same is None:
        return Comparison(Agreement.CANNOT_TELL, f"“{stated.strip()}” could not be compared with {answer.text}")
    return Comparison(Agreement.AGREES) if same else Comparison(Agreement.DIFFERS, f"the answer is {answer.text}")
