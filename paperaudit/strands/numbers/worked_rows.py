"""The lines from a row of numbers to what it comes to."""

from paperaudit.errors import PaperauditError
from paperaudit.maths.exact import NotSurd
from paperaudit.maths.measure import UnitClash
from paperaudit.maths.parse import read_expression
from paperaudit.maths.write import write
from paperaudit.strands.calculating import calculated
from paperaudit.strands.finishing import ChecksDisagree
from paperaudit.strands.numbers.working import Working


def say_worked(row: str, result: str, working: Working) -> None:
    """Works a row that has just been said out to its result, one operation after the other.

    >>> working = Working("")
    >>> say_worked("10 × (2 × 5 + 19 × 3)", "670", working)
    >>> [step.statement for step in working.steps]
    ['= 10 × (10 + 57)', '= 10 × 67', '= 670']
    """
    try:
        lines = [write(line) for line in calculated(read_expression(row))[1:]]
    except (PaperauditError, NotSurd, UnitClash, ChecksDisagree):
        lines = []
    for line in lines:
        if line not in (row, result) and not line.endswith(" ÷ 1"):
            working.say(f"= {line}", line)
    working.say(f"= {result}", result)
