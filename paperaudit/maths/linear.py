"""Linear forms over exact fractions, and elimination that can say which rows a result came from."""

from collections.abc import Callable, Hashable, Iterable, Mapping
from dataclasses import dataclass
from fractions import Fraction
from typing import Generic, TypeAlias, TypeVar

Key = TypeVar("Key", bound=Hashable)
Label = TypeVar("Label", bound=Hashable)

Rational: TypeAlias = Fraction | int
"""An exact number; whole ones are kept as int, whose arithmetic takes a tenth of the time."""


def rational(value: Rational) -> Rational:
    """The number as it is kept in a form.

    >>> rational(Fraction(6, 2)), rational(Fraction(1, 2))
    (3, Fraction(1, 2))
    """
    return value if type(value) is int or value.denominator != 1 else value.numerator


class LinearForm(Generic[Key]):
    """A sum of multiples of keys and a constant: 2x + y + 10. Immutable and hashable.

    Keys keep the order in which they first came in; equality does not depend on it.

    >>> form = LinearForm({"x": Fraction(2)}, Fraction(10))
    >>> form + LinearForm.of("x")
    LinearForm({'x': 3}, 10)
    """

    __slots__ = ("_hash", "constant", "terms")

    def __init__(self, terms: Mapping[Key, Rational] | None = None, constant: Rational = 0) -> None:
        self.terms: dict[Key, Rational] = {key: rational(value) for key, value in (terms or {}).items() if value}
        self.constant = rational(constant)
        self._hash: int | None = None

    @staticmethod
    def of(key: Key, coefficient: Rational = 1) -> "LinearForm[Key]":
        """The form that is one key, times `coefficient`."""
        return _form({key: rational(coefficient)} if coefficient else {}, 0)

    @staticmethod
    def number(value: Rational) -> "LinearForm[Key]":
        """The form that is a constant."""
        return _form({}, rational(value))

    def __add__(self, other: "LinearForm[Key]") -> "LinearForm[Key]":
        return self.plus(other, 1)

    def __sub__(self, other: "LinearForm[Key]") -> "LinearForm[Key]":
        return self.plus(other, -1)

    def plus(self, other: "LinearForm[Key]", times: Rational) -> "LinearForm[Key]":
        """This form and `times` the other, added."""
        if type(times) is not int:
            times = rational(times)
        terms = dict(self.terms)
        for key, value in other.terms.items():
            own = terms.get(key)
            total = times * value if own is None else own + times * value
            if total:
                terms[key] = total if type(total) is int else rational(total)
            else:
                terms.pop(key, None)
        constant = self.constant + times * other.constant if other.constant else self.constant
        return _form(terms, constant if type(constant) is int else rational(constant))

    def times(self, factor: Rational) -> "LinearForm[Key]":
        """This form with every coefficient multiplied."""
        if not factor:
            return _form({}, 0)
        if factor == 1:
            return self
        factor = rational(factor)
        return _form(
            {key: rational(factor * value) for key, value in self.terms.items()}, rational(factor * self.constant)
        )

    def over(self, divisor: Rational) -> "LinearForm[Key]":
        """This form with every coefficient divided, exactly."""
        return self.times(divisor if divisor in (1, -1) else Fraction(1) / divisor)

    def coefficient(self, key: Key) -> Fraction:
        """The multiple of `key`, 0 where it is absent."""
        return Fraction(self.terms.get(key, 0))

    def replaced(self, values: Mapping[Key, "LinearForm[Key]"]) -> "LinearForm[Key]":
        """This form with some keys replaced by forms of their own, once each."""
        parts = ((values.get(key) or LinearForm.of(key), coefficient) for key, coefficient in self.terms.items())
        return combination(parts, self.constant)

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


def combination(parts: Iterable[tuple[LinearForm[Key], Rational]], constant: Rational = 0) -> LinearForm[Key]:
    """A constant and multiples of forms, added up at once.

    >>> combination([(LinearForm.of("x"), 2), (LinearForm({"x": 1, "y": 1}, 5), -2)], 10)
    LinearForm({'y': -2}, 0)
    """
    terms: dict[Key, Rational] = {}
    for form, times in parts:
        if form.constant:
            constant += times * form.constant
        for key, value in form.terms.items():
            known = terms.get(key)
            terms[key] = times * value if known is None else known + times * value
    return LinearForm(terms, constant)


def _form(terms: dict[Key, Rational], constant: Rational) -> LinearForm[Key]:
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

    multiples: Mapping[Label, Rational]
    constant: Rational


class Elimination(Generic[Key, Label]):
    """Equations `form = 0`, added one at a time and kept in echelon form with their certificates.

    >>> rows: Elimination[str, str] = Elimination()
    >>> rows.add(LinearForm({"x": Fraction(2)}, Fraction(-6)), "given")
    >>> rows.value(LinearForm.of("x"))
    Fraction(3, 1)
    """

    def __init__(self) -> None:
        self._pivots: dict[Key, tuple[LinearForm[Key], dict[Label, Rational]]] = {}

    def reduce(self, form: LinearForm[Key]) -> tuple[LinearForm[Key], dict[Label, Rational]]:
        """What is left of `form` modulo the rows, and the multiples of rows that were added to it."""
        multiples: dict[Label, Rational] = {}
        pending = [key for key in form.terms if key in self._pivots]
        while pending:
            key = pending[0]
            row, certificate = self._pivots[key]
            factor = -form.terms[key]
            form = form.plus(row, factor)
            for label, value in certificate.items():
                multiples[label] = multiples.get(label, 0) + factor * value
            pending = [key for key in form.terms if key in self._pivots]
        return form, {label: rational(value) for label, value in multiples.items() if value}

    def add(
        self, form: LinearForm[Key], label: Label, prefer: Callable[[Key], int] | None = None
    ) -> Contradiction[Label] | None:
        """Take in the row `form = 0`; returns the contradiction if it cannot hold with the others.

        `prefer` ranks keys: the lowest rank is eliminated first.
        """
        rest, multiples = self.reduce(form)
        multiples[label] = multiples.get(label, 0) + 1
        if rest.is_constant:
            return None if rest.is_zero else Contradiction(multiples, rest.constant)
        pivot = min(rest.terms, key=prefer) if prefer else next(iter(rest.terms))
        leading = rest.terms[pivot]
        if leading != 1:
            multiples = {key: rational(Fraction(value) / leading) for key, value in multiples.items()}
        self._pivots[pivot] = (rest.over(leading), multiples)
        return None

    def value(self, form: LinearForm[Key]) -> Fraction | None:
        """The number that the rows give to `form`, or None where they leave it open."""
        rest, _ = self.reduce(form)
        return Fraction(rest.constant) if rest.is_constant else None

    def support(self, form: LinearForm[Key]) -> tuple[Label, ...]:
        """The labels of the rows that a determined value of `form` rests on."""
        return tuple(self.reduce(form)[1])

    def solved(self, keys: Iterable[Key]) -> dict[Key, Fraction]:
        """Those of `keys` that have one value, with it."""
        found = {key: self.value(LinearForm.of(key)) for key in keys}
        return {key: value for key, value in found.items() if value is not None}
