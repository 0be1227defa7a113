"""What the columns of a data table hold: values, frequencies, classes, names, pairs, totals."""

import itertools
import re
from collections.abc import Sequence
from fractions import Fraction

from paperaudit.model.statistics_task import (
    Categories,
    Clashing,
    ClassInterval,
    Collected,
    Densities,
    Frequencies,
    Grouped,
    Pairs,
    Values,
)
from paperaudit.wording.topics.count_columns import place_of_counts
from paperaudit.wording.topics.told_counts import ToldCount, speaks_of
from paperaudit.wording.topics.value_lists import MOST_VALUES, NumberList, number_in_text

Column = tuple[str, tuple[str, ...]]
MIN_WORD = 3
"""Letters of the shortest word that can name a column."""
_DENSITY = re.compile(r"\bfrequency density\b|\bf\.?d\.?\b", re.IGNORECASE)
_TOTAL = re.compile(r"\s*(?:total|sum|in total|altogether|Σ\w?)\s*", re.IGNORECASE)
_END = r"-?\d+(?:[.,]\d+)?"
_CLASS = re.compile(
    rf"(?P<low>{_END}) ?(?:<|≤) ?[a-zA-Z] ?(?:<|≤) ?(?P<high>{_END})|(?P<from>{_END})"
    rf" ?(?:-|to) ?(?:(?:under|less than|below) |<)?"
    rf" ?(?P<upto>{_END})|\[(?P<left>{_END}) ?[;,] ?(?P<right>{_END})[)\]\[]"
)

_UP_TO = re.compile(rf"(?:(?P<low>{_END}) ?(?:<|≤) ?)?(?:[a-zA-Z] ?)?(?:<|≤|less than|under|up to) ?(?P<high>{_END})")


def spelled(text: str) -> str:
    """A cell with one minus and single spaces."""
    return re.sub(r"\s+", " ", text.strip().replace("−", "-").replace("–", "-").replace("—", "-").replace("<=", "≤"))


def class_interval(text: str) -> ClassInterval | None:
    """A class such as "10 < x ≤ 20", "10–19" or "10 to under 20"."""
    read = _CLASS.fullmatch(re.sub(r" ?(?:cm|mm|km|m|kg|g|min|s|years|h)$", "", spelled(text)))
    if read is None:
        return None
    low, high = next((one, other) for one, other in ((read["low"], read["high"]), (read["from"], read["upto"]),
                                                     (read["left"], read["right"])) if one)  # fmt: skip
    ends = Fraction(low.replace(",", ".")), Fraction(high.replace(",", "."))
    return ClassInterval(text.strip(), *ends) if ends[0] < ends[1] else None


def numbers_of(cells: tuple[str, ...]) -> NumberList | None:
    """The numbers of a column, or None where a cell is none."""
    found = [number_in_text(spelled(cell)) for cell in cells]
    known = [one for one in found if one is not None]
    units = {unit for _, unit in known if unit}
    if len(known) != len(found) or not known or len(units) > 1 or len(known) > MOST_VALUES:
        return None
    return NumberList(tuple(value for value, _ in known), units.pop() if units else "")


def unit_of_name(name: str) -> str:
    """The unit that a column's name carries: "Mass (kg)", "Time in minutes"."""
    read = re.search(r"\((?:in )?([^()]+)\)|,? in ([a-z]+)\s*$", name.strip())
    found = number_in_text(f"1 {(read[1] or read[2]).strip()}") if read else None
    return found[1] if found else ""


def collected_in(
    table: tuple[Column, ...], told: Sequence[ToldCount] = (), about: str = ""
) -> Collected | Clashing | None:
    """What a table of one or two columns holds, or the clash of its frequencies with its own total.

    `told` are the numbers of things in the sentences beside it, `about` is what a measure is wanted of: they tell
    which column counts where the headings do not.
    """
    columns = [(name, tuple(cell for cell in cells)) for name, cells in table]
    if len(columns) == 1:
        found = numbers_of(columns[0][1])
        return Values(found.values, found.unit or unit_of_name(columns[0][0])) if found else None
    if len(columns) != 2 or len(columns[0][1]) != len(columns[1][1]):
        return None
    if _DENSITY.search(columns[1][0]):
        return _with_densities(*columns)
    if "cumulative" in columns[1][0].lower():
        return _from_running_sums(*columns)
    wholes = [_whole_numbers(cells) for _, cells in columns]
    sums = [
        sum(whole[:-1] if _TOTAL.fullmatch(columns[1 - at][1][-1]) else whole) if whole is not None else None
        for at, whole in enumerate(wholes)
    ]
    at = place_of_counts([name for name, _ in columns], sums, told, about, _classes(columns[0][1]) is not None)
    if at is None:
        return _named_values(columns, about) or _pairs(columns)
    (name, heads), whole = columns[1 - at], wholes[at]
    if whole is None:
        return None
    if _TOTAL.fullmatch(heads[-1]):
        if sum(whole[:-1]) != whole[-1]:
            sum_text = " + ".join(map(str, whole[:-1]))
            return Clashing((f"{columns[at][0]}: {', '.join(map(str, whole[:-1]))}", f"{heads[-1]}: {whole[-1]}"),
                            (f"{sum_text} = {sum(whole[:-1])}", f"the table says {whole[-1]}: false"))  # fmt: skip
        heads, whole = heads[:-1], whole[:-1]
    return _with_counts(name, heads, whole)


