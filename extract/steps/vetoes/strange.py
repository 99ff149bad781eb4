"""Verbs that stand in no list: kept only where the sentence is plainly about handling a thing.

"i skived the leather" would stand without the list; "i shot for seven" and "i bumped into him" do not.
"""

from __future__ import annotations

from extract.clauses.things import kind_of
from extract.steps.scene import Scene

_HANDLED = frozenset({"part", "tool", "material", "pronoun", "damage"})


def strange(scene: Scene) -> bool:
    """True for an unknown verb without a known thing or a pronoun as its object."""
    candidate, bench = scene.candidate, scene.bench
    verb, _, particle = candidate.verb.partition(" ")
    if bench.words.kind(verb, particle) != "unknown":
        return False
    thing = candidate.thing
    if thing is None or candidate.shape == "passive":
        return True
    direct = thing.start <= candidate.rest[0] + 1 or candidate.fronted is not None
    known = kind_of(bench, thing) in _HANDLED - {"pronoun"} or (thing.pronoun and candidate.shape != "advice")
    return not direct or (not known and bench.tag(thing.start) not in {"DT", "PRP$"})
