"""A figure taken back by a remark of its own: the speaker says that it was wrong, or of something else.

Takes "set it to 3 mm. No, I'm on the wrong line. It's 5 mm", "back to the relief, I had the wrong leaf, it's 16 thou"
and "24 volts. Pardon, that's the tram lamp. 12 volts, this one"; refuses "the old pump ran at 3 bar, this one at 2".
"""

from __future__ import annotations

from collections.abc import Iterator

from extract.corrections.openings import is_owned, opening_of, opens
from extract.corrections.scene import Draft, Scene, differ, kind_of, same_kind, says_again
from extract.corrections.turns import unit_at
from extract.spans import Measured

_BACK = 26
"""Words before the remark among which the wrong figure was said."""
_AHEAD = 26
"""Words behind it among which the right one is said."""
_SOON = 8
_BESIDE = 12
_SENTENCES = 3
_TOPIC = 9
_AWAITING = frozenset(
    {"getting", "got", "gets", "reads", "reading", "says", "measures", "is", "it's", "that's", "at", "have", "gives",
     "see", "sees", "to", "about", "make", "makes"}
)  # fmt: skip
"""Behind one of these a sentence's own figure is still to come."""
_SPEAKER = frozenset({"i", "i've", "i'm", "i'd"})
"""With one of these a remark may stand in the midst of a breath."""


def find_signalled(scene: Scene) -> Iterator[Draft]:
    """Each such remark between two figures of one kind."""
    words = scene.words
    for templates, reach in (
        (words.own, _AHEAD),
        (words.thrown, _AHEAD),
        (words.asked, _SOON),
        (words.recounted, _SOON),
    ):
        for begin, end in templates.find(scene.line, 1, len(scene.pieces)):
            found = _put_right(scene, begin, end, reach)
            if found is not None:
                yield found
    for begin, end in words.misplaced.find(scene.line, 1, len(scene.pieces)):
        found = _of_another(scene, begin, end)
        if found is not None:
            yield found


def _put_right(scene: Scene, begin: int, end: int, reach: int) -> Draft | None:
    opening = opening_of(scene, begin)
    if opening is None and scene.pieces[begin].text in _SPEAKER:
        opening = begin
    if opening is None or end >= len(scene.pieces):
        return None
    wrong = _topic(scene, opening, end)
    if wrong is None:
        wrong = _last_figure(scene, opening, _BACK)
    if wrong is not None and reach == _SOON and _awaited(scene, wrong, begin):
        return None
    if wrong is None or (wrong < opening and scene.answers(wrong)):
        return None  # "no, it's 16, I had the other one in my hand" only says why
    return _draft(scene, wrong, opening, end, reach)


def _awaited(scene: Scene, wrong: int, begin: int) -> bool:
    """The pause stands before a sentence's own figure: "and I'm getting, hang on, 31 ohms"."""
    return unit_at(scene, begin)[0] > wrong and scene.pieces[begin - 1].text in _AWAITING


def _draft(scene: Scene, wrong: int, begin: int, end: int, reach: int) -> Draft | None:
    first = scene.measured(wrong)
    again = tuple(one for at in range(begin, end) if (one := scene.pieces[at].measured) and not differ(first, one))
    right = _right(scene, wrong, end, reach)
    if right is None:
        return None
    second = scene.pieces[right].measured
    if reach == _SOON and scene.words.agreeing & {p.text for p in scene.pieces[right + 1 : right + 1 + _SOON]}:
        return None
    if second is not None and says_again(first, second):
        return None
    span, holds = (wrong, wrong + 1), (right, right + 1)
    if second is not None:
        return Draft(begin, right + 1, "this_session", span, holds, (first, *again), second)
    number = scene.pieces[right].number
    value, unit = (number.value, first.quantity.unit) if number else (None, None)
    return Draft(begin, right + 1, "this_session", span, holds, (first, *again), unit=unit, value=value)


