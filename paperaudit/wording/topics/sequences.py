"""Asks and statements about sequences and series: "Find the nth term of the sequence 5, 8, 11, 14, …"."""

from parsimonious.nodes import Node

from paperaudit.maths.grammar import expression_grammar
from paperaudit.maths.peg import parsed
from paperaudit.maths.terms import expression_of
from paperaudit.maths.tree import every, first, has, the
from paperaudit.model.ask import Task
from paperaudit.model.expression import Expression, letters_of
from paperaudit.model.fact import Fact
from paperaudit.model.sequence_task import OfSequence, Sequence, SequenceAsk, SequenceKind, Sigma
from paperaudit.wording.accuracy import COUNTS
from paperaudit.wording.asides import Asides
from paperaudit.wording.scene import NotUnderstood, Scene
from paperaudit.wording.topics.topic import Readers

_KINDS: tuple[tuple[str, SequenceKind], ...] = (
    ("arith", "arithmetic"),
    ("linear", "arithmetic"),
    ("geom", "geometric"),
    ("quad", "quadratic"),
    ("cubic", "cubic"),
    ("fib", "summed"),
)
_ORDINALS = ("first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth", "ninth", "tenth")
_FURTHER = {"twelfth": 12, "twentieth": 20, "fiftieth": 50, "hundredth": 100}
_ASKS: dict[str, SequenceAsk] = {
    "nth": "nth term",
    "next": "next",
    "firsts": "first",
    "which": "which",
    "how_many": "how many",
    "count_all": "how many",
    "is_term": "is a term",
    "infinity": "sum to infinity",
    "sum": "sum",
    "step": "step",
    "term": "term",
    "as_sigma": "sigma",
}


def _read(text: str) -> Expression:
    return expression_of(parsed(expression_grammar(), "expression", text.strip().rstrip(".,; ")))


def _kind(node: Node) -> SequenceKind:
    word = first(node, "kind_word")
    return "" if word is None else next(kind for start, kind in _KINDS if word.text.startswith(start))


def _row(node: Node) -> Sequence | None:
    """The sequence that a row of numbers under the node begins, or None where there is no row."""
    row = first(node, "plus_row", "semi_row", "comma_row")
    if row is None:
        return None
    terms = tuple(_read(item.text) for item in every(row, "item", "comma_item", "last") if item.expr_name != "last")
    end = first(row, "last")
    summed = row.expr_name == "plus_row" and not has(row, "more_terms")
    last = _read(end.text) if end is not None else terms[-1] if summed else None
    return Sequence(_kind(node), terms, last=last)


def _task(node: Node, asides: Asides) -> Task:
    chosen = the(node, "sigma", *_ASKS)
    if asides.terms and (chosen.expr_name != "nth" or asides.terms != "n"):
        raise NotUnderstood("an answer in terms of a letter", 0)
    if chosen.expr_name == "sigma":
        return _sigma(chosen)
    what = _ASKS[chosen.expr_name]
    said = first(chosen, "sequence_said", "all_of", "as_row")
    sequence = _row(said) if said is not None else None
    kind = _kind(chosen)
    match what:
        case "nth term":
            letter = first(chosen, "index_letter")
            return OfSequence(what, sequence, kind, letter=letter.text if letter is not None else "n")
        case "next" | "first":
            count = first(chosen, "count")
            return OfSequence(what, sequence, kind, _count(count.text) if count is not None else 1)
        case "how many" if chosen.expr_name == "count_all":
            return OfSequence(what, sequence, kind)
        case "which" | "how many":
            return OfSequence(what, sequence, kind, value=_read(the(chosen, "item_alone").text))
        case "is a term":
            return OfSequence(what, sequence, kind, value=_read(every(chosen, "item")[0].text))
        case "term":
            return OfSequence(what, sequence, kind, _index(chosen))
        case "sum":
            if has(chosen, "all_of", "whole_series"):
                return OfSequence("sum of all", sequence, kind)
            return OfSequence(what, sequence, kind, _count(the(chosen, "count", "count_digits").text))
        case "step":
            kind = kind or ("arithmetic" if "difference" in chosen.text else "geometric")
    return OfSequence(what, sequence, kind)


def _count(word: str) -> int:
    return int({**COUNTS, "twenty": "20"}.get(word, word))


def _index(node: Node) -> int:
    digits = first(node, "count_digits")
    if digits is not None:
        return int(digits.text)
    word = the(node, "ordinal").text
    if word[0].isdigit():
        return int(word[:-2])
    return _FURTHER.get(word) or _ORDINALS.index(word) + 1


def _sigma(node: Node) -> Sigma:
    low, high = the(node, "low_bound"), the(node, "high_bound").text
    letter = low.text[0]
    end = None if high in ("∞", "infinity") else _read(high.rpartition("=")[2])
    if "=" in high and high[0] != letter:
        raise NotUnderstood("two letters that run", node.start)
    formula = _read(the(node, "body").text)
    if not set(letters_of(formula)) <= {letter}:
        raise NotUnderstood("other letters in the terms of the sum", node.start)
    return Sigma(formula, letter, _read(low.text.rpartition("=")[2]), end)


def _facts(node: Node, scene: Scene) -> tuple[Fact, ...]:
    said = the(node, "by_terms", "by_formula", "by_step", "by_sums")
    match said.expr_name:
        case "by_sums":
            return (Sequence(_kind(said), sums=_in_n(said)),)
        case "by_terms":
            sequence = _row(said)
            assert sequence is not None
            return (sequence,)
        case "by_step":
            head, step = (_read(item.text) for item in every(said, "item"))
            kind = _kind(said)
            if ("ratio" in said.text) != (kind == "geometric") or kind not in ("arithmetic", "geometric"):
                raise NotUnderstood("a ratio of an arithmetic sequence, or a difference of another", said.start)
            return (Sequence(kind, first=head, step=step),)
    return (Sequence(_kind(said), formula=_in_n(said)),)


def _in_n(said: Node) -> Expression:
    formula = _read(the(said, "formula").text)
    if letters_of(formula) not in ((), ("n",)):
        raise NotUnderstood("a formula in other letters than n", said.start, "a formula in n")
    return formula


READERS = Readers(task=_task, facts=_facts)
