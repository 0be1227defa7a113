"""Stories of two sets in a group."""

import re
from dataclasses import dataclass, field

from parsimonious.nodes import Node

from paperaudit.errors import ExpressionNotRead
from paperaudit.maths.peg import parsed
from paperaudit.maths.tree import every, first, the
from paperaudit.model.chance_task import OfVenn
from paperaudit.model.paper import Part, Question
from paperaudit.model.statistics_task import Told as Noted
from paperaudit.wording.scene import Scene
from paperaudit.wording.topics.heard import Heard, Sentence, givens_of, heard
from paperaudit.wording.topics.outcomes import singular
from paperaudit.wording.topics.registry import topic_named
from paperaudit.wording.topics.topic import Readers, Told

_SMALL = frozenset(
    ("a", "an", "the", "to", "of", "do", "does", "is", "are", "will", "be", "by", "it", "at", "in", "on", "who", "that",
     "both", "sport", "sports", "subject", "subjects", "activity", "activities")
)  # fmt: skip
_OTHER_REGIONS = re.compile(r"\b(?:both|neither|only|either|at least|exactly|not|or|and|but|one|none|more|fewer)\b")


@dataclass(slots=True)
class _Sets:
    """The numbers of a story: the whole, the sets by the words that name them, both, neither."""

    whole: int | None = None
    sets: list[tuple[frozenset[str], str, int]] = field(default_factory=list)
    both: int | None = None
    neither: int | None = None


def _story(question: Question, part: Part, scene: Scene) -> Told | None:
    told = heard(question, part, scene)
    if told.too_long or question.table:
        return None
    return _of_sets(told)


def _said(text: str, rule: str = "said") -> Node | None:
    try:
        return parsed(topic_named("two sets").rules(), rule, text)
    except ExpressionNotRead:
        return None


def _of_sets(told: Heard) -> Told | None:
    known, asked, sources = _Sets(), None, list[Sentence]()
    for sentence in told.sentences:
        node = _said(sentence.text.lower())
        if node is not None and first(node, "asked") is not None and asked is None:
            asked = (sentence, the(node, "asked"))
        elif node is not None and first(node, "facts") is not None:
            if not _take(node, known):
                return None
            sources.append(sentence)
        elif re.search(r"\d", sentence.text) or _OTHER_REGIONS.search(sentence.text.lower()):
            return None
    if asked is None or len(known.sets) != 2 or known.whole is None:
        return None
    region = _region(the(asked[1], "region").text, known)
    condition = first(asked[1], "condition")
    under = _region(_subjectless(condition.text), known) if condition is not None else ""
    if not region or (condition is not None and not under):
        return None
    (_, one, first_size), (_, other, second_size) = known.sets
    chance = first(asked[1], "chance_of") is not None
    if under and not chance:
        return None
    task = OfVenn(known.whole, first_size, second_size, known.both, known.neither, region, chance, (one, other), under)
    read_as = f"{known.whole} in all, {one} {first_size}, {other} {second_size}; {region}" + (under and f" of {under}")
    return Told(told.ask(task, asked[0].source, read_as, asked[0].place), givens_of(sources, Noted))


def _take(node: Node, known: _Sets) -> bool:
    group = first(node, "group")
    if group is not None:
        if known.whole is not None:
            return False
        known.whole = int(the(group, "count").text)
    for clause in every(node, "clause"):
        count, words = int(the(clause, "count").text), the(clause, "words").text
        if re.search(r"\bboth\b", words):
            if known.both is not None:
                return False
            known.both = count
        elif re.search(r"\bneither\b", words):
            if known.neither is not None:
                return False
            known.neither = count
        elif _OTHER_REGIONS.search(words):
            return False
        else:
            known.sets.append((_named(words), words.split(" ")[-1], count))
    return True


def _named(words: str) -> frozenset[str]:
    return frozenset(singular(word) for word in words.split(" ") if word not in _SMALL)


def _subjectless(words: str) -> str:
    return re.sub(r"^(?:the|a|an) [a-z]+ |^(?:he|she|they|it) ", "", words.strip())


def _region(words: str, known: _Sets) -> str:
    """Which region the words name, "" where it is none of those known."""
    (one, _, _), (other, _, _) = known.sets
    verbs = one & other
    names = one - verbs, other - verbs
    if not all(names):
        return ""
    plain = frozenset(singular(word) for word in re.findall(r"[a-z]+", words) if word not in _SMALL)
    rest = plain - verbs
    has_first, has_second = (bool(name & rest) for name in names)
    left = rest - names[0] - names[1] - {singular(verb) for verb in verbs}
    both_named = has_first and has_second
    if not left and both_named and re.search(r"\bboth\b|\band\b", words):
        return "both" if "and" in words else ""
    if left <= {"or"} and both_named and re.search(r"\bor\b", words):
        return "" if re.search(r"\bboth\b", words) else "either"
    match sorted(left - {"also"}):
        case [] if has_first != has_second and len(words.split(" ")) < 8:
            return "first" if has_first else "second"
        case [] if re.search(r"\bboth\b", words) and not rest:
            return "both"
        case ["neither"] | ["neither", "nor"]:
            return "neither"
        case ["only"] if has_first != has_second:
            return "first only" if has_first else "second only"
        case ["but", "not"] if both_named:
            ahead = min(words.find(word) for word in names[0]) < words.find(" not ")
            return "first only" if ahead else "second only"
        case ["exactly", "one"] | ["just", "one"]:
            return "exactly one"
        case ["least", "one"]:
            return "either"
    return ""


READERS = Readers(story=_story)
