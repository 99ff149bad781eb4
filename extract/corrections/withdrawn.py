"""A statement taken back by what it was about.

Takes "I misread that old can, it's 350 volts" and "scratch what I told you on the cap iron, it wants 1/64"; refuses
"scratch the line at 5 mm" and "forget the glue".
"""

from __future__ import annotations

from collections.abc import Iterator

from extract.corrections.said_before import first_said
from extract.corrections.scene import Draft, Scene, alike, differ, kind_of

_REACH = 28
"""Words behind the phrase among which the right figure is said."""
_SENTENCES = 3
_NEAR = 10
_BEHIND = 5
_NOUNS = frozenset({"NN", "NNS"})
"""Right behind "I got it wrong" a noun makes it another matter: "wrong way up", "wrong side out"."""


def find_withdrawn(scene: Scene) -> Iterator[Draft]:
    """Each withdrawal with a figure behind it, or with words that hold instead."""
    pieces = scene.pieces
    for begin, end in scene.words.withdrawing.find(pieces, 0, len(pieces)):
        if scene.words.doubtful.at(pieces, begin) == end - begin and not any(
            piece.text in scene.words.wrongness for piece in pieces[end : end + _NEAR]
        ):
            continue
        found = _figure(scene, begin, end) or _words(scene, begin, end)
        if found is not None:
            yield found


def _figure(scene: Scene, begin: int, end: int) -> Draft | None:
    figures = _figures_behind(scene, end)
    if not figures:
        return None
    right = figures[0]
    repeated: int | None = None
    if len(figures) > 1 and _is_repetition(scene, figures[0], figures[1], begin):
        repeated, right = figures[0], figures[1]
    elif len(figures) > 1 and _is_denied(scene, figures[1]) and alike(*map(scene.measured, figures)):
        repeated = figures[1]
    second = scene.measured(right)
    if repeated is not None:
        earlier = first_said(scene, repeated, begin)
        gone = (*(scene.measured(at) for at in earlier), scene.measured(repeated))
        where = earlier[0] if earlier else repeated
        end = max(right, repeated) + 1
        return Draft(begin, end, "this_session", (where, where + 1), (right, right + 1), gone, second, not earlier)
    topic = scene.content(range(end, min(right + _BEHIND, len(scene.pieces))))
    meant = next((at for at in scene.about(topic, kind_of(second), begin) if differ(scene.measured(at), second)), None)
    if meant is None and scene.words.doubtful.at(scene.pieces, begin):
        return None
    if meant is None:
        return Draft(begin, right + 1, "this_session", (end, right), (right, right + 1), (), second, True)
    same = tuple(scene.measured(at) for at in (meant, *_others(scene, meant, begin)))
    return Draft(begin, right + 1, "this_session", (meant, meant + 1), (right, right + 1), same, second)


def _words(scene: Scene, begin: int, end: int) -> Draft | None:
    """What was said of a thing without a figure: "ignore what I said about the vinegar, use citric acid"."""
    pieces = scene.pieces
    if scene.words.doubtful.at(pieces, begin) == end - begin or (end < len(pieces) and pieces[end].tag in _NOUNS):
        return None
    topic = next((at + 1 for at in range(end, min(end + _NEAR, len(pieces))) if _breaks(scene, at)), None)
    if topic is None or topic >= len(pieces):
        return None
    if not any(scene.mentioned(word, begin) for word in scene.content(range(end, topic))):
        return None
    until = scene.sentence_end(topic, _REACH // 2)
    if until - topic < 2 or not scene.content(range(topic, until)):
        return None
    return Draft(begin, until, "this_session", (end, topic), (topic, until), said_again=True)


def _breaks(scene: Scene, at: int) -> bool:
    pieces = scene.pieces
    return bool(pieces[at].mark) or (at + 1 < len(pieces) and pieces[at + 1].cue != pieces[at].cue)


def _figures_behind(scene: Scene, place: int) -> list[int]:
    found = []
    ends = 0
    for at in range(place, min(place + _REACH, len(scene.pieces))):
        if scene.pieces[at].measured:
            found.append(at)
        ends += scene.pieces[at].ends
        if ends >= _SENTENCES or len(found) == 2:
            break
    return found


def _is_repetition(scene: Scene, first: int, second: int, before: int) -> bool:
    """ "I got that wrong, I said 450 and it's 350": the first figure is the wrong one said again."""
    one, other = scene.measured(first), scene.measured(second)
    held = any(True for _ in scene.words.holding.find(scene.pieces, first + 1, second))
    return held and alike(one, other) and differ(one, other) and bool(scene.said_before(one, before))


def _is_denied(scene: Scene, place: int) -> bool:
    return scene.pieces[place - 1].text == "not"


def _others(scene: Scene, meant: int, before: int) -> tuple[int, ...]:
    """Where the same was said of the same thing before it was taken back."""
    one = scene.measured(meant)
    return tuple(
        at
        for at in scene.said_before(one, before)
        if at != meant
        and one.item is not None
        and (scene.measured(at).item, scene.measured(at).attribute) == (one.item, one.attribute)
    )
