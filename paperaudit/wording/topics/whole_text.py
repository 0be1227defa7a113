"""All sentences of a part as one text, for topics whose sentences only together say what is meant."""

import re
from collections.abc import Callable
from dataclasses import dataclass, field

from parsimonious.nodes import Node

from paperaudit.errors import ExpressionNotRead
from paperaudit.maths.limits import LONGEST_TEXT
from paperaudit.maths.notation import UNIT_MARK
from paperaudit.maths.peg import parsed
from paperaudit.maths.write import write
from paperaudit.model.ask import Accuracy, Ask
from paperaudit.model.fact import Given, Origin
from paperaudit.model.paper import Line, Part, Question
from paperaudit.model.place import NOWHERE, Place
from paperaudit.model.reckoning import Reckoning
from paperaudit.model.topic import TopicFact
from paperaudit.wording.asides import asides_of
from paperaudit.wording.scene import NotUnderstood, Scene
from paperaudit.wording.sentences import sentences
from paperaudit.wording.topics.topic import Told, Topic

Task = Callable[[Node], Reckoning]
MOST_SENTENCES = 8


@dataclass(frozen=True, slots=True)
class Sentence(TopicFact):
    """A sentence that a story rests on, as written."""

    text: str

    def in_words(self) -> str:
        """The statement as it is printed."""
        return self.text


@dataclass(slots=True)
class Whole:
    """The sentences of a part in plain spelling, with what was cut out of them; `said` is the last one."""

    pieces: list[str] = field(default_factory=list)
    givens: list[Given] = field(default_factory=list)
    accuracy: Accuracy | None = None
    unit: str = ""
    letters: bool = False
    said: str = ""
    place: Place = NOWHERE


def story_of(
    topic: Callable[[], Topic],
    task: Task,
    question: Question,
    part: Part,
    scene: Scene,
    spelled: Callable[[str], str] = str,
    letters: bool = False,
) -> Told | None:
    """The whole part as one reckoning of a topic; None where a word of it is not understood.

    `spelled` brings each sentence to the spelling of the topic's grammar; `letters` keeps "in terms of x" in it.
    """
    whole = whole_of(question, part, scene, letters)
    if whole is None:
        return None
    try:
        reckoning = task(parsed(topic().rules(), "ask", ". ".join(map(spelled, whole.pieces))))
    except (ExpressionNotRead, NotUnderstood):
        return None
    ask = Ask(reckoning, whole.said, whole.accuracy, whole.unit, read_as=read_as(reckoning), place=whole.place)
    return Told(ask, tuple(given for given in whole.givens if any(map(str.isdigit, given.text))))


def whole_of(question: Question, part: Part, scene: Scene, letters: bool = False) -> Whole | None:
    """Every sentence of a part in order; None where one cannot stand in a story."""
    whole = Whole(letters=letters)
    lines: list[tuple[Line | None, Origin]] = [(question.text, Origin.TEXT)]
    lines += [(line, Origin.GIVEN) for line in (*question.given, *part.given)]
    lines += [(part.text, Origin.TEXT), (part.ask, Origin.TEXT)]
    for line, origin in lines:
        if line is not None and not _add(line, origin, scene, whole):
            return None
    last = part.ask or part.text or question.text
    if last is not None:
        whole.place, whole.said = last.place, _last(last.text)
    return whole


def _add(line: Line, origin: Origin, scene: Scene, whole: Whole) -> bool:
    if len(line.text) > LONGEST_TEXT:
        return False
    for sentence in sentences(line.text):
        asides = asides_of(scene.notation(sentence.text))
        if (asides.terms and not whole.letters) or len(whole.pieces) > MOST_SENTENCES:
            return False
        whole.accuracy, whole.unit = asides.accuracy or whole.accuracy, asides.unit or whole.unit
        text = plain_of(asides.rest.text).strip(" .,;:?!")
        text += f" in terms of {asides.terms}" if asides.terms else ""
        if text and text not in whole.pieces:
            whole.pieces.append(text)
            whole.givens.append(Given(sentence.text, (Sentence(sentence.text),), origin, line.place))
    return True


def plain_of(text: str) -> str:
    """The text without the mark of units and with single spaces."""
    return " ".join(text.replace(UNIT_MARK, " ").split())


def _last(text: str) -> str:
    found = [sentence.text for sentence in sentences(text)]
    found = [
        one for one in found if not re.match(r"(?:Give|Leave|Round|Write) (?:your|the|all) (?:final )?answers?\b", one)
    ] or found
    return found[-1].strip(" .?!") if found else text.strip()


def read_as(reckoning: Reckoning) -> str:
    """What was understood: "cylinder: radius = 3 cm, height = 10 cm; the volume is wanted"."""
    amounts = ", ".join(f"{amount.name} = {write(amount.value)}" for amount in reckoning.amounts)
    details = f" ({', '.join(reckoning.details)})" if reckoning.details else ""
    wanted = " and ".join(f"the {name}" for name in reckoning.wanted)
    return f"{reckoning.kind}{details}: {amounts}; wanted: {wanted}"
