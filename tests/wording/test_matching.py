"""Passing over what cannot match changes no tree: every known statement, read quickly and thoroughly."""

from typing import Any

import pytest
from parsimonious.exceptions import ParseError
from parsimonious.nodes import Node
from ruamel.yaml import YAML

from paperaudit.errors import ExpressionNotRead
from paperaudit.maths.matching import Matched
from paperaudit.maths.notation import read_notation
from paperaudit.maths.peg import parsed
from paperaudit.wording.clauses import statement_grammar
from tests.strands.asked import FIXTURES

CASES: dict[str, list[dict[str, Any]]] = YAML(typ="safe", pure=True).load(FIXTURES / "questions" / "wording.yaml")


def outline(node: Node) -> tuple[object, ...]:
    return node.expr_name, node.start, node.end, tuple(map(outline, node.children))


@pytest.mark.parametrize("rule, group", [("statement", "statements"), ("asked", "asks")])
def test_the_tree_is_that_of_a_thorough_reading(rule: str, group: str) -> None:
    texts = [read_notation(said).text for case in CASES[group] for said in case["said"]]
    grammar, read = statement_grammar(), 0
    for text in texts:
        stopped = ParseError(text)
        thorough = grammar[rule].match_core(text, 0, Matched(thorough=True), stopped)
        if thorough is None or thorough.end < len(text):
            with pytest.raises(ExpressionNotRead) as error:
                parsed(grammar, rule, text)
            assert error.value.start >= stopped.pos
        else:
            assert outline(parsed(grammar, rule, text)) == outline(thorough), text
            read += 1
    assert read > 100
