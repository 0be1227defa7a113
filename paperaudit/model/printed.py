"""What of a draft's pages concerns the print alone: numbers at their foot, small and faint text."""

from dataclasses import dataclass, field

from paperaudit.model.place import NOWHERE, Place


@dataclass(frozen=True, slots=True)
class PrintedPage:
    """One page. `numbered` where its own number stands on it.

    `smallest` is the size of its smallest line of text in points, `faintest` how light its lightest one is
    (0 black, 1 white); None where that is not known.
    """

    number: int
    numbered: bool = True
    smallest: float | None = None
    faintest: float | None = None
    place: Place = field(default=NOWHERE, compare=False)
    small: Place = field(default=NOWHERE, compare=False)
    faint: Place = field(default=NOWHERE, compare=False)
