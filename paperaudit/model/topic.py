"""What the topics of the syllabus add to asks, facts and answers, each by values of its own."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class TopicTask:
    """Something to be done that one topic reads and one strand derives; a topic's tasks are subclasses.

    >>> TopicTask().in_words()
    'something to be found'
    """

    def in_words(self) -> str:
        """What is asked for, as half a sentence: "the mean of a list of numbers"."""
        return "something to be found"

    def needs_givens(self) -> bool:
        """Whether the ask alone leads nowhere: where no sentence gave anything, the whole is read as a story."""
        return False


@dataclass(frozen=True, slots=True)
class TopicFact:
    """A statement that one topic reads: f(x) = 2x + 1, P(A) = 0.3; a topic's facts are subclasses."""

    def in_words(self) -> str:
        """The statement as it is printed."""
        return "something that is given"

    def defines(self) -> str:
        """The letter of a function that the statement gives a formula, "" for none."""
        return ""
