"""Stories of pressure, population density, a fixed loss of value and tanks that are filled at a steady rate."""

import re
from fractions import Fraction

from parsimonious.nodes import Node

from paperaudit.maths.tree import every, first, has, the
from paperaudit.model.expression import Expression, Measured, Number
from paperaudit.model.reckoning import Amount, Reckoning
from paperaudit.wording.scene import NotUnderstood
from paperaudit.wording.topics.amount_words import amount_of, story
from paperaudit.wording.topics.stories.amounts import number_in, unit_symbol
from paperaudit.wording.topics.topic import Readers

_TANK = {"long": "length", "wide": "width", "high": "height", "deep": "height", "tall": "height", "depth": "height",
         "breadth": "width"}  # fmt: skip
_TANK_CLAUSES = ("tank", "flow", "want_time")
_LOSS_CLAUSES = ("bought", "lost", "lost_by", "want_worth", "want_years")
_FORCE, _PEOPLE = ("force", "pressure", "area"), ("population", "population density", "area")


def _reckoning(node: Node) -> Reckoning:
    tank, loss = has(node, *_TANK_CLAUSES), has(node, *_LOSS_CLAUSES)
    rest = has(node, "force", "pressure", "density", "area", "people_told", "want_named", "want_people")
    if tank + loss + rest != 1:
        raise NotUnderstood("one kind of story", 0)
    return _filled(node) if tank else _worth_less(node) if loss else _spread(node)


def _spread(node: Node) -> Reckoning:
    """A force or people, spread over an area."""
    amounts = [Amount("force", Measured(_figure(one), "N")) for one in every(node, "force")]
    for one in every(node, "pressure"):
        per = "N/cm²" if re.search(r"cm|centimetre", one.text) else "N/m²"
        amounts.append(Amount("pressure", Measured(_figure(one), per)))
    amounts += [Amount("population density", Measured(_figure(one), "people/km²")) for one in every(node, "density")]
    for one in every(node, "area"):
        unit = one.text.replace(the(one, "figure").text, "", 1).strip()
        amounts.append(Amount("area", Measured(_figure(one), unit_symbol(unit))))
    for one in every(node, "people_told"):
        figure = next((piece for piece in every(one, "figure", "area") if piece.expr_name == "figure"), None)
        if figure is not None:
            amounts.append(Amount("population", number_in(figure.text)))
    wanted = [the(one, "size").text for one in every(node, "want_named")]
    wanted += ["population" for _ in every(node, "want_people")]
    wanted = ["force" if name == "weight" else name for name in wanted]
    names = [amount.name for amount in amounts]
    for kind, known in (("pressure", _FORCE), ("population density", _PEOPLE)):
        if len(wanted) == 1 and {*names, *wanted} == set(known) and len(names) == 2:
            return Reckoning(kind, tuple(amounts), tuple(wanted))
    raise NotUnderstood("two amounts to find the third from", 0)


def _figure(node: Node) -> Number:
    return number_in((node if node.expr_name == "figure" else the(node, "figure")).text)


def _worth_less(node: Node) -> Reckoning:
    """A price and the fixed amount that is lost every year."""
    prices = [amount_of(one) for piece in every(node, "bought") for one in every(piece, "money", "lost_by")
              if one.expr_name == "money"]  # fmt: skip
    losses = every(node, "lost_by") or [
        one for piece in every(node, "bought", "lost") for one in every(piece, "lost_by")
    ]
    asks = every(node, "want_worth", "want_years")
    if len(prices) != 1 or len(losses) != 1 or len(asks) != 1:
        raise NotUnderstood("one price, one loss, one ask", 0)
    loss, ask = losses[0], asks[0]
    periods = {_period(one) for one in (loss, ask)}
    if len(periods) != 1:
        raise NotUnderstood("one period", 0)
    amounts = [Amount("price", prices[0]), Amount("loss a time", amount_of(the(loss, "money")))]
    if ask.expr_name == "want_worth":
        return Reckoning("fixed loss", (*amounts, Amount("times", _figure(ask))), ("value",), tuple(periods))
    worth = the(ask, "worth")
    money = first(worth, "money")
    unit = prices[0].unit if isinstance(prices[0], Measured) else ""
    value: Expression = amount_of(money) if money is not None else Measured(Number(Fraction(0)), unit)
    return Reckoning("fixed loss", (*amounts, Amount("value", value)), ("times",), tuple(periods))


def _period(piece: Node) -> str:
    found = set(re.findall(r"\b(year|month|annum)s?\b", piece.text))
    return "year" if found in ({"annum"}, {"year"}, set()) else "month" if found == {"month"} else "two periods"


def _filled(node: Node) -> Reckoning:
    """The sizes of a tank and how fast it is filled."""
    tanks, flows, asks = every(node, "tank"), every(node, "flow"), every(node, "want_time")
    if len(tanks) != 1 or len(flows) != 1 or len(asks) != 1:
        raise NotUnderstood("one tank, one flow, one ask", 0)
    by = first(tanks[0], "by_by")
    if by is not None:
        sizes = [Amount(name, amount_of(one)) for name, one in
                 zip(("length", "width", "height"), every(by, "measure"), strict=True)]  # fmt: skip
    else:
        sizes = [Amount(_size_name(one), amount_of(the(one, "measure"))) for one in every(tanks[0], "one_size")]
    names = {size.name for size in sizes}
    cylinder = bool(names & {"radius", "diameter"})
    if ("cylind" in tanks[0].text) != cylinder or len(names) != len(sizes) or len(sizes) != (2 if cylinder else 3):
        raise NotUnderstood("the sizes of the tank", 0)
    volume = the(flows[0], "volume")
    unit = unit_symbol(volume.text.replace(the(volume, "figure").text, "", 1).strip())
    time = unit_symbol(the(flows[0], "time_unit").text)
    asked = re.match(r"how many (minutes|hours|seconds)", asks[0].text)
    details = (f"per {time}", *((f"in {asked[1].rstrip('s')}",) if asked else ()))
    amounts = (*sizes, Amount("flow", Measured(_figure(volume), unit)))
    return Reckoning("filling a cylinder" if cylinder else "filling a cuboid", amounts, ("time",), details)


def _size_name(piece: Node) -> str:
    found = re.search(r"radius|diameter|height|depth|length|width|breadth|long|wide|high|deep|tall", piece.text)
    if found is None:
        raise NotUnderstood("a size", piece.start)
    return _TANK.get(found[0], found[0])


READERS = Readers(story=story("compound measures", _reckoning))
