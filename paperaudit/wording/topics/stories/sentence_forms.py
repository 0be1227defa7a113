"""Stories whose sentences have few forms each: which form every sentence has, and the pieces that it holds."""

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from paperaudit.model.story import Amount
from paperaudit.wording.scene import NotUnderstood
from paperaudit.wording.topics.stories.amounts import number_in
from paperaudit.wording.topics.stories.grammar import is_scenery
from paperaudit.wording.topics.stories.plain import Plain

NUMBER = r"(?:\d+ \d+/\d+|\d+/\d+|\d+\.\d+|\d+)"
"""A number in figures, as a piece of a regular expression."""
FIND = r"(?:(?:hence,? )?(?:find|calculate|determine|work out|what is|what was|write down) )"


@dataclass(frozen=True, slots=True)
class Form:
    """A sentence by the name of its form, with its pieces by their names ("" for one that it lacks)."""

    name: str
    pieces: Mapping[str, str]
    said: str

    def number(self, piece: str, unit: str = "") -> Amount:
        """The number of a piece."""
        return Amount(number_in(self.pieces[piece]), unit)


def forms_of(sentences: Sequence[Plain], forms: Mapping[str, Sequence[re.Pattern[str]]]) -> list[Form]:
    """The form of each sentence that is no scenery. Raises NotUnderstood for a sentence that has none."""
    found: list[Form] = []
    for sentence in sentences:
        form = next((Form(name, {key: value or "" for key, value in read.groupdict().items()}, sentence.said)
                     for name, patterns in forms.items() for pattern in patterns
                     if (read := pattern.fullmatch(sentence.text))), None)  # fmt: skip
        if form is not None:
            found.append(form)
        elif sentence.question or not is_scenery(sentence.text):
            raise NotUnderstood(f"“{sentence.said}”", 0)
    return found


def only(forms: Sequence[Form], *names: str) -> Form:
    """The one form with any of these names; raises NotUnderstood for none or several."""
    fitting = [form for form in forms if form.name in names]
    if len(fitting) != 1:
        raise NotUnderstood(" or ".join(names), 0)
    return fitting[0]


def some(forms: Sequence[Form], *names: str) -> list[Form]:
    """Every form with any of these names."""
    return [form for form in forms if form.name in names]
