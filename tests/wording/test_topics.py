"""The registry of topics says of each what its readers do, so that those that are not needed stay unloaded."""

import pytest

from paperaudit.wording.topics.registry import TOPICS
from paperaudit.wording.topics.topic import Topic


@pytest.mark.parametrize("topic", TOPICS, ids=lambda topic: topic.name)
def test_a_topic_reads_what_it_is_said_to_read(topic: Topic) -> None:
    readers = topic.readers()
    assert topic.states == (readers.facts is not None)
    assert (topic.story_ahead is not None) == (readers.story is not None)
    assert topic.ahead is not None or readers.task is None
    assert topic.ahead is None or topic.rules()


def test_a_topic_has_a_name_of_its_own() -> None:
    assert len({topic.name for topic in TOPICS}) == len(TOPICS)
