"""A count said before and put right: no measure, but a figure that others will follow.

Takes "I said 24 hooks. It's 26", "did i say eighty grit i meant a hundred and twenty" and "I miscounted, there are nine
spindles"; refuses "I said one more coat, it's two o'clock".
"""

from __future__ import annotations

from collections.abc import Iterator

from extract.corrections.scene import Draft, Scene
from extract.corrections.slip_of_figure import counted
from extract.roots import stem

_CLAIM = 4
_ANSWER = 10
_HELD = 3
_REACH = 12
_NOUNS = frozenset({"NN", "NNS"})


def find_recounts(scene: Scene) -> Iterator[Draft]:
    """Each count that is quoted, or counted again, with the one that holds."""
    yield from _quoted(scene)
    yield from _counted_again(scene)


def _bare(scene: Scene, begin: int, end: int) -> Iterator[int]:
    for at in range(begin, min(end, len(scene.pieces))):
        if scene.pieces[at].number and not scene.pieces[at].measured:
            yield at


def _value(scene: Scene, at: int) -> object:
    number = scene.pieces[at].number
    return number.value if number else None


def _noun(scene: Scene, at: int) -> str | None:
    """What a bare number counts: "hooks" of "26 hooks"."""
    pieces = scene.pieces
    follows = at + 1 < len(pieces) and not pieces[at].mark and pieces[at + 1].tag in _NOUNS
    return stem(pieces[at + 1].text) if follows else None


def _quoted(scene: Scene) -> Iterator[Draft]:
    pieces = scene.pieces
    for begin, end in scene.words.said.find(pieces, 0, len(pieces)):
        if begin and pieces[begin - 1].text in scene.words.not_behind and not pieces[begin - 1].mark:
            continue
        wrong = next(_bare(scene, end, end + _CLAIM), None)
        if wrong is None:
            continue
        for _, after in scene.words.holding.find(pieces, wrong + 1, wrong + _ANSWER):
            right = next(_bare(scene, after, after + _HELD), None)
            if right is None or _value(scene, right) == _value(scene, wrong):
                continue
            until = counted(scene, right)
            same = _noun(scene, right) in (None, _noun(scene, wrong))
            closed = until >= len(pieces) or pieces[until - 1].mark or pieces[until].cue != pieces[until - 1].cue
            if same and (closed or pieces[after - 1].text == "meant" or _noun(scene, right)):
                yield Draft(
                    begin, until, "this_session", (wrong, counted(scene, wrong)), (right, until), said_again=True
                )
            break


def _counted_again(scene: Scene) -> Iterator[Draft]:
    """ "I miscounted, there are nine spindles": the noun leads back to the first count."""
    pieces = scene.pieces
    phrases = [
        *scene.words.withdrawing.find(pieces, 0, len(pieces)),
        *scene.words.righting.find(pieces, 1, len(pieces)),
        *scene.words.own.find(scene.line, 1, len(pieces)),
        *scene.words.recounted.find(scene.line, 1, len(pieces)),
    ]
    counts: dict[str, int] = {}
    places = iter(sorted(phrases))
    begin, end = next(places, (len(pieces), len(pieces)))
    for at in range(len(pieces)):
        while begin < at:
            begin, end = next(places, (len(pieces), len(pieces)))
        if at == begin:
            right = next((k for k in _bare(scene, end, end + _REACH) if _noun(scene, k) in counts), None)
            if right is not None and _value(scene, counts[_noun(scene, right) or ""]) != _value(scene, right):
                wrong = counts[_noun(scene, right) or ""]
                yield Draft(begin, right + 2, "this_session", (wrong, wrong + 2), (right, right + 2))
            begin, end = next(places, (len(pieces), len(pieces)))
        noun = _noun(scene, at) if pieces[at].number and not pieces[at].measured else None
        if noun is not None:
            counts[noun] = at
