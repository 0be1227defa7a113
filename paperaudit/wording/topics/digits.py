"""Asks about digits: "What is the hundreds digit of 3456?", "Convert 1011₂ to base 10"."""

import re
from fractions import Fraction

from parsimonious.nodes import Node

from paperaudit.maths.number_words import from_words
from paperaudit.maths.tree import every, first, the
from paperaudit.model.ask import Task
from paperaudit.model.expression import Number
from paperaudit.model.number_task import DigitAt, InBase, InWords, Truncated, ValueOfDigit
from paperaudit.wording.accuracy import COUNTS
from paperaudit.wording.asides import Asides
from paperaudit.wording.scene import NotUnderstood
from paperaudit.wording.topics.numbers_named import number_in
from paperaudit.wording.topics.topic import Readers

_POWERS = {
    "unit": 0,
    "one": 0,
    "ten": 1,
    "hundred": 2,
    "thousand": 3,
    "ten thousand": 4,
    "hundred thousand": 5,
    "million": 6,
    "ten million": 7,
    "hundred million": 8,
    "billion": 9,
    "ten billion": 10,
    "hundred billion": 11,
    "tenth": -1,
    "hundredth": -2,
    "thousandth": -3,
    "ten thousandth": -4,
    "hundred thousandth": -5,
}
_BASES = {"binary": 2, "octal": 8, "denary": 10, "decimal": 10, "hex": 16, "hexadecimal": 16, "sixteen": 16}
_LOWERED = str.maketrans("₀₁₂₃₄₅₆₇₈₉", "0123456789")
_RULES = (
    "in_words", "in_figures", "truncate", "digit_of", "worth_in", "worth", "in_base_what", "converted", "from_to",
    "sum_in_base",
)  # fmt: skip
_SUBSCRIPT = re.compile(r"[₀-₉]+")


def _task(node: Node, asides: Asides) -> Task:
    chosen = the(node, *_RULES)
    if chosen.expr_name == "truncate" and asides.accuracy is not None:
        return Truncated(number_in(the(chosen, "item")), asides.accuracy)
    if asides.accuracy is not None or asides.unit or chosen.expr_name == "truncate":
        raise NotUnderstood("an accuracy or a unit with a question about digits", 0)
    match chosen.expr_name:
        case "in_words":
            return InWords(number_in(the(chosen, "item"), letters=False))
        case "in_figures":
            return InWords(Number(Fraction(from_words(the(chosen, "number_words").text))), figures=True)
        case "digit_of":
            name = re.sub("-", " ", the(chosen, "place_name").text).rstrip("s")
            return DigitAt(number_in(the(chosen, "item")), _POWERS[name])
        case "worth" | "worth_in":
            return ValueOfDigit(number_in(the(chosen, "item")), int(the(chosen, "digit").text.strip("′")))
        case "in_base_what":
            return _all_in(chosen, _base(the(chosen, "base").text))
        case "from_to":
            old, new = the(chosen, "old_base"), the(chosen, "next_base")
            return InBase((_term(the(chosen, "signed_digits"), _base(old.text), asides),), _base(new.text))
        case "converted":
            return _converted(chosen, asides)
    return _sum(chosen, asides)


def _base(words: str) -> int:
    found = _BASES.get(words) or int(COUNTS.get(words, words if words.isdigit() else "0"))
    if not found:
        raise NotUnderstood(words, 0, "a base such as 2, 8 or ten")
    return found


def _term(node: Node, base: int, asides: Asides) -> tuple[int, str, int]:
    """Sign, digits and base; a base that stands as a subscript is no digit."""
    digits = the(node, "digits")
    before, own = _with_subscript(digits, asides)
    if own and base and own != base:
        raise NotUnderstood("two bases for one number", node.start)
    return -1 if node.text.startswith("-") else 1, before.lower(), own or base


def _with_subscript(digits: Node, asides: Asides) -> tuple[str, int]:
    source = asides.rest.source_of(digits.start, digits.end)
    found = _SUBSCRIPT.search(source)
    if found is None:
        return digits.text, 0
    return source[: found.start()], int(found.group().translate(_LOWERED))


def _all_in(node: Node, base: int) -> InBase:
    """In base 9, what is 24 + 171113?"""
    terms, sign, times = [], 1, False
    for piece in every(node, "base_sign", "signed_digits"):
        if piece.expr_name == "base_sign":
            times = times or piece.text in "×*"
            sign = -1 if piece.text == "-" else 1
            continue
        own = -1 if piece.text.startswith("-") else 1
        terms.append((sign * own, the(piece, "digits").text.lower(), base))
    if times and len(terms) != 2:
        raise NotUnderstood("products in a base", node.start)
    return InBase(tuple(terms), base, times)


def _converted(node: Node, asides: Asides) -> InBase:
    named, own, new = first(node, "named_base"), first(node, "own_base"), the(node, "new_base")
    base = _base(the(named, "base_word").text) if named is not None else 0
    base = _base(the(own, "base").text) if own is not None else base
    target = first(new, "base", "base_word")
    to = _base(target.text) if target is not None else 2 if "binary" in new.text else 10
    sign, digits, found = _term(the(node, "signed_digits"), base, asides)
    if not found and not digits.isdigit():
        raise NotUnderstood("digits without a base", node.start)
    if not found and to == 10:
        raise NotUnderstood("no base to convert from", node.start, "a base, as in 1011 (base 2)")
    return InBase(((sign, digits, found or 10),), to)


def _sum(node: Node, asides: Asides) -> InBase:
    """1011₂ + 110₂: both in one base, which the answer is in too unless another one is asked for."""
    answer = first(node, "in_answer")
    bases = [_base(the(own, "base").text) for own in every(node, "own_base", "in_answer")
             if own.expr_name == "own_base"]  # fmt: skip
    terms = [_term(piece, 0, asides) for piece in every(node, "signed_digits")]
    known = {base for base in (*bases, *(base for _, _, base in terms)) if base}
    if len(known) != 1:
        raise NotUnderstood("no base, or two of them", node.start)
    base = known.pop()
    sign = the(node, "base_sign").text
    first_term, second = ((one, digits, base) for one, digits, _ in terms)
    second = (-second[0] if sign == "-" else second[0], second[1], base)
    target = first(the(answer, "new_base"), "base", "base_word") if answer is not None else None
    return InBase((first_term, second), _base(target.text) if target is not None else base, sign in "×*")


READERS = Readers(task=_task)
