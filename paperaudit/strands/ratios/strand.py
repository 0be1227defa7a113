"""The strand of ratio, percentages, money, rates, measures and solids: which derivation takes which kind."""

from collections.abc import Callable
from functools import partial

from paperaudit.model.derivation import Outcome
from paperaudit.model.reading import Reading
from paperaudit.model.reckoning import Reckoning
from paperaudit.strands.ratios import (
    bodies,
    buys,
    compound_measures,
    exchange,
    further_solids,
    hire,
    interest,
    known_shares,
    measures,
    percents,
    proportions,
    ratios,
    scales,
    similar_solids,
    solids,
    two_proportions,
    variation,
)
from paperaudit.strands.ratios.lawful import by_laws
from paperaudit.strands.ratios.motion import DENSITY, MOTION
from paperaudit.strands.refusals import or_not_read
from paperaudit.strands.statistics.changed import changed
from paperaudit.strands.statistics.five_numbers import of_five_numbers

Derive = Callable[[Reckoning, Reading], Outcome]
DERIVATIONS: dict[str, Derive] = {
    **dict.fromkeys(solids.LAWS, solids.solid),
    **dict.fromkeys(interest.LAWS, interest.interest),
    "map scale": scales.scale,
    "exchange": exchange.exchange,
    "known shares": known_shares.known_shares,
    "joined ratios": known_shares.joined_ratios,
    "direct amounts": proportions.direct_amounts,
    "inverse amounts": proportions.inverse_amounts,
    **dict.fromkeys(("solids joined", "solids removed", "solids alone"), bodies.together),
    **dict.fromkeys(("solids recast", "solids poured", "solids dropped"), bodies.moved),
    "similar solids": similar_solids.similar_solids,
    "best buy": buys.best_buy,
    "hire purchase": hire.hire_purchase,
    "tax by bands": hire.tax_by_bands,
    "ratio": ratios.ratio,
    "sharing": ratios.sharing,
    "direct proportion": ratios.direct,
    "direct proportion in letters": variation.in_letters,
    "inverse proportion in letters": variation.in_letters,
    "conversion": measures.conversion_of,
    "clock time": measures.clock_time,
    "time between": measures.time_between,
    "percentage of": percents.percentage_of,
    "percentage change": percents.percentage_change,
    "share of a whole": percents.share_of_whole,
    "changed by percentages": percents.changed,
    "interest": interest.unsaid,
    "depreciation": interest.unsaid,
    "motion": partial(by_laws, MOTION),
    "density": partial(by_laws, DENSITY),
    "five numbers": of_five_numbers,
    "changed values": changed,
    "two proportions": two_proportions.two_proportions,
    "square frustum": partial(by_laws, further_solids.SQUARE_FRUSTUM),
    **dict.fromkeys(("cube with a hole", "cuboid with a hole", "round with a hole"), further_solids.with_hole),
    "net": further_solids.net,
    "pressure": partial(by_laws, compound_measures.PRESSURE),
    "population density": partial(by_laws, compound_measures.POPULATION),
    "fixed loss": compound_measures.fixed_loss,
    **dict.fromkeys(("filling a cuboid", "filling a cylinder"), compound_measures.filling),
}
"""By the kind of the reckoning."""


class RatiosStrand:
    """Takes the reckonings of `model/reckoning.py`."""

    name = "ratio and measures"

    def recognises(self, reading: Reading) -> bool:
        """Whether the ask is a reckoning of a kind that is derived."""
        task = reading.ask.task if reading.ask is not None else None
        return isinstance(task, Reckoning) and task.kind in DERIVATIONS

    def derive(self, reading: Reading) -> Outcome:
        """The answer with its lines, or NotRead with what stopped it."""
        assert reading.ask is not None
        task = reading.ask.task
        assert isinstance(task, Reckoning)
        return or_not_read(lambda: DERIVATIONS[task.kind](task, reading))


STRAND = RatiosStrand()
