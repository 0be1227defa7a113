"""How findings call things: parts and questions by their printed numbers, lists in words."""

from collections.abc import Sequence

from paperaudit.checks.grounds.numbering import REPEATED
from paperaudit.maths.options import key_letter
from paperaudit.model.derivation import Answer
from paperaudit.model.paper import Part, Question


def called(question: Question, part: Part) -> str:
    """A part as findings call it: "Part 1.a", or "Question 2" where it is all of its question.

    >>> called(Question("2", ()), Part("2", "2"))
    'Question 2'
    """
    return f"{'Question' if is_whole(question, part) else 'Part'} {as_printed(part.id)}"


def as_printed(id: str) -> str:
    """A number as the paper prints it: without the sign that keeps the ids of repeated numbers apart.

    >>> as_printed("1′.a")
    '1.a'
    """
    return id.replace(REPEATED, "")


def is_whole(question: Question, part: Part) -> bool:
    """Whether a part is all of its question, which then has no parts of its own."""
    return "." not in part.id.removeprefix(question.number)


def stated_by_key(part: Part) -> str:
    """The key's answer, an option with what it says: "62°", "B (50°)"."""
    if part.answer is None:
        return ""
    letter = key_letter(part)
    return f"{letter} ({dict(part.options)[letter].text})" if letter else part.answer.text


def listed(items: Sequence[str], last: str = "and") -> str:
    """Items in a sentence.

    >>> listed(["a", "b", "c"])
    'a, b and c'
    """
    if len(items) < 2:
        return "".join(items)
    return f"{', '.join(items[:-1])} {last} {items[-1]}"


def counted(amount: int, thing: str) -> str:
    """A number of things.

    >>> counted(1, "mark"), counted(3, "mark")
    ('1 mark', '3 marks')
    """
    return f"{amount} {thing}" if amount == 1 else f"{amount} {thing}s"


def valued(asked: str, answer: Answer) -> str:
    """An answer with what it answers, where its text does not say so itself: "∠ABC = 68°", "x = 5".

    `asked` is the ask as printed; one that is no quantity (a command) leaves the answer alone.
    """
    says_itself = "=" in answer.text or bool(answer.letter) or answer.value is None
    is_command = " " in asked.strip() and not asked.startswith("∠")
    if says_itself or not asked or is_command:
        return answer.text
    return f"{asked} = {answer.text}"
