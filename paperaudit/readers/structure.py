"""What a question file may not say even where every single value has the right kind."""

from collections.abc import Iterator

from paperaudit.errors import Complaint
from paperaudit.readers.complaints import bound_id, complaint, did_you_mean, nearest
from paperaudit.readers.tree import Entries, Items, Node, Route
from paperaudit.resources import shipped

_OF_A_PART = ("ask", "answer", "marks", "split", "options")
_NAMED_FILES = {"marking": "conventions", "reasons": "reasons", "blueprint": "blueprints"}


def faults(tree: Entries) -> Iterator[Complaint]:
    """Complaints about the whole: missing or doubled questions, repeated part numbers, unknown schemes."""
    yield from _faults_of_questions(tree)
    yield from _unknown_schemes(tree)
    # What a draft prints is kept as it is printed; that it repeats a number is a finding.
    printed = tree.get("printed") is not None
    for route, question in questions_of(tree):
        yield from () if printed else _repeated_parts(tree, route, question)
        for inner, holder in ((route, question), *parts_below(route, question)):
            yield from _misplaced(tree, inner, holder)


def questions_of(tree: Entries) -> Iterator[tuple[Route, Entries]]:
    """Every question with the route to it, in order of print."""
    for at, question in enumerate(tree.listed("questions")):
        if isinstance(question, Entries):
            yield ("questions", at), question
    for number, section in enumerate(tree.listed("sections")):
        if isinstance(section, Entries):
            for at, question in enumerate(section.listed("questions")):
                if isinstance(question, Entries):
                    yield ("sections", number, "questions", at), question


def parts_below(route: Route, holder: Entries) -> Iterator[tuple[Route, Entries]]:
    """Every part of a question and every part of these parts, outer ones first."""
    for at, part in enumerate(holder.listed("parts")):
        if isinstance(part, Entries):
            inner = (*route, "parts", at)
            yield inner, part
            yield from parts_below(inner, part)


def _faults_of_questions(tree: Entries) -> Iterator[Complaint]:
    has_questions, has_sections = tree.get("questions") is not None, tree.get("sections") is not None
    if has_questions and has_sections:
        message = "both 'questions' and 'sections' were read, expected one of them"
        yield complaint(tree, ("sections",), message)
    # A misspelt key is complained of as such, with the key that it is near to.
    near = any(nearest(key.text, ("questions", "sections")) for key, _ in tree.pairs)
    if not (has_questions or has_sections or near):
        yield complaint(tree, (), "no 'questions' were read, expected 'questions' or 'sections'")
    for name in ("questions", "sections"):
        held = tree.get(name)
        if isinstance(held, Items) and not held.values:
            yield complaint(tree, (name,), f"'{name}' is an empty list, expected at least one")


def _unknown_schemes(tree: Entries) -> Iterator[Complaint]:
    for key, folder in _NAMED_FILES.items():
        name = tree.text(key)
        known = tuple(sorted(path.stem for path in shipped("schemes", folder).glob("*.yaml")))
        if name and known and name not in known:
            message = f"{key} is '{name[:40]}', expected one of {', '.join(known)}{did_you_mean(name, known)}"
            yield complaint(tree, (key,), message)


def _repeated_parts(tree: Node, route: Route, question: Entries) -> Iterator[Complaint]:
    """Two parts with one number: findings and workbooks could not tell which of them is meant."""
    first: dict[str, int] = {}
    for inner, part in parts_below(route, question):
        number = part.text("number").strip()
        if not number:
            continue
        name = bound_id("", [*_numbers_on(tree, inner)])
        if name in first:
            message = f"the number '{number[:20]}' was read twice, expected it once"
            where = f" (it stands at line {first[name]} too)" if first[name] else ""
            yield complaint(tree, (*inner, "number"), message + where)
        else:
            first[name] = part.place.line


def _numbers_on(tree: Node, route: Route) -> Iterator[str]:
    node = tree
    for step in route:
        if isinstance(node, Entries):
            inner = node.get(str(step))
        else:
            inner = node.values[step] if isinstance(node, Items) and isinstance(step, int) else None
        if inner is None:
            return
        node = inner
        if isinstance(node, Entries) and node.text("number"):
            yield node.text("number").strip("(). ")


def _misplaced(tree: Node, route: Route, holder: Entries) -> Iterator[Complaint]:
    """What belongs to a single mark allocation cannot stand above several of them."""
    if not any(True for _ in holder.listed("parts")):
        return
    for key in _OF_A_PART:
        if holder.get(key) is not None:
            hint = " (the marks printed at a question are its 'total')" if key == "marks" else ""
            message = f"'{key}' was read beside 'parts', expected it at each of the parts{hint}"
            yield complaint(tree, (*route, key), message)
