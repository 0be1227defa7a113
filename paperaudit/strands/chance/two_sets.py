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
    members = ["both"] * both + ["first only"] * first_only + ["second only"] * second_only + ["neither"] * neither
    wanted = {"exactly one": {"first only", "second only"}, "either": {"both", "first only", "second only"}}
    again = sum(member in wanted.get(task.want, {task.want}) for member in members)
    require(again == value and len(members) == whole, "the number in the region in two ways")
    if not task.chance:
        return lines.end(Fraction(value))
    lines.say(f"probability = {share(value, whole)}", share(value, whole))
    if lines.shown(Fraction(value, whole)) != share(value, whole):
        lines.say(f"= {lines.shown(Fraction(value, whole))}", lines.shown(Fraction(value, whole)))
    return lines.end(Fraction(value, whole))


def _lines(task: OfVenn, sizes: dict[str, int], lines: Lines) -> int:
    """The lines to the number in the region that is asked for."""
    first_only, second_only, both = sizes["first only"], sizes["second only"], sizes["both"]
    one, other = task.names
    if task.want == "both":
        if not lines.steps:
            lines.say(f"both: {both}", str(both))
        return both
    if task.want != "second only":
        lines.say(f"{one} only: {task.first} − {both} = {first_only}", str(first_only), starts=not lines.steps)
    if task.want != "first only":
        lines.say(f"{other} only: {task.second} − {both} = {second_only}", str(second_only), starts=not lines.steps)
    match task.want:
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
