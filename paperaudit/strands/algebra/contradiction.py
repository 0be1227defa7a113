"""The proofs by contradiction that school knows, each with the numbers of the claim, tried before it is proved."""

from collections.abc import Callable
from math import gcd, isqrt

from paperaudit.maths.algebra.terms import NotTerms
from paperaudit.maths.primes import powers, prime_factors
from paperaudit.model.derivation import Answer, Derived
from paperaudit.model.proof_task import ByContradiction
from paperaudit.model.reading import Reading
from paperaudit.strands.algebra.working import Working

SKILL = "algebraic proof"
_MOST = 200


def by_contradiction(task: ByContradiction, reading: Reading) -> Derived:
    """The proof in lines; a claim that is false is refuted by a number. Raises NotTerms for what is not known."""
    working = Working(SKILL)
    refuted, confirmed = _PROOFS[task.what](task, working)
    if _holds_by_trial(task) is bool(refuted):
        raise NotTerms("a claim about which the proof and trials disagree")
    if refuted:
        working = Working(SKILL)
        working.conclude(refuted, "false")
        return working.derived(Answer(f"false: {refuted}"), confirmed_by="the numbers put in")
    return working.derived(Answer("proved"), confirmed_by=confirmed)


def _holds_by_trial(task: ByContradiction) -> bool | None:
    """Whether the claim holds for the numbers that are tried, None for one that no trial can tell; no proof is used."""
    tried = range(-_MOST, _MOST + 1)
    match task.what, task.numbers:
        case "root", (number, degree):
            return all(whole**degree != number for whole in range(number + 1)) if number <= _MOST**2 else None
        case "parity", (divisor, rest, power):
            return all(number % divisor == rest for number in tried if number**power % divisor == rest)
        case "no integers", (one, other, total):
            return all((total - one * across) % other for across in range(abs(other)))
    return None


def _root(task: ByContradiction, working: Working) -> tuple[str, str]:
    number, degree = task.numbers
    whole = _whole_root(number, degree)
    sign = "√" if degree == 2 else "∛"
    if whole is not None:
        return f"{sign}{number} = {whole}", ""
    prime = next(prime for prime, count in powers(prime_factors(number)) if count % degree)
    raised = "²" if degree == 2 else "³"
    single = number == prime
    working.say(f"assume that {sign}{number} = a/b, where a and b are integers without a common factor", uses=())
    working.say(f"{number}b{raised} = a{raised}")
    if not single:
        return _by_exponents(number, degree, prime, working)
    working.say(f"so a{raised} is a multiple of {prime}, and, as {prime} is prime, a is one too: a = {prime}c")
    front = prime ** (degree - 1)
    working.say(f"{prime}b{raised} = {prime**degree}c{raised}, b{raised} = {front}c{raised}")
    working.say(f"so b is a multiple of {prime} too")
    working.conclude(f"a and b have the common factor {prime}, a contradiction: {sign}{number} is irrational", "proved")
    return "", f"no whole number to the power {degree} is {number}, by trial"


def _by_exponents(number: int, degree: int, prime: int, working: Working) -> tuple[str, str]:
    """The prime is a factor of the two sides so many times that they cannot be equal."""
    count = dict(powers(prime_factors(number)))[prime]
    sign, raised = ("√", "²") if degree == 2 else ("∛", "³")
    times = "an even number of times" if degree == 2 else "a multiple of 3 times"
    working.say(f"the prime {prime} is a factor of a{raised} and of b{raised} {times}, and of {number} {_times(count)}")
    sides = "an odd number of times" if degree == 2 else "not a multiple of 3 times"
    working.say(f"so it is a factor of {number}b{raised} {sides}, of a{raised} {times}")
    working.conclude(f"the two sides cannot be equal, a contradiction: {sign}{number} is irrational", "proved")
    return "", f"no whole number to the power {degree} is {number}, by trial"


def _times(count: int) -> str:
    return {1: "once", 2: "twice"}.get(count, f"{count} times")


def _whole_root(number: int, degree: int) -> int | None:
    if degree == 2:
        root = isqrt(number)
        return root if root * root == number else None
    return next((root for root in range(number + 2) if root**3 == number), None)


def _no_end(task: ByContradiction, working: Working) -> tuple[str, str]:
    said, larger = task.said, task.end == "largest"
    turn, word = ("+", "larger") if larger else ("−", "smaller")
    if not task.numbers:
        return _no_rational_end(task, working)
    step, rest = task.numbers
    article = "an" if said[0] in "aeiou" else "a"
    working.say(f"assume that there is a {task.end} {said}, N", uses=())
    form = (f"{step}m" if step > 1 else "m") + (f" + {rest}" if rest else "")
    working.say(f"N = {form}, m an integer")
    moved = f"{step}(m {turn} 1)" if step > 1 else f"m {turn} 1"
    working.say(f"N {turn} {step} = {moved}{f' + {rest}' if rest else ''} is {article} {said} too")
    working.say(f"N {turn} {step} is {word} than N")
    working.conclude(f"this contradicts that N is the {task.end}: there is no {task.end} {said}", "proved")
    return "", f"the number after it worked out for the first {_tried_steps(step, rest)} of them"


