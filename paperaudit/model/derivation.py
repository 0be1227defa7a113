"""How an answer was reached: a pupil's lines with reasons, and the outcomes that a strand may return."""

from dataclasses import dataclass, field
from enum import Enum
from typing import TypeAlias

from paperaudit.model.expression import Expression


@dataclass(frozen=True, slots=True)
class Answer:
    """One derived answer. `text` is as printed: 68°, x = 5, 7/12, 3√5 ≈ 6.708, yes.

    `letter` is the unknown it gives a value to, or "" for the size of a quantity. `value` is the
    bare exact value with its unit; None for a verdict in words (yes, proved, no solution). `rounded`
    says that the way to it led over rounded numbers, so that `value` is known to some twelve figures only.
    `kind` names how a stated answer is compared with it where it is no single value (`maths/answer_kinds/`);
    `of` is the number of the ask that it answers where a part has several (`model/each_asked.py`), from 0.
    """

    text: str
    value: Expression | None = None
    letter: str = ""
    rounded: bool = False
    kind: str = ""
    of: int = 0


@dataclass(frozen=True, slots=True)
class Reason:
    """The name of a reason in `schemes/reasons/` and what it is about: ("alternate-angles", "AB ∥ CD").

    `about` fills the wording's one slot; it is "" where the wording needs none.
    """

    name: str
    about: str = ""


class StepKind(Enum):
    """What a line of working is, for the allocation of marks."""

    GIVEN = "given"  # a fact copied from the question
    STATEMENT = "statement"  # a statement about the figure that needs a reason
    EQUATION = "equation"  # an equation formed, with its reason
    ALGEBRA = "algebra"  # a line of solving or simplifying
    CALCULATION = "calculation"  # arithmetic
    CONSTRUCTION = "construction"  # a line drawn in to help
    CONCLUSION = "conclusion"  # the answer in the form asked


@dataclass(frozen=True, slots=True)
class Step:
    """One line that a pupil writes.

    `uses` holds the texts of the givens and earlier statements that the line rests on; `value` is
    the value or form that it arrives at, "" where it arrives at none. `skill` names the skill that
    it shows, as in `schemes/skills.yaml`, "" for none of its own.
    """

    statement: str
    kind: StepKind
    reason: Reason | None = None
    uses: tuple[str, ...] = ()
    value: str = ""
    skill: str = ""


@dataclass(frozen=True, slots=True)
class Derivation:
    """Lines that lead from the givens to the answers, and how these were confirmed.

    `confirmed_by` names the second, independent way in words ("measured on the figure drawn from
    the givens"). `givens_used` holds the texts of the givens that the lines rest on.
    """

    steps: tuple[Step, ...]
    confirmed_by: str
    givens_used: tuple[str, ...] = ()


Position: TypeAlias = tuple[str, float, float]


@dataclass(frozen=True, slots=True)
class Case:
    """One figure or assignment that meets every given, measured.

    `description` says it in words ("∠ABC = 40° gives ∠BAC = 75°"), `figure` holds its coordinates.
    """

    description: str
    answers: tuple[Answer, ...] = ()
    figure: tuple[Position, ...] = ()


@dataclass(frozen=True, slots=True)
class Derived:
    """The answer, confirmed twice. A single `Derivation` is the rule; more are alternatives."""

    answers: tuple[Answer, ...]
    derivations: tuple[Derivation, ...]
    figure: tuple[Position, ...] = ()


@dataclass(frozen=True, slots=True)
class Impossible:
    """Nothing satisfies the givens. `clash` is a smallest set of their texts that cannot hold together.

    `why` are the lines that show it, in words, last the contradiction.
    """

    clash: tuple[str, ...]
    why: tuple[str, ...]
    suggestion: str = ""


@dataclass(frozen=True, slots=True)
class NotDetermined:
    """Infinitely many answers: two measured cases, and a given that would settle it where one would."""

    cases: tuple[Case, ...]
    missing: str = ""


@dataclass(frozen=True, slots=True)
class Several:
    """Finitely many answers, each with a case that shows it."""

    answers: tuple[Answer, ...]
    cases: tuple[Case, ...]
    derivations: tuple[Derivation, ...] = ()


@dataclass(frozen=True, slots=True)
class NotRead:
    """The program could not read or derive the part, and what stopped it."""

    why: str


Outcome: TypeAlias = Derived | Impossible | NotDetermined | Several | NotRead


class Agreement(Enum):
    """Whether two answers are the same."""

    AGREES = "agrees"
    DIFFERS = "differs"
    CANNOT_TELL = "cannot tell"


@dataclass(frozen=True, slots=True)
class Comparison:
    """The stated answer against the derived one, and why it was judged so."""

    agreement: Agreement
    why: str = ""
    missing: tuple[Answer, ...] = field(default=())
