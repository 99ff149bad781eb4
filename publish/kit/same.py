"""Which names of tools and materials are of one thing before any person has said so."""

from __future__ import annotations

from extract.roots import root
from publish.rulings.naming import same_letters


def same_thing(name: str) -> str:
    """A name as it is compared: "Cam clamps" and "cam clamp" are one thing."""
    return " ".join(root(word) for word in same_letters(name).split())


def thing_key(name: str, *, by_hand: bool) -> str:
    """Tells one thing from another of the same sort: what a person named is what is called just so."""
    return f"={same_letters(name)}" if by_hand else same_thing(name)
