"""What is thrown or drawn from: dice, coins, packs of cards, bags, numbers, letters."""

import re
from collections import Counter
from fractions import Fraction

from paperaudit.model.chance_task import Source, Thing

LARGEST = 2_000
_RANKS = ("ace", "2", "3", "4", "5", "6", "7", "8", "9", "10", "jack", "queen", "king")
_SUITS = (("heart", "red"), ("diamond", "red"), ("club", "black"), ("spade", "black"))
_PICTURES = ("jack", "queen", "king")


def singular(word: str) -> str:
    """A noun without its plural: "heads" is "head", "berries" is "berry".

    >>> singular("sixes"), singular("red"), singular("glass")
    ('six', 'red', 'glass')
    """
    for ending, instead in (("ies", "y"), ("sses", "ss"), ("xes", "x"), ("ches", "ch"), ("shes", "sh")):
        if word.endswith(ending) and len(word) > len(ending) + 1:
            return word[: -len(ending)] + instead
    return word[:-1] if word.endswith("s") and not word.endswith("ss") and len(word) > 3 else word


def dice(sides: int = 6) -> Source:
    """A dice with the numbers from 1 up."""
    return numbers(range(1, sides + 1), "dice")


def numbers(values: "range | list[int]", kind: str = "numbers") -> Source:
    """Whole numbers, each as likely as the others; one that comes twice counts twice."""
    counted = Counter(values)
    return Source(kind, tuple(Thing(str(value), count, Fraction(value)) for value, count in counted.items()))


def coin() -> Source:
    """Heads and tails."""
    return Source("coin", (Thing("head"), Thing("tail")))


def pack() -> Source:
    """The 52 cards; number cards from 2 to 10 have their number."""
    cards = []
    for suit, colour in _SUITS:
        for rank in _RANKS:
            pictures = {"picture", "face", "court"} if rank in _PICTURES else set()
            number = Fraction(int(rank)) if rank.isdigit() else None
            cards.append(Thing(f"{rank} of {suit}s", 1, number, frozenset({suit, colour, rank, *pictures})))
    return Source("cards", tuple(cards))


def bag(contents: list[tuple[str, int]]) -> Source:
    """Things by name with how many there are of each."""
    return Source("bag", tuple(Thing(name, count) for name, count in contents))


def letters(word: str) -> Source:
    """The letters of a word, or of "{a: 3, b: 2}"."""
    if word.startswith("{"):
        pairs = re.findall(r"([a-z]): (\d+)", word)
        return Source("letters", tuple(Thing(letter, int(count)) for letter, count in pairs))
    counted = Counter(character for character in word.lower() if character.isalpha())
    return Source("letters", tuple(Thing(letter, count) for letter, count in counted.items()))
