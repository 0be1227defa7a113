"""What the givens settle one after the other: letters by their equations, functions by their formulas."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from fractions import Fraction

from paperaudit.errors import NoValue
from paperaudit.maths.algebra.terms import NotTerms, expression_of, terms_of
from paperaudit.maths.exact import rational_value
from paperaudit.maths.linear_terms import NotLinear
from paperaudit.maths.number_forms import whole_or_fraction
from paperaudit.maths.write import write
from paperaudit.model.derivation import Step, StepKind
from paperaudit.model.expression import Expression, Letter, Product, Relation, letters_of
from paperaudit.strands.calculating import calculated, calculation_steps, continued_steps, skill_of
from paperaudit.strands.equation_checks import letters_in
from paperaudit.strands.equation_kinds import refusal_of_relation
from paperaudit.strands.functions_checked import confirm_applied
from paperaudit.strands.functions_given import Formula, NotApplied, applied, derivative_of, named
from paperaudit.strands.solving_steps import solved
from paperaudit.strands.substitution import substituted
from paperaudit.strands.unknowns import Stated

_ORDINALS = ("first", "second", "third")
_MOST_TOGETHER = 3


@dataclass(slots=True)
class Settling:
    """Equations and functions still `waiting` and `open`, and what they have led to, with the lines to it.

    `stated` has the functions as the givens have them, `functions` those whose formula is explicit; `used` the texts
    of the givens that the values and formulas rest on. `linked` says that an equation was linear only with values of
    others put in.
    """

    waiting: list[Stated]
    stated: Mapping[str, Formula]
    open: dict[str, Formula]
    functions: dict[str, Formula] = field(default_factory=dict)
    values: dict[str, Expression] = field(default_factory=dict)
    steps: list[Step] = field(default_factory=list)
    used: list[str] = field(default_factory=list)
    linked: bool = False

    @classmethod
    def of(cls, equations: Sequence[Stated], functions: Mapping[str, Formula]) -> "Settling":
        """Everything that follows from equations and functions. Raises what stops an equation that can be worked."""
        whole = cls(list(equations), functions, dict(functions))
        while whole._equation() or whole._function(False) or whole._function(True):
            pass
        return whole

    @property
    def numbers(self) -> dict[str, Fraction]:
        """The values of the letters."""
        return {name: _exact(value) for name, value in self.values.items()}

    def put_in(self, expression: Expression, kept: Sequence[str] = ()) -> Expression:
        """The expression with formulas and numbers in place of functions and letters, confirmed at numbers.

        Letters of `kept` stay. Raises NotApplied where a function is not known, ChecksDisagree where numbers differ.
        """
        inside = applied(expression, self.functions, frozenset(self.open))
        values = {name: value for name, value in self.values.items() if name not in kept}
        changed = substituted(inside, values)
        if inside != expression:
            confirm_applied(expression, changed, self.stated, {name: _exact(value) for name, value in values.items()})
        return changed

    def relation(self, relation: Relation, kept: Sequence[str] = ()) -> Relation:
        """An equation with formulas and numbers put in."""
        return Relation(self.put_in(relation.left, kept), relation.sign, self.put_in(relation.right, kept))

    def printed(self, expression: Expression) -> str:
        """How an expression with calls of functions is printed."""
        return write(named(expression, {*self.stated}))

    def _equation(self) -> bool:
        """Works out one equation, or several together; whether something was settled."""
        return any(self._settle(stated) for stated in list(self.waiting))

    def _settle(self, stated: Stated) -> bool:
        relation = self._known(stated)
        names = letters_in(relation) if relation is not None else ()
        if relation is None or not names:
            return False
        if len(names) == 1 and (value := _beside(relation, names[0])) is not None:
            self._calculate(names[0], value, stated)
            return True
        together = [
            (other, one) for one in self.waiting
            if (other := self._known(one)) is not None and set(letters_in(other)) <= set(names)
        ]  # fmt: skip
        if len(together) < len(names) or len(names) > _MOST_TOGETHER:
            return False
        chosen = together[: len(names)]
        try:
            solution = solved([one for one, _ in chosen], names, [one.text for _, one in chosen])
        except NotLinear:
            return False
        if isinstance(solution.values, str):
            raise NoValue("equations without a single solution among the givens")
        self.steps.extend(solution.steps)
        self.linked = self.linked or any(bool(refusal_of_relation(one.relation)) for _, one in chosen)
        self._record(solution.values, [one for _, one in chosen])
        return True

    def _known(self, stated: Stated) -> Relation | None:
        """The equation with all that is known put in; None where a function in it is not, or it is no equation."""
        try:
            relation = self.relation(stated.relation)
        except NotApplied:
            return None
        return relation if relation.sign == "=" else None

    def _calculate(self, name: str, value: Expression, stated: Stated) -> None:
        lines = calculated(value)
        said = _beside(stated.relation, name)
        if said is not None and letters_of(said):
            texts = (stated.text, *self._texts(said))
            put_in = Step(f"{name} = {write(value)}", StepKind.ALGEBRA, None, texts, "", "substitution")
            self.steps.extend((put_in, *continued_steps(lines, skill_of(value), put_in.statement)))
        else:
            self.steps.extend(calculation_steps(lines, skill_of(value), (stated.text,), name))
        self._record({name: _exact(lines[-1])}, [stated])

    def _texts(self, expression: Expression) -> tuple[str, ...]:
        """The texts of the givens whose functions are called in an expression."""
        return tuple(self.stated[name].text for name in letters_of(expression) if name in self.stated)

    def _record(self, values: Mapping[str, Fraction], chosen: Sequence[Stated]) -> None:
        for one in chosen:
            self.used.append(one.text)
            for side in (one.relation.left, one.relation.right):
                self.used.extend(self._texts(side))
            self.waiting.remove(one)
        self.values.update({name: whole_or_fraction(value) for name, value in values.items()})

    def _function(self, with_letters: bool) -> bool:
        """Makes one formula explicit; whether one was. `with_letters` allows for letters without a value."""
        for name, one in list(self.open.items()):
            try:
                formula = self.put_in(one.formula, (one.letter,))
            except NotApplied:
                continue
            free = [letter for letter in letters_of(formula) if letter not in (one.letter, "π")]
            if free and not with_letters:
                continue
            try:
                self._explain(name, one, formula)
            except NotTerms:
                continue
            del self.open[name]
            return True
        return False

    def _explain(self, name: str, one: Formula, formula: Expression) -> None:
        """The lines to an explicit formula; none where the given states it."""
        call = f"{name}({one.letter})"
        start = f"{call} = " if not one.order else ""
        texts = (one.text, *self._texts(one.formula))
        lines = [self.printed(one.formula)] if formula != one.formula else []
        lines.append(write(formula))
        if formula != one.formula or one.order:
            collected = expression_of(terms_of(formula))
            lines.append(write(collected))
            formula = collected
        lines = list(dict.fromkeys(lines))
        if one.order or len(lines) > 1:
            self._say(f"{start}{lines[0]}", texts)
            for line in lines[1:]:
                self._say(f"= {line}")
        for count in range(one.order):
            formula = derivative_of(formula, one.letter)
            last = count == one.order - 1
            self._say(
                f"{call if last else f'{_ORDINALS[count]} derivative'} = {write(formula)}", skill="differentiation"
            )
        if one.order:
            confirm_applied(_call(name, one.letter), formula, self.stated, self.numbers)
        if one.order or len(lines) > 1:
            self.used.extend(texts)
        self.functions[name] = Formula(one.letter, formula, 0, one.text)

    def _say(self, statement: str, uses: tuple[str, ...] = (), skill: str = "functions") -> None:
        uses = uses or ((self.steps[-1].statement,) if self.steps else ())
        self.steps.append(Step(statement, StepKind.ALGEBRA, None, uses, statement.rpartition("= ")[2], skill))


def _call(name: str, letter: str) -> Expression:
    return Product((Letter(name), Letter(letter)))


def _beside(relation: Relation, name: str) -> Expression | None:
    """What a letter alone on one side is equal to."""
    for one, other in ((relation.left, relation.right), (relation.right, relation.left)):
        if one == Letter(name) and name not in letters_of(other):
            return other
    return None


def _exact(value: Expression) -> Fraction:
    exact = rational_value(value)
    if exact is None:
        raise NoValue(f"{write(value)} is irrational")
    return exact
