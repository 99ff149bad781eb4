"""Attributes that are said elsewhere in the sentence, or head the one before.

Takes "nut to the twelfth fret I get thirteen", "drill it with the spoon bit, five eighths", "Needle bar height. There
are two marks ...".
"""

from __future__ import annotations

from itertools import pairwise

from extract.measures.attribute.near import before, suits
from extract.measures.figure import Figure, Finding
from extract.measures.knowledge import ANY_KIND, knowledge

_PRONOUNS = frozenset({"it", "that", "this", "they"})

_NO_TOPICS = frozenset({"size", "bow", "offset", "relief", "wear"})
"""These name parts as well, or are not spoken of for long."""
_STILL = frozenset({"go", "be", "get", "measure", "run", "have", "say"})
"""Verbs that slide nothing from one thing to the other."""
_NOUN_REACH = 20
_SPAN_BEFORE, _SPAN_BEHIND = 14, 8
_HEADING_REACH = 30
_HEADING_LENGTH = 9
_PRONOUN_REACH = 9
"""Tokens, all of them."""


def by_noun_in_sentence(figure: Figure, finding: Finding) -> str | None:
    """A word of measure earlier in the sentence, since the figure before."""
    for found in before(figure, figure.scene.mentions.nouns, max(figure.sentence[0], figure.start - _NOUN_REACH)):
        if suits(figure, found):
            if figure.previous and found.end <= figure.previous.figure.start:
                return None
            finding.noun = found
            return found.entry.name
    return None


def by_span(figure: Figure, _: Finding) -> str | None:
    """ "nut to the twelfth fret I get thirteen", "shoulder to shoulder"; refuses "slide the post to the bar"."""
    if figure.kind != "length":
        return None
    scene = figure.scene
    start = max(figure.sentence[0], figure.start - _SPAN_BEFORE)
    for one, other in pairwise(scene.things_in(start, min(figure.sentence[1], figure.end + _SPAN_BEHIND))):
        moved = any(
            scene.tags[at] in ("VB", "VBD", "VBG", "VBP") and scene.lemmas[at] not in _STILL
            for at in range(max(scene.clauses.start[one.start], one.start - 4), one.start)
        )
        if other.preposition == "to" and other.start - one.end <= 3 and not moved:
            return "distance"
    return None


def by_verb_in_sentence(figure: Figure, _: Finding) -> str | None:
    """ "drill the socket with the spoon bit, five eighths"; a figure of the same kind uses up its verb."""
    previous = figure.previous.figure if figure.previous else None
    start = previous.start if previous and previous.kind == figure.kind else figure.sentence[0]
    for found in before(figure, figure.scene.mentions.verbs, max(start, figure.sentence[0])):
        if suits(figure, found):
            return found.entry.name
    return None


def by_heading(figure: Figure, finding: Finding) -> str | None:
    """A word of measure that heads the sentence before, or names a fault: "Needle bar height. There are two marks"."""
    scene = figure.scene
    start = max(0, figure.start - _HEADING_REACH)
    if figure.previous:
        start = max(start, figure.previous.figure.right[1])
    for found in before(figure, scene.mentions.nouns, start):
        begins, ends = scene.sentences.start[found.start], scene.sentences.end[found.start]
        heads = begins == found.start or ends - begins <= _HEADING_LENGTH
        there = {"there", "got", "had", "has"} & set(scene.words[max(begins, found.start - 4) : found.start])
        if suits(figure, found) and (heads or (there and found.entry.name in knowledge().worked_away)):
            finding.noun = found
            return found.entry.name
    return None


def by_pronoun(figure: Figure, finding: Finding) -> str | None:
    """ "The action is a ski jump, it's at nine sixty-fourths": "it" is what was last named to be measured."""
    if not _PRONOUNS & set(figure.before()[:2]):
        return None
    start = max(0, figure.clause[0] - _PRONOUN_REACH)
    if figure.previous:
        start = max(start, figure.previous.figure.right[1])
    for found in before(figure, figure.scene.mentions.nouns, start):
        if suits(figure, found):
            finding.noun = found
            return found.entry.name
    return None


def by_pending(figure: Figure, finding: Finding) -> str | None:
    """A word of measure named since the last figure, still without one: "first job is the key height, that's"."""
    scene = figure.scene
    start = max(0, figure.start - _HEADING_REACH)
    if figure.previous:
        start = max(start, figure.previous.figure.right[1])
    for found in before(figure, scene.mentions.nouns, start)[:1]:
        attribute = found.entry.attribute
        loose = attribute is not None and attribute.kind == ANY_KIND
        the = not loose or scene.word(found.start - 1) in ("the", "then") or scene.is_noun(found.start - 1)
        if suits(figure, found) and the and found.entry.name not in _NO_TOPICS:
            finding.noun = found
            return found.entry.name
    return None
