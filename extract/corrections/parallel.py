"""An instruction begun again with another word in it, and a thing named anew behind "I mean".

Takes "Start at the nose, I said. Start at the tail", "clip the red on the negative / clip the black on the negative,
sorry" and "Take the washer off. I mean the spring"; refuses "strike it once, then strike it again".
"""

from __future__ import annotations

from collections.abc import Iterator

from extract.corrections.openings import opens
from extract.corrections.restated import answer_end
from extract.corrections.scene import Draft, Scene

_BACK = 20
_NEAR = 6
_NAME = 3
_MEANT = ("i mean", "i meant", "sorry", "i should say")
_NOUNS = frozenset({"NN", "NNS", "NNP"})
_FEWEST = 2


def find_parallels(scene: Scene) -> Iterator[Draft]:
    """Each clause with the verb of one just said, where a remark between or behind takes that one back."""
    marks = _marks(scene)
    last: dict[str, int] = {}
    for at, piece in enumerate(scene.pieces):
        before = last.get(piece.text)
        if piece.tag in ("VB", "VBP") and piece.text not in scene.words.thinking | scene.words.empty:
            if before is not None and at - before <= _BACK:
                found = _again(scene, before, at, marks)
                if found is not None:
                    yield found
            last[piece.text] = at
    yield from _meant(scene)


def _marks(scene: Scene) -> frozenset[int]:
    """Places of words that take something back."""
    found: set[int] = set()
    for begin, end in scene.edit_runs:
        if opens(scene, begin) or end - begin > 1 or scene.pieces[begin].text != "no":
            found.update(range(begin, end))
    for templates in (scene.words.own, scene.words.thrown, scene.words.echoing):
        for begin, end in templates.find(scene.line, 1, len(scene.pieces)):
            found.update(range(begin, end))
    return frozenset(found)


def _again(scene: Scene, first: int, second: int, marks: frozenset[int]) -> Draft | None:
    pieces = scene.pieces
    until = answer_end(scene, second)
    between = [at for at in range(first + _FEWEST, second) if at in marks]
    closing = opens(scene, second) and (until - 1 in marks)
    if not (between and second - between[-1] <= _NEAR) and not closing:
        return None
    end = between[0] if between else second
    wrong, right = scene.content(range(first + 1, end)), scene.content(range(second + 1, until))
    told = {p.text for p in pieces[second + 1 : until]} - {p.text for p in pieces[first:end]}
    if any(pieces[at].measured for at in range(first, until)) or not wrong or not (right - wrong or len(told) == 1):
        return None
    if not (
        right & wrong or "it" in {p.text for p in pieces[second + 1 : second + 3]} or _framed(scene, first, second)
    ):
        return None
    return Draft(end, until, "this_session", (first, end), (second, until))


def _framed(scene: Scene, first: int, second: int) -> bool:
    """The verb is followed by the same small words: "start at the"."""
    return [p.text for p in scene.pieces[first + 1 : first + 3]] == [
        p.text for p in scene.pieces[second + 1 : second + 3]
    ]


def _meant(scene: Scene) -> Iterator[Draft]:
    """ "I mean the spring" as a sentence, where "the washer" stands in the one before."""
    pieces = scene.pieces
    for at in range(_NAME, len(pieces) - 2):
        length = next((len(one.split()) for one in _MEANT if _said(scene, at, one)), 0)
        noun = at + length + 1
        if not length or noun >= len(pieces) or not opens(scene, at) or not opens(scene, noun + 1):
            continue
        if pieces[at - 1].mark == "?" or pieces[noun].tag not in _NOUNS or pieces[noun - 1].tag not in ("DT", "PRP$"):
            continue
        for wrong in range(at - 1, max(0, at - _BACK // 2), -1):
            twin = pieces[wrong - 1].text == pieces[noun - 1].text and pieces[wrong].tag in _NOUNS
            if twin and pieces[wrong].text != pieces[noun].text:
                yield Draft(at, noun + 1, "this_session", (wrong - 1, wrong + 1), (noun - 1, noun + 1))
                break


def _said(scene: Scene, at: int, phrase: str) -> bool:
    words = phrase.split()
    return [piece.text for piece in scene.pieces[at : at + len(words)]] == words
