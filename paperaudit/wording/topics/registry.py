"""The topics, in the order in which they are asked whether a sentence is theirs."""

from paperaudit.wording.topics import (
    algebra,
    bounds,
    chance,
    chance_tables,
    coordinates,
    counting,
    digits,
    factors,
    forms,
    functions,
    joined_events,
    means,
    movements,
    order,
    sequences,
    sets,
    spoken,
    statistics,
    trig,
    two_sets,
)
from paperaudit.wording.topics.stories.topic import TOPIC as STORIES
from paperaudit.wording.topics.topic import Topic

TOPICS: tuple[Topic, ...] = (
    trig.TOPIC,
    movements.TOPIC,
    functions.TOPIC,
    coordinates.TOPIC,
    sequences.TOPIC,
    algebra.TOPIC,
    factors.TOPIC,
    order.TOPIC,
    digits.TOPIC,
    forms.TOPIC,
    bounds.TOPIC,
    sets.TOPIC,
    spoken.TOPIC,
    means.TOPIC,
    statistics.TOPIC,
    chance_tables.TOPIC,
    chance.TOPIC,
    joined_events.TOPIC,
    counting.TOPIC,
    two_sets.TOPIC,
    STORIES,
)
"""The first whose grammar reads a sentence takes it; the general grammar of figures comes after all of them."""
