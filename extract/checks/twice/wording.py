"""What a person is told of two figures for one thing: what it is, in the words of the talk, and both figures."""

from __future__ import annotations

from extract.checks.talk import Said
from extract.checks.twice.kinship import DIMENSIONS
from extract.checks.twice.signs import Scene
from extract.roots import root

_NEAR, _BEHIND = 12, 6


def message_for(scene: Scene, first: Said, second: Said) -> str:
    """One sentence with both figures as they were said."""
    one, other = first.measure, second.measure
    name = _name(scene, first, second)
    what = f"the {name}" if name else "this"
    here = other.display if one.kind == other.kind else other.quote
    if scene.frames.says_found(second) and scene.frames.frame(first) == "as_found":
        return f"{what} was {one.display} as found, and is recalled here as {here}"
    return f"{what} was told as {one.display} before and as {here} here, with no correction between"


def _name(scene: Scene, first: Said, second: Said) -> str | None:
    """The attribute that the record has of both, with its thing; else the rarest thing or word by both."""
    one, other = first.measure, second.measure
    if other.attribute and one.attribute == other.attribute:
        return f"{other.attribute} of the {other.item}" if other.item and other.item == one.item else other.attribute
    near = [word.removesuffix("'s") for word in (*second.before[-_NEAR:], *second.after[:_BEHIND])]
    things = scene.frames.named(first).things & scene.frames.named(second).things
    shared = scene.kinship.near(first) & scene.kinship.near(second)
    for roots in (things, shared):
        named = [word for word in near if root(word) in roots and word not in DIMENSIONS]
        if named:
            return max(named, key=lambda word: scene.kinship.rarity(root(word)))
    return (other.attribute if other.kind == one.kind else None) or one.attribute
