"""How a figure was said: hedged, as a limit, with a tolerance, as a difference."""

from __future__ import annotations

from extract.quantities.draft import Draft, Scene
from extract.quantities.knowledge import knowledge
from extract.spans import Limit

_GAP = ("a", "an", "the", "it", "'s", "at", "to", "of", "only", "just", "that", "is", "like")
_SENTENCE_REACH = 10


def is_hedged(scene: Scene, draft: Draft, earlier: int = 0, later: int | None = None) -> bool:
    """ "about", "or so", "if memory serves", "give or take".

    `earlier` is the end of the figure before, `later` the start of the one behind: a hedge beyond belongs to that one.
    """
    if _said(scene, draft, "hedged"):
        return True
    lists, tape = knowledge().manner["hedged"], scene.tape
    end = lists["after_at_end"].at(tape, draft.end)
    if end is not None and (tape.is_stop(end) or end >= len(tape) or scene.cue(end) != scene.cue(end - 1)):
        return True
    low, high = scene.sentence_bounds(draft.start)
    low = max(low, earlier, draft.start - _SENTENCE_REACH)
    high = min(high, len(tape) if later is None else later, draft.end + _SENTENCE_REACH)
    stretches = ((low, draft.start), (draft.end, high))
    return any(
        (stop := lists["sentence"].at(tape, at)) is not None and stop <= last
        for first, last in stretches
        for at in range(first, last)
    )


def limit_of(scene: Scene, draft: Draft) -> Limit | None:
    """ "no more than" and "at least"."""
    if _said(scene, draft, "at_most", 0):
        return "at_most"
    return "at_least" if _said(scene, draft, "at_least", 0) else None


def is_difference(scene: Scene, draft: Draft) -> bool:
    """ "a thirty-second narrower", "two thou too tight"."""
    than = knowledge().manner["difference"]["than"]
    return than.at(scene.tape, draft.end) is not None


def _is_verb(scene: Scene, begin: int, end: int) -> bool:
    """True for the "like" of "I like five" and the "say" of "did I say four"."""
    word = scene.tape.text(begin) if end == begin + 1 else ""
    before = scene.tape.text(begin - 1) if begin and not scene.tape.lexemes[begin].breath else ""
    return before in knowledge().hedge_unless.get(word, ())


def _said(scene: Scene, draft: Draft, name: str, gap: int = 2) -> bool:
    lists = knowledge().manner[name]
    start = draft.start
    for _ in range(gap + 1):
        begin = lists["before"].before(scene.tape, start)
        if begin is not None and not _is_verb(scene, begin, start):
            return True
        if scene.tape.text(start - 1) not in _GAP:
            break
        start -= 1
    end = draft.end + 1 if scene.tape.text(draft.end) == "," else draft.end
    return lists["after"].at(scene.tape, end) is not None
