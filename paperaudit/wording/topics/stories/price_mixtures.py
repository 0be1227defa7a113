"""Stories of two kinds of goods that are mixed at their prices."""

import re
from collections.abc import Sequence

from paperaudit.model.story import Added, Amount, Divided, Named, Said, Same, Scaled, Sought, StoryTask, Wanted
from paperaudit.wording.scene import NotUnderstood
from paperaudit.wording.topics.stories.amounts import number_in
from paperaudit.wording.topics.stories.plain import Plain
from paperaudit.wording.topics.stories.sentence_forms import NUMBER, Form, forms_of, only

AHEAD = re.compile(r"\bmix(?:ed|es|ture)?\b|\bblend")
_UNIT = r"(?:kg|kilograms|litres|l|g|grams)"
_STUFF = r"[a-z]+(?: [a-z]+)?"
_PRICE = (
    r"(?:costing|worth|that costs?|which costs?|priced at|at|selling at) [R$£€] ?{} (?:per|a|/) ?(?:kg"
    r"|kilogram|litre|l|g|gram)"
)


def _price(name: str) -> str:
    return _PRICE.format(rf"(?P<{name}>{NUMBER})")


_MIX = r"(?:(?:a|the) (?:mixture|blend)(?: that (?:is )?| which (?:is )?| )(?:of tea )?|a [a-z]+ )"
_FORMS = {
    "how_much": (
        re.compile(
            rf"how (?:many {_UNIT} of|much) (?P<stuff>{_STUFF}) {_price('one')} (?:must|should) be mixed with "
            rf"(?P<known>{NUMBER}) ?{_UNIT}"
            rf" of (?:[a-z]+ )*?{_price('other')} (?:to (?:get|make|give|obtain|form)|so that the result is"
            rf"|to produce)(?: {_UNIT} of)? {_MIX}?"
            rf"{_price('mixed')}"
        ),
    ),
    "mixed": (
        re.compile(
            rf"(?:a (?:shopkeeper|trader|merchant|grocer|farmer|shop) mixes )?"
            rf"(?P<first>{NUMBER}) ?{_UNIT} of {_STUFF} {_price('one')} (?:is |are )?"
            rf"(?:mixed )?(?:with|and) (?P<second>{NUMBER}) ?{_UNIT} of (?:[a-z]+ )*?{_price('other')}(?: (?:is"
            rf"|are) mixed)?"
        ),
    ),
    "ask": (
        re.compile(
            r"(?:what is|find|calculate|determine|work out) the (?:cost|price|value) (?:per (?:kg|litre"
            r"|kilogram) of|of (?:1 kg|one kg|a kilogram|1 litre"
            r"|each kilogram) of) the (?:mixture|blend)"
        ),
        re.compile(
            r"(?:what is|find|calculate|determine|work out) the (?:cost|price|value) of the (?:mixture"
            r"|blend) per (?:kg|litre|kilogram)"
        ),
    ),
}  # fmt: skip


def price_mixtures_story(sentences: Sequence[Plain]) -> StoryTask | None:
    """The story of a part as one of goods mixed at their prices; raises NotUnderstood where it is none."""
    forms = forms_of(sentences, _FORMS)
    text = " ".join(sentence.text for sentence in sentences)
    currencies, units = set(re.findall(r"[R$£€]", text)), {_plain(one) for one in re.findall(rf"\b{_UNIT}\b", text)}
    if len(currencies) != 1 or len(units) != 1:
        raise NotUnderstood("one currency and one unit", 0)
    if [form.name for form in forms] == ["how_much"]:
        return _how_much(forms[0], units.pop())
    mixed, _ = only(forms, "mixed"), only(forms, "ask")
    return _price_of(mixed, currencies.pop(), units.pop())


def _plain(unit: str) -> str:
    return {"kilograms": "kg", "litres": "litre", "l": "litre", "grams": "g"}.get(unit, unit)


def _how_much(form: Form, unit: str) -> StoryTask:
    one, other = Named("one"), Named("other")
    worth = Added((Scaled(number_in(form.pieces["one"]), one), Scaled(number_in(form.pieces["other"]), other)))
    sought = (Sought("one", "the amount sought", unit, "positive", False, "an amount"),
              Sought("other", "the amount of the other", unit, "positive", False, "an amount"))  # fmt: skip
    claims = (Said(form.said, Same(other, form.number("known", unit))),
              Said(form.said, Same(worth, Scaled(number_in(form.pieces["mixed"]), Added((one, other))))))  # fmt: skip
    return StoryTask(sought, claims, (Wanted(one, "the amount", unit),))


def _price_of(form: Form, money: str, unit: str) -> StoryTask:
    one, other = Named("one"), Named("other")
    worth = Added((Scaled(number_in(form.pieces["one"]), one), Scaled(number_in(form.pieces["other"]), other)))
    sought = (Sought("one", "the amount of the first", unit, "positive", False, "an amount"),
              Sought("other", "the amount of the second", unit, "positive", False, "an amount"))  # fmt: skip
    claims = (Said(form.said, Same(one, Amount(number_in(form.pieces["first"]), unit))),
              Said(form.said, Same(other, Amount(number_in(form.pieces["second"]), unit))))  # fmt: skip
    return StoryTask(sought, claims, (Wanted(Divided(worth, Added((one, other))), "the price", money),))
