"""Verbs of thinking, talking and having: "i reckon", "tell your brother", "i need three clamps"."""

from __future__ import annotations

from extract.steps.scene import Scene


def idle(scene: Scene) -> bool:
    """True where the verb is no work, taken with its particle."""
    verb, _, particle = scene.candidate.verb.partition(" ")
    return scene.bench.words.kind(verb, particle) == "idle"
