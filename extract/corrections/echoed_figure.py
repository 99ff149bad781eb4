"""A figure echoed, and another said in its place; or the same thing said again with another figure.

Takes "Peel back 20 mm. Twenty! 2 mm", "It's a six mil. Six is sloppy. It's a 5.5 mm" and "The tube's 15 mm. I'm looking
at the insert. The tube's 22 mm"; refuses "5 mm. Five is plenty, 6 mm would bind" and "the tube was 15 mm, now it's 22".
"""

from __future__ import annotations

from collections.abc import Iterator

from extract.corrections.openings import opens
from extract.corrections.scene import Draft, Scene, alike, differ, kind_of, says_again
from extract.roots import stem

_BACK = 10
_AHEAD = 9
_APART = 20
_SENTENCE = 8
_LATER = frozenset({"now", "then", "would", "too", "also", "another", "next", "other", "after", "more", "was", "again"})
_PLACING = frozenset(
    {"it's", "make", "it", "a", "an", "give", "use", "to", "at", "be", "that's", "the", "take", "call"}
)
_NOUNS = frozenset({"NN", "NNS", "NNP", "NNPS"})
_OWN = frozenset({"i", "i'm", "i've", "ah", "oh", "hm", "hmm", "oops", "my", "whoops", "eh", "what", "hang", "no"})


def find_echoed_figures(scene: Scene) -> Iterator[Draft]:
    """Each echo that is followed by another figure, and each thing said anew behind a remark."""
    for before, echo, right in zip(scene.figures, scene.figures[1:], scene.figures[2:], strict=False):
        found = _echoed(scene, before, echo, right)
        if found is not None:
            yield found
    for wrong, right in zip(scene.figures, scene.figures[1:], strict=False):
        found = _said_anew(scene, wrong, right)
        if found is not None:
            yield found


def _echoed(scene: Scene, before: int, echo: int, right: int) -> Draft | None:
    pieces = scene.pieces
    first, again, second = (scene.measured(at) for at in (before, echo, right))
    if echo - before > _BACK or right - echo > _AHEAD or again.quantity.unit_said or not second.quantity.unit_said:
        return None
    if first.quantity.number.value != again.quantity.number.value or not alike(first, second):
        return None
    if (
        not opens(scene, echo)
        or not differ(first, second)
        or says_again(first, second)
        or _later(scene, right + 1, right + 4)
    ):
        return None
    if not (opens(scene, right) or pieces[right - 1].text in _PLACING):
        return None
    return Draft(echo, right + 1, "this_session", (before, before + 1), (right, right + 1), (first, again), second)


def _said_anew(scene: Scene, wrong: int, right: int) -> Draft | None:
    """The same noun with another figure, a remark of the speaker's own between."""
    first, second = scene.measured(wrong), scene.measured(right)
    if right - wrong > _APART or not differ(first, second) or not alike(first, second):
        return None
    if kind_of(first) is None or first.quantity.unit != second.quantity.unit or second.quantity.difference:
        return None
    head = _head(scene, wrong)
    if head is None or head != _head(scene, right) or _later(scene, wrong + 1, right + 4):
        return None
    begin = next((at for at in range(wrong + 1, right) if scene.pieces[at - 1].ends), None)
    if begin is None or scene.pieces[begin].text not in _OWN or begin - wrong > _SENTENCE:
        return None
    return Draft(begin, right + 1, "this_session", (wrong, wrong + 1), (right, right + 1), (first,), second)


def _head(scene: Scene, at: int) -> str | None:
    """The noun that a figure is said of: "tube" of "the tube's 22 mm", "rod" of "2.8 mm rod" and "250 g of rod"."""
    pieces = scene.pieces
    behind = at + 2 if at + 1 < len(pieces) and pieces[at + 1].text == "of" else at + 1
    if not pieces[at].mark and behind < len(pieces) and pieces[behind].tag in _NOUNS:
        return stem(pieces[behind].text)
    before = at - 1
    while before > 0 and pieces[before].text in ("is", "are", "a", "an", "at", "the"):
        before -= 1
    text = pieces[before].text.removesuffix("'s") if before >= 0 else ""
    said = text != pieces[before].text or (pieces[before].tag in _NOUNS and before < at - 1)
    return stem(text) if text and said and text not in ("it", "that", "there") else None


def _later(scene: Scene, begin: int, end: int) -> bool:
    """A word tells that something was done in between, or that the two are two."""
    return any(piece.text in _LATER for piece in scene.pieces[begin:end])
