"""Measures of collected values as answers: numbers by a named convention, modes, classes, lists with names, lines."""

import re
from fractions import Fraction

from paperaudit.errors import ExpressionNotRead
from paperaudit.maths.answer_kinds.numbers import compare_numbers
from paperaudit.maths.collected_values import in_order, other_values
from paperaudit.maths.quartiles import CONVENTIONS
from paperaudit.maths.stated import read_stated
from paperaudit.maths.value_comparison import compare_value
from paperaudit.maths.verdict_words import verdict_word
from paperaudit.model.ask import Ask
from paperaudit.model.derivation import Agreement, Answer, Comparison
from paperaudit.model.statistics_task import Frequencies, Summary, Values

_NONE = re.compile(r"(?:there (?:is|are) )?(?:none|no|no (?:modes?|outliers?))", re.IGNORECASE)
_DECIDING = re.compile(r"\b(?:whether|if|are there)\b", re.IGNORECASE)
_NUMBER = r"[-−–]?\d+(?:[.,]\d+)?"
_CLASSES = re.compile(r"\s+and\s+|\s*;\s*")
_SHORT = {
    "Q1": "lower quartile", "Q3": "upper quartile", "IQR": "interquartile range", "average": "mean",
    "Q2": "median", "s.d.": "standard deviation", "σ": "standard deviation", "SD": "standard deviation",
    "modal value": "mode", "r": "correlation coefficient",
    "GCF": "HCF", "GCD": "HCF", "highest common factor": "HCF", "greatest common divisor": "HCF",
    "greatest common factor": "HCF", "lowest common multiple": "LCM", "least common multiple": "LCM",
}  # fmt: skip
_BETWEEN = re.compile(r"\s*(?:;|,\s+(?=[A-Za-z])|\n|\band\b)\s*(?=[A-Za-zσ])")


def compare_statistic(stated: str, derived: tuple[Answer, ...], ask: Ask) -> Comparison:
    """The stated measures against the derived ones, in order or by name; another named convention is accepted."""
    if len(derived) == 1:
        return _one(_without_name(stated, derived[0].letter), derived[0], ask)
    pieces = _pieces(stated, derived)
    if pieces is None:
        return Comparison(Agreement.CANNOT_TELL, f"“{stated.strip()}” is not read as {len(derived)} measures")
    results = [_one(piece, answer, ask) for piece, answer in zip(pieces, derived, strict=True)]
    for wanted in (Agreement.DIFFERS, Agreement.CANNOT_TELL):
        for result, answer in zip(results, derived, strict=True):
            if result.agreement is wanted:
                return Comparison(wanted, f"the {answer.letter}: {result.why}")
    return Comparison(Agreement.AGREES, "; ".join(result.why for result in results if result.why))


def _pieces(stated: str, derived: tuple[Answer, ...]) -> list[str] | None:
    """One text for each measure, by their names or in their order."""
    plain = stated.strip().rstrip(".")
    named = [piece.strip(" ,;") for piece in _BETWEEN.split(plain)]
    found = {}
    for piece in named:
        for answer in derived:
            bare = _without_name(piece, answer.letter)
            if bare != piece:
                found[answer.letter] = bare
    if len(found) == len(derived) == len(named):
        return [found[answer.letter] for answer in derived]
    listed = [piece.strip() for piece in re.split(r"\s*;\s*|,\s+(?:and\s+)?|\s+and\s+", plain)]
    return listed if len(listed) == len(derived) and not found else None


def _without_name(text: str, name: str) -> str:
    names = [name, *(short for short, long in _SHORT.items() if long == name), "estimated " + name]
    pattern = "|".join(re.escape(one) for one in names)
    return re.sub(rf"^\s*(?:the )?(?:{pattern})(?:\s*(?:is|=|:|≈)\s*|\s+(?=[-−–\d]))", "", text, flags=re.IGNORECASE)


