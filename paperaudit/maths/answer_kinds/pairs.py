"""Solutions in several letters as answers: x = 3, y = 4 or x = −4, y = −3; (3; 4) and (−4; −3)."""

import re

from paperaudit.errors import ExpressionNotRead
from paperaudit.maths.parse import read_expression, read_relation
from paperaudit.maths.same_value import same_value
from paperaudit.maths.verdict_words import verdict_word
from paperaudit.maths.write import write
from paperaudit.model.ask import Ask
from paperaudit.model.derivation import Agreement, Answer, Comparison
from paperaudit.model.expression import Expression, Letter

LONGEST = 500
_SEVERAL = re.compile(r"\s*\bor\b\s*|\s*\n\s*")
_PAIR = re.compile(r"\(\s*([^(),;]+|[^;]+?)\s*[;,]\s*([^(),;]+|[^;]+?)\s*\)")
_WHEN = re.compile(r"\b(?:when|if|with|then|and|where)\b|[,;]|\s{2,}")
Solution = dict[str, Expression]


def read_solutions(text: str, letters: tuple[str, ...]) -> tuple[Solution, ...]:
    """The solutions that an answer states, each with a value for each letter. Raises ExpressionNotRead.

    >>> [write(one["y"]) for one in read_solutions("(1; 2) or (3; −4)", ("x", "y"))]
    ['2', '−4']
    """
    if len(text) > LONGEST:
        raise ExpressionNotRead("an answer that is too long", LONGEST, "a shorter one")
    if verdict_word(text) == "no solution":
        return ()
    plain = re.sub(r"\(\s*[a-z]\s*[,;]\s*[a-z]\s*\)\s*=\s*", "", text.strip().rstrip("."))
    if "=" not in plain:
        found = list(_PAIR.finditer(plain))
        if not found or len(letters) != 2 or _PAIR.sub("", plain).replace("and", "").replace("or", "").strip(" ,;"):
            raise ExpressionNotRead("no pairs of values", 0, "such as x = 1, y = 2 or (1; 2)")
        return tuple({name: read_expression(pair[at + 1]) for at, name in enumerate(letters)} for pair in found)
    values: list[tuple[str, Expression]] = []
    whole = _SEVERAL.sub(" , ", _without_outer_brackets(plain))
    for piece in _WHEN.split(whole):
        if not piece or not piece.strip():
            continue
        relation = read_relation(piece.strip(), frozenset(letters))
        if not isinstance(relation.left, Letter) or relation.left.name not in letters:
            raise ExpressionNotRead(f"{piece.strip()} names no letter", 0, "such as x = 1")
        values.append((relation.left.name, relation.right))
    return _in_groups(values, letters)


def _without_outer_brackets(text: str) -> str:
    """Brackets round whole equations taken away: (x = 1, y = 2)."""
    return re.sub(r"\(([^()]*=[^()]*(?:\([^()]*\)[^()]*)*)\)", r"\1", text)


def _in_groups(values: list[tuple[str, Expression]], letters: tuple[str, ...]) -> tuple[Solution, ...]:
    """Values named one after the other as solutions, each with every letter once."""
    size = len(letters)
    if len(values) % size:
        raise ExpressionNotRead("some letter has no value", 0, "a value for every letter")
    groups = [dict(values[at : at + size]) for at in range(0, len(values), size)]
    if any(len(group) != size for group in groups):
        raise ExpressionNotRead("it is not said which values belong together", 0, "such as x = 1, y = 2")
    return tuple(groups)


def compare_solutions(stated: str, derived: tuple[Answer, ...], ask: Ask) -> Comparison:
    """Stated solutions against the derived ones, in any order; the letters stand in the answer, x y."""
    answer = derived[0]
    letters = tuple(answer.letter)
    try:
        ours, theirs = read_solutions(answer.text, letters), read_solutions(stated, letters)
    except ExpressionNotRead as error:
        return Comparison(Agreement.CANNOT_TELL, f"the stated answer was not read: {error}")
    missing = list(ours)
    for solution in theirs:
        matching = [one for one in ours if all(same_value(one[name], solution[name]) for name in letters)]
        if not matching:
            text = ", ".join(f"{name} = {write(value)}" for name, value in solution.items())
            return Comparison(Agreement.DIFFERS, f"{text} is no solution: {answer.text}")
        missing = [one for one in missing if one not in matching]
    if missing:
        return Comparison(Agreement.DIFFERS, f"not all solutions are stated: {answer.text}")
    return Comparison(Agreement.AGREES)
