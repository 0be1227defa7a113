"""Settles what only the whole outline tells: whose total a bare "Total 12" is, which headings have no questions."""

from paperaudit.readers.draft.outline import Entry, Outline


def settled_totals(outline: Outline) -> None:
    """Gives every total that only says "Total" to its question, or the last one to the paper.

    The last is the paper's where it is not the only total of the last question, or where other questions
    have none and it is not the sum of its own question's marks.
    """
    waiting = outline.above
    outline.above = []
    if not waiting:
        return
    last_question = outline.questions()[-1]
    last, placed = waiting[-1]
    if last is last_question and outline.total is None:
        own = [one for question, one in waiting if question is last]
        others = {id(question) for question, _ in waiting if question is not last}
        several = len(own) > 1 or last.total is not None
        if several or (not others and len(outline.questions()) > 1 and placed.number != _sum(last)):
            outline.total = placed
            waiting = waiting[:-1]
    for question, one in waiting:
        if question.total is None:
            question.total = one
        elif question.total.number != one.number:
            question.doubts.append(f"two totals stand here, {question.total.number} and {one.number}")


def _sum(question: Entry) -> int:
    return sum(one.number for leaf in question.leaves() for one in leaf.marks)


def tell_of_empty_sections(outline: Outline) -> None:
    """Rows under a heading without a numbered question are a doubt of the question before it, or behind it."""
    questions: list[Entry] = []
    for section in outline.sections:
        if not section.questions and section.rows:
            waiting = questions or outline.questions()
            waiting[-1 if questions else 0].doubts.append(f"no numbered question was read under {section.title}")
        questions += section.questions
