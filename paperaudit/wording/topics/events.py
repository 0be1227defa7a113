"""The events of an experiment in words: even, a red king, at least one head, a total of 7."""

import re
from fractions import Fraction

from parsimonious.nodes import Node

from paperaudit.maths.tree import every, first, has, the
from paperaudit.model.chance_task import (
    Alike,
    Both,
    Condition,
    Either,
    Event,
    Experiment,
    InTurn,
    Is,
    Property,
    Score,
    Single,
    Thing,
    Times,
    Together,
)
from paperaudit.wording.scene import NotUnderstood
from paperaudit.wording.topics.outcomes import singular
from paperaudit.wording.topics.value_lists import COUNT_WORDS

_KINDS = ("sequence", "placed", "level_set", "turns", "scored", "alike", "none", "at_least_one", "number_of", "all_of",
          "each_of", "mixed", "condition")  # fmt: skip
_COMPARED: tuple[tuple[str, Property], ...] = (
    ("at least", "at least"), ("at most", "at most"), ("no more", "at most"), ("≥", "at least"), ("≤", "at most"),
    ("greater", "more"), ("more", "more"), ("higher", "more"), ("larger", "more"), ("bigger", "more"), ("over", "more"),
    ("above", "more"), (">", "more"),
)  # fmt: skip


def number_word(text: str) -> Fraction:
    """A number in figures or words, in the plural too: "sixes" is 6."""
    plain = text.strip()
    if plain.isdigit():
        return Fraction(int(plain))
    word = plain if plain in COUNT_WORDS else singular(plain)
    if word not in COUNT_WORDS:
        raise NotUnderstood(f"{plain} is no number", 0, "a number")
    return Fraction(COUNT_WORDS[word])


def event_of(node: Node, experiment: Experiment) -> Event:
    """The event that words name; raises NotUnderstood where they do not fit the experiment."""
    chosen = the(node, *_KINDS)
    draws = len(experiment.draws)
    things = [thing for draw in experiment.draws for thing in draw.things]
    kind = chosen.expr_name
    if draws == 1:
        if kind != "condition":
            raise NotUnderstood("several draws in an event of one draw", node.start)
        return Single(condition_of(chosen, things))
    conditions = [condition_of(one, things) for one in every(chosen, "condition")]
    match kind:
        case "sequence":
            return _sequence(chosen.text.removeprefix("sequence "), experiment)
        case "level_set":
            return _level_set(chosen, experiment)
        case "placed":
            at = ("first", "second", "third").index(the(chosen, "place").text)
            if at >= draws:
                raise NotUnderstood("a draw that is not made", node.start)
            return InTurn(tuple(conditions[0] if one == at else Is("any") for one in range(draws)))
        case "turns" if draws == 2:
            return InTurn((conditions[0], conditions[1]))
        case "scored" if all(thing.number is not None for thing in things):
            return _scored(chosen, things, draws)
        case "alike":
            return Alike(has(chosen, "same"))
        case "none":
            return Times(conditions[0], 0, 0)
        case "at_least_one":
            return Times(conditions[0], 1, draws)
        case "number_of":
            return _number_of(chosen, conditions[0], draws)
        case "all_of":
            return Times(conditions[0], draws, draws)
        case "each_of" if len({thing.name for thing in things}) == draws:
            names = dict.fromkeys(thing.name for thing in things)
            return Together(tuple((Is("named", name), 1) for name in names))
        case "mixed":
            return _mixed(chosen, things, draws)
    raise NotUnderstood("an event that does not fit the number of draws", node.start)


def _sequence(word: str, experiment: Experiment) -> Event:
    if len(word) != len(experiment.draws):
        raise NotUnderstood("a sequence of another length", 0)
    return InTurn(tuple(Is("named", letter) for letter in word))


def _level_set(node: Node, experiment: Experiment) -> Event:
    parts = []
    for one in every(node, "amount_of"):
        amount, letter = one.text.split(" ")
        parts.append((Is("named", letter), int(amount)))
    if sum(amount for _, amount in parts) != len(experiment.draws):
        raise NotUnderstood("another number of letters", 0)
    return Together(tuple(parts))


def _scored(node: Node, things: list[Thing], draws: int) -> Event:
    name = the(node, "score_name").text
    if name == "difference" and draws != 2:
        raise NotUnderstood("the difference of several numbers", node.start)
    condition = condition_of(the(node, "condition"), things)
    if "greater than" in node.text and isinstance(condition, Is) and condition.what == "equal":
        condition = Is("more", number=condition.number)
    return Score("product" if name == "product" else "difference" if name == "difference" else "sum", condition)


