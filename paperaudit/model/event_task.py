"""What is asked about named events: their probabilities as stated, joined, under a condition; independence."""

from dataclasses import dataclass
from fractions import Fraction
from typing import Literal, TypeAlias

from paperaudit.model.topic import TopicFact, TopicTask

EventTerm: TypeAlias = tuple[str, bool]
"""The name of an event and whether it happens."""


def _term_text(term: EventTerm) -> str:
    return term[0] if term[1] else f"not {term[0]}"


@dataclass(frozen=True, slots=True)
class EventName:
    """P(A), P(A'), P(A and B), P(A or B), P(A | B): events with how they are joined."""

    first: EventTerm
    join: Literal["", "and", "or", "given", "xor"] = ""
    second: EventTerm | None = None
    negated: bool = False

    def text(self) -> str:
        """The event as it stands in a line: "P(A and not B)"."""
        one = _term_text(self.first)
        if self.second is None:
            return f"P({one})"
        other = _term_text(self.second)
        if self.join == "xor":
            return f"P(exactly one of {one} and {other})"
        joined = f"{one} {'|' if self.join == 'given' else self.join} {other}"
        return f"P(not ({joined}))" if self.negated else f"P({joined})"


@dataclass(frozen=True, slots=True)
class ChanceIs(TopicFact):
    """P(A) = 0.3, as a statement."""

    of: EventName
    value: Fraction
    text: str

    def in_words(self) -> str:
        """The statement as it is printed."""
        return self.text


@dataclass(frozen=True, slots=True)
class EventsAre(TopicFact):
    """Two events are independent, or mutually exclusive."""

    kind: Literal["independent", "mutually exclusive", "exhaustive"]
    events: tuple[str, str]
    text: str

    def in_words(self) -> str:
        """The statement as it is printed."""
        return self.text


@dataclass(frozen=True, slots=True)
class ChanceOf(TopicTask):
    """The probability of joined events, from the probabilities that are given."""

    of: EventName

    def in_words(self) -> str:
        """What is asked for, as half a sentence."""
        return "a probability of events"


@dataclass(frozen=True, slots=True)
class AreEvents(TopicTask):
    """Whether two events are independent or mutually exclusive."""

    kind: Literal["independent", "mutually exclusive"]
    events: tuple[str, str]

    def in_words(self) -> str:
        """What is asked for, as half a sentence."""
        return f"whether events are {self.kind}"
