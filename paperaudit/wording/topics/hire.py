"""Stories of hire purchase and of tax by bands of income."""

from parsimonious.nodes import Node

from paperaudit.maths.tree import every, first, has, the
from paperaudit.model.expression import Expression, Measured
from paperaudit.model.reckoning import Amount, Reckoning
from paperaudit.wording.scene import NotUnderstood
from paperaudit.wording.topics.amount_words import amount_of, named, percent_of, story
from paperaudit.wording.topics.stories.amounts import number_in
from paperaudit.wording.topics.topic import Readers

_WANTED = {
    "want_more": "extra", "want_total": "hire purchase price", "want_each": "instalment", "want_deposit": "deposit",
    "want_interest": "interest", "want_tax": "tax", "want_net": "income after tax",
}  # fmt: skip
_TAX = ("tax", "income after tax")


def _reckoning(node: Node) -> Reckoning:
    asks = [the(piece, *_WANTED).expr_name for piece in every(node, "want")]
    wanted = tuple(dict.fromkeys(_WANTED[ask] for ask in asks))
    taxed = has(node, "income", "free", "band", "rest_taxed")
    if not wanted or any((one in _TAX) != taxed for one in wanted):
        raise NotUnderstood("what is to be found about the payments", 0)
    return _tax(node, wanted) if taxed else _hire(node, wanted)


def _tax(node: Node, wanted: tuple[str, ...]) -> Reckoning:
    if has(node, "cash", "deposit", "payments", "loan_terms", "time_told"):
        raise NotUnderstood("tax and hire purchase", 0)
    incomes, free, last = (every(node, name) for name in ("income", "free", "rest_taxed"))
    if len(incomes) != 1 or len(free) > 1 or len(last) != 1:
        raise NotUnderstood("one income with its bands", 0)
    amounts = [named("income", incomes[0]), *(named("free", piece) for piece in free)]
    for piece in every(node, "band"):
        amounts += [named("band", piece), Amount("rate", percent_of(piece))]
    return Reckoning("tax by bands", (*amounts, Amount("last rate", percent_of(last[0]))), wanted)


def _hire(node: Node, wanted: tuple[str, ...]) -> Reckoning:
    amounts: list[Amount] = []
    for piece in every(node, "cash", "deposit", "payments", "loan_terms", "time_told"):
        amounts.extend(_amounts(piece))
    names = [amount.name for amount in amounts]
    if len(set(names)) != len(names) or "cash price" not in names:
        raise NotUnderstood("one agreement", 0)
    return Reckoning("hire purchase", tuple(amounts), wanted)


def _amounts(piece: Node) -> list[Amount]:
    match piece.expr_name:
        case "cash":
            return [named("cash price", piece)]
        case "deposit":
            share = first(piece, "percent")
            return [Amount("deposit", percent_of(share) if share is not None else amount_of(piece))]
        case "payments":
            if "weekly" in piece.text:
                raise NotUnderstood("weekly payments", piece.start)
            return [Amount("number", number_in(the(piece, "figure").text)), named("instalment", the(piece, "money"))]
    found = [Amount("rate", percent_of(one)) for one in every(piece, "percent")]
    return found + [Amount("time", _span(one)) for one in every(piece, "span")]


def _span(piece: Node) -> Expression:
    unit = "year" if "year" in piece.text else "month"
    return Measured(number_in(the(piece, "figure").text), unit)


READERS = Readers(story=story("hire purchase and tax", _reckoning))
