"""Stories that come to one calculation, which is worked out as if the paper had asked for it."""

import re
from dataclasses import replace

from paperaudit.model.paper import Part, Question
from paperaudit.model.reading import Unread
from paperaudit.wording.asking import read_asked
from paperaudit.wording.scene import Scene
from paperaudit.wording.topics.calculations import (
    bills,
    clock_hands,
    earnings,
    equal_shares,
    growth,
    more_percents,
    numbers_asked,
    parts,
    paths,
    percent_chains,
    pieces,
    shopping,
)
from paperaudit.wording.topics.calculations.form import Form
from paperaudit.wording.topics.stories.plain import plain
from paperaudit.wording.topics.topic import Readers, Told
from paperaudit.wording.topics.whole_text import whole_of

FAMILIES: tuple[tuple[re.Pattern[str], tuple[Form, ...]], ...] = (
    (equal_shares.AHEAD, equal_shares.FORMS),
    (clock_hands.AHEAD, clock_hands.FORMS),
    (earnings.AHEAD, earnings.FORMS),
    (bills.AHEAD, bills.FORMS),
    (parts.AHEAD, parts.FORMS),
    (growth.AHEAD, growth.FORMS),
    (percent_chains.AHEAD, percent_chains.FORMS),
    (pieces.AHEAD, pieces.FORMS),
    (shopping.AHEAD, shopping.FORMS),
    (numbers_asked.AHEAD, numbers_asked.FORMS),
    (more_percents.AHEAD, more_percents.FORMS),
    (paths.AHEAD, paths.FORMS),
)
"""The forms of stories by the words that announce them."""


def _story(question: Question, part: Part, scene: Scene) -> Told | None:
    whole = whole_of(question, part, scene)
    if whole is None or question.table:
        return None
    said = calculation_of(". ".join(map(plain, whole.pieces)))
    asked = read_asked(said if said[:1].isupper() else f"Calculate {said}", whole.place, "ask", scene) if said else None
    if asked is None or isinstance(asked, Unread):
        return None
    accuracy, unit = whole.accuracy or asked.ask.accuracy, whole.unit or asked.ask.unit
    return Told(replace(asked.ask, text=whole.said, read_as=said, accuracy=accuracy, unit=unit))


def calculation_of(text: str) -> str:
    """The one calculation that a story comes to; "" for any other text, and for one that comes to several.

    >>> calculation_of("£45.60 is shared equally between 4 people. how much does each person get")
    '£45.60 ÷ 4'
    """
    found = {said for ahead, forms in FAMILIES if ahead.search(text) for said in _said(text, forms)}
    return found.pop() if len(found) == 1 else ""


def _said(text: str, forms: tuple[Form, ...]) -> list[str]:
    said = []
    for one in forms:
        pieces = one.pieces_of(text)
        if pieces is not None:
            try:
                said.append(one.comes_to(pieces))
            except (ValueError, ArithmeticError):
                # Pieces that have no such number: 25 o'clock, 3/0.
                continue
    return [one for one in said if one]


READERS = Readers(story=_story)
