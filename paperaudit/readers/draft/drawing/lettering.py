"""Groups the glyphs of a page to short runs of print, and says which of them can be labels of a figure."""

import math
import re
import unicodedata
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from paperaudit.model.place import Box
from paperaudit.readers.draft.drawing.label_kinds import LabelKind, kind_of
from paperaudit.readers.draft.page import Glyph, Point, box_around

SAME_BASELINE = 0.8
"""Points between baselines of one run."""
GAP = 0.62
"""Widths of a gap, as a share of the size of print, from which on a new run begins."""
SPACE = 0.12
"""The same from which on there is a space."""
TIGHT = 0.2
"""The same for what is raised or lowered beside a run."""
RAISED, LOWERED = 0.22, 0.08
"""How far a power stands over the baseline and an index under it, as a share of the size of print."""
SMALLER = 0.86
"""An index is so much smaller than what it stands at, at most."""
MIDDLE = 0.34
"""The middle of a capital or a figure over the baseline, as a share of the size of print."""
LONGEST = 22
"""Characters of the longest label."""
_DEGREES = "°˚º"
"""A size ends with these: 33°33° is two of them."""
_DASHES = str.maketrans({"-": "−", "–": "−", "˚": "°", "º": "°", "’": "′", "'": "′", "ʹ": "′", "∘": "°", "◦": "°"})
_POWERS = str.maketrans("0123456789−+n", "⁰¹²³⁴⁵⁶⁷⁸⁹⁻⁺ⁿ")
_INDICES = str.maketrans("0123456789", "₀₁₂₃₄₅₆₇₈₉")


@dataclass(frozen=True, slots=True)
class Run:
    """Glyphs that stand close together on one baseline, as linear text."""

    text: str
    box: Box
    baseline: float
    size: float
    glyphs: tuple[Glyph, ...]
    rules: tuple[int, ...] = ()
    """The indexes of the paths that are rules of its fractions and roots."""

    @property
    def middle(self) -> Point:
        """The middle of its letters, which rise over the baseline by some seven tenths of the size of print."""
        across = (self.box[0] + self.box[2]) / 2
        if self.glyphs and not self.glyphs[0].upright:
            return across, (self.box[1] + self.box[3]) / 2
        return across, self.baseline - MIDDLE * self.size

    @property
    def half_width(self) -> float:
        """Half of how far it reaches across."""
        return (self.box[2] - self.box[0]) / 2

    @property
    def kind(self) -> LabelKind:
        """What it can be in a figure."""
        return kind_of(self.text)


def runs_of_print(glyphs: Iterable[Glyph]) -> list[Run]:
    """All runs of a page, what is raised or lowered joined to what it stands at."""
    upright = [glyph for glyph in glyphs if glyph.upright and glyph.text.strip()]
    turned = [glyph for glyph in glyphs if not glyph.upright and glyph.text.strip()]
    groups = [group for level in _levels(upright) for group in _parted(level)]
    groups = _with_raised(groups)
    level = [label for group in groups for label in _labels(_run(group))]
    return level + [_turned_run(group) for group in _chains(turned)]


def _labels(run: Run) -> list[Run]:
    """A run that is no label and is two or more labels side by side, as these."""
    if run.kind is not LabelKind.WORDS or len(run.text) > LONGEST:
        return [run]
    glyphs = sorted(run.glyphs, key=lambda one: (one.box[0], one.index))
    if re.fullmatch(r"[A-Z]\d+(?:[.,]\d+)?°", run.text):
        return [_run(glyphs[:1]), _run(glyphs[1:])]
    for at in range(1, len(glyphs)):
        level = abs(glyphs[at].baseline - glyphs[at - 1].baseline) <= SAME_BASELINE
        ended = glyphs[at - 1].text in _DEGREES and (glyphs[at].text.isalnum() or glyphs[at].text in "(√")
        if level and (ended or glyphs[at].box[0] - glyphs[at - 1].box[2] > SPACE * run.size):
            first = _run(glyphs[:at])
            rest = _labels(_run(glyphs[at:]))
            if first.kind is not LabelKind.WORDS and all(one.kind is not LabelKind.WORDS for one in rest):
                return [first, *rest]
    return [run]


def _levels(glyphs: Sequence[Glyph]) -> Iterable[list[Glyph]]:
    level: list[Glyph] = []
    for glyph in sorted(glyphs, key=lambda one: one.baseline):
        if level and glyph.baseline - level[-1].baseline > SAME_BASELINE:
            yield level
            level = []
        level.append(glyph)
    if level:
        yield level


def _parted(level: Sequence[Glyph]) -> Iterable[list[Glyph]]:
    group: list[Glyph] = []
    reach = 0.0
    for glyph in sorted(level, key=lambda one: (one.box[0], one.index)):
        if group and glyph.box[0] - reach > GAP * min(glyph.size, group[-1].size):
            yield group
            group, reach = [], 0.0
        group.append(glyph)
        reach = max(reach, glyph.box[2])
    if group:
        yield group


def _with_raised(groups: list[list[Glyph]]) -> list[list[Glyph]]:
    """Small groups that stand right behind the end of another one, higher or lower, go with it."""
    small = [group for group in groups if len(group) <= 3]
    ends: dict[tuple[int, int], list[list[Glyph]]] = {}
    for group in groups:
        last = max(group, key=lambda one: one.box[2])
        ends.setdefault((round(last.box[2] / 8), round(last.baseline / 8)), []).append(group)
    gone: set[int] = set()
    for group in sorted(small, key=lambda one: one[0].box[0]):
        host = _host(group, ends)
        if host is not None and id(host) not in gone:
            host.extend(group)
            last = max(group, key=lambda one: one.box[2])
            ends.setdefault((round(last.box[2] / 8), round(host[0].baseline / 8)), []).append(host)
            gone.add(id(group))
    joined = [group for group in groups if id(group) not in gone]
    return _rejoined(joined)


