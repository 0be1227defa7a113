"""Errors in word problems: shares, mean speeds, changes by percentages; their tasks are loaded by need."""

from collections.abc import Iterator
from fractions import Fraction
from typing import TYPE_CHECKING

from paperaudit.marking.expected_errors.expected_error import ExpectedError
from paperaudit.marking.expected_errors.occasions import Occasion
from paperaudit.maths.exact import rational_value
from paperaudit.model.expression import Expression, Number

if TYPE_CHECKING:
    from paperaudit.model.story import StoryTask


def _story(occasion: Occasion) -> "StoryTask | None":
    """The story of a part in which one size is wanted."""
    if occasion.part.strand != "stories":
        return None
    from paperaudit.model.story import StoryTask

    task = occasion.task
    return task if isinstance(task, StoryTask) and len(task.wanted) == 1 else None


def _amounts(story: "StoryTask") -> dict[str, Fraction]:
    """The sizes that the story gives as numbers, by their keys."""
    from paperaudit.model.story import Amount, Named, Same

    found: dict[str, Fraction] = {}
    for said in story.said:
        match said.claim:
            case Same(Named(key), Amount(number)):
                value = rational_value(number)
                if value is not None:
                    found[key] = value
    return found


def _by_one_part(occasion: Occasion) -> Iterator[Expression]:
    """60 shared as 2 : 3, the first share as 60 ÷ 2."""
    story = _story(occasion)
    if story is None or len(story.said) != 2:
        return
    from paperaudit.model.story import Added, Amount, Named, Same, Scaled

    match story.said[0].claim, story.said[1].claim, story.wanted[0].size:
        case (
            Same(Named(second), Scaled(factor, Named(first))),
            Same(Added((Named(one), Named(two))), Amount(whole)),
            Named(wanted),
        ) if {first, second} == {one, two}:
            ratio, total = rational_value(factor), rational_value(whole)
            if ratio and total is not None:
                yield Number(total / (ratio.numerator if wanted == second else ratio.denominator))


def _mean_of_speeds(occasion: Occasion) -> Iterator[Expression]:
    """There at 40 km/h and back at 60 km/h as 50 km/h."""
    story = _story(occasion)
    if story is None or story.wanted[0].meaning != "the average speed":
        return
    speeds = [value for key, value in _amounts(story).items() if key.startswith("speed")]
    if len(speeds) == 2:
        yield Number(sum(speeds, Fraction(0)) / 2)


def _percentages_added(occasion: Occasion) -> Iterator[Expression]:
    """10% more and then 10% less as the old price."""
    story = _story(occasion)
    if story is None:
        return
    start = _amounts(story).get("start")
    shares = [_share(said.claim) for said in story.said if _share(said.claim) is not None]
    if start is not None and len(shares) > 1 and story.wanted[0].meaning == "the value at the end":
        yield Number(start * (1 + sum((share for share in shares if share is not None), Fraction(0))))


def _share(claim: object) -> Fraction | None:
    """0.1 of a claim that a size is 10% more than the one before it."""
    from paperaudit.model.story import Added, Named, Same, Scaled, Taken

    match claim:
        case Same(Named(), Added((Named(before), Scaled(factor, Named(of))))) if before == of:
            return rational_value(factor)
        case Same(Named(), Taken(Named(before), Scaled(factor, Named(of)))) if before == of:
            value = rational_value(factor)
            return None if value is None else -value
    return None


STORY_ERRORS = (
    ExpectedError(
        "share by one part",
        51,
        "divides by the own part of the ratio in place of the sum of the parts",
        "Hart 1981",
        _by_one_part,
        {"text": "Ann and Ben share R60 in the ratio 2 : 3. How much does Ann get?"},
        "R30",
    ),
    ExpectedError(
        "mean of the speeds",
        60,
        "takes the mean of the speeds for the mean speed",
        "examiners' reports",
        _mean_of_speeds,
        {"text": "A man walks 12 km at 4 km/h and then 12 km at 6 km/h. Find his average speed for the whole journey."},
        "5 km/h",
    ),
    ExpectedError(
        "successive percentages added",
        50,
        "adds the percentages of changes that follow one another",
        "Ryan and Williams 2007",
        _percentages_added,
        {"text": "A boat costs R5000. The price is increased by 10% and then decreased by 10%. Find the new price."},
        "R5000",
    ),
)
"""Rows 50, 51 and 60 of the table of documented errors."""
