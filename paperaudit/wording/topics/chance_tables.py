"""Stories of a table of probabilities, of counts, or of two ways with totals."""

import re
from dataclasses import dataclass, replace
from fractions import Fraction

from parsimonious.nodes import Node

from paperaudit.errors import ExpressionNotRead
from paperaudit.maths.peg import parsed
from paperaudit.maths.tree import first, has, the
from paperaudit.model.chance_task import FromTable
from paperaudit.model.fact import Origin
from paperaudit.model.paper import Part, Question
from paperaudit.model.statistics_task import Clashing
from paperaudit.model.statistics_task import Told as Noted
from paperaudit.model.topic import TopicTask
from paperaudit.wording.scene import NotUnderstood, Scene
from paperaudit.wording.topics.heard import Heard, Sentence, givens_of, heard
from paperaudit.wording.topics.joined_events import amount_in
from paperaudit.wording.topics.outcomes import singular
from paperaudit.wording.topics.registry import topic_named
from paperaudit.wording.topics.topic import Readers, Told
from paperaudit.wording.topics.two_ways import crossed_in
from paperaudit.wording.topics.two_ways_asked import ASKS, FILLER, of_crossed
from paperaudit.wording.topics.value_lists import number_in_text
from paperaudit.wording.topics.value_tables import spelled

_CHANCE = re.compile(r"probabilit|^\s*[Pp](?:\s*\(.*\))?\s*$|\bprob\b|relative frequency", re.IGNORECASE)
_COUNT = re.compile(r"freq|\bf\b|number of|count|how many|times", re.IGNORECASE)
_MISSING = re.compile(r"\s*(?:\?|_+|…|\.\.+|-|)\s*|[a-z]")
_DECIMAL = r"\d+(?:[.,]\d+)?(?: ?/ ?\d+)?"
_TERMS = re.compile(
    rf"(?:(?P<first>{_DECIMAL}) ?(?P<sign>[-−+]) ?)?(?P<share>{_DECIMAL})? ?\*?(?P<letter>[a-z])"
    rf"(?: ?(?P<behind>[-−+] ?{_DECIMAL}))?"
)
"""A probability in a letter: x, 2x, 0.4 − x, 2x + 0.1."""
_TRIALS = re.compile(
    r"(?:is (?:spun|rolled|thrown|done|repeated|tossed|picked)|(?:there are|with)) (\d{2,6}) times"
    r"|(\d{2,6}) (?:spins|throws|rolls|trials)"
)


@dataclass(frozen=True, slots=True)
class _Chances:
    """A table of outcomes: names, their probabilities or counts, the letters of missing ones."""

    names: tuple[str, ...]
    values: tuple[Fraction | None, ...]
    letters: tuple[str, ...]
    counted: bool
    shares: tuple[Fraction, ...] = ()


def _chances(question: Question) -> _Chances | None:
    if len(question.table) != 2:
        return None
    (_, names), (head, cells) = question.table
    counted = not _CHANCE.search(head)
    if len(names) != len(cells) or (counted and not _COUNT.search(head)):
        return None
    if names and re.fullmatch(r"\s*total\s*", names[-1], re.IGNORECASE):
        names, cells = names[:-1], cells[:-1]
    named = tuple(name.strip().lower().removeprefix("x = ") for name in names)
    if len(set(named)) != len(named):
        return None
    lettered = _lettered(named, cells) if not counted else None
    if lettered is not None:
        return lettered
    values: list[Fraction | None] = []
    letters: list[str] = []
    for cell in cells:
        plain = spelled(cell)
        if _MISSING.fullmatch(plain):
            values.append(None)
            letters.append(plain if plain.isalpha() else "")
            continue
        percent = plain.endswith("%")
        found = number_in_text(plain.rstrip("% "))
        if found is None or found[1]:
            return None
        values.append(found[0] / 100 if percent else found[0])
    if len(letters) > 1 or (counted and None in values):
        return None
    if counted and any(value is not None and value.denominator != 1 for value in values):
        return None
    if re.search(r"relative", head, re.IGNORECASE) and _look_rounded(cells, values):
        return None
    return _Chances(named, tuple(values), tuple(letters), counted)


def _look_rounded(cells: tuple[str, ...], values: list[Fraction | None]) -> bool:
    """Whether relative frequencies miss 1 by no more than the rounding of their last places can."""
    total = sum((value for value in values if value is not None), Fraction(0))
    places = max(len(re.split("[.,]", spelled(cell).rstrip("% "))[-1]) + 2 * ("%" in cell) for cell in cells)
    missed = abs(total - 1)
    return None not in values and bool(missed) and missed <= Fraction(len(values), 2 * 10**places)


def _lettered(names: tuple[str, ...], cells: tuple[str, ...]) -> _Chances | None:
    """A table whose entries are numbers or terms in one letter, more than a letter standing alone."""
    constants: list[Fraction | None] = []
    shares: list[Fraction] = []
    letters: list[str] = []
    for cell in cells:
        plain = spelled(cell)
        found = number_in_text(plain)
        if found is not None and not found[1]:
            constants.append(found[0])
            shares.append(Fraction(0))
            continue
        term = _TERMS.fullmatch(plain)
        if term is None or (term["first"] and term["behind"]):
            return None
        share = amount_in(term["share"]) if term["share"] else Fraction(1)
        shares.append(-share if term["sign"] in ("-", "−") else share)
        behind = (term["behind"] or "").replace("−", "-").replace(" ", "")
        ahead = term["first"] or behind.lstrip("+-")
        constants.append(amount_in(ahead) * (-1 if behind.startswith("-") else 1) if ahead else Fraction(0))
        letters.append(term["letter"])
    added = [constant for constant, share in zip(constants, shares, strict=True) if share]
    plain_one = len(letters) == 1 and Fraction(1) in shares and not any(added)
    if len(set(letters)) != 1 or plain_one:
        return None
    return _Chances(names, tuple(constants), (letters[0],), False, tuple(shares))


