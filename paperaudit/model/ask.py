"""What a part asks the pupil to do."""

from dataclasses import dataclass, field
from typing import Literal, TypeAlias

from paperaudit.model.expression import Expression, Number, Relation
from paperaudit.model.fact import Fact
from paperaudit.model.place import NOWHERE, Place
from paperaudit.model.topic import TopicTask


@dataclass(frozen=True, slots=True)
class Accuracy:
    """The accuracy asked for: to 2 decimal places, to 3 significant figures, to the nearest 10.

    `amount` is a count of places or figures, or the text of the step for "nearest" ("10", "cm").
    """

    kind: Literal["decimal places", "significant figures", "nearest"]
    amount: str


@dataclass(frozen=True, slots=True)
class Find:
    """The size of quantities or letters: ∠ABC, x, AB, area of △ABC; or the value of a sum of them."""

    wanted: tuple[Expression, ...]


@dataclass(frozen=True, slots=True)
class Establish:
    """A claim to show or prove, or (`decide`) to be answered with yes or no."""

    claims: tuple[Fact, ...]
    how: Literal["show", "prove", "decide"]


@dataclass(frozen=True, slots=True)
class Solve:
    """Equations or inequalities to be solved, for `letters` where the paper names them."""

    relations: tuple[Relation, ...]
    letters: tuple[str, ...] = ()


Command: TypeAlias = Literal["simplify", "expand", "factorise", "evaluate"]


@dataclass(frozen=True, slots=True)
class Transform:
    """An expression to be simplified, expanded, factorised or worked out."""

    command: Command
    expression: Expression


@dataclass(frozen=True, slots=True)
class Rounded:
    """A number to be rounded to the ask's accuracy."""

    expression: Expression


@dataclass(frozen=True, slots=True)
class WriteAs:
    """An expression to be written in another form, by the name of that form.

    `form` is one of "decimal", "fraction", "percentage", "mixed number", "improper fraction",
    "lowest terms", or another form that a strand knows.
    """

    expression: Expression
    form: str


@dataclass(frozen=True, slots=True)
class Subject:
    """A formula to be rearranged so that `letter` stands alone."""

    letter: str
    relation: Relation


Task: TypeAlias = Find | Establish | Solve | Transform | Rounded | WriteAs | Subject | TopicTask


@dataclass(frozen=True, slots=True)
class Ask:
    """A task with what goes with it: accuracy, unit asked for, whether reasons are required.

    `text` is what is asked, in the paper's words. `read_as` is what a story in several sentences was taken
    for, in mathematics ("x + (x + 3) = 25"), to be shown to the user; "" where the words say it themselves.
    `pi` is the value that the paper has π taken for (3.14, 22/7), None where it is π itself. `reworded` says that
    it was read in other words than the paper's.
    """

    task: Task
    text: str
    accuracy: Accuracy | None = None
    unit: str = ""
    reasons: bool = False
    read_as: str = ""
    place: Place = field(default=NOWHERE, compare=False)
    pi: Number | None = None
    reworded: bool = False
