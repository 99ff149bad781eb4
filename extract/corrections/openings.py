"""Where a remark begins, and whose mistake it owns to."""

from __future__ import annotations

from extract.corrections.scene import Scene

_EDITED = 4
_CLAIMED = 9
_OWN = frozenset({"i", "i've", "i'm", "what", "my"})


def opens(scene: Scene, place: int) -> bool:
    """A sentence, a breath or what stands behind a comma begins at a place; the end of the talk counts."""
    if place <= 0 or place >= len(scene.pieces):
        return True
    before = scene.pieces[place - 1]
    return bool(before.mark) or before.cue != scene.pieces[place].cue


def opening_of(scene: Scene, place: int, end: int = 0) -> int | None:
    """Where the remark at a place begins, the small words that lead up to it included; None in the midst of a sentence.

    A remark may also close a sentence or breath: "yellow's the earth, what am i saying". Straight behind a figure it
    may begin without a breath: "ten millimetres no i had that wrong".
    """
    at = place
    while at > 0 and not opens(scene, at):
        back = _led_by(scene, at)
        if not back:
            break
        at -= back
    if opens(scene, at) or scene.pieces[at - 1].figure:
        return at
    if at < place and any(piece.text in scene.words.apology for piece in scene.pieces[at:place]):
        return at
    owned = scene.pieces[place].text in _OWN and end > place + 1
    return place if owned and opens(scene, end) else None


def _led_by(scene: Scene, place: int) -> int:
    """How many words right before a place only lead up to it: "well", "excuse me"."""
    if scene.pieces[place - 1].text in scene.words.leading:
        return 1
    for length in range(min(_EDITED, place), 0, -1):
        if scene.words.edits.at(scene.pieces, place - length) == length:
            return length
    return 0


def is_owned(scene: Scene, opening: int, begin: int, wrong: int) -> bool:
    """An apology leads up to it, or the figure was quoted: "I gave you 9 mm. That's the jib"."""
    pieces = scene.pieces
    near = range(max(0, opening - _EDITED), begin)
    if any(scene.words.edits.at(pieces, at) or scene.words.weak_edits.at(pieces, at) for at in near):
        return True
    return any(scene.words.said.at(pieces, at) for at in range(max(0, wrong - _CLAIMED), wrong))
