"""Which options of a multiple-choice part say what was derived, and which letter the key names."""

import re
from dataclasses import dataclass

from paperaudit.maths.equality import compare
from paperaudit.model.ask import Ask
from paperaudit.model.derivation import Agreement, Answer
from paperaudit.model.paper import Part


@dataclass(frozen=True, slots=True)
class OptionsMatched:
    """The letters of the options that say the derived answer, and of those that could not be compared."""

    right: tuple[str, ...]
    unclear: tuple[str, ...]


def match_options(part: Part, derived: tuple[Answer, ...], ask: Ask) -> OptionsMatched:
    """Compares every option of `part` with the derived answers, in the order of the paper.

    An option is right when it would be confirmed as the answer to the same question without options.
    """
    right, unclear = [], []
    for letter, option in part.options:
        agreement = compare(option.text, derived, ask).agreement
        if agreement is Agreement.AGREES:
            right.append(letter)
        elif agreement is Agreement.CANNOT_TELL:
            unclear.append(letter)
    return OptionsMatched(tuple(right), tuple(unclear))


def key_letter(part: Part) -> str:
    """The option that the key names: "C", "(C)", "option C", "C: 70°"; "" where it names none.

    >>> from paperaudit.model.paper import Line
    >>> key_letter(Part("1", "1", answer=Line("(c)"), options=(("C", Line("70°")),)))
    'C'
    """
    if part.answer is None or not part.options:
        return ""
    letters = {letter.casefold(): letter for letter, _ in part.options}
    stated = part.answer.text.strip()
    bare = re.fullmatch(r"(?:option\s+)?\(?([^\W_]+)[).]?", stated, re.IGNORECASE)
    if bare and bare.group(1).casefold() in letters:
        return letters[bare.group(1).casefold()]
    headed = re.match(r"\(?([^\W_]+)[):.]\s*(.+)", stated)
    if headed and headed.group(1).casefold() in letters:
        letter = letters[headed.group(1).casefold()]
        same = dict(part.options)[letter].text.split() == headed.group(2).split()
        return letter if same else ""
    return ""
