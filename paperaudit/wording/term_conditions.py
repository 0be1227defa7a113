"""Puts conditions on the terms of a sequence into letters: "the third term is 11" becomes a + 2d = 11."""

import re
from dataclasses import dataclass, field
from fractions import Fraction

from paperaudit.wording.accuracy import COUNTS
from paperaudit.wording.sentences import sentences

_ORDINALS = (
    "first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth", "ninth", "tenth", "eleventh",
    "twelfth",
)  # fmt: skip
_ORD = rf"(?:\d{{1,3}}(?:st|nd|rd|th)|{'|'.join(_ORDINALS)}|twentieth)"
_VALUE = r"-?\d+(?:\.\d+)?(?:/\d+)?"
_IS = r" ?(?:is equal to|is|are|=|equals|of|:|being)? ?"
_OF_IT = r"(?: of (?:the|an?|this) (?:\w+ )?(?:sequence|series|progression))?"
_ATOMS: tuple[tuple[str, re.Pattern[str]], ...] = tuple(
    (name, re.compile(pattern, re.IGNORECASE))
    for name, pattern in (
        ("two terms", rf"\b({_ORD}) and (?:the )?({_ORD}) terms{_OF_IT} "
                      rf"are ({_VALUE}) and ({_VALUE})(?: respectively)?"),
        ("sum", rf"\bsum of (?:the |its )?first (\w+) terms{_OF_IT}{_IS}({_VALUE})"),
        ("sum", rf"\bS_?\{{?(\d+)\}}? ?= ?({_VALUE})"),
        ("endless", rf"\bsum to infinity{_OF_IT}{_IS}({_VALUE})"),
        ("endless", rf"\bS_?∞ ?= ?({_VALUE})"),
        ("term", rf"\b({_ORD}) term{_OF_IT}{_IS}({_VALUE})"),
        ("term", rf"\b[Tau]_?\{{?(\d+)\}}? ?= ?({_VALUE})"),
        ("step", rf"\b(?:common (?:difference|ratio)){_IS}({_VALUE})"),
        ("step", rf"\b[dr] ?= ?({_VALUE})"),
        ("head", rf"\ba ?= ?({_VALUE})"),
    )
)  # fmt: skip
_WANTED: tuple[tuple[str, re.Pattern[str]], ...] = tuple(
    (name, re.compile(pattern, re.IGNORECASE))
    for name, pattern in (
        ("sum", r"\bsum of (?:the |its )?first (\w+) terms|\bS_?\{?(\d+)\}?"),
        ("endless", r"\bsum to infinity|\bS_?∞"),
        ("head", r"\b(?:first term|1st term)(?:,? a\b)?|\bT_?\{?1\}?(?!\d)|\ba\b(?= (?:and|,) ?[dr]\b)"),
        ("step", r"\bcommon (?:difference|ratio)(?:,? [dr]\b)?|\b[dr]\b"),
        ("term", rf"\b({_ORD}) term|\b[Tu]_?\{{?(\d+)\}}?"),
    )
)
_FILLER = re.compile(
    r"\b(?:in|of|for|the|an?|this|that|arithmetic|geometric|sequence|series|progression|has|have|with|and|is|are|given"
    r"|if|it|its|known|whose|where|whole|both|respectively|(?:possible )?values?|find|determine"
    r"|calculate|work out|hence|then|what|also|down|write|state|consider|give|which)\b|[,.;:?()]",
    re.IGNORECASE,
)
_ASKS = re.compile(r"\b(?:find|determine|calculate|work out|what|write|state|give)\b", re.IGNORECASE)
_ROW = r"(?P<row>[^.?]*?[a-z][^.?]*?)"
_THREE = (
    r"(?:the )?(?:first )?(?:three |3 )?(?:(?:consecutive|successive) )?terms (?:of|in) an? "
    r"(?P<kind>arithmetic|geometric) (?:sequence|series|progression)"
)
_FIND = r"(?:find|determine|calculate|work out)(?: all)?(?: the)?(?: possible)?(?: values?)?(?: of)? (?P<letter>[a-z])"
_IN_LETTERS = tuple(
    re.compile(pattern, re.IGNORECASE)
    for pattern in (
        rf"(?:given(?: that)? |if )?{_ROW} are {_THREE}[.,] ?{_FIND}[.?]?",
        rf"{_FIND} (?:if|given that|such that|so that|for which|when) {_ROW} are {_THREE}[.?]?",
        rf"{_THREE} are(?: given by)?:? {_ROW}[.] ?{_FIND}[.?]?",
    )
)


