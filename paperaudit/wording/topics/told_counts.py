"""How many values a sentence says there are, and whether it is sure that it speaks of the values of a list or table."""

import re
from dataclasses import dataclass

from paperaudit.wording.topics.named_events import stem
from paperaudit.wording.topics.value_lists import COUNT, count_of

_LABELS = re.compile(
    r"\b(?:grades?|years?|forms?|class|standard|std|level|stage|question|table|figure|fig\.?|test|group|term|chapter"
    rf"|unit|room|section|paper|task) {COUNT}\b",
    re.IGNORECASE,
)
"""A number that is a name: Grade 10 learners are not ten learners."""
_OUT_OF = re.compile(
    rf"\b(?:out of|maximum (?:mark )?of|(?:test|exam|examination|quiz|assignment|paper|task|competition) "
    rf"(?:of|with|for|marked out of|out of)) {COUNT}(?:[- ](?:marks?|points?|questions|items))?\b",
    re.IGNORECASE,
)
_COUNTED = re.compile(rf"\b(?P<count>{COUNT})(?![.,]?\d)(?: (?P<adjective>[a-z-]+))?? (?P<noun>[a-z]{{3,}})\b")
_ONLY_SOME = re.compile(
    r"\b(?:some|part|first|last|rest|others?|each|every|per|most|least|absent|only|half|teams? of|school|up to"
    r"|sections?|divided|boys in|girls in|hold|holds|seats?)\b"
)
"""Words of a sentence that may tell of more, or of fewer, than the values."""
_MEASURED = r"(?:are|were|is|was)(?: \w+)? (?:asked|measured|weighed|timed|tested|surveyed|interviewed|questioned)"
_SUBJECT = re.compile(rf"(?:a (?:class|group|sample) of )?(?:{COUNT}) [a-z -]+? (?:{_MEASURED}|wrote|took|sat|did)\b")
_SHOWN = re.compile(
    r"(?:(?:the|this|these)\b.*\b(?:shows?|gives?|lists?|summari[sz]es|represents?)\b.*"
    r"|(?:these|here|below|the following) (?:are|is) the .*|the [a-z, ()]+?)"
    r"\b(?P<joint>of|by|for|from|in|when|after|over)(?: (?:the|all|these|all the|a (?:class|group|sample) of))? $"
)
_TRIALS = re.compile(r"(?:\bdice\b|\bdie\b|\bspinner\b|\bcoins?\b).* (?:thrown|rolled|spun|tossed) $")


@dataclass(frozen=True, slots=True)
class ToldCount:
    """A number of things in a sentence; `sure` where it can be no other number than that of the values."""

    count: int
    noun: str
    sure: bool


def without_names(words: str) -> str:
    """A sentence without the numbers that are names, or marks that could be got."""
    return _OUT_OF.sub("", _LABELS.sub("", words))


def told_count(words: str) -> ToldCount | None:
    """The one number of things that a sentence tells; None where it tells none, or several.

    >>> told_count("the marks of five learners are").count
    5
    >>> told_count("a team of 11 players scored these goals").sure
    False
    >>> told_count("the marks of some Grade 10 learners") is None
    True
    """
    plain = without_names(words).lower()
    found = list(_COUNTED.finditer(plain))
    if len(found) != 1 or len(re.findall(rf"\b{COUNT}\b", plain)) != 1:
        return None
    before, counted = plain[: found[0].start()], found[0]
    sure = bool(_SUBJECT.match(plain) or _SHOWN.fullmatch(before) or _TRIALS.search(before))
    return ToldCount(count_of(counted["count"]), counted["noun"], sure and not _ONLY_SOME.search(plain))


def speaks_of(heading: str, noun: str) -> bool:
    """Whether the heading of a column names what a noun does: "Matches", "Number of matches"."""
    return stem(noun) in {stem(word) for word in re.findall(r"[a-z]{3,}", heading.lower())}
