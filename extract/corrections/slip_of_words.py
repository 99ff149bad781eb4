"""A word put right in the same breath.

Takes "the strike side no the time side", "that's ringing a g / no excuse me a g sharp" and "it's spruce, sorry, cedar";
refuses "no, you don't want that", "sorry about the noise" and "a nudge on the left, wait, a nudge on the right".
"""

from __future__ import annotations

from collections.abc import Iterator

from extract.corrections.pieces import Piece
from extract.corrections.scene import Draft, Scene
from extract.roots import stem

_BACK = 5
_AHEAD = 4
_CLAUSE, _LONGEST = 4, 12
"""Words of a clause that is said again."""
_BEGUN = 2
"""Words that it must begin with again."""
_HEARING = frozenset({"listen", "look", "see"})
_SMALL = frozenset({"DT", "PRP$", "IN", "TO", "RB", "POS"})
_NOUNS = frozenset({"NN", "NNS", "NNP", "NNPS", "JJ"})


def find_word_slips(scene: Scene) -> Iterator[Draft]:
    """Each phrase said again with another word in it."""
    for begin, end in scene.edit_runs:
        found = _again(scene, begin, end)
        if found is not None:
            yield found
    for begin, end in scene.words.behind.find(scene.pieces, 2, len(scene.pieces)):
        found = _behind(scene, begin, end)
        if found is not None:
            yield found


def _behind(scene: Scene, begin: int, end: int) -> Draft | None:
    """ "File the E side. The A side, I mean.": the right phrase stands alone, with the apology behind it."""
    pieces = scene.pieces
    closed = end >= len(pieces) or pieces[end - 1].mark or pieces[end].cue != pieces[end - 1].cue
    start = next((at + 1 for at in range(begin - 2, max(-1, begin - _AHEAD - 1), -1) if pieces[at].mark), None)
    if not closed or not pieces[begin - 1].mark or start is None:
        return None
    right, wrong = pieces[start:begin], pieces[start - 1]
    if any(piece.figure or piece.text in scene.words.address for piece in right) or wrong.text in scene.words.address:
        return None
    nouns = _NOUNS - {"JJ"}
    if wrong.tag not in nouns or right[-1].tag not in nouns or any(p.tag not in _NOUNS | _SMALL for p in right):
        return None
    if [stem(piece.text) for piece in right] == [stem(piece.text) for piece in pieces[start - len(right) : start]]:
        return None
    return Draft(start, end, "this_session", (max(0, start - len(right)), start), (start, begin))


def _again(scene: Scene, begin: int, end: int) -> Draft | None:
    pieces = scene.pieces
    if end >= len(pieces) or pieces[end].figure or _is_no_slip(scene, begin, end):
        return None
    if _firm(scene, begin, end) and (verb := _verb(scene, begin, end)) is not None:
        return Draft(begin, verb, "this_session", (begin - 1, begin), (end, verb))
    if (clause := _clause(scene, begin, end)) is not None:
        return clause
    until = _phrase_end(scene, end)
    start = _start_of_wrong(scene, begin, end, until) if until is not None else None
    if until is None or start is None:
        return None
    return Draft(begin, until, "this_session", (start, begin), (end, until))


def _is_no_slip(scene: Scene, begin: int, end: int) -> bool:
    """ "And I mean a touch" stresses; "listen, no scrape" says that there is none."""
    pieces = scene.pieces
    stressed = pieces[begin - 1].text == "and" and pieces[begin].text == "i"
    heard = pieces[begin].text in _HEARING and pieces[end - 1].text == "no" and not pieces[end - 1].mark
    return stressed or (heard and pieces[end].tag in ("NN", "NNS"))


def _clause(scene: Scene, begin: int, end: int) -> Draft | None:
    """ "the spring hooks on the barrel, no, the spring hooks on the arbor": a clause begun again in the same words."""
    pieces = scene.pieces
    until = next((at for at in range(end + _CLAUSE, min(end + _LONGEST, len(pieces) + 1)) if closes(scene, at)), None)
    if until is None or any(piece.figure for piece in pieces[end:until]):
        return None
    shortest = max(_CLAUSE, until - end - _BEGUN)
    for start in range(begin - shortest, max(-1, begin - _LONGEST - 1), -1):
        same = all(pieces[start + k].text == pieces[end + k].text for k in range(_BEGUN))
        wrong, right = scene.content(range(start, begin)), scene.content(range(end, until))
        if same and wrong & right and wrong - right and right - wrong:
            return Draft(begin, until, "this_session", (start, begin), (end, until))
    return None


def _firm(scene: Scene, begin: int, end: int) -> bool:
    """The words or a mark show that something is taken back: a bare "no" in the stream of talk may be anything."""
    pieces = scene.pieces
    if {piece.text for piece in pieces[begin:end]} <= {"no", "nope", "well"}:
        return (
            bool(pieces[begin - 1].mark)
            and bool(pieces[end - 1].mark)
            and not _answers(pieces[begin - 1], pieces[end - 1])
        )
    return True


