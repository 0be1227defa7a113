"""Finds where the cover of a draft ends and its first question begins."""

from collections.abc import Sequence

from paperaudit.readers.draft.habits import Habits, parted
from paperaudit.readers.draft.notices import is_field, is_for_several, is_instruction
from paperaudit.readers.draft.numbering import Number, Style, bracketed_alone, heading_at, numbers_at
from paperaudit.readers.draft.print_line import Printed, PrintLine


def first_question(printed: Sequence[Printed]) -> int:
    """Where the cover ends: at the first number one, or the next one where that only counts instructions."""
    starts: list[tuple[int, Style | None]] = []
    headings: dict[int, int] = {}
    marked: list[int] = []
    for at, one in enumerate(printed):
        if not isinstance(one, PrintLine):
            continue
        text = one.row.cells[0].text
        if heading := heading_at(one.row.text):
            headings[heading.rank] = at
            starts.append((at, None))
        elif number := _opening_number(one):
            bare = not number.dress and number.style is Style.ARABIC and number.end < len(text)
            if (
                number.style in (Style.WORD, Style.DECIMAL)
                or (number.style in (Style.ARABIC, Style.BRACKETED) and not bare)
                or (bare and (_opens(text[number.end :]) or one.strong or one.stands_off(0, 0, number.end)))
            ):
                starts.append((at, number.style))
        if parted(one, Habits())[1]:
            marked.append(at)
    # A heading that comes again is named on the cover.
    starts = [(at, style) for at, style in starts if style is not None or at in headings.values()]
    for (at, style), (following, _) in zip(starts, [*starts[1:], (len(printed), None)], strict=False):
        lone = (
            style in (Style.ARABIC, Style.BRACKETED)
            and following < len(printed)
            and _counts_on(printed[at + 1 : following])
        )
        if not lone or any(at <= mark < following for mark in marked):
            return at
    return starts[-1][0] if starts else len(printed)


def lead_before(printed: Sequence[Printed], start: int) -> int:
    """Where the rows begin that end the cover and lead on to questions: "In questions 1 to 3, solve for x:"."""
    before = printed[start - 1] if start else None
    if not isinstance(before, PrintLine) or any(is_field(cell.text) for cell in before.row.cells):
        return start
    leads = is_for_several(before.row.text) and not is_instruction(before.row.text)
    return start - 1 if leads else start


def _opening_number(line: PrintLine) -> Number | None:
    """The number that a row begins with where it is a number one, or has the word question in front."""
    text = line.row.cells[0].text
    readings = numbers_at(text) or (bracketed_alone(text) if len(line.row.cells) > 1 else ())
    return next((one for one in readings if set(one.value) == {1} or one.style is Style.WORD), None)


def _counts_on(printed: Sequence[Printed]) -> bool:
    """Whether a row has the number two: a list of instructions has more than one."""
    lines = (one for one in printed if isinstance(one, PrintLine))
    return any(number.value == (2,) for line in lines for number in numbers_at(line.row.cells[0].text))


def _opens(text: str) -> bool:
    """Whether what stands behind a bare number begins a question: a capital letter or the number of a part."""
    begin = text.strip()[:1]
    return begin.isupper() or begin == "("
