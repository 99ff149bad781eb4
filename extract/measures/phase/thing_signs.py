"""Signs of the thing that a figure is of: how it is named, whether it was worked on, which instrument reads it.

"The old belt is 302 mm", "these wheels are 22 mm across" and "by the plug gauge, 0.12": what is old was found, what is
new is used, and what an instrument says is a reading.
"""

from __future__ import annotations

from collections.abc import Iterator

from extract.measures.figure import Figure, Finding
from extract.measures.phase.course import stage_of
from extract.measures.phase_words import phase_words

_ADJECTIVES = 3
"""Tokens before a thing among which an adjective tells of it."""
_NEAR = 30
"""Tokens before a figure in which an instrument that reads it is named."""
_BEHIND = 6
_HISTORY = 4000
"""Tokens back in which the same thing is known again."""
_OFTEN = 3


def thing_signs(figure: Figure, finding: Finding) -> Iterator[str]:
    """All signs of this module."""
    yield from _named(figure, finding)
    yield from _worked(figure, finding)
    yield from _instrument(figure)


def _named(figure: Figure, finding: Finding) -> Iterator[str]:
    """The article and adjectives of the item where it is named nearest, and how often it was named before."""
    if finding.item is None:
        return
    scene, words = figure.scene, phase_words()
    mentions = scene.mentions_of(finding.head, max(0, figure.start - _HISTORY), figure.end + 4)
    before = [one for one in mentions if one.start < figure.start]
    nearest = before[-1] if before else mentions[0] if mentions else None
    if nearest is None:
        return
    lead = scene.words[max(0, nearest.start - _ADJECTIVES) : nearest.end]
    article = next((word for word in reversed(lead) if word in words.articles), "none")
    yield f"item with {article}"
    for mention in (nearest, *before[:-1]):
        said = set(scene.words[max(0, mention.start - _ADJECTIVES) : mention.end])
        where = "" if mention is nearest else " once"
        if said & words.aged:
            yield f"item is old{where}"
        if said & words.fresh:
            yield f"item is new{where}"
    count = len(before)
    yield f"item named {'often' if count > _OFTEN else 'before' if count > 1 else 'once'}"


def _worked(figure: Figure, finding: Finding) -> Iterator[str]:
    """Whether work was done on the item in an earlier sentence."""
    if not finding.head:
        return
    scene = figure.scene
    for thing in scene.mentions_of(finding.head, max(0, figure.start - _HISTORY), figure.sentence[0]):
        begin, end = scene.sentences.start[thing.start], scene.sentences.end[thing.start]
        if scene.work_done(min(end, len(scene) - 1)) > scene.work_done(begin):
            yield from ("item was worked on", f"item was worked on, {stage_of(figure)}")
            return


def _instrument(figure: Figure) -> Iterator[str]:
    """An instrument named in the sentence, behind the figure, or shortly before."""
    scene, words = figure.scene, phase_words()
    inside = set(scene.words[figure.sentence[0] : figure.end + _BEHIND])
    around = set(scene.words[max(0, figure.start - _NEAR) : figure.sentence[0]])
    if inside & words.instruments:
        yield from ("instrument in sentence", f"instrument in sentence, {stage_of(figure)}")
    elif around & words.instruments:
        yield from ("instrument before", f"instrument before, {stage_of(figure)}")
