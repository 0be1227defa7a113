"""Puts angle questions to newclid, an outside prover: the figure as drawn, the statements as its predicates.

Its angles are those from line to line modulo 180°, so that an angle is put with the sense of turning that the
drawing shows. It takes numbers only, no letters.
"""

import os
import re
import subprocess
import sys
from collections.abc import Iterable, Mapping
from fractions import Fraction
from functools import partial
from pathlib import Path
from types import SimpleNamespace
from typing import Any

SECONDS = 20
"""What one question may take."""

Spot = tuple[float, float]
At = Mapping[str, Spot]

SHAPES = {
    "parallelogram": ("para {a} {b} {d} {c}", "para {a} {d} {b} {c}"),
    "rectangle": ("para {a} {b} {d} {c}", "para {a} {d} {b} {c}", "perp {a} {b} {b} {c}"),
    "rhombus": ("para {a} {b} {d} {c}", "para {a} {d} {b} {c}", "cong {a} {b} {b} {c}"),
    "square": ("para {a} {b} {d} {c}", "para {a} {d} {b} {c}", "perp {a} {b} {b} {c}", "cong {a} {b} {b} {c}"),
}
PATTERNS: tuple[tuple[str, tuple[str, ...]], ...] = (
    (r"(?:triangle|segment) \w+", ()),
    (r"equilateral triangle (\w)(\w)(\w)", ("cong {0} {1} {1} {2}", "cong {0} {1} {0} {2}")),
    (r"(\w)(\w) = (\w)(\w)", ("cong {0} {1} {2} {3}",)),
    (r"(\w)(\w) ⊥ (\w)(\w)", ("perp {0} {1} {2} {3}",)),
    (r"(\w)(\w) ∥ (\w)(\w)", ("para {0} {1} {2} {3}",)),
    (r"(\w) lies on (\w)(\w)", ("coll {0} {1} {2}",)),
    (r"(\w)(\w) is produced to (\w)", ("coll {0} {1} {2}",)),
    (r"(\w)(\w) bisects ∠(\w)\w(\w)", ("eqangle {2} {0} {0} {1} {0} {1} {0} {3}",)),
    (r"(\w)(\w) is a tangent to the circle at (\w)", ("perp {0} {1} O {2}",)),
)


def goal(at: At, angle: str, degrees: Fraction) -> str:
    """∠PVQ of so many degrees as the turn from line VP to line VQ in the drawing's sense."""
    first, vertex, last = angle
    (px, py), (vx, vy), (qx, qy) = at[first], at[vertex], at[last]
    left = (px - vx) * (qy - vy) - (py - vy) * (qx - vx) > 0
    turn = (degrees if left else -degrees) / 180 % 1
    return f"aconst {vertex} {first} {vertex} {last} {turn.numerator}pi/{turn.denominator}".lower()


def assumptions(at: At, statements: Iterable[str]) -> list[str]:
    """The statements of a random figure as newclid's predicates; a KeyError for one of an unknown kind."""
    found = [predicate for statement in statements for predicate in _predicates(at, statement)]
    return list(
        dict.fromkeys(predicate if predicate.startswith("aconst") else predicate.lower() for predicate in found)
    )


def _predicates(at: At, statement: str) -> list[str]:
    named = re.fullmatch(r"(\w+) (\w)(\w)(\w)(\w)", statement)
    if named and named[1] in SHAPES:
        corners = dict(zip("abcd", named.groups()[1:], strict=True))
        return [pattern.format(**corners) for pattern in SHAPES[named[1]]]
    if re.fullmatch(r"(?:\w-)+\w", statement):
        first, second, *rest = statement.split("-")
        return [f"coll {first} {second} {other}" for other in rest]
    size = re.fullmatch(r"∠(\w{3}) = ([\d.]+)°", statement)
    if size:
        return [goal(at, size[1], Fraction(size[2]))]
    circle = re.fullmatch(r"circle with centre O through (.+)", statement)
    if circle:
        first, *others = re.findall(r"\b[A-Z]\b", circle[1])
        return [f"cong O {first} O {other}" for other in others] + [f"cyclic {first} {' '.join(others)}"]
    for pattern, predicates in PATTERNS:
        match = re.fullmatch(pattern, statement)
        if match:
            return [predicate.format(*match.groups()) for predicate in predicates]
    raise KeyError(statement)


class Referee:
    """newclid with its fast deductive engine; raises ImportError where one of the two is not installed."""

    def __init__(self) -> None:
        # The engine looks for its program on the path, where an environment that is not activated does not stand.
        os.environ["PATH"] = f"{Path(sys.executable).parent}{os.pathsep}{os.environ.get('PATH', '')}"
        import newclid.api
        import newclid.problem
        import newclid.symbols.points_registry
        import py_yuclid.yuclid_adapter
        from newclid.numerical.geometries import PointNum
        from newclid.proof_state import ProofBuildError
        from py_yuclid.api_default import HEDefault

        bounded = partial(subprocess.run, timeout=SECONDS)
        py_yuclid.yuclid_adapter.subprocess = SimpleNamespace(  # type: ignore[assignment]
            run=bounded, CalledProcessError=subprocess.CalledProcessError
        )
        self._refused: Any = ProofBuildError
        self._builder = lambda: newclid.api.GeometricSolverBuilder(rng=1, api_default=HEDefault())
        self._setup: Any = newclid.problem.ProblemSetup
        self._predicate: Any = newclid.problem.PredicateConstruction
        self._point: Any = newclid.symbols.points_registry.Point
        self._spot: Any = PointNum

    def confirms(self, at: At, statements: Iterable[str], claim: str) -> bool:
        """Whether the claim is proved from the statements; one that the drawing contradicts is not.

        Raises subprocess.TimeoutExpired after SECONDS.
        """
        setup = self._setup(
            points=tuple(self._point(name=name.lower(), num=self._spot(x=x, y=y)) for name, (x, y) in at.items()),
            assumptions=tuple(self._predicate.from_str(text) for text in assumptions(at, statements)),
            goals=(self._predicate.from_str(claim),),
        )
        try:
            return bool(self._builder().build(setup).run())
        except self._refused:
            return False
