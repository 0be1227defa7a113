"""Values of functions, functions of functions, inverses, and where a function has a value."""

from fractions import Fraction

from paperaudit.errors import NoValue
from paperaudit.maths.exact import ExactValue, NotSurd, exact_expression, exact_value, rational_value
from paperaudit.maths.number_forms import whole_or_fraction
from paperaudit.maths.plane_curves import zeros
from paperaudit.maths.polynomial import Polynomial, algebraic_fraction
from paperaudit.maths.powers import NotPowers, PowerSum, power_sum, put_in
from paperaudit.maths.write import write
from paperaudit.model.derivation import Answer, Outcome
from paperaudit.model.expression import Expression, Letter, Negative, Number, Quotient, Sum, letters_of
from paperaudit.model.function_task import Function, InverseOf, ValueOf, WhereEqual
from paperaudit.model.reading import Reading
from paperaudit.strands.algebra.root_lines import say_to_roots
from paperaudit.strands.functions.formulas import at, defined, formula_of, label, refuse_said
from paperaudit.strands.functions.inverse_curves import say_swapped, swapped
from paperaudit.strands.numbers.worked_rows import say_worked
from paperaudit.strands.numbers.working import Working, require, with_givens
from paperaudit.strands.refusals import impossible
from paperaudit.strands.substitution import numbers_given

SKILL = "functions"
_TRIED = (Fraction(2), Fraction(-3), Fraction(5, 2), Fraction(11))
INVERSE = "⁻¹"


def value_of(task: ValueOf, reading: Reading) -> Outcome:
    """The value of a function, or of functions one inside the other."""
    known: dict[str, Function] = {}
    used: list[str] = []
    for name in task.names:
        function, texts = defined(Function(name.removesuffix(INVERSE)), reading)
        known[name] = function
        used.extend(texts)
    argument = task.argument
    if not letters_of(argument) or any(name in _given_letters(reading) for name in letters_of(argument)):
        argument, texts = with_givens(argument, reading)
        used.extend(texts)
    variables = {function.letter for function in known.values()}
    refuse_said((name for name in letters_of(argument) if name not in variables), reading)
    working = Working(SKILL, tuple(dict.fromkeys(used)))
    said = write(argument)
    for name in reversed(task.names):
        shown = f"{name}({said})"
        argument = _applied(known[name], name, argument, shown, working)
        said = write(argument)
    _confirm(task, known, argument, reading)
    if letters_of(argument):
        return working.derived(Answer(said, argument, kind="function"), confirmed_by=_AT_NUMBERS)
    return working.derived(Answer(said, argument), confirmed_by="the formulas put into each other before any number")


_AT_NUMBERS = "at several numbers, one function after the other"


def _given_letters(reading: Reading) -> set[str]:
    return set(numbers_given(reading.givens) or ())


def _applied(function: Function, name: str, argument: Expression, shown: str, working: Working) -> Expression:
    """A function taken of an argument, with its lines."""
    if name.endswith(INVERSE):
        if letters_of(argument):
            inverse = inverse_of(function, working)
            value = put_in(inverse, function.letter, argument)
            return _worked(value, working, shown)
        found = _where(function, argument, working)
        if len(found) != 1:
            raise NoValue(f"{shown}, as {label(function)} takes that value {len(found)} times")
        working.say(f"{shown} = {write(found[0])}", write(found[0]))
        return found[0]
    put = at(function, argument)
    working.say(f"{shown} = {write(put)}")
    if not letters_of(put):
        result = simplest(put)
        if write(result) != write(put):
            say_worked(write(put), write(result), working)
        return result
    return _worked(put, working)


def _worked(value: Expression, working: Working, shown: str = "") -> Expression:
    """An expression worked out or multiplied out, with its line."""
    result = simplest(value)
    text = write(result)
    if not working.steps or working.steps[-1].statement.rpartition("= ")[2] != text:
        working.say(f"{shown} = {text}".strip(), text)
    return result


