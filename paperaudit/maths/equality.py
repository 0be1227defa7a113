"""Compares the setter's answer with the derived one: agrees, differs, or cannot be told, and why."""

from collections.abc import Sequence

from paperaudit.errors import ExpressionNotRead
from paperaudit.maths.answer_kinds.registry import comparer_of
from paperaudit.maths.stated import Stated, read_stated
from paperaudit.maths.value_comparison import compare_value
from paperaudit.maths.verdict_words import verdict_word
from paperaudit.maths.write import write
from paperaudit.model.ask import Ask, Find
from paperaudit.model.derivation import Agreement, Answer, Comparison
from paperaudit.model.each_asked import EachAsked
from paperaudit.model.expression import Expression, Letter, Quantity, Relation

_WORDS_THAT_PROVE = ("yes", "proved")
_SOLUTION_WORDS = ("no solution", "infinitely many solutions")


def compare(stated: str, derived: tuple[Answer, ...], ask: Ask) -> Comparison:
    """The stated text against the derived answers; equivalent forms agree unless a form was asked for.

    >>> from fractions import Fraction
    >>> from paperaudit.model.ask import Solve
    >>> from paperaudit.model.expression import Number
    >>> x = Answer("x = 17", Number(Fraction(17)), "x")
    >>> compare("17", (x,), Ask(Solve(()), "solve")).agreement.value
    'agrees'
    """
    if isinstance(ask.task, EachAsked):
        from paperaudit.maths.answer_kinds.each_asked import compare_each

        asks = tuple(one.ask for one in ask.task.readings if one.ask is not None)
        return compare_each(stated, derived, asks, compare)
    if kind := next((answer.kind for answer in derived if answer.kind), ""):
        return comparer_of(kind)(stated, derived, ask)
    word, derived_words = verdict_word(stated), [_word_of(answer) for answer in derived]
    if word or any(answer.value is None for answer in derived):
        return _compare_words(stated, word, derived, derived_words)
    letters = frozenset(answer.letter for answer in derived if answer.letter)
    try:
        values = read_stated(stated, len(derived), letters)
    except ExpressionNotRead as error:
        return Comparison(Agreement.CANNOT_TELL, f"the stated answer was not read: {error}")
    return _compare_values(values, derived, ask)


def _word_of(answer: Answer) -> str | None:
    """The word of a verdict, without the example behind it: "false: for n = 0 …" is "no"."""
    return verdict_word("false" if answer.text.startswith("false:") else answer.text)


def compare_answers(
    stated: Expression | Relation | Sequence[Expression | Relation], derived: tuple[Answer, ...], ask: Ask
) -> Comparison:
    """As `compare`, for an answer that is already read: a value, an equation `x = 17`, or several of them."""
    several = (stated,) if isinstance(stated, Expression | Relation) else tuple(stated)
    return _compare_values(tuple(map(_stated, several)), derived, ask)


def _stated(value: Expression | Relation) -> Stated:
    if not isinstance(value, Relation):
        return Stated(value)
    if value.sign != "=":
        return Stated(value.right, value.left, None, value)
    turned = isinstance(value.right, Letter | Quantity) and not isinstance(value.left, Letter | Quantity)
    return Stated(value.left, value.right) if turned else Stated(value.right, value.left)


def _compare_words(
    stated: str, word: str | None, derived: tuple[Answer, ...], words: Sequence[str | None]
) -> Comparison:
    text = ", ".join(answer.text for answer in derived)
    if [stated.strip().rstrip(".").casefold()] == [answer.text.casefold() for answer in derived]:
        return Comparison(Agreement.AGREES)
    if word is None and words[0] in _SOLUTION_WORDS and _is_a_value(stated):
        return Comparison(Agreement.DIFFERS, f"the answer is {text}")
    if word is None or (len(words) == 1 and words[0] is None and derived[0].value is None):
        return Comparison(Agreement.CANNOT_TELL, f"“{stated.strip()}” could not be compared with “{text}”")
    if word == words[0] or (word in _WORDS_THAT_PROVE and words[0] in _WORDS_THAT_PROVE):
        return Comparison(Agreement.AGREES)
    return Comparison(Agreement.DIFFERS, f"the answer is {text}")


def _is_a_value(stated: str) -> bool:
    try:
        return bool(read_stated(stated, 1))
    except ExpressionNotRead:
        return False


