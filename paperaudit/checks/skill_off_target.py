"""The strands do not carry the shares of marks that the blueprint asks for."""

from collections.abc import Iterator

from paperaudit.checks.check import Check
from paperaudit.checks.grounds.targets import off_target, shares_of
from paperaudit.model.audited import AuditedPaper
from paperaudit.model.finding import Finding, Severity


def find(audited: AuditedPaper) -> Iterator[Finding]:
    """At most one finding, for the whole paper; none where its blueprint says nothing of content."""
    paper = audited.paper
    if not paper.blueprint:
        return
    from paperaudit.marking.blueprint import load

    blueprint = load(paper.blueprint)
    if not blueprint.content:
        return
    from paperaudit.marking.spread import content_aims, spread

    aims = content_aims(spread(audited), blueprint)
    off = off_target(aims)
    if off:
        proposed = any("skills" in part.proposed for part in audited.parts)
        yield CHECK.found(
            f"Measured against the blueprint {blueprint.name}, the paper has {off}.",
            places=(paper.place,),
            because=shares_of(aims, blueprint.tolerance),
            suggestion="Exchange a part of the strand that has too much for one of the strand that has too little."
            + (" Some skills are this program's proposals: state them in the paper where they are wrong." * proposed),
        )


CHECK = Check(
    name="skill-off-target",
    severity=Severity.WARNING,
    title="The skills are off the blueprint",
    meaning="The share of the marks on a strand of skills (number, algebra, geometry and so on) misses the "
    "blueprint's share by more than its tolerance.",
    matters="What is not asked is not assessed. A term's work that carries too few marks here is missing from the "
    "learners' results.",
    mend="Exchange parts between the strands. Skills that the paper does not state are proposed from the working: "
    "state your own where you see it otherwise.",
    faulty="""
blueprint: grade-8-international-content
questions:
  - {number: 1, ask: 12 + 5, answer: "17", marks: 1}
  - {number: 2, ask: 65% of 240 litres, answer: 156 litres, marks: 2}
  - {number: 3, ask: solve 3(x - 4) = 2x + 5, answer: x = 17, marks: 3}
""",
    clean="""
blueprint: grade-8-international-content
questions:
  - {number: 1, ask: 12 + 5, answer: "17", marks: 1}
  - {number: 2, ask: 65% of 240 litres, answer: 156 litres, marks: 2}
  - {number: 3, ask: solve 3(x - 4) = 2x + 5, answer: x = 17, marks: 3}
  - {number: 4, figure: triangle ABC, given: [∠A = 70°, ∠B = 60°], ask: ∠C, answer: 50°, marks: 2}
  - {number: 5, ask: (4 + 6 + 11) ÷ 3, answer: "7", marks: 2, skills: [averages]}
""",
    find=find,
)
