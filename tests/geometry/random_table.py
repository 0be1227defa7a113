"""Prints what becomes of random figures.

python -m tests.geometry.random_table [HOW MANY] [FROM] [school|lengths|similar|trigonometry]
"""

import sys
import time

from tests.geometry.judged_lengths import Table, judge
from tests.geometry.random_lengths import random_lengths
from tests.geometry.random_similar import random_similar
from tests.geometry.random_trigonometry import random_trigonometry
from tests.geometry.school_families import drawn

MAKERS = {"school": drawn, "lengths": random_lengths, "similar": random_similar, "trigonometry": random_trigonometry}


def main(words: list[str]) -> None:
    numbers = [int(word) for word in words if word.isdigit()] + [50, 0][len([w for w in words if w.isdigit()]) :]
    table, times = Table(), []
    for name, make in MAKERS.items():
        if any(word in MAKERS for word in words) and name not in words:
            continue
        for seed in range(numbers[1], numbers[1] + numbers[0]):
            question = make(seed)
            began = time.process_time()
            table.add(name, question, judge(question))
            times.append((time.process_time() - began, name, seed))
            if table.counts[name]["wrong"] and (name, "wrong") in table.examples:
                question, found = table.examples.pop((name, "wrong"))
                print(f"{name} {seed}: {found.why}\n    {question.as_yaml()}")
    print("\n".join(table.lines()))
    print("\n".join(table.wrong()))
    times.sort()
    print(f"median {times[len(times) // 2][0]:.3f} s, slowest {[(f'{t:.2f}', n, s) for t, n, s in times[-4:]]}")


if __name__ == "__main__":
    main(sys.argv[1:])
