"""Which column of a table counts how often the values, classes or names of the other column occur."""

import re
from collections.abc import Sequence

from paperaudit.wording.topics.named_events import stem
from paperaudit.wording.topics.told_counts import ToldCount, speaks_of

FREQUENCY = re.compile(
    r"\b(?:freq(?:uenc(?:y|ies))?|f|count|tally|number of (?:learners|pupils|students|people|boys|girls|families"
    r"|customers|sails|boats|days|matches|games|members|employees|players|children|ropes|households|times|weeks"
    r"|workers|plants|trees|cars|houses|homes|adults|men|women|patients|teams|throws|rolls|spins)"
    r"|how many)\b",
    re.IGNORECASE,
)
_COUNTED = re.compile(
    r"(?:no\.? of |# of )?(?:learners|pupils|students|people|boys|girls|families|customers|matches|games|members"
    r"|employees|players|children|households|plants|trees|cars|houses|homes|adults|men|women|patients|throws|rolls"
    r"|spins|days|weeks)",
    re.IGNORECASE,
)
_MEANT_OF = re.compile(r" (?:of the|of all|of these|for|per|in|by|from|on)\b.*| of(?: each)?$")
_EMPTY = {stem(word) for word in ("number", "numbers", "of", "the", "in", "frequency", "count", "total", "a")}


def place_of_counts(
    names: Sequence[str], sums: Sequence[int | None], told: Sequence[ToldCount], about: str, classes: bool
) -> int | None:
    """0 or 1 for the column of frequencies, None where nothing says which it is.

    `sums` are those of the columns, `told` the numbers of things in the sentences, `about` what a measure is
    wanted of, `classes` whether the first column holds classes or names.

    >>> place_of_counts(("Goals", "Matches"), (6, 20), (ToldCount(20, "matches", True),), "", False)
    1
    """
    found = _by_names(names, sums, told, about, classes)
    wanted = re.sub(r"^(?:the )?(?:numbers? of )?", "", _MEANT_OF.sub("", f" {about.strip()}").strip())
    if found is None or not wanted or about.strip().startswith(("of ", "for ")):
        return found
    return None if _names(names[found], wanted) and not _names(names[1 - found], wanted) else found


def counts(heading: str) -> bool:
    """Whether a heading says by itself that its column counts: "Frequency", "Number of learners", "Pupils"."""
    plain = re.sub(r" ?\([^()]*\)$", "", heading.strip())
    return bool(FREQUENCY.search(heading) or _COUNTED.fullmatch(plain))


def _by_names(
    names: Sequence[str], sums: Sequence[int | None], told: Sequence[ToldCount], about: str, classes: bool
) -> int | None:
    called = [at for at in (0, 1) if counts(names[at])]
    if len(called) == 1:
        return called[0]
    adding = [at for at in (0, 1) if any(sums[at] == one.count and speaks_of(names[at], one.noun) for one in told)]
    if len(adding) == 1:
        return adding[0]
    if called:
        first = [at for at in (0, 1) if _names(names[at], about.split(" of the ")[0])]
        return 1 - first[0] if len(first) == 1 else 1
    return 1 if classes and re.match(r"(?:number|no\.?) of [a-z]+", names[1].strip(), re.IGNORECASE) else None


def _names(heading: str, words: str) -> bool:
    own = {stem(word) for word in re.findall(r"[a-z]+", heading.lower())} - _EMPTY
    return bool(own & {stem(word) for word in re.findall(r"[a-z]+", words.lower())})