def _one(stated: str, answer: Answer, ask: Ask) -> Comparison:
    match answer.letter:
        case "mode" | "outliers" if answer.value is None:
            return _several(stated, answer, ask)
        case "modal class" | "median class":
            return _classes(stated, answer)
        case "five-number summary":
            return _five(stated, answer, ask)
        case "pie-chart angles":
            return _angles(stated, answer)
        case "regression line":
            return _line(stated, answer)
    try:
        values = read_stated(stated, 1)
    except ExpressionNotRead as error:
        return Comparison(Agreement.CANNOT_TELL, f"the stated answer was not read: {error}")
    if len(values) != 1:
        return Comparison(Agreement.DIFFERS, f"one value was derived, {answer.text}, and {len(values)} are stated")
    first = compare_value(values[0], answer, ask)
    if first.agreement is Agreement.AGREES or not isinstance(ask.task, Summary):
        return first
    for name, value in other_values(ask.task, answer.letter):
        other = Answer(answer.text, value, answer.letter)
        if compare_value(values[0], other, ask).agreement is Agreement.AGREES:
            return Comparison(
                Agreement.AGREES, f"it is {answer.text} here and {stated.strip()} by another convention: {name}"
            )
    return first


def _several(stated: str, answer: Answer, ask: Ask) -> Comparison:
    """Modes and outliers: in any order, or none of them."""
    none = answer.text in ("no mode", "no outliers")
    if _NONE.fullmatch(stated.strip().rstrip(".")) or none:
        said = bool(_NONE.fullmatch(stated.strip().rstrip(".")))
        return _told(said == none, answer.text)
    if not re.search(r"\d", answer.text):
        same = {one.strip().casefold() for one in re.split(r",| and ", stated)} == {
            one.strip().casefold() for one in answer.text.split(",")
        }
        return _told(same, answer.text)
    stated = re.sub(r"^\s*yes\b[\s,;:.(-]*(?=\d|[-−–])", "", stated, flags=re.IGNORECASE)
    if verdict_word(stated) == "yes" and _DECIDING.search(ask.text):
        return Comparison(Agreement.AGREES)
    found = compare_numbers(stated, (answer,), ask)
    if found.agreement is Agreement.DIFFERS and answer.letter == "outliers":
        # Which values lie outside the fences depends on the convention for the quartiles.
        for name, other in _other_outliers(ask):
            if compare_numbers(stated, (Answer(other),), ask).agreement is Agreement.AGREES:
                return Comparison(Agreement.AGREES, f"by another convention for the quartiles: {name}")
    return found


def _other_outliers(ask: Ask) -> list[tuple[str, str]]:
    if not isinstance(ask.task, Summary) or not isinstance(ask.task.collected, Values | Frequencies):
        return []
    values = in_order(ask.task.collected)
    found = []
    for name, quartiles_by in CONVENTIONS[1:]:
        low, _, high = quartiles_by(values)
        reach = Fraction(3, 2) * (high - low)
        beyond = sorted({one for one in values if not low - reach <= one <= high + reach})
        found.append((name, ", ".join(str(float(one)) if one.denominator > 1 else str(one) for one in beyond)))
    return [(name, text) for name, text in found if text]


def _told(same: bool, text: str) -> Comparison:
    return Comparison(Agreement.AGREES) if same else Comparison(Agreement.DIFFERS, f"the answer is {text}")


def numerals(text: str) -> list[Fraction]:
    """The numbers of a text in order; a hyphen between two numbers is a dash."""
    plain = re.sub(r"(?<=\d)\s*[-–—]\s*(?=\d)", " ; ", text)
    return [Fraction(re.sub(r"[−–]", "-", one).replace(",", ".")) for one in re.findall(_NUMBER, plain)]


def _classes(stated: str, answer: Answer) -> Comparison:
    """Classes by their two ends."""
    ours = [numerals(one) for one in answer.text.split(" and ")]
    theirs = [numerals(one) for one in _CLASSES.split(stated.strip().rstrip("."))]
    if not all(len(one) == 2 for one in theirs):
        return Comparison(Agreement.CANNOT_TELL, f"“{stated.strip()}” is not read as a class")
    return _told(sorted(ours) == sorted(theirs), answer.text)


