"""Reads the sentences of a text: facts, asks, instructions that go with an ask, and scenery."""

import re
from dataclasses import dataclass, field, replace

from paperaudit.errors import ExpressionNotRead
from paperaudit.maths.limits import check_limits
from paperaudit.model.fact import Given
from paperaudit.model.paper import Line
from paperaudit.model.reading import Unread
from paperaudit.wording.asides import Asides, asides_of
from paperaudit.wording.asking import Asked, read_asked
from paperaudit.wording.scene import Scene
from paperaudit.wording.sentences import Sentence, is_mathematics, sentences
from paperaudit.wording.stated import LONGEST_PROSE
from paperaudit.wording.statement import LONGEST_SENTENCE, read_clauses
from paperaudit.wording.tasks import is_algebra
from paperaudit.wording.topics.reading import topic_task

_COMMAND = re.compile(
    r"""(?: ^ | [,;:.] \s? | ^ \(? [a-z]{1,4} \) \s | \b (?: hence | then | thus | and | to | please ) \s )
        (?: calculate | find | determine | work \s out | compute | solve | show \s (?: that | whether ) | prove
          | verify | simplify | expand | factori[sz]e | evaluate | multiply \s out | write | express | convert | round
          | make | name | state | give | deduce | estimate | decide | explain \s why | rearrange | what
          | change \s the \s subject
          | how \s (?: big | large | long | wide | many | much ) ) \b
      | ^ (?: is | are | does | do ) \s (?! given | known )
      | \b [Ff]or \s (?: which | what ) \s (?: real \s )? values? \b
      | \b (?: what | how ) \b .* \?$""",
    re.VERBOSE,
)


@dataclass(slots=True)
class Prose:
    """What a text amounts to. `unfinished` are asks that could not be read, such as "Simplify:"."""

    givens: list[Given] = field(default_factory=list)
    asks: list[Asked] = field(default_factory=list)
    asides: list[Asides] = field(default_factory=list)
    unfinished: list[Unread] = field(default_factory=list)
    unread: list[Unread] = field(default_factory=list)


def read_prose(line: Line, scene: Scene) -> Prose:
    """The sentences of a text, one after the other; a command may be completed by the sentence behind it."""
    prose = Prose()
    if len(line.text) > LONGEST_PROSE:
        prose.unread.append(Unread(line.text[:200], "text", LONGEST_PROSE, "a shorter text", "", line.place))
        return prose
    command: Sentence | None = None
    for sentence in sentences(line.text):
        unfinished = len(prose.unfinished)
        try:
            check_limits(sentence.text, LONGEST_SENTENCE)
        except ExpressionNotRead as error:
            prose.unread.append(Unread(sentence.text[:200], "text", sentence.start, str(error), "", line.place))
        else:
            if command is None or not _completed(command, sentence, line, scene, prose):
                _read_sentence(sentence, line, scene, prose)
        command = sentence if len(prose.unfinished) > unfinished else None
    return prose


def _completed(command: Sentence, sentence: Sentence, line: Line, scene: Scene, prose: Prose) -> bool:
    """Whether a command alone and the sentence behind it are one ask: "Solve for x. 3x + 5 = 20"."""
    asked = read_asked(line.text[command.start : sentence.start + len(sentence.text)], line.place, "text", scene)
    if not isinstance(asked, Asked) or not is_algebra(asked.ask.task):
        return False
    prose.unfinished.pop()
    prose.asks.append(asked)
    return True


def _read_lines(sentence: Sentence, line: Line, scene: Scene, prose: Prose) -> None:
    """Lines that end without a stop, one statement each: tried where they make no sentence together."""
    start = sentence.start
    for words in sentence.text.split("\n"):
        if words.strip():
            _read_sentence(Sentence(words.strip(), start), line, scene, prose)
        start += len(words) + 1


def _read_sentence(sentence: Sentence, line: Line, scene: Scene, prose: Prose) -> None:
    asides = asides_of(scene.notation(sentence.text))
    if not asides.rest.text.strip(" .,;:!()"):
        prose.asides.append(asides)
    elif _COMMAND.search(asides.rest.text) or topic_task(asides) is not None:
        prose.asides.append(asides)
        asked = read_asked(sentence.text, line.place, "text", scene)
        if isinstance(asked, Asked):
            prose.asks.append(asked)
            if asked.ask.accuracy != asides.accuracy:
                # The accuracy is that of a size in the sentence: "x = 3.4 correct to 1 decimal place, find …".
                prose.asides[-1] = replace(asides, accuracy=asked.ask.accuracy)
        elif "\n" in sentence.text:
            prose.asides.pop()
            _read_lines(sentence, line, scene, prose)
        else:
            prose.unfinished.append(asked)
    else:
        if asides.not_to_scale:
            prose.asides.append(asides)
        found = read_clauses(sentence.text, line.place, "text", scene)
        if not isinstance(found, Unread):
            prose.givens.extend(found)
        elif "\n" in sentence.text:
            _read_lines(sentence, line, scene, prose)
        elif is_mathematics(sentence.text):
            prose.unread.append(found)
