"""Words a reason in the way that a system of marking writes it, and knows what each reason states."""

import re
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from types import MappingProxyType

from paperaudit.marking.scheme_file import chosen, mapping_of, names_and_values, names_in, text_of, texts_of
from paperaudit.model.derivation import Reason
from paperaudit.model.place import Place
from paperaudit.resources import shipped

_SLOT = re.compile(r"\[([^\[\]|]*)(?:\|([^\[\]]*))?\]")
_ABOUT = "{about}"
_FALLBACK = "full"


@dataclass(frozen=True, slots=True)
class Theorem:
    """What a reason states, from `schemes/theorems.yaml`.

    `euclid` is its place in the Elements ("I.32"), "" where it has none; `converse_of` names the
    reason that it is the converse of; `row` is its number among the 72 facts of school geometry, or 0.
    """

    name: str
    states: str
    euclid: str = ""
    converse_of: str = ""
    row: int = 0


def systems() -> tuple[str, ...]:
    """The systems of wording that are there, sorted: the files of `schemes/reasons`.

    >>> systems()
    ('abbreviated', 'full', 'theorem-names')
    """
    return names_in("reasons")


def word(reason: Reason, system: str) -> str:
    """The reason as that system writes it, with what it is about where it says so.

    A reason that a department's own file does not word is worded as in `full`. Raises InputError for
    an unknown system or a file that cannot be read, KeyError for a name that no file has (our bug).

    >>> word(Reason("alternate-angles", "AB ∥ CD"), "abbreviated")
    'alt ∠s; AB ∥ CD'
    >>> word(Reason("alternate-angles"), "full")
    'alternate angles are equal'
    """
    wordings = _wordings(system)
    if reason.name not in wordings:
        raise KeyError(f"no file of schemes/reasons words the reason {reason.name!r}")
    return _SLOT.sub(lambda slot: _filled(slot, reason.about), wordings[reason.name])


def theorem(name: str) -> Theorem:
    """What the reason of that name states; KeyError for a name that is not registered (our bug).

    >>> theorem("isosceles-base-angles").euclid
    'I.5'
    """
    register = theorems()
    if name not in register:
        raise KeyError(f"schemes/theorems.yaml does not have the reason {name!r}")
    return register[name]


@cache
def routine() -> frozenset[str]:
    """The reasons that are no theorem to be recalled, from `schemes/routine-reasons.yaml`."""
    path = shipped("schemes", "routine-reasons.yaml")
    return frozenset(texts_of(mapping_of(path).get("reasons"), Place(file=str(path)), "reasons"))


@cache
def theorems() -> Mapping[str, Theorem]:
    """Every registered reason by its name, in the order of the file."""
    path = shipped("schemes", "theorems.yaml")
    place = Place(file=str(path))
    register: dict[str, Theorem] = {}
    for name, content in mapping_of(path).items():
        entry = names_and_values(content, place, name)
        register[name] = Theorem(
            name,
            states=text_of(entry["states"], place, name),
            euclid=text_of(entry.get("euclid", ""), place, name),
            converse_of=text_of(entry.get("converse of", ""), place, name),
            row=int(str(entry.get("row", 0))),
        )
    return MappingProxyType(register)


def _filled(slot: re.Match[str], about: str) -> str:
    """A bracketed piece with its slot filled, or its other reading where the reason is about nothing."""
    return slot[1].replace(_ABOUT, about) if about else (slot[2] or "")


@cache
def _wordings(system: str) -> Mapping[str, str]:
    path = chosen("reasons", system, "system of wording for reasons")
    place = Place(file=str(path))
    table = names_and_values(mapping_of(path).get("wording"), place, "wording")
    own = {name: text_of(wording, place, f"wording of {name}") for name, wording in table.items()}
    return MappingProxyType(own if system == _FALLBACK else {**_wordings(_FALLBACK), **own})
