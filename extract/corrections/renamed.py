"""A word denied or echoed by its own speaker, with the one that was meant beside it.

Takes "at the back / the front not the back", "I don't mean harden. Anneal it", "paraffin, I say, I mean beeswax" and
"Not ash. Pine"; refuses "not a file, a stone" where no file was spoken of, and "not too tight, not too loose".
"""

from __future__ import annotations

from collections.abc import Iterator

from extract.corrections.openings import opening_of, opens
from extract.corrections.restated import answer_end
from extract.corrections.scene import Draft, Scene
from extract.corrections.signs import signs_of
from extract.roots import stem

_RECENT = 14
"""Words back among which the wrong word was said."""
_NAME = 3
_ALONE = 9
_IS = frozenset({"is", "are", "was", "were"})
_ANSWER = 4
_SMALL = frozenset({"DT", "PRP$", "IN", "TO"})
_SAYABLE = frozenset(
    {"NN", "NNS", "NNP", "NNPS", "JJ", "VB", "VBG", "VBP", "VBD", "VBN", "RB", "RP", "IN", "FW", "JJR"}
)
_NOTHING = frozenset({"what", "that", "listen", "see", "fine", "well", "again"})
"""No names: "that's what I said. Fine", "unplugged, I said, look"."""
_MEANT = frozenset(
    {"i", "mean", "meant", "no", "sorry", "it's", "that's", "rather", "well", "should", "be", "make", "it"}
)


def find_renamed(scene: Scene) -> Iterator[Draft]:
    """Each word said a moment before that is denied, with the word that holds."""
    yield from _denied(scene)
    yield from _same_tail(scene)
    yield from _lone(scene)
    yield from _denied_outright(scene)
    for templates in (scene.words.not_meant, scene.words.discarding):
        for begin, end in templates.find(scene.line, 1, len(scene.pieces)):
            if opens(scene, begin) and (found := _thrown(scene, begin, end)) is not None:
                yield found
    for begin, end in scene.words.echoing.find(scene.line, 2, len(scene.pieces)):
        found = _echoed(scene, begin, end) or _echoed_behind(scene, begin, end)
        if found is not None:
            yield found


def _denied(scene: Scene) -> Iterator[Draft]:
    """ "the front not the back" and "not ash, pine", the denied word said just before."""
    pieces = scene.pieces
    for at in range(1, len(pieces) - 1):
        if pieces[at].text != "not":
            continue
        wrong = _name_end(scene, at + 1)
        if wrong is None:
            continue
        begin = next((k for k in range(at, max(0, at - _NAME - 1), -1) if opens(scene, k)), None)
        if begin is None or not _just_said(scene, pieces[wrong - 1].text, begin):
            continue
        if begin == at:
            found = _thrown(scene, at, at + 1)
            if found is not None:
                yield found
        elif not any(p.figure for p in pieces[begin:at]) and pieces[at - 1].tag in _SAYABLE and _ends(scene, wrong):
            counter = pieces[at - 1].text in scene.words.swaps.get(pieces[wrong - 1].text, frozenset())
            if counter or pieces[begin].text == pieces[at + 1].text:
                yield Draft(begin, wrong, "this_session", (at + 1, wrong), (begin, at), said_again=True)


def _same_tail(scene: Scene) -> Iterator[Draft]:
    """ "corners first, no, hang on, sides first": the last word is said again, the one before it is another."""
    pieces = scene.pieces
    for begin, end in scene.edit_runs:
        if begin < 2 or end >= len(pieces):
            continue
        tail = pieces[begin - 1]
        if tail.figure or tail.text in scene.words.empty or tail.text in scene.words.fillers:
            continue
        right = next((at for at in range(end + 1, min(end + _NAME, len(pieces))) if pieces[at].text == tail.text), None)
        if right is None or any(piece.figure for piece in pieces[end:right]):
            continue
        wrong, meant = pieces[begin - 2], pieces[right - 1]
        if wrong.tag[:2] == meant.tag[:2] and wrong.text != meant.text and meant.tag in _SAYABLE:
            yield Draft(begin, right + 1, "this_session", (begin - 2, begin), (end, right + 1))


def _thrown(scene: Scene, begin: int, end: int) -> Draft | None:
    """ "I don't mean harden / anneal it", "strike zinc, copper wire": another phrase follows the denied one."""
    pieces = scene.pieces
    wrong = _name_end(scene, end)
    if wrong is None or wrong >= len(pieces) or not _just_said(scene, pieces[wrong - 1].text, begin):
        return None
    right = wrong
    while right < len(pieces) - 1 and pieces[right].text in scene.words.leading | _MEANT:
        right += 1
    until = answer_end(scene, right)
    answer = pieces[right:until]
    if not answer or any(piece.figure for piece in answer) or stem(answer[0].text) == stem(pieces[wrong - 1].text):
        return None
    short = until - right <= _ANSWER and answer[-1].tag in _SAYABLE
    same = pieces[right].tag[:2] == pieces[wrong - 1].tag[:2]
    counter = any(p.text in scene.words.swaps.get(pieces[wrong - 1].text, frozenset()) for p in answer)
    if counter or (short and pieces[right].text not in scene.words.openers) or same:
        return Draft(begin, until, "this_session", (end, wrong), (right, until), said_again=True)
    return None


