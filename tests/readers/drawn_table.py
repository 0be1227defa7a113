"""Prints how the figures of all fixture drafts are read: `python -m tests.readers.drawn_table [NAME…]`."""

import sys
from pathlib import Path

from ruamel.yaml import YAML

from paperaudit.readers.draft.drawing.drawn_figure import DrawnFigure
from paperaudit.readers.draft.drawing.figures import figures_of
from paperaudit.readers.draft.open_pdf import pages_of
from tests.readers.drawn_score import DrawnScore, score

FIXTURES = Path(__file__).resolve().parents[2] / "fixtures"
FOLDERS = sorted(path.parent for kind in ("drafts", "drawings") for path in (FIXTURES / kind).glob("*/truth.yaml"))


def scores_of(folder: Path) -> list[tuple[dict, DrawnScore, DrawnFigure | None]]:
    """Every figure of a draft's truth with the reading that fits it best on its page."""
    truth = YAML(typ="safe", pure=True).load((folder / "truth.yaml").read_text(encoding="utf-8"))
    read = {
        page.number: list(figures_of(page))
        for page in pages_of((folder / "draft.pdf").read_bytes(), str(folder / "draft.pdf"))
    }
    found = []
    wanted = list(truth.get("figures") or ())
    pairs = [(_alike(one, figure), at, one) for at, figure in enumerate(wanted) for one in read.get(figure["page"], [])]
    chosen: dict[int, DrawnFigure] = {}
    for _, at, one in sorted(pairs, key=lambda pair: -pair[0]):
        if at not in chosen and one in read[one.page]:
            chosen[at] = one
            read[one.page].remove(one)
    for at, figure in enumerate(wanted):
        found.append((figure, score(chosen.get(at), figure), chosen.get(at)))
    for rest in read.values():
        for one in rest:
            if not one.unread:
                found.append(({"page": one.page}, DrawnScore(invented=["a figure that is not there"]), one))
    return found


def _alike(read: DrawnFigure, truth: dict) -> float:
    """How well a reading fits: what is right less what is wrong."""
    found = score(read, truth)
    return found.right - len(found.missing) - len(found.invented)


def main(names: list[str]) -> None:
    exact = total = 0
    for folder in FOLDERS:
        if names and folder.name not in names:
            continue
        scored = scores_of(folder)
        own = sum(one.exact for _, one, _ in scored)
        print(f"{folder.name}: {own} of {len(scored)}")
        exact, total = exact + own, total + len(scored)
        for figure, one, read in scored:
            if not one.exact:
                where = f"page {figure['page']}, {figure.get('question', figure.get('part', ''))}"
                print(f"  {where}: {one.unread or ''} missing {one.missing} invented {one.invented}")
                if names and read is not None:
                    print("   ", [fact.text for fact in read.figure], [fact.text for fact in read.given])
                    print("   ", read.doubts)
    print(f"in all: {exact} of {total}")


if __name__ == "__main__":
    main(sys.argv[1:])
