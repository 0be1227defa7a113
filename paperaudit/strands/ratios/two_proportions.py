"""Workers, their work and their time: each grows with the others or against them."""

from dataclasses import replace
from fractions import Fraction

from paperaudit.errors import NoValue
from paperaudit.model.derivation import Derived
from paperaudit.model.reading import Reading
from paperaudit.model.reckoning import Reckoning
from paperaudit.strands.numbers.working import require
from paperaudit.strands.ratios.plain_amounts import answered, bare_of, in_one_unit, text_of, working_of


def two_proportions(task: Reckoning, reading: Reading) -> Derived:
    """The workers, the work or the time by way of one worker's time for one piece; multiplied crosswise."""
    assert reading.ask is not None
    working = working_of("proportion", reading)
    (wanted,) = task.wanted
    numbers: dict[str, list[Fraction]] = {}
    units: dict[str, str] = {}
    for name in ("workers", "work", "time"):
        numbers[name], units[name] = in_one_unit(task.all_of(name))
    workers, work, time = (numbers[name][0] for name in ("workers", "work", "time"))
    unit = units["time"]
    whole = workers * time
    each = whole / work
    working.say(f"{text_of(workers)} × {text_of(time, unit)} = {text_of(whole, unit)} of work", text_of(whole, unit))
    if work != 1:
        working.say(f"{text_of(whole, unit)} ÷ {text_of(work)} = {text_of(each, unit)} for one", text_of(each, unit))
    others = {name: values[1] for name, values in numbers.items() if name != wanted}
    if wanted == "work":
        total = others["workers"] * others["time"]
        working.say(f"{text_of(others['workers'])} × {text_of(others['time'], unit)} = {text_of(total, unit)} of work",
                    text_of(total, unit))  # fmt: skip
        value = total / each
        working.say(f"{text_of(total)} ÷ {text_of(each)} = {text_of(value)}", text_of(value))
    else:
        needed = others["work"] * each
        other = others["workers" if wanted == "time" else "time"]
        working.say(f"{text_of(others['work'])} × {text_of(each, unit)} = {text_of(needed, unit)} of work",
                    text_of(needed, unit))  # fmt: skip
        value = needed / other
        working.say(f"{text_of(needed)} ÷ {text_of(other)} = {text_of(value)}", text_of(value))
    found = others | {wanted: value}
    require(workers * time * found["work"] == found["workers"] * found["time"] * work, "the products crosswise differ")
    counted = not units[wanted]
    if counted and value.denominator != 1:
        raise NoValue(f"there would be {text_of(value)} of them, which is not whole")
    wished = next((one.removeprefix("in ") for one in task.details), "")
    ask = replace(reading.ask, unit=reading.ask.unit or wished)
    own = bare_of(task.all_of(wanted)[0])[1]
    return working.derived(answered(value, own, ask, working), confirmed_by="multiplied crosswise")
