"""The truth about a draft of fixtures/drafts, and the paper that a perfect reading of it would give."""

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from functools import cached_property
from pathlib import Path
from typing import Any

from ruamel.yaml import YAML

from paperaudit.model.place import NOWHERE
from paperaudit.readers.question_file import PaperRead, paper_of_tree
from paperaudit.readers.tree import Entries, Items, Node, Scalar

DRAFTS = Path(__file__).resolve().parents[2] / "fixtures" / "drafts"


@dataclass(frozen=True)
class Truth:
    """What a draft prints, told by hand; `held` is the content of its truth.yaml."""

    folder: Path
    held: Mapping[str, Any] = field(repr=False)

    @property
    def draft(self) -> Path:
        """The PDF that is read."""
        return self.folder / "draft.pdf"

    @cached_property
    def answers(self) -> Path | None:
        """The setter's own answers, in a file of their own."""
        found = [self.folder / name for name in ("answers.yaml", "key.pdf") if (self.folder / name).is_file()]
        return found[0] if found else None

    def listed(self, key: str) -> Sequence[Mapping[str, Any]]:
        """One of the lists: questions, parts, expressions, figures, faults …"""
        return self.held.get(key) or ()


def truths(names: Sequence[str] = ()) -> list[Truth]:
    """All drafts that have a truth, or those with these names."""
    reader = YAML(typ="safe", pure=True)
    return [
        Truth(file.parent, reader.load(file.read_text(encoding="utf-8")))
        for file in sorted(DRAFTS.glob("*/truth.yaml"))
        if (file.parent / "draft.pdf").is_file() and (not names or file.parent.name in names)
    ]


def perfectly_read(truth: Truth) -> PaperRead:
    """The paper as the truth tells it: what the audit finds here, a reading of the PDF can find."""
    figures: dict[str, list[Mapping[str, Any]]] = {}
    for figure in truth.listed("figures"):
        figures.setdefault(str(figure["question"]), []).append(figure)
    sections = {n: section for section in truth.listed("sections") for n in section["questions"]}
    questions = [_question(truth, one, figures) for one in truth.listed("questions")]
    paper: dict[str, Any] = {key: truth.held[key] for key in ("title", "minutes", "total") if key in truth.held}
    if truth.held.get("claims"):
        paper["cover"] = dict(truth.held["claims"])
    if sections:
        paper["sections"] = [
            {k: v for k, v in section.items() if k != "questions"}
            | {"questions": [q for q in questions if q["number"] in section["questions"]]}
            for section in truth.listed("sections")
        ]
    else:
        paper["questions"] = questions
    return paper_of_tree(_node(paper))


def _question(truth: Truth, held: Mapping[str, Any], figures: Mapping[str, list[Mapping[str, Any]]]) -> dict[str, Any]:
    number = str(held["number"])
    own = [part for part in truth.listed("parts") if re.match(rf"{re.escape(number)}(?:\.|$)", part["id"])]
    found: dict[str, Any] = {"number": number}
    if "total" in held:
        found["total"] = held["total"]
    shown = [one for name, listed in figures.items() if name == number for one in listed]
    texts = [held.get("text", "")]
    texts += [lead["text"] for lead in truth.listed("leads") if lead["id"] == number]
    if text := " ".join(filter(None, texts)):
        found["text"] = text
    found |= _drawn(shown)
    for table in truth.listed("tables"):
        if str(table["question"]) == number:
            found["table"] = {name: list(cells) for name, cells in table["columns"].items()}
    if len(own) == 1 and own[0]["id"] == number:
        return found | {key: value for key, value in _part(truth, own[0], figures, number).items() if key != "number"}
    found["parts"] = [_part(truth, part, figures, number) for part in own]
    return found


def _part(truth: Truth, part: Mapping[str, Any], figures: Mapping[str, Any], question: str) -> dict[str, Any]:
    name = part["id"]
    leads = [
        lead["text"] for lead in truth.listed("leads") if name.startswith(lead["id"] + ".") and lead["id"] != question
    ]
    found: dict[str, Any] = {"number": name if name[-1].isdigit() else name.removeprefix(question + ".")}
    found["text"] = " ".join([*leads, part["text"]])
    if "marks" in part:
        found["marks"] = part["marks"]
    if "options" in part:
        found["options"] = dict(part["options"])
    if "answer" in part:
        found["answer"] = part["answer"]
    if name != question:
        found |= _drawn(figures.get(name, ()))
    elif name in figures:
        found |= _drawn(figures[name])
    return found


def _drawn(figures: Sequence[Mapping[str, Any]]) -> dict[str, Any]:
    drawn = [one for one in figures if not one.get("unread") and not one.get("raster")]
    if not drawn:
        return {}
    lines = [line for one in drawn for line in one.get("lines", ())]
    circles = [circle for one in drawn for circle in one.get("circles", ()) if circle.startswith("circle")]
    pairs = [line.replace("-", "") for line in lines if line.count("-") == 1]
    rows = [line for line in lines if line.count("-") > 1]
    stated = ([f"segments {', '.join(pairs)}"] if pairs else []) + rows + circles
    found: dict[str, Any] = {"figure": stated}
    if given := [fact for one in drawn for fact in one.get("given", ())]:
        found["given"] = given
    return found


def _node(value: object) -> Node:
    if isinstance(value, Mapping):
        return Entries(tuple((Scalar(str(key), NOWHERE), _node(one)) for key, one in value.items()), NOWHERE)
    if isinstance(value, list | tuple):
        return Items(tuple(_node(one) for one in value), NOWHERE)
    return Scalar(str(value), NOWHERE)