def _story(question: Question, part: Part, scene: Scene) -> Told | None:
    told = heard(question, part, scene)
    if told.too_long or not question.table:
        return None
    asked = _asked(told)
    if asked is None:
        return None
    sentence, node = asked
    others = " ".join(one.text for one in told.sentences if one is not sentence)
    trials = _trials(others)
    if re.search(r"\d", _TRIALS.sub("", others)) or trials is None:
        return None
    chances = _chances(question)
    try:
        if chances is not None:
            task = _of_chances(node, chances, trials)
        else:
            crossed = crossed_in(question.table)
            task = of_crossed(node, crossed) if crossed is not None else None
    except NotUnderstood:
        return None
    if task is None:
        return None
    text = "; ".join(f"{name}: {', '.join(cell.strip() for cell in cells)}" for name, cells in question.table)
    givens = givens_of([Sentence("", text, Origin.GIVEN, question.place)], Noted)
    return Told(told.ask(task, sentence.source, task.in_words(), sentence.place), givens)


def _asked(told: Heard) -> tuple[Sentence, Node] | None:
    explicit = [one for one in told.sentences if one.asked]
    found = []
    for one in explicit or told.sentences:
        try:
            found.append((one, parsed(topic_named("tables of chance").rules(), "ask", one.text.lower())))
        except ExpressionNotRead:
            continue
    return found[0] if len(found) == 1 else None


def _trials(text: str) -> int | None:
    """How often the experiment is done; 0 where nothing is said, None where two numbers are."""
    found = [one[1] or one[2] for one in _TRIALS.finditer(text)]
    return None if len(found) > 1 else int(found[0]) if found else 0


def _of_chances(node: Node, table: _Chances, trials: int) -> TopicTask | None:
    known = [value for value in table.values if value is not None]
    total = sum(known, Fraction(0))
    task = FromTable(table.names, table.values, "of", (), trials, table.counted)
    if table.shares:
        task = replace(task, letter=table.letters[0], shares=table.shares)
    elif not table.counted and (clash := _not_one(table, total)):
        return clash
    chosen = the(node, *ASKS)
    if has(node, "condition") or chosen.expr_name in ("independent", "count"):
        return None
    match chosen.expr_name:
        case "missing":
            letters = first(chosen, "letters")
            named = letters.text if letters is not None else ""
            fits = (None in table.values or table.shares) and (not named or named in table.letters)
            return replace(task, want="missing") if fits and not table.counted else None
        case "mean" | "variance":
            numeric = all(re.fullmatch(r"-?\d+(?:[.,]\d+)?", spelled(name)) for name in table.names)
            return replace(task, want=chosen.expr_name) if numeric and not table.counted else None
    of = _outcomes_named(the(chosen, "event"), table.names)
    if chosen.expr_name == "expected":
        return replace(task, want="expected", of=of) if trials else None
    if trials:
        return None
    alone = len(of) == 1 and table.values[of[0]] is None
    return replace(task, want="missing") if alone else replace(task, of=of)


def _not_one(table: _Chances, total: Fraction) -> Clashing | None:
    """The clash of probabilities that do not add up to 1."""
    from paperaudit.maths.collected_values import number
    from paperaudit.maths.write import write

    known = [value for value in table.values if value is not None]
    bad = total > 1 if None in table.values else total != 1
    outside = [value for value in known if not 0 <= value <= 1]
    if not bad and not outside:
        return None
    texts = [write(number(value)) for value in known]
    said = f"{' + '.join(texts)} = {write(number(total))}"
    clash = tuple(f"P({name}) = {write(number(value))}" for name, value in zip(table.names, table.values, strict=True)
                  if value is not None)  # fmt: skip
    return Clashing(clash, (said, f"{write(number(total))} = 1: false"))


def _outcomes_named(node: Node, names: tuple[str, ...]) -> tuple[int, ...]:
    variable = first(node, "variable")
    if variable is not None:
        sign, value = the(variable, "sign").text, Fraction(the(variable, "value").text.replace(",", "."))
        sizes = [number_in_text(spelled(name)) for name in names]
        if any(size is None for size in sizes):
            raise NotUnderstood("a number among names", node.start)
        holds = {"=": lambda one: one == value, "≤": lambda one: one <= value, "≥": lambda one: one >= value,
                 "<": lambda one: one < value, ">": lambda one: one > value, "≠": lambda one: one != value}  # fmt: skip
        found = tuple(at for at, size in enumerate(sizes) if size is not None and holds[sign](size[0]))
        if not found and sign == "=":
            raise NotUnderstood("no outcome of the table", node.start)
        return found
    words = the(node, "words").text
    negated = re.match(r"(?:(?:it |that )*(?:is |does )?not )", words)
    pieces = [piece.strip() for piece in re.split(r" or |, ", words[negated.end() :] if negated else words)]
    at = tuple(_place(piece, names) for piece in pieces)
    if len(set(at)) != len(at):
        raise NotUnderstood("the same outcome twice", node.start)
    return tuple(place for place in range(len(names)) if place not in at) if negated else at


def _place(words: str, names: tuple[str, ...]) -> int:
    """Which outcome words name: all of them but fillers must be its name."""
    kept = [singular(word) for word in words.split(" ") if word not in FILLER]
    for at, name in enumerate(names):
        if kept == [singular(word) for word in name.split(" ")]:
            return at
    raise NotUnderstood(f"{words} is no outcome of the table", 0)


READERS = Readers(story=_story)
