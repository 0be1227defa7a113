"""Lines of algebra that follow on each other."""

from dataclasses import dataclass, field

from paperaudit.maths.write import write
from paperaudit.model.derivation import Answer, Derivation, Derived, Step, StepKind
from paperaudit.model.expression import Expression, Relation


@dataclass(slots=True)
class Working:
    """Lines of one skill, each resting on the one before unless it says otherwise."""

    skill: str
    used: tuple[str, ...] = ()
    steps: list[Step] = field(default_factory=list)

    def say(
        self,
        line: str | Expression | Relation,
        value: str = "",
        uses: tuple[str, ...] | None = None,
        kind: StepKind = StepKind.ALGEBRA,
        skill: str = "",
    ) -> str:
        """Adds a line unless it is the one already there, and gives its text back."""
        text = line if isinstance(line, str) else write(line)
        if self.steps and self.steps[-1].statement.rpartition(": ")[2] == text:
            return self.steps[-1].statement
        before = (self.steps[-1].statement,) if self.steps else self.used
        self.steps.append(Step(text, kind, None, before if uses is None else uses, value, skill or self.skill))
        return text

    def given(self, line: str | Expression | Relation) -> str:
        """The equation as the paper has it."""
        if self.steps:
            return self.say(line)
        return self.say(line, kind=StepKind.GIVEN)

    def conclude(self, line: str, value: str = "") -> str:
        """The line that states the answer."""
        return self.say(line, value or line, kind=StepKind.CONCLUSION)

    def derived(self, *answers: Answer, confirmed_by: str) -> Derived:
        """The outcome with these answers."""
        return Derived(answers, (Derivation(tuple(self.steps), confirmed_by, self.used),))
