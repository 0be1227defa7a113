"""Takes the times and prints them as a table: `python -m tests.benchmarks`."""

import platform
import sys
from importlib.metadata import version

from paperaudit.cli import quicken

QUESTIONS = 120


def main() -> int:
    """Prints what was measured beside its bound; the status is 1 where a bound is missed.

    Collecting of memory and threads are set as the command `paperaudit` sets them, for all that is measured.
    """
    quicken()
    from tests.benchmarks.measured import SIZES, against_sympy, against_z3, growth, hard, typical
    from tests.benchmarks.questions import FIRST_SEED, derivable, shuffled

    cases = shuffled(derivable(QUESTIONS))
    solved, satisfied = against_sympy(cases), against_z3(cases)
    search, finding = growth()
    rows = [
        ("derivation against sympy.solve", f"{solved.ratio:.1f} times faster", "≥ 20", solved.ratio >= 20),
        ("existence and uniqueness against z3", f"{satisfied.ratio:.1f} times faster", "≥ 3", satisfied.ratio >= 3),
        ("growth of the derivation", f"exponent {search.exponent:.2f}", "≤ 1.25", search.exponent <= 1.25),
        ("growth of finding instances", f"exponent {finding.exponent:.2f}", "≤ 1.4", finding.exponent <= 1.4),
    ]
    for name, time, bound in (
        ("typical question", typical([case.question for case in cases]) * 1000, 10),
        ("hard question", hard() * 1000, 500),
    ):
        rows.append((name, f"{time:.1f} ms", f"< {bound} ms", time < bound))
    first = typical([case.question for case in cases], first_ever=True) * 1000
    for name, value, bound, met in rows:
        print(f"{name:38} {value:22} {bound:10} {'met' if met else 'MISSED'}")
    print(f"\na question whose sentences have shapes that were never read before: {first:.1f} ms")
    print(f"medians of {solved.count} questions (seeds from {FIRST_SEED:,}, those that linear relations settle):")
    print(f"  derivation {solved.ours * 1000:.2f} ms, sympy.solve {solved.theirs * 1000:.1f} ms")
    print(f"  closure {satisfied.ours * 1000:.2f} ms, z3 {satisfied.theirs * 1000:.1f} ms")
    for name, grown in (("derivation", search), ("instances", finding)):
        print(f"  {name}: " + ", ".join(f"{size} cells {grown.times[size] * 1000:.1f} ms" for size in SIZES))
    print(f"processor time; {platform.machine()}, {platform.system()}, Python {platform.python_version()}, ", end="")
    print(f"sympy {version('sympy')}, z3 {version('z3-solver')}")
    return 0 if all(met for *_, met in rows) else 1


if __name__ == "__main__":
    sys.exit(main())
