"""Every theorem: fires where it says, is silent where it says, is true of real figures, and no mutation passes."""

from fractions import Fraction

import pytest

from paperaudit.geometry.coordinates.arrangement import Arrangement
from paperaudit.geometry.coordinates.realise import realise
from paperaudit.geometry.figure.build import FigureBuilder
from paperaudit.geometry.theorems import ALL
from paperaudit.geometry.theorems.theorem import Instance, Theorem
from paperaudit.maths.linear import LinearForm
from paperaudit.model.expression import AngleOf
from paperaudit.model.fact import Given
from paperaudit.wording import read_statement
from tests.geometry.theorem_trials import holds

DEGREES = 1e-5
NAMES = [f"{number}-{theorem.name}" for number, theorem in enumerate(ALL)]


def drawn(statements: tuple[str, ...], count: int) -> list[Arrangement]:
    givens = tuple(read_statement(statement) for statement in statements)
    assert all(isinstance(given, Given) for given in givens), givens
    figure = FigureBuilder(givens).figure()  # type: ignore[arg-type]
    drawings = realise(figure, range(4 * count))
    assert len(drawings) >= count, statements
    return [Arrangement(figure, drawing) for drawing in drawings[:count]]


def instances_of(theorem: Theorem, arrangement: Arrangement) -> list[Instance]:
    others = {other.name for other in ALL if other.find is theorem.find} - {theorem.name}
    return [
        instance
        for instance in theorem.find(arrangement)
        if instance.theorem not in others
        and (instance.conclusion is not None or instance.relation.terms or instance.relation.constant)
    ]


def measured(arrangement: Arrangement, form: LinearForm) -> float:  # type: ignore[type-arg]
    return float(form.constant) + sum(float(v) * arrangement.measured(size) for size, v in form.terms.items())


def is_true(arrangement: Arrangement, instance: Instance) -> bool:
    """Whether an instance says nothing false of a drawing: its premises fail, or what it concludes holds."""
    if not all(holds(arrangement, premise) for premise in instance.premises):
        return True
    off = abs(measured(arrangement, instance.relation))
    if instance.conclusion is None:
        return off < DEGREES
    return off > DEGREES or holds(arrangement, instance.conclusion)


@pytest.mark.parametrize("theorem", ALL, ids=NAMES)
def test_fires_and_is_silent(theorem: Theorem) -> None:
    assert instances_of(theorem, drawn(theorem.fires, 1)[0])
    assert not instances_of(theorem, drawn(theorem.silent, 1)[0])


@pytest.mark.parametrize("theorem", ALL, ids=NAMES)
def test_true_of_three_unlike_figures(theorem: Theorem) -> None:
    for arrangement in drawn(theorem.fires, 3):
        found = instances_of(theorem, arrangement)
        assert all(is_true(arrangement, instance) for instance in found)


@pytest.mark.parametrize("theorem", ALL, ids=NAMES)
def test_a_sum_that_is_off_is_caught(theorem: Theorem) -> None:
    """The measure that confirms derivations rejects every relation shifted by 7."""
    caught = tried = 0
    for arrangement in drawn(theorem.fires, 3):
        for instance in instances_of(theorem, arrangement):
            if instance.conclusion is None and instance.relation.terms:
                met = all(holds(arrangement, premise) for premise in instance.premises)
                mutated = Instance(instance.theorem, instance.premises, instance.relation + LinearForm.number(7))
                tried += met
                caught += met and not is_true(arrangement, mutated)
    assert caught == tried


@pytest.mark.parametrize("theorem", ALL, ids=NAMES)
def test_a_wrong_pair_is_caught(theorem: Theorem) -> None:
    """One angle of a relation changed for another angle of the figure: true only where the two measure the same."""
    for arrangement in drawn(theorem.fires, 3):
        angles = {
            size
            for rays in arrangement.rays.values()
            for i, one in enumerate(rays)
            for two in rays[i + 1 :]
            if one.line != two.line and (size := arrangement.between(one, two))
        }
        for instance in instances_of(theorem, arrangement):
            if instance.conclusion is not None or not all(holds(arrangement, premise) for premise in instance.premises):
                continue
            for size in [size for size in instance.relation.terms if isinstance(size, AngleOf)]:
                for other in angles - {size}:
                    share = instance.relation.coefficient(size)
                    swap = LinearForm({size: -share, other: share})
                    mutated = Instance(instance.theorem, instance.premises, instance.relation + swap)
                    same = abs(arrangement.measured(size) - arrangement.measured(other)) < DEGREES
                    assert is_true(arrangement, mutated) == same


def test_relations_are_exact() -> None:
    for theorem in ALL:
        for instance in instances_of(theorem, drawn(theorem.fires, 1)[0]):
            assert all(isinstance(value, Fraction | int) for value in instance.relation.terms.values())


def test_every_theorem_names_its_source_and_its_skill() -> None:
    for theorem in ALL:
        assert theorem.source and theorem.says.endswith(".")
        assert theorem.skill or theorem.name == "given"
