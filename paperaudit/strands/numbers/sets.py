"""Sets with known members: unions, intersections and complements listed or counted."""

from collections.abc import Callable, Mapping

from paperaudit.errors import BudgetExceeded, NoValue
from paperaudit.maths import primes
from paperaudit.maths.write import MINUS
from paperaudit.model.derivation import Answer, Impossible, Outcome, StepKind
from paperaudit.model.fact import Given
from paperaudit.model.reading import Reading
from paperaudit.model.set_task import (
    Combined,
    Complement,
    NamedSet,
    SetAsked,
    SetCounted,
    SetDescribed,
    SetExpression,
    SetIs,
    set_text,
)
from paperaudit.strands.numbers.venn import counted
from paperaudit.strands.numbers.working import Working, number, require

SKILL = "sets and Venn diagrams"
_LARGEST = 1_000
Members = tuple[str, ...]


def asked(task: SetAsked, reading: Reading) -> Outcome:
    """The members of a set, or how many it has, from the members of others or from their numbers."""
    if any(isinstance(fact, SetCounted) for given in reading.givens for fact in given.facts):
        if not task.counted:
            raise NoValue("the members of a set of which only numbers are known")
        return counted(task, reading)
    known, texts = _known(reading)
    outside = _outside(known, texts)
    if outside is not None:
        return outside
    working = Working(SKILL, _used(task.of, texts, reading))
    _say_described(task.of, known, reading, working)
    found = _worked_out(task.of, known, working)
    again = tuple(one for one in _everything(known) if _has(task.of, one, known))
    require(set(found) == set(again), f"the members of {set_text(task.of)}")
    text = _braces(found)
    if not working.steps:
        working.say(f"{set_text(task.of)} = {text}", text)
    check = "every member of every set tried for belonging to it"
    if task.counted:
        count = len(found)
        working.say(f"n({set_text(task.of)}) = {count}", str(count), kind=StepKind.CONCLUSION)
        return working.derived(Answer(str(count), number(count)), confirmed_by=check)
    return working.derived(Answer(text, kind="set"), confirmed_by=check)


def _say_described(of: SetExpression, known: Mapping[str, Members], reading: Reading, working: Working) -> None:
    """A line with the members of each set that words describe."""
    described = {fact.name for given in reading.givens for fact in given.facts if isinstance(fact, SetDescribed)}
    for name in sorted((_names(of) & described) - {"ξ"}):
        if name in known and of != NamedSet(name):
            working.say(f"{name} = {_braces(known[name])}", _braces(known[name]), working.used)


def _known(reading: Reading) -> tuple[dict[str, Members], dict[str, str]]:
    """The members of each set that the givens state, and the texts of these givens; the universal set first."""
    stated: list[tuple[Given, SetIs | SetDescribed]] = []
    for given in reading.givens:
        stated += [(given, fact) for fact in given.facts if isinstance(fact, SetIs | SetDescribed)]
    stated.sort(key=lambda pair: pair[1].name != "ξ")
    known: dict[str, Members] = {}
    texts: dict[str, str] = {}
    for given, fact in stated:
        if fact.name in known:
            raise NoValue(f"{fact.name} is stated twice")
        known[fact.name] = fact.members if isinstance(fact, SetIs) else _described(fact, known.get("ξ"))
        if isinstance(fact, SetDescribed):
            require(set(known[fact.name]) == _described_again(fact, known.get("ξ")), f"the members of {fact.name}")
        texts[fact.name] = given.text
    return known, texts


def _described(fact: SetDescribed, universal: Members | None) -> Members:
    """The members that words describe: those of the universal set, or those of a range."""
    if fact.low is None and fact.high is None and fact.kind != "factor":
        if universal is None:
            raise NoValue(f"{fact.name} has no end: no universal set is stated")
        candidates = [int(one) for one in universal if one.lstrip("-").isdecimal()]
    else:
        high = fact.high if fact.high is not None else fact.of
        if high > _LARGEST or fact.of > _LARGEST:
            raise BudgetExceeded("a set of hundreds of numbers")
        candidates = list(range(1 if fact.low is None else fact.low, high + 1))
        if universal is not None and fact.name != "ξ":
            candidates = [one for one in candidates if str(one) in universal]
    return tuple(str(one) for one in candidates if _is(fact, one))


def _is(fact: SetDescribed, value: int) -> bool:
    match fact.kind:
        case "integer":
            return True
        case "even" | "odd":
            return value % 2 == (fact.kind == "odd")
        case "prime":
            return primes.is_prime(value)
        case "square":
            return primes.is_square(value)
        case "cube":
            return any(one**3 == value for one in range(11))
        case "triangular":
            return primes.is_square(8 * value + 1)
        case "multiple":
            return value % fact.of == 0
        case "factor":
            return value > 0 and fact.of % value == 0


