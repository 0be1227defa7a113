"""The topics of statistics, probability and counting with the words that announce each, in their order."""

import re

from paperaudit.wording.topics.topic import Topic

CHANCE_AND_VALUES: tuple[Topic, ...] = (
    Topic(
        "means",
        "means",
        "means.peg",
        re.compile(r"^the (?:mean|average)"),
        story_ahead=re.compile(r"\b(?:[Mm]ean|[Aa]verage)\b.*\b(?:is|was|are|has|have|had|of)\b", re.DOTALL),
        states=True,
    ),
    Topic(
        "unknown values",
        "values_unknown",
        "values_unknown.peg",
        None,
        story_ahead=re.compile(r"\b(?:[Mm]edian|[Mm]ode|[Rr]ange|[Mm]ean)\b"),
    ),
    Topic(
        "cumulative frequencies",
        "cumulative",
        "cumulative.peg",
        None,
        story_ahead=re.compile(r"\b(?:[Hh]ow many|the number of)\b"),
    ),
    Topic(
        "missing frequencies",
        "missing_counts",
        "missing_counts.peg",
        None,
        story_ahead=re.compile(
            r"\b(?:[Mm]ean|[Aa]verage|[Mm]issing frequency|[Vv]alue of [a-z]|[Tt]here (?:are|were))\b"
        ),
    ),
    Topic(
        "changed values",
        "changed_values",
        "amounts.peg",
        None,
        story_ahead=re.compile(r"\bnew (?:mean|average|median|mode|range|inter|standard|variance|lower|upper)"),
    ),
    Topic(
        "box plots",
        "five_numbers",
        "amounts.peg five_numbers.peg",
        None,
        story_ahead=re.compile(r"\b(?:summary|box|quartiles?|percentiles?|range (?:is|of))\b|\bQ_?[₁₂₃123]"),
    ),
    Topic(
        "statistics",
        "statistics",
        "statistics.peg",
        re.compile(
            r"\b(?:means?|average|median|modal|mode|range|quartiles?|IQR|iqr|Q_?[13]|standard deviation|s\.d\."
            r"|variance|summary|outliers?|cumulative|total frequency|sum of the frequencies|correlation"
            r"|regression|best fit|least|sector|angles?|predict|estimate"
            r"|frequency densit(?:y|ies)|frequenc(?:y|ies))(?![a-z])",
        ),
        story_ahead=re.compile(
            r"\b(?:means?|average|median|modal|mode|range|quartiles?|IQR|standard deviation|variance|summary"
            r"|outliers?|cumulative|frequency|frequencies|correlation|regression|best fit|pie[- ]chart|sector"
            r"|predict|estimate|densit(?:y|ies))\b",
            re.IGNORECASE,
        ),
        states=True,
    ),
    Topic(
        "tables of chance",
        "chance_tables",
        "chance_tables.peg",
        None,
        story_ahead=re.compile(
            r"probab|relative frequency|[Hh]ow many|number of|\bvalues? of\b|missing|[Ee]xpect|[Mm]ean|[Cc]omplete"
            r"|\bP ?\(|\bE ?\(|Var|[Ii]ndependent|(?:Find|Calculate|Determine|out) [a-z]\b",
            re.DOTALL,
        ),
    ),
    Topic(
        "chance",
        "chance",
        "chance.peg",
        None,
        story_ahead=re.compile(
            r"\b(?:[Pp]robability|[Pp]rob|[Cc]hance|expect(?:ed)?|outcomes?|number of times)\b"
            r"|(?<![A-Za-z])P ?\((?=[a-z0-9])",
        ),
    ),
    Topic(
        "joined events",
        "joined_events",
        "joined_events.peg",
        re.compile(r"(?<![A-Za-z])(?:[Pp]|Pr) ?\(|\b(?:independent|mutually exclusive|disjoint)\b"),
        states=True,
    ),
    Topic(
        "counting",
        "counting",
        "counting.peg",
        re.compile(
            r"[\d)] ?!|(?<![A-Za-z])n!|[\d}] ?_?[CP] ?_?[{\d]|[⁰¹²³⁴-⁹] ?[CP]|\d choose \d"
            r"|(?<![A-Za-z])n?[CP]r? ?\( ?\d+ ?[,;]",
        ),
        story_ahead=re.compile(
            r"\b(?:[Hh]ow many|number of (?:different |distinct )?(?:ways|arrangements|permutations))\b|\d ?!"
            r"|\d ?[CP] ?_?\{?\d|\bchoose\b|[⁰-⁹]\s?[CP]|\bn?[CP]r? ?\(",
        ),
    ),
    Topic(
        "counting under a condition",
        "arrangements",
        "arrangements.peg",
        None,
        story_ahead=re.compile(r"\b(?:[Hh]ow many|number of (?:different |distinct )?(?:ways|arrangements))\b"),
    ),
    Topic(
        "two sets",
        "two_sets",
        "two_sets.peg",
        None,
        story_ahead=re.compile(r"\b(?:both|neither)\b"),
    ),
    Topic(
        "expected numbers",
        "expected_numbers",
        "told_chances.peg",
        None,
        story_ahead=re.compile(r"\b(?:[Ee]xpect\w*|[Ee]stimate|likely|[Hh]ow many)\b"),
    ),
    Topic(
        "chances in words",
        "told_chances",
        "told_chances.peg",
        None,
        story_ahead=re.compile(r"\b(?:[Pp]robability|[Cc]hance|[Rr]elative frequency)\b"),
    ),
    Topic(
        "listed events",
        "listed_events",
        "told_chances.peg",
        None,
        story_ahead=re.compile(r"\bindependent"),
    ),
)
"""Their place in the order of all topics is in registry.py."""
