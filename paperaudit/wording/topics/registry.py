"""The topics with the words that announce each, in the order in which they are asked whether a sentence is theirs."""

import re

from paperaudit.wording.topics.chance_and_values import CHANCE_AND_VALUES
from paperaudit.wording.topics.measuring import MEASURING
from paperaudit.wording.topics.topic import Topic, told

TOPICS: tuple[Topic, ...] = (
    Topic("options by a property", "options_asked", "order.peg", story_ahead=re.compile(r"^which\b", re.IGNORECASE)),
    Topic(
        "trigonometry",
        "trig",
        "trig.peg",
        re.compile(r"\b(?:sin|cos|tan)(?![a-z])|\bradians?\b|\bdegrees\b|\brad\b"),
        re.compile(
            r"\A(?=.*\b(?:sin|cos|tan)(?![a-z]))(?=.*(?:\b(?:acute|obtuse|reflex|quadrant)\b|°|[<>] ?0))", re.DOTALL
        ),
    ),
    Topic(
        "movements",
        "movements",
        "movements.peg",
        re.compile(
            r"\btransformation\b"
            r"|\b(?:reflect|rotat|translat|enlarg|dilat)|\bimages? of\b|\bvectors?\b|\bmagnitude\b|\bmodulus\b"
            r"|\||\b[A-Za-z]{1,2} ?= ?[(\[⟨]|\d?i ?[-+] ?\d*j\b",
        ),
        re.compile(r"\b(?:reflected|rotated|translated|enlarged) "),
        states=True,
    ),
    Topic(
        "graphs of functions",
        "graphs",
        "graphs.peg",
        re.compile(
            r"\bdomain\b|\brange of (?:the function )?[fghy]\b|\brange\b.*[=(]"
            r"|\b(?:in|de)creas(?:e|es|ing)\b|\binfle|\bconcave\b|\b(?:stationary|turning|critical) points?\b"
            r"|\b(?:maxim|minim|greatest|largest|smallest|least)\w*\b.*\b[A-Z]\b"
            r"|\b(?:maxim|minim)\w*\b.*\b(?:volume|area|profit|cost)\b|\b(?:volume|area|profit|cost)\b.*\b(?:maxim|minim)"
            r"|\b[A-Z]\b.*\b(?:maxim|minim|greatest|largest|smallest|least)"
            r"|\brate\b.*\b[a-z] ?=|\barea\b.*\by ?=|\bgraph\b|\b[fgh] ?\( ?x ?\)|\bgiven by\b|^[A-Z] ?\("
            r"|\b[fgh]′ ?\( ?[a-z] ?\) ?[<>]"
            r"|\b(?:parabola|hyperbola|curve)\b.*\b(?:shift|translat|reflect|stretch|moved)",
        ),
        story_ahead=re.compile(
            r"\b(?:graph|curve|parabola|hyperbola|point)\b.*\b(?:new|image|resulting|corresponding|translated)\b",
            re.DOTALL,
        ),
        states=True,
    ),
    Topic(
        "functions",
        "functions",
        "functions.peg",
        re.compile(
            r"[a-z](?:⁻¹|\^\{?-1\}?|′+)? ?\( ?[-a-z0-9]|[fgh] ?°|\bdifferentiate|\bderivative|\bd[yf]?/d[a-z]"
            r"|\bD_?x\b|\bintegra|∫|\b(?:tangent|normal) (?:line )?to\b|\b(?:stationary|turning"
            r"|critical) points?\b|\bgradient of\b|\barea\b.*(?:curve|x-axis)|\binverse\b|[fgh]⁻¹"
            r"|[a-z] ?: ?[a-z] ?[→↦]",
        ),
        states=True,
    ),
    Topic(
        "coordinates",
        "coordinates",
        "coordinates.peg",
        re.compile(
            r"\([^()]*[,;][^()]*\)|\bgradient|\bslope\b|(?:find|calculate|determine|state|down|out"
            r"|what).{0,40}\bmid-?point|\bequations? of\b|intercept|turning point|of symmetry|asymptote"
            r"|^(?!solve ).*(?<![a-z])[xy](?:[²³]|\^\d)? ?[-+=](?!.*°)"
            r"|\bcoordinates of\b|\bvalues of [a-z]\b|\bcollinear\b|\bintersect|\binclination\b|\bx-axis\b"
            r"|\b(?:minimum|maximum|least|greatest) value of (?:the )?(?:function )?[fgh]\b",
        ),
        states=True,
    ),
    Topic(
        "sequences",
        "sequences",
        "sequences.peg",
        re.compile(
            r"\bsequences?\b|\bseries\b|\bpatterns?\b|\bprogressions?\b|\bterms?\b|\bnext\b"
            r"|\bcommon (?:difference|ratio)|[Σ∑]|\bsigma\b|\bS_?n ?="
            r"|\bsum (?:to infinity|from)\b|\b[TtUuaS]_?\{?(?:n|\d+)\b",
        ),
        states=True,
    ),
    Topic("logarithms", "logarithms", "logarithms.peg", re.compile(r"\b(?:log|ln)(?![a-z])|\blogarithm")),
    Topic(
        "binomial expansions",
        "expansions",
        "expansions.peg",
        re.compile(
            r"\bexpansion\b|\bbinomial\b|\bpascal|\bexpand\b.*\)(?:\^|[⁴-⁹¹])|\bcoefficient of\b"
            r"|independent of|constant term|first \w+ terms.*powers of|\bexpand\b.*\b(?:up to|as far as)\b"
        ),
        story_ahead=re.compile(r"\bvalid\b"),
    ),
    Topic(
        "contradiction",
        "contradiction",
        "contradiction.peg",
        re.compile(r"\bcontradiction\b|\b(?:prove|show)\b.*√.*\birrational\b"),
    ),
    Topic("induction", "induction", "induction.peg", re.compile(r"\binduction\b")),
    Topic(
        "algebraic proof",
        "proofs",
        "proofs.peg",
        re.compile(
            r"^(?!.*(?:∠|△|[A-Z]{2})).*(?:\b(?:prove|show|verify)\b.*(?:multiple|divisible|\beven\b|\bodd\b|square|prime"
            r"|positive|negative|greater|sum of the|[><≥≤] ?0)|counter-?example|\bdisprove\b)"
        ),
    ),
    Topic(
        "algebra",
        "algebra",
        "algebra.peg",
        re.compile(
            r"\b(?:complet\w+|factori[sz]\w+|factor|formula|integers?|whole numbers?|range of values"
            r"|set of values|zero(?:e?s)?|roots?|solutions?|in the form|discriminant|nature|minimum|maximum"
            r"|least|greatest|smallest|largest|lowest|highest|remainder|quotient|divide|divisible|in terms of"
            r"|assuming|positive|restrictions?|let|suppose|what(?!.*∠)|collect|rearrange|single fraction"
            r"|excluded values|express|such that|perfect square|for all)\b|≡|> ?0",
        ),
        story_ahead=re.compile(
            r"\b(?:has\b.*\b(?:roots?|solutions?)|roots? of\b.*\bare)\b|\bis a factor of\b"
            r"|\bdivided by\b|\bdivisible by\b"
        ),
        states=True,
    ),
    told(
        "coefficients to compare",
        "compared",
        "compared.peg",
        re.compile(r"≡|\b(?:written|expressed|rewritten|identical\w*|equivalent|for all|in the form)\b"),
    ),
    Topic(
        "factors and multiples",
        "factors",
        "factors.peg",
        re.compile(
            r"\b(?:common (?:factor|divisor|multiple|denominator)|HCF|LCM|GCD|GCF|hcf|lcm|gcd|gcf|factors?"
            r"|divisors?|multiples?|divisible|divides?|divided by|prim(?:e|es)|composite|even|odd|square|cube"
            r"|triang(?:le|ular) numbers?|rational|irrational) ?",
        ),
    ),
    told(
        "order of numbers",
        "order",
        "order.peg",
        re.compile(
            r"\b(?:sort|put|place|arrange|order|rank|biggest|largest|greatest|highest|smallest|lowest|least"
            r"|closest|nearest|bigger|larger|greater|smaller|higher|lower|less|equal|unequal"
            r"|values?(?! of [a-zA-Z](?![a-zA-Z]))|nonequal|most|same)\b|^(?:is|does|do|are) |<, ?>",
        ),
    ),
    Topic(
        "digits and bases",
        "digits",
        "digits.peg",
        re.compile(
            r"\bbase (?:\d|t|f|s|e|n)|\b(?:binary|denary|octal|hex\w*|digit)\b|_\{?\d"
            r"|\b(?:place )?value of(?! [a-zA-Z](?![a-zA-Z]))"
            r"|(?:units?|ones?|tens|tenths|hundreds|hundredths|thousands|thousandths|millions) (?:digit|place"
            r"|column)|(?:stand for|represent|worth)|\bin (?:words|word form|figures|digits|numerals)\b"
            r"|using (?:figures|digits)|\btruncate\b|[0-9][0-9a-z]*[2-9] [+×*-] [0-9]",
        ),
    ),
    Topic(
        "forms of numbers",
        "forms",
        "forms.peg",
        re.compile(
            r"\u0307|\brecurring|\brepeating|\.\.|\d\(\d+\) |\d\. (?:as|to|into)|\bestimat|\bapproxim"
            r"|\bpower\b|^round|\brationali|√.* (?:form|as) |in the form ",
        ),
    ),
    Topic(
        "bounds",
        "bounds",
        "bounds.peg",
        re.compile(
            r"\b(?:correct|rounded|accurate|truncated|measured|nearest|decimal place|significant fig|bounds?"
            r"|error interval|possible|limits|[ds]\.?[pf]\.?)\b",
        ),
        story_ahead=re.compile(r"\b(?:bounds?|error interval|possible|limits)\b", re.IGNORECASE),
        states=True,
    ),
    Topic(
        "sets",
        "sets",
        "sets.peg",
        re.compile(r"[∪∩∅ξ𝓔{]|\bn ?\([^)]*\)|\b(?:members|elements) (?:of|in)\b|[A-Z]′"),
        story_ahead=re.compile(
            r"\b(?:both|neither|only|at least one|exactly one|exactly two|but not|all three|none of)\b"
        ),
        states=True,
    ),
    Topic(
        "calculations in words",
        "spoken",
        "spoken.peg",
        re.compile(
            r"\b(?:sum|total|add|added|plus|minus|less|more|greater|subtract|take|product|multipl\w+|times"
            r"|divide\w*|over|quotient|difference|distance|power|squared|cubed|square|cube|root|reciprocal"
            r"|double|twice|treble|triple|half|halve|put together)\b",
        ),
    ),
    *CHANCE_AND_VALUES,
    Topic(
        "stories",
        "stories.topic",
        "stories/common.peg",
        None,
        story_ahead=re.compile(r"[A-Za-z]{2}.*\s.*[A-Za-z]{2}", re.DOTALL),
    ),
    *MEASURING,
)
"""The first whose grammar reads a sentence takes it; the general grammar of figures comes after all of them."""


def topic_named(name: str) -> Topic:
    """The topic of that name, for its own readers."""
    return next(topic for topic in TOPICS if topic.name == name)
