"""The grammars of stories, and the words that no name of a person or thing holds."""

import re
from functools import cache
from pathlib import Path as File

from parsimonious.nodes import Node

from paperaudit.errors import ExpressionNotRead
from paperaudit.maths.peg import Rules, compiled, parsed
from paperaudit.wording.topics.stories.plain import Plain

STOP = (
    "is|are|was|were|will|would|be|been|being|has|have|had|does|do|did|more|less|fewer|than|times|twice|half|of|and|or|"
    "but|if|then|when|while|to|from|in|at|by|for|with|without|on|together|altogether|total|sum|difference|product|per|"
    "older|younger|old|as|that|which|who|whose|what|how|find|calculate|determine|each|every|all|both|not|no|none|only|"
    "gets?|receives?|received|gives?|gave|costs?|cost|pays?|paid|much|many|so|after|before|until|between|among|"
    "their|they|them|it|we|i|you|he|she|there|ago|now|later|time|other|another|one|remaining|rest|left|equals?|equal|"
    "shares?|shared|divided|split|cut|earns?|earned|scored|scores|collects?|collected|saves?|saved|owns?|owned|picked|"
    "sells?|sold|reads?|read|bakes?|baked|catches|caught|makes?|made|wins?|won|spends?|spent|weighs?|weighed|contains?|"
    "contained|holds?|held|drove|drives|drive|packed|sews?|sewed|mends?|mended|carries|carried|carry|counted|planted|"
    "contributes?|contributed|donates?|donated|ran|runs|walks?|walked|wrote|writes|measures?|measured|takes?|took|"
    "cycles?|cycled|found|finds|repairs?|repaired|delivers?|delivered|raises?|raised|travels?|travelled|leaves|flies|flew|"
    "rows|rowed|sails|sailed|jogs|jogged|swims|swam|fills?|filled|empties|mixes|mixed|mix|buys?|bought|sums?|adds?|"
    "can|could|a|an|the|paints?|mows?|cleans|builds|mends|digs|finish|finishes|complete|completes|polishes|washes|types|"
    "unloads?|loads|varnishes|empty|drains|needs?|"
    "rides?|rode|moves?|goes|go|covers?|covered|motors|steams|returns?|hikes|hiked|starts?|departs?|sets|set|meets?|catch|"
    "perimeter|area|breadth|width|rectangle|triangle|hypotenuse|speed|angles?|numbers?|integers?|digits?|charges?|charged|today|presently|currently|worth|attended|came|went|visited|attend|always|never|again|combined|average|ratio|age|ages|same|except|unless|percent|consecutive"
)
VERBS = (
    "has|have|had|gets?|got|receives?|received|earns?|earned|scores?|scored|collects?|collected|saves?|saved|"
    "owns?|owned|picks?|picked|sells?|sold|reads?|read|bakes?|baked|catch(?:es)?|caught|makes?|made|wins?|won|"
    "spends?|spent|pays?|paid|weighs?|weighed|contains?|contained|holds?|held|drives?|drove|packs?|packed|sews?|"
    "sewed|mends?|mended|carr(?:y|ies|ied)|counts?|counted|plants?|planted|contributes?|contributed|donates?|"
    "donated|runs?|ran|walks?|walked|writes?|wrote|measures?|measured|takes?|took|cycles?|cycled|found|finds|cut|"
    "cuts|repairs?|repaired|delivers?|delivered|raised?|raises|is|are|was|were|costs?|cost"
)
_SCENERY_STOPS = re.compile(
    r"[\d%=<>+×÷]|\b(?:more|less|fewer|than|times|twice|half|third|quarter|sum|total|difference|product|equal|equally|"
    r"same|"
    r"as|each|every|all|none|no|not|never|only|except|without|gave|gives?|giving|loses?|lost|spends?|spent|left|"
    r"remaining|remains?|rest|other|another|average|percent|older|younger|ago|later|increase[sd]?|decrease[sd]?|"
    r"faster|slower|longer|shorter|wider|taller|heavier|lighter|larger|smaller|bigger|if|unless|before|after|"
    r"again|back|return\w*|one|single|pair|dozen|couple|first|second|hundred|thousand|zero|consecutive|even|odd|positive|"
    r"negative|whole|integers?|digits?|how|what|find|calculate|determine|work out|which|who|whose|double[sd]?|"
    r"halve[sd]?|cannot|n't|both|either|neither|until|together|between|per|ratio|equals?|free|discount|extra|"
    r"square|reversed|twins?|doubled|tripled|squared)\b|n't\b"
)


_BESIDE = {
    "meetings": ("speeds.peg",),
    "quicker": ("speeds.peg",),
    "streams": ("speeds.peg",),
    "trips": ("speeds.peg",),
}


@cache
def rules(name: str) -> Rules:
    """The compiled grammar of one kind of story, on top of the common one."""
    here = File(__file__).parent
    text = "\n".join(
        (here / file).read_text(encoding="utf-8") for file in ("common.peg", *_BESIDE.get(name, ()), f"{name}.peg")
    )
    return compiled(text.replace("STOP", STOP).replace("VERBS", VERBS))


def tree_of(name: str, sentence: Plain) -> Node | None:
    """The tree of a sentence; None for scenery, which holds no number and no word of a relation.

    Raises ExpressionNotRead for a sentence that is neither.
    """
    try:
        return parsed(rules(name), "sentence", sentence.text)
    except ExpressionNotRead:
        if is_scenery(sentence.text) and not sentence.question:
            return None
        raise


def is_scenery(text: str) -> bool:
    """Whether a sentence can be left out: no numbers, nothing compared, nothing asked.

    >>> is_scenery("ann and ben collect shells"), is_scenery("ben has as many")
    (True, False)
    """
    return _SCENERY_STOPS.search(text) is None
