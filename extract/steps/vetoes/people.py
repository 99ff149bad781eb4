"""What is done to people, hours, faces and safety gear: "thank the customer", "gloves on"."""

from __future__ import annotations

from extract.clauses.things import kind_of
from extract.steps.scene import Scene


def people(scene: Scene) -> bool:
    """True where the object is nothing that a repairer works on."""
    thing = scene.candidate.thing
    if thing is None:
        behind = scene.bench.word(scene.candidate.rest[0])
        return behind in {"me", "you", "him", "us", "myself", "yourself"}
    if scene.bench.word(thing.head) in scene.bench.words.safety_gear:
        return True
    return kind_of(scene.bench, thing) in {"people", "abstract", "time", "body", "measure", "film"}
