"""What is shared out equally, and temperatures that rise or fall."""

import re
from fractions import Fraction

from paperaudit.wording.topics.calculations.form import MONEY, NUMBER, Form, Pieces, form, value

AHEAD = re.compile(r"\bequally\b|temperature")
_PEOPLE = (
    r"(?:people|persons|children|learners|pupils|students|friends|boys|girls|brothers|sisters|workers|players"
    r"|men|women)"
)
_SHARED = (
    rf"(?:(?P<money>{MONEY})|(?P<count>\d+) (?P<things>[a-z]+)) (?:is|are) (?:to be )?(?:shared|divided) equally"
    rf" (?:between|among|amongst) (?P<people>\d+) {_PEOPLE}"
    r"\. how (?:much(?: money)?|many(?: (?P<again>[a-z]+))?) (?:does|will|did) (?:each|every)"
    r"(?: (?:person|child|learner|pupil|student|friend|boy|girl|brother|sister|worker|player|man|woman|one))?"
    r"(?: of them)? (?:get|receive)"
)
_WARMER = r"rises|rose|risen|increases|increased|goes up|went up|gone up|warmed up"
_COLDER = r"falls|fell|fallen|drops|dropped|decreases|decreased|goes down|went down|gone down|cooled down"
_WHEN = r"(?: (?:at|in|on|by) (?:the )?[a-z0-9: ]{2,20})?"
_DEGREES = r" ?°(?: ?c)?"
_STARTS = (
    rf"(?:the temperature(?: (?:outside|in [a-z]+))?{_WHEN}|(?:at|in|on|one) [a-z0-9: ]{{2,20}},? the temperature"
    rf"(?: (?:outside|in [a-z]+))?) (?:was|is) (?P<start>-?{NUMBER}){_DEGREES}"
)
_TEMPERATURE = (
    rf"{_STARTS}(?:\. | and (?=it|then|{_WARMER}|{_COLDER}))"
    rf"(?:(?:by|at|during|in) [a-z0-9: ]{{2,20}},? )?(?:then )?(?:it |the temperature )?(?:then )?(?:had |has )?"
    rf"(?P<way>{_WARMER}|{_COLDER}) (?:by )?(?P<change>{NUMBER}){_DEGREES}(?: (?:by|during) [a-z0-9: ]{{2,20}})?"
    rf"\. (?:what (?:was|is)|find|calculate|work out|determine) the (?:new |final )?temperature"
    rf"(?: (?:now|then|outside))?{_WHEN}"
)


def _share(pieces: Pieces) -> str:
    people = int(pieces["people"])
    if people < 2:
        return ""
    if pieces["money"]:
        cents = value(pieces["money"]) * 100 / people
        return f"{pieces['money']} ÷ {people}" if cents.denominator == 1 and not pieces["again"] else ""
    even = Fraction(int(pieces["count"]), people).denominator == 1
    return f"{pieces['count']} ÷ {people}" if even and pieces["again"] in ("", pieces["things"]) else ""


def _temperature(pieces: Pieces) -> str:
    sign = "+" if re.fullmatch(_WARMER, pieces["way"]) else "−"
    return f"{pieces['start'].replace('-', '−')} {sign} {pieces['change']}"


FORMS: tuple[Form, ...] = (form(_SHARED, _share), form(_TEMPERATURE, _temperature))