def _described_again(fact: SetDescribed, universal: Members | None) -> set[str]:
    """The members once more: every number up to the last one, tried by what numbers of the kind are made of."""
    made: dict[str, Callable[[int], bool]] = {
        "integer": lambda value: True,
        "even": lambda value: str(value)[-1] in "02468",
        "odd": lambda value: str(value)[-1] in "13579",
        "prime": lambda value: value > 1 and all(value % one for one in range(2, value)),
        "square": lambda value: any(one * one == value for one in range(value + 1)),
        "cube": lambda value: any(one * one * one == value for one in range(value + 1)),
        "triangular": lambda value: any(sum(range(one + 1)) == value for one in range(value + 1)),
        "multiple": lambda value: any(one * fact.of == value for one in range(-abs(value), abs(value) + 1)),
        "factor": lambda value: any(one * value == fact.of for one in range(1, fact.of + 1)),
    }
    ends = [int(one) for one in universal or () if one.lstrip("-").isdecimal()]
    bound = max([abs(one) for one in (*ends, fact.low, fact.high, fact.of) if one is not None])
    low = fact.low if fact.low is not None else -bound if fact.high is None and fact.kind != "factor" else 1
    high = fact.high if fact.high is not None else bound
    own = {str(one) for one in range(low, high + 1) if made[fact.kind](one)}
    return own if universal is None or fact.name == "ξ" else own & set(universal)


def _outside(known: Mapping[str, Members], texts: Mapping[str, str]) -> Impossible | None:
    """A set with a member that the universal set does not have."""
    universal = known.get("ξ")
    for name, members in known.items():
        if universal is not None and (left := [one for one in members if one not in universal]):
            why = (f"{left[0]} is a member of {name}", f"{left[0]} is not a member of ξ, the statements clash")
            return Impossible((texts["ξ"], texts[name]), (*why, "false: every member belongs to ξ"))
    return None


def _used(of: SetExpression, texts: Mapping[str, str], reading: Reading) -> tuple[str, ...]:
    """The givens that a set rests on; a set that words describe is cut out of the universal one."""
    names = _names(of)
    facts = [fact for given in reading.givens for fact in given.facts]
    if any(isinstance(fact, SetDescribed) and fact.name in names for fact in facts):
        names.add("ξ")
    return tuple(dict.fromkeys(text for name, text in texts.items() if name in names))


def _names(of: SetExpression) -> set[str]:
    match of:
        case NamedSet(name):
            return {name}
        case Complement(inner):
            return _names(inner) | {"ξ"}
        case Combined(left, _, right):
            return _names(left) | _names(right)


def _worked_out(of: SetExpression, known: Mapping[str, Members], working: Working) -> Members:
    """The members in the order in which they are written, with a line for every set that is not given."""
    match of:
        case NamedSet("∅"):
            return ()
        case NamedSet(name):
            if name not in known:
                raise NoValue(f"the members of {name} are not stated")
            return known[name]
        case Complement(inner):
            if "ξ" not in known:
                raise NoValue("no universal set is stated")
            left_out = _worked_out(inner, known, working)
            found = tuple(one for one in known["ξ"] if one not in left_out)
        case Combined(left, sign, right):
            one, other = _worked_out(left, known, working), _worked_out(right, known, working)
            if sign == "∪":
                found = _in_order((*one, *(member for member in other if member not in one)))
            else:
                found = tuple(member for member in one if (member in other) == (sign == "∩"))
    text = _braces(found)
    working.say(f"{set_text(of)} = {text}", text)
    return found


def _braces(members: Members) -> str:
    """A set as it is printed: {−1, 2}, ∅."""
    return f"{{{', '.join(one.replace('-', MINUS) for one in members)}}}" if members else "∅"


def _in_order(members: Members) -> Members:
    """Numbers by their size, anything else as it stands."""
    if all(one.lstrip("-").isdecimal() for one in members):
        return tuple(sorted(members, key=int))
    return members


def _everything(known: Mapping[str, Members]) -> Members:
    return tuple(dict.fromkeys(member for members in known.values() for member in members))


def _has(of: SetExpression, member: str, known: Mapping[str, Members]) -> bool:
    """Whether a member belongs to a set, asked of that member alone."""
    match of:
        case NamedSet("∅"):
            return False
        case NamedSet(name):
            return member in known[name]
        case Complement(inner):
            return not _has(inner, member, known)
        case Combined(left, sign, right):
            one, other = _has(left, member, known), _has(right, member, known)
            return (one or other) if sign == "∪" else one and other == (sign == "∩")
