"""Reads a part of a paper: its givens from figure, given or text, and what it asks."""

import re
from collections.abc import Iterator
from dataclasses import replace

from paperaudit.model.ask import Find
from paperaudit.model.expression import CircleSize, Expression, Function, Letter, Quotient, letters_of
from paperaudit.model.fact import Given, Holds, Origin
from paperaudit.model.paper import Line, Part, Question, sketch_of
from paperaudit.model.reading import Reading, Unread
from paperaudit.model.reckoning import Reckoning
from paperaudit.model.topic import TopicTask
from paperaudit.wording.asides import asides_of, is_not_to_scale
from paperaudit.wording.asking import WHICH_CIRCLE, leaves_circle_open, read_asked, settled_ask
from paperaudit.wording.choice import chosen_ask, stands_alone
from paperaudit.wording.contacts import NOT_SAID, is_open
from paperaudit.wording.free_ends import with_free_ends
from paperaudit.wording.midlines import with_midlines
from paperaudit.wording.orders import in_named_order, orders_of
from paperaudit.wording.pi_value import pi_taken
from paperaudit.wording.prose import Prose, read_prose
from paperaudit.wording.scene import Scene
from paperaudit.wording.sentences import sentences
from paperaudit.wording.stated import commas_used, letters_used, repeats
from paperaudit.wording.statement import Where, read_given
from paperaudit.wording.the_circle import Known
from paperaudit.wording.through_centroid import with_centroids
from paperaudit.wording.topics.altering import altered_beside
from paperaudit.wording.topics.reading import topic_story

_NAME = re.compile(r"[A-Z](?![a-z])")
"""A capital letter that may name a point."""


def read(question: Question, part: Part) -> Reading:
    """A part with its typed givens and its ask, sentence by sentence or, where these do not do, as a story.

    A story is what a topic of the syllabus makes of all the sentences together, and of the data table.
    """
    reading = _with_vectors(_read_with_pi(question, part))
    if reading.ask is not None and not reading.unread and not _lacks_givens(reading) and not _asks_values(reading):
        return reading
    others = (_read_terms, _read_in_other_words, _read_each)
    return next((found for read_so in others if (found := read_so(question, part)) is not None), reading)


def _with_vectors(reading: Reading) -> Reading:
    """A sum of letters as one of vectors where these are given; what is a vector is known where one was read."""
    if not any(type(fact).__name__ == "Vector" for given in reading.givens for fact in given.facts):
        return reading
    from paperaudit.wording.vectors_wanted import with_vectors

    return with_vectors(reading)


def _read_terms(question: Question, part: Part) -> Reading | None:
    """What a part says of the terms of a sequence, in letters; None where it is no such part."""
    lines = [line for line in (question.text, part.text) if line is not None]
    said = " ".join(line.text.strip() for line in lines)
    if part.ask is not None or question.given or part.given or not re.search(r"\b(?:arithmetic|geometric)\b", said):
        return None
    from paperaudit.wording.other_words import OtherWords, as_written
    from paperaudit.wording.term_conditions import terms_in_letters

    changed = terms_in_letters(said)
    if changed is None:
        return None
    asked = [one.text for one in sentences(said)][-1]
    put = OtherWords(question, replace(part, text=replace(lines[-1], text=changed)), ((asked, changed),))
    reading = _read_with_pi(replace(question, text=None), put.part)
    return as_written(put, reading, question, part) if reading.ask is not None and not reading.unread else None


def _read_each(question: Question, part: Part) -> Reading | None:
    """The part as several asks side by side; None where it is not so."""
    from paperaudit.wording.each_asked import read_each

    def read_one(question: Question, part: Part) -> Reading:
        reading = _read_with_pi(question, part)
        return reading if reading.ask and not reading.unread else _read_in_other_words(question, part) or reading

    return read_each(question, part, read_one)


def _read_in_other_words(question: Question, part: Part) -> Reading | None:
    """What the question says in the words of the grammars; None where it cannot be put so."""
    from paperaudit.wording.other_words import as_written, in_other_words

    said = in_other_words(question, part)
    if said is None:
        return None
    reading = _with_vectors(_read_with_pi(said.question, said.part))
    return as_written(said, reading, question, part) if reading.ask is not None and not reading.unread else None


