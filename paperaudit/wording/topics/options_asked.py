"""Multiple choice by a property: "Which of these is a prime number?", asked of the options as of a list."""

import re
from dataclasses import replace

from paperaudit.errors import ExpressionNotRead
from paperaudit.maths.parse import read_expression
from paperaudit.model.ask import Ask, Transform
from paperaudit.model.number_task import EqualTo, FromList, Picked
from paperaudit.model.paper import Part, Question
from paperaudit.model.reading import Unread
from paperaudit.wording.asking import read_asked
from paperaudit.wording.scene import Scene
from paperaudit.wording.tasks import is_numeric
from paperaudit.wording.topics.topic import Readers, Told

_WHICH = (
    r"which (?:(?:one )?of (?:these|the following|the options)(?: (?:numbers|fractions|decimals|values|expressions"
    r"|integers))?|(?:number|fraction|decimal|value|one|expression|option)(?: below)?)? ?(?:is|has) "
)
_SIZE = re.compile(
    _WHICH + r"(?:the )?(?P<size>largest|greatest|biggest|highest|smallest|least|lowest)"
    r"(?: number| value| fraction| decimal)?",
    re.IGNORECASE,
)
_KIND = re.compile(
    _WHICH
    + r"(?P<no>not )?(?:an? |the )?(?P<kind>(?:multiple|factor|divisor) of \d+|divisible by \d+|(?:prime|composite"
    r"|even|odd|(?:perfect )?square|(?:perfect )?cube|triang(?:le|ular)|rational|irrational)(?: number)?)",
    re.IGNORECASE,
)
_EQUAL = re.compile(
    _WHICH + r"(?P<no>not )?(?:equal|equivalent|the same as|the value of)(?: to)? (?P<other>[^?]+)", re.IGNORECASE
)


def _story(question: Question, part: Part, scene: Scene) -> Told | None:
    lines = [line for line in (question.text, part.text, part.ask) if line is not None]
    if len(lines) != 1 or not part.options or question.given or part.given or question.figure or part.figure:
        return None
    text = " ".join(lines[0].text.split()).strip(" .?:")
    items = "; ".join(option.text.strip() for _, option in part.options)
    size, kind, equal = _SIZE.fullmatch(text), _KIND.fullmatch(text), _EQUAL.fullmatch(text)
    if ";" in items.replace("; ", ""):
        return None
    if size is not None:
        said = f"Which is the {size['size'].lower()}: {items}?"
    elif kind is not None:
        said = f"Which of these is {kind['kind'].lower()}: {items}?"
    elif equal is not None and _numeric(equal["other"]) and all(_numeric(one.text) for _, one in part.options):
        numbers = tuple(read_expression(one.text.strip()) for _, one in part.options)
        task = EqualTo(numbers, read_expression(equal["other"]), equal["no"] is not None)
        return Told(Ask(task, text, place=lines[0].place))
    elif equal is not None and equal["no"] is None and not _numeric(equal["other"]):
        said = f"Simplify {equal['other']}"
    else:
        return None
    asked = read_asked(said, lines[0].place, "text", scene)
    if isinstance(asked, Unread) or asked.conditions or not isinstance(asked.ask.task, FromList | Picked | Transform):
        return None
    found = asked.ask.task
    if isinstance(found, FromList):
        found = replace(found, one=True, outside=kind is not None and kind["no"] is not None)
    return Told(replace(asked.ask, task=found, text=text))


def _numeric(text: str) -> bool:
    """Whether a text is a number or a calculation with numbers, without letters, units or ratios."""
    try:
        value = read_expression(text.strip())
    except ExpressionNotRead:
        return False
    return not re.search("[:a-zA-Z]", text.replace(" of ", " ")) and is_numeric(value)


READERS = Readers(story=_story)
