"""Consequences, alternatives and second thoughts: "or you split the side", "give or take", "but check the drawing"."""

from __future__ import annotations

from extract.steps.scene import Scene

_THINKING = frozenset({"think", "thought", "reckon", "believe", "guess", "suppose", "suspect", "seems", "sure"})


def _follows(scene: Scene) -> bool:
    """ "if you lever, you take the spruce with it": what would come of it."""
    bench, piece = scene.bench, scene.piece
    asked = "you" in bench.lower[scene.pieces[scene.index - 1].start : piece.start]
    return asked and scene.candidate.shape == "advice" and not piece.joiner


def _goes_on_otherwise(scene: Scene) -> bool:
    """ "or it'll run hot | and push the seal out": what else would happen."""
    before, piece = scene.before, scene.piece
    goes_on = before is not None and before.joiner == "or" and before.sentence == piece.sentence
    return goes_on and piece.joiner == "and" and not scene.candidate.own_subject


def _is_excess(scene: Scene) -> bool:
    """ "too steep | you squash the cone": what comes of too much."""
    bench, start = scene.bench, scene.piece.start
    return bench.word(start) == "you" and bench.word(start - 2) == "too" and bench.tag(start - 1) in {"JJ", "RB"}


def aside(scene: Scene) -> bool:
    """True for what would follow otherwise, and for a check that only a doubt asks for."""
    piece, bench = scene.piece, scene.bench
    if piece.joiner == "or":
        return True
    if _goes_on_otherwise(scene) or _is_excess(scene):
        return True
    led = range(piece.start, piece.lead + 1)
    if any(bench.word(k) == "no" and bench.tag(k) == "DT" and bench.word(k + 1) != "," for k in led):
        return True
    before = scene.before
    if before is not None and before.joiner == "if" and before.sentence == piece.sentence and _follows(scene):
        return True
    if (
        piece.joiner == "but"
        and before is not None
        and scene.candidate.verb.split()[0] in {"check", "look", "measure", "test"}
    ):
        return any(bench.word(k) in _THINKING for k in range(before.start, before.end))
    return False
