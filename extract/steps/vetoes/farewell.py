"""The last words, which tell viewers to behave: "keep your uke out of the car", "mind where you step"."""

from __future__ import annotations

from extract.steps.scene import Scene

_LAST_CUES = 2


def farewell(scene: Scene) -> bool:
    """True for a command to the viewer in the last two cues, where its verb is no work."""
    candidate, bench = scene.candidate, scene.bench
    if candidate.shape not in {"command", "advice"} or bench.cue[-1] < 10:
        return False
    verb, _, particle = candidate.verb.partition(" ")
    return bench.cue[candidate.start] > bench.cue[-1] - _LAST_CUES and bench.words.kind(verb, particle) != "work"
