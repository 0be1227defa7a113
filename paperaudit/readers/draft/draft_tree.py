"""Writes an outline as the tree that a question file has, each value with its page and box."""

from collections.abc import Iterable, Iterator, Sequence
from typing import Final

from paperaudit.model.place import Box, Place
from paperaudit.readers.draft.cover import Cover, Said, cover_of
from paperaudit.readers.draft.drawing.drawn_figure import DrawnFact, DrawnFigure
from paperaudit.readers.draft.figure_places import Attached, attached
from paperaudit.readers.draft.marks import marks_at_end
from paperaudit.readers.draft.options import Option, options_of
from paperaudit.readers.draft.outline import DraftSection, Entry, Outline, Placed
from paperaudit.readers.draft.page import box_around
from paperaudit.readers.draft.print_line import PrintTable
from paperaudit.readers.draft.printed_page import Measured
from paperaudit.readers.draft.table_columns import columns_of
from paperaudit.readers.draft.totals import settled_totals, tell_of_empty_sections
from paperaudit.readers.draft.wording_rows import TextRow, running_text
from paperaudit.readers.shape import LONGEST_STATEMENT, LONGEST_TEXT
from paperaudit.readers.tree import Entries, Items, Node, Scalar

Pair = tuple[Scalar, Node]
_NOT_TO_SCALE: Final = "not to scale"


