"""How many published values each topic of the strands is checked against: `python -m tests.strands.published`.

A value counts where its source is named; what is common practice without a source does not. The geometry of
`fixtures/published/` (Euclid, classical values, figures of the books) is counted elsewhere.
"""

import json
from collections import Counter
from typing import Any

from ruamel.yaml import YAML

from tests.strands.asked import FIXTURES

FOLDER = FIXTURES / "published"
STRAND_OF = {
    "number": "number",
    "ratio": "ratio, money, measures, solids",
    "algebra": "algebra",
    "graphs-and-functions": "graphs, calculus, trigonometry, transformations",
    "chance": "statistics, probability",
    "words": "word problems",
}
"""The files of one strand or a few, which have a topic a value."""

_FURTHER = {
    "number": "number", "algebra": "algebra", "statistics": "statistics, probability",
    **dict.fromkeys(
        ("sequences", "functions", "calculus", "trigonometry", "transformations", "coordinates"),
        "graphs, calculus, trigonometry, transformations",
    ),
}  # fmt: skip
_BOOK = {
    "algebra": ("algebra", ""),
    "number": ("number", "calculations"),
    "graphs": ("graphs, calculus, trigonometry, transformations", "coordinates"),
    "probability": ("statistics, probability", "probability"),
    "statistics": ("statistics, probability", ""),
}
_SKILLS = {
    "inequality": "inequalities", "simultaneous": "systems", "quadratic": "quadratic", "factorise": "factorising",
    "perfect square": "factorising", "difference of two squares": "factorising", "common factor": "factorising",
    "complete the square": "quadratic", "parabola": "quadratic", "linear": "linear equations",
    "identity": "linear equations", "no solution": "linear equations", "mean": "mean", "median": "median",
    "mode": "median",
}  # fmt: skip
"""The topic that a skill of the worked examples belongs to, by the first word that fits; "forming equations" else."""


def entries(name: str) -> list[dict[str, Any]]:
    """The values of a file of `fixtures/published/`."""
    loaded: list[dict[str, Any]] = YAML(typ="safe", pure=True).load(FOLDER / f"{name}.yaml")
    return loaded


def counts() -> Counter[tuple[str, str]]:
    """Published values by strand and topic."""
    found: Counter[tuple[str, str]] = Counter()
    for name, strand in STRAND_OF.items():
        for entry in entries(name):
            if "no source" not in entry["source"] and not str(entry["source"]).startswith("osx"):
                found[strand, entry.get("topic", strand)] += 1
    for entry in entries("further"):
        found[_FURTHER[entry["strand"]], entry["topic"]] += 1
    del found["ratio, money, measures, solids", "worked examples"]
    return found


def book_counts() -> Counter[tuple[str, str]]:
    """The items of the worked examples by strand and topic."""
    found: Counter[tuple[str, str]] = Counter()
    for item in json.loads((FOLDER / "openstax_worked_examples.json").read_text("utf-8"))["items"]:
        if item["strand"] in _BOOK:
            strand, topic = _BOOK[item["strand"]]
            fitting = (name for word, name in _SKILLS.items() if word in item["skill"])
            found[strand, topic or next(fitting, "forming equations")] += 1
    return found


def main() -> None:
    """Prints the table."""
    own, book = counts(), book_counts()
    for strand, topic in sorted({*own, *book}):
        print(f"{strand:52} {topic:34} {own[strand, topic]:4} {book[strand, topic]:4}")
    print(f"{'in all':87} {own.total():4} {book.total():4}")


if __name__ == "__main__":
    main()
