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


@dataclass(frozen=True, slots=True)
class Row(TopicTask):
    """How many orders of `special` and `others` things in a row meet a rule; all are different from each other.

    Rules: "together" the special ones are next to each other, "both together" each group is, "apart" no two of the
    special ones are next to each other, "alternate".
    """

    special: int
    others: int
    rule: Literal["together", "both together", "apart", "alternate"]

    def in_words(self) -> str:
        """What is asked for, as half a sentence."""
        return "the number of arrangements under a condition"


@dataclass(frozen=True, slots=True)
class Spelling(TopicTask):
    """How many arrangements of the letters of a word begin or end with a letter, or keep the vowels together."""

    word: str
    begins: str = ""
    ends: str = ""
    vowels_together: bool = False

    def in_words(self) -> str:
        """What is asked for, as half a sentence."""
        return "the number of arrangements of letters under a condition"


@dataclass(frozen=True, slots=True)
class Digits(TopicTask):
    """How many numbers of so many `places` from digits, with or without repeats.

    `last` are the digits that may stand last, `first` those that may stand first.
    """

    digits: tuple[int, ...]
    places: int
    repeats: bool
    first: tuple[int, ...]
    last: tuple[int, ...]

    def in_words(self) -> str:
        """What is asked for, as half a sentence."""
        return "how many numbers there are of these digits"


@dataclass(frozen=True, slots=True)
class Committee(TopicTask):
    """How many groups of `size` from two kinds have from `least` to `most` of the first kind."""

    names: tuple[str, str]
    pools: tuple[int, int]
    size: int
    least: int
    most: int

    def in_words(self) -> str:
        """What is asked for, as half a sentence."""
        return "the number of choices under a condition"
