"""Numbers in the regions of a Venn diagram of two sets, and the probability of being in one."""

from fractions import Fraction

from paperaudit.errors import NoValue
from paperaudit.model.chance_task import OfVenn
from paperaudit.model.derivation import Answer, Impossible
from paperaudit.strands.chance.lines import Lines, share
from paperaudit.strands.numbers.working import require


def of_venn(task: OfVenn, lines: Lines) -> Answer | Impossible:
    """The number in a region, or its share of the whole; Impossible where a region would be below nought."""
    whole, one, other, both = task.whole, task.first, task.second, task.both
    assert whole is not None and one is not None and other is not None
    names = task.names
    lines.skill = "combined events"
    if both is None:
        if task.neither is None:
            raise NoValue("neither how many are in both sets nor in none is said")
        either = whole - task.neither
        lines.say(f"{names[0]} or {names[1]}: {whole} − {task.neither} = {either}", str(either), starts=True)
        both = one + other - either
        lines.say(f"both: {one} + {other} − {either} = {both}", str(both))
    first_only, second_only = one - both, other - both
    neither = whole - first_only - second_only - both
    sizes = {"both": both, "first only": first_only, "second only": second_only, "neither": neither}
    said = {"both": "both", "first only": f"{names[0]} only", "second only": f"{names[1]} only", "neither": "neither"}
    used = tuple(given.text for given in lines.givens)
    low = next((name for name, size in sizes.items() if size < 0), "")
    if low:
        return Impossible(
            used, (f"{said[low]} would be {str(sizes[low]).replace('-', '−')}", "a number below 0: false")
        )
    if task.neither is not None and task.neither != neither:
        return Impossible(used, (f"neither would be {neither}", f"{neither} = {task.neither}: false"))
    value = _lines(task, sizes, lines)
    members = [part for part in _PARTS for _ in range(sizes[part])]
    inside = [member for member in members if member in _REGIONS[task.known or "all"]]
    if task.known:
        value = _within(task, value, sizes, lines)
    again = sum(member in _REGIONS[task.want] for member in inside)
    require(again == value and len(members) == whole, "the number in the region in two ways")
    if not task.chance:
        return lines.end(Fraction(value))
    if not inside:
        raise NoValue("nobody is in the region of the condition")
    of = len(inside)
    lines.say(f"probability = {share(value, of)}", share(value, of))
    if lines.shown(Fraction(value, of)) != share(value, of):
        lines.say(f"= {lines.shown(Fraction(value, of))}", lines.shown(Fraction(value, of)))
    return lines.end(Fraction(value, of))


_PARTS = ("both", "first only", "second only", "neither")
_REGIONS = {
    "all": frozenset(_PARTS), "both": frozenset({"both"}), "neither": frozenset({"neither"}),
    "first only": frozenset({"first only"}), "second only": frozenset({"second only"}),
    "exactly one": frozenset({"first only", "second only"}), "first": frozenset({"both", "first only"}),
    "second": frozenset({"both", "second only"}), "either": frozenset({"both", "first only", "second only"}),
}  # fmt: skip


def _within(task: OfVenn, value: int, sizes: dict[str, int], lines: Lines) -> int:
    """How many of those in the region of the condition are in the region asked for."""
    lines.skill = "conditional probability"
    parts = _REGIONS[task.known]
    of = sum(sizes[part] for part in parts)
    named = {"first": task.names[0], "second": task.names[1], "either": f"{task.names[0]} or {task.names[1]}"}
    kept = sum(sizes[part] for part in parts & _REGIONS[task.want])
    lines.say(f"{named.get(task.known, task.known)}: {of}", str(of), starts=True)
    lines.say(f"of these: {kept}", str(kept))
    return kept


def _lines(task: OfVenn, sizes: dict[str, int], lines: Lines) -> int:
    """The lines to the number in the region that is asked for."""
    first_only, second_only, both = sizes["first only"], sizes["second only"], sizes["both"]
    one, other = task.names
    if task.want == "both":
        if not lines.steps:
            lines.say(f"both: {both}", str(both))
        return both
    if task.want not in ("second only", "first", "second"):
        lines.say(f"{one} only: {task.first} − {both} = {first_only}", str(first_only), starts=not lines.steps)
    if task.want not in ("first only", "first", "second"):
        lines.say(f"{other} only: {task.second} − {both} = {second_only}", str(second_only), starts=not lines.steps)
    match task.want:
        case "first" | "second":
            return sizes[f"{task.want} only"] + both
        case "neither":
            value = sizes["neither"]
            lines.say(f"neither: {task.whole} − {first_only} − {second_only} − {both} = {value}", str(value))
            return value
        case "exactly one":
            value = first_only + second_only
            lines.say(f"{first_only} + {second_only} = {value}", str(value))
            return value
        case "either":
            value = first_only + second_only + both
            lines.say(f"{first_only} + {both} + {second_only} = {value}", str(value))
            return value
    return sizes[task.want]
