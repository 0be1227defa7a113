"""Counting stories about two or three groups: 18 of 30 play hockey, 15 netball, 6 play both; how many play neither."""

import re

from paperaudit.model.ask import Ask
from paperaudit.model.fact import Given, Origin
from paperaudit.model.paper import Part, Question
from paperaudit.model.set_task import Combined, Complement, NamedSet, SetAsked, SetCounted, SetExpression
from paperaudit.wording.scene import Scene
from paperaudit.wording.sentences import sentences
from paperaudit.wording.topics.three_groups import of_three
from paperaudit.wording.topics.topic import Told

_PEOPLE = (
    r"(?:people|persons|pupils|students|learners|children|boys|girls|members|sailors|adults|teachers|families"
    r"|households"
    r"|customers|workers|guests|players|houses|cars|boats|visitors|men|women|friends)"
)
_WHOLE = (
    re.compile(rf"(?:in|of|from|among|out of) (?:an? |the |one )?(?:[a-z]+ ){{0,3}}of (\d+)(?: {_PEOPLE})?,? "),
    re.compile(rf"(?:of|out of|among|in) (?:the |these |a )?(?:group of )?(\d+) {_PEOPLE}(?: [a-z]+){{0,4}}?, "),
    re.compile(
        rf"(?:there are|an? [a-z ]{{2,30}}? has|a group of) (\d+) {_PEOPLE}(?: (?:in|on|at) [a-z ]+)?(?:[.,;] ?|$)"
    ),
    re.compile(
        rf"(\d+) {_PEOPLE} (?:are|were|was|took|take) (?:asked|surveyed|interviewed|questioned|part)"
        r"[^0-9]*?(?:[.;] ?|$)"
    ),
)
_VERB = (
    r"(?:said (?:that )?they )?(?:can do|can|likes?|liked|plays?|played|stud(?:y|ies|ied)|takes?|took|owns?|owned"
    r"|have|has|had|reads?|speaks?|do|does|did|uses?|used|eats?|drinks?|drank|watch(?:es|ed)?|wears?|wore|chose"
    r"|chooses?"
    r"|bought|buys?|visit(?:s|ed)?|went to|go to|goes to|are in|belong to|passed|joined|are learning|learns?"
    r"|prefers?|keeps?)"
)
_COUNT = re.compile(
    rf"(?P<count>\d+)(?: of (?:them|the {_PEOPLE}|these {_PEOPLE}|those {_PEOPLE}))?(?: {_PEOPLE})? (?P<said>.+)"
)
_STEM = re.compile(rf"{_VERB}(?: the| an?)? ")
_ASK = re.compile(
    rf"(?:how many(?: of (?:them|the {_PEOPLE}|these {_PEOPLE}))?(?: {_PEOPLE})?"
    rf"|(?:find|calculate|work out|determine|write down|state) (?:how many(?: {_PEOPLE})?"
    rf"|the number of {_PEOPLE}(?: who| that| which)?)) (?P<said>.+?)[.?]*"
)
_CHANCE = re.compile(
    r"(?:find|calculate|work out|determine|write down|what is) the probability that (?:an?|the|one) [a-z]+"
    r"(?: (?:who is |that is )?(?:chosen|selected|picked)(?: at random)?(?: from (?:the|this) [a-z]+)?)? "
    r"(?P<said>.+?)[.?]*"
)
_ARTICLE = re.compile(r"\b(?:the|an?) (?!two|same)")
_OF_THEM = r" of (?:them|these|the two|two|the [a-z]+|[a-z]+)"
_EVERYONE = re.compile(r"(?:each|every|all|everyone|everybody)\b[^0-9]*\bat least one\b[^0-9]*")
_SPLIT = re.compile(r";\s*|,\s*(?:and |but |while )?(?=\d)|\s+(?:and|but|while) (?=\d)")
_LONGEST = 1_000


class _Open(Exception):
    """Words that are not understood."""


def told_story(question: Question, part: Part, scene: Scene) -> Told | None:
    """The numbers of a story about two groups as numbers of members of sets; None for what is not understood."""
    if question.given or part.given or question.figure or part.figure or question.table:
        return None
    lines = [line.text for line in (question.text, part.text, part.ask) if line is not None]
    text = " ".join(" ".join(lines).split())[:_LONGEST]
    said = [scene.notation(sentence.text).text.strip() for sentence in sentences(text)]
    asked = _ASK.fullmatch(said[-1]) if said else None
    chance = _CHANCE.fullmatch(said[-1]) if said and asked is None else None
    if asked is None and chance is None:
        return None
    try:
        words = asked["said"] if asked is not None else chance["said"] if chance is not None else ""
        return _told(said[:-1], words, text, part, chance is not None)
    except _Open:
        return None


def _told(said: list[str], asked: str, text: str, part: Part, chance: bool) -> Told:
    whole, clauses, everyone = _clauses(said)
    names = tuple(dict.fromkeys(name for _, words, _ in clauses if (name := _plain_name(words))))
    if len(names) not in ((3,) if chance else (2, 3)) or (chance and whole is None):
        raise _Open
    printed = {name: _as_printed(name, text) for name in names}
    facts = [(text, SetCounted(_renamed(_set_named(words, names), printed), count)) for count, words, text in clauses]
    if whole is not None:
        facts.insert(0, (whole[1], SetCounted(NamedSet("ξ"), whole[0])))
    if everyone:
        union: SetExpression = NamedSet(names[0])
        for name in names[1:]:
            union = Combined(union, "∪", NamedSet(name))
        facts.append((everyone, SetCounted(_renamed(Complement(union), printed), 0)))
    wanted = _renamed(_set_named(_without_verb(asked), names), printed)
    place = (part.text or part.ask or part).place
    read_as = "; ".join(fact.in_words() for _, fact in facts)
    task = SetAsked(wanted, True, f"the number who {_as_printed(asked.strip(), text)}", chance)
    givens = tuple(Given(said_of, (fact,), Origin.TEXT) for said_of, fact in facts)
    return Told(
        Ask(
            task,
            _as_printed(f"{'the probability that one' if chance else 'how many'} {asked.strip()}", text),
            read_as=read_as,
            place=place,
        ),
        givens,
    )


