"""What is asked about counting: arrangements and choices, with and without conditions."""

from dataclasses import dataclass
from typing import Literal

from paperaudit.model.topic import TopicTask


@dataclass(frozen=True, slots=True)
class Count(TopicTask):
    """A count of arrangements or choices.

    `how`: "factorial" n!, "permutations" nPr, "combinations" nCr, "letters" arrangements of a word,
    "codes" with `choices` for each place, "choices" several choices of r from n multiplied.
    """

    how: Literal["factorial", "permutations", "combinations", "letters", "codes", "choices", "circle", "beyond"]
    n: int = 0
    r: int = 0
    word: str = ""
    choices: tuple[int, ...] = ()
    groups: tuple[tuple[int, int], ...] = ()

    def in_words(self) -> str:
        """What is asked for, as half a sentence."""
        return "the number of arrangements or choices"