def _host(group: Sequence[Glyph], ends: dict[tuple[int, int], list[list[Glyph]]]) -> list[Glyph] | None:
    first = group[0]
    across, down = round(first.box[0] / 8), round(first.baseline / 8)
    for column in (across, across - 1, across + 1):
        for row in (down, down + 1, down - 1, down + 2):
            for host in ends.get((column, row), ()):
                if host is not group and _stands_at(first, host):
                    return host
    return None


def _stands_at(small: Glyph, host: Sequence[Glyph]) -> bool:
    main = host[0]
    last = max(host, key=lambda one: one.box[2])
    gap = small.box[0] - last.box[2]
    shift = main.baseline - small.baseline
    if not -TIGHT * main.size <= gap <= TIGHT * main.size + 0.4:
        return False
    raised = RAISED * main.size <= shift <= 0.75 * main.size and (
        small.size <= main.size * SMALLER or small.text in "°∘◦oº˚"
    )
    lowered = LOWERED * main.size <= -shift <= 0.4 * main.size and small.size <= main.size * SMALLER
    return raised or lowered


def _rejoined(groups: list[list[Glyph]]) -> list[list[Glyph]]:
    """Groups of one baseline that only what is raised between them had parted: "x²" and "+ 1"."""
    found: list[list[Glyph]] = []
    for group in sorted(groups, key=lambda one: (round(one[0].baseline), min(glyph.box[0] for glyph in one))):
        if found:
            before = found[-1]
            reach = max(glyph.box[2] for glyph in before)
            left = min(glyph.box[0] for glyph in group)
            level = abs(before[0].baseline - group[0].baseline) <= SAME_BASELINE
            if level and len({round(one.baseline) for one in before}) > 1 and -1 <= left - reach <= GAP * group[0].size:
                before.extend(group)
                continue
        found.append(group)
    return found


def _run(group: Sequence[Glyph]) -> Run:
    main = group[0]
    size = max(glyph.size for glyph in group)
    level = [glyph for glyph in group if abs(glyph.baseline - main.baseline) <= SAME_BASELINE]
    text = ""
    reach = None
    for glyph in sorted(group, key=lambda one: (one.box[0], one.index)):
        letters = plain(glyph.text)
        shift = main.baseline - glyph.baseline
        if shift >= RAISED * main.size and glyph not in level:
            letters = "°" if letters in "°oO0" else letters.translate(_POWERS)
        elif -shift >= LOWERED * main.size and glyph not in level:
            letters = letters.translate(_INDICES)
        elif reach is not None and glyph.box[0] - reach > SPACE * size:
            text += " "
        text += letters
        reach = glyph.box[2] if reach is None else max(reach, glyph.box[2])
    text = _spaced(text) if len(text) <= 2 * LONGEST else text
    return Run(text, box_around([glyph.box for glyph in group]), main.baseline, size, tuple(group))


def label_text(text: str) -> str:
    """A text of the reader of rows in the spelling of labels.

    >>> label_text("180 ° − 2x"), label_text("3 1/2cm")
    ('180° − 2x', '3 1/2 cm')
    """
    return _spaced(plain(text))


def _chains(turned: Sequence[Glyph]) -> Iterable[list[Glyph]]:
    chain: list[Glyph] = []
    for glyph in sorted(turned, key=lambda one: one.index):
        if chain and (
            math.dist(glyph.middle, chain[-1].middle) > 1.3 * glyph.size or glyph.index - chain[-1].index > 2
        ):
            yield chain
            chain = []
        chain.append(glyph)
    if chain:
        yield chain


def _turned_run(chain: Sequence[Glyph]) -> Run:
    text = ""
    for glyph, before in zip(chain, (None, *chain), strict=False):
        if before is not None and math.dist(glyph.middle, before.middle) > 0.85 * glyph.size:
            text += " "
        text += plain(glyph.text)
    return Run(
        _spaced(text), box_around([glyph.box for glyph in chain]), chain[0].baseline, chain[0].size, tuple(chain)
    )


def plain(text: str) -> str:
    """Letters of mathematical alphabets and of ligatures as plain ones.

    >>> plain("𝑥"), plain("’"), plain("²")
    ('x', '′', '²')
    """
    return "".join(
        one if one in "²³½⅓¼⅔¾⁰¹₀₁₂₃₄₅₆₇₈₉°º" else unicodedata.normalize("NFKC", one) for one in text
    ).translate(_DASHES)


def _spaced(text: str) -> str:
    """Signs between terms with a space on both sides, none elsewhere but before a unit."""
    text = re.sub(r"\s*([−+])\s*", r" \1 ", text).strip()
    text = re.sub(r"(?<=[\d)a-zα-ω]) (?=°)", "", text)
    text = re.sub(r"(?<=\d) (?=[xyzα-ω](?![a-z]))", "", text)
    text = re.sub(r"(?<=[\dx-z)])(?=(?:mm|cm|dm|km|m)$)", " ", text)
    return re.sub(r"\( | (?=\))", lambda found: found.group().strip(), text)
