"""What went wrong: "i shorted the can", "i scorched the felt", "i drilled it too deep". Nobody is to do it again.

Keeps "i cracked the seam open with a thin blade" and "i burnt off the old lacquer": there it was the work; and "break
the edge with a file": only what is told as past can have gone wrong.
"""

from __future__ import annotations

from extract.clauses.talk import talk
from extract.steps.scene import Scene

_TO_AN_END = frozenset({"through", "to", "along", "across", "open", "loose", "free", "clear", "apart", "clean"})
"""Behind "i cracked the seam" these tell that it was meant. A tool does too, but not that shorted a live part."""
_BEING = frozenset({"is", "was", "'s", "were", "are", "not", "n't", "never"})
"""Before "too deep" these tell what was found or avoided."""


def mishap(scene: Scene) -> bool:
    """True for work of the speaker's that is told as gone wrong."""
    verb_at = scene.candidate.rest[0] - 1
    if scene.candidate.mode != "done" and scene.bench.tag(verb_at) != "VBD":
        return False
    return _is_said(scene, verb_at) or _has_sequel(scene) or _breaks(scene)


def _is_said(scene: Scene, verb_at: int) -> bool:
    bench, piece, words = scene.bench, scene.piece, talk().mishap
    if words.phrases.first_in(bench.lower, piece.start, piece.end) or bench.word(verb_at - 1) in {"nearly", "almost"}:
        return True
    return any(
        bench.word(at) == "too" and bench.word(at + 1) in words.too and bench.word(at - 1) not in _BEING
        for at in range(verb_at, piece.end)
    )


def _has_sequel(scene: Scene) -> bool:
    """ "I touched the tag and it bit me": said in the rest of the sentence."""
    return talk().mishap.sequel.first_in(scene.bench.lower, scene.piece.start, scene.sentence[1]) is not None


def _breaks(scene: Scene) -> bool:
    candidate, bench, words = scene.candidate, scene.bench, talk().mishap
    said, thing = candidate.said, candidate.thing
    particle = candidate.verb.split(" / ")[0].partition(" ")[2]
    if candidate.verb in words.verbs or (said in words.verbs and not particle):
        return True
    if said == "slip":
        return thing is None and not particle
    if said not in words.breaking:
        return False
    if thing is not None and bench.word(thing.start) in {"a", "an", "another", "one", "two"}:
        return bench.word(thing.head) not in words.parted
    if particle or (thing is not None and bench.word(thing.head) in words.parted):
        return False
    behind = bench.lower[candidate.rest[0] : candidate.rest[1]]
    return _TO_AN_END.isdisjoint(behind) and (said == "short" or "with" not in behind)
