"""The options of a multiple-choice part against the derived answer, and against each other."""

from collections.abc import Iterator
from itertools import combinations

from paperaudit.checks.grounds.units import read_key
from paperaudit.maths.equality import compare_answers
from paperaudit.maths.options import OptionsMatched, key_letter, match_options
from paperaudit.model.ask import Ask, Find, Rounded, Transform, WriteAs
from paperaudit.model.audited import AuditedPaper, AuditedPart
from paperaudit.model.derivation import Agreement, Answer, Derived, Several
from paperaudit.model.paper import Line, Part

Option = tuple[str, Line]
"""An option's letter and what it says."""

_BY_VALUE_ALONE = Ask(Find(()), "")


def choices(audited: AuditedPaper) -> Iterator[AuditedPart]:
    """The multiple-choice parts of a paper."""
    return (part for part in audited.parts if part.part.options)


def right_options(part: AuditedPart) -> tuple[Option, ...]:
    """The options that say the derived answer; none where nothing was derived."""
    matched = _matched(part)
    return tuple(option for option in part.part.options if matched and option[0] in matched.right)


def all_wrong(part: AuditedPart) -> bool:
    """Whether every option is known to be wrong; one that could not be compared is not."""
    matched = _matched(part)
    return matched is not None and not matched.right and not matched.unclear


def _matched(part: AuditedPart) -> OptionsMatched | None:
    ask = part.reading.ask
    if ask is None or not isinstance(part.outcome, Derived | Several):
        return None
    return match_options(part.part, part.outcome.answers, ask)


def same_options(part: AuditedPart) -> Iterator[tuple[Option, Option]]:
    """Pairs of options that say the same: in their words, or in value where the form is not what is asked.

    Different words for the right value are not among them: they are two right options.
    """
    form_counts = part.reading.ask is not None and _asks_for_a_form(part.reading.ask)
    right = right_options(part)
    for one, other in combinations(part.part.options, 2):
        same_words = plain(one[1].text) == plain(other[1].text)
        by_value = not form_counts and not (one in right and other in right)
        if same_words or (by_value and _same_value(one[1].text, other[1].text)):
            yield one, other


def _asks_for_a_form(ask: Ask) -> bool:
    is_form = isinstance(ask.task, Transform) and ask.task.command != "evaluate"
    return is_form or isinstance(ask.task, WriteAs | Rounded)


def printed(options: tuple[Option, ...]) -> tuple[str, ...]:
    """The options as printed, a line each."""
    return tuple(f"{letter}: {line.text}" for letter, line in options)


def key_names_an_option(part: Part) -> bool:
    """Whether the key is an option's letter, or what one of the options says."""
    if part.answer is None or key_letter(part):
        return True
    stated = part.answer.text
    return any(plain(line.text) == plain(stated) or _same_value(line.text, stated) for _, line in part.options)


def plain(text: str) -> str:
    """The words of an option without spaces and capitals, to tell whether two options say the same."""
    return "".join(text.split()).casefold()


def _same_value(one: str, other: str) -> bool:
    """Whether two texts have one value, exactly: 0.5 and 1/2, 50 cm and 0.5 m."""
    read, other_read = read_key(one, 1), read_key(other, 1)
    if len(read) != 1 or len(other_read) != 1:
        return False
    first, second = read[0], other_read[0]
    if first.relation or second.relation or first.of != second.of:
        return False
    result = compare_answers(second.value, (Answer(one, first.value),), _BY_VALUE_ALONE)
    return result.agreement is Agreement.AGREES and not result.why
