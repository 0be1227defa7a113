"""Stories of a part that is spent and a part of the rest: fractions of what is left."""

import re
from collections.abc import Iterator, Sequence
from fractions import Fraction

from paperaudit.maths.units import MONEY
from paperaudit.model.story import Amount, Named, Said, Same, Scaled, Size, Sought, StoryTask, Taken, Wanted
from paperaudit.wording.scene import NotUnderstood
from paperaudit.wording.topics.stories.amounts import number_in
from paperaudit.wording.topics.stories.plain import Plain
from paperaudit.wording.topics.stories.sentence_forms import FIND, Form, forms_of, only, some

AHEAD = re.compile(r"\b(?:rest|remainder|left|remains?|remaining)\b")
_WHO = (
    r"(?:he|she|(?:an?|the) (?:man|woman|boy|girl|farmer|worker|teacher|family|student|sailor)|(?!it\b"
    r"|they\b)[a-z]{3,})"
)
_PART = r"(?:\d+/\d+|\d+(?:\.\d+)?%) of"
_WHOLE = (
    r"(?:it|this|(?:the|his|her|this) (?:money|salary|income|wages?|pocket money|savings|earnings|allowance"
    r"|pension|prize)"
    r"(?: money)?)"
)
_REST = (
    r"(?:the rest|the remainder|what (?:is|was) left|what remains|the remaining (?:money|amount)"
    r"|(?:his|her) remaining money|what (?:he|she) has left|the money (?:that is )?left)"
)
_ON = r"(?: (?:on|for|to|at|towards) [a-z]+(?: [a-z]+)?)?"
_SPENDS = r"(?:spends|spent|gives away|gives|gave|uses|used|pays|paid|saves|saved|loses|lost|invests|invested)"
_MONEY = r"(?P<money>[R$£€] ?\d+(?:\.\d+)?)"
_FORMS = {
    "has": (re.compile(rf"{_WHO} (?:has|had|earns|receives|gets|wins|won|received) {_MONEY}"
                       r"(?: (?:per|a|each) (?:month|week))?"),),
    "spends": (
        re.compile(
            rf"(?:{_WHO} )?(?:then |also )?{_SPENDS} (?P<first>{_PART}) (?P<of>{_WHOLE}|{_REST}){_ON}"
            rf"(?:,? (?:and )?(?:then )?(?:{_SPENDS} )?(?P<second>{_PART}) (?P<of2>{_WHOLE}|{_REST}){_ON})?"
            rf"(?:,? (?:and )?(?:then )?(?:{_SPENDS} )?(?P<third>{_PART}) (?P<of3>{_WHOLE}|{_REST}){_ON})?"
            rf"(?:,? and (?:then )?has {_MONEY} left(?: over)?)?"
        ),
    ),
    "left": (
        re.compile(rf"(?:if )?(?:{_WHO} (?:then |now |still )?(?:has|had) {_MONEY} (?:left|over|remaining)"
                   rf"|{_MONEY.replace('money', 'money2')} (?:is|are|was|remains?) ?(?:left|over)?)"),
    ),
    "ask_left": (
        re.compile(rf"how much (?:money )?(?:is|was|does {_WHO} have|has {_WHO}|did {_WHO} have|remains?) ?"
                   rf"(?:got )?(?:left|over)?"),
        re.compile(rf"{FIND}(?:how much (?:money )?(?:{_WHO} has|is) left|the amount (?:that is |of money )?left)"),
    ),
    "ask_start": (
        re.compile(rf"how much (?:money |pocket money )?(?:did|does) {_WHO} (?:have|get|start with|earn|win|receive)"
                   r"(?: (?:at first|originally|to begin with|at the (?:start|beginning)|in the beginning))?"),
        re.compile(rf"{FIND}(?:his|her|the man's|the woman's) (?:monthly |weekly )?(?:salary|income|wages?"
                   rf"|pocket money|savings)"),
        re.compile(rf"{FIND}(?:the amount (?:of money )?(?:that )?{_WHO} had(?: at first| originally)?"
                   rf"|how much (?:money )?{_WHO} had(?: at first| originally)?)"),
    ),
}  # fmt: skip


def rests_story(sentences: Sequence[Plain]) -> StoryTask | None:
    """The story of a part as one of money that is spent piece by piece; raises NotUnderstood where it is none."""
    forms = forms_of(sentences, _FORMS)
    ask, spends = only(forms, "ask_left", "ask_start"), some(forms, "spends")
    known = [form for form in forms if form.name in ("has", "left") or form.pieces.get("money")]
    if len(known) != 1 or not spends or (known[0].name == "has") != (ask.name == "ask_left"):
        raise NotUnderstood("what there is at first, or what is left", 0)
    told = known[0].pieces.get("money") or known[0].pieces.get("money2") or ""
    unit = told[0]
    if unit not in MONEY:
        raise NotUnderstood("an amount of money", 0)
    amount = Amount(number_in(told[1:]), unit)
    parts = [part for form in spends for part in _parts(form)]
    if len(parts) < 2:
        raise NotUnderstood("two parts that are spent", 0)
    claims: list[Said] = []
    sought = [Sought("start", "the money at first", unit, "positive", False, "an amount")]
    before = Named("start")
    for at, (share, of, said) in enumerate(parts):
        key = f"rest {at + 1}"
        base: Size = before if re.fullmatch(_REST, of) else Named("start")
        if at == 0 and re.fullmatch(_REST, of):
            raise NotUnderstood("the rest of what", 0)
        claims.append(Said(said, Same(Named(key), Taken(before, Scaled(number_in(share), base)))))
        meaning = "the money left" if at == len(parts) - 1 else f"what is left after {at + 1} of {len(parts)} parts"
        sought.append(Sought(key, meaning, unit, "not negative", False, "an amount"))
        before = Named(key)
    claims.append(Said(known[0].said, Same(Named("start") if known[0].name == "has" else before, amount)))
    if sum(Fraction(number_in(share).value) for share, _, _ in parts) <= 0:
        raise NotUnderstood("parts that are spent", 0)
    if ask.name == "ask_left":
        return StoryTask(tuple(sought), tuple(claims), (Wanted(before, "the money left", unit),))
    return StoryTask(tuple(sought), tuple(claims), (Wanted(Named("start"), "the money at first", unit),))


def _parts(form: Form) -> Iterator[tuple[str, str, str]]:
    """Each part that a sentence tells of: its share, of what, the sentence."""
    for share, of in (("first", "of"), ("second", "of2"), ("third", "of3")):
        if form.pieces[share]:
            yield form.pieces[share].removesuffix(" of"), form.pieces[of], form.said