def _named_values(columns: list[Column], about: str) -> Values | None:
    """The numbers beside names (days, players) where a measure is wanted of what heads them."""
    (_, names), (heading, cells) = columns
    found = numbers_of(cells)
    if found is None or any(map(_has_digit, names)) or len(set(names)) < len(names) or _TOTAL.fullmatch(names[-1]):
        return None
    wanted = about.strip().removeprefix("number of ").split(" ")[0]
    if len(wanted) < MIN_WORD or not speaks_of(heading, wanted):
        return None
    return Values(found.values, found.unit or unit_of_name(heading))


def _with_densities(heads: Column, sizes: Column) -> Densities | None:
    """The classes of a histogram with their frequency densities."""
    classes = _classes(heads[1])
    found = numbers_of(sizes[1])
    if classes is None or found is None or found.unit or min(found.values) < 0:
        return None
    return Densities(classes, found.values, unit_of_name(heads[0]))


def _from_running_sums(heads: Column, sums: Column) -> Grouped | Clashing | None:
    """Classes with their frequencies out of cumulative ones; None where the first class has no lower end."""
    counts = _whole_numbers(sums[1])
    ends = [_UP_TO.fullmatch(spelled(head)) for head in heads[1]]
    if counts is None:
        return None
    if any(after < before for before, after in itertools.pairwise(counts)):
        text = f"{sums[0]}: {', '.join(map(str, counts))}"
        return Clashing((text,), ("cumulative frequencies never become smaller", f"{text}: false"))
    classes = _classes(heads[1])
    if classes is None:
        lows = {one["low"] for one in ends if one is not None}
        if None in ends or len(lows) != 1:
            return None
        uppers = [Fraction(one["high"].replace(",", ".")) for one in ends if one is not None]
        low = lows.pop()
        if low is None and counts[0]:
            return None
        lowest = Fraction(low.replace(",", ".")) if low is not None else uppers.pop(0)
        counts = counts if low is not None else counts[1:]
        classes = _between(lowest, uppers)
    if classes is None or not counts:
        return None
    found = tuple(after - before for before, after in itertools.pairwise((0, *counts)))
    return Grouped(classes, found, unit_of_name(heads[0])) if sum(found) else None


def _between(lowest: Fraction, uppers: list[Fraction]) -> tuple[ClassInterval, ...] | None:
    ends = [lowest, *uppers]
    if any(other <= one for one, other in itertools.pairwise(ends)):
        return None
    texts = [str(float(one)) if one.denominator > 1 else str(one) for one in ends]
    return tuple(ClassInterval(f"{texts[at]} to {texts[at + 1]}", ends[at], ends[at + 1]) for at in range(len(uppers)))


def _classes(heads: tuple[str, ...]) -> tuple[ClassInterval, ...] | None:
    """The classes of a column in rising order; None where a cell is none."""
    found = tuple(one for one in map(class_interval, heads) if one is not None)
    rising = all(one.high <= other.low for one, other in itertools.pairwise(found))
    return found if found and len(found) == len(heads) and rising else None


def _with_counts(name: str, heads: tuple[str, ...], counts: tuple[int, ...]) -> Collected | None:
    if not heads or not sum(counts):
        return None
    unit = unit_of_name(name)
    values = numbers_of(heads)
    if values is not None:
        return (
            Frequencies(values.values, counts, values.unit or unit) if len(set(values.values)) == len(heads) else None
        )
    classes = _classes(heads)
    if classes is not None:
        return Grouped(classes, counts, unit)
    if any(class_interval(head) is not None for head in heads):
        return None
    names = tuple(head.strip() for head in heads)
    return Categories(names, counts) if len(set(names)) == len(names) and not any(map(_has_digit, names)) else None


def _has_digit(name: str) -> bool:
    return any(character.isdigit() for character in name)


def _whole_numbers(cells: tuple[str, ...]) -> tuple[int, ...] | None:
    plain = [re.sub(r"(?<=\d)[ ,](?=\d{3}$)", "", spelled(cell)) for cell in cells]
    return tuple(map(int, plain)) if all(re.fullmatch(r"\d{1,7}", cell) for cell in plain) else None


def _pairs(columns: list[Column]) -> Pairs | None:
    across, up = (numbers_of(cells) for _, cells in columns)
    if across is None or up is None:
        return None
    return Pairs(across.values, up.values, _short(columns[0][0]), _short(columns[1][0]))


def _short(name: str) -> str:
    """The letter of a column that has one: "x", "Mass (m)"."""
    plain = name.strip()
    lettered = re.fullmatch(r".*\(([a-z])\)", plain)
    return lettered[1] if lettered else plain