@dataclass(slots=True)
class _Known:
    """What the sentences give: first term, step, terms and sums by their number; and what they want."""

    kind: str
    head: str = ""
    step: str = ""
    endless: str = ""
    terms: dict[int, str] = field(default_factory=dict)
    sums: dict[int, str] = field(default_factory=dict)
    wanted: list[tuple[str, int]] = field(default_factory=list)


def terms_in_letters(text: str) -> str | None:
    """The question in equations for a and d, or for r, or for the letter in three terms; None where it is no such one.

    >>> terms_in_letters("The third term of an arithmetic sequence is 11 and the seventh term is 27. Find d.")
    'Solve for d: a + 2d = 11 and a + 6d = 27.'
    """
    plain = " ".join(text.replace("−", "-").replace("–", "-").translate(_RAISED).split())
    for pattern in _IN_LETTERS:
        found = pattern.fullmatch(plain)
        if found is not None:
            return _neighbours(found)
    kinds = {word.lower() for word in re.findall(r"\b(?:arithmetic|geometric)\b", plain, re.IGNORECASE)}
    if len(kinds) != 1:
        return None
    known = _Known(kinds.pop())
    return _said(known) if all(_take(one.text, known) for one in sentences(plain)) and known.wanted else None


_RAISED = str.maketrans("₀₁₂₃₄₅₆₇₈₉", "0123456789")


def _neighbours(found: re.Match[str]) -> str | None:
    """Three terms with a letter: equal differences or equal ratios."""
    row = re.split(r" ?; ?|, (?:and )?| and ", found["row"].strip())
    if len(row) != 3 or not all(re.fullmatch(r"[-+a-z0-9()/.² ^]+", one) and "  " not in one for one in row):
        return None
    if any(re.search(r"[a-z]{2}", one) for one in row) or {*re.findall(r"[a-z]", "".join(row))} != {found["letter"]}:
        return None
    one, two, three = (f"({each})" for each in row)
    sides = f"{two} − {one} = {three} − {two}" if found["kind"] == "arithmetic" else f"{two}/{one} = {three}/{two}"
    return f"Solve for {found['letter']}: {sides}."


def _take(sentence: str, known: _Known) -> bool:
    """Puts what a sentence says into what is known; False where a word or a number of it is left."""
    rest = sentence
    asks = _ASKS.search(rest)
    told, asked = (rest[: asks.start()], rest[asks.start() :]) if asks else (rest, "")
    for name, pattern in _ATOMS:
        while (found := pattern.search(told)) is not None:
            told = told[: found.start()] + " " + told[found.end() :]
            if not _note(name, found, known):
                return False
    for name, pattern in _WANTED:
        while (found := pattern.search(asked)) is not None:
            asked = asked[: found.start()] + " " + asked[found.end() :]
            number = next((one for one in found.groups() if one), "0") if found.re.groups else "0"
            count = _count(number)
            if count is None:
                return False
            known.wanted.append((name, count))
    return not _FILLER.sub(" ", told + asked).strip()


