"""Reasons why a number is no measure, one small rule each, in a visible order."""

from __future__ import annotations

from collections.abc import Callable

from extract.quantities.draft import Draft, Scene
from extract.quantities.knowledge import knowledge

Rule = Callable[[Scene, Draft], bool]
_SKIP = ("the", "a", "and", "or", ",", "-")


def _in_idiom(scene: Scene, draft: Draft) -> bool:
    """ "one of these", "half the battle", "a million times"."""
    return any(
        start <= draft.start < end and draft.end <= end + (draft.unit is None)
        for start, end in scene.idioms_at(draft.start)
    )


def _by_name(scene: Scene, draft: Draft) -> bool:
    """ "fret 12", "number two", "400 grit", "the 2000 paper"."""
    know = knowledge()
    at = draft.start
    if scene.tape.text(at - 1) in ("the", "a"):
        at -= 1
    if any(phrases.before(scene.tape, at) is not None for phrases in know.before.values()) and draft.unit is None:
        return True
    behind = draft.end + 1 if scene.tape.kind(draft.end) == "dash" else draft.end
    return any(
        phrases.at(scene.tape, behind) is not None
        for name, phrases in know.after.items()
        if name != "multiple" or draft.unit is None
    )


def _is_price(scene: Scene, draft: Draft) -> bool:
    return scene.tape.text(draft.start - 1) in ("$", "£", "€") or draft.said in ("pence",)


def _is_year(scene: Scene, draft: Draft) -> bool:
    """ "1938", "nineteen seventy six"; not "1,600" and not "1600 mm"."""
    know = knowledge()
    value = draft.number.value
    if (
        draft.unit
        or draft.number.decimals
        or value.denominator != 1
        or not know.year["from"] <= value <= know.year["to"]
    ):
        return False
    if "," in scene.tape.text(draft.start):
        return False
    return draft.grouped or scene.tape.text(draft.start - 1) in know.year_before


def _is_one(scene: Scene, draft: Draft) -> bool:
    """The pronoun."""
    return (
        draft.unit is None
        and draft.number.value == 1
        and draft.number.low is None
        and scene.tape.text(draft.start) == "one"
    )


def _is_count(scene: Scene, draft: Draft) -> bool:
    """ "nine spindles", "18 in the tray", "the other two", "there's 24 of them"."""
    if draft.unit or draft.number.form not in ("integer",):
        return False
    know, tape = knowledge(), scene.tape
    if know.counted_before.before(tape, draft.start) is not None:
        return True
    at = draft.end + 1 if tape.kind(draft.end) == "dash" else draft.end
    if know.counted_after.at(tape, at) is not None or tape.text(at) in know.counted_nouns:
        return True
    return _heads_plural(scene, at)


def _heads_plural(scene: Scene, at: int) -> bool:
    """True where a plural noun that no unit is stands within two adjectives or nouns behind."""
    for place in range(at, min(at + 3, len(scene.tape))):
        tag = scene.tag(place)
        if tag in ("NNS", "NNPS"):
            return True
        if tag not in ("JJ", "NN", "VBN", "VBG", "NNP", "JJR"):
            return False
    return False


def _is_bare_half(scene: Scene, draft: Draft) -> bool:
    """ "half" alone, without article and unit: "half of it", "cut it in half"."""
    return draft.unit is None and draft.end == draft.start + 1 and scene.tape.text(draft.start) in ("half", "quarter")


def _is_share(scene: Scene, draft: Draft) -> bool:
    """ "a third of the way", "two thirds": a share of something, not a size."""
    if draft.unit or draft.number.form != "fraction":
        return False
    below = draft.number.denominator or 1
    if below & (below - 1):
        return True
    return scene.tape.text(draft.end) == "of" and scene.tape.text(draft.end + 1) in (
        "the",
        "it",
        "them",
        "that",
        "this",
        "my",
        "your",
        "its",
        "those",
        "these",
        "what",
    )


RULES: tuple[tuple[str, Rule], ...] = (
    ("idiom", _in_idiom),
    ("name", _by_name),
    ("price", _is_price),
    ("year", _is_year),
    ("pronoun", _is_one),
    ("count", _is_count),
    ("half", _is_bare_half),
    ("share", _is_share),
)


def refused(scene: Scene, draft: Draft) -> str | None:
    """Name of the first rule that makes the number no measure, None where none does."""
    return next((name for name, rule in RULES if rule(scene, draft)), None)
