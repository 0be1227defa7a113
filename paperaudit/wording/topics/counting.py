"""Questions that count: arrangements, choices, codes, one choice after the other."""

import re
from dataclasses import dataclass, field

from parsimonious.nodes import Node

from paperaudit.errors import ExpressionNotRead
from paperaudit.maths.peg import parsed
from paperaudit.maths.tree import every, first, has, the
from paperaudit.model.ask import Task
from paperaudit.model.counting_task import Count
from paperaudit.model.paper import Part, Question
from paperaudit.model.statistics_task import Told as Noted
from paperaudit.wording.asides import Asides
from paperaudit.wording.scene import NotUnderstood, Scene
from paperaudit.wording.topics.heard import Sentence, givens_of, heard
from paperaudit.wording.topics.registry import topic_named
from paperaudit.wording.topics.topic import Readers, Told
from paperaudit.wording.topics.value_lists import COUNT_WORDS

_LOWERED = str.maketrans("⁰¹²³⁴⁵⁶⁷⁸⁹₀₁₂₃₄₅₆₇₈₉", "01234567890123456789")
_SAYS = re.compile(
    r"\d|\b(?:two|three|four|five|six|seven|eight|nine|ten|must|together|next|apart|between|ends?|first|last|repeat\w*"
    r"|only|not|never|always|alternat\w+|even|odd|particular|included|least|most|same|different)\b"
)


@dataclass(slots=True)
class _Known:
    """What other sentences say: parts of a code, whether they may be repeated, options of a choice."""

    parts: list[tuple[int, int]] = field(default_factory=list)
    repeats: bool | None = None
    options: list[int] = field(default_factory=list)
    team: Node | None = None


def _count(node: Node) -> int:
    words = node.text.strip()
    return 1 if words in ("a", "an") else COUNT_WORDS.get(words) or int(words)


def _ask(node: Node, asides: Asides) -> Task:
    """7!, 8C3; a longer calculation with such signs is a count that no strand derives, never the rest of it."""
    chosen = first(node, "symbol", "factorial")
    if chosen is None:
        return Count("beyond")
    return _symbol(chosen) if chosen.expr_name == "symbol" else _factorial(chosen)


def _factorial(node: Node) -> Count:
    one, *other = re.findall(r"\d+", node.text)
    return Count("factorial", int(one), int(other[0]) if other else 0)


def _story(question: Question, part: Part, scene: Scene) -> Told | None:
    told = heard(question, part, scene)
    if told.too_long or question.table:
        return None
    known, asked, sources = _Known(), [], list[Sentence]()
    for sentence in told.sentences:
        node = _said(sentence.text)
        if node is None:
            if _SAYS.search(sentence.text):
                return None
            continue
        if (ask := first(node, "asked")) is not None:
            asked.append((sentence, ask))
        else:
            sources.append(sentence)
            if not _take(node, known):
                return None
    if len(asked) != 1:
        return None
    try:
        task = _task(asked[0][1], known)
    except NotUnderstood:
        return None
    return Told(told.ask(task, asked[0][0].source, _read_as(task), asked[0][0].place), givens_of(sources, Noted))


def _said(text: str) -> Node | None:
    try:
        return parsed(topic_named("counting").rules(), "said", text)
    except ExpressionNotRead:
        return None


def _read_as(task: Count) -> str:
    match task.how:
        case "letters":
            return f"arrangements of the letters {', '.join(task.word)}"
        case "codes":
            return f"choices one after the other: {' × '.join(map(str, task.choices))}"
        case "choices":
            return " and ".join(f"{r} of {n}" for n, r in task.groups)
        case "permutations":
            return f"{task.r} of {task.n} in order"
    return f"arrangements of {task.n}" + (" in a circle" if task.how == "circle" else "")


def _take(node: Node, known: _Known) -> bool:
    """What a sentence states; False where it was stated already."""
    repeated = has(node, "never") or has(node, "may")
    if repeated:
        if known.repeats is not None:
            return False
        known.repeats = has(node, "may")
    team = first(node, "team_told")
    if team is not None:
        if known.team is not None:
            return False
        known.team = team
    for part in every(node, "code_part"):
        known.parts.append((_count(the(part, "count")), 26 if "letter" in part.text else 10))
    known.options.extend(_count(the(option, "count")) for option in every(node, "option"))
    return True


