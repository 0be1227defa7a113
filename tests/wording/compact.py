"""Facts and asks on one line each, for cases that are written as data."""

from paperaudit.maths.write import write
from paperaudit.model import fact as facts
from paperaudit.model.ask import Ask, Establish, Find, Rounded, Solve, Subject, Task, Transform, WriteAs
from paperaudit.model.reckoning import Reckoning


def fact_line(fact: facts.Fact) -> str:
    """A fact as `fixtures/questions/wording.yaml` writes it."""
    match fact:
        case facts.Shape(kind, points, qualities):
            return " ".join(("shape", kind, "".join(points), *qualities))
        case facts.Drawn(kind, path):
            return f"drawn {kind} {''.join(path)}"
        case facts.Collinear(points, ordered):
            return " ".join(("line" if ordered else "somehow on a line", *points))
        case facts.Crossing(first, second, point, within):
            return f"cross {''.join(first)} {''.join(second)} {point}" + ("" if within else " or beyond")
        case facts.Parallel(paths):
            return " ".join(("parallel", *map("".join, paths)))
        case facts.Perpendicular(first, second):
            return f"perpendicular {''.join(first)} {''.join(second)}"
        case facts.BisectsAngle(path, angle):
            return f"bisects {''.join(path)} {write(angle)}"
        case facts.Midpoint(point, path):
            return f"midpoint {point} {''.join(path)}"
        case facts.RoundPoint(centre, points):
            return " ".join(("round", centre, *points))
        case facts.Inside(point, polygon):
            return f"inside {point} {''.join(polygon)}"
        case facts.Outside(point, polygon):
            return f"outside {point} {''.join(polygon)}"
        case facts.RayInside(vertex, arm, point, other):
            return f"ray {vertex}{point} inside ∠{arm}{vertex}{other}"
        case facts.Between(point, first, second):
            return f"between {point} {''.join(first)} {''.join(second)}"
        case facts.Sides(points, line, same):
            return f"sides {' '.join(points)} {''.join(line)} {'same' if same else 'opposite'}"
        case facts.Holds(relation):
            return f"holds {write(relation)}"
        case facts.Congruent(first, second):
            return f"congruent {''.join(first)} {''.join(second)}"
        case facts.Similar(first, second):
            return f"similar {''.join(first)} {''.join(second)}"
        case facts.Circle(centre, points):
            return " ".join(("circle", centre or "?", *points))
        case facts.Tangent(path, at, centre):
            return f"tangent {''.join(path)} at {at} circle {centre or '?'}"
        case facts.Diameter(path, centre):
            return f"diameter {''.join(path)} circle {centre or '?'}"
        case facts.BisectsSegment(path, segment, perpendicular):
            return f"halves {''.join(path)} {''.join(segment)}" + (" at right angles" if perpendicular else "")
        case facts.Midline(path, polygon):
            return f"midline {''.join(path)} {''.join(polygon)}"
        case facts.Centre(kind, point, polygon):
            return f"{kind} {point} {''.join(polygon)}"
        case facts.Incircle(centre, polygon):
            return f"incircle {centre or '?'} {''.join(polygon)}"
        case facts.CirclesTouch(first, second, at, inside):
            return " ".join(word for word in ("touch", first, second, at and f"at {at}", inside) if word)
        case facts.OnArc(points, arc):
            return " ".join(("on arc", *points, write(arc)))
        case facts.AngleName(name, angle):
            return f"name {name.vertex}{name.number} {write(angle)}"


def ask_line(ask: Ask) -> str:
    """An ask as `fixtures/questions/wording.yaml` writes it: the task, then what goes with it."""
    words = [_task_line(ask.task)]
    if ask.accuracy is not None:
        kind, amount = ask.accuracy.kind, ask.accuracy.amount
        words.append(f"to the nearest {amount}" if kind == "nearest" else f"to {amount} {kind}")
    if ask.unit:
        words.append(f"in {ask.unit}")
    if ask.reasons:
        words.append("with reasons")
    return " | ".join(words)


def _task_line(task: Task) -> str:
    match task:
        case Find(wanted):
            return f"find {', '.join(map(write, wanted))}"
        case Establish(claims, how):
            return f"{how} {'; '.join(map(fact_line, claims))}"
        case Solve(relations, letters):
            return f"solve {'; '.join(map(write, relations))}" + (f" for {', '.join(letters)}" if letters else "")
        case Transform(command, expression):
            return f"{command} {write(expression)}"
        case Rounded(expression):
            return f"round {write(expression)}"
        case WriteAs(expression, form):
            return f"write {write(expression)} as {form}"
        case Subject(letter, relation):
            return f"make {letter} the subject of {write(relation)}"
        case Reckoning(kind, amounts, wanted):
            known = "; ".join(f"{one.name} = {write(one.value)}" for one in amounts)
            return f"{kind}: {known}; wanted: {', '.join(wanted)}"