def _five(stated: str, answer: Answer, ask: Ask) -> Comparison:
    theirs = numerals(re.sub(r"Q_?[123]", "", stated))
    if len(theirs) != 5:
        return Comparison(Agreement.CANNOT_TELL, f"“{stated.strip()}” is not read as five numbers")
    if theirs == numerals(answer.text):
        return Comparison(Agreement.AGREES)
    if isinstance(ask.task, Summary) and isinstance(ask.task.collected, Values | Frequencies):
        values = in_order(ask.task.collected)
        for name, quartiles_by in CONVENTIONS[1:]:
            if theirs == [values[0], *quartiles_by(values), values[-1]]:
                return Comparison(Agreement.AGREES, f"by another convention for the quartiles: {name}")
    return Comparison(Agreement.DIFFERS, f"the answer is {answer.text}")


def _angles(stated: str, answer: Answer) -> Comparison:
    """Angles with the names of their sectors, or alone in the order of the table."""
    ours = {name.strip().casefold(): value.strip() for name, _, value in (
        one.partition(":") for one in re.split(r",\s+", answer.text))}  # fmt: skip
    pieces = re.split(r",\s+|\s*;\s*|\s+and\s+|\n", stated.strip().rstrip("."))
    theirs: list[tuple[str, list[Fraction]]] = []
    for piece in pieces:
        name = re.sub(rf"{_NUMBER}\s*°?|[:=()]", "", piece).strip().casefold()
        theirs.append((name, numerals(piece)))
    if any(len(values) != 1 for _, values in theirs) or len(theirs) != len(ours):
        return Comparison(Agreement.CANNOT_TELL, f"“{stated.strip()}” is not read as {len(ours)} angles")
    for (name, value), (own, angle) in zip(theirs, ours.items(), strict=True):
        if name and name not in ours:
            return Comparison(Agreement.CANNOT_TELL, f"{name} is not one of the sectors")
        right = ours[name] if name else angle
        exact = Fraction(right.rstrip("°").replace("−", "-"))
        if value[0] != exact and not (exact.denominator > 1 and value[0] == round(exact, _places(value[0]))):
            return Comparison(Agreement.DIFFERS, f"the angle of {name or own} is {right}")
    return Comparison(Agreement.AGREES)


def _places(value: Fraction) -> int:
    return next((places for places in range(7) if (value * 10**places).denominator == 1), 7)


_TERM = re.compile(r"(?P<sign>[-+−–]?)\s*(?P<number>\d+(?:[.,]\d+)?(?:/\d+)?|\(\d+/\d+\)|)\s*(?P<x>x?)")


def _coefficients(text: str) -> tuple[Fraction, Fraction] | None:
    """Intercept and gradient of "y = 2 + 3x", "y = 3x + 2" or "y = 3x"."""
    read = re.fullmatch(r"y\s*=\s*(.+)", text.strip().rstrip(".").replace("ŷ", "y"))
    if read is None:
        return None
    found: dict[bool, Fraction] = {}
    for term in re.findall(r"[-+−–]?\s*[^-+−–\s][^-+−–]*", read[1]):
        one = _TERM.fullmatch(term.strip())
        if one is None or not (one["number"] or one["x"]) or bool(one["x"]) in found:
            return None
        size = Fraction(one["number"].strip("()").replace(",", ".") or "1")
        found[bool(one["x"])] = -size if one["sign"] and one["sign"] != "+" else size
    return found.get(False, Fraction(0)), found.get(True, Fraction(0))


def _line(stated: str, answer: Answer) -> Comparison:
    """Lines by intercept and gradient, each as exact as it is written."""
    ours, theirs = _coefficients(answer.text), _coefficients(stated)
    if ours is None or theirs is None:
        return Comparison(Agreement.CANNOT_TELL, f"“{stated.strip()}” is not read as a line y = a + bx")
    same = all(one == other or (_places(other) >= 2 and round(one, _places(other)) == other)
               for one, other in zip(ours, theirs, strict=True))  # fmt: skip
    return _told(same, answer.text)
