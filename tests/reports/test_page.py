"""The page: complete, self-contained, and unmoved by hostile text."""

import re
from dataclasses import replace
from html.parser import HTMLParser

import pytest

from paperaudit.audit import audit
from paperaudit.checks import find_all
from paperaudit.model.finding import Finding, Severity
from paperaudit.model.paper import Line
from paperaudit.readers.question_file import read_question_file
from paperaudit.reports import page
from paperaudit.resources import shipped
from tests import sail_loft

HOSTILE = "</title><script>alert('sail')</script><img src=x onerror=\"alert(1)\">{{ 7 * 7 }}"
VOID = {"meta", "br", "img", "hr", "link", "input", "circle", "line", "path", "rect", "polyline", "polygon", "use"}


class Outline(HTMLParser):
    """Keeps the tags, the text and the attributes, and checks that every element is closed in its turn."""

    def __init__(self) -> None:
        super().__init__()
        self.tags: list[str] = []
        self.attributes: list[tuple[str, str]] = []
        self.text: list[str] = []
        self._open: list[str] = []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.tags.append(tag)
        self.attributes += [(name, value or "") for name, value in attrs]
        if tag not in VOID:
            self._open.append(tag)

    def handle_startendtag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.tags.append(tag)
        self.attributes += [(name, value or "") for name, value in attrs]

    def handle_endtag(self, tag: str) -> None:
        if tag not in VOID:
            assert self._open.pop() == tag

    def handle_data(self, data: str) -> None:
        self.text.append(data)

    def words(self) -> str:
        assert not self._open
        return re.sub(r"\s+", " ", "".join(self.text))


def outline(html: str) -> Outline:
    parsed = Outline()
    parsed.feed(html)
    return parsed


def rendered(*parts: object, **cover: object) -> str:
    audited = sail_loft.paper(*parts, **cover)  # type: ignore[arg-type]
    return page.render(replace(audited, findings=find_all(audited)))


def test_the_verdict_stands_above_the_parts_and_they_above_the_findings_and_workings() -> None:
    words = outline(rendered()).words()
    order = ["Not ready to print", "The parts", "Findings", "The workings", "Please note"]
    places = [words.index(heading) for heading in order]
    assert places == sorted(places)


def test_every_part_is_there_with_its_lines_and_reasons() -> None:
    words = outline(rendered()).words()
    for number in ("1.a", "1.b", "2", "3", "4", "5", "6", "7", "8"):
        assert f" {number} " in words
    assert "∠ACB = 180° − 112° = 68°" in words
    assert "base angles of an isosceles triangle are equal" in words
    assert "100° + 95° > 180°" in words
    assert "the task asks for a description" in words


def test_every_finding_is_there_with_its_why_and_its_mend() -> None:
    html = rendered(total=30)
    words = outline(html).words()
    assert "The questions carry 22 marks, 8 marks fewer than the total of 30 on the cover." in words
    assert "printed total: 30" in words
    assert "Print 22 on the cover" in words
    assert html.count('<article class="finding') == len(find_all(sail_loft.paper(total=30)))


def test_the_page_needs_no_other_file_and_no_script() -> None:
    parsed = outline(rendered())
    assert not {"script", "link", "iframe", "object", "embed", "form", "base"} & set(parsed.tags)
    outside = [value for name, value in parsed.attributes if name in ("src", "href", "action", "xlink:href", "data")]
    assert all(value.startswith("#") for value in outside)
    css = shipped("schemes", "templates", "page", "page.css").read_text(encoding="utf-8")
    assert "url(" not in css and "@import" not in css


