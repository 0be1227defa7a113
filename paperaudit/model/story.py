"""A word problem as it was read: what is sought, what each sentence says of it, and what is asked."""

from dataclasses import dataclass
from fractions import Fraction
from typing import Literal, TypeAlias

from paperaudit.model.expression import Number
from paperaudit.model.topic import TopicTask

Sign: TypeAlias = Literal["any", "not negative", "positive"]


@dataclass(frozen=True, slots=True)
class Sought:
    """A size that a story speaks of, whether it is told or not.

    `meaning` is how a pupil names it ("Ann's age now"), `kind` what has its sign and wholeness ("an age").
    """

    key: str
    meaning: str
    unit: str = ""
    sign: Sign = "any"
    whole: bool = False
    kind: str = "a number"


@dataclass(frozen=True, slots=True)
class Amount:
    """A number that a sentence tells, in `unit`."""

    number: Number
    unit: str = ""


@dataclass(frozen=True, slots=True)
class Named:
    """The size with this key."""

    key: str


@dataclass(frozen=True, slots=True)
class Scaled:
    """So many times a size: twice, half of, 40% of."""

    factor: Number
    of: "Size"


@dataclass(frozen=True, slots=True)
class Added:
    """The sum of sizes."""

    sizes: "tuple[Size, ...]"


@dataclass(frozen=True, slots=True)
class Taken:
    """A size less another one."""

    size: "Size"
    less: "Size"


@dataclass(frozen=True, slots=True)
class Multiplied:
    """The product of two sizes."""

    first: "Size"
    second: "Size"


@dataclass(frozen=True, slots=True)
class Divided:
    """One size over another."""

    size: "Size"
    by: "Size"


@dataclass(frozen=True, slots=True)
class Squared:
    """The square of a size."""

    size: "Size"


@dataclass(frozen=True, slots=True)
class Later:
    """An age `years` from now, before now where negative."""

    key: str
    years: Number


@dataclass(frozen=True, slots=True)
class Figures:
    """The number that figures make when they are written down in this order, the highest place first."""

    keys: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Extreme:
    """The largest or the smallest of sizes, whichever of them it turns out to be; only ever asked for."""

    keys: tuple[str, ...]
    largest: bool


Size: TypeAlias = Amount | Named | Scaled | Added | Taken | Multiplied | Divided | Squared | Later | Figures | Extreme


@dataclass(frozen=True, slots=True)
class Same:
    """Two sizes are equal."""

    left: Size
    right: Size


@dataclass(frozen=True, slots=True)
class Consecutive:
    """Whole numbers that follow each other in steps of `step`; all even or odd where `parity` says so."""

    keys: tuple[str, ...]
    step: int = 1
    parity: Literal["", "even", "odd"] = ""


@dataclass(frozen=True, slots=True)
class Mover:
    """Somebody on a straight road: leaves `start` from the road's zero, `late` hours after the clock starts.

    `direction` is 1 away from the zero, −1 towards it.
    """

    start: Size
    direction: Literal[1, -1]
    speed: Size
    late: Size


@dataclass(frozen=True, slots=True)
class Gap:
    """When the clock shows `time`, one mover is `distance` ahead of the other on the road."""

    first: Mover
    second: Mover
    time: Size
    distance: Size


@dataclass(frozen=True, slots=True)
class Stream:
    """`distance` takes `time` at `speed`, helped (1) or held up (−1) by a current or wind of `flow`."""

    speed: Size
    flow: Size
    direction: Literal[1, -1]
    distance: Size
    time: Size


@dataclass(frozen=True, slots=True)
class Job:
    """Who works on one job: each alone takes `alone` and works `hours`; −1 undoes it, as a drain does."""

    workers: "tuple[tuple[Size, Size, Literal[1, -1]], ...]"


@dataclass(frozen=True, slots=True)
class NotLess:
    """One size is at least another: the length of a rectangle of which nothing else tells the sides apart."""

    key: str
    than: str


Claim: TypeAlias = Same | NotLess | Consecutive | Gap | Stream | Job


@dataclass(frozen=True, slots=True)
class Said:
    """A sentence of the story and what it claims; `text` is in the paper's words."""

    text: str
    claim: Claim


@dataclass(frozen=True, slots=True)
class Wanted:
    """A size that is asked for, with its name in an answer ("Ann's age")."""

    size: Size
    meaning: str
    unit: str = ""


@dataclass(frozen=True, slots=True)
class StoryTask(TopicTask):
    """A story in words, read sentence by sentence; `in_order` says that answers come in the order asked."""

    sought: tuple[Sought, ...]
    said: tuple[Said, ...]
    wanted: tuple[Wanted, ...]
    in_order: bool = True

    def in_words(self) -> str:
        """What is asked for: "Ann's age and Ben's age"."""
        return " and ".join(wanted.meaning for wanted in self.wanted)


NOTHING = Amount(Number(Fraction(0)))