def _read_with_pi(question: Question, part: Part) -> Reading:
    """A part with the value that it has π taken for."""
    taken = pi_taken(question, part)
    if taken.value is None:
        return _read_plain(question, part)
    reading = _read_plain(taken.question, taken.part)
    if reading.ask is None or not any(not isinstance(fact, Holds) for given in reading.givens for fact in given.facts):
        # Without a figure the value of π is one of the numbers of a formula.
        return _read_plain(question, part)
    ask = replace(reading.ask, text=" ".join(reading.ask.text.split()), pi=taken.value)
    # Everything but the words about π was read; what is handed on is the paper's own question.
    question = replace(question, not_to_scale=reading.question.not_to_scale)
    return Reading(question, part, reading.givens, ask, reading.unread)


def _read_plain(question: Question, part: Part) -> Reading:
    reading = _read_sentences(question, part)
    asked_in_text = reading.ask is not None and isinstance(reading.ask.task, Reckoning) and part.ask is None
    whole_first = asked_in_text or any(
        asks(reading) for asks in (_lacks_givens, _asks_a_ratio, _asks_a_circle, _asks_a_function)
    )
    if reading.ask is not None and not reading.unread and not whole_first:
        return _unaltered(question, part, reading)
    told = topic_story(question, part, Scene(letters_used(question, part), commas_used(question, part)))
    if told is not None:
        return Reading(question, part, told.givens, told.ask)
    if asked_in_text and not reading.unread:
        return replace(reading, unread=tuple(_sentences_beside(question, part, reading)))
    return reading


def _unaltered(question: Question, part: Part, reading: Reading) -> Reading:
    """The reading of a topic's task, unread where a sentence beside it could alter what it is about."""
    ask = reading.ask
    if ask is None or not isinstance(ask.task, TopicTask) or (question.text is None and part.text is None):
        return reading
    scene = Scene(letters_used(question, part), commas_used(question, part))
    beside = altered_beside(question, part, scene, ask, reading.givens)
    if not beside:
        return reading
    place = (part.text or question.text or part).place
    return replace(reading, unread=(Unread(beside, "text", 0, "a sentence that goes with what is asked", "", place),))


def _sentences_beside(question: Question, part: Part, reading: Reading) -> Iterator[Unread]:
    """What stands beside a reckoning that one sentence asks for: it may change the amounts, and no story has it."""
    line = part.text or question.text
    assert line is not None and reading.ask is not None
    scene = Scene(letters_used(question, part), commas_used(question, part))
    said = [one for one in sentences(line.text) if asides_of(scene.notation(one.text)).rest.text.strip(" .,;:!()")]
    for sentence in said if len(said) > 1 else ():
        if sentence.text.strip(" .?!") != reading.ask.text:
            yield Unread(sentence.text, "text", 0, "a sentence that goes with the reckoning", "", line.place)


def _lacks_givens(reading: Reading) -> bool:
    """Whether what is asked for needs givens and there are none: x of a cell of the table, P(odd) of a dice."""
    task = reading.ask.task if reading.ask is not None else None
    if reading.givens:
        return False
    return isinstance(task, Find) or (isinstance(task, TopicTask) and task.needs_givens())


def _asks_values(reading: Reading) -> bool:
    """Whether several values of functions are asked for, which are products where each is not read by itself."""
    task = reading.ask.task if reading.ask is not None else None
    wanted = task.wanted if isinstance(task, Find) else ()
    return len(wanted) > 1 and any({*letters_of(one)} & {"f", "g", "h"} for one in wanted)


def _asks_a_ratio(reading: Reading) -> bool:
    """Whether a ratio of letters is asked for, which other ratios may lead to: x : z from x : y and y : z."""
    task = reading.ask.task if reading.ask is not None else None
    return isinstance(task, Find) and len(task.wanted) == 1 and _is_ratio(task.wanted[0])


def _asks_a_circle(reading: Reading) -> bool:
    """Whether a size of a circle that has no letter is asked for, and no figure is there."""
    wanted = reading.ask.task.wanted if reading.ask is not None and isinstance(reading.ask.task, Find) else ()
    alone = all(isinstance(fact, Holds) for given in reading.givens for fact in given.facts)
    return alone and any(isinstance(one, CircleSize) and not one.centre for one in wanted)


def _asks_a_function(reading: Reading) -> bool:
    """Whether a sine, cosine or tangent is asked for: the sentences before it may say where the angle lies."""
    task = reading.ask.task if reading.ask is not None else None
    return isinstance(task, Find) and len(task.wanted) == 1 and isinstance(task.wanted[0], Function)


def _is_ratio(wanted: Expression) -> bool:
    return isinstance(wanted, Quotient) and isinstance(wanted.denominator, Letter)


