"""A word or figure that its speaker asks again and answers otherwise.

Takes "That's the D. D? G." and "It's 14 mm. 14? 40 mm."; refuses "5 mm? 6 mm? I use 7" and "Dry? Not yet."
"""

from __future__ import annotations

from collections.abc import Iterator

from extract.corrections.scene import Draft, Scene, alike, differ

_BACK = 6
_ANSWER = 3
_NOUNS = frozenset({"NN", "NNS", "NNP", "NNPS", "JJ", "CD"})


def find_asked_again(scene: Scene) -> Iterator[Draft]:
    """Each question of one word that repeats what was just said, with a short answer of the same sort."""
    pieces = scene.pieces
    for at in range(1, len(pieces) - 1):
        if pieces[at].mark != "?" or not pieces[at - 1].mark:
            continue
        found = _figure(scene, at) if pieces[at].figure else _word(scene, at)
        if found is not None:
            yield found


def _figure(scene: Scene, at: int) -> Draft | None:
    pieces = scene.pieces
    asked, right = pieces[at].number, pieces[at + 1].measured
    wrong = next((k for k in range(at - 1, max(-1, at - _BACK), -1) if pieces[k].measured), None)
    if asked is None or right is None or wrong is None:
        return None
    first = scene.measured(wrong)
    if first.quantity.number.value != asked.value or not alike(first, right) or not differ(first, right):
        return None
    repeated = pieces[at].measured
    gone = (first, repeated) if repeated is not None else (first,)
    return Draft(at, at + 2, "this_session", (wrong, wrong + 1), (at + 1, at + 2), gone, right)


def _word(scene: Scene, at: int) -> Draft | None:
    pieces = scene.pieces
    wrong = next((k for k in range(at - 1, max(-1, at - _BACK), -1) if pieces[k].text == pieces[at].text), None)
    end = scene.sentence_end(at + 1, _ANSWER + 1)
    answer = pieces[at + 1 : end]
    if wrong is None or not answer or len(answer) > _ANSWER or not answer[-1].ends or answer[-1].tag not in _NOUNS:
        return None
    if any(piece.figure or piece.tag not in _NOUNS | {"DT"} for piece in answer) or answer[-1].text == pieces[at].text:
        return None
    return Draft(at, end, "this_session", (wrong, wrong + 1), (at + 1, end))
