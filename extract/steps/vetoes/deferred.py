"""Work put off: "i will turn a new one in the winter", "the gilt i've left alone, that's a job for another day"."""

from __future__ import annotations

from extract.clauses.talk import talk
from extract.steps.scene import Scene


def deferred(scene: Scene) -> bool:
    """True where the piece, or the rest of its sentence behind "leave", puts the work off."""
    piece = scene.piece
    leaving = scene.candidate.said == "leave"
    end = piece.end
    for other in scene.pieces[scene.index + 1 : scene.index + 4]:
        waits = other.joiner in {"when", "once", "until", "till", "if"} and scene.candidate.mode == "planned"
        if not (leaving or waits) or other.sentence != piece.sentence:
            break
        end = other.end
    later = any(talk().later.length_at(scene.bench.lower, at) for at in range(piece.start, end))
    return later and (leaving or scene.candidate.mode in {"planned", "doing"})
