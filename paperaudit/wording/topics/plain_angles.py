"""Angles in everyday words: of polygons, of supplementary and complementary pairs, of a triangle without a name."""

import re
from dataclasses import replace
from fractions import Fraction

from paperaudit.model.paper import Part, Question
from paperaudit.model.reading import Unread
from paperaudit.wording.asking import read_asked
from paperaudit.wording.scene import Scene
from paperaudit.wording.topics.figure_letters import Lettered
from paperaudit.wording.topics.stories.plain import plain
from paperaudit.wording.topics.topic import Readers, Told
from paperaudit.wording.topics.whole_text import Whole, whole_of
from paperaudit.wording.topics.written_in_letters import in_letters

_NAMES = {"triangle": 3, "quadrilateral": 4, "pentagon": 5, "hexagon": 6, "heptagon": 7, "octagon": 8, "nonagon": 9,
          "decagon": 10, "dodecagon": 12}  # fmt: skip
_LETTERS = "ABCDEFGHIJKL"
_FIND = r"(?:find|calculate|work out|determine|write down|what is|give|state) (?:the )?"
_SIZE = r"(?:the )?(?:size|value|measure) of "
_NAME = "|".join(_NAMES)
_SHAPE = (
    rf"(?P<regular>regular )?(?:(?P<name>{_NAME})|polygon (?:with|of|that has) (?P<sides>\d+) sides"
    r"|(?P<sided>\d+)-sided polygon)"
)
_ANGLE = r"(?P<size>\d+(?:\.\d+)?) ?(?:°|degrees)"
_SUM = re.compile(rf"{_FIND}sum of (?:the |all the )?(?:interior )?angles of an? {_SHAPE}")
_EACH = re.compile(
    rf"{_FIND}(?:{_SIZE})?(?:each|an|one|every|the)? ?(?P<side>interior|exterior) angles? of an? {_SHAPE}"
)
_HOW_MANY = (
    rf"(?:how many sides does (?:it|the polygon|this polygon) have|{_FIND}number of sides(?: of (?:the|this) polygon)?)"
)
_SIDES = re.compile(
    rf"(?:each|the|an|every|one) (?P<side>interior|exterior) angle of a regular polygon (?:is|measures) "
    rf"{_ANGLE}\. {_HOW_MANY}"
)
_SIDES_OF = re.compile(
    rf"(?:{_FIND}number of sides of|how many sides (?:are there in|has|does)) a regular polygon (?:has |have )?"
    rf"(?:with|whose|in which|if) (?:each |an? |its )?(?P<side>interior|exterior) angles? (?:of|is|are|equal to) "
    rf"{_ANGLE}"
)
_SIDES_BY_SUM = re.compile(rf"the sum of the (?:interior )?angles of a polygon is {_ANGLE}\. {_HOW_MANY}")
_PARTNER = re.compile(rf"(?:{_FIND})(?:size of the )?(?P<pair>complement|supplement) of (?:an angle of )?{_ANGLE}")
_OF = "(?: of them| angle| of the angles)?"
_OTHER = "the other(?: angle| one)?"
_PAIR = re.compile(
    r"(?:2 angles are|2|the 2 angles are) (?P<pair>supplementary|complementary)(?: angles are (?P<first>.*))?"
    rf"(?:\. (?:if )?(?P<said>(?:1|one){_OF} is .*|(?:they|the angles) are in the ratio .*))?"
    rf"\. {_FIND}(?:sizes? of )?(?:the |both |each |2 )*(?:angles|angle|of them)"
)
_MORE = re.compile(rf"(?:1|one){_OF} is {_ANGLE} (?P<way>more|larger|bigger|greater|less|smaller) than {_OTHER}")
_TIMES = re.compile(rf"(?:1|one){_OF} is (?P<times>twice|\d+ times)(?: as (?:large|big) as)? (?:the size of )?{_OTHER}")
_RATIO = re.compile(r"(?:(?:they|the angles) are )?in the ratio (?P<ratio>\d+ ?: ?\d+)")
_CORNER = r"(?:∠ ?|angle )[a-c](?: is | ?= ?)\d+(?:\.\d+)? ?°"
_TRIANGLE = re.compile(r"in (?:a|the|this) triangle,? (?=angle [a-c] |∠ ?[a-c] )")


