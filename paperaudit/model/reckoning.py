"""What is asked about measures, money, ratios and solids: named amounts, and which of them are wanted."""

from dataclasses import dataclass

from paperaudit.model.expression import Expression
from paperaudit.model.topic import TopicTask


@dataclass(frozen=True, slots=True)
class Amount:
    """An amount by its name: the radius of a cylinder, the rate of a loan."""

    name: str
    value: Expression


@dataclass(frozen=True, slots=True)
class Reckoning(TopicTask):
    """Amounts of one kind of question, with those that are wanted.

    `kind` names what it is about ("cylinder", "simple interest"), `details` what changes its laws ("open",
    "monthly"). Amounts of one name stand in the order of the question.

    >>> Reckoning("cone", (), ("volume",)).in_words()
    'the volume: cone'
    """

    kind: str
    amounts: tuple[Amount, ...]
    wanted: tuple[str, ...]
    details: tuple[str, ...] = ()

    def in_words(self) -> str:
        """What is asked for, as half a sentence."""
        return f"the {' and the '.join(self.wanted)}: {self.kind}"

    def all_of(self, name: str) -> tuple[Expression, ...]:
        """The amounts of one name, in order."""
        return tuple(amount.value for amount in self.amounts if amount.name == name)

    def one(self, name: str) -> Expression | None:
        """The only amount of a name, None where there is none or more."""
        found = self.all_of(name)
        return found[0] if len(found) == 1 else None
