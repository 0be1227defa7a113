"""The shape of a question file: which keys stand where, and what kind of value each holds."""

import re
from typing import Annotated, Any, Final, TypeVar

from pydantic import AfterValidator, BaseModel, BeforeValidator, ConfigDict, Field, ValidationError
from pydantic_core import PydanticCustomError

from paperaudit.model.paper import CognitiveLevel
from paperaudit.readers.tree import Written

LONGEST_STATEMENT: Final = 500
"""Characters of one statement, answer or option."""
LONGEST_TEXT: Final = 5000
"""Characters of the prose of one question or part."""
MOST_MARKS: Final = 1000
"""Marks of one part, one question or one paper."""

_WHOLE = re.compile(r"[0-9]{1,6}")
_DECIMAL = re.compile(r"[-+]?[0-9]{1,7}([.][0-9]{1,6})?")
_NUMBER = re.compile(r"\(?[^\W_]{1,8}(?:[.)(][^\W_]{1,8}){0,5}[.)]?")
_MARK = re.compile(r"[A-Z]{1,3}[0-9]{1,2}")
_LEVELS: Final[tuple[CognitiveLevel, ...]] = ("knowledge", "routine", "complex", "problem solving")
_FLAGS: Final = {"true": True, "false": False}
_REASONS: Final = {"required": True, "not required": False}


def expected(what: str, known: tuple[str, ...] = ()) -> PydanticCustomError:
    """The error of a value that is not `what`; `known` are the words among which a near one is sought."""
    return PydanticCustomError("expected", "expected {what}", {"what": what, "known": known})


def _text(limit: int, what: str) -> BeforeValidator:
    def check(value: object) -> str:
        if not isinstance(value, str):
            hint = " (in quotes, where it holds a colon)" if isinstance(value, dict) else ""
            raise expected(what + hint)
        if len(value) > limit:
            raise expected(f"at most {limit} characters")
        return str(value).strip()

    return BeforeValidator(check)


def _whole(least: int, most: int) -> BeforeValidator:
    def check(value: object) -> int:
        quoted = isinstance(value, Written) and value.quoted
        fits = isinstance(value, str) and _WHOLE.fullmatch(value) and not quoted
        if not fits or not least <= int(str(value)) <= most:
            raise expected(f"a whole number from {least} to {most}" + (", without quotes" if quoted else ""))
        return int(str(value))

    return BeforeValidator(check)


def _decimal(value: object) -> float:
    if not isinstance(value, str) or not _DECIMAL.fullmatch(value):
        raise expected("a number such as 60 or 4.5")
    return float(value)


def _pair(value: object) -> object:
    if not isinstance(value, list) or len(value) != 2:
        raise expected("two numbers, across and up")
    return value


def _number(value: object) -> str:
    if not isinstance(value, str) or not _NUMBER.fullmatch(value.strip()):
        raise expected("a number as printed, such as 3, b, ii or 3.2.1")
    return ".".join(re.findall(r"[^\W_]+", value))


def _cell(value: object) -> object:
    """An empty cell of a table is left for the learner to fill in."""
    return "" if value is None else value


def _listed(value: object) -> object:
    """A single statement stands for a list of one."""
    return [value] if isinstance(value, str) else value


def _flag(value: object) -> bool:
    if not isinstance(value, str) or value not in _FLAGS:
        raise expected("one of true, false", tuple(_FLAGS))
    return _FLAGS[value]


def _mark(value: str) -> str:
    if not _MARK.fullmatch(value):
        raise expected("a mark such as M1, A1, S1 or R1")
    return value


def _word(known: tuple[str, ...]) -> BeforeValidator:
    def check(value: object) -> str:
        if value not in known:
            raise expected("one of " + ", ".join(known), known)
        return str(value)

    return BeforeValidator(check)


def _reasons(value: object) -> bool:
    if not isinstance(value, str) or value not in _REASONS:
        raise expected("one of required, not required", tuple(_REASONS))
    return _REASONS[value]


