"""Several asks in one part: "Find f′(x) and f′(2)", "Find the gradient and the y-intercept of the line 2x + y = 6"."""

from dataclasses import dataclass

from paperaudit.model.reading import Reading
from paperaudit.model.topic import TopicTask


@dataclass(frozen=True, slots=True)
class EachAsked(TopicTask):
    """Asks that a part puts side by side, each read for itself with the givens of the whole part."""

    readings: tuple[Reading, ...]

    def in_words(self) -> str:
        """What is asked for, as half a sentence."""
        return " and ".join(one.ask.text for one in self.readings if one.ask is not None)
