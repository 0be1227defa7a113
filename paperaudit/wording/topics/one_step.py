"""Stories that are one calculation: what is shared out equally, a temperature that rises or falls."""

import re
from dataclasses import replace
from fractions import Fraction

from paperaudit.model.paper import Part, Question
from paperaudit.model.reading import Unread
from paperaudit.wording.asking import read_asked
from paperaudit.wording.scene import Scene
from paperaudit.wording.topics.stories.plain import plain
from paperaudit.wording.topics.topic import Readers, Told
from paperaudit.wording.topics.whole_text import whole_of

_NUMBER = r"\d+(?:\.\d+)?"
_PEOPLE = (
    r"(?:people|persons|children|learners|pupils|students|friends|boys|girls|brothers|sisters|workers|players"
    r"|men|women)"
)
_SHARED = re.compile(
    rf"(?:(?P<money>[R$£€₦₹] ?{_NUMBER})|(?P<count>\d+) (?P<things>[a-z]+)) (?:is|are) (?:to be )?"
    r"(?:shared|divided) equally"
    rf" (?:between|among|amongst) (?P<people>\d+) {_PEOPLE}"
    r"\. how (?:much(?: money)?|many(?: (?P<again>[a-z]+))?) (?:does|will|did) (?:each|every)"
    r"(?: (?:person|child|learner|pupil|student|friend|boy|girl|brother|sister|worker|player|man|woman|one))?"
    r"(?: of them)? (?:get|receive)"
)
_WARMER = r"rises|rose|risen|increases|increased|goes up|went up|gone up"
_COLDER = r"falls|fell|fallen|drops|dropped|decreases|decreased|goes down|went down|gone down"
_WHEN = r"(?: (?:at|in|on|by) (?:the )?[a-z0-9: ]{2,20})?"
_DEGREES = r" ?°(?: ?c)?"
_TEMPERATURE = re.compile(
    rf"the temperature(?: (?:outside|in [a-z]+))?{_WHEN} (?:was|is) (?P<start>-?{_NUMBER}){_DEGREES}"
    rf"(?:\. | and (?=it|then|{_WARMER}|{_COLDER}))"
    rf"(?:(?:by|at|during|in) [a-z0-9: ]{{2,20}},? )?(?:then )?(?:it |the temperature )?(?:then )?(?:had |has )?"
    rf"(?P<way>{_WARMER}|{_COLDER}) (?:by )?(?P<change>{_NUMBER}){_DEGREES}(?: (?:by|during) [a-z0-9: ]{{2,20}})?"
    rf"\. (?:what (?:was|is)|find|calculate|work out|determine) the (?:new |final )?temperature"
    rf"(?: (?:now|then))?{_WHEN}"
)


def _story(question: Question, part: Part, scene: Scene) -> Told | None:
    whole = whole_of(question, part, scene)
    if whole is None or question.table:
        return None
    said = _calculation(". ".join(map(plain, whole.pieces)))
    asked = read_asked(f"Calculate {said}", whole.place, "ask", scene) if said else None
    if asked is None or isinstance(asked, Unread):
        return None
    return Told(replace(asked.ask, text=whole.said, read_as=said, accuracy=whole.accuracy, unit=whole.unit))


def _calculation(text: str) -> str:
    """The one calculation that a story comes to; "" for any other text.

    >>> _calculation("£45.60 is shared equally between 4 people. how much does each person get")
    '£45.60 ÷ 4'
    """
    if (read := _SHARED.fullmatch(text)) is not None and int(read["people"]) > 1:
        if read["money"]:
            cents = Fraction(read["money"][1:].strip()) * 100 / int(read["people"])
            return f"{read['money']} ÷ {read['people']}" if cents.denominator == 1 and not read["again"] else ""
        even = Fraction(int(read["count"]), int(read["people"])).denominator == 1
        return f"{read['count']} ÷ {read['people']}" if even and read["again"] in (None, read["things"]) else ""
    if (read := _TEMPERATURE.fullmatch(text)) is not None:
        sign = "+" if re.fullmatch(_WARMER, read["way"]) else "−"
        return f"{read['start'].replace('-', '−')} {sign} {read['change']}"
    return ""


READERS = Readers(story=_story)
