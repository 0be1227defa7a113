"""Counting with a Venn diagram: the regions filled one after the other, with x for one of them where that is needed."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from fractions import Fraction

from paperaudit.errors import BudgetExceeded, NoValue
from paperaudit.maths.number_forms import whole_or_fraction
from paperaudit.maths.regions import Region, Row, regions, row_of, settled
from paperaudit.maths.write import MINUS, write
from paperaudit.model.derivation import Answer, Case, Derived, Impossible, NotDetermined, Outcome, StepKind
from paperaudit.model.reading import Reading
from paperaudit.model.set_task import SetAsked, SetCounted, names_in, set_text
from paperaudit.strands.numbers.working import Working, number, require, text_of

SKILL = "sets and Venn diagrams"
_MOST_SETS = 3


@dataclass(frozen=True, slots=True)
class _Form:
    """A number, with a multiple of x: 18 − x."""

    constant: Fraction
    share: Fraction = Fraction(0)

    def less(self, other: "_Form") -> "_Form":
        return _Form(self.constant - other.constant, self.share - other.share)

    def plus(self, other: "_Form") -> "_Form":
        return _Form(self.constant + other.constant, self.share + other.share)

    def text(self) -> str:
        """As it is printed: 12, x, 18 − x."""
        if not self.share:
            return text_of(self.constant)
        size = abs(self.share)
        letter = "x" if size == 1 else f"{text_of(size)}x"
        if not self.constant:
            return f"{MINUS if self.share < 0 else ''}{letter}"
        return f"{text_of(self.constant)} {MINUS if self.share < 0 else '+'} {letter}"


@dataclass(slots=True)
class _Diagram:
    """The sets of a question, what is known of their regions, and the lines so far."""

    names: tuple[str, ...]
    rows: list[Row]
    working: Working
    known: dict[Region, _Form] = field(default_factory=dict)

    def fill(self) -> None:
        """Every region that one statement settles with what is known already."""
        while (step := self._next()) is not None:
            row, region = step
            others = [other for other in sorted(row.held, reverse=True) if other != region]
            value = _Form(row.total)
            for other in others:
                value = value.less(self.known[other])
            self.known[region] = value
            self._say(region, row, others, value)

    def _next(self) -> tuple[Row, Region] | None:
        for row in sorted(self.rows, key=lambda one: len(one.held)):
            unknown = [region for region in row.held if region not in self.known]
            if len(unknown) == 1:
                return row, unknown[0]
        return None

    def _say(self, region: Region, row: Row, others: Sequence[Region], value: _Form) -> None:
        parts = [self.known[other].text() for other in others if self.known[other] != _Form(Fraction(0))]
        shown = text_of(row.total) + "".join(f" {MINUS} {_bracketed(part)}" for part in parts)
        tail = f" = {value.text()}" if shown != value.text() else ""
        self.working.say(
            f"{region_text(region, self.names)}: {shown}{tail}", value.text(), (row.text,) if row.text else None
        )


def _bracketed(text: str) -> str:
    return f"({text})" if " " in text else text


def region_text(region: Region, names: Sequence[str]) -> str:
    """A region in words: A and B, A only, A and B only, neither."""
    inside = [name for name, held in zip(names, region, strict=True) if held]
    if not inside:
        return "in none of them" if len(names) > 2 else "in neither" if len(names) == 2 else f"not in {names[0]}"
    text = inside[0] if len(inside) == 1 else f"{', '.join(inside[:-1])} and {inside[-1]}"
    return text if len(inside) == len(names) else f"{text} only"


def counted(task: SetAsked, reading: Reading) -> Outcome:
    """How many are in a set, from how many are in others."""
    stated = [(given, fact) for given in reading.givens for fact in given.facts if isinstance(fact, SetCounted)]
    names = tuple(dict.fromkeys(name for _, fact in stated for name in names_in(fact.of)))
    if len(names) > _MOST_SETS or not names:
        raise BudgetExceeded("a Venn diagram of more than three sets")
    if unknown := [name for name in names_in(task.of) if name not in names]:
        raise NoValue(f"nothing is said of {unknown[0]}")
    rows = [row_of(fact.of, fact.count, names, given.text) for given, fact in stated]
    wanted = row_of(task.of, 0, names).held
    texts = tuple(dict.fromkeys(given.text for given, _ in stated))
    value = settled(rows, wanted)
    if value is None:
        return _open(task, rows, wanted, names)
    diagram = _Diagram(names, rows, Working(SKILL, texts))
    _filled(diagram, wanted)
    impossible = _impossible(diagram, rows, texts)
    if impossible is not None:
        return impossible
    return _answered(task, diagram, wanted, value)


def _filled(diagram: _Diagram, wanted: frozenset[Region]) -> None:
    """The regions one after the other; where no statement settles one, the innermost is called x."""
    diagram.fill()
    missing = [region for region in regions(diagram.names) if region not in diagram.known]
    if not wanted & set(missing):
        return
    diagram.known[missing[0]] = _Form(Fraction(0), Fraction(1))
    diagram.working.say(f"{region_text(missing[0], diagram.names)}: x", "x", ())
    diagram.fill()
    for row in diagram.rows:
        if not all(region in diagram.known for region in row.held):
            continue
        total = _Form(Fraction(0))
        for region in row.held:
            total = total.plus(diagram.known[region])
        if total.share:
            _solve(diagram, row, total)
            return


def _solve(diagram: _Diagram, row: Row, total: _Form) -> None:
    """The equation of one statement in x, and every region with its solution."""
    working = diagram.working
    parts = [diagram.known[region].text() for region in sorted(row.held, reverse=True)]
    before = tuple(step.statement for step in working.steps)
    working.say(
        f"{' + '.join(_bracketed(part) for part in parts)} = {text_of(row.total)}",
        kind=StepKind.EQUATION,
        uses=(*before, row.text) if row.text else before,
    )
    working.say(f"{total.text()} = {text_of(row.total)}", kind=StepKind.ALGEBRA)
    value = (row.total - total.constant) / total.share
    working.say(f"x = {text_of(value)}", text_of(value), kind=StepKind.ALGEBRA)
    diagram.known = {region: _Form(form.constant + form.share * value) for region, form in diagram.known.items()}


def _impossible(diagram: _Diagram, rows: Sequence[Row], texts: tuple[str, ...]) -> Impossible | None:
    """A region with a negative number, or a statement that the others contradict."""
    lines = tuple(step.statement for step in diagram.working.steps)
    for region, form in diagram.known.items():
        if form.constant < 0 or form.constant.denominator > 1:
            name = region_text(region, diagram.names)
            last = f"false: {name} would be {text_of(form.constant)}"
            return Impossible(texts, (*lines, last))
    for row in rows:
        if all(region in diagram.known for region in row.held):
            total = sum((diagram.known[region].constant for region in row.held), Fraction(0))
            if total != row.total:
                return Impossible(texts, (*lines, f"false: {row.text} gives {row.total}, the others give {total}"))
    return None


def _answered(task: SetAsked, diagram: _Diagram, wanted: frozenset[Region], value: Fraction) -> Derived:
    working = diagram.working
    name = task.named or f"n({set_text(task.of)})"
    ordered = sorted(wanted, reverse=True)
    if all(region in diagram.known for region in ordered):
        parts = [text_of(diagram.known[region].constant) for region in ordered]
        total = sum((diagram.known[region].constant for region in ordered), Fraction(0))
        require(total == value, f"{name}")
        said = f"{name} = {' + '.join(parts)}" + (f" = {text_of(total)}" if len(parts) > 1 else "")
    else:
        said = f"{name} = {text_of(value)}"
    before = tuple(step.statement for step in working.steps)
    working.say(said, text_of(value), before or working.used, StepKind.CONCLUSION)
    require(value >= 0 and value.denominator == 1, f"{name} as a number of things")
    if task.chance:
        return _chance(value, diagram)
    answer = Answer(text_of(value), number(value))
    return working.derived(answer, confirmed_by="the statements solved as equations in the regions of the diagram")


def _chance(value: Fraction, diagram: _Diagram) -> Derived:
    """The number in the set over the number of all; the shares of all regions make up 1."""
    every = frozenset(regions(diagram.names))
    whole = settled(diagram.rows, every)
    if whole is None or whole <= 0:
        raise NoValue("how many there are in all")
    shares = [diagram.known[region].constant / whole for region in every if region in diagram.known]
    require(len(shares) < len(every) or sum(shares, Fraction(0)) == 1, "the shares of the regions")
    text = f"{text_of(value)}/{text_of(whole)}"
    diagram.working.say(f"probability = {text}", text)
    share = whole_or_fraction(value / whole)
    if write(share) != text:
        diagram.working.conclude(f"= {write(share)}", write(share))
    answer = Answer(write(share), share)
    return diagram.working.derived(answer, confirmed_by="the statements solved as equations in the regions")


def _open(task: SetAsked, rows: Sequence[Row], wanted: frozenset[Region], names: Sequence[str]) -> Outcome:
    """Two ways to fill the diagram that give different answers."""
    found: dict[int, Mapping[Region, int]] = {}
    for filled in _fillings(rows, regions(names)):
        found.setdefault(sum(filled[region] for region in wanted), filled)
        if len(found) == 2:
            break
    if len(found) < 2:
        raise NoValue("the numbers leave the answer open, and no two cases were found")
    name = task.named or f"n({set_text(task.of)})"
    cases = tuple(
        Case(
            "; ".join(f"{region_text(region, names)}: {count}" for region, count in filled.items())
            + f" gives {name} = {value}",
            (Answer(str(value), number(value)),),
        )
        for value, filled in sorted(found.items())
    )
    return NotDetermined(cases)


def _fillings(rows: Sequence[Row], order: Sequence[Region]) -> "list[dict[Region, int]]":
    """Whole numbers for the regions that meet every statement; a few of them."""
    limit = int(max((row.total for row in rows), default=Fraction(0)))
    results: list[dict[Region, int]] = []
    tried = 0

    def place(at: int, filled: dict[Region, int]) -> None:
        nonlocal tried
        tried += 1
        if tried > 20_000 or len(results) >= 200:
            return
        if at == len(order):
            results.append(dict(filled))
            return
        region = order[at]
        low, high = 0, limit
        for row in rows:
            if region not in row.held:
                continue
            rest = int(row.total) - sum(filled[one] for one in row.held if one in filled)
            high = min(high, rest)
            if all(one in filled or one == region for one in row.held):
                low = max(low, rest)
        for count in range(low, high + 1):
            filled[region] = count
            place(at + 1, filled)
            del filled[region]

    place(0, {})
    return results
