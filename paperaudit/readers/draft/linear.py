"""A row of signs as linear text: powers and indices, brackets where the print has none, spaces where it has gaps."""

import itertools
import re
from collections.abc import Sequence
from dataclasses import dataclass

from paperaudit.readers.draft.gaps import Gaps
from paperaudit.readers.draft.grouped import as_exponent
from paperaudit.readers.draft.sign import Sign
from paperaudit.readers.draft.stems import Stem, rows_of_stems
from paperaudit.readers.draft.symbol_fonts import shows_pictures

NAMED_FUNCTIONS = frozenset(
    ("sin", "cos", "tan", "cot", "sec", "cosec", "csc", "log", "ln", "lim", "max", "min", "arcsin", "arccos", "arctan")
)
_WITH_ARGUMENT = NAMED_FUNCTIONS - {"lim", "max", "min"}
_BINARY = frozenset("=+−–-×÷±<>≤≥≠≈≡·")
_BEHIND_NOTHING = _BINARY | frozenset("([{|,;:/√∛∜")
_SIGN_ALONE = re.compile(r"^([−–-]) ")
"""A minus in front, which belongs to what follows."""
_RAISED = str.maketrans("0123456789−–-", "⁰¹²³⁴⁵⁶⁷⁸⁹⁻⁻⁻")
_LOWERED = str.maketrans("0123456789", "₀₁₂₃₄₅₆₇₈₉")
_DEGREES = frozenset({"°", "∘", "◦", "o", "º", "˚"})
_PRIMES = frozenset({"′", "″", "'", "''", "′′", "*", "†", "™", "®"})
_ORDINALS = frozenset({"st", "nd", "rd", "th"})
_INDEXED_ROOT = re.compile(r"(?<![\w)\]²³⁴⁵⁶⁷⁸⁹¹⁰⁻])([³⁴])√")
"""A root whose index was typed as a raised figure in front of it."""
_ROOTS = {"³": "∛", "⁴": "∜"}
_LARGE = {"∑": "Σ", "∏": "Π", "∫": "∫", "Σ": "Σ"}


@dataclass(frozen=True, slots=True)
class Linear:
    """Signs as text: `axis` and `size` are those of the row, `rows` counts the rows that were found among them."""

    text: str
    axis: float
    baseline: float
    size: float
    rows: int
    doubts: tuple[str, ...] = ()


def inner_text(signs: Sequence[Sign]) -> Linear:
    """What stands in a numerator, under a root or in a power; operators get spaces whatever the print has."""
    rows = rows_of_stems(signs)
    main = max(rows, key=len)
    size = max(stem.sign.size for stem in main)
    axis = next(stem.sign.axis for stem in main if stem.sign.size == size)
    text = " ".join(_SIGN_ALONE.sub(r"\1", written(row, Gaps(row), inner=True)[0]) for row in rows)
    baseline = max(stem.sign.baseline for stem in main if stem.sign.size == size)
    return Linear(text, axis, baseline, size, len(rows))


def written(row: Sequence[Stem], gaps: Gaps, inner: bool = False) -> tuple[str, tuple[str, ...]]:
    """The text of stems that stand in one row, and what of it is doubtful.

    `inner` is for what stands in a fraction, a root or a power, where print leaves out the gaps round operators.
    """
    text, doubts, word = "", [], ""
    parted = [False, *(gaps.between(*pair) for pair in itertools.pairwise(row)), True]
    for at, stem in enumerate(row):
        before = row[at - 1] if at else None
        after = row[at + 1] if not parted[at + 1] and not _begins_of(row, at + 1) else None
        gap = parted[at] or _begins_of(row, at)
        if before is not None and not gap:
            gap = _apart(text, word, before, stem, inner)
        body, found = _with_scripts(stem, text if not gap else "", word if not gap else "")
        doubts += [*stem.sign.doubts, *found]
        if at and stem.sign.text == "•" and shows_pictures(stem.sign.font):
            doubts.append("a picture stands here in place of a sign")
        if after is not None and _is_raised_before(stem, after):
            body = _as_power(body, "")[0]
        if _needs_brackets(stem, (None if gap else before, after), text, word):
            body = f"({body})"
        elif _is_mixed(stem, before, text):
            gap = True
        text += (" " if gap and text and not text.endswith(" ") else "") + body
        plain = stem.sign.text if stem.sign.text.isalpha() else ""
        word = (word if not gap else "") + plain if plain else ""
    return _INDEXED_ROOT.sub(lambda found: _ROOTS[found[1]], text), tuple(dict.fromkeys(doubts))


def _apart(text: str, word: str, before: Stem, stem: Stem, inner: bool) -> bool:
    """Whether a space is wanted where the print has none that is wide enough."""
    sign, last = stem.sign.text, text[-1:]
    if word in NAMED_FUNCTIONS and (sign.isalnum() or sign[0] in "√∛∜") and _other_kind(before, stem):
        return True
    if before.sign.text[:1] in _LARGE and (before.raised or before.lowered or "{" in before.sign.text):
        return True
    if (before.raised or before.lowered) and sign[:1].isalnum() and _runs_on(text):
        return True
    if not inner:
        return False
    if sign in _BINARY:
        return bool(text.strip()) and last not in _BEHIND_NOTHING
    return before.sign.text in _BINARY and len(text.rstrip()) > 1 and text.rstrip()[-2:-1] == " "


