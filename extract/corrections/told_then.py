"""What the speaker told in an earlier session and tells otherwise now, without a word for its being wrong.

Takes "in the boiler film I told you sixty psi. Forty lifts the lid" and "In the front wheel video I said threadlock.
Several of you were polite about that. Linseed."; refuses "last week I told you it would shrink, and it did" and "in the
last film I said I'd show the spring".
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from extract.corrections.earlier_session import claim_of, find_sessions
from extract.corrections.figure_pairs import counts_things
from extract.corrections.scene import Draft, Scene, alike, differ
from extract.corrections.signs import signs_of
from extract.spans import Measured

_VERB = 3
"""Words behind "I" among which the verb of saying stands."""
_LATER = 8
"""Words behind "I did" among which "I said" may follow: "that flute one I did where I said"."""
_SPEAKER = frozenset({"i", "we"})
_CLAIM, _ANSWER = 18, 22
_SHORTEST = 3
"""Words of a claim, or of an answer, that stand alone."""
_SENTENCES = 3
_NO_CLAIM = frozenset({"about", "i'd", "i'll", "i", "we'd", "we'll", "we", "how", "what", "why", "where", "when"})
_LEADS = frozenset({"you", "y'all", "that", "folks", "all", "everyone", "everybody", "them", "to"})
_KEPT = frozenset({"and", "which", "so", "because"})
"""An answer that begins with one of these goes on with what was told."""


def find_told_then(scene: Scene) -> Iterator[Draft]:
    """Each such statement with what is said behind it."""
    signs = signs_of(scene)
    for begin, end in find_sessions(scene):
        claim = claim_of(scene, begin, end)
        stated = _stated(scene, claim) if claim is not None else None
        if claim is None or stated is None:
            continue
        until = _sentence_end(scene, stated, _CLAIM)
        if not scene.marked and scene.pieces[until].text in _KEPT:
            until = _sentence_end(scene, until, _CLAIM)
        answer = _answer_end(scene, until)
        upheld = signs.within("affirm", max(0, claim - 2), min(until + 8, answer))
        if answer > until and not upheld and scene.pieces[until].text not in _KEPT:
            yield _draft(scene, (claim, until), answer)


def _stated(scene: Scene, claim: int) -> int | None:
    """Where what was told begins: behind "I told you to"; None where nothing is stated."""
    pieces = scene.pieces
    if claim and pieces[claim - 1].text in scene.words.not_behind and not pieces[claim - 1].mark:
        return None
    verb = next((at for at in range(claim + 1, claim + 1 + _VERB) if _says(scene, at)), None)
    if verb is None:
        later = range(claim + 1, min(claim + _LATER, len(pieces) - 1))
        verb = next((at + 1 for at in later if pieces[at].text in _SPEAKER and _says(scene, at + 1)), None)
    if verb is None:
        return None
    at = verb + 1
    while at < len(pieces) and pieces[at].text in _LEADS and not pieces[at - 1].ends:
        at += 1
    if at >= len(pieces) or pieces[at].text in _NO_CLAIM or pieces[at - 1].ends:
        return None
    return at


def _says(scene: Scene, at: int) -> bool:
    return at < len(scene.pieces) and scene.pieces[at].text in scene.words.saying


def _sentence_end(scene: Scene, place: int, reach: int) -> int:
    """Behind the sentence or, without marks, the breath that a place is in."""
    pieces = scene.pieces
    for at in range(place, min(place + reach, len(pieces) - 1)):
        if pieces[at].ends or (not scene.marked and pieces[at].cue != pieces[at + 1].cue):
            return at + 1
    return min(place + reach, len(pieces) - 1)


def _answer_end(scene: Scene, place: int) -> int:
    """Behind the next sentence, and those behind it up to one that names something in a word or two."""
    end = place
    for _ in range(_SENTENCES if scene.marked else 1):
        begin, end = end, _sentence_end(scene, end, _ANSWER)
        if end - begin <= _SHORTEST and begin > place:
            break
        if end - place >= _ANSWER:
            break
    return end


def _draft(scene: Scene, claim: tuple[int, int], end: int) -> Draft:
    pieces, until = scene.pieces, claim[1]
    gone = tuple(one for at in range(*claim) if (one := pieces[at].measured))
    for at in range(until, end) if gone else ():
        second, number = pieces[at].measured, pieces[at].number
        if second is not None and alike(gone[0], second) and differ(gone[0], second):
            return Draft(claim[0], at + 1, "earlier_session", claim, (at, at + 1), gone[:1], second)
        if second is None and number is not None and _of_its_size(scene, at, gone[0]):
            unit = gone[0].quantity.unit
            return Draft(
                claim[0], at + 1, "earlier_session", claim, (at, at + 1), gone[:1], unit=unit, value=number.value
            )
    return Draft(claim[0], end, "earlier_session", claim, (until, end), gone, said_again=True)


def _of_its_size(scene: Scene, at: int, first: Measured) -> bool:
    """A bare number that counts nothing and may be of the same thing as the first."""
    number = scene.pieces[at].number
    if number is None or counts_things(scene, at):
        return False
    ratio = number.value / first.quantity.value if first.quantity.value else 0
    return Fraction(1, 4) <= ratio <= 4
