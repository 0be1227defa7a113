"""The one unit that the amounts of a story are worked in."""

from collections.abc import Sequence
from dataclasses import dataclass

from parsimonious.nodes import Node

from paperaudit.maths.number_forms import as_decimal, whole_or_fraction
from paperaudit.maths.units import MONEY, conversion
from paperaudit.model.story import Amount
from paperaudit.wording.scene import NotUnderstood
from paperaudit.wording.topics.stories.amounts import amount_of
from paperaudit.wording.topics.stories.trees import within


@dataclass(frozen=True, slots=True)
class Scale:
    """The unit of one story: the first that stands in it, rand and not cents; "" for counted things."""

    unit: str

    @staticmethod
    def of(trees: Sequence[Node]) -> "Scale":
        """The scale of the amounts in these trees; raises NotUnderstood where they measure different things."""
        found = [amount_of(node).unit for tree in trees for node in within(tree, "money", "cents", "measure")]
        units = list(dict.fromkeys(found))
        if not units:
            return Scale("")
        unit = next((one for one in units if one in MONEY), units[0])
        if any(conversion(one, unit) is None for one in units):
            raise NotUnderstood("amounts of different kinds", 0)
        return Scale(unit)

    def amount(self, node: Node) -> Amount:
        """The amount under a node in the story's unit; raises NotUnderstood where it has none and the others do."""
        amount = amount_of(node)
        if amount.unit == self.unit:
            return amount
        factor = conversion(amount.unit, self.unit) if amount.unit else None
        if factor is None:
            raise NotUnderstood("an amount without the unit of the others", node.start)
        value = amount.number.value * factor
        return Amount(as_decimal(value) or whole_or_fraction(value), self.unit)
