"""The strands in the order in which they are asked whether a part is theirs."""

from paperaudit.model.ask import Ask, Establish, Find, Rounded, Solve, Subject, Transform, WriteAs
from paperaudit.model.derivation import Impossible, NotDetermined, NotRead, Outcome
from paperaudit.model.each_asked import EachAsked
from paperaudit.model.reading import Reading
from paperaudit.model.topic import TopicTask
from paperaudit.strands.algebra.strand import AlgebraStrand
from paperaudit.strands.by_task import Awaited
from paperaudit.strands.chained import ChainedStrand
from paperaudit.strands.equations import EquationsStrand
from paperaudit.strands.geometry import GeometryStrand
from paperaudit.strands.number import NumberStrand
from paperaudit.strands.numbers.claims import NumericClaimsStrand
from paperaudit.strands.strand import FindsOtherWays, Strand

STRANDS: tuple[Strand, ...] = (
    Awaited("stories", "stories.strand", ("story",)),
    NumericClaimsStrand(),
    ChainedStrand(lambda reading: derive(reading)),
    AlgebraStrand(),
    Awaited("coordinates", "plane.strand", ("coordinates_task",)),
    GeometryStrand(),
    EquationsStrand(),
    NumberStrand(),
    Awaited("number", "numbers.strand", ("number_task", "number_form_task", "accuracy_task", "set_task")),
    Awaited("ratio and measures", "ratios.strand", ("reckoning",)),
    Awaited("statistics", "statistics.strand", ("statistics_task", "spread_task")),
    Awaited("probability", "chance.strand", ("chance_task", "event_task", "counting_task")),
    Awaited("sequences", "sequences.strand", ("sequence_task",)),
    Awaited("functions", "functions.strand", ("function_task", "graph_task")),
    Awaited("trigonometry", "waves.strand", ("trig_task",)),
    Awaited("transformations", "movements.strand", ("movement_task",)),
)
"""The first that recognises a part takes it: figures before letters, letters before plain numbers."""


def derive(reading: Reading) -> tuple[str, Outcome]:
    """The name of the strand that takes a part, and what it makes of it; "" and why where none does."""
    if reading.ask is None:
        return "", NotRead("no mathematical ask: nothing says what is to be found")
    if isinstance(reading.ask.task, EachAsked):
        from paperaudit.strands.each_asked import derive_each

        return derive_each(reading.ask.task, derive)
    for strand in STRANDS:
        if strand.recognises(reading):
            outcome = strand.derive(reading)
            if reading.ask.reworded and isinstance(outcome, Impossible | NotDetermined):
                # A fault is found only in the paper's own words, not in what they were taken to say.
                return strand.name, NotRead(f"what it was read as has not one answer: {reading.ask.read_as}")
            return strand.name, outcome
    return "", NotRead(f"no strand takes this yet: {_in_words(reading.ask)}, “{reading.ask.text}”")


def with_other_ways(name: str, reading: Reading, outcome: Outcome) -> Outcome:
    """The outcome of a strand with other derivations of the same answer where the strand finds some."""
    for strand in STRANDS:
        if strand.name == name and isinstance(strand, FindsOtherWays):
            return strand.with_other_ways(reading, outcome)
    return outcome


def _in_words(ask: Ask) -> str:
    match ask.task:
        case Find():
            return "something to be found"
        case Establish(_, how):
            return "a claim to decide" if how == "decide" else f"a claim to {how}"
        case Solve():
            return "an equation or inequality to solve"
        case Transform(command):
            return f"an expression to {command}"
        case Rounded():
            return "a number to round"
        case WriteAs(_, form):
            return f"something to write as {form}" if not form.startswith("in ") else f"something to write {form}"
        case Subject(letter):
            return f"a formula with {letter} to be made the subject"
        case TopicTask():
            return ask.task.in_words()
