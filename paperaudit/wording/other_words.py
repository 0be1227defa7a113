"""Sentences that say in other words what the grammars read: "Multiply out and simplify" is "Expand and simplify".

Tried where a part is not read as it stands. A rule takes a sentence by all of its words, so that none is lost.
"""

import re
from collections.abc import Iterator
from dataclasses import dataclass, replace
from functools import cache
from pathlib import Path as File

from paperaudit.model.paper import Line, Part, Question
from paperaudit.model.reading import Reading
from paperaudit.wording.sentences import sentences
from paperaudit.wording.stated import LONGEST_PROSE
from paperaudit.wording.statement import LONGEST_SENTENCE

_SHORT = {
    "FIND": r"(?:find|determine|calculate|state|write down|give|work out|obtain)",
    "VALUES": r"(?:all )?(?:the )?(?:real )?(?:possible )?(?:values?|range of values|set of values)",
    "SIGNED": r"[^?]*(?:[=<>≤≥]|!=)[^?]*?",
    "END": r"(?P<end>[.?!]*)$",
}
"""What recurs in the expressions of the rules."""
_ARROW = "→ "
_MOST_CHANGES = 6
_FORM = re.compile(r"(?<=[\w)²³])[.] (?:Give|Write|Leave|Express) (?:your|the) answer( in the form )")
"""A sentence that only says the form of the answer belongs to the ask before it."""
_ASK_BEHIND = re.compile(r"(?<=[.] )[a-z](?=[a-z]{3})")
"""The first letter of an ask that a rule puts into a sentence of its own."""


@dataclass(frozen=True, slots=True)
class OtherWords:
    """A question and its part with sentences in other words; `pairs` are the sentences as written and as changed."""

    question: Question
    part: Part
    pairs: tuple[tuple[str, str], ...]


def in_other_words(question: Question, part: Part) -> OtherWords | None:
    """The texts in the words of the grammars; None where no rule fits."""
    pairs: list[tuple[str, str]] = []
    question = replace(question, text=_changed(question.text, pairs))
    part = replace(part, text=_changed(part.text, pairs), ask=_changed(part.ask, pairs))
    return OtherWords(question, part, tuple(pairs)) if any(one != other for one, other in pairs) else None


def as_written(said: OtherWords, reading: Reading, question: Question, part: Part) -> Reading:
    """The reading of other words for the paper's own question, which says what the ask was read as."""
    if reading.ask is None:
        return Reading(question, part, reading.givens, None, reading.unread)
    short = reading.ask.text.strip(" .?!")
    own = [one for one, other in said.pairs if short in other]
    text = (own or [said.pairs[-1][0]])[-1].strip(" .?!")
    ask = replace(
        reading.ask, text=text, read_as=reading.ask.read_as or (short if short != text else ""), reworded=True
    )
    question = replace(question, not_to_scale=reading.question.not_to_scale)
    return Reading(question, part, reading.givens, ask, reading.unread)


def rewritten(sentence: str) -> str:
    """A sentence in the words of the grammars, itself where no rule fits.

    >>> rewritten("Multiply out and simplify (x + 1)(x + 2).")
    'Expand and simplify (x + 1)(x + 2).'
    """
    if len(sentence) > LONGEST_SENTENCE:
        return sentence
    for _ in range(_MOST_CHANGES):
        found = next(_matches(sentence), None)
        if found is None or found == sentence:
            break
        sentence = found
    return sentence


def _matches(sentence: str) -> Iterator[str]:
    for pattern, into in _rules():
        changed = pattern.sub(into, sentence, count=1)
        if changed != sentence:
            yield _ASK_BEHIND.sub(lambda found: found[0].upper(), " ".join(changed.split()))


@cache
def _rules() -> tuple[tuple[re.Pattern[str], str], ...]:
    """The rules of the file beside this one, in its order."""
    written = File(__file__).with_suffix(".rules").read_text(encoding="utf-8").splitlines()
    lines = [line for line in written if line and not line.startswith("#")]
    return tuple(
        (_compiled(pattern), re.sub(r"<(\w+)>", r"\\g<\1>", into.removeprefix(_ARROW)))
        for pattern, into in zip(lines[::2], lines[1::2], strict=True)
    )


def _compiled(pattern: str) -> re.Pattern[str]:
    for short, long in _SHORT.items():
        pattern = pattern.replace(short, long)
    return re.compile(pattern, re.IGNORECASE | re.DOTALL)


def _changed(line: Line | None, pairs: list[tuple[str, str]]) -> Line | None:
    if line is None or len(line.text) > LONGEST_PROSE:
        return line
    found = [(one.text, rewritten(one.text)) for one in sentences(_FORM.sub(r", giving your answer\1", line.text))]
    pairs.extend(found)
    return replace(line, text=" ".join(other for _, other in found)) if any(a != b for a, b in found) else line