def _as_printed(words: str, text: str) -> str:
    """Words in the capitals that the paper has: French."""
    found = re.search(re.escape(words), text, re.IGNORECASE)
    return found.group() if found else words


def _renamed(of: SetExpression, printed: dict[str, str]) -> SetExpression:
    match of:
        case NamedSet(name):
            return NamedSet(printed.get(name, name))
        case Complement(inner):
            return Complement(_renamed(inner, printed))
        case Combined(left, sign, right):
            return Combined(_renamed(left, printed), sign, _renamed(right, printed))


def _clauses(said: list[str]) -> tuple[tuple[int, str] | None, list[tuple[int, str, str]], str]:
    """The whole number with its words, each count with its words, and whether everyone is in some group."""
    whole: tuple[int, str] | None = None
    found: list[tuple[int, str, str]] = []
    everyone = ""
    for sentence in said:
        rest = sentence.strip()
        if _EVERYONE.fullmatch(rest):
            everyone = rest.rstrip(".")
            continue
        if whole is None:
            match = next((match for pattern in _WHOLE if (match := pattern.match(rest))), None)
            if match is not None:
                whole = int(match[1]), match.group().strip(" ,.;")
                rest = rest[match.end() :]
        rest = rest.strip(" .")
        if not re.search(r"\d", rest):
            if re.search(r"\b(?:both|neither|only|none|nobody|no one)\b", rest):
                raise _Open
            continue
        for piece in _SPLIT.split(rest):
            counted = _COUNT.fullmatch(piece.strip(" ,"))
            if counted is None:
                raise _Open
            found.append((int(counted["count"]), _without_verb(counted["said"]), piece.strip(" ,")))
    return whole, found, everyone


def _without_verb(words: str) -> str:
    """What is liked or played: "play only hockey" is "only hockey", "do not play hockey" is "not hockey"."""
    plain = words.strip().rstrip(".?").strip()
    denied = re.fullmatch(
        r"(?:do|did|does|can|have)(?: not|n′t)(?: [a-z]+)? (?:either(?: of them)?|any of them)", plain
    )
    if denied:
        return "neither"
    turned = re.match(r"(?:do|did|does) not ", plain)
    plain = plain[turned.end() :] if turned else plain
    stem = _STEM.match(f"{plain} ")
    rest = plain[stem.end() :].strip() if stem else plain
    if not stem and not re.match(r"(?:both|neither|only|none|all|at least|exactly)\b", rest):
        raise _Open
    rest = re.sub(rf"(?:and|but|or|nor|not|only) {_VERB} ", lambda match: f"{match.group().split()[0]} ", rest)
    return f"not {rest}" if turned else rest


_SPECIAL = re.compile(
    r"\b(?:both|neither|none|only|just|not|at least|exactly|either|or|nor|and|but|one|all|any|two|three)\b"
)


def _plain_name(words: str) -> str:
    """The name of a group where nothing else is said of it: "hockey"."""
    return "" if _SPECIAL.search(words) or len(words.split()) > 3 else words


def _set_named(words: str, names: tuple[str, ...]) -> SetExpression:
    """The set that words name: both, neither, only hockey, hockey but not netball, at least one."""
    plain = _ARTICLE.sub("", words)
    if len(names) == 3:
        found = of_three(plain, (names[0], names[1], names[2]))
        if found is None:
            raise _Open
        return found
    first, second = NamedSet(names[0]), NamedSet(names[1])
    for one, other in (names, names[::-1]):
        plain = re.sub(rf"{re.escape(one)} (and|or|nor) {re.escape(other)}", lambda found: f"two {found[1]}", plain)
    union, common = Combined(first, "∪", second), Combined(first, "∩", second)
    forms: tuple[tuple[str, SetExpression], ...] = (
        (rf"both(?:{_OF_THEM}| two and| [a-z]+)?|two and", common),
        (rf"neither(?:{_OF_THEM}| two n?or)?|none(?:{_OF_THEM})", Complement(union)),
        (rf"at least one(?:{_OF_THEM}| [a-z]+)?|either(?:{_OF_THEM}| two or)?(?: or both)?|two or or both", union),
        (rf"(?:exactly|only|just) one(?:{_OF_THEM}| [a-z]+)?", Combined(union, "−", common)),
    )
    for pattern, form in forms:
        if re.fullmatch(pattern, plain):
            return form
    for own, other in (names, names[::-1]):
        a, b = re.escape(own), re.escape(other)
        if re.fullmatch(rf"(?:only|just) {a}|{a} only|{a},? (?:but|and) not {b}", plain):
            return Combined(NamedSet(own), "∩", Complement(NamedSet(other)))
        if plain in (own, f"not {own}"):
            return NamedSet(own) if plain == own else Complement(NamedSet(own))
    raise _Open
