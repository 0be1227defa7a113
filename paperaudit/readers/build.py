"""Builds the paper from a question file whose shape is right, each value with its place."""

import re
from collections.abc import Sequence
from dataclasses import dataclass

from paperaudit.model.paper import CognitiveLevel, Line, Paper, Part, Question, Section, Sketch, Subtotal
from paperaudit.model.printed import PrintedPage
from paperaudit.readers.complaints import bound_id
from paperaudit.readers.shape import PaperShape, PartShape, PrintedShape, QuestionShape
from paperaudit.readers.tree import Node, Route, place_of

_NOT_TO_SCALE = re.compile(r"\bnot\s+(?:drawn\s+)?to\s+scale\b", re.IGNORECASE)
_BEGINS_A_SENTENCE = re.compile(
    r"(?:Given|Find|Calculate|Determine|Write|Show|Prove|Solve|State|Explain|Use|Hence|If|What|Which|How|The)\b"
)
REPEATED = "′"
"""Behind the number of a question that repeats an earlier one's, so that ids stay unique."""


def build_paper(shape: PaperShape, tree: Node) -> Paper:
    """The paper that `shape` holds; `tree`, which it was made from, gives the places."""
    builder = _Builder(tree)
    if shape.sections:
        sections = tuple(
            Section(
                questions=builder.questions(section.questions, ("sections", at, "questions")),
                title=section.title,
                total=section.total,
                place=place_of(tree, ("sections", at)),
            )
            for at, section in enumerate(shape.sections)
        )
    else:
        sections = (Section(builder.questions(shape.questions, ("questions",))),)
    claims = shape.cover.model_dump(exclude_none=True) if shape.cover else {}
    return Paper(
        title=shape.title,
        sections=sections,
        level=shape.level,
        minutes=shape.minutes,
        total=shape.total,
        marking=shape.marking,
        reasons=shape.reasons,
        blueprint=shape.blueprint,
        claims=tuple(claims.items()),
        printed=builder.printed(shape.printed),
        captions=tuple(shape.captions),
        place=place_of(tree, ("total",)) if shape.total is not None else tree.place,
    )


@dataclass(frozen=True, slots=True)
class _Inherited:
    """What a part of a part takes over from the part above it."""

    text: str = ""
    figure: tuple[Line, ...] = ()
    given: tuple[Line, ...] = ()
    reasons: bool | None = None
    skills: tuple[str, ...] = ()
    level: CognitiveLevel | None = None
    sketch: Sketch = ()
    drawn: bool = False
    doubts: tuple[str, ...] = ()


