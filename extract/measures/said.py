"""Attributes that are said: by an adjective, a noun or a verb near the figure.

Takes "three quarters of an inch wide", "four thousandths of relief", "soak it for ten minutes"; leaves "it's nine" alone.
Each rule returns early, and the first of `RULES` that answers wins.
"""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Callable
from itertools import pairwise

from extract.measures.figure import Figure, Finding
from extract.measures.knowledge import knowledge
from extract.measures.lexicon import Found
from extract.trade import Attribute
from extract.units import to_unit

Rule = Callable[[Figure, Finding], str | None]
_BEHIND = 4
"""How many words may stand between a figure and the adjective or noun behind it."""


def by_removal(figure: Figure, _: Finding) -> str | None:
    """ "take 4 off", "planed a sixteenth off the edge"."""
    scene = figure.scene
    if figure.kind != "length" or "off" not in scene.words[figure.end : figure.end + 2]:
        return None
    for at in range(figure.left[0], figure.start):
        if scene.tags[at][:2] == "VB" and scene.lemmas[at] in knowledge().removes:
            return "cut"
    return None


def by_existence(figure: Figure, _: Finding) -> str | None:
    """ "there was an eighth under that leg": room between things."""
    scene = figure.scene
    if figure.kind != "length" or not {"there"} & set(scene.words[max(0, figure.start - 4) : figure.start]):
        return None
    return "gap" if scene.words[figure.end : figure.end + 1] in (("under",), ("between",), ("behind",), ("around",)) else None


def by_adjective_behind(figure: Figure, finding: Finding) -> str | None:
    """ "seventy thou thick", "an inch or so proud"."""
    for found in _behind(figure, figure.scene.adjectives, _BEHIND - 1):
        if _suits(figure, found):
            finding.word = found
            return found.entry.name
    return None


def by_noun_behind(figure: Figure, finding: Finding) -> str | None:
    """ "a 3 mm gap", "four thousandths of relief"; refuses "half an inch from the gap"."""
    for found in _behind(figure, figure.scene.nouns, _BEHIND):
        if _suits(figure, found):
            finding.noun = finding.word = found
            return found.entry.name
    return None


def by_series(figure: Figure, _: Finding) -> str | None:
    """ "15 millimeters by 10": the first is the length, the next the width."""
    return _series_name(figure)


def by_restatement(figure: Figure, finding: Finding) -> str | None:
    """ "... call it 28 and a half": what the figure before it was."""
    if finding.restates:
        finding.noun = finding.restates.noun
        return finding.restates.attribute
    return None


def by_following(figure: Figure, finding: Finding) -> str | None:
    """ "... and 6 on the C": what the figure before it was."""
    if finding.follows and same_order(figure, finding.follows):
        finding.noun = finding.follows.noun
        return finding.follows.attribute
    return None


def by_thing_behind(figure: Figure, _: Finding) -> str | None:
    """ "a quarter inch driver": the usual measure of the thing that the figure stands before."""
    if figure.kind not in ("length", None):
        return None
    following = figure.scene.things_in(figure.end, figure.end + 4)
    return usual_measure(following[0].name, figure) if following and adjoins(figure, following[0].start) else None


def by_noun_before(figure: Figure, finding: Finding) -> str | None:
    """ "the action at the twelfth is ...": the nearest word of measure in the clause."""
    for found in _before(figure, figure.scene.nouns, figure.left[0]):
        if _suits(figure, found):
            finding.noun = found
            return found.entry.name
    return None


def by_verb_before(figure: Figure, _: Finding) -> str | None:
    """ "it weighs three pounds"."""
    for found in _before(figure, figure.scene.verbs, figure.left[0]):
        if _suits(figure, found):
            return found.entry.name
    return None


def by_adjective_before(figure: Figure, _: Finding) -> str | None:
    """ "how deep? 12 millimeters", "out by two"; a lone adjective before a figure says little."""
    for found in _before(figure, figure.scene.adjectives, max(figure.sentence[0], figure.start - 12)):
        asked = found.start and figure.scene.words[found.start - 1] == "how"
        if _suits(figure, found) and (asked or len(found.entry.pieces) > 1 and found.end == figure.start):
            return found.entry.name
    return None


