"""A change of mind: what was chosen before, and what is chosen now.

Takes "I've changed my mind on the forty sevens ... so it's twenty twos all the way" and "changed my mind, elastic
webbing"; refuses "he changed his mind on the blue".
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from extract.corrections.plain import plain_words
from extract.corrections.scene import Draft, Scene, kind_of, same_kind
from extract.corrections.turns import before, behind, unit_at
from extract.spans import Measured

_ABOUT = frozenset({"on", "about", "of", "that", "the", "for"})
_TOPIC = 7
_SPEAKER = 3
"""Words before the phrase among which another may be named whose mind it is."""
_REACH = 26
_SHORT = 2


def find_changed_minds(scene: Scene) -> Iterator[Draft]:
    """Each change of mind of the speaker's own."""
    words, pieces = plain_words(), scene.pieces
    for begin, end in words.mind.find(scene.line, 1, len(pieces) - 1):
        own = {piece.text for piece in pieces[max(0, begin - _SPEAKER) : begin]}
        if own & words.others_mind:
            continue
        found = _figure(scene, begin, end) or _words(scene, begin, end)
        if found is not None:
            yield found


def _topic_end(scene: Scene, end: int) -> int:
    """Behind what the mind was changed about: "on the forty sevens"."""
    pieces = scene.pieces
    at = end
    if pieces[end - 1].mark or (pieces[at].text not in _ABOUT and pieces[end - 1].text not in _ABOUT):
        return end
    last = min(unit_at(scene, end)[1], end + _TOPIC)
    while at < last:
        at += 1
        if pieces[at - 1].mark or pieces[at - 1].figure or pieces[at - 1].tag in ("NN", "NNS", "NNP"):
            break
    if at < last and pieces[at - 1].figure and pieces[at].tag in ("NNS", "NN", "VBZ") and not pieces[at - 1].mark:
        at += 1
    return at


def _figure(scene: Scene, begin: int, end: int) -> Draft | None:
    pieces = scene.pieces
    until = _topic_end(scene, end)
    named = next((at for at in range(end, until) if pieces[at].figure), None)
    wrong = _first(scene, named, begin) if named is not None else None
    topic = scene.content(range(end, until))
    for right in range(max(until, end), min(end + _REACH, len(pieces))):
        value = _value(scene, right)
        if value is None or not (pieces[right - 1].mark or pieces[right - 1].text in plain_words().going):
            continue
        if named is not None:
            if value != _value(scene, named) and _same_sort(scene, named, right):
                return _draft(scene, begin, wrong if wrong is not None else named, named, right)
            continue
        second = pieces[right].measured
        near = scene.about(topic, kind_of(second), begin) if second and topic else []
        meant = next((at for at in near if _value(scene, at) != value), None)
        if meant is not None and topic & scene.context(meant):
            return _draft(scene, begin, meant, None, right)
    return None


def _value(scene: Scene, at: int) -> Fraction | None:
    number = scene.pieces[at].number
    return number.value if number else None


def _same_sort(scene: Scene, named: int, right: int) -> bool:
    """Both may be figures of one thing: of one kind, or both bare."""
    first, second = scene.pieces[named].measured, scene.pieces[right].measured
    return first is None or second is None or same_kind(first, second)


def _first(scene: Scene, named: int, before_it: int) -> int | None:
    """Where the figure named was first said."""
    value = _value(scene, named)
    return next((at for at in range(before_it - 1, -1, -1) if _value(scene, at) == value), None)


def _draft(scene: Scene, begin: int, wrong: int, named: int | None, right: int) -> Draft:
    pieces = scene.pieces
    gone: tuple[Measured, ...] = tuple(one for at in (wrong, named) if at is not None and (one := pieces[at].measured))
    second, number = pieces[right].measured, pieces[right].number
    spans = (wrong, wrong + 1), (right, right + 1)
    if second is None and gone and number is not None:
        unit = gone[0].quantity.unit
        return Draft(begin, right + 1, "this_session", *spans, gone, unit=unit, value=number.value)
    return Draft(begin, right + 1, "this_session", *spans, gone, second)


def _words(scene: Scene, begin: int, end: int) -> Draft | None:
    """The statement before, or one about what is named, and what is chosen now."""
    until = _topic_end(scene, end)
    topic = scene.content(range(end, until))
    answer = behind(scene, max(until, end))
    if answer is None:
        return None
    near = [place for word in topic for place in scene.places_of(word, begin)]
    claim = unit_at(scene, max(near)) if near else before(scene, unit_at(scene, begin)[0])
    if claim is None or claim[1] > begin or (topic and not near):
        return None
    if claim[1] - claim[0] < _SHORT or not scene.content(range(*answer)) - scene.content(range(*claim)):
        return None
    return Draft(begin, answer[1], "this_session", claim, answer)