def _read_sentences(question: Question, part: Part) -> Reading:
    """A part with its typed givens and its ask; what was not understood is in `unread`.

    What stands under `figure` and `given` is read first. The text of the same level, question or
    part, gives facts only where that level has neither, else no more than the order of points on a line;
    where anything is stated it may add to it, never contradict it, and a sentence that cannot be read is
    no obstacle, nor is one beside an ask of the setter's own that stands alone. What was read off a drawing
    leaves the text as it would count without it.
    """
    scene = Scene(letters_used(question, part), commas_used(question, part))
    givens, unread = _stated(question, part, scene)
    drawn = question.drawn or part.drawn
    stated = bool(givens or unread) and not drawn
    explicit = read_asked(part.ask.text.strip(), part.ask.place, "ask", scene) if part.ask is not None else None
    facts_here = (
        question.drawn or not (question.figure or question.given),
        part.drawn or not (part.figure or part.given),
    )
    proses = [Prose() if line is None else read_prose(line, scene) for line in (question.text, part.text)]
    for prose, here in zip(proses, facts_here, strict=True):
        prose.givens = prose.givens if here else list(orders_of(prose.givens, givens))
    choice = chosen_ask(question, part, explicit, proses, scene)
    proses = proses[:1] if choice.whole else proses
    found = [*(given for prose in proses for given in prose.givens), *choice.conditions]
    alone = choice.ask is not None and stands_alone(choice.ask, found)
    if not alone:
        givens.extend(given for given in found if not repeats(given, givens, stated))
    # What the setter wrote under `ask` wins: the story that leads to it need not be understood.
    if not stated and not (alone and part.ask is not None):
        unread.extend(doubt for prose in proses for doubt in prose.unread)
        unread.extend(choice.left_over)
    marked = question.not_to_scale or any(aside.not_to_scale for prose in proses for aside in prose.asides)
    marked = marked or any(is_not_to_scale(line.text) for line in (*question.figure, *part.figure))
    unread.extend(choice.missing)
    known = Known((fact for given in givens for fact in given.facts), _letters_of(question))
    unread.extend(_doubtful(given) for given in givens if known.leaves_open(given.facts))
    givens = [given for given in givens if not any(map(known.is_untouched, given.facts))]
    givens = [
        replace(given, facts=known.settled(given.facts)) for given in in_named_order(givens, sketch_of(question, part))
    ]
    sketch = sketch_of(question, part)
    givens = with_free_ends(with_centroids(with_midlines(givens, sketch)), sketch)
    ask = choice.ask
    if ask is not None and leaves_circle_open(ask, known):
        unread.append(Unread(ask.text, "ask", 0, WHICH_CIRCLE, "", ask.place))
        ask = None
    ask = settled_ask(ask, known) if ask is not None else None
    if ask is not None and known.new_letters:
        ask = replace(ask, read_as=", where ".join((ask.text, *known.new_letters)))
    return Reading(replace(question, not_to_scale=marked), part, tuple(givens), ask, tuple(unread))


def _letters_of(question: Question) -> str:
    """Every capital letter of a question and its parts, so that a new point gets another one."""
    lines = [question.text, *question.figure, *question.given]
    for part in question.parts:
        lines += [part.text, part.ask, *part.figure, *part.given]
    return "".join(name for line in lines if line is not None for name in _NAME.findall(line.text))


def _doubtful(given: Given) -> Unread:
    """A statement about "the circle" where the question has two, or a tangent that touches who knows where."""
    where: Where = "figure" if given.origin is Origin.FIGURE else "given" if given.origin is Origin.GIVEN else "text"
    expected = NOT_SAID if any(map(is_open, given.facts)) else WHICH_CIRCLE
    return Unread(given.text, where, 0, expected, "", given.place)


def _stated(question: Question, part: Part, scene: Scene) -> tuple[list[Given], list[Unread]]:
    """What stands under `figure` and `given`, the question's first."""
    lines: list[tuple[Line, Where]] = [(line, "figure") for line in (*question.figure, *part.figure)]
    lines += [(line, "given") for line in (*question.given, *part.given)]
    givens: list[Given] = []
    unread: list[Unread] = []
    for line, where in lines:
        if is_not_to_scale(line.text, alone=True):
            continue
        found = read_given(line.text, line.place, where, scene)
        if isinstance(found, Given):
            givens.append(found)
        else:
            unread.append(found)
    return givens, unread
