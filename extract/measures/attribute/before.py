"""Attributes that are said before the figure, in its clause.

Takes "the action at the twelfth is eleven", "it weighs three pounds", "how deep? 12", "turned down to 11/16".
"""

from __future__ import annotations

from extract.measures.attribute.behind import ADJECTIVE_REACH
from extract.measures.attribute.near import before, behind, suits
from extract.measures.figure import Figure, Finding
from extract.measures.knowledge import knowledge
from extract.measures.reading import MARKS

_ASKED = 12
"""Tokens between "how deep" and the figure."""


def by_noun(figure: Figure, finding: Finding) -> str | None:
    """ "the action at the twelfth is ...": the nearest word of measure in the clause."""
    for found in before(figure, figure.scene.mentions.nouns, figure.left[0]):
        if suits(figure, found):
            finding.noun = found
            return found.entry.name
    return None


def by_verb(figure: Figure, _: Finding) -> str | None:
    """ "it weighs three pounds"."""
    for found in before(figure, figure.scene.mentions.verbs, figure.left[0]):
        if suits(figure, found):
            return found.entry.name
    return None


def by_verb_to(figure: Figure, _: Finding) -> str | None:
    """ "cut it to 45", "turned down to 11/16": what such work leaves, where "to" stands before the figure."""
    scene, start = figure.scene, figure.left[0]
    if figure.kind != "length" or not {"to", "at"} & set(scene.text(start, figure.start)[-3:]):
        return None
    for at in range(figure.start - 1, start - 1, -1):
        if scene.tags[at] == "VBN" and scene.tag(at - 1) == "DT":
            continue  # "the turned end"
        if (scene.is_verb(at) or at == start) and scene.lemmas[at] in knowledge().leaves:
            return knowledge().leaves[scene.lemmas[at]]
    return None


def by_adjective(figure: Figure, _: Finding) -> str | None:
    """ "how deep? 12 millimeters", "out by two"; a lone adjective before a figure says little."""
    scene = figure.scene
    for found in before(figure, scene.mentions.adjectives, max(figure.sentence[0], figure.start - _ASKED)):
        leads_in = len(found.entry.pieces) > 1 and found.end == figure.start
        musing = found.entry.pieces in knowledge().unmistakable and _only_muses(figure, found.end)
        if suits(figure, found) and (leads_in or musing or scene.word(found.start - 1) == "how"):
            return found.entry.name
    return None


def _only_muses(figure: Figure, start: int) -> bool:
    """ "tall, let me see, 40": marks and the words of one who thinks."""
    said = figure.scene.words[start : figure.start]
    return bool(MARKS & set(said)) and all(word in MARKS or word in knowledge().musing for word in said)


def by_direction(figure: Figure, _: Finding) -> str | None:
    """ "down eleven millimeters", "back a sixteenth": the direction right before the figure."""
    if figure.kind != "length":
        return None
    scene, at = figure.scene, figure.start - 1
    while at > figure.left[0] and scene.words[at] in knowledge().clause.approximate:
        at -= 1
    return knowledge().moves.get(scene.words[at]) if at >= figure.left[0] else None


def by_unlike_word(figure: Figure, finding: Finding) -> str | None:
    """A unit of the wrong kind is still of what was named: "torque it to 12 mm", "5.5 Nm sticking out"."""
    scene, known = figure.scene, knowledge()
    if figure.kind not in known.slips:
        return None
    for found in behind(figure, scene.mentions.adjectives, ADJECTIVE_REACH):
        if found.entry.pieces in known.unmistakable:
            return found.entry.name
    for found in before(figure, scene.mentions.nouns, figure.left[0])[:1]:
        if set(scene.words[found.end : figure.start]) <= known.clause.links:
            finding.noun = found
            return found.entry.name
    for found in before(figure, scene.mentions.verbs, figure.left[0])[:1]:
        if found.entry.pieces in known.unmistakable and scene.word(figure.start - 1) in ("to", "at", "by"):
            return found.entry.name
    return None
