"""Sentences beside a story that may alter it: somebody leaves, the values are doubled, something is denied."""

import re
from collections.abc import Sequence

from paperaudit.model.ask import Ask
from paperaudit.model.fact import Given
from paperaudit.model.paper import Part, Question
from paperaudit.wording.scene import Scene
from paperaudit.wording.topics.heard import heard

_ENDING = 10
"""By so many letters at its end a sentence is known as the one that asks, however the ask is told."""
_ALTERS = re.compile(
    r"\b(?:doubled?|trebled?|tripled?|halved?|half|twice|removed?|add(?:ed|s)?|leaves?|left|joins?|joined|replaced?"
    r"|wrong(?:ly)?|mistakes?|incorrect|corrected|not|never|except|unless|only|another|other|more|fewer|less|without"
    r"|instead|excluded?|ignored?|increased?|decreased?|reduced|lost|extra|added|moved|changed?|absent|missing"
    r"|later|afterwards)\b|n[′']t\b"
)


def altered_beside(question: Question, part: Part, scene: Scene, ask: Ask, givens: Sequence[Given]) -> str:
    """A sentence on which a reading does not rest and that could alter what it is about; "" for none."""
    used = {given.text.strip(" .?!") for given in givens}
    asked = ask.text.strip(" .?!")
    for sentence in heard(question, part, scene).sentences:
        source = sentence.source.strip(" .?!")
        rests = any(source in one or one in source for one in used if one) or source in asked or asked in source
        rests = rests or source[-_ENDING:].lower() == asked[-_ENDING:].lower()
        if not rests and _ALTERS.search(sentence.text.lower()):
            return source
    return ""
