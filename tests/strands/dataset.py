"""Questions of mathematics_dataset in their own words, put to the reader and the strands.

python -m tests.strands.dataset [TYPE…] [COUNT] [--show] prints what becomes of each type ("numbers" stands for all
of its types); --show adds the questions that were not right.
"""

import random
import sys
import time
from collections.abc import Sequence
from contextlib import redirect_stderr
from dataclasses import dataclass, field
from io import StringIO
from typing import Any, Literal

import numpy as np
import sympy.core.random

from paperaudit.audit import audit
from paperaudit.errors import InputError
from paperaudit.model.audited import AuditedPart
from paperaudit.model.derivation import NotRead
from paperaudit.model.paper import Line, Paper, Part, Question, Section
from tests.strands.dataset_shim import generators

LONGEST_QUESTION, LONGEST_ANSWER = 160, 30
"""The package leaves out questions and answers with more characters; so do we."""

Found = Literal["right", "declined", "wrong"]


@dataclass(frozen=True, slots=True)
class Generated:
    """A question with the answer that its maker gives."""

    text: str
    answer: str


@dataclass(slots=True)
class Tally:
    """What became of the questions of one type; `others` are those that were not right, with the reason."""

    kind: str
    counts: dict[Found, int] = field(default_factory=lambda: {"right": 0, "declined": 0, "wrong": 0})
    others: list[str] = field(default_factory=list)
    seconds: float = 0.0

    @property
    def right(self) -> float:
        """The share of right ones."""
        return self.counts["right"] / max(1, sum(self.counts.values()))


def types_named(names: Sequence[str]) -> list[str]:
    """The question types that these names begin: "numbers", "numbers.gcd"; all of them for no name."""
    return [kind for kind in generators() if not names or any(kind.startswith(name) for name in names)]


def questions(kind: str, count: int = 50, seed: int = 1) -> list[Generated]:
    """Seeded questions of a type, the same ones each time but for the order of "Let …" sentences in composed ones."""
    make = generators()[kind]
    before, numpy_before = random.getstate(), np.random.get_state()
    random.seed(f"{kind} {seed}")
    np.random.seed(random.randrange(2**32))
    sympy.core.random.seed(random.randrange(2**32))
    try:
        found: list[Generated] = []
        while len(found) < count:
            problem = _made(make)
            if len(problem.text) <= LONGEST_QUESTION and len(problem.answer) <= LONGEST_ANSWER:
                found.append(problem)
        return found
    finally:
        random.setstate(before)
        np.random.set_state(numpy_before)


def _made(make: Any) -> Generated:
    with redirect_stderr(StringIO()):
        problem = make()
    return Generated(str(problem.question), str(problem.answer))


def audited(question: Generated) -> AuditedPart | InputError:
    """The question as a paper of one part, with the maker's answer as its key, through the whole audit."""
    part = Part(id="1", number="", text=Line(question.text), answer=Line(question.answer), marks=1)
    paper = Paper("Generated questions", (Section((Question("1", (part,)),)),))
    try:
        return audit(paper).parts[0]
    except InputError as error:
        return error


def judge(question: Generated) -> tuple[Found, str]:
    """Right if the key is confirmed, declined if the part is not read, else wrong; and why."""
    part = audited(question)
    if isinstance(part, InputError):
        return "declined", str(part)
    if part.verdict == "confirmed":
        return "right", ""
    if part.verdict == "not-read":
        why = part.outcome.why if isinstance(part.outcome, NotRead) else part.comparison and part.comparison.why
        return "declined", why or ""
    answers = [answer.text for answer in getattr(part.outcome, "answers", ())]
    return "wrong", f"{part.verdict} {answers} {part.outcome if not answers else ''}"


def tally(kind: str, count: int = 50, seed: int = 1) -> Tally:
    """What becomes of so many seeded questions of one type."""
    table = Tally(kind)
    for question in questions(kind, count, seed):
        began = time.process_time()
        found, why = judge(question)
        table.seconds += time.process_time() - began
        table.counts[found] += 1
        if found != "right":
            table.others.append(f"{found}: {question.text} [{question.answer}] {why}")
    return table


def main(words: list[str]) -> None:
    """Prints the table."""
    count = next((int(word) for word in words if word.isdigit()), 50)
    names = [word for word in words if not word.isdigit() and not word.startswith("--")]
    print(f"{'':34}{'right':>6}{'declined':>10}{'wrong':>7}{'ms each':>9}")
    total = Tally("all")
    for kind in types_named(names):
        table = tally(kind, count)
        counts = table.counts
        print(
            f"{kind:34}{counts['right']:>6}{counts['declined']:>10}{counts['wrong']:>7}"
            f"{1000 * table.seconds / count:>9.0f}",
            flush=True,
        )
        shown = table.others if "--show" in words else [line for line in table.others if line.startswith("wrong")]
        print("".join(f"    {line[:400]}\n" for line in shown), end="")
        for found, number in counts.items():
            total.counts[found] += number
    print(f"{'all':34}" + "".join(f"{number:>8}" for number in total.counts.values()) + f"  {total.right:.1%} right")


if __name__ == "__main__":
    main(sys.argv[1:])
