"""Linear forms over exact fractions, and elimination that can say which rows a result came from."""

from collections.abc import Callable, Hashable, Iterable, Mapping
from dataclasses import dataclass
from fractions import Fraction
from typing import Generic, TypeVar

Key = TypeVar("Key", bound=Hashable)
Label = TypeVar("Label", bound=Hashable)

ZERO = Fraction(0)
ONE = Fraction(1)
MINUS_ONE = Fraction(-1)


class LinearForm(Generic[Key]):
    """A sum of multiples of keys and a constant: 2x + y + 10. Immutable and hashable.

    Keys keep the order in which they first came in; equality does not depend on it.

    >>> form = LinearForm({"x": Fraction(2)}, Fraction(10))
    >>> form + LinearForm.of("x")
    LinearForm({'x': Fraction(3, 1)}, Fraction(10, 1))
    """

    __slots__ = ("_hash", "constant", "terms")

    def __init__(self, terms: Mapping[Key, Fraction] | None = None, constant: Fraction = ZERO) -> None:
        self.terms: dict[Key, Fraction] = {key: value for key, value in (terms or {}).items() if value}
        self.constant = constant
        self._hash: int | None = None

    @staticmethod
    def of(key: Key, coefficient: Fraction = ONE) -> "LinearForm[Key]":
        """The form that is one key, times `coefficient`."""
        return _form({key: coefficient} if coefficient else {}, ZERO)

    @staticmethod
    def number(value: Fraction | int) -> "LinearForm[Key]":
        """The form that is a constant."""
        return _form({}, value if isinstance(value, Fraction) else Fraction(value))

    def __add__(self, other: "LinearForm[Key]") -> "LinearForm[Key]":
        return self.plus(other, ONE)

    def __sub__(self, other: "LinearForm[Key]") -> "LinearForm[Key]":
        return self.plus(other, MINUS_ONE)

    def plus(self, other: "LinearForm[Key]", times: Fraction) -> "LinearForm[Key]":
        """This form and `times` the other, added."""
        # Most multiples are 1 and −1: arithmetic of fractions is what elimination spends its time on.
        terms = dict(self.terms)
        once = times is ONE or times == 1
        off = not once and (times is MINUS_ONE or times == -1)
        for key, value in other.terms.items():
            share = value if once else -value if off else times * value
            own = terms.get(key)
            total = share if own is None else own + share
            if total:
                terms[key] = total
            else:
                terms.pop(key, None)
        constant = self.constant
        if other.constant:
            constant = constant + (other.constant if once else -other.constant if off else times * other.constant)
        return _form(terms, constant)

    def times(self, factor: Fraction | int) -> "LinearForm[Key]":
        """This form with every coefficient multiplied."""
        if not factor:
            return _form({}, ZERO)
        if factor == 1:
            return self
        if factor == -1:
            return _form({key: -value for key, value in self.terms.items()}, -self.constant)
        scale = Fraction(factor)
        return _form({key: scale * value for key, value in self.terms.items()}, scale * self.constant)

    def coefficient(self, key: Key) -> Fraction:
        """The multiple of `key`, 0 where it is absent."""
        return self.terms.get(key, ZERO)

    def replaced(self, values: Mapping[Key, "LinearForm[Key]"]) -> "LinearForm[Key]":
        """This form with some keys replaced by forms of their own, once each."""
        result: LinearForm[Key] = LinearForm(None, self.constant)
        for key, coefficient in self.terms.items():
            result = result.plus(values.get(key) or LinearForm.of(key), coefficient)
        return result

    @property
    def is_constant(self) -> bool:
        """Whether no key is left."""
        return not self.terms

    @property
    def is_zero(self) -> bool:
        """Whether nothing at all is left."""
        return not self.terms and not self.constant

    def __eq__(self, other: object) -> bool:
        return isinstance(other, LinearForm) and self.constant == other.constant and self.terms == other.terms

    def __hash__(self) -> int:
        if self._hash is None:
            self._hash = hash((frozenset(self.terms.items()), self.constant))
        return self._hash

    def __repr__(self) -> str:
        return f"LinearForm({self.terms!r}, {self.constant!r})"


def _form(terms: dict[Key, Fraction], constant: Fraction) -> LinearForm[Key]:
    """A form of terms that are known to hold no 0, which are not looked through again."""
    form: LinearForm[Key] = LinearForm.__new__(LinearForm)
    form.terms, form.constant, form._hash = terms, constant, None
    return form


@dataclass(frozen=True, slots=True)
class Contradiction(Generic[Label]):
    """Rows that cannot hold together, with the multiples that add up to `constant` = 0.

    The support of such a certificate is an irreducible set of clashing equations whenever the
    multiples are the only ones possible, which holds for the first contradiction met.
    """

    multiples: Mapping[Label, Fraction]
    constant: Fraction


class Elimination(Generic[Key, Label]):
    """Equations `form = 0`, added one at a time and kept in echelon form with their certificates.

    >>> rows: Elimination[str, str] = Elimination()
    >>> rows.add(LinearForm({"x": Fraction(2)}, Fraction(-6)), "given")
    >>> rows.value(LinearForm.of("x"))
    Fraction(3, 1)
    """

    def __init__(self) -> None:
        self._pivots: dict[Key, tuple[LinearForm[Key], dict[Label, Fraction]]] = {}

    def reduce(self, form: LinearForm[Key]) -> tuple[LinearForm[Key], dict[Label, Fraction]]:
        """What is left of `form` modulo the rows, and the multiples of rows that were added to it."""
        multiples: dict[Label, Fraction] = {}
        pending = [key for key in form.terms if key in self._pivots]
        while pending:
            key = pending[0]
            row, certificate = self._pivots[key]
            share = form.terms[key]
            factor = MINUS_ONE if share == 1 else ONE if share == -1 else -share
            form = form.plus(row, factor)
            for label, value in certificate.items():
                own = value if factor is ONE else -value if factor is MINUS_ONE else factor * value
                multiples[label] = multiples[label] + own if label in multiples else own
            pending = [key for key in form.terms if key in self._pivots]
        return form, {label: value for label, value in multiples.items() if value}

    def add(
        self, form: LinearForm[Key], label: Label, prefer: Callable[[Key], int] | None = None
    ) -> Contradiction[Label] | None:
        """Take in the row `form = 0`; returns the contradiction if it cannot hold with the others.

        `prefer` ranks keys: the lowest rank is eliminated first.
        """
        rest, multiples = self.reduce(form)
        multiples[label] = multiples.get(label, ZERO) + ONE
        if rest.is_constant:
            return None if rest.is_zero else Contradiction(multiples, rest.constant)
        pivot = min(rest.terms, key=prefer) if prefer else next(iter(rest.terms))
        if rest.terms[pivot] == 1:
            self._pivots[pivot] = (rest, dict(multiples))
            return None
        scale = ONE / rest.terms[pivot]
        self._pivots[pivot] = (rest.times(scale), {key: scale * value for key, value in multiples.items()})
        return None

    def value(self, form: LinearForm[Key]) -> Fraction | None:
        """The number that the rows give to `form`, or None where they leave it open."""
        rest, _ = self.reduce(form)
        return rest.constant if rest.is_constant else None

    def support(self, form: LinearForm[Key]) -> tuple[Label, ...]:
        """The labels of the rows that a determined value of `form` rests on."""
        return tuple(self.reduce(form)[1])

    def solved(self, keys: Iterable[Key]) -> dict[Key, Fraction]:
        """Those of `keys` that have one value, with it."""
        found = {key: self.value(LinearForm.of(key)) for key in keys}
        return {key: value for key, value in found.items() if value is not None}
