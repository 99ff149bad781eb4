"""Attributes that a verb of change or the word "every" gives away.

Takes "the bar has dropped 0.6 mm", "tacks every three inches", "tapering to an inch and a half"; refuses "worn to
2.42", which is what is left.
"""

from __future__ import annotations

from extract.measures.attribute.near import usual_measure
from extract.measures.figure import Figure, Finding
from extract.measures.knowledge import knowledge

_VERB = ("VB", "NN", "JJ")
"""Taggers take "bowed" for an adjective and "showing" for a noun."""


def by_every(figure: Figure, _: Finding) -> str | None:
    """ "a tack every three inches", "new every eight hours"."""
    known = knowledge()
    said = figure.scene.words[_before(figure)] in known.every
    return known.every_attributes.get(figure.kind or "") if said and _before(figure) >= figure.left[0] else None


def by_change(figure: Figure, _: Finding) -> str | None:
    """ "worn three sixteenths", "moves four inches each way": the verb right before the figure."""
    if not figure.is_length:
        return None
    scene, known, at = figure.scene, knowledge(), _before(figure)
    if at < figure.left[0]:
        return None
    joined = f"{scene.lemmas[at - 1]} {scene.words[at]}" if at else ""
    if joined in known.changes:
        return known.changes[joined]
    return known.changes.get(scene.lemmas[at]) if scene.tags[at][:2] in _VERB else None


def by_off(figure: Figure, _: Finding) -> str | None:
    """ "82 thou off the bottom of the heel" is a cut; "sits 12 mm off the neck" is a height."""
    scene = figure.scene
    if figure.kind != "length" or scene.words[figure.end : figure.end + 2] != ("off", "the"):
        return None
    verbs = {scene.lemmas[at] for at in range(figure.left[0], figure.start) if scene.is_verb(at)}
    return "height" if verbs & knowledge().stands else "cut"


def by_narrowing(figure: Figure, _: Finding) -> str | None:
    """ "two inches wide tapering to an inch and a half": the width, or the diameter of what is round."""
    scene = figure.scene
    if figure.kind != "length" or scene.word(figure.start - 1) not in ("to", "from"):
        return None
    if scene.lemmas[figure.start - 2] not in knowledge().narrows:
        return None
    usual = [usual_measure(thing.name, figure) for thing in figure.things_left()[-1:]]
    return "diameter" if "diameter" in usual else "width"


def _before(figure: Figure) -> int:
    """The token before the figure, small words of guessing skipped."""
    scene, at = figure.scene, figure.start - 1
    while at > figure.left[0] and scene.words[at] in knowledge().clause.approximate:
        at -= 1
    return max(0, at)
