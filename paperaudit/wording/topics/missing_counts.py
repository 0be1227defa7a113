"""A frequency that is missing from a table: from the mean that is told, or from how many there are."""

import re
from fractions import Fraction

from paperaudit.errors import ExpressionNotRead
from paperaudit.maths.peg import parsed
from paperaudit.maths.tree import first, has, the
from paperaudit.model.fact import Origin
from paperaudit.model.paper import Part, Question
from paperaudit.model.statistics_task import MissingCount
from paperaudit.model.statistics_task import Told as Noted
from paperaudit.wording.scene import Scene
from paperaudit.wording.topics.count_columns import FREQUENCY
from paperaudit.wording.topics.heard import Sentence, givens_of, heard
from paperaudit.wording.topics.registry import topic_named
from paperaudit.wording.topics.topic import Readers, Told
from paperaudit.wording.topics.value_tables import class_interval, numbers_of, spelled


def _story(question: Question, part: Part, scene: Scene) -> Told | None:
    table = _table(question)
    told = heard(question, part, scene)
    if table is None or told.too_long:
        return None
    values, counts, letter, middles = table
    mean: Fraction | None = None
    whole: int | None = None
    asked: Sentence | None = None
    sources = list[Sentence]()
    for sentence in told.sentences:
        try:
            node = parsed(topic_named("missing frequencies").rules(), "said", sentence.text.lower())
        except ExpressionNotRead:
            if re.search(r"\d|\bmean|median|mode", sentence.text):
                return None
            continue
        if (told_mean := first(node, "mean_is")) is not None:
            if mean is not None:
                return None
            mean = Fraction(re.findall(r"\d+(?:[.,]\d+)?", the(told_mean, "value").text)[0].replace(",", "."))
        if (told_whole := first(node, "whole_is")) is not None:
            if whole is not None:
                return None
            whole = int(the(told_whole, "count").text)
        if has(node, "ask"):
            named = first(node, "letter")
            if asked is not None or (named is not None and named.text != letter):
                return None
            asked = sentence
        if not has(node, "ask") or has(node, "mean_is"):
            sources.append(sentence)
    if asked is None or (mean is None and whole is None) or told.accuracy is not None:
        return None
    text = "; ".join(f"{name}: {', '.join(cell.strip() for cell in cells)}" for name, cells in question.table)
    given = [Sentence("", text, Origin.GIVEN, question.place), *sources]
    task = MissingCount(values, counts, letter or "f", mean, whole, middles)
    told.unit = ""
    read_as = (
        f"frequency {task.letter}, mean {mean}" if mean is not None else f"frequency {task.letter}, {whole} in all"
    )
    return Told(told.ask(task, asked.source, read_as, asked.place), givens_of(given, Noted))


def _table(question: Question) -> tuple[tuple[Fraction, ...], tuple[int | None, ...], str, bool] | None:
    """Values (or middles of classes), frequencies with one missing, its letter; None for any other table."""
    if len(question.table) != 2:
        return None
    (_, heads), (name, cells) = question.table
    if not FREQUENCY.search(name) or "cumulative" in name.lower() or len(heads) != len(cells):
        return None
    plain = [spelled(cell) for cell in cells]
    letters = [cell for cell in plain if not re.fullmatch(r"\d{1,6}", cell)]
    if len(letters) != 1 or not re.fullmatch(r"[a-z]|\??", letters[0]) or len(plain) < 2:
        return None
    counts = tuple(int(cell) if cell.isdigit() else None for cell in plain)
    letter = letters[0] if letters[0].isalpha() else ""
    numbers = numbers_of(heads)
    if numbers is not None:
        return (numbers.values, counts, letter, False) if len(set(numbers.values)) == len(heads) else None
    classes = [class_interval(head) for head in heads]
    if any(one is None for one in classes):
        return None
    return tuple((one.low + one.high) / 2 for one in classes if one is not None), counts, letter, True


READERS = Readers(story=_story)