def _note(name: str, found: re.Match[str], known: _Known) -> bool:
    groups = found.groups()
    if name in ("head", "step", "endless"):
        if getattr(known, name):
            return False
        setattr(known, name, groups[0])
        return True
    pairs = [(groups[0], groups[2]), (groups[1], groups[3])] if name == "two terms" else [(groups[0], groups[1])]
    where = known.sums if name == "sum" else known.terms
    for words, value in pairs:
        count = _count(words)
        if not count or count in where:
            return False
        where[count] = value
    return True


def _count(words: str) -> int | None:
    plain = re.sub(r"(?<=\d)(?:st|nd|rd|th)$", "", words.lower())
    if plain in _ORDINALS:
        return _ORDINALS.index(plain) + 1
    plain = {**COUNTS, "twenty": "20", "twentieth": "20"}.get(plain, plain)
    return int(plain) if plain.isdigit() else None


def _said(known: _Known) -> str | None:
    if 1 in known.terms:
        if known.head:
            return None
        known.head = known.terms.pop(1)
    return _arithmetic(known) if known.kind == "arithmetic" else _geometric(known)


def _put(equations: list[str], wanted: list[str]) -> str | None:
    """The ask for letters alone as a system, for anything else with the equations as what is given."""
    if not equations:
        return None
    if all(len(one) == 1 for one in wanted):
        return f"Solve for {' and '.join(wanted)}: {' and '.join(equations)}."
    if len(wanted) > 1:
        return f"Given {' and '.join(equations)}. Find {wanted[0]}. Find {wanted[1]}." if len(wanted) == 2 else None
    return f"Given {' and '.join(equations)}, find the value of {wanted[0]}."


def _arithmetic(known: _Known) -> str | None:
    if known.endless or len(known.terms) + len(known.sums) + bool(known.head) + bool(known.step) != 2:
        return None
    if not known.terms and not known.sums:
        return None
    equations = [f"a = {known.head}"] if known.head else []
    equations += [f"d = {known.step}"] if known.step else []
    equations += [f"{_nth(count)} = {value}" for count, value in sorted(known.terms.items())]
    equations += [f"{_sum(count)} = {value}" for count, value in sorted(known.sums.items())]
    names = {"head": lambda _: "a", "step": lambda _: "d", "term": _nth, "sum": _sum}
    if any(name not in names for name, _ in known.wanted):
        return None
    return _put(equations, [names[name](count) for name, count in known.wanted])


def _nth(count: int) -> str:
    return "a" if count == 1 else "a + d" if count == 2 else f"a + {count - 1}d"


def _sum(count: int) -> str:
    steps = count - 1
    if count % 2:
        return f"{count}(a + {'' if steps == 2 else steps // 2}d)"
    return f"{count // 2}(2a + {'' if steps == 1 else steps}d)".removeprefix("1(").removesuffix(
        ")" if count == 2 else ""
    )


def _geometric(known: _Known) -> str | None:
    """The ratio from two terms, or the first term from the ratio; with an even power both ratios are asked for."""
    if known.sums or len(known.terms) + bool(known.endless) + bool(known.head) + bool(known.step) != 2:
        return None
    if known.endless:
        return _from_endless(known)
    places = sorted(known.terms.items())
    if known.head:
        places = [(1, known.head), *places]
    wanted = {name for name, _ in known.wanted}
    if len(places) != 2 or wanted != {"step"} or float(Fraction(places[0][1])) == 0:
        return None
    (one, low), (other, high) = places
    size = f"({low})" if "/" in low else low
    return f"Solve for r: {size}r{'' if other - one == 1 else f'^{other - one}'} = {high}."


def _from_endless(known: _Known) -> str | None:
    total = Fraction(known.endless)
    if known.wanted == [("step", 0)] and known.head and total and abs(1 - Fraction(known.head) / total) < 1:
        return f"Solve for r: {known.head}/(1 − r) = {known.endless}."
    if known.wanted == [("head", 0)] and known.step and abs(Fraction(known.step)) < 1:
        return f"Solve for a: a/(1 − {f'({known.step})' if known.step[0] == '-' else known.step}) = {known.endless}."
    return None