class TreeWriter:
    """Writes the tree of the draft `file`."""

    def __init__(self, file: str, figures: Sequence[DrawnFigure] = (), pages: Sequence[Measured] = ()) -> None:
        self._file = file
        self._figures = figures
        self._pages = pages
        self._attached: Attached = {}

    def tree(self, outline: Outline) -> Entries:
        """The whole paper."""
        settled_totals(outline)
        tell_of_empty_sections(outline)
        self._attached = attached(outline, self._figures)
        cover = cover_of(outline.cover) if outline.cover else Cover()
        pairs = [*self._cover(cover, outline.total), *self._printed(outline)]
        if any(section.title for section in outline.sections):
            sections = [self._section(section) for section in outline.sections if section.questions]
            pairs.append(self._pair("sections", Items(tuple(sections), self._at(1))))
        else:
            questions = [self._question(one) for one in outline.questions()]
            pairs.append(self._pair("questions", Items(tuple(questions), self._at(1))))
        return Entries(tuple(pairs), self._at(1))

    def _cover(self, cover: Cover, last: Placed | None) -> Iterator[Pair]:
        for key, said in (("title", cover.title), ("level", cover.level), ("minutes", cover.minutes)):
            if said:
                yield self._said(key, said)
        if cover.total:
            yield self._said("total", cover.total)
        elif last:
            yield self._number("total", last)
        claims = [
            self._said(key, said) for key, said in (("questions", cover.questions), ("pages", cover.pages)) if said
        ]
        if claims:
            yield self._pair("cover", Entries(tuple(claims), claims[0][0].place))

    def _printed(self, outline: Outline) -> Iterator[Pair]:
        """What concerns the print alone: a page's number, small and faint text; captions of figures and tables."""
        entries: list[Node] = []
        for page in self._pages:
            place = self._at(page.page)
            pairs = [self._scalar("page", str(page.page), place)]
            if not page.numbered:
                pairs.append(self._scalar("numbered", "false", place))
            for key, found in (("smallest", page.smallest), ("faintest", page.faintest)):
                if found is not None:
                    pairs.append(self._scalar(key, f"{found[0]:.2f}", self._at(page.page, found[1])))
            entries.append(Entries(tuple(pairs), place))
        if entries:
            yield self._pair("printed", Items(tuple(entries), self._at(1)))
        captions = [(one.caption, self._at(one.page, one.box)) for one in self._figures if one.caption]
        captions += [(text, self._at(page, box)) for text, page, box in outline.captions]
        if captions:
            yield self._listed("captions", captions)

    def _section(self, section: DraftSection) -> Node:
        place = self._at(section.page or 1, section.box)
        pairs = [self._scalar("title", section.title, place)] if section.title else []
        if section.total:
            pairs.append(self._number("total", section.total))
        questions = tuple(self._question(one, section.rows) for one in section.questions)
        return Entries((*pairs, self._pair("questions", Items(questions, place))), place)

    def _question(self, entry: Entry, before: Sequence[TextRow] = ()) -> Node:
        pairs = [*self._common(entry, before)]
        marks = _marks(entry)
        total = entry.total
        if entry.parts:
            total = total or marks
        elif marks:
            pairs.append(self._number("marks", marks))
        if total:
            pairs.append(self._number("total", total))
        pairs += self._drawn(entry)
        if not entry.parts:
            pairs += self._room(entry)
        if figures := [one for part in _all_below(entry) for one in self._attached.get(id(part), ())]:
            pairs.append(self._scalar("figure_page", str(figures[0].page), self._at(figures[0].page, figures[0].box)))
        if table := self._table(entry):
            pairs.append(table)
        return self._closed(entry, pairs)

    def _part(self, entry: Entry) -> Node:
        pairs = [*self._common(entry, ())]
        if marks := _marks(entry) or (entry.total if entry.parts else None):
            pairs.append(self._number("total" if entry.parts else "marks", marks))
        pairs += self._drawn(entry)
        if not entry.parts:
            pairs += self._room(entry)
        return self._closed(entry, pairs)

    def _room(self, entry: Entry) -> Iterator[Pair]:
        """The page that a part is on, and how many lines there are to write on."""
        place = self._at(entry.column.page, self._extent(entry))
        yield self._scalar("page", str(entry.column.page), place)
        if entry.answer_lines:
            yield self._scalar("space", str(min(entry.answer_lines, 200)), place)

    def _closed(self, entry: Entry, pairs: list[Pair]) -> Node:
        place = self._at(entry.column.page, self._extent(entry))
        if entry.parts:
            pairs.append(self._pair("parts", Items(tuple(self._part(part) for part in entry.parts), place)))
        doubts = dict.fromkeys(
            [*entry.doubts, *(doubt for row in entry.rows for cell in row.cells for doubt in cell.doubts)]
        )
        if doubts:
            pairs.append(self._listed("doubts", [(doubt, place) for doubt in doubts]))
        return Entries(tuple(pairs), place)

    def _common(self, entry: Entry, before: Sequence[TextRow]) -> Iterator[Pair]:
        place = self._at(entry.column.page, self._extent(entry))
        yield self._scalar("number", entry.number, place)
        rows, options = tuple(entry.rows), entry.options
        if not entry.parts and not options:
            rows, options = options_of(entry.rows)
        rows = (*before, *entry.lead, *rows)
        text = running_text(rows)
        if len(text) > LONGEST_TEXT:
            entry.doubts.append(f"the text here has {len(text)} letters, more than a question has")
            text = ""
        if not entry.parts and not _marks(entry) and (ending := marks_at_end(text)):
            entry.doubts.append(f"“{text[ending.start :].strip()}” behind the text may be its marks")
        if text:
            own = [row for row in rows if row.page == rows[-1].page]
            yield self._scalar("text", text, self._at(rows[-1].page, box_around([row.box for row in own])))
        if options:
            yield self._options(options)

    def _options(self, options: Sequence[Option]) -> Pair:
        pairs = [
            self._scalar(one.letter, one.cell.text[:LONGEST_STATEMENT], self._at(one.page, one.cell.box))
            for one in options
        ]
        return self._pair("options", Entries(tuple(pairs), pairs[0][0].place))

    def _table(self, entry: Entry) -> Pair | None:
        """The tables of a question and its parts as named columns, those of the parts behind."""
        tables = list[PrintTable]()
        for one in _all_below(entry):
            tables += one.tables
        if not tables:
            return None
        columns, doubts = columns_of(tables)
        entry.doubts += doubts
        place = self._at(tables[0].page, tables[0].box)
        pairs = [
            self._pair(name, Items(tuple(Scalar(cell, place) for cell in cells), place), place)
            for name, cells in columns
        ]
        return self._pair("table", Entries(tuple(pairs), place), place) if pairs else None

    def _drawn(self, entry: Entry) -> Iterator[Pair]:
        figures = self._attached.get(id(entry), ())
        if not figures:
            return
        page = figures[0].page
        figure = [(fact, one.page) for one in figures for fact in one.figure]
        given = [(fact, one.page) for one in figures for fact in one.given]
        if any(one.not_to_scale for one in figures):
            figure.append((DrawnFact(_NOT_TO_SCALE, figures[0].box), page))
        for key, facts in (("figure", figure), ("given", given)):
            if facts:
                yield self._listed(key, [(fact.text, self._at(at, fact.box)) for fact, at in facts])
        if figure or given:
            yield self._scalar("drawn", "true", self._at(page, figures[0].box))
        points = {letter: place for one in figures for letter, *place in one.points}
        if points and sum(len(one.points) for one in figures) == len(points):
            yield self._sketch(points, page, figures[0].box)
        for one in figures:
            entry.doubts += one.doubts
            if one.unread:
                entry.doubts.append(f"the figure on page {one.page} was not read: {one.unread}")

    def _sketch(self, points: dict[str, list[float]], page: int, box: Box) -> Pair:
        """Places in points from the left and, unlike on the page, upwards."""
        base = max(down for _, down in points.values())
        place = self._at(page, box)
        pairs = [
            self._pair(letter, Items((_decimal(across, place), _decimal(base - down, place)), place), place)
            for letter, (across, down) in points.items()
        ]
        return self._pair("sketch", Entries(tuple(pairs), place), place)

    def _extent(self, entry: Entry) -> Box:
        """Around the number and all rows on its page."""
        boxes = [row.box for row in entry.rows if row.page == entry.column.page]
        return box_around([entry.box, *boxes])

    def _said(self, key: str, said: Said) -> Pair:
        return self._scalar(key, said.value, self._at(said.line.page, said.line.box))

    def _number(self, key: str, placed: Placed) -> Pair:
        return self._scalar(key, str(placed.number), self._at(placed.page, placed.box))

    def _listed(self, key: str, texts: Iterable[tuple[str, Place]]) -> Pair:
        items = tuple(Scalar(text, place, quoted=True) for text, place in texts)
        return self._pair(key, Items(items, items[0].place), items[0].place)

    def _scalar(self, key: str, text: str, place: Place) -> Pair:
        return Scalar(key, place), Scalar(text, place)

    def _pair(self, key: str, value: Node, place: Place | None = None) -> Pair:
        return Scalar(key, place or value.place), value

    def _at(self, page: int, box: Box | None = None) -> Place:
        return Place(file=self._file, page=page, box=box)


def _marks(entry: Entry) -> Placed | None:
    """The marks of a part; several are added up, numbers of equations at their right are none."""
    marks = entry.marks
    if len(marks) > 1:
        marks = [one for one in marks if not one.label] or marks
    if not marks:
        return None
    if len({one.dress for one in marks}) > 1:
        entry.doubts.append("different marks stand here: " + " and ".join(str(one.number) for one in marks))
        marks = [one for one in marks if "marks" in one.dress][:1] or marks[-1:]
    return Placed(sum(one.number for one in marks), marks[-1].page, marks[-1].box, marks[-1].dress)


def _decimal(number: float, place: Place) -> Scalar:
    return Scalar(f"{number:.1f}", place)


def _all_below(entry: Entry) -> Iterator[Entry]:
    yield entry
    for part in entry.parts:
        yield from _all_below(part)