def _is_raised_before(stem: Stem, after: Stem) -> bool:
    """Whether a small sign stands raised before what it belongs to, as the 5 of ⁵C₂."""
    lift = (after.sign.axis - stem.sign.axis) / after.sign.size
    return stem.sign.shape == "glyph" and stem.sign.size < 0.88 * after.sign.size and 0.13 < lift < 0.8


def _begins_of(row: Sequence[Stem], at: int) -> bool:
    """Whether the word "of" begins here, behind a fraction: programs leave it hardly any gap."""
    behind = at > 0 and row[at - 1].sign.shape in ("fraction", "number fraction")
    return behind and [stem.sign.text for stem in row[at : at + 2]] == ["o", "f"]


def _other_kind(before: Stem, stem: Stem) -> bool:
    """Whether a function's name ends here: another font, a bracketless argument behind a power, a small gap."""
    gap = stem.sign.left - before.right
    scripts = bool(before.raised or before.lowered)
    return (
        scripts
        or before.sign.font != stem.sign.font
        or before.sign.italic != stem.sign.italic
        or (gap > 0.05 * stem.sign.size)
        or not stem.sign.text.isalpha()
    )


def _runs_on(text: str) -> bool:
    """Whether a letter behind the text would be taken into its power or index: x^n, T_n."""
    return len(text) > 1 and (text[-2] in "^_" or (text[-1] in "₀₁₂₃₄₅₆₇₈₉" and "log" in text[-8:]))


def _needs_brackets(stem: Stem, touching: tuple[Stem | None, Stem | None], text: str, word: str) -> bool:
    """Whether a fraction is a factor of what touches it, which its linear form would not show.

    `touching` are its neighbours that no space parts from it.
    """
    before, after = touching
    if stem.sign.shape in ("fraction", "number fraction", "root") and stem.raised:
        return True
    if stem.sign.shape not in ("fraction", "number fraction"):
        return False
    if word in _WITH_ARGUMENT or (after is not None and _is_factor(after.sign)):
        return True
    if before is None:
        return False
    last = text[-1:]
    return stem.sign.shape == "fraction" if last.isdigit() else last.isalpha() or last in ")]²³⁴⁵⁶⁷⁸⁹¹⁰½"


def _is_factor(sign: Sign) -> bool:
    return sign.text[:1].isalnum() or sign.text[:1] in "([√∛∜" or sign.shape in ("fraction", "number fraction", "root")


def _is_mixed(stem: Stem, before: Stem | None, text: str) -> bool:
    """Whether a fraction stands right behind a whole number."""
    return stem.sign.shape == "number fraction" and before is not None and text[-1:].isdigit()


def _with_scripts(stem: Stem, text: str, word: str) -> tuple[str, list[str]]:
    """A sign with its powers and indices behind it."""
    sign, doubts = stem.sign, []
    body = sign.text
    if body in _LARGE and (stem.raised or stem.lowered):
        low, high = (_inside(part).replace(" ", "") for part in (stem.lowered, stem.raised))
        doubts += [doubt for part in (*stem.lowered, *stem.raised) for one in part.signs() for doubt in one.doubts]
        return _LARGE[body] + (f"_{{{low}}}" if low else "") + (f"^{{{high}}}" if high else ""), doubts
    if stem.lowered:
        low = _inside(stem.lowered)
        doubts += [doubt for part in stem.lowered for one in part.signs() for doubt in one.doubts]
        body += _as_index(low)
    if stem.raised:
        high = _inside(stem.raised)
        doubts += [doubt for part in stem.raised for one in part.signs() for doubt in one.doubts]
        power, doubt = _as_power(high, text + sign.text)
        body += power
        doubts += [doubt] if doubt else []
    return body, doubts


def _inside(stems: Sequence[Stem]) -> str:
    row = sorted(stems, key=lambda one: one.sign.key)
    return _SIGN_ALONE.sub(r"\1", written(row, Gaps(row), inner=True)[0]) if row else ""


def _as_index(text: str) -> str:
    if text.isascii() and text.isdecimal():
        return text.translate(_LOWERED)
    return f"_{as_exponent(text)}"


def _as_power(text: str, base: str) -> tuple[str, str]:
    """A power behind its base, with the doubt that it leaves: a raised small circle or o is a degree sign."""
    if text in _DEGREES:
        return "°", ""
    if text[:1] in ("°", "∘", "◦") and text[1:] in ("C", "F"):
        return f"°{text[1:]}", ""
    if text in _PRIMES or (text in _ORDINALS and (base[-1:].isdigit() or base[-1:] == "n")):
        return text, ""
    digits = text.translate(_RAISED)
    if (text and text.lstrip("−–-").isdecimal() and text.isdecimal()) or (text[1:].isdecimal() and text[0] in "−–-"):
        unclear = text == "0" and base[-1:].isdigit()
        return digits, f"the raised 0 behind {base.split()[-1]} may be a degree sign or a power" if unclear else ""
    return f"^{as_exponent(text)}", ""