Statement = Annotated[str, _text(LONGEST_STATEMENT, "a statement")]
Cell = Annotated[Statement, BeforeValidator(_cell)]
Prose = Annotated[str, _text(LONGEST_TEXT, "text")]
Name = Annotated[str, _text(100, "a name")]
Statements = Annotated[list[Statement], BeforeValidator(_listed)]
Split = Annotated[list[Annotated[Statement, AfterValidator(_mark)]], BeforeValidator(_listed)]
Number = Annotated[str, BeforeValidator(_number)]
Marks = Annotated[int, _whole(0, MOST_MARKS)]
Decimal = Annotated[float, BeforeValidator(_decimal)]
Page = Annotated[int, _whole(0, 1000)]
Position = Annotated[list[Decimal], BeforeValidator(_pair)]


class _Shape(BaseModel):
    """Keys that are not listed are errors, and no value is bent into another kind."""

    model_config = ConfigDict(extra="forbid", strict=True)


class PartShape(_Shape):
    """A part, or a part of a part; `total` is what is printed for one that has parts."""

    number: Number
    text: Prose | None = None
    figure: Statements = []
    given: Statements = []
    ask: Statement | None = None
    answer: Statement | None = None
    marks: Marks | None = None
    total: Marks | None = None
    split: Split = []
    key_marks: Marks | None = None
    reasons: Annotated[bool | None, BeforeValidator(_reasons)] = None
    skills: Annotated[list[Name], BeforeValidator(_listed)] = []
    level: Annotated[CognitiveLevel | None, _word(_LEVELS)] = None
    options: dict[Name, Statement] = {}
    page: Page = 0
    space: Annotated[int | None, _whole(0, 200)] = None
    sketch: dict[Name, Position] = {}
    drawn: Annotated[bool, BeforeValidator(_flag)] = False
    doubts: Statements = []
    parts: "list[PartShape]" = []


class QuestionShape(PartShape):
    """A question; without parts it is its own single part."""

    figure_page: Page = 0
    table: dict[Name, list[Cell]] = {}


class SectionShape(_Shape):
    """Questions under a heading."""

    title: Name = ""
    total: Marks | None = None
    questions: list[QuestionShape] = Field(min_length=1)


class CoverShape(_Shape):
    """What the cover claims about what follows."""

    questions: Annotated[int | None, _whole(0, 1000)] = None
    pages: Annotated[int | None, _whole(0, 1000)] = None


class PrintedShape(_Shape):
    """A page as it is printed: whether it has its number, its smallest size of text, its lightest text."""

    page: Annotated[int, _whole(1, 1000)]
    numbered: Annotated[bool, BeforeValidator(_flag)] = True
    smallest: Decimal | None = None
    faintest: Decimal | None = None


class PaperShape(_Shape):
    """The whole file."""

    title: Name = ""
    level: Name = ""
    minutes: Annotated[int | None, _whole(1, 1000)] = None
    total: Marks | None = None
    marking: Name = "statement-reason"
    reasons: Name = "full"
    blueprint: Name = ""
    cover: CoverShape | None = None
    printed: list[PrintedShape] = []
    captions: list[Name] = []
    questions: list[QuestionShape] = []
    sections: list[SectionShape] = []


class KeyPartShape(_Shape):
    """What a setter's key says about one part."""

    number: Number
    answer: Statement | None = None
    marks: Marks | None = None
    split: Split = []


class KeyShape(_Shape):
    """A setter's key, part by part."""

    parts: list[KeyPartShape] = []


_AnyShape = TypeVar("_AnyShape", bound=_Shape)


def shape_of(kind: type[_AnyShape], value: object) -> tuple[_AnyShape | None, tuple[Any, ...]]:
    """The shape of a plain tree, or None with pydantic's errors, all of them."""
    try:
        return kind.model_validate(value), ()
    except ValidationError as error:
        return None, tuple(error.errors(include_url=False))
