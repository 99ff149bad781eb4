"""The figure said last, put right a few words later or by a word behind the right one.

Takes "the fuse is 5 amps. Sorry, that should be 3 amps", "12 mm at the thick end. Make that 13" and "250 volts, 350
volts, sorry"; refuses "make that joint 19 mm wide" and "the A is 5 mm, the C is 8 mm, sorry about the noise".
"""

from __future__ import annotations

from collections.abc import Iterator

from extract.corrections.scene import Draft, Scene, alike, differ, kind_of

_BACK = 22
"""Words back among which the wrong figure was said."""
_AHEAD = 3
_APOLOGY = 5
_BESIDE = 6


def find_put_right(scene: Scene) -> Iterator[Draft]:
    """Each figure that such a phrase puts in the place of the one before it."""
    yield from _by_phrase(scene)
    yield from _by_word_behind(scene)
    yield from _by_second_look(scene)


def _by_phrase(scene: Scene) -> Iterator[Draft]:
    pieces = scene.pieces
    for begin, end in scene.words.righting.find(pieces, 1, len(pieces)):
        if not _is_apology(scene, begin):
            continue
        right = None
        for at in range(end, min(end + _AHEAD, len(pieces))):
            if pieces[at].measured:
                right = at
            if pieces[at].measured or pieces[at].text not in scene.words.fillers:
                break
        wrong = _last_alike(scene, begin, right) if right is not None else None
        if right is not None and wrong is not None and not _is_a_change(scene, begin, wrong):
            yield _draft(scene, wrong, begin, right, right + 1)


def _is_a_change(scene: Scene, begin: int, wrong: int) -> bool:
    """ "It's 2 mm now. Make it 3 mm": a thing as found is changed, no word taken back."""
    return scene.pieces[begin].text == "make" and scene.measured(wrong).phase == "as_found"


def _is_apology(scene: Scene, begin: int) -> bool:
    """Such a phrase begins a sentence or a breath, or an apology leads up to it."""
    pieces = scene.pieces
    before = pieces[begin - 1]
    if before.mark or before.cue != pieces[begin].cue:
        return True
    return any(piece.text in scene.words.apology for piece in pieces[max(0, begin - _APOLOGY) : begin])


def _last_alike(scene: Scene, begin: int, right: int) -> int | None:
    """The last figure before a place, if it is of the same kind and another one."""
    pieces = scene.pieces
    second = scene.measured(right)
    for at in range(begin - 1, max(-1, begin - _BACK), -1):
        if pieces[at].measured:
            first = scene.measured(at)
            same = kind_of(first) is not None and kind_of(first) == kind_of(second)
            return at if same and differ(first, second) else None
    return None


def _by_word_behind(scene: Scene) -> Iterator[Draft]:
    pieces = scene.pieces
    for right in scene.figures:
        length = scene.words.behind.at(pieces, right + 1) if right + 1 < len(pieces) else 0
        after = right + 1 + length
        if not length or (after < len(pieces) and pieces[after].figure) or not _ends_there(scene, after):
            continue
        wrong = next((at for at in range(right - 1, max(-1, right - 3), -1) if pieces[at].measured), None)
        if wrong is None or any(pieces[at].text not in scene.words.fillers for at in range(wrong + 1, right)):
            continue
        first, second = scene.measured(wrong), scene.measured(right)
        if alike(first, second) and differ(first, second) and pieces[right - 1].text not in ("to", "and", "or"):
            yield _draft(scene, wrong, right, right, after)


def _by_second_look(scene: Scene) -> Iterator[Draft]:
    """ "It's 35, now I look at it": the figure beside the phrase, against the last one of its kind."""
    pieces = scene.pieces
    for begin, end in scene.words.rechecked.find(pieces, 1, len(pieces)):
        near = [*range(begin - 1, max(-1, begin - _BESIDE), -1), *range(end, min(end + _BESIDE, len(pieces)))]
        right = next((at for at in near if pieces[at].measured), None)
        wrong = _last_alike(scene, right, right) if right is not None else None
        if right is not None and wrong is not None:
            yield _draft(scene, wrong, min(right, begin), right, max(right + 1, end))


def _ends_there(scene: Scene, after: int) -> bool:
    """Behind the word comes a mark, a new breath or a small word of place: "sorry, on the plate"."""
    pieces = scene.pieces
    if after >= len(pieces) or pieces[after - 1].mark or pieces[after].cue != pieces[after - 1].cue:
        return True
    return pieces[after].tag in ("IN", "CC", "RB")


def _draft(scene: Scene, wrong: int, begin: int, right: int, end: int) -> Draft:
    first, second = scene.measured(wrong), scene.measured(right)
    return Draft(begin, end, "this_session", (wrong, wrong + 1), (right, right + 1), (first,), second)
