"""Attributes that nobody says: by what was measured before, by the thing, by the kind of unit.

Takes "new bridge is five eighths" (a bridge's height), "it's nine" after "the action was eleven".
"""

from __future__ import annotations

from collections.abc import Callable

from extract.measures.figure import Figure, Finding
from extract.measures.knowledge import knowledge
from extract.measures.said import same_order, usual_measure
from extract.units import to_unit

Rule = Callable[[Figure, Finding], str | None]
_WEAK = frozenset({"sentence", "attribute", "previous", "topic", "session", ""})
"""Rules that guess at an item; a carried attribute brings its own."""
_FAR = 150
"""Tokens over which an attribute is carried."""


def by_pronoun(figure: Figure, finding: Finding) -> str | None:
    """What the quantity before measured, where its item is still spoken of."""
    previous = figure.previous
    if previous is None or finding.item_rule not in ("previous", "attribute") or previous.item_head != finding.item_head:
        return None
    return previous.attribute if _alike(figure, previous) and same_order(figure, previous) else None


def by_look(figure: Figure, finding: Finding) -> str | None:
    """ "goes down eleven, that's far too deep": a word for its looks in the sentence."""
    scene = figure.scene
    if figure.kind == "ratio" and set(scene.words[figure.sentence[0] : figure.sentence[1]]) & knowledge().wet:
        return "moisture content"
    if figure.kind != "length":
        return None
    start, end = max(figure.sentence[0], figure.start - 12), min(figure.sentence[1], figure.end + 8)
    if figure.previous:
        start = max(start, figure.previous.figure.end)
    following = scene.quantities[figure.index + 1 : figure.index + 2]
    if following:
        end = min(end, following[0].start)
    for at in [*range(figure.end, end), *range(figure.start - 1, start - 1, -1)]:
        attribute = knowledge().looks.get(scene.words[at])
        of_another = at + 1 < len(scene.words) and scene.tags[at + 1][:2] == "NN"
        if attribute and scene.tags[at][:2] in ("JJ", "RB") and not of_another:
            return attribute
    return None


def by_band(figure: Figure, finding: Finding) -> str | None:
    """The attribute whose band for this very thing takes in the figure, the tightest band first."""
    unit = figure.quantity.unit
    if unit is None or not finding.item:
        return None
    fits: list[tuple[float, str]] = []
    for attribute, band in figure.scene.lexicon.bands_of(finding.item, unit.kind):
        if band.low > 0 and band.low <= to_unit(abs(figure.quantity.value), unit, band.unit) <= band.high:
            fits.append((band.high / band.low, attribute))
    return min(fits)[1] if fits else None


def by_same_item(figure: Figure, finding: Finding) -> str | None:
    """What was last measured, in the same kind, of a thing with the same head noun."""
    for earlier in reversed(figure.earlier):
        if earlier.item_head == finding.item_head and _alike(figure, earlier) and same_order(figure, earlier):
            return earlier.attribute
    return None


def by_usual(figure: Figure, finding: Finding) -> str | None:
    """The usual measure of the thing."""
    if figure.kind not in ("length", None) or not finding.item or finding.item_rule in ("previous", "topic", "session"):
        return None
    return usual_measure(finding.item, figure)


def by_carrying(figure: Figure, finding: Finding) -> str | None:
    """What the last quantity of the same kind measured."""
    for earlier in reversed(figure.earlier):
        if figure.start - earlier.figure.end > _FAR:
            return None
        if _alike(figure, earlier) and same_order(figure, earlier):
            if finding.item_rule in _WEAK and earlier.item:
                finding.item, finding.item_head, finding.item_role = earlier.item, earlier.item_head, earlier.item_role
                finding.item_at = earlier.item_at
            return earlier.attribute
    return None


def by_usual_topic(figure: Figure, finding: Finding) -> str | None:
    """The usual measure of the thing that was spoken of before."""
    if figure.kind not in ("length", None) or not finding.item:
        return None
    return usual_measure(finding.item, figure)


def by_kind(figure: Figure, _: Finding) -> str | None:
    """The kind's own name: voltage, torque; "size" for a length."""
    return knowledge().kind_default.get(figure.kind or "")


RULES: tuple[tuple[str, Rule], ...] = (
    ("pronoun", by_pronoun),
    ("look", by_look),
    ("same item", by_same_item),
    ("band", by_band),
    ("usual of the thing", by_usual),
    ("carried", by_carrying),
    ("usual of the topic", by_usual_topic),
    ("kind", by_kind),
)


def _alike(figure: Figure, earlier: Finding) -> bool:
    if earlier.attribute is None or figure.kind != earlier.figure.kind:
        return False
    kind = figure.scene.lexicon.kinds.get(earlier.attribute)
    return kind is None or figure.kind is None or knowledge().akin(figure.kind, kind)