def _tried_steps(step: int, rest: int) -> int:
    """The step tried on many numbers of the kind; raises NotTerms where it leads out of it."""
    for number in range(-_MOST, _MOST):
        member = step * number + rest
        if (member + step - rest) % step or (member - step - rest) % step:
            raise NotTerms("a step that leads to another kind of number")
    return 2 * _MOST


def _no_rational_end(task: ByContradiction, working: Working) -> tuple[str, str]:
    """Half of a positive rational number is smaller; one more is larger, one less is smaller."""
    half = task.end == "smallest" and task.said.startswith("positive")
    turned = "q/2" if half else "q + 1" if task.end == "largest" else "q − 1"
    word = "smaller" if task.end == "smallest" else "larger"
    working.say(f"assume that there is a {task.end} {task.said}, q = a/b, a and b integers", uses=())
    working.say(f"{turned} = {'a/(2b)' if half else f'(a {turned[2]} b)/b'} is a {task.said} too")
    working.say(f"{turned} is {word} than q")
    working.conclude(f"this contradicts that q is the {task.end}: there is no {task.end} {task.said}", "proved")
    return "", "the quotient of integers that it is has been written down, and compared"


def _primes(task: ByContradiction, working: Working) -> tuple[str, str]:
    working.say("assume that there are only finitely many primes, p₁, p₂, …, pₙ", uses=())
    working.say("let N = p₁ × p₂ × … × pₙ + 1")
    working.say("N leaves the remainder 1 when it is divided by any of these primes, so none of them is a factor of N")
    working.say("N is larger than 1, so it has a prime factor, which is not among p₁, p₂, …, pₙ")
    working.conclude("this contradicts that these are all primes: there are infinitely many primes", "proved")
    product = 1
    for number in range(2, _MOST):
        if prime_factors(number) == (number,):
            product *= number
            if product >= 10**9:
                break
            if any((product + 1) % (other) == 0 for other in range(2, number + 1)):
                raise NotTerms("a factor among the primes")
    return "", "the number N worked out for the first primes: none of them is a factor of it"


def _parity(task: ByContradiction, working: Working) -> tuple[str, str]:
    """By the remainders that n can leave, every one but the claimed one."""
    divisor, rest, power = task.numbers
    name, raised = task.said, "²" if power == 2 else "³"
    others = [other for other in range(divisor) if other != rest]
    failing = next((other for other in others if other**power % divisor == rest), None)
    kind = {(2, 0): "even", (2, 1): "odd"}.get((divisor, rest), f"a multiple of {divisor}")
    if failing is not None:
        return f"{name} = {failing}: {name}{raised} = {failing**power} is {kind}, and {failing} is not", ""
    working.say(f"assume that {name}{raised} is {kind} and {name} is not", uses=())
    start = working.steps[-1].statement
    for other in others:
        form = f"{divisor}m + {other}" if other else f"{divisor}m"
        left = other**power % divisor
        shown = f"{divisor} × (an integer)" + (f" + {left}" if left else "")
        working.say(f"{name} = {form}: {name}{raised} = ({form}){raised} = {shown}, which is not {kind}", uses=(start,))
    working.conclude(f"this contradicts that {name}{raised} is {kind}: {name} is {kind}", "proved")
    return "", f"every remainder by {divisor} worked out"


def _no_integers(task: ByContradiction, working: Working) -> tuple[str, str]:
    one, other, total = task.numbers
    common = gcd(one, other)
    x, y = task.said[0], task.said[1]
    if total % common == 0:
        pairs = ((a, b) for size in range(_MOST) for a in {size, -size} for b in range(-size, size + 1))
        found = next(((a, b) for a, b in pairs if one * a + other * b == total), None)
        if found is None:
            raise NotTerms("integers that are too large to be found by trial")
        return f"{x} = {found[0]} and {y} = {found[1]} are integers that satisfy it".replace("-", "−"), ""
    sign = "+" if other > 0 else "−"
    inside = f"{_times_letter(one // common, x)} {sign} {_times_letter(abs(other) // common, y)}"
    working.say(f"assume that there are such integers {x} and {y}", uses=())
    working.say(f"{_times_letter(one, x)} {sign} {_times_letter(abs(other), y)} = {common}({inside})")
    working.say(f"{inside} is an integer, so the left side is a multiple of {common}")
    working.conclude(f"{total} is no multiple of {common}, a contradiction: there are no such integers", "proved")
    if any((one * a + other * b - total) == 0 for a in range(-30, 31) for b in range(-30, 31)):
        raise NotTerms("integers that satisfy it")
    return "", "all integers between −30 and 30 put in"


def _times_letter(size: int, name: str) -> str:
    return name if size == 1 else f"−{name}" if size == -1 else f"{size}{name}".replace("-", "−")


def _sum_irrational(task: ByContradiction, working: Working) -> tuple[str, str]:
    working.say("let q be rational and r irrational; assume that s = q + r is rational", uses=())
    working.say("r = s − q")
    working.say("s and q are quotients of integers, s = a/b and q = c/d, so r = (ad − bc)/(bd) is one too")
    working.conclude("this contradicts that r is irrational: the sum is irrational", "proved")
    return "", "the difference of two quotients of integers written as one"


_PROOFS: dict[str, Callable[[ByContradiction, Working], tuple[str, str]]] = {
    "root": _root,
    "no end": _no_end,
    "primes": _primes,
    "parity": _parity,
    "no integers": _no_integers,
    "sum irrational": _sum_irrational,
}