class _Builder:
    """Keeps the ids that are taken while questions and parts are built in order."""

    def __init__(self, tree: Node) -> None:
        self._tree = tree
        self._subtotals: list[Subtotal] = []
        self._questions: dict[str, int] = {}
        self._taken: set[str] = set()

    def questions(self, shapes: Sequence[QuestionShape], route: Route) -> tuple[Question, ...]:
        return tuple(self._question(shape, (*route, at)) for at, shape in enumerate(shapes))

    def printed(self, shapes: Sequence[PrintedShape]) -> tuple[PrintedPage, ...]:
        routes = [("printed", at) for at in range(len(shapes))]
        return tuple(
            PrintedPage(
                shape.page,
                shape.numbered,
                shape.smallest,
                shape.faintest,
                place=place_of(self._tree, route),
                small=place_of(self._tree, (*route, "smallest")),
                faint=place_of(self._tree, (*route, "faintest")),
            )
            for shape, route in zip(shapes, routes, strict=True)
        )

    def _question(self, shape: QuestionShape, route: Route) -> Question:
        repeats = self._questions.get(shape.number, 0)
        self._questions[shape.number] = repeats + 1
        name = shape.number + REPEATED * repeats
        doubts = tuple(shape.doubts)
        self._subtotals = []
        shared = _Inherited(reasons=shape.reasons, skills=tuple(shape.skills), level=shape.level, doubts=doubts)
        if shape.parts:
            parts = self._parts(shape.parts, (*route, "parts"), name, shared)
        else:
            parts = (self._leaf(shape, route, name, _Inherited(), is_question=True),)
        return Question(
            number=shape.number,
            parts=parts,
            text=self._line(shape.text, (*route, "text")),
            figure=self._lines(shape.figure, (*route, "figure")),
            given=self._lines(shape.given, (*route, "given")),
            total=shape.total,
            sketch=_sketch(shape),
            table=tuple((column, tuple(cells)) for column, cells in shape.table.items()),
            not_to_scale=bool(shape.text and _NOT_TO_SCALE.search(shape.text)),
            figure_page=shape.figure_page,
            subtotals=tuple(self._subtotals),
            drawn=shape.drawn,
            doubts=doubts,
            place=place_of(self._tree, route),
        )

    def _parts(self, shapes: Sequence[PartShape], route: Route, above: str, shared: _Inherited) -> tuple[Part, ...]:
        parts: list[Part] = []
        for at, shape in enumerate(shapes):
            here = (*route, at)
            name = bound_id(above, [shape.number])
            if shape.total is not None:
                self._subtotals.append(Subtotal(name, shape.total, place_of(self._tree, (*here, "total"))))
            if not shape.parts:
                parts.append(self._leaf(shape, here, name, shared))
                continue
            inner = _Inherited(
                text=_joined(shared.text, shape.text or ""),
                figure=shared.figure + self._lines(shape.figure, (*here, "figure")),
                given=shared.given + self._lines(shape.given, (*here, "given")),
                reasons=shared.reasons if shape.reasons is None else shape.reasons,
                skills=tuple(shape.skills) or shared.skills,
                level=shape.level or shared.level,
                sketch=_sketch(shape) or shared.sketch,
                drawn=shared.drawn or shape.drawn,
                doubts=shared.doubts + tuple(shape.doubts),
            )
            parts.extend(self._parts(shape.parts, (*here, "parts"), name, inner))
        return tuple(parts)

    def _leaf(self, shape: PartShape, route: Route, name: str, above: _Inherited, is_question: bool = False) -> Part:
        """One mark allocation; what the question itself holds already is not repeated in its single part."""
        while name in self._taken:
            name += REPEATED
        self._taken.add(name)
        own_text = None if is_question else self._line(shape.text, (*route, "text"))
        if above.text:
            place = own_text.place if own_text else place_of(self._tree, route)
            own_text = Line(_joined(above.text, own_text.text if own_text else ""), place)
        return Part(
            id=name,
            number=shape.number,
            text=own_text,
            figure=() if is_question else above.figure + self._lines(shape.figure, (*route, "figure")),
            given=() if is_question else above.given + self._lines(shape.given, (*route, "given")),
            ask=self._line(shape.ask, (*route, "ask")),
            answer=self._line(shape.answer, (*route, "answer")),
            marks=shape.marks,
            split=tuple(shape.split),
            key_marks=shape.key_marks,
            reasons=above.reasons if shape.reasons is None else shape.reasons,
            skills=tuple(shape.skills) or above.skills,
            level=shape.level or above.level,
            page=shape.page,
            space=shape.space,
            options=tuple(
                (letter, Line(option, place_of(self._tree, (*route, "options", letter))))
                for letter, option in shape.options.items()
            ),
            sketch=() if is_question else _sketch(shape) or above.sketch,
            drawn=not is_question and (above.drawn or shape.drawn),
            doubts=above.doubts + tuple(shape.doubts),
            place=place_of(self._tree, route),
        )

    def _line(self, text: str | None, route: Route) -> Line | None:
        return Line(text, place_of(self._tree, route)) if text else None

    def _lines(self, texts: Sequence[str], route: Route) -> tuple[Line, ...]:
        return tuple(Line(text, place_of(self._tree, (*route, at))) for at, text in enumerate(texts))


def _sketch(shape: PartShape) -> Sketch:
    return tuple((point, at[0], at[1]) for point, at in shape.sketch.items())


def _joined(stem: str, own: str) -> str:
    """A part's words behind its stem; a stem without a stop runs on: "Now" and "Given that" make "Now given that"."""
    if stem.strip()[-1:].isalpha() and _BEGINS_A_SENTENCE.match(own):
        own = own[0].lower() + own[1:]
    return f"{stem} {own}".strip()