def simplest(value: Expression) -> Expression:
    """A number worked out, an expression in one letter multiplied out and collected; others as they stand."""
    letters = [name for name in letters_of(value) if name != "π"]
    if not letters:
        return exact_expression(exact_value(value))
    if len(letters) > 1:
        return value
    try:
        return power_sum(value, letters[0]).expression(letters[0])
    except NotPowers:
        return value


def _confirm(task: ValueOf, known: dict[str, Function], result: Expression, reading: Reading) -> None:
    """The result at several numbers, the functions taken one after the other by exact numbers alone."""
    letters = [name for name in letters_of(task.argument) if name not in _given_letters(reading)]
    compared = 0
    for number in _TRIED if letters else (Fraction(0),):
        argument = task.argument
        for name in letters_of(argument):
            if name in letters:
                argument = put_in(argument, name, whole_or_fraction(number))
        try:
            start = exact_value(with_givens(argument, reading)[0])
            expected = exact_value(_all_put(result, letters, number))
            for name in reversed(task.names):
                taken = _one_value(known[name], name, exact_expression(start), exact_expression(expected))
                require(taken is not None, "the value of an inverse")
                assert taken is not None
                start = taken
        except (NoValue, NotSurd):
            continue
        require(start == expected, "the value of the function")
        compared += 1
    require(compared > 0, "the value of the function, which could be compared nowhere")


def _all_put(expression: Expression, letters: list[str], number: Fraction) -> Expression:
    for name in letters:
        expression = put_in(expression, name, whole_or_fraction(number))
    return expression


def _one_value(function: Function, name: str, argument: Expression, result: Expression) -> ExactValue | None:
    """f of a number; of an inverse, the result where f takes it back to the number."""
    formula = formula_of(function)
    if name.endswith(INVERSE):
        back = exact_value(put_in(formula, function.letter, result))
        return exact_value(result) if back == exact_value(argument) else None
    return exact_value(put_in(formula, function.letter, argument))


def inverse(task: InverseOf, reading: Reading) -> Outcome:
    """The inverse of a function of the first degree, of a quotient of two such, of bˣ and of a logarithm."""
    function, used = defined(task.function, reading)
    working = Working(SKILL, used)
    other = swapped(function)
    result = inverse_of(function, working) if other is None else say_swapped(function, other, working)
    name = f"{function.name or 'f'}⁻¹({function.letter})" if function.name != "y" else "y"
    working.conclude(f"{name} = {write(result)}", write(result))
    return working.derived(Answer(f"{name} = {write(result)}", result, kind="function"), confirmed_by=_BACK)


_BACK = "the function of it is the number that was put in"


def inverse_of(function: Function, working: Working) -> Expression:
    """The formula of the inverse, with the lines to it; raises NotSurd for functions that have no simple one."""
    formula, x = formula_of(function), function.letter
    y = "y" if x != "y" else "x"
    whole = algebraic_fraction(formula)
    above, below = _linear(whole.above, x), _linear(whole.below, x)
    (a, b), (c, d) = above, below
    if a * d == b * c:
        said = f"{label(function)} = {write(formula)}"
        raise impossible((said,), "it has one value for every number", "that it has an inverse is false")
    working.say(f"{y} = {write(formula)}")
    working.say(f"{x} = {write(put_in(formula, x, Letter(y)))}")
    top = PowerSum({Fraction(1): d, Fraction(0): -b})
    bottom = PowerSum({Fraction(1): -c, Fraction(0): a})
    if c:
        left = PowerSum({Fraction(1): c, Fraction(0): d})
        working.say(f"{x}({left.text(y)}) = {PowerSum({Fraction(1): a, Fraction(0): b}).text(y)}")
        turn = Fraction(-1 if bottom.terms[bottom.degree] < 0 else 1)
        bottom, top = bottom.scaled(turn), top.scaled(turn)
        working.say(f"{y}({bottom.text(x)}) = {top.text(x)}")
    elif d == 1 and abs(a) != 1 and b:
        working.say(f"{PowerSum({Fraction(1): a}).text(y)} = {top.text(x)}")
    result = _quotient(top, bottom, x)
    working.say(f"{y} = {write(result)}", write(result))
    tried = 0
    for number in _TRIED:
        try:
            forth = rational_value(put_in(formula, x, whole_or_fraction(number)))
            back = None if forth is None else rational_value(put_in(result, x, whole_or_fraction(forth)))
        except NoValue:
            continue
        require(back == number, "the inverse")
        tried += 1
    require(tried > 1, "the inverse, which could be compared nowhere")
    return result


