"""The sentences of a whole part in the grammars' spelling, with what each says of accuracy, unit and reasons."""

import re
from collections.abc import Iterator
from dataclasses import dataclass, field

from paperaudit.maths.limits import LONGEST_TEXT
from paperaudit.maths.notation import UNIT_MARK
from paperaudit.model.ask import Accuracy, Ask
from paperaudit.model.fact import Given, Origin
from paperaudit.model.paper import Line, Part, Question
from paperaudit.model.place import NOWHERE, Place
from paperaudit.model.topic import TopicFact, TopicTask
from paperaudit.wording.asides import Asides, asides_of
from paperaudit.wording.scene import Scene
from paperaudit.wording.sentences import sentences

MOST_SENTENCES = 60
_LIST_MARK = re.compile(r"^\(?(?:[a-h]|[ivx]{1,4})\) ")


@dataclass(frozen=True, slots=True)
class Sentence:
    """A sentence: `text` in plain spelling without its asides, `source` as written; `asked` for the ask's own line."""

    text: str
    source: str
    origin: Origin
    place: Place = NOWHERE
    asked: bool = False


@dataclass(slots=True)
class Heard:
    """Every sentence of a part, the question's first, and what they say of the answer."""

    sentences: list[Sentence] = field(default_factory=list)
    accuracy: Accuracy | None = None
    unit: str = ""
    reasons: bool = False
    too_long: bool = False

    def ask(self, task: TopicTask, text: str, read_as: str, place: Place) -> Ask:
        """An ask of this part with the accuracy and the rest that its sentences name."""
        said = text.strip(" .?!")
        return Ask(task, said, self.accuracy, self.unit, self.reasons, read_as, place)


def heard(question: Question, part: Part, scene: Scene) -> Heard:
    """The sentences of a part's and its question's texts, ask and givens."""
    found = Heard()
    lines: list[tuple[Line | None, Origin, bool]] = [(question.text, Origin.TEXT, False)]
    lines += [(line, Origin.GIVEN, False) for line in (*question.given, *part.given)]
    lines += [(part.text, Origin.TEXT, False), (part.ask, Origin.TEXT, True)]
    for line, origin, asked in lines:
        if line is None:
            continue
        if len(line.text) > LONGEST_TEXT * 2:
            found.too_long = True
            return found
        for source in _pieces(line.text, origin):
            _hear(source, line, origin, asked, scene, found)
    found.too_long = len(found.sentences) > MOST_SENTENCES
    return found


def _pieces(text: str, origin: Origin) -> Iterator[str]:
    """Lines by themselves where one of them is a row of a diagram or a list; a given is one piece."""
    if origin is Origin.GIVEN:
        yield text.strip()
        return
    for sentence in sentences(text):
        rows = [row.strip() for row in sentence.text.split("\n") if row.strip()]
        if len(rows) > 1 and any(re.match(r"^[-−]?\d[\d\s,;|.]*$", row) or "|" in row for row in rows):
            yield from rows
        else:
            yield re.sub(r"\s+", " ", sentence.text)


def _hear(source: str, line: Line, origin: Origin, asked: bool, scene: Scene, found: Heard) -> None:
    asides = asides_of(scene.notation(source))
    found.accuracy = asides.accuracy or found.accuracy
    found.unit = asides.unit or found.unit
    found.reasons = found.reasons if asides.reasons is None else asides.reasons
    text = _LIST_MARK.sub("", asides.rest.text.replace(UNIT_MARK, " ").strip())
    if text.strip(" .,;:!()"):
        found.sentences.append(Sentence(text, source.strip(), origin, line.place, asked))


def givens_of(told: list[Sentence], fact: type[TopicFact]) -> tuple[Given, ...]:
    """One given a sentence that a reading rests on, with a fact that says it."""
    return tuple(Given(one.source, (fact(one.source),), one.origin, one.place) for one in told)  # type: ignore[call-arg]


def plain(asides: Asides) -> str:
    """The text of an ask without the mark of units."""
    return asides.rest.text.replace(UNIT_MARK, " ")
