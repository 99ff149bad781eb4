"""Advice of this session taken back without a figure.

Takes "I told you to glue it first. Don't do that. Fit it dry." and "that's not the minute wheel, that's the cannon
pinion"; refuses "I told you it was wrong" and "it's not the heat, it's the humidity".
"""

from __future__ import annotations

from collections.abc import Iterator

from extract.corrections.plain import plain_words
from extract.corrections.scene import Draft, Scene

_CLAIM = 16
_TEXT = 14
_FEWEST = 2
_NEAR = 6
_NAMING = frozenset({"that's", "it's", "this", "these", "those", "they're", "that", "it", "is", "are", "was", "were"})
_DENYING = frozenset({"not", "isn't", "wasn't", "aren't", "weren't"})
_BETWEEN = frozenset({"by", "the", "way", "at", "all", "either", "folks", "sorry"})
_OWNING = frozenset({"said", "told", "misread", "called", "muddled", "confused", "mixed", "calling", "saying"})
_ANSWERS = frozenset({"no"})
"""An apology that may as well answer the viewer: "no, what you hear is not the saw, it's the fan"."""
_SMALL = frozenset({"DT", "IN", "TO", "PRP", "PRP$", "MD", "CC", "VBZ"})
_NOUNS = frozenset({"NN", "NNS", "NNP", "NNPS"})


def find_told_otherwise(scene: Scene) -> Iterator[Draft]:
    """Each piece of the speaker's own advice that is refuted, and each thing that is named again."""
    yield from _advice(scene)
    yield from _named_again(scene)
    yield from _not_the_other(scene)


def _advice(scene: Scene) -> Iterator[Draft]:
    pieces = scene.pieces
    for begin, end in scene.words.said.find(pieces, 0, len(pieces)):
        before = pieces[begin - 1] if begin else None
        if before is not None and before.text in scene.words.not_behind and not before.mark:
            continue
        refuted = next(iter(scene.words.retracting.find(pieces, end + _FEWEST, end + _CLAIM)), None)
        if refuted is None or len(scene.content(range(end, refuted[0]))) < _FEWEST:
            continue
        if (
            refuted[1] < len(pieces)
            and pieces[refuted[1] - 1].text == "don't"
            and pieces[refuted[1]].text in plain_words().noting
        ):
            continue  # "don't write twelve": a figure put right before it is not to be noted
        until = scene.sentence_end(refuted[1], _TEXT) if refuted[1] < len(pieces) else refuted[1]
        if until - refuted[1] < _FEWEST and until < len(pieces):
            until = scene.sentence_end(until, _TEXT)
        gone = tuple(scene.measured(at) for at in range(end, refuted[0]) if pieces[at].measured)
        yield Draft(refuted[0], until, "this_session", (begin, refuted[0]), (refuted[1], until), gone, said_again=True)


def _named_again(scene: Scene) -> Iterator[Draft]:
    """ "Hang on, that's not the X, that's the Y" and "it wasn't the G reed, it was the A reed", X spoken of before."""
    pieces = scene.pieces
    for at in range(1, len(pieces) - 4):
        if pieces[at].text not in _DENYING or pieces[at - 1].text not in _NAMING:
            continue
        wrong = _named(scene, at + 1)
        again = wrong + 1 if wrong is not None else 0
        while again and again < len(pieces) and pieces[again].text in _BETWEEN:
            again += 1
        if wrong is None or again + 2 >= len(pieces) or pieces[again].text not in _NAMING:
            continue
        right = _noun(scene, again + 1 + (pieces[again + 1].text in ("is", "was")))
        if right is None or [p.text for p in pieces[at + 1 : wrong + 1]] == [
            p.text for p in pieces[again + 1 : right + 1]
        ]:
            continue
        words = [pieces[k].text for k in range(at + 1, wrong + 1) if pieces[k].tag != "DT"]
        sorry = any(piece.text in scene.words.apology - _ANSWERS for piece in pieces[max(0, at - _NEAR) : at])
        same = pieces[right].text == pieces[wrong].text and len(words) > 1
        stated = pieces[at - 2].text == pieces[wrong].text and pieces[at - 2].mark != "?" if at > 1 else False
        if (sorry or same or stated) and all(scene.mentioned(word, at - 1) for word in words):
            yield Draft(at - 1, right + 1, "this_session", (at + 1, wrong + 1), (again + 1, right + 1), said_again=True)


def _not_the_other(scene: Scene) -> Iterator[Draft]:
    """ "It's cedar, not spruce, I read the label wrong" and "the nut, not the nut, the bridge"."""
    pieces = scene.pieces
    for at in range(2, len(pieces) - 1):
        if pieces[at].text != "not":
            continue
        wrong = _closed(scene, at + 1)
        if wrong is None:
            continue
        words = [pieces[k].text for k in range(at + 1, wrong + 1) if pieces[k].tag != "DT"]
        again = any(pieces[k].text == pieces[wrong].text for k in range(max(0, at - _NEAR), at))
        if again and wrong + 1 < len(pieces) and pieces[wrong + 1].text == pieces[at + 1].text:
            right = _noun(scene, wrong + 1)
            if right is not None and pieces[right].text != pieces[wrong].text:
                yield Draft(at, right + 1, "this_session", (at + 1, wrong + 1), (wrong + 1, right + 1), said_again=True)
            continue
        start = next((k for k in range(at - 1, max(0, at - 4), -1) if pieces[k].text in _NAMING), None)
        near = {piece.text for piece in pieces[max(0, at - _NEAR) : wrong + _NEAR + 2]}
        if start is None or start + 1 >= at or not near & (scene.words.apology | _OWNING) or pieces[at - 1].figure:
            continue
        if pieces[at - 1].tag not in _SMALL and all(scene.mentioned(word, start) for word in words):
            yield Draft(start, wrong + 1, "this_session", (at + 1, wrong + 1), (start + 1, at), said_again=True)


def _closed(scene: Scene, begin: int) -> int | None:
    """The last word of a short phrase: up to a mark, the end of a breath or an article."""
    pieces = scene.pieces
    for at in range(begin, min(begin + 4, len(pieces))):
        if pieces[at].figure:
            return None
        last = at + 1 >= len(pieces) or pieces[at].mark or pieces[at + 1].cue != pieces[at].cue
        if last or (at > begin and pieces[at + 1].tag == "DT"):
            return None if pieces[at].tag in _SMALL else at
    return None


def _named(scene: Scene, begin: int) -> int | None:
    """The last word of what is denied: up to the next "it's", a few words on."""
    for at in range(begin, min(begin + 4, len(scene.pieces) - 1)):
        if scene.pieces[at].figure or scene.pieces[at].ends or scene.pieces[at + 1].text in _NAMING | _BETWEEN:
            return None if scene.pieces[at].figure or scene.pieces[at].tag == "DT" else at
    return None


def _noun(scene: Scene, begin: int) -> int | None:
    """The last noun of the noun phrase at a place."""
    pieces = scene.pieces
    found = None
    for at in range(begin, min(begin + 4, len(pieces))):
        if pieces[at].figure or pieces[at].tag not in _NOUNS | {"DT", "JJ", "PRP$"}:
            break
        if pieces[at].tag in _NOUNS:
            found = at
        if pieces[at].mark:
            break
    return found
