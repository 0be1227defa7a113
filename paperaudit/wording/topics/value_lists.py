"""Lists of numbers in a sentence, in the cells of a table and in the rows of a stem-and-leaf diagram."""

import itertools
import re
from dataclasses import dataclass
from fractions import Fraction

from paperaudit.maths.number_words import BELOW_TWENTY
from paperaudit.maths.units import MONEY, unit_named

MOST_VALUES = 500
_NUMBER = re.compile(
    r"(?P<money>[R$£€₦₹])? ?(?P<number>-? ?(?:\d+(?:[.]\d+|,\d+)?|[.]\d+)(?: ?/ ?\d+)?) ?(?P<unit>[a-z°%][a-z²³]*)?"
)
_SPACED = re.compile(r"-?\d+(?:\.\d+)?(?: -?\d+(?:\.\d+)?){3,}")
_WORDS = (*BELOW_TWENTY, "twenty")
COUNT_WORDS = {word: count for count, word in enumerate(_WORDS)}
COUNT = rf"(?:\d{{1,4}}|{'|'.join(_WORDS[1:])})"
"""A whole number in figures or in words, as a piece of a regular expression."""


def count_of(words: str) -> int:
    """A whole number in figures or words: count_of("five") is 5."""
    return COUNT_WORDS[words] if words in COUNT_WORDS else int(words)


@dataclass(frozen=True, slots=True)
class NumberList:
    """Numbers in the order written, with the unit that they carry."""

    values: tuple[Fraction, ...]
    unit: str = ""


def number_in_text(text: str) -> tuple[Fraction, str] | None:
    """A number with its unit, or None for anything else.

    >>> number_in_text("2.5 kg")
    (Fraction(5, 2), 'kg')
    """
    read = _NUMBER.fullmatch(text.strip().replace("−", "-"))
    if read is None:
        return None
    unit = ""
    if read["unit"]:
        named = unit_named(read["unit"])
        if named is None:
            return None
        unit = named.symbol
    if read["money"]:
        unit = read["money"] if read["money"] in MONEY else ""
    above, _, below = read["number"].replace(" ", "").replace(",", ".").partition("/")
    if below and not int(below):
        return None
    return Fraction(above) / (Fraction(below) if below else 1), unit


def numbers_listed(text: str) -> NumberList | None:
    """The numbers of a list, or None where some of it is no number.

    >>> numbers_listed("3, 5, 7 and 9 cm").values[-1]
    Fraction(9, 1)
    """
    plain = text.strip().rstrip(".?! ").strip()
    tail = re.fullmatch(r"(.*\d) ?\(([^()\d]{1,12})\)", plain)
    tail_unit = _unit_of_all(tail[2].strip()) if tail else ""
    plain = tail[1] if tail else plain
    for left, right in ("{}", "()", "[]"):
        if plain.startswith(left) and plain.endswith(right):
            plain = plain[1:-1].strip()
    if _SPACED.fullmatch(plain):
        pieces = plain.split(" ")
        if any(len(one) == 3 and len(before) < 3 for before, one in itertools.pairwise(pieces)):
            return None
    elif ", " not in plain and ";" not in plain and plain.count(",") > 1:
        pieces = plain.split(",")
    else:
        pieces = re.split(r" ?; ?(?:and )?|, (?:and )?| and ", plain)
    found = [number_in_text(piece) for piece in pieces if piece.strip()]
    known = [one for one in found if one is not None]
    units = {unit for _, unit in known if unit} | ({tail_unit} if tail_unit else set())
    if len(known) != len(found) or not known or len(units) > 1 or len(known) > MOST_VALUES:
        return None
    return NumberList(tuple(value for value, _ in known), units.pop() if units else "")


def _unit_of_all(word: str) -> str:
    """The unit in brackets behind a list: "3, 5, 7 (kg)"; "" where it is none."""
    if word in MONEY:
        return word
    named = unit_named(word)
    return named.symbol if named is not None else ""


_STEM = re.compile(r"(-?\d+) ?\| ?((?:\d ?,? ?)*)")
_KEY = re.compile(r"key:? ?(\d+) ?\| ?(\d) ?(?:=|means|is|represents|stands for):? ?(.+)")


def stem_and_leaf(rows: list[str]) -> NumberList | None:
    """The values of the rows "2 | 1 3 5" with the key "key: 2 | 1 = 21"; None without a key or for other rows."""
    key = next((read for row in rows if (read := _KEY.fullmatch(row.rstrip(". ")))), None)
    if key is None:
        return None
    meant = number_in_text(key[3])
    if meant is None or not int(key[1] + key[2]):
        return None
    scale = meant[0] / int(key[1] + key[2])
    if scale not in (1, Fraction(1, 10), Fraction(1, 100), 10, 100):
        return None
    values: list[Fraction] = []
    for row in rows:
        read = _STEM.fullmatch(row.strip())
        if read is None:
            if not _KEY.fullmatch(row.rstrip(". ")):
                return None
            continue
        leaves = re.findall(r"\d", read[2])
        values.extend(int(read[1] + leaf) * scale for leaf in leaves)
    return NumberList(tuple(values), meant[1]) if values else None