def _answers(before: Piece, no: Piece) -> bool:
    """ "Tock, no. Tick, yes.": the "no" belongs to what stands before it."""
    return not before.ends and no.ends


def _verb(scene: Scene, begin: int, end: int) -> int | None:
    """ "you loosen, sorry, tighten the clamp": behind the phrase of the right verb."""
    pieces = scene.pieces
    wrong, right = pieces[begin - 1], pieces[end]
    if (
        right.text in scene.words.openers
        or wrong.text in scene.words.thinking
        or right.text in scene.words.thinking
        or wrong.text == right.text
    ):
        return None
    if wrong.tag[:2] != "VB" or right.tag[:2] != "VB" or right.tag == "VBD" != wrong.tag:
        return None
    until = end + 1
    while until < min(end + _AHEAD, len(pieces)) and not pieces[until - 1].mark and not pieces[until].figure:
        until += 1
    return until


def _phrase_end(scene: Scene, begin: int) -> int | None:
    """Behind the noun phrase at a place; None where something else stands there."""
    pieces = scene.pieces
    if pieces[begin].text in scene.words.openers and pieces[begin].text not in scene.words.frames:
        return None
    found = None
    for at in range(begin, min(begin + _AHEAD, len(pieces))):
        piece = pieces[at]
        framed = at == begin and piece.text in scene.words.frames
        if piece.figure or not (framed or piece.tag in _NOUNS | _SMALL):
            break
        if piece.tag in _NOUNS:
            found = at + 1
        if piece.mark or (at + 1 < len(pieces) and pieces[at + 1].cue != piece.cue):
            break
    return found


def _start_of_wrong(scene: Scene, begin: int, end: int, until: int) -> int | None:
    """Where the wrong phrase begins: at the same first word, before the same last word, or one word for one word."""
    pieces = scene.pieces
    right = pieces[end:until]
    for start in range(begin - 1, max(-1, begin - _BACK - 1), -1):
        if pieces[start].figure or (pieces[start].ends and start < begin - 1):
            break
        wrong = pieces[start:begin]
        if pieces[start].text == right[0].text and _parallel(scene, wrong, right):
            return start
    if len(right) > 1 and begin >= len(right):
        wrong = pieces[begin - len(right) : begin]
        heads = stem(wrong[-1].text) == stem(right[-1].text) and right[-1].tag in _NOUNS
        if heads and wrong[0].text != right[0].text and wrong[0].tag == right[0].tag:
            return begin - len(right)
    if len(right) == 2 and right[0].text in scene.words.frames and _is_named(pieces[max(0, begin - 3) : begin]):
        return begin - 1 if _firm(scene, begin, end) and stem(right[1].text) != stem(pieces[begin - 1].text) else None
    names = pieces[begin - 1].tag in _NOUNS - {"JJ"} and right[-1].tag in _NOUNS - {"JJ"}
    addressed = {piece.text for piece in right} & scene.words.address
    if names and not addressed and _explicit(scene, begin, end) and closes(scene, until):
        return max(0, begin - len(right))
    lone = len(right) == 1 and right[0].tag in _NOUNS | {"RB"} and pieces[begin - 1].tag in _NOUNS | {"RB"}
    closed = closes(scene, until)
    firm = _firm(scene, begin, end) or pieces[begin].cue != pieces[begin - 1].cue
    if lone and closed and firm and stem(right[0].text) != stem(pieces[begin - 1].text):
        return begin - 1
    return None


def closes(scene: Scene, until: int) -> bool:
    """A mark or the end of a breath stands before a place."""
    pieces = scene.pieces
    return until >= len(pieces) or bool(pieces[until - 1].mark) or pieces[until].cue != pieces[until - 1].cue


def _explicit(scene: Scene, begin: int, end: int) -> bool:
    """The phrase says plainly that something was said wrong: "i mean" and "no" are said for many reasons."""
    pieces = scene.pieces
    said = " ".join(piece.text for piece in pieces[begin:end])
    return said in scene.words.explicit or any(said.endswith(f" {one}") for one in scene.words.explicit)


def _is_named(pieces: tuple[Piece, ...]) -> bool:
    """ "the panel's walnut", "it is a walnut": a noun behind "is"."""
    if pieces[-1].tag not in _NOUNS - {"JJ"}:
        return False
    return any(piece.text in ("is", "was", "are") or piece.text.endswith("'s") for piece in pieces[:-1])


def _parallel(scene: Scene, wrong: tuple[Piece, ...], right: tuple[Piece, ...]) -> bool:
    """The two have a first word in common, end in nouns and are not the same."""
    nouns = _NOUNS - {"JJ"} if right[0].text in scene.words.frames else _NOUNS
    if wrong[-1].tag not in nouns or right[-1].tag not in nouns or abs(len(wrong) - len(right)) > 1:
        return False
    return [stem(piece.text) for piece in wrong] != [stem(piece.text) for piece in right]
