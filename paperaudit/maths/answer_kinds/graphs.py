"""Domains with ranges, intervals of increase, and transformations of graphs and figures in words, as answers."""

import re
from dataclasses import replace

from paperaudit.errors import ExpressionNotRead, NoValue
from paperaudit.maths.algebra.intervals import Intervals, joined, same_set
from paperaudit.maths.answer_kinds.plane import read_points, same_curve
from paperaudit.maths.answer_kinds.solution_set import compare_set, read_set
from paperaudit.maths.exact import rational_value
from paperaudit.maths.parse import read_expression, read_relation
from paperaudit.maths.same_value import same_value
from paperaudit.model.ask import Ask
from paperaudit.model.derivation import Agreement, Answer, Comparison

_WORDS = re.compile(r"^\s*(?:the\s+)?(?:domain|range)\s*(?:is|:|=)?\s*", re.IGNORECASE)
_AGREES = Comparison(Agreement.AGREES)


def compare_open(stated: str, derived: tuple[Answer, ...], ask: Ask) -> Comparison:
    """Intervals of increase or decrease; whether their ends belong to them is a convention and counts for nothing."""
    answer = derived[0]
    if answer.text == "nowhere":
        nowhere = stated.strip(" .").casefold() in ("nowhere", "never", "none", "no values", "no solution")
        return _AGREES if nowhere else Comparison(Agreement.CANNOT_TELL, "the answer is nowhere")
    plain = "all real numbers" if _is_everything(stated.strip(" ."), answer.letter) else stated
    try:
        theirs, ours = (_closed(read_set(text, answer.letter)) for text in (plain, answer.text))
        same = same_set(theirs, ours)
    except (ExpressionNotRead, NoValue) as error:
        return Comparison(Agreement.CANNOT_TELL, f"the stated answer was not read as a set of numbers: {error}")
    return _AGREES if same else Comparison(Agreement.DIFFERS, f"the answer is {answer.text}")


def _is_everything(text: str, letter: str) -> bool:
    return re.fullmatch(rf"{letter}\s*∈\s*(?:ℝ|R)|(?:ℝ|R)", text) is not None


def _closed(intervals: Intervals) -> Intervals:
    """With their ends, so that x < 0 or x > 0 is every number: a function may rise through a level point."""
    return joined([replace(one, has_low=one.low is not None, has_high=one.high is not None) for one in intervals])


_LEFT_OUT = re.compile(r"([a-z])\s*≠\s*(±?)\s*([-−]?[^,;±]+?)(?:\s*(?:[,;]|and|or)\s*([-−]?[\d./√]+))?")
_ALL_BUT = re.compile(r"(?:[a-z]\s*∈\s*)?(?:ℝ|R)\s*[\\∖−-]\s*\{([^{}]*)\}")


def compare_values(stated: str, derived: tuple[Answer, ...], ask: Ask) -> Comparison:
    """A domain or a range: a set of numbers in the usual spellings, x ≠ ±2 and ℝ∖{−2, 2} among them."""
    letter = derived[0].letter
    plain = re.sub(r"^[fgh]\s*\(\s*[a-z]\s*\)(?=\s*[<>≤≥≠=∈])", letter, stated.strip().rstrip("."))
    plain = re.sub(r"^(-?[\d./]+\s*[<≤]\s*)[fgh]\s*\(\s*[a-z]\s*\)", rf"\1{letter}", plain)
    but = _ALL_BUT.fullmatch(plain)
    if but is not None:
        plain = " and ".join(f"{letter} ≠ {one.strip()}" for one in re.split(r"[,;]", but[1]))
    elif _is_everything(plain, letter):
        plain = "all real numbers"
    plain = re.sub(rf"^{letter}\s*∈\s*(?:ℝ|R)\s*[,;]\s*(?:but\s+|where\s+)?(?={letter})", "", plain)
    out = _LEFT_OUT.fullmatch(plain)
    if out is not None and (out[2] or out[4]):
        others = [out[3], f"−{out[3]}"] if out[2] else [out[3], out[4]]
        plain = " and ".join(f"{out[1]} ≠ {one}" for one in others)
    return compare_set(plain, derived, ask)


def compare_domain_and_range(stated: str, derived: tuple[Answer, ...], ask: Ask) -> Comparison:
    """A domain and a range, each behind its word or in this order."""
    answer = derived[0]
    ours = [part.partition(": ")[2] for part in answer.text.split("; ")]
    plain = re.sub(r"(?:,|;)?\s*(?:and\s+)?(?:the\s+)?(?=[Rr]ange)", "|", stated.strip().rstrip("."), count=1)
    parts = plain.split("|") if "|" in plain else re.split(r"\s*;\s*|,\s+|\s+and\s+(?=y)", plain, maxsplit=1)
    theirs = [_WORDS.sub("", part) for part in parts]
    if len(theirs) != 2:
        return Comparison(Agreement.CANNOT_TELL, f"“{stated.strip()}” is not read as a domain and a range")
    found = [
        compare_values(text, (Answer(own, letter=letter),), ask)
        for text, own, letter in zip(theirs, ours, (answer.letter, "y"), strict=True)
    ]
    for agreement in (Agreement.DIFFERS, Agreement.CANNOT_TELL):
        if any(one.agreement is agreement for one in found):
            return Comparison(agreement, f"the answer is {answer.text}")
    return _AGREES