def by_verb_to(figure: Figure, _: Finding) -> str | None:
    """ "cut it to 45", "turned down to 11/16": what such work leaves, where "to" stands before the figure."""
    scene = figure.scene
    before = scene.text(figure.left[0], figure.start)
    if figure.kind != "length" or not {"to", "at"} & set(before[-3:]):
        return None
    for at in range(figure.start - 1, figure.left[0] - 1, -1):
        if scene.tags[at][:2] == "VB" or at == figure.left[0]:
            attribute = knowledge().leaves.get(scene.lemmas[at])
            if attribute:
                return attribute
    return None


def by_heading(figure: Figure, finding: Finding) -> str | None:
    """ "Needle bar height. There are two marks ...": a word of measure since the last figure that heads its sentence."""
    scene = figure.scene
    start = max(0, figure.start - _HEADING_REACH)
    if figure.previous:
        start = max(start, figure.previous.figure.right[1])
    for found in _before(figure, scene.nouns, start):
        heads = scene.sentence_start[found.start] == found.start
        short = scene.sentence_end[found.start] - scene.sentence_start[found.start] <= _HEADING_LENGTH
        if _suits(figure, found) and (heads or short) and scene.words[found.start] != "loads":
            finding.noun = found
            return found.entry.name
    return None


def by_verb_in_sentence(figure: Figure, _: Finding) -> str | None:
    """ "drill the socket with the spoon bit, five eighths"."""
    for found in _before(figure, figure.scene.verbs, figure.sentence[0]):
        if _suits(figure, found) and not (figure.previous and found.start < figure.previous.figure.start):
            return found.entry.name
    return None


def by_move(figure: Figure, _: Finding) -> str | None:
    """ "down eleven millimeters", "back a sixteenth": the direction right before the figure."""
    if figure.kind != "length":
        return None
    at = figure.start - 1
    while at > figure.left[0] and figure.scene.words[at] in _APPROXIMATE:
        at -= 1
    return knowledge().moves.get(figure.scene.words[at]) if at >= figure.left[0] else None


def by_span(figure: Figure, _: Finding) -> str | None:
    """ "nut to the twelfth fret I get thirteen": from one thing to another."""
    if figure.kind != "length":
        return None
    things = figure.scene.things_in(max(figure.sentence[0], figure.start - 14), min(figure.sentence[1], figure.end + 8))
    for one, other in pairwise(things):
        if other.preposition == "to" and other.start - one.end <= 3 and not _moved(figure, one.start):
            return "length" if one.head == other.head else "distance"
    return None


def by_unlike_noun(figure: Figure, finding: Finding) -> str | None:
    """A unit of the wrong kind is still of what was named: "torque it to 12 mm", "5.5 Nm sticking out"."""
    scene = figure.scene
    if figure.kind not in knowledge().slips:
        return None
    for found in _behind(figure, scene.adjectives, _BEHIND - 1):
        if found.entry.pieces in knowledge().unmistakable:
            return found.entry.name
    for found in _before(figure, scene.nouns, figure.left[0])[:1]:
        if set(scene.words[found.end : figure.start]) <= _LINKS:
            finding.noun = found
            return found.entry.name
    for found in _before(figure, scene.verbs, figure.left[0])[:1]:
        if found.entry.pieces in knowledge().unmistakable:
            return found.entry.name
    return None


def by_noun_in_sentence(figure: Figure, finding: Finding) -> str | None:
    """A word of measure earlier in the sentence, or close behind the figure: "13 inches, that's the scale"."""
    for found in _before(figure, figure.scene.nouns, max(figure.sentence[0], figure.start - 20)):
        if _suits(figure, found):
            if figure.previous and found.end <= figure.previous.figure.start:
                return None
            finding.noun = found
            return found.entry.name
    return None


RULES: tuple[tuple[str, Rule], ...] = (
    ("removal", by_removal),
    ("existence", by_existence),
    ("adjective behind", by_adjective_behind),
    ("noun behind", by_noun_behind),
    ("series", by_series),
    ("restated", by_restatement),
    ("thing behind", by_thing_behind),
    ("following", by_following),
    ("noun before", by_noun_before),
    ("verb before", by_verb_before),
    ("verb to", by_verb_to),
    ("adjective before", by_adjective_before),
    ("noun in sentence", by_noun_in_sentence),
    ("unlike noun", by_unlike_noun),
    ("move", by_move),
    ("span", by_span),
    ("verb in sentence", by_verb_in_sentence),
    ("heading", by_heading),
)