def _compare_values(stated: tuple[Stated, ...], derived: tuple[Answer, ...], ask: Ask) -> Comparison:
    if len(derived) == 1:
        return _compare_with_one(stated, derived[0], ask)
    if len({answer.letter for answer in derived}) == 1 and not _wanted(derived, ask):
        return _compare_sets(stated, derived, ask)
    return _compare_named(stated, derived, ask)


def _compare_with_one(stated: tuple[Stated, ...], answer: Answer, ask: Ask) -> Comparison:
    named = [value for value in stated if value.of is not None and value.of == _name_of(answer, ask)]
    if len(stated) > 1 and len(named) != 1:
        return Comparison(Agreement.DIFFERS, f"one value was derived, {answer.text}, and {len(stated)} are stated")
    value = named[0] if named else stated[0]
    if value.of is not None and not named and isinstance(value.of, Letter) and answer.letter:
        return Comparison(Agreement.DIFFERS, f"it gives {write(value.of)}, the answer is {answer.text}")
    return compare_value(value, answer, ask)


def _name_of(answer: Answer, ask: Ask) -> Expression | None:
    if answer.letter:
        return Letter(answer.letter)
    return ask.task.wanted[0] if isinstance(ask.task, Find) and len(ask.task.wanted) == 1 else None


def _wanted(derived: tuple[Answer, ...], ask: Ask) -> tuple[Expression, ...]:
    """What the derived answers are the sizes of, where the ask says it in the same order."""
    wanted = ask.task.wanted if isinstance(ask.task, Find) else ()
    return wanted if len(wanted) == len(derived) else ()


def _compare_sets(stated: tuple[Stated, ...], derived: tuple[Answer, ...], ask: Ask) -> Comparison:
    """Several answers for one unknown: the same ones must be stated, in any order."""
    missing = list(derived)
    for value in stated:
        results = [compare_value(value, answer, ask) for answer in derived]
        matching = [
            answer for answer, result in zip(derived, results, strict=True) if result.agreement is Agreement.AGREES
        ]
        if not matching:
            return _first_of(results, Agreement.CANNOT_TELL) or _none_of(value, derived)
        missing = [answer for answer in missing if answer not in matching]
    if missing:
        texts = ", ".join(answer.text for answer in missing)
        return Comparison(Agreement.DIFFERS, f"not all answers are stated: {texts} is missing", tuple(missing))
    return Comparison(Agreement.AGREES)


def _none_of(value: Stated, derived: tuple[Answer, ...]) -> Comparison:
    texts = " or ".join(answer.text for answer in derived)
    return Comparison(Agreement.DIFFERS, f"{write(value.value)} is not an answer: {texts}", derived)


def _first_of(results: Sequence[Comparison], agreement: Agreement) -> Comparison | None:
    return next((result for result in results if result.agreement is agreement), None)


def _compare_named(stated: tuple[Stated, ...], derived: tuple[Answer, ...], ask: Ask) -> Comparison:
    """One answer for each of several unknowns: named ones by name, others in the order asked for."""
    wanted = _wanted(derived, ask)
    names = [Letter(answer.letter) if answer.letter else None for answer in derived]
    keys: list[Expression | None] = [name or (wanted[at] if wanted else None) for at, name in enumerate(names)]
    if all(value.of is not None for value in stated) and {value.of for value in stated} <= set(keys):
        by_name = {value.of: value for value in stated}
        missing = tuple(answer for answer, key in zip(derived, keys, strict=True) if key not in by_name)
        pairs = [(by_name[key], answer) for answer, key in zip(derived, keys, strict=True) if key in by_name]
    elif len(stated) != len(derived):
        return Comparison(Agreement.DIFFERS, f"{len(derived)} values are asked for, {len(stated)} are stated")
    else:
        missing, pairs = (), list(zip(stated, derived, strict=True))
    results = [compare_value(value, answer, ask) for value, answer in pairs]
    if failed := _first_of(results, Agreement.DIFFERS):
        if all(value.of is None and not value.in_order for value in stated) and _same_set(stated, derived, ask):
            return Comparison(Agreement.CANNOT_TELL, "the values are right, but in another order than was asked for")
        return failed
    if missing:
        texts = ", ".join(answer.text for answer in missing)
        return Comparison(Agreement.DIFFERS, f"{texts} is missing", missing)
    explained = next((result for result in results if result.why), Comparison(Agreement.AGREES))
    return _first_of(results, Agreement.CANNOT_TELL) or explained


def _same_set(stated: tuple[Stated, ...], derived: tuple[Answer, ...], ask: Ask) -> bool:
    return _compare_sets(stated, derived, ask).agreement is Agreement.AGREES