def _story(question: Question, part: Part, scene: Scene) -> Told | None:
    whole = whole_of(question, part, scene)
    if whole is None or question.table:
        return None
    text = ". ".join(map(plain, whole.pieces))
    figure = _pair(text) or _regular(text) or _triangle(whole)
    if figure is not None:
        return in_letters(figure, whole, scene)
    said = _calculation(text)
    if not said:
        return None
    asked = read_asked(f"Calculate {said}", whole.place, "ask", scene)
    if isinstance(asked, Unread):
        return None
    return Told(replace(asked.ask, text=whole.said, read_as=said, accuracy=whole.accuracy, unit=whole.unit))


def _count(read: re.Match[str]) -> int:
    return _NAMES[read["name"]] if read["name"] else int(read["sides"] or read["sided"])


def _calculation(text: str) -> str:
    """The calculation that a question about a polygon, or about one angle of a pair, comes to; "" for any other."""
    if (read := _SUM.fullmatch(text)) is not None and _count(read) > 2:
        return f"({_count(read)} − 2) × 180°"
    if (read := _EACH.fullmatch(text)) is not None and read["regular"] and _count(read) > 2:
        count = _count(read)
        return f"360° ÷ {count}" if read["side"] == "exterior" else f"({count} − 2) × 180° ÷ {count}"
    if (read := _SIDES.fullmatch(text) or _SIDES_OF.fullmatch(text)) is not None:
        turn = Fraction(read["size"]) if read["side"] == "exterior" else 180 - Fraction(read["size"])
        whole = turn > 0 and (360 / turn).denominator == 1 and 360 / turn > 2
        said = read["size"] if read["side"] == "exterior" else f"(180 − {read['size']})"
        return f"360 ÷ {said}" if whole else ""
    if (read := _SIDES_BY_SUM.fullmatch(text)) is not None:
        straight = Fraction(read["size"]) / 180
        return f"{read['size']} ÷ 180 + 2" if straight.denominator == 1 and straight > 0 else ""
    if (read := _PARTNER.fullmatch(text)) is not None:
        full = 90 if read["pair"] == "complement" else 180
        return f"{full}° − {read['size']}°" if Fraction(read["size"]) < full else ""
    return ""


def _regular(text: str) -> Lettered | None:
    """An angle of a regular polygon that has few enough corners for letters, for the engine of geometry."""
    read = _EACH.fullmatch(text)
    if read is None or not (read["regular"] and read["name"]) or read["side"] == "exterior" or _count(read) < 5:
        return None
    return Lettered((f"regular {read['name']} {_LETTERS[: _count(read)]}",), "∠ABC")


def _pair(text: str) -> Lettered | None:
    """Two supplementary or complementary angles side by side at O."""
    read = _PAIR.fullmatch(text)
    said = (read["said"] or read["first"] or "") if read is not None else ""
    if read is None or bool(read["said"]) == bool(read["first"]):
        return None
    whole = f"∠AOB + ∠BOC = {180 if read['pair'] == 'supplementary' else 90}°"
    if (more := _MORE.fullmatch(said)) is not None:
        sign = "+" if more["way"] not in ("less", "smaller") else "−"
        wanted = "∠BOC and ∠AOB" if sign == "+" else "∠AOB and ∠BOC"
        return Lettered((whole, f"∠AOB = ∠BOC {sign} {more['size']}°"), wanted)
    if (times := _TIMES.fullmatch(said)) is not None:
        count = "2" if times["times"] == "twice" else times["times"].split(" ")[0]
        return Lettered((whole, f"∠AOB = {count} × ∠BOC"), "∠BOC and ∠AOB")
    if (ratio := _RATIO.fullmatch(said)) is not None:
        return Lettered((whole, f"∠AOB : ∠BOC = {ratio['ratio']}"), "∠AOB and ∠BOC")
    return None


def _triangle(whole: Whole) -> Lettered | None:
    """A triangle without a name whose angles A, B and C are named."""
    text = ". ".join(piece.replace("ˆ", "") for piece in whole.pieces).lower()
    start = _TRIANGLE.match(text)
    read = re.fullmatch(
        rf"(?P<told>{_CORNER}(?:,? and |, ){_CORNER})"
        rf"\. {_FIND}(?:{_SIZE})?(?:∠ ?|angle )(?P<wanted>[a-c])", text[start.end() :]) if start else None  # fmt: skip
    if read is None:
        return None
    sizes = re.findall(r"(?:∠ ?|angle )([a-c])(?: is | ?= ?)(\d+(?:\.\d+)?)", read["told"])
    if {name for name, _ in sizes} | {read["wanted"]} != {"a", "b", "c"}:
        return None
    statements = ("triangle ABC", *(f"∠{name.upper()} = {size}°" for name, size in sizes))
    return Lettered(statements, f"∠{read['wanted'].upper()}")


READERS = Readers(story=_story)
