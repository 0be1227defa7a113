"""Finds the files that ship with the program: in a checkout, or packed into the wheel."""

from pathlib import Path

_CHECKOUT = Path(__file__).resolve().parent.parent
_PACKED = Path(__file__).resolve().parent / "_shipped"


def shipped(*parts: str) -> Path:
    """The path of a shipped file or folder: `shipped("schemes", "skills.yaml")`.

    The checkout comes first, so that an editable install sees what its owner edits; a wheel has the
    copy that the build put under `_shipped`. `papers` are the shipped papers of `fixtures/papers`.
    Raises FileNotFoundError with both places named.
    """
    checkout = _CHECKOUT.joinpath("fixtures", *parts) if parts[0] == "papers" else _CHECKOUT.joinpath(*parts)
    packed = _PACKED.joinpath(*parts)
    for candidate in (checkout, packed):
        if candidate.exists():
            return candidate
    raise FileNotFoundError(f"neither {checkout} nor {packed} is there")