def _number_of(node: Node, condition: Condition, draws: int) -> Event:
    how = the(node, "exactly", "at_most", "at_least", "plain_count")
    amount = int(number_word(the(how, "few", "small").text))
    if amount > draws:
        raise NotUnderstood("more than there are draws", node.start)
    match how.expr_name:
        case "at_most":
            return Times(condition, 0, amount)
        case "at_least":
            return Times(condition, amount, draws)
    return Times(condition, amount, amount)


def _mixed(node: Node, things: list[Thing], draws: int) -> Event:
    parts = []
    for one in every(node, "mixed_one"):
        amount = re.match(r"(two|three)\b", one.text)
        parts.append((condition_of(the(one, "condition"), things), COUNT_WORDS[amount[1]] if amount else 1))
    if sum(amount for _, amount in parts) != draws:
        raise NotUnderstood("another number of draws", node.start)
    return Together(tuple(parts))


def condition_of(node: Node, things: list[Thing]) -> Condition:
    """A condition on one draw, "a red king or a 7"; names must be those of the experiment."""
    pieces = every(node, "simple_one")
    options = [_simple(one, things) for one in pieces]
    if len(options) > 1 and first(pieces[0], "negated") is not None:
        raise NotUnderstood("“not” in front of an “or”", node.start, "neither … nor …")
    for at, piece in enumerate(pieces[1:], start=1):
        if _BARE.fullmatch(piece.text) is not None:
            options[at] = _as_before(pieces[at - 1], options[at - 1], options[at])
    return options[0] if len(options) == 1 else Either(tuple(options))


_BARE = re.compile(r"\d+|[a-z]+")


def _as_before(before: Node, option: Condition, number: Condition) -> Condition:
    """A bare number behind "or": in "a multiple of 3 or 5" it is a multiple of 5, and so on through a list."""
    if not isinstance(number, Is) or number.what != "equal":
        return number
    if isinstance(option, Is) and option.what in ("multiple", "factor") and number.number:
        return Is(option.what, number=number.number)
    if first(before, "compared", "between", "multiple", "divisor") is None:
        return number
    raise NotUnderstood(f"a number behind “{before.text}”", before.start)


def _simple(node: Node, things: list[Thing]) -> Condition:
    chosen = the(node, "between", "compared", "multiple", "divisor", "parity", "square", "cube", "letter_kind", "equal",
                 "named")  # fmt: skip
    negated = first(node, "negated") is not None
    if chosen.expr_name == "named":
        return _named(chosen.text, things, negated)
    if chosen.expr_name == "letter_kind":
        if any(len(thing.name) > 1 for thing in things):
            raise NotUnderstood("letters in an experiment without letters", node.start)
        return Is("vowel" if chosen.text == "vowel" else "consonant", negated=negated)
    if chosen.expr_name == "equal" and any(thing.tags for thing in things):
        return _named(str(number_word(the(chosen, "value").text)), things, negated)
    if not any(thing.number is not None for thing in things) or any(thing.tags for thing in things):
        raise NotUnderstood("numbers in an experiment without numbers", node.start)
    values = [number_word(one.text) for one in every(chosen, "value")]
    match chosen.expr_name:
        case "between":
            return Is("between", "", values[0], values[1], negated)
        case "compared":
            return Is(_comparison(chosen), number=values[0], negated=negated)
        case "multiple" | "divisor":
            if not values[0]:
                raise NotUnderstood("a multiple of nought", node.start)
            kind: Property = "multiple" if chosen.expr_name == "multiple" else "factor"
            if len(values) == 1:
                return Is(kind, number=values[0], negated=negated)
            if negated or not values[1]:
                raise NotUnderstood("“not” in front of an “and”", node.start)
            return Both(tuple(Is(kind, number=value) for value in values))
        case "parity":
            kinds: dict[str, Property] = {"even": "even", "odd": "odd", "prime": "prime"}
            return Is(kinds[chosen.text], negated=negated)
        case "square" | "cube":
            return Is("square" if chosen.expr_name == "square" else "cube", negated=negated)
    return Is("equal", number=values[0], negated=negated)


def _comparison(node: Node) -> Property:
    words = first(node, "than")
    if words is not None:
        return next((kind for start, kind in _COMPARED if words.text.startswith(start)), "less")
    up = the(node, "or_word").text in ("more", "higher", "above", "over")
    return "at least" if up else "at most"


def _named(text: str, things: list[Thing], negated: bool) -> Condition:
    """Words that things of the experiment carry: one name, or two that both hold."""
    known = {thing.name for thing in things} | {tag for thing in things for tag in thing.tags}
    for spelled in (text, singular(text)):
        if spelled in known:
            return Is("named", spelled, negated=negated)
    words = [word if word in known else singular(word) for word in text.split(" ") if word != "of"]
    if len(words) != 2 or not set(words) <= known:
        raise NotUnderstood(f"{text} is no outcome", 0, "an outcome of the experiment")
    both = tuple(Is("named", word, negated=negated) for word in words)
    return Either(both) if negated else Both(both)