@pytest.mark.parametrize("where", ["title", "level", "text", "ask", "answer", "finding"])
def test_hostile_text_stays_text(where: str) -> None:
    part = sail_loft.base_angle(
        answer=Line(HOSTILE if where == "answer" else "68°"), text=HOSTILE if where == "text" else "Find it."
    )
    if where == "ask":
        part = replace(part, reading=replace(part.reading, ask=None), part=replace(part.part, ask=Line(HOSTILE)))
    audited = sail_loft.paper(
        part, title=HOSTILE if where == "title" else "Sails", level=HOSTILE if where == "level" else "Grade 9"
    )
    findings = (Finding(HOSTILE, Severity.ERROR, HOSTILE, HOSTILE, (HOSTILE,), HOSTILE),) if where == "finding" else ()
    parsed = outline(page.render(replace(audited, findings=findings)))
    assert "script" not in parsed.tags and "img" not in parsed.tags
    assert not any(name.startswith("on") for name, _ in parsed.attributes)
    assert HOSTILE in "".join(parsed.text)


def test_links_lead_to_parts_that_are_there() -> None:
    parsed = outline(rendered())
    anchors = {value for name, value in parsed.attributes if name == "id"}
    links = {value[1:] for name, value in parsed.attributes if name == "href"}
    assert links and links <= anchors
    ids = [value for name, value in parsed.attributes if name == "id"]
    assert len(ids) == len(set(ids))


def page_of(text: str) -> str:
    return page.render(audit(read_question_file(text, "loft.yaml").whole()))


def test_every_part_has_its_figure_and_only_the_first_the_shared_words() -> None:
    html = page_of(
        "questions: [{number: 1, text: A jib., figure: triangle ABC, given: [∠A = 70°, ∠B = 60°], "
        "parts: [{number: a, ask: ∠C, marks: 1}, {number: b, ask: ∠A + ∠C, marks: 1}]}]"
    )
    assert html.count("<svg") == 2
    assert html.count("A jib.") == 1


def test_an_open_question_shows_two_figures_with_their_sizes() -> None:
    html = page_of("questions: [{number: 1, figure: triangle ABC, given: [∠A = 40°], ask: ∠B, marks: 1}]")
    captions = re.findall(r"<figcaption>(.*?)</figcaption>", html)
    assert html.count("<svg") == 2
    assert len(set(captions)) == 2 and all(caption.startswith("∠ABC = ") for caption in captions)


def test_several_answers_are_shown_each_with_its_figure_and_its_working() -> None:
    html = page_of("questions: [{number: 1, figure: isosceles triangle ABC, given: [∠A = 40°], ask: ∠B, marks: 1}]")
    words = outline(html).words()
    assert all(f"For {answer}" in words for answer in ("70°", "100°", "40°"))
    assert html.count("<svg") == 3


def test_the_same_audit_gives_the_same_page() -> None:
    assert rendered() == rendered()


def _luminance(colour: str) -> float:
    """Relative luminance of a hex colour, as WCAG 2.1 defines it (w3.org/TR/WCAG21, "relative luminance")."""
    channels = [int(colour[at : at + 2], 16) / 255 for at in (1, 3, 5)]
    linear = [value / 12.92 if value <= 0.03928 else ((value + 0.055) / 1.055) ** 2.4 for value in channels]
    return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]


@pytest.mark.parametrize(
    ("text", "behind"),
    [
        ("ink", "sheet"),
        ("soft", "sheet"),
        ("link", "sheet"),
        ("error", "sheet"),
        ("look", "sheet"),
        ("note", "sheet"),
        ("clear", "sheet"),
        ("error", "error-wash"),
        ("look", "look-wash"),
        ("clear", "clear-wash"),
        ("ink", "error-wash"),
    ],
)
def test_text_has_the_contrast_of_wcag_level_aa(text: str, behind: str) -> None:
    """4.5 to 1 for text of ordinary size: WCAG 2.1, success criterion 1.4.3."""
    css = shipped("schemes", "templates", "page", "page.css").read_text(encoding="utf-8")
    colours = dict(re.findall(r"--([a-z-]+): (#[0-9a-f]{6})", css))
    bright, dark = sorted((_luminance(colours[text]), _luminance(colours[behind])), reverse=True)
    assert (bright + 0.05) / (dark + 0.05) >= 4.5
