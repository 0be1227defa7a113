"""Which derivation of algebra takes which task, with the numbers that the givens state put in."""

import re
from collections.abc import Callable
from typing import Any

from paperaudit.maths.algebra.logarithms import has_logarithm
from paperaudit.maths.euler import means_euler, with_euler
from paperaudit.model.algebra_task import (
    CoefficientFor,
    CompletedSquare,
    Discriminant,
    DividedBy,
    Identity,
    InForm,
    LeastValue,
    LogarithmFromOthers,
    LogarithmsApart,
    OfRoots,
    Rewritten,
    RootsFor,
    SingleLogarithm,
    SolveBy,
)
from paperaudit.model.ask import Ask, Establish, Find, Rounded, Solve, Subject, Transform, WriteAs
from paperaudit.model.derivation import NotRead, Outcome
from paperaudit.model.expansion_task import BinomialExpansion, TermOfExpansion
from paperaudit.model.expression import Expression, Relation, letters_of
from paperaudit.model.fact import Given, Holds
from paperaudit.model.proof_task import (
    ByContradiction,
    CounterExample,
    EqualSums,
    InductiveMultiple,
    InductiveSum,
    IntegerClaim,
    PositiveClaim,
)
from paperaudit.model.reading import Reading
from paperaudit.strands.algebra.absolute_ranges import holds_in_a_range
from paperaudit.strands.algebra.absolutes import HoldsInRange
from paperaudit.strands.algebra.changing import change_subject
from paperaudit.strands.algebra.contradiction import by_contradiction
from paperaudit.strands.algebra.divisors import coefficient_for, divided_by
from paperaudit.strands.algebra.end_integers import end_integer
from paperaudit.strands.algebra.expansions import expansion, term_of_expansion
from paperaudit.strands.algebra.forms import completed_square, in_form, least_value
from paperaudit.strands.algebra.identities import show_identity
from paperaudit.strands.algebra.induction import inductive_sum
from paperaudit.strands.algebra.inductive_multiples import inductive_multiple
from paperaudit.strands.algebra.inequalities import confirm_equation_set, solve_inequalities
from paperaudit.strands.algebra.integer_proofs import equal_sums, integer_claim
from paperaudit.strands.algebra.logarithm_laws import logarithms_apart, single_logarithm
from paperaudit.strands.algebra.logarithms import evaluate, no_logarithm
from paperaudit.strands.algebra.logarithms_given import from_others, from_values, known_logarithms
from paperaudit.strands.algebra.natures import discriminant, roots_for
from paperaudit.strands.algebra.other_proofs import counter_example, positive_claim
from paperaudit.strands.algebra.rewriting import rewritten
from paperaudit.strands.algebra.roots import Method
from paperaudit.strands.algebra.single_powers import as_power_of
from paperaudit.strands.algebra.solving import solve_one
from paperaudit.strands.algebra.symmetric import from_sum_and_product, of_roots
from paperaudit.strands.algebra.systems import solve_system
from paperaudit.strands.equation_checks import letters_in
from paperaudit.strands.substitution import numbers_given, substituted, with_numbers
from paperaudit.strands.unknowns import Stated, equations_given

Derive = Callable[[Any, Reading], Outcome]

DERIVATIONS: dict[type, Derive] = {
    BinomialExpansion: expansion,
    ByContradiction: by_contradiction,
    CompletedSquare: completed_square,
    CoefficientFor: coefficient_for,
    CounterExample: counter_example,
    Discriminant: discriminant,
    EqualSums: equal_sums,
    IntegerClaim: integer_claim,
    PositiveClaim: positive_claim,
    DividedBy: divided_by,
    Identity: show_identity,
    LogarithmFromOthers: from_others,
    LogarithmsApart: logarithms_apart,
    SingleLogarithm: single_logarithm,
    TermOfExpansion: term_of_expansion,
    InForm: in_form,
    InductiveMultiple: inductive_multiple,
    InductiveSum: inductive_sum,
    LeastValue: least_value,
    OfRoots: of_roots,
    RootsFor: roots_for,
}
"""By the task of the ask."""


