"""Stories of consecutive multiples of a number."""

import re
from collections.abc import Sequence

from paperaudit.model.story import Added, Amount, Named, Said, Same, Scaled, Sought, StoryTask, Wanted
from paperaudit.wording.scene import NotUnderstood
from paperaudit.wording.topics.stories.amounts import number_in
from paperaudit.wording.topics.stories.plain import Plain
from paperaudit.wording.topics.stories.sentence_forms import FIND, Form, forms_of, only

AHEAD = re.compile(r"\bconsecutive (?:positive )?multiples of\b")
_ROW = r"(?P<count>[2-5]) consecutive (?:positive )?multiples of (?P<of>\d+)"
_WHICH = r"(?P<which>first|smallest|largest|greatest|biggest|middle)"
_FORMS = {
    "told": (
        re.compile(rf"(?:if )?the sum of (?:the )?{_ROW} is (?P<sum>\d+)"),
        re.compile(rf"{_ROW} (?:add up to|have a sum of|total) (?P<sum>\d+)"),
    ),
    "whole": (re.compile(rf"(?:find|determine|calculate|what are) (?:the )?{_ROW} (?:whose sum is|that add up to"
                         r"|with a sum of) (?P<sum>\d+)"),),
    "ask": (
        re.compile(rf"(?:{FIND}|what are )(?:them|the (?:[2-5] )?(?:numbers|multiples)|these (?:numbers"
                   rf"|multiples)|the numbers)"),
        re.compile(rf"{FIND}the {_WHICH} (?:of (?:these|the|them)|number|multiple)?(?: ?(?:numbers|multiples"
                   rf"|of them))?"),
    ),
}  # fmt: skip
_NAMES = ("first", "second", "third", "fourth", "fifth")


def multiples_story(sentences: Sequence[Plain]) -> StoryTask | None:
    """The story of a part as one of consecutive multiples; raises NotUnderstood where it is none."""
    forms = forms_of(sentences, _FORMS)
    told = only(forms, "told", "whole")
    which = "" if told.name == "whole" else only(forms, "ask").pieces.get("which", "")
    return _task(told, which)


def _task(told: Form, which: str) -> StoryTask:
    count, of = int(told.pieces["count"]), told.number("of")
    keys = [Named(name) for name in _NAMES[:count]]
    base = Named("times")
    steps = [number_in(str(at * int(told.pieces["of"]))) for at in range(1, count)]
    claims = [Said(told.said, Same(keys[0], Scaled(of.number, base)))]
    claims += [
        Said(told.said, Same(key, Added((keys[0], Amount(step))))) for key, step in zip(keys[1:], steps, strict=True)
    ]
    claims.append(Said(told.said, Same(Added(tuple(keys)), told.number("sum"))))
    sought = [Sought("times", f"how many times {told.pieces['of']} the first is", "", "any", True, "a whole number")]
    sought += [Sought(key.key, f"the {key.key} number", "", "any", True, "a multiple") for key in keys]
    wanted = [Wanted(key, f"the {key.key} number") for key in keys]
    if which == "middle" and not count % 2:
        raise NotUnderstood("which is the middle one", 0)
    places = {"first": 0, "smallest": 0, "middle": count // 2}
    if which:
        wanted = [wanted[places.get(which, count - 1)]]
    return StoryTask(tuple(sought), tuple(claims), tuple(wanted), bool(which))