def _echoed(scene: Scene, begin: int, end: int) -> Draft | None:
    """ "right, did i say / left": the word just said is echoed, and another one given."""
    pieces = scene.pieces
    if end >= len(pieces) or pieces[begin - 1].figure or not _just_said(scene, pieces[begin - 1].text, begin - 1):
        return None
    start = next((k for k in range(begin - 1, max(0, begin - _NAME - 1), -1) if opens(scene, k)), None)
    right = end
    while right < len(pieces) - 1 and pieces[right].text in _MEANT:
        right += 1
    until = _name_end(scene, right)
    if start is None or until is None or not _ends(scene, until):
        return None
    if stem(pieces[until - 1].text) == stem(pieces[begin - 1].text) or pieces[begin - 1].text in _NOTHING:
        return None
    if pieces[until - 1].text in _NOTHING | scene.words.agreeing | scene.words.leading:
        return None
    return Draft(start, until, "this_session", (start, begin), (right, until), said_again=True)


def _echoed_behind(scene: Scene, begin: int, end: int) -> Draft | None:
    """ "Well, I say silver. Pewter", "did I say outer? The inner one": the word echoed stands behind."""
    pieces = scene.pieces
    wrong = _name_end(scene, end) if end < len(pieces) else None
    if wrong is None or wrong >= len(pieces) or not _ends(scene, wrong) or not opening_of(scene, begin):
        return None
    if not _just_said(scene, pieces[wrong - 1].text, begin):
        return None
    right = wrong
    while right < len(pieces) - 1 and pieces[right].text in _MEANT:
        right += 1
    until = answer_end(scene, right)
    if until <= right or pieces[right].figure:
        return None
    counter = any(p.text in scene.words.swaps.get(pieces[wrong - 1].text, frozenset()) for p in pieces[right:until])
    if counter or (until - right <= _NAME and pieces[until - 1].tag in _SAYABLE):
        return Draft(begin, until, "this_session", (end, wrong), (right, until), said_again=True)
    return None


def _lone(scene: Scene) -> Iterator[Draft]:
    """ "Switch it on first. Off. Off first, I mean": a sentence of one word, the counterpart of one just said."""
    pieces = scene.pieces
    for at in range(_NAME, len(pieces)):
        if not pieces[at].ends or not pieces[at - 1].ends or pieces[at - 1].mark == "?" or pieces[at - 2].ends:
            continue
        if pieces[at].tag in ("RP", "IN") or pieces[at].text in scene.words.particles:
            continue
        others = scene.words.swaps.get(pieces[at].text, frozenset())
        wrong = next((k for k in range(at - 1, max(-1, at - _ALONE), -1) if pieces[k].text in others), None)
        if wrong is not None and not any(pieces[k].text == pieces[at].text for k in range(max(0, at - _ALONE), at)):
            yield Draft(at, at + 1, "this_session", (wrong, wrong + 1), (at, at + 1))


def _denied_outright(scene: Scene) -> Iterator[Draft]:
    """ "Bristles are hog. They're not, they're nylon": a plain statement, denied without a name."""
    pieces = scene.pieces
    for begin, end in scene.words.denying.find(scene.line, 2, len(pieces) - 1):
        until = _name_end(scene, end)
        before = pieces[begin - 1]
        stated = any(p.text in _IS or p.text.endswith(("'s", "'re")) for p in pieces[max(0, begin - _ALONE) : begin])
        if until is None or before.mark == "?" or not stated or before.tag not in _SAYABLE | {"NNP"}:
            continue
        if opens(scene, begin) and _ends(scene, until):
            start = max(0, begin - _NAME)
            if signs_of(scene).within("others", max(0, begin - _ALONE), begin):
                continue
            yield Draft(begin, until, "this_session", (start, begin), (end, until))


def _just_said(scene: Scene, word: str, before: int) -> bool:
    near = {stem(piece.text) for piece in scene.pieces[max(0, before - _RECENT) : before]}
    return stem(word) in near and (word not in scene.words.empty or word in scene.words.swaps)


def _name_end(scene: Scene, begin: int) -> int | None:
    """Behind a short phrase: up to a mark, a breath or an article; None where there is none."""
    pieces = scene.pieces
    for at in range(begin, min(begin + _NAME, len(pieces))):
        if pieces[at].figure:
            return None
        if pieces[at].tag in _SMALL and at == begin:
            continue
        if pieces[at].tag not in _SAYABLE:
            return None
        last = at + 1 >= len(pieces) or opens(scene, at + 1) or pieces[at + 1].tag == "DT"
        if last or pieces[at + 1].text == pieces[begin].text or at > begin:
            return at + 1
        if pieces[at].tag.startswith(("NN", "VB")):
            return at + 1
    return None


def _ends(scene: Scene, until: int) -> bool:
    return until >= len(scene.pieces) or opens(scene, until)
