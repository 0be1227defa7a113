"""Stories of two amounts in proportion: a recipe, a price, a rate, workers and the time that they take."""

import re
from dataclasses import dataclass
from fractions import Fraction

from parsimonious.nodes import Node

from paperaudit.maths.tree import every, first, has, the
from paperaudit.maths.units import MONEY, unit_named
from paperaudit.model.expression import Expression, Measured, Number
from paperaudit.model.reckoning import Amount, Reckoning
from paperaudit.wording.scene import NotUnderstood
from paperaudit.wording.topics.amount_words import amount_of, story
from paperaudit.wording.topics.stories.amounts import number_in, unit_symbol
from paperaudit.wording.topics.topic import Readers

_ONE = Number(Fraction(1))
_GROW_TOGETHER = re.compile(
    r"\b(?:costs?|weighs?|mass|uses?|used|needs?|needed|requires?|makes?|made|covers?|fills?|feeds?|produces?|prints?|per"
    r"|recipe|pumps?|flows?|earns?|earned|paid|types|typed|travels?|travelled|knits|sews|packs|enough|leaks|drips|beats"
    r"|reads|burns|buy|bought|price)\b"
)
_WORKER = re.compile(
    r"worker|man|woman|person|painter|builder|pump|tap|machine|sailor|learner|printer|cleaner|pipe|tractor|boy|girl"
    r"|student|volunteer|sailmaker|bricklayer|hose|robot|gardener|labourer|horse|cow|goat|rower|digger|excavator|engine"
)
_ALONE = re.compile(
    r"\b(?:walk|walks|drive|drives|travel|travels|fly|run|cycle|swim|journey home|dry|boil)\b"
    r"|(?<!a )(?<!the )\b(?<!\d )sails?\b"
)
_WORDS = {
    "money": r"\b(?:cost|costs|price|pay|paid|earn|earns|spend|charge)\b",
    "time": r"\b(?:time|long|last)\b",
    "length": r"\b(?:far|distance|length|long)\b",
    "mass": r"\b(?:mass|weight|weigh|heavy)\b",
    "volume": r"\b(?:volume|capacity)\b",
    "area": r"\barea\b",
    "speed": r"\bspeed\b",
}
_PEOPLE = {"men": "man", "people": "person", "women": "woman", "children": "child", "boxes": "box", "dishes": "dish"}


_IN_PARTS = frozenset(("cup", "teaspoon", "tablespoon", "spoon", "gallon"))
_BOUGHT_WHOLE = frozenset(
    ("bag", "tin", "can", "box", "packet", "roll", "pot", "bus", "bottle", "bucket", "sack", "pack")
)


@dataclass(frozen=True, slots=True)
class _Quantity:
    """An amount, what kind it is (the dimension of its unit or the thing that is counted), and of what."""

    value: Expression
    kind: str
    of: str = ""


def _reckoning(node: Node) -> Reckoning:
    told, asked = the(node, "told"), the(node, "asked")
    known = [_quantity(piece) for piece in every(told, "quantity")]
    known += [_one_unit(piece) for piece in every(told, "per_unit")]
    single = first(asked, "per_one")
    new = _one_unit(single) if single is not None else _quantity(the(asked, "quantity"))
    words = _asking_words(asked)
    if len(known) > 2:
        if "recipe" not in told.text:
            raise NotUnderstood("more than two amounts", 0)
        known = [known[0], next((one for one in known[1:] if _is_asked(one, words)), known[0])]
    base = [one for one in known if one.kind == new.kind and (not new.of or one.of in ("", new.of))]
    if len(base) != 1:
        raise NotUnderstood("an amount of the same kind", 0)
    other = known[1] if base[0] is known[0] else known[0]
    if not _is_asked(other, words):
        raise NotUnderstood("what is asked for", 0)
    amounts = (Amount("first", base[0].value), Amount("that goes with it", other.value), Amount("second", new.value))
    kind = "inverse amounts" if _is_inverse(base[0], other, told) else "direct amounts"
    if kind == "direct amounts" and not _GROW_TOGETHER.search(f"{told.text} {asked.text}"):
        raise NotUnderstood("whether one grows with the other", 0)
    if {base[0].kind, other.kind} == {"mass", "time"} and "weigh" in told.text:
        raise NotUnderstood("whether it grows at a steady rate", 0)
    return Reckoning(kind, amounts, (f"amount {_unit_asked(words, other)}".rstrip(),), _details(other, words))


def _quantity(piece: Node) -> _Quantity:
    of = first(piece, "stuff")
    stuff = of.text if of is not None else ""
    if has(piece, "thing_name"):
        return _Quantity(number_in(the(piece, "figure").text), _stem(the(piece, "thing_name").text), stuff)
    value = amount_of(piece)
    assert isinstance(value, Measured)
    return _Quantity(value, _dimension(value.unit), stuff)


def _one_unit(piece: Node) -> _Quantity:
    symbol = unit_symbol(the(piece, "unit").text)
    return _Quantity(Measured(_ONE, symbol), _dimension(symbol))


def _dimension(symbol: str) -> str:
    known = unit_named(symbol)
    if symbol in MONEY or known is None:
        return "money"
    return "time" if known.dimension == "years" else known.dimension


def _stem(noun: str) -> str:
    singular: str = re.sub(r"(?<=[a-rt-z])s$", "", noun)
    return _PEOPLE.get(noun, singular)


def _asking_words(asked: Node) -> str:
    """The words of the ask without the amount that it names."""
    words: str = asked.text.replace(the(asked, "quantity", "per_one").text, " ", 1)
    return words


def _is_asked(one: _Quantity, words: str) -> bool:
    """Whether the words of the ask are about this amount."""
    many = re.search(r"how many ([a-z]+)", words)
    if many is not None:
        unit = unit_named(many[1])
        if unit is not None and _dimension(unit.symbol) == one.kind:
            return True
        return _stem(many[1]) in (one.kind, _stem(one.of))
    if one.of and re.search(rf"\b{re.escape(one.of)}\b", words):
        return True
    pattern = _WORDS.get(one.kind)
    if "number of" in words:
        return re.search(rf"number of {re.escape(one.kind)}", words) is not None
    return pattern is not None and re.search(pattern, words) is not None


def _unit_asked(words: str, other: _Quantity) -> str:
    many = re.search(r"how many ([a-z]+)", words)
    unit = unit_named(many[1]) if many is not None else None
    if unit is None or not isinstance(other.value, Measured) or _dimension(unit.symbol) != other.kind:
        return ""
    return f"in {unit.symbol}"


def _is_inverse(base: _Quantity, other: _Quantity, told: Node) -> bool:
    kinds = {base.kind, other.kind}
    if kinds == {"speed", "time"}:
        return True
    if "time" not in kinds or has(told, "per_unit"):
        return False
    counted = next((kind for kind in kinds if kind != "time"), "")
    earns = re.search(r"\b(?:earns?|needs?|costs?|per)\b", told.text)
    if _WORKER.fullmatch(counted) and not earns:
        if _ALONE.search(told.text):
            raise NotUnderstood("whether more of them need less time", 0)
        return True
    return False


def _details(other: _Quantity, words: str) -> tuple[str, ...]:
    """Whether things that are counted come whole: cups do not, bags have to be bought whole."""
    if isinstance(other.value, Measured) or other.kind in _IN_PARTS:
        return ()
    return ("rounded up",) if other.kind in _BOUGHT_WHOLE and re.search(r"need|require|bought", words) else ("whole",)


READERS = Readers(story=story("amounts in proportion", _reckoning))