def _quotient(top: PowerSum, bottom: PowerSum, letter: str) -> Expression:
    if bottom.degree:
        turn = Fraction(-1 if bottom.terms[bottom.degree] < 0 else 1)
        return Quotient(top.scaled(turn).expression(letter), bottom.scaled(turn).expression(letter))
    share = bottom.share(0)
    if share.denominator == 1 and abs(share) != 1 and all(one.denominator == 1 for one in top.terms.values()):
        turn = Fraction(-1 if share < 0 else 1)
        if len(top.terms) > 1:
            return Quotient(top.scaled(turn).expression(letter), Number(abs(share)))
    return top.scaled(1 / share).expression(letter)


def _linear(part: Polynomial, letter: str) -> tuple[Fraction, Fraction]:
    """a and b of ax + b; raises NotSurd for anything else."""
    found = {0: Fraction(0), 1: Fraction(0)}
    for monomial, share in part.terms.items():
        exponents = dict(monomial)
        count = exponents.pop(Letter(letter), 0)
        if exponents or count > 1 or share.fraction is None:
            raise NotSurd("the inverse of a function that is not of the first degree")
        found[count] = share.fraction
    return found[1], found[0]


def where_equal(task: WhereEqual, reading: Reading) -> Outcome:
    """The numbers for which a function has a value, or two functions are equal."""
    function, used = defined(Function(task.name, task.letter), reading)
    if task.other:
        other, more = defined(Function(task.other), reading)
        target = put_in(formula_of(other), other.letter, Letter(function.letter))
        used = (*used, *more)
    else:
        assert task.value is not None
        target = task.value
    working = Working(SKILL, used)
    found = _where(function, target, working)
    if not found:
        return working.derived(Answer("no solution"), confirmed_by="the equation has no real solution")
    answers = tuple(Answer(f"{function.letter} = {write(value)}", value, function.letter) for value in found)
    return working.derived(*answers, confirmed_by="put into the functions as they are given")


def _where(function: Function, target: Expression, working: Working) -> tuple[Expression, ...]:
    """The solutions of f(x) = target, with their lines."""
    x, formula = function.letter, formula_of(function)
    if {*letters_of(target)} - {x}:
        raise NotSurd("an equation in several letters")
    working.say(f"{write(formula)} = {write(target)}")
    whole = algebraic_fraction(Sum((formula, Negative(target))))
    above = in_one(whole.above, x)
    if not above.degree:
        if not above.terms:
            raise NoValue("the two are equal for every number")
        return ()
    if above.terms[above.degree] < 0:
        above = above.scaled(Fraction(-1))
    values = tuple(map(exact_expression, zeros(above)))
    if above.degree > 1:
        working.say(f"{above.text(x)} = 0")
        say_to_roots(above.expression(x), x, working.say)
    else:
        say_to_roots(formula, x, working.say, target)
    kept = []
    for value in values:
        try:
            left, right = (exact_value(put_in(side, x, value)) for side in (formula, target))
        except NoValue:
            continue
        require(left == right, "where the function has the value")
        kept.append(value)
    working.say(" or ".join(f"{x} = {write(value)}" for value in kept) or "there is no solution")
    return tuple(kept)


def in_one(part: Polynomial, letter: str) -> PowerSum:
    """A polynomial in one letter alone; raises NotSurd for others."""
    terms: dict[Fraction, Fraction] = {}
    for monomial, share in part.terms.items():
        exponents = dict(monomial)
        count = exponents.pop(Letter(letter), 0)
        if exponents or share.fraction is None:
            raise NotSurd("an equation in several letters, or with roots")
        terms[Fraction(count)] = share.fraction
    return PowerSum(terms)