_SAME_ORDER = 4
"""Lengths further apart than this ratio are taken for different measures."""
_HEADING_LENGTH = 6
_HEADING_REACH = 30
"""Tokens."""
_SLIGHT = frozenset({"width", "thickness", "gap", "gauge"})
_LONG_INCHES = 10
_APPROXIMATE = frozenset({"about", "roughly", "maybe", "nearly", "just", "only", "another", "by", "around", "say"})
_LINKS = frozenset({"is", "was", "'s", "are", "were", "of", "to", "at", "about", "now", "be", "should", "reads", "around", "roughly", "a", "the", "just", "only"})
_VAGUE = frozenset({"down", "into", "along", "between", "behind", "in", "loose", "low", "light", "clear", "off", "old", "showing"})


def usual_measure(name: str, figure: Figure) -> str | None:
    """What a bare length of a thing usually is, by its head noun; None where the list has neither.

    A foot of a strip is its length, whatever a strip's bare figure usually is.
    """
    head = name.split()[-1]
    attribute = next(
        (table[noun] for table in (figure.scene.lexicon.usual, knowledge().usual) for noun in (name, head) if noun in table),
        None,
    )
    unit = figure.quantity.unit
    if attribute in _SLIGHT and unit and unit.kind == "length" and to_unit(figure.quantity.value, unit, "inch") >= _LONG_INCHES:
        return "length"
    return attribute


def same_order(figure: Figure, earlier: Finding) -> bool:
    """Two lengths for one thing lie near each other; twenty inches and an eighth are not the same measure."""
    unit, other = figure.quantity.unit, earlier.figure.quantity.unit
    if unit is None or other is None or unit.kind != "length" or other.kind != "length":
        return True
    one = to_unit(abs(figure.quantity.value), unit, other)
    two = abs(earlier.figure.quantity.value)
    return min(one, two) * _SAME_ORDER >= max(one, two)


def suits(figure: Figure, attribute: Attribute) -> bool:
    """True where the figure's unit may stand for the attribute's kind."""
    return figure.kind is None or knowledge().akin(figure.kind, attribute.kind)


def _moved(figure: Figure, start: int) -> bool:
    """True where a verb of action before the things makes "to" a direction: "slide the post to the bar"."""
    scene = figure.scene
    return any(tag in ("VB", "VBD", "VBG", "VBP") for tag in scene.tags[max(scene.clause_start[start], start - 4) : start])


def _suits(figure: Figure, found: Found) -> bool:
    return found.entry.attribute is not None and suits(figure, found.entry.attribute)


def _behind(figure: Figure, founds: list[Found], reach: int) -> list[Found]:
    """Words of measure behind the figure with nothing but fillers between, the longest first."""
    scene = figure.scene
    stop = min(figure.right[1], figure.end + reach)
    at = figure.end
    while at < stop:
        here = [found for found in _starting(founds, at)]
        if here:
            return sorted(here, key=lambda found: found.start - found.end)
        if scene.words[at] not in knowledge().fillers and scene.tags[at] not in ("JJ", "JJR", "NN"):
            return []
        at += 1
    return []


def _before(figure: Figure, founds: list[Found], start: int) -> list[Found]:
    """Words of measure in tokens `start` to the figure, the nearest first."""
    low = bisect_left(founds, start, key=lambda found: found.start)
    high = bisect_left(founds, figure.start, key=lambda found: found.start)
    return [found for found in founds[low:high] if found.end <= figure.start][::-1]


def _starting(founds: list[Found], at: int) -> list[Found]:
    low = bisect_left(founds, at, key=lambda found: found.start)
    high = bisect_left(founds, at + 1, key=lambda found: found.start)
    return founds[low:high]


def adjoins(figure: Figure, start: int) -> bool:
    """True where only adjectives stand between the figure and a thing: "11 inch frosted head"."""
    scene = figure.scene
    return scene.cue_joins(figure.end - 1, start) and all(
        scene.tags[at] in ("JJ", "HYPH", "NN", "VBN") and scene.words[at] not in _VAGUE
        for at in range(figure.end, start)
    )


def _series_name(figure: Figure) -> str | None:
    if figure.kind not in ("length", None):
        return None
    names = knowledge().series
    before = 0
    previous = figure.previous
    while previous and before < len(names) - 1:
        after = previous.figure
        gap = figure.scene.text(after.end, figure.earlier_start(before))
        if gap not in (("by",), ("x",), ("times",)):
            break
        before += 1
        previous = after.previous
    if before:
        return names[before]
    following = figure.scene.quantities[figure.index + 1 : figure.index + 2]
    if following and figure.scene.text(figure.end, following[0].start) in (("by",), ("x",)):
        return names[0]
    return None
