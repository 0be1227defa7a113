"""Prints what becomes of each family of school questions.

python -m tests.geometry.school_table [EACH] [FAMILY…] [--open | --impossible]
"""

import sys
import time
from collections import Counter

from tests.geometry import judged_lengths
from tests.geometry.judged_lengths import Judged, Table
from tests.geometry.school_families import REGISTER
from tests.geometry.school_sheet import Family, SchoolQuestion, open_question, set_question


def _judge(family: Family, seed: int, mode: str) -> tuple[SchoolQuestion, Judged] | None:
    if mode == "--open":
        pair = open_question(family, seed)
        return None if pair is None else (pair[0], judged_lengths.judge_open(*pair))
    question = set_question(family, seed)
    if mode == "--impossible":
        if question.loose or question.ask in question.letters:
            return None
        question = judged_lengths.contradicted(question, 0.15)
        return question, judged_lengths.judge_contradicted(question)
    return question, judged_lengths.judge(question)


def main(words: list[str]) -> None:
    mode = next((word for word in words if word.startswith("--")), "")
    each = next((int(word) for word in words if word.isdigit()), 5)
    named = [word for word in words if word in REGISTER]
    table, times = Table(), []
    for name, (family, _) in REGISTER.items():
        if named and name not in named:
            continue
        for seed in range(each):
            began = time.process_time()
            found = _judge(family, seed, mode)
            times.append((time.process_time() - began, name, seed))
            if found:
                table.add(name, *found)
    print("\n".join(table.lines({name: weight for name, (_, weight) in REGISTER.items()})))
    print("\n".join(table.wrong()))
    spent: Counter[str] = Counter()
    for seconds, name, _ in times:
        spent[name] += seconds
    print("slowest on the whole:", [(name, round(seconds / each, 2)) for name, seconds in spent.most_common(12)])
    times.sort()
    print(f"median {times[len(times) // 2][0]:.3f} s, slowest {[(f'{t:.2f}', n, s) for t, n, s in times[-4:]]}")


if __name__ == "__main__":
    main(sys.argv[1:])