def _task(node: Node, known: _Known) -> Count:
    chosen = the(
        node,
        "team_ask",
        "symbol",
        "factorial",
        "letters",
        "row",
        "circle",
        "roles",
        "chosen",
        "digits",
        "code",
        "meal_ask",
    )
    kind = chosen.expr_name
    if (known.parts or known.options or known.repeats is not None) and kind not in ("digits", "code", "meal_ask"):
        raise NotUnderstood("statements that are not of this count", 0)
    if (known.team is None) != (kind != "team_ask"):
        raise NotUnderstood("a team without a question for it", 0)
    match kind:
        case "team_ask" if known.team is not None:
            return _chosen(known.team)
        case "symbol":
            return _symbol(chosen)
        case "factorial":
            return _factorial(chosen)
        case "letters":
            return Count("letters", word=the(chosen, "word").text.strip('′"').upper())
        case "row" | "circle":
            return Count("factorial" if kind == "row" else "circle", _count(the(chosen, "count")))
        case "roles":
            places = len(every(chosen, "role")) or len(re.findall("first|second|third", the(chosen, "prizes").text))
            return Count("permutations", _count(the(chosen, "count")), places)
        case "chosen":
            return _chosen(chosen)
        case "digits":
            return _digits(chosen, known)
        case "code" if known.parts:
            return _code(chosen, known)
        case "meal_ask" if len(known.options) > 1:
            return Count("codes", choices=tuple(known.options))
    raise NotUnderstood("not enough said", 0)


def _symbol(node: Node) -> Count:
    numbers = [int(one) for one in re.findall(r"\d+", node.text.translate(_LOWERED))]
    kind = first(node, "kind")
    ordered = kind is not None and "P" in kind.text
    n, r = numbers
    return Count("permutations", n, r) if ordered else Count("choices", groups=((n, r),))


def _chosen(node: Node) -> Count:
    wanted = [_count(the(one, "count")) for one in every(node, "amount")]
    pools = [_count(the(one, "count")) for one in every(node, "from_amount")]
    names = [one.text.split(" ")[-1] for one in every(node, "amount")]
    pool_names = [one.text.split(" ")[-1] for one in every(node, "from_amount")]
    if len(wanted) != len(pools) or (len(wanted) > 1 and not _same_names(names, pool_names)):
        raise NotUnderstood("groups that do not go together", node.start)
    return Count("choices", groups=tuple(zip(pools, wanted, strict=True)))


def _same_names(one: list[str], other: list[str]) -> bool:
    plurals = {"men": "man", "women": "woman", "people": "person", "children": "child"}

    def plain(name: str) -> str:
        return plurals.get(name, name.removesuffix("s"))

    return list(map(plain, one)) == list(map(plain, other))


def _digits(node: Node, known: _Known) -> Count:
    text, places = the(node, "digit_set").text, _count(the(node, "count"))
    repeat = first(node, "repeat")
    repeats = has(repeat, "may") if repeat is not None else known.repeats
    ends = [int(one) for one in re.findall(r"\d", text)]
    digits = list(range(ends[0], ends[1] + 1)) if " to " in text else ends
    if repeats is None or len(set(digits)) != len(digits) or not 1 <= places <= 12:
        raise NotUnderstood("whether digits may be repeated", node.start)
    size = len(digits)
    starts = size - 1 if 0 in digits and "digit number" in node.text else size
    if repeats:
        return Count("codes", choices=(starts, *(size,) * (places - 1)))
    rest = [size - at for at in range(1, places)]
    if min([starts, *rest]) < 1:
        raise NotUnderstood("more places than digits", node.start)
    return Count("codes", choices=(starts, *rest))


def _code(node: Node, known: _Known) -> Count:
    repeat = first(node, "repeat")
    repeats = has(repeat, "may") if repeat is not None else known.repeats
    if repeats is None:
        raise NotUnderstood("whether letters and digits may be repeated", node.start)
    choices: list[int] = []
    used: dict[int, int] = {}
    for count, size in known.parts:
        if not 1 <= count <= 10:
            raise NotUnderstood("a code that is too long", node.start)
        for _ in range(count):
            choices.append(size if repeats else size - used.get(size, 0))
            used[size] = used.get(size, 0) + 1
    if min(choices) < 1:
        raise NotUnderstood("more places than digits", node.start)
    return Count("codes", choices=tuple(choices))


READERS = Readers(task=_ask, story=_story)