def derive_algebra(reading: Reading, ask: Ask) -> Outcome:
    """The outcome of a task of algebra; raises what stops it."""
    match ask.task:
        case Transform("expand", expression) if has_logarithm(expression):
            return logarithms_apart(LogarithmsApart(expression), reading)
        case Transform(_, expression) | Rounded(expression) | Find((expression,)) if has_logarithm(expression):
            known = known_logarithms(reading.givens)
            if known:
                return from_values(expression, known, ask)
            return no_logarithm(expression) or evaluate(expression, ask)
        case Transform(command, expression):
            return _unread_letter(reading, ask, letters_of(expression)) or rewritten(expression, command)
        case Rewritten(command, expression, positive, restrictions):
            return _unread_letter(reading, ask, letters_of(expression)) or rewritten(
                expression, command, positive, limits=restrictions
            )
        case WriteAs(expression, form):
            return as_power_of(expression, form.rpartition(" ")[2])
        case Subject(letter, relation):
            return change_subject(relation, letter)
        case Establish(claims):
            (claim,) = claims
            assert isinstance(claim, Holds)
            return show_identity(Identity(claim.relation.left, claim.relation.right), reading)
        case Solve(relations, letters):
            return _solve(relations, letters, reading, ask)
        case SolveBy(relations, method, integers, letters, extreme):
            if extreme:
                return end_integer(relations, extreme)
            return _solve(relations, letters, reading, ask, method, integers)
        case Find(wanted):
            letters = tuple(dict.fromkeys(name for one in wanted for name in letters_of(one)))
            if any(
                item != letter
                for item, letter in zip(map(letters_of, wanted), ((one,) for one in letters), strict=False)
            ):
                stated = equations_given(reading.givens) or ()
                texts = tuple(one.text for one in stated)
                found = from_sum_and_product([one.relation for one in stated], wanted, texts, ask)
                return found or NotRead("an expression in letters of equations that are not linear")
            formula = _formula(reading, letters)
            if formula is not None:
                return solve_one(formula[0], letters[0], ask, "", formula[1])
            return _solve((), letters, reading, ask)
    return DERIVATIONS[type(ask.task)](ask.task, reading)


def _formula(reading: Reading, letters: tuple[str, ...]) -> tuple[Relation, tuple[str, ...]] | None:
    """The only equation in several letters with the numbers of the other givens in it: A = bh/2, A = 170, b = 17."""
    values: dict[str, tuple[Expression, Given]] = {}
    main: list[Given] = []
    for given in reading.givens:
        known = numbers_given((given,))
        if known:
            values |= known
        else:
            main.append(given)
    equations = equations_given(main) or ()
    if len(equations) != 1 or len(letters) != 1 or len(values) + 1 != len(reading.givens):
        return None
    relation = equations[0].relation
    if relation.sign != "=" or set(letters_in(relation)) != {*values, *letters} or letters[0] in values:
        return None
    filled = with_numbers(relation, {name: value for name, (value, _) in values.items()})
    return filled, (equations[0].text, *(given.text for _, given in values.values()))


def _unread_letter(reading: Reading, ask: Ask, letters: tuple[str, ...]) -> NotRead | None:
    """A refusal where the text says something of a letter in a sentence that was left aside."""
    lines = (reading.question.text, reading.part.text)
    rest = " ".join(line.text for line in lines if line is not None).replace(ask.text, " ")
    for name in letters:
        if re.search(
            rf"\b{name} ?(?:=|be\b|is\b)|= ?[^.]*\b{name}\b|\b(?:suppose|let)\b[^.]*\b{name}\b", rest, re.IGNORECASE
        ):
            return NotRead(f"the text says something of {name} that was not put to use")
    return None


def _solve(
    relations: tuple[Relation, ...],
    letters: tuple[str, ...],
    reading: Reading,
    ask: Ask,
    method: Method = "",
    integers: bool = False,
) -> Outcome:
    """Equations of the ask, or of the givens where the ask has none; numbers given are put in."""
    given = equations_given(reading.givens) or ()
    stated = tuple(Stated(relation, "") for relation in relations) or given
    used = tuple(dict.fromkeys(one.text for one in stated if one.text))
    everything = tuple(one.relation for one in stated)
    if relations:
        everything, more = _with_numbers(relations, letters, reading)
        used = (*used, *more)
    if "e" not in letters and any(means_euler(side) for one in everything for side in (one.left, one.right)):
        everything = tuple(Relation(with_euler(one.left), one.sign, with_euler(one.right)) for one in everything)
    names = tuple(dict.fromkeys(name for relation in everything for name in letters_in(relation)))
    if not names:
        return NotRead("there is no letter to solve for")
    if len(names) == 1 and any(relation.sign != "=" for relation in everything):
        return solve_inequalities(everything, names[0], integers, used, ask.accuracy)
    if integers:
        return NotRead("integers are asked for where no inequality stands")
    if len(names) == 1 and len(everything) == 1:
        try:
            return solve_one(everything[0], names[0], ask, method, used)
        except HoldsInRange:
            return holds_in_a_range(everything[0], names[0], used, confirm_equation_set)
    if len(everything) == 2 and len(names) == 2 and not method and (not letters or set(letters) == set(names)):
        return solve_system(everything, ask, used)
    if len(everything) == 1 and len(letters) == 1 and letters[0] in names and not given:
        others = tuple(name for name in names if name != letters[0])
        return _unread_letter(reading, ask, others) or change_subject(everything[0], letters[0], used)
    return NotRead(f"equations in {len(names)} letters that are not linear")


def _with_numbers(
    relations: tuple[Relation, ...], letters: tuple[str, ...], reading: Reading
) -> tuple[tuple[Relation, ...], tuple[str, ...]]:
    known = {name: value for name, value in (numbers_given(reading.givens) or {}).items() if name not in letters}
    names = {name for relation in relations for name in letters_in(relation)}
    needed = [name for name in known if name in names]
    if not needed:
        return relations, ()
    values = {name: known[name][0] for name in needed}
    changed = tuple(
        Relation(substituted(one.left, values), one.sign, substituted(one.right, values)) for one in relations
    )
    return changed, tuple(dict.fromkeys(known[name][1].text for name in needed))
