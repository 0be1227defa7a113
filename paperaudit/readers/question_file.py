"""Reads a question file: YAML text to a paper, or every complaint about it at once."""

from collections.abc import Iterable
from dataclasses import dataclass

from paperaudit.errors import Complaint, InputError
from paperaudit.model.paper import Paper
from paperaudit.readers.complaints import complaint, from_shape_error, without
from paperaudit.readers.rejoined import rejoined
from paperaudit.readers.structure import faults
from paperaudit.readers.tree import Entries, Node, Route, plain, shown
from paperaudit.readers.yaml_tree import read_tree

_PRUNINGS = 3
"""A value left out may leave its list too short, and that its holder without what it needs."""


@dataclass(frozen=True, slots=True)
class PaperRead:
    """A paper as far as it could be read, and what could not.

    With complaints there may still be a paper, of what is left without the faulty values; it serves
    to find the unreadable statements of the same file and is never audited.
    """

    paper: Paper | None
    complaints: tuple[Complaint, ...] = ()

    def whole(self) -> Paper:
        """The paper where there is nothing to complain of; raises InputError otherwise."""
        if self.complaints or self.paper is None:
            raise InputError(*self.complaints)
        return self.paper


def read_question_file(text: str, file: str) -> PaperRead:
    """The paper that YAML `text` holds; `file` is how places and complaints name it.

    >>> read_question_file("questions: [{number: 1, ask: 2 + 2, marks: 1}]", "t.yaml").whole().marks_sum()
    1
    """
    tree, complaints = read_tree(text, file)
    return PaperRead(None, complaints) if tree is None else paper_of_tree(tree, complaints)


def paper_of_tree(tree: Node, before: tuple[Complaint, ...] = ()) -> PaperRead:
    """The paper that a tree holds, whichever kind of file it came from; `before` are its reader's complaints."""
    from paperaudit.readers.build import build_paper
    from paperaudit.readers.shape import PaperShape, shape_of

    tree = rejoined(tree)
    if not isinstance(tree, Entries):
        message = f"{shown(tree)} was read, expected keys such as title and questions"
        return PaperRead(None, (*before, complaint(tree, (), message)))
    complaints = [*before, *faults(tree)]
    shape, errors = shape_of(PaperShape, plain(tree))
    complaints += [from_shape_error(tree, error) for error in errors]
    sound: Node = tree
    for _ in range(_PRUNINGS):
        if not errors:
            break
        sound = without(sound, (_to_leave_out(error["type"], tuple(error["loc"])) for error in errors))
        shape, errors = shape_of(PaperShape, plain(sound))
    paper = build_paper(shape, sound) if shape else None
    return PaperRead(paper, in_order(complaints))


def _to_leave_out(kind: str, route: Route) -> Route:
    """What goes so that the rest can be read: a part without its number, or the faulty value itself."""
    if kind == "missing":
        return route[:-1]
    return route[:-2] if route and route[-1] == "[key]" else route


def in_order(complaints: Iterable[Complaint]) -> tuple[Complaint, ...]:
    """Complaints from the top of each file to its end, each once."""
    once = tuple(dict.fromkeys(complaints))
    files = list(dict.fromkeys(one.place.file for one in once))
    return tuple(
        sorted(once, key=lambda one: (files.index(one.place.file), one.place.line, one.place.cell, one.place.column))
    )
