"""Stories of one journey at its own speed and at another: so much faster takes so much less time."""

import re
from collections.abc import Sequence
from fractions import Fraction

from parsimonious.nodes import Node

from paperaudit.maths.number_forms import whole_or_fraction
from paperaudit.maths.tree import the
from paperaudit.model.expression import Number
from paperaudit.model.story import Added, Amount, Divided, Named, Said, Same, Size, Sought, StoryTask, Taken, Wanted
from paperaudit.wording.scene import NotUnderstood
from paperaudit.wording.topics.stories.amounts import number_in
from paperaudit.wording.topics.stories.grammar import tree_of
from paperaudit.wording.topics.stories.plain import Plain
from paperaudit.wording.topics.stories.trees import within

AHEAD = re.compile(
    r"\bspeed\b.*\b(?:faster|slower|more|less|greater|earlier|sooner|later)\b|\b(?:faster|slower)\b.*\bspeed\b"
)
_SPEED, _WAY = "speed", "distance"
_HOURS = {"h": Fraction(1), "m": Fraction(1, 60)}


def quicker_story(sentences: Sequence[Plain]) -> StoryTask | None:
    """The story of a part as one journey at two speeds; raises NotUnderstood or ExpressionNotRead else."""
    trees = [(tree, sentence) for sentence in sentences if (tree := tree_of("quicker", sentence)) is not None]
    told = {tree.children[0].expr_name: (tree.children[0], sentence.said) for tree, sentence in trees}
    if len(told) != len(trees) or sorted(told) != ["ask", "had_been", "travelled"]:
        raise NotUnderstood("a journey of which too little is told or asked", 0)
    (way, said), (other, also) = told["travelled"], told["had_been"]
    length, speed, time = (next(within(node, name)) for node, name in
                           ((way, "length"), (other, "speed"), (other, "time")))  # fmt: skip
    if the(length, "length_unit").text not in ("km", "kilometres", "kilometre") or "m/s" in speed.text:
        raise NotUnderstood("other units than kilometres and hours", length.start)
    if not re.search(r"km/h|kilomet\w+ (?:per|an) hour|km (?:per|an) hour", speed.text):
        raise NotUnderstood("other units than kilometres and hours", speed.start)
    more = Amount(number_in(the(speed, "number").text), "km/h")
    less = Amount(_hours(time), "hour")
    faster = re.search(r"faster|more|greater|higher|increased", the(other, "faster").text) is not None
    if faster != (re.search(r"(?:less|shorter|quicker|sooner|earlier)$", the(other, "takes").text) is not None):
        raise NotUnderstood("a faster journey that takes longer", other.start)
    own, changed = Named(_SPEED), Added((Named(_SPEED), more)) if faster else Taken(Named(_SPEED), more)
    before: Size = Divided(Named(_WAY), own)
    after: Size = Divided(Named(_WAY), changed)
    claim = Same(Taken(before, less), after) if faster else Same(after, Added((before, less)))
    sought = (Sought(_WAY, "the distance", "km", "positive", False, "a distance"),
              Sought(_SPEED, "the speed", "km/h", "positive", False, "a speed"))  # fmt: skip
    distance = Amount(number_in(the(length, "number").text), "km")
    claims = (Said(said, Same(Named(_WAY), distance)), Said(also, claim))
    return StoryTask(sought, claims, (Wanted(own, "the speed", "km/h"),))


def _hours(time: Node) -> Number:
    value = number_in(the(time, "number").text).value * _HOURS[the(time, "time_unit").text[0]]
    return whole_or_fraction(value)
