"""A formula with a letter made its subject: r = √(A/π), with ± or without where the other letters are sizes."""

import re

from paperaudit.errors import ExpressionNotRead
from paperaudit.maths.letters_in_roots import same_for_positive
from paperaudit.maths.parse import read_expression, read_relations
from paperaudit.maths.write import write
from paperaudit.model.ask import Ask
from paperaudit.model.derivation import Agreement, Answer, Comparison
from paperaudit.model.expression import Expression, Letter, letters_of

_SIGNS = re.compile(r"±\s*|\+/-\s*")


def compare_formula(stated: str, derived: tuple[Answer, ...], ask: Ask) -> Comparison:
    """A stated formula, or its right side alone, against the derived one."""
    answer = derived[0]
    assert answer.value is not None
    try:
        value = _right_side(_SIGNS.sub("", stated.strip().rstrip(".")), answer.letter)
    except ExpressionNotRead as error:
        return Comparison(Agreement.CANNOT_TELL, f"the stated answer was not read: {error}")
    if value is None:
        return Comparison(Agreement.DIFFERS, f"{answer.letter} is not the subject of {stated.strip()}")
    if answer.letter in letters_of(value):
        return Comparison(Agreement.DIFFERS, f"{answer.letter} stands on both sides")
    same = same_for_positive(value, answer.value)
    if same is None:
        return Comparison(Agreement.CANNOT_TELL, f"“{stated.strip()}” could not be compared with {answer.text}")
    return (
        Comparison(Agreement.AGREES) if same else Comparison(Agreement.DIFFERS, f"{write(value)} is not {answer.text}")
    )


def _right_side(text: str, letter: str) -> Expression | None:
    if "=" not in text:
        return read_expression(text)
    relations = read_relations(text)
    if relations[0].left == Letter(letter):
        return relations[-1].right
    return relations[0].left if relations[-1].right == Letter(letter) else None