_KINDS = ("translat", "reflect", "rotat", "enlarg", "stretch")
_SAME = {
    "half turn": "rotation of 180°",
    "half-turn": "rotation of 180°",
    "shift": "translat",
    "moved": "translat",
    "dilat": "enlarg",
    "slide": "translat",
}
_PAIR = re.compile(r"\(\s*[^(),;]+\s*[,;]\s*[^(),;]+\s*\)")
_WAYS = re.compile(r"(-?[\d./]+)\s*(?:units?|squares?)?\s*(?:to the\s+)?(right|left|up|down)")


def compare_transformation(stated: str, derived: tuple[Answer, ...], ask: Ask) -> Comparison:
    """Transformations in words: the kinds in order, and of each what goes with it, as far as it can be read."""
    ours, theirs = (_steps(text) for text in (derived[0].text, stated))
    if not theirs or not ours:
        return Comparison(Agreement.CANNOT_TELL, f"“{stated.strip()}” is not read as a transformation")
    differs = Comparison(Agreement.DIFFERS, f"the answer is {derived[0].text}")
    if sorted(kind for kind, _ in ours) != sorted(kind for kind, _ in theirs):
        same_count = len(ours) == len(theirs)
        return differs if same_count else Comparison(Agreement.CANNOT_TELL, f"the answer is {derived[0].text}")
    for (kind, own), (other, their) in zip(sorted(ours), sorted(theirs), strict=True):
        same = _same_step(kind, own, their) if kind == other else None
        if same is None:
            return Comparison(Agreement.CANNOT_TELL, f"“{stated.strip()}” could not be compared with {derived[0].text}")
        if not same:
            return differs
    return _AGREES


def _steps(text: str) -> list[tuple[str, str]]:
    plain = text.strip().rstrip(".").casefold()
    for word, kind in _SAME.items():
        plain = plain.replace(word, kind)
    found = list(re.finditer("|".join(_KINDS), plain))
    if not found:
        return []
    ends = [*(one.start() for one in found[1:]), len(plain)]
    return [(one[0], plain[one.start() : end]) for one, end in zip(found, ends, strict=True)]


def _same_step(kind: str, own: str, their: str) -> bool | None:
    """Whether two steps of one kind are the same; None where one says too little."""
    try:
        match kind:
            case "translat":
                return _same_pair(_vector(own), _vector(their))
            case "reflect":
                return _same_line(_mirror(own), _mirror(their))
            case "rotat":
                turn, other = _turn(own), _turn(their)
                centres = _same_pair(_centre(own), _centre(their))
                return None if turn is None or other is None or centres is None else turn == other and centres
            case "enlarg":
                sizes = _same_number(_factor(own), _factor(their))
                centres = _same_pair(_centre(own), _centre(their))
                return None if sizes is None or centres is None else sizes and centres
    except ExpressionNotRead:
        return None
    same_axis = _axis(own) == _axis(their)
    sizes = _same_number(_factor(own), _factor(their))
    return None if sizes is None or not _axis(their) else sizes and same_axis


def _vector(text: str) -> str:
    pair = _PAIR.search(text)
    if pair is not None:
        return pair[0]
    across, up = "0", "0"
    for size, way in _WAYS.findall(text):
        signed = f"-{size}" if way in ("left", "down") else size
        across, up = (signed, up) if way in ("left", "right") else (across, signed)
    return f"({across}, {up})" if (across, up) != ("0", "0") else ""


def _centre(text: str) -> str:
    if re.search(r"\borigin\b|\bcentre o\b|\babout o\b", text):
        return "(0, 0)"
    pair = _PAIR.search(text)
    return pair[0] if pair is not None else ""


def _same_pair(one: str, other: str) -> bool | None:
    if not one or not other:
        return None
    (first,), (second,) = read_points(one), read_points(other)
    both = [same_value(a, b) for a, b in zip(first, second, strict=True)]
    return False if False in both else None if None in both else True


def _mirror(text: str) -> str:
    axis = re.search(r"\b([xy])[- ]axis", text)
    if axis is not None:
        return "y = 0" if axis[1] == "x" else "x = 0"
    line = re.search(r"(?:[xy]|-?[\d.]*[xy]\s*[+−-]\s*[\d.]*[xy])\s*=\s*[^,;]+", text)
    return line[0] if line is not None else ""


def _same_line(one: str, other: str) -> bool | None:
    if not one or not other:
        return None
    return same_curve(read_relation(one), read_relation(other))


def _turn(text: str) -> int | None:
    """Degrees anticlockwise."""
    size = re.search(r"(\d+)\s*°", text)
    degrees = int(size[1]) if size is not None else 180 if "half" in text else None
    if degrees is None or (degrees % 180 and "clockwise" not in text):
        return None
    backwards = "clockwise" in text and not re.search(r"anti|counter", text)
    return (-degrees if backwards else degrees) % 360


def _factor(text: str) -> str:
    size = re.search(r"(?:factor|by)\s*(?:of|=|is)?\s*(?:a\s+)?(?:scale factor\s*(?:of)?\s*)?([-−]?[\d./]+)", text)
    return size[1].rstrip(".") if size is not None else ""


def _axis(text: str) -> str:
    if "vertical" in text:
        return "y"
    axis = re.search(r"\b([xy])[- ](?:axis|direction)", text)
    return axis[1] if axis is not None else ""


def _same_number(one: str, other: str) -> bool | None:
    if not one or not other:
        return None
    return rational_value(read_expression(one)) == rational_value(read_expression(other))
