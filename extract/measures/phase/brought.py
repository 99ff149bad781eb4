"""Whether a thing was brought to the job, or was there before.

Takes "I cut a bit of brass shim ... the shim's four thou", "new bridge is five eighths"; refuses "the bridge is ...".
"""

from __future__ import annotations

from extract.measures.figure import Figure, Finding
from extract.measures.phase_words import holds, phase_words
from extract.measures.things import Thing

_REACH = 60
"""Tokens back in which a thing may have been brought."""
_LEAD = 6
"""Tokens before a thing that tell whether it was."""
_INDEFINITE = frozenset({"a", "an", "some", "new"})


def is_brought(figure: Figure, finding: Finding) -> bool:
    """True where the item was brought to the job not long before the figure."""
    things = figure.scene.things_in(max(0, figure.start - _REACH), figure.end + 4)
    return any(thing.head == finding.head and _brings(figure, thing) for thing in things)


def _brings(figure: Figure, thing: Thing) -> bool:
    """ "a bit of brass shim" behind a verb that brings or works, "new", "spare", "is new"."""
    scene, words = figure.scene, phase_words()
    before = scene.text(max(scene.clauses.start[thing.start], thing.start - _LEAD), thing.start)
    if holds(words.new, before) or scene.text(thing.end, thing.end + 2)[1:] == ("new",):
        return True
    verbs = scene.lemmas[max(0, thing.start - _LEAD) : thing.start]
    some = bool(before) and before[-1] in _INDEFINITE | {"of"} and bool(_INDEFINITE & set(before[-4:]))
    return some and any(verb in words.work or verb in words.bring for verb in verbs)
