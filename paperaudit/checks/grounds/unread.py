"""Says in a teacher's words why a statement was not read: not understood, or of a kind that is not audited yet."""

from paperaudit.model.reading import Unread

_LATER = "not yet known"
"""How the wording layer says that it knows of a thing and cannot treat it yet: the part is left, the paper goes on."""

_FIELDS = {
    "statistics": ("mean", "median", "mode", "range"),
    "probability": (),
    "vectors": ("vector",),
    "gradients": ("gradient",),
    "sequences": ("nth term",),
    "solids": ("cylinder", "sphere", "cone", "prism", "pyramid"),
    "circle geometry": (
        "circle",
        "chord",
        "tangent",
        "arc",
        "sector",
        "diameter",
        "radius",
        "radii",
        "cyclic",
        "circumference",
        "semicircle",
    ),
}


def is_for_later(unread: Unread) -> bool:
    """Whether the statement is no fault of the paper's: its topic is known and not audited yet."""
    return unread.expected.startswith(_LATER)


def why_not_read(unread: Unread) -> str:
    """Why a statement was not read, as half a sentence.

    >>> why_not_read(Unread("Find the mode.", "text", 9, "not yet known: mode"))
    'statistics (mode) is not audited in this form: “Find the mode.”'
    """
    if is_for_later(unread):
        return f"{_topic(unread.expected)} not audited in this form: “{unread.text[:120]}”"
    rest = unread.text[unread.start :].strip()
    stopped = f" from '{rest[:40]}' on" if unread.start and rest else ""
    expected = f", expected {unread.expected}" if unread.expected else ""
    nearest = f"; did you mean '{unread.nearest}'?" if unread.nearest else ""
    return f"{unread.where}: '{unread.text[:120]}' was not understood{stopped}{expected}{nearest}"


def _topic(expected: str) -> str:
    """The topic that a word belongs to, with its verb: "statistics (mode) is", "vectors are"."""
    word = expected.removeprefix(_LATER).lstrip(": ")
    for field, members in _FIELDS.items():
        if word == field:
            return f"{field} {'are' if field.endswith('s') and field != 'statistics' else 'is'}"
        if word in members or word.removesuffix("s") in members:
            return f"{field} ({word}) {'are' if field.endswith('s') and field != 'statistics' else 'is'}"
    return f"“{word}” is" if word else "this kind of question is"
