"""The rules of the shipped grammars are those that parsimonious reads out of the same files, and soon read."""

import time
from collections.abc import Iterator
from pathlib import Path

import pytest
from parsimonious.expressions import Expression as Rule
from parsimonious.expressions import Literal, Lookahead, Quantifier, Regex
from parsimonious.grammar import RuleVisitor, rule_grammar

import paperaudit
from paperaudit.maths.grammar import expression_grammar
from paperaudit.maths.peg import compiled, parsed
from paperaudit.maths.peg_reader import read_rules
from paperaudit.wording.clauses import statement_grammar

HERE = Path(paperaudit.__file__).parent
FILES = sorted(HERE.glob("*/*.peg"))
AT_MOST_SECONDS = 0.11
OURS = {
    "Pattern": "Regex",
    "Choice": "OneOf",
    "Letters": "Literal",
    "Row": "Sequence",
    "Repeated": "Quantifier",
    "Ahead": "Lookahead",
}
"""Our own kinds of rules by the ones that they stand for."""


def shape(rule: Rule, top: bool = True) -> Iterator[object]:
    """A rule as nested names, texts and numbers; another rule that it refers to by its name."""
    if rule.name and not top:
        yield rule.name
        return
    yield OURS.get(type(rule).__name__, type(rule).__name__)
    if isinstance(rule, Literal):
        yield rule.literal
    elif isinstance(rule, Regex):
        yield rule.re.pattern
    elif isinstance(rule, Lookahead):
        yield rule.negativity
    elif isinstance(rule, Quantifier):
        yield rule.min, rule.max
    for member in getattr(rule, "members", ()):
        yield tuple(shape(member, top=False))


def test_every_rule_is_the_one_that_parsimonious_reads() -> None:
    text = "\n".join(file.read_text(encoding="utf-8") for file in FILES) + '\nunit_word = "cm"\nlone_unit = "m"\n'
    ours = read_rules(text, {})
    theirs, _ = RuleVisitor().visit(rule_grammar.parse(text))
    assert len(ours) > 150 and list(ours) == list(theirs)
    for name, rule in theirs.items():
        assert tuple(shape(ours[name])) == tuple(shape(rule)), name


def test_all_grammars_are_soon_compiled() -> None:
    took = []
    for _ in range(3):
        expression_grammar.cache_clear()
        statement_grammar.cache_clear()
        began = time.process_time()
        statement_grammar()
        took.append(time.process_time() - began)
    assert min(took) < AT_MOST_SECONDS


@pytest.mark.parametrize(
    "text", ['a = ("b"', "a = ", "= a", 'a = "b" / ', "a = !", 'a = "b" ?? c', "a = 'b'", "b", "a = b"]
)
def test_what_is_no_grammar_is_refused(text: str) -> None:
    with pytest.raises((ValueError, KeyError)):
        read_rules(text, {})


def test_a_name_for_another_rule_is_that_rule() -> None:
    rules = compiled('one = two  two = ~"[0-9]"{2,}', compiled('three = "x"'))
    assert rules["one"] is rules["two"] and "three" in rules
    assert parsed(rules, "one", "12").expr_name == "two"
