"""The topics of ratio, money, measures and solids with the words that announce each, in their order."""

import re

from paperaudit.wording.topics.topic import Topic, told

MEASURING: tuple[Topic, ...] = (
    told(
        "ratio",
        "ratios",
        "ratios.peg",
        re.compile(
            r"\bratio\b|\bproportional\b|\bvaries\b|^(?:simplify|write|express) .* ?: ?|\bcosts?\b|\bweigh",
        ),
    ),
    Topic(
        "units and times",
        "measures",
        "measures.peg",
        re.compile(
            r"^how many [a-z/²³ ]+ (?:are|make|is|equal|in)\b|^(?:convert|change) |^(?:write|express"
            r"|give) .+ in |^(?!.*∠)(?:what|how (?:long|much)) is [0-9a-z]|\d[:h]\d\d|\d\.\d\d ?[ap]\.?m",
        ),
        story_ahead=re.compile(r"\d[:h]\d\d|\d\.\d\d ?[ap]\.?m|how many [a-z²³ ]+ (?:are|make|is)\b"),
    ),
    told(
        "rates",
        "rates",
        "rates.peg",
        re.compile(
            r"\bspeed|km/h|m/s\b|\bmph\b|per hour|\bdensity|\bhow (?:far|long|many (?:hours|minutes))"
            r"|\bdistance",
        ),
    ),
    told(
        "interest",
        "interest",
        "interest.peg",
        re.compile(
            r"\binterest\b|\bcompound|\bdepreciat|\bloses value|\bin value|\bvalue\b(?! of [a-zA-Z](?![a-zA-Z]))"
        ),
    ),
    told(
        "percentages",
        "percents",
        "percents.peg",
        re.compile(r"%|percent|per cent|\bprofit|\bloss\b"),
    ),
    told(
        "solids",
        "solids",
        "solids.peg",
        re.compile(
            r"cylind|\bcon(?:e|ical)|spher|\bcub|prism|pyramid|frustum|\bbox\b|\bball\b|rectangular",
        ),
    ),
    Topic(
        "map scale",
        "scales",
        "amounts.peg scales.peg",
        story_ahead=re.compile(r"\b(?:map|plan|drawing|model|chart)\b"),
    ),
    Topic(
        "known shares",
        "known_shares",
        "amounts.peg known_shares.peg",
        story_ahead=re.compile(r"\bratio\b|[a-z] ?: ?[a-z]"),
    ),
    Topic(
        "compound measures",
        "compound_measures",
        "amounts.peg compound_measures.peg",
        story_ahead=re.compile(
            r"\b[Pp]ressure\b|\b[Pp]opulation\b|\bpeople live\b|\bloses\b|\bvalue\b|\bdepreciat"
            r"|\b(?:tank|pool|container|cistern|aquarium|trough|drum|pond)\b"
        ),
    ),
    Topic("exchange", "exchange", "amounts.peg exchange.peg", story_ahead=re.compile(r"[R$£€₦₹]")),
    Topic(
        "best buy",
        "buys",
        "amounts.peg buys.peg",
        story_ahead=re.compile(r"\b(?:better|best|cheaper|cheapest)\b"),
    ),
    Topic(
        "hire purchase and tax",
        "hire",
        "amounts.peg hire.peg",
        story_ahead=re.compile(r"[Hh]ire purchase|\bHP\b|\bdeposit\b|instalment|monthly|\btax"),
    ),
    Topic(
        "two proportions",
        "two_proportions",
        "amounts.peg",
        story_ahead=re.compile(r"\b[Hh]ow (?:much|many|long)\b.*\b(?:in|to)\b", re.DOTALL),
    ),
    Topic(
        "amounts in proportion",
        "proportions",
        "amounts.peg proportions.peg",
        story_ahead=re.compile(r"\b[Hh]ow (?:much|many|long|far)\b|\bcost\b|\bmass\b"),
    ),
    Topic(
        "solids together",
        "bodies",
        "amounts.peg bodies.peg",
        story_ahead=re.compile(r"[Cc]ylind|\b[Cc]one|[Ss]pher|\b[Cc]ub|[Pp]yramid|[Bb]all"),
    ),
    Topic(
        "similar solids",
        "similar_solids",
        "amounts.peg similar_solids.peg",
        story_ahead=re.compile(r"\bsimilar\b"),
    ),
    Topic(
        "further solids",
        "further_solids",
        "amounts.peg further_solids.peg",
        story_ahead=re.compile(r"\b[Ff]rustum\b|\bhole\b|\bnet of\b"),
    ),
    Topic(
        "plain figures",
        "plain_figures",
        "amounts.peg plain_figures.peg",
        story_ahead=re.compile(
            r"[Rr]ectang|[Ss]quare\b|[Rr]homb|[Pp]arallelogram|[Tt]rapez|\b[Kk]ite\b|[Tt]riangle|[Cc]irc"
            r"|\b[Ww]heel\b|\b[Pp]late\b|\b[Cc]oin\b|\b[Dd]isc\b"
        ),
    ),
    Topic(
        "plain circles",
        "plain_circles",
        "amounts.peg",
        story_ahead=re.compile(
            r"\bchord\b|\bsector\b|\b[Ss]emi-?circle\b|\b[Qq]uarter[- ]circle|\b[Qq]uadrant\b|\btangent\b"
            r"|\barc\b|\binscribed\b|\bcircumscribed\b|[Cc]ircle\b.*\bsquare\b"
        ),
    ),
    Topic(
        "plain scenes",
        "plain_scenes",
        "amounts.peg plain_scenes.peg",
        story_ahead=re.compile(
            r"\bladder\b|\bshadow\b|\bkite\b|\bramp\b|angle of (?:elevation|depression)"
            r"|\b(?:north|south|east|west)|\bbearing\b"
        ),
    ),
    Topic(
        "plain angles",
        "plain_angles",
        "amounts.peg",
        story_ahead=re.compile(r"\b(?:interior|exterior|supplement\w*|complement\w*)\b|\bangles of a|[Ii]n a triangle"),
    ),
    Topic(
        "one calculation",
        "calculations.topic",
        "amounts.peg",
        story_ahead=re.compile(
            r"\beach\b|\bfirst (?:hour|day|km|kilometre|minute)\b|\binstalments\b|\bcosts \S+\. How much\b|\bper"
            r" hour\b"
            r"|\b[Tt]ickets\b|\bdiscount\b|\ban hour\b|\bequally\b|[Tt]emperature|\bhands?\b|%|per ?cent"
            r"|\bovertime\b|\bcommission\b|\b[Tt]ax|\bcharges?\b"
            r"|\bplus\b|\bdeposit\b|\d/\d|\bfractions?\b|\bpercentage\b|\bpieces?\b|\btile[sd]?\b|\bcubes?\b"
            r"|\btogether\b"
            r"|\b(?:added|subtracted|multiplied|divided|exceeds?|half-?way|[Hh]ow much|LCM|HCF|[Ss]ubtract|[Aa]dd"
            r"|[Mm]ultiply)\b"
            r"|\b[Dd]ivide\b|\b(?:[Ss]um|[Ss]quare|[Cc]ube|[Dd]ifference) of\b|\bpath\b|\bborder\b|\bwalkway\b"
            r"|\bsimple interest\b|\bin the ratio\b"
        ),
    ),
    Topic("prisms", "prisms", "amounts.peg prisms.peg", story_ahead=re.compile(r"cross[- ]section|[Pp]rism")),
)
"""Their place in the order of all topics is in registry.py."""
