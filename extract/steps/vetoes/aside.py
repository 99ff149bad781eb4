"""Consequences, alternatives and second thoughts: "or you split the side", "give or take", "but check the drawing"."""

from __future__ import annotations

from extract.steps.scene import Scene

_THINKING = frozenset({"think", "thought", "reckon", "believe", "guess", "suppose", "suspect", "seems", "sure"})


def aside(scene: Scene) -> bool:
    """True for what would follow otherwise, and for a check that only a doubt asks for."""
    piece, bench = scene.piece, scene.bench
    if piece.joiner == "or":
        return True
    before = scene.before
    if (
        piece.joiner == "but"
        and before is not None
        and scene.candidate.verb.split()[0] in {"check", "look", "measure", "test"}
    ):
        return any(bench.word(k) in _THINKING for k in range(before.start, before.end))
    return False