def _last_figure(scene: Scene, before: int, back: int) -> int | None:
    pieces = scene.pieces
    return next((at for at in range(before - 1, max(-1, before - back - 1), -1) if pieces[at].measured), None)


def _topic(scene: Scene, opening: int, end: int) -> int | None:
    """ "Back to the relief": the figure that was said of it, however far back."""
    returned = next(iter(scene.words.returning.find(scene.line, max(0, opening - _TOPIC), end)), None)
    if returned is None:
        return None
    begin, behind = returned
    kind = next((kind_of(one) for at in range(end, end + _SOON) if (one := _measured(scene, at)) is not None), None)
    until = min(scene.sentence_end(behind, 5), len(scene.pieces))
    return next(iter(scene.about(scene.content(range(behind, until)), kind, begin)), None)


def _measured(scene: Scene, at: int) -> Measured | None:
    return scene.pieces[at].measured if at < len(scene.pieces) else None


def _right(scene: Scene, wrong: int, end: int, reach: int) -> int | None:
    """The first other figure of the kind behind a place, where it is said as one that holds."""
    pieces = scene.pieces
    first = scene.measured(wrong)
    ended = 0
    for at in range(end, min(end + reach, len(pieces))):
        second = pieces[at].measured
        if second is not None and differ(first, second):
            fits = same_kind(first, second)
            return at if fits and _placed(scene, at, end) and not second.quantity.difference else None
        if pieces[at].number is not None and second is None and pieces[at - 1].text in scene.words.be:
            return at if first.quantity.unit is not None and _closed(scene, at) else None
        ended += pieces[at].ends
        if ended >= _SENTENCES:
            return None
    return None


def _closed(scene: Scene, at: int) -> bool:
    """Nothing is counted by a bare number: "the drop is two"."""
    pieces = scene.pieces
    return at + 1 >= len(pieces) or bool(pieces[at].mark) or pieces[at + 1].tag not in ("NN", "NNS", "JJ", "IN")


def _placed(scene: Scene, at: int, end: int) -> bool:
    return at == end or opens(scene, at) or scene.pieces[at - 1].text in scene.words.before_right


def _of_another(scene: Scene, begin: int, end: int) -> Draft | None:
    """ "That's the tram lamp": what was said is right, but of another thing."""
    pieces = scene.pieces
    opening = opening_of(scene, begin)
    wrong = _last_figure(scene, begin, _BESIDE)
    given = next(iter(scene.words.given.find(scene.line, begin, begin + 1)), None)
    if given is not None and opening is not None:
        return _of_another_given(scene, opening, end)
    if opening is None or wrong is None or end >= len(pieces):
        return None
    quoted = pieces[begin].measured or pieces[begin].number
    if (one := pieces[begin].measured) is not None and (earlier := scene.said_before(one, begin)):
        wrong = earlier[-1]
    if quoted is not None:
        said = pieces[begin].number
        if said is None or said.value != scene.measured(wrong).quantity.number.value:
            return None
    other = any(piece.text in scene.words.other for piece in pieces[begin:end])
    if not (other or quoted or is_owned(scene, opening, begin, wrong)):
        return None
    found = _draft(scene, wrong, opening, end, _AHEAD)
    if found is None:
        return None
    here = {piece.text for piece in pieces[begin + 2 : found.holds[0] + 4]}
    return found if here & scene.words.here else None


def _of_another_given(scene: Scene, opening: int, end: int) -> Draft | None:
    """ "That bit I gave you, that's my leg bit. The spindle holes are a half": however far back it was given."""
    right = next((at for at in range(end, min(end + _BESIDE, len(scene.pieces))) if scene.pieces[at].measured), None)
    if right is None:
        return None
    second = scene.measured(right)
    near = scene.about(scene.content(range(opening, right)), kind_of(second), opening)
    wrong = next((at for at in near if differ(scene.measured(at), second)), None)
    return None if wrong is None else _draft(scene, wrong, opening, end, _BESIDE)
