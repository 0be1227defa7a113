"""A figure told without letters, handed on in letters of our own as statements of the paper's own language."""

from dataclasses import replace

from paperaudit.model.fact import Given
from paperaudit.model.reading import Unread
from paperaudit.wording.asking import read_asked
from paperaudit.wording.scene import Scene
from paperaudit.wording.statement import read_given
from paperaudit.wording.topics.figure_letters import Lettered
from paperaudit.wording.topics.topic import Told
from paperaudit.wording.topics.whole_text import Whole


def in_letters(figure: Lettered, whole: Whole, scene: Scene) -> Told | None:
    """The ask and the givens of a figure in letters, shown as what the words were read as; None if one is unread."""
    givens: list[Given] = []
    for statement in figure.statements:
        given = read_given(statement, whole.place, "figure", scene)
        if isinstance(given, Unread):
            return None
        givens.append(given)
    asked = read_asked(figure.wanted, whole.place, "ask", scene)
    if isinstance(asked, Unread) or asked.conditions:
        return None
    shown = f"{', '.join(figure.statements)}; wanted: {figure.wanted}"
    ask = replace(asked.ask, text=whole.said, read_as=shown, accuracy=whole.accuracy, unit=whole.unit)
    return Told(ask, tuple(givens))
