"""Sets: what their members are or how many there are, and what is asked of unions, intersections and complements."""

from dataclasses import dataclass
from typing import Literal, TypeAlias

from paperaudit.model.topic import TopicFact, TopicTask


@dataclass(frozen=True, slots=True)
class NamedSet:
    """A set by its letter; the universal set is "ξ" and the empty set "∅"."""

    name: str


@dataclass(frozen=True, slots=True)
class Combined:
    """A union or an intersection of two sets, or the members of the first that are not in the second."""

    left: "SetExpression"
    sign: Literal["∪", "∩", "−"]
    right: "SetExpression"


@dataclass(frozen=True, slots=True)
class Complement:
    """Everything in the universal set that is not in a set."""

    of: "SetExpression"


SetExpression: TypeAlias = NamedSet | Combined | Complement


def set_text(expression: SetExpression, inside: bool = False) -> str:
    """A set as it is printed: A ∪ B, (A ∩ B)′.

    >>> set_text(Complement(Combined(NamedSet("A"), "∩", NamedSet("B"))))
    '(A ∩ B)′'
    """
    match expression:
        case NamedSet(name):
            return name
        case Complement(inner):
            return f"{set_text(inner, True)}′"
        case Combined(left, sign, right):
            same = isinstance(left, Combined) and left.sign == sign != "−"
            text = f"{set_text(left, not same)} {sign} {set_text(right, True)}"
            return f"({text})" if inside else text


def names_in(expression: SetExpression) -> tuple[str, ...]:
    """The letters of the sets that occur, each once, the universal set left out."""
    match expression:
        case NamedSet(name):
            return () if name in ("ξ", "∅") else (name,)
        case Complement(inner):
            return names_in(inner)
        case Combined(left, _, right):
            return tuple(dict.fromkeys((*names_in(left), *names_in(right))))


@dataclass(frozen=True, slots=True)
class SetIs(TopicFact):
    """The members of a set, as they are written: A = {1, 2, 3}."""

    name: str
    members: tuple[str, ...]

    def in_words(self) -> str:
        """The statement as it is printed."""
        return f"{self.name} = {{{', '.join(self.members)}}}"


@dataclass(frozen=True, slots=True)
class SetDescribed(TopicFact):
    """The members of a set in words: A = {even numbers}, ξ = {integers from 1 to 10}; ends are included."""

    name: str
    kind: Literal["integer", "even", "odd", "prime", "square", "cube", "multiple", "factor", "triangular"]
    of: int = 0
    low: int | None = None
    high: int | None = None

    def in_words(self) -> str:
        """The statement as it is printed."""
        return f"{self.name} = {{{self.kind} numbers}}"


@dataclass(frozen=True, slots=True)
class SetCounted(TopicFact):
    """How many members a set has: n(A ∩ B) = 6."""

    of: SetExpression
    count: int

    def in_words(self) -> str:
        """The statement as it is printed."""
        return f"n({set_text(self.of)}) = {self.count}"


@dataclass(frozen=True, slots=True)
class SetAsked(TopicTask):
    """The members of a set, or (`counted`) how many they are; `named` says in words what is counted.

    With `chance` it is the probability that one of all that are counted is in the set.
    """

    of: SetExpression
    counted: bool = False
    named: str = ""
    chance: bool = False

    def in_words(self) -> str:
        """What is asked for, as half a sentence."""
        return f"the {'number of ' if self.counted else ''}members of a set"

    def needs_givens(self) -> bool:
        """A set that nothing is said of cannot be found."""
        return True
