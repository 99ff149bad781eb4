"""How a figure was said: hedged, as a limit, with a tolerance, as a difference."""

from __future__ import annotations

from extract.quantities.draft import Draft
from extract.quantities.knowledge import knowledge
from extract.quantities.scene import Scene
from extract.spans import Limit

_GAP = ("a", "an", "the", "it", "'s", "at", "to", "of", "only", "just", "that", "is", "like")
_MOST_BETWEEN = 3
_SENTENCE_REACH = 10
_TAIL_REACH = 6
_NO_SPEAKER = ("NN", "JJ", "VBN", "RB")
"""Behind these "say" is no verb: "with the rope slack say half an inch", but "the feelers say twelve"."""
_LIMITS: tuple[Limit, ...] = ("at_most", "at_least")


def is_hedged(scene: Scene, draft: Draft, earlier: int = 0, later: int | None = None) -> bool:
    """ "about", "or so", "if memory serves", "give or take".

    `earlier` is the end of the figure before, `later` the start of the one behind: a hedge beyond belongs to that one.
    """
    lists, tape = knowledge().manner["hedged"], scene.tape
    inside = any(lists["inside"].at(tape, at) is not None for at in range(draft.start, draft.end))
    if inside or _said(scene, draft):
        return True
    end = lists["after_at_end"].at(tape, draft.end)
    if end is not None and (tape.is_stop(end) or end >= len(tape) or scene.cue(end) != scene.cue(end - 1)):
        return True
    later = len(tape) if later is None else later
    return _in_tail(scene, draft, later) or _in_sentence(scene, draft, earlier, later)


def _in_tail(scene: Scene, draft: Draft, later: int) -> bool:
    """The "maybe" of "two or three thou of relief, maybe", at the end of the figure's own clause."""
    tails, tape = knowledge().manner["hedged"]["tail"], scene.tape
    for at in range(draft.end, min(draft.end + _TAIL_REACH, later)):
        if tape.lexemes[at].breath or tape.text(at) in (".", ";", "?", "!"):
            return False
        end = tails.at(tape, at)
        if end is not None and (end >= len(tape) or tape.is_stop(end) or tape.lexemes[end].breath):
            return True
    return False


def _in_sentence(scene: Scene, draft: Draft, earlier: int, later: int) -> bool:
    """ "I think" anywhere in the breath of a figure, or first in the next one: "it was 12 mm / I think"."""
    hedges, tape = knowledge().manner["hedged"]["sentence"], scene.tape
    low, high = scene.sentence_bounds(draft.start)
    low, high = max(low, earlier, draft.start - _SENTENCE_REACH), min(high, later, draft.end + _SENTENCE_REACH)
    for first, last in ((low, draft.start), (draft.end, high)):
        for at in range(first, last):
            same_breath = scene.cue(at) == scene.cue(draft.start) or at == draft.end
            stop = hedges.at(tape, at) if same_breath else None
            if stop is not None and stop <= last and not (at >= draft.end and _opens_clause(scene, at, stop)):
                return True
    return False


def _opens_clause(scene: Scene, at: int, stop: int) -> bool:
    """True for "six millimetres and i suppose the spring is original", which doubts the spring."""
    return scene.tape.text(at - 1) in ("and", "but", "so", "because") and not scene.ends_clause(stop)


def limit_of(scene: Scene, draft: Draft) -> Limit | None:
    """ "no more than" and "at least"; the longest phrase wins, and "a hair under" is a hedge, no limit."""
    lists, tape = knowledge().manner, scene.tape
    hedge = lists["hedged"]["before"].before(tape, draft.start)
    found: list[tuple[int, Limit]] = []
    for limit in _LIMITS:
        begin = lists[limit]["before"].before(tape, draft.start)
        if begin is not None and not _is_particle(scene, begin):
            found.append((begin, limit))
    if found:
        begin, limit = min(found)
        return None if hedge is not None and hedge <= begin else limit
    end = draft.end + 1 if tape.text(draft.end) == "," else draft.end
    return next((limit for limit in _LIMITS if lists[limit]["after"].at(tape, end) is not None), None)


def _is_particle(scene: Scene, begin: int) -> bool:
    """True for the "up to" of "pump it up to 60", which bounds nothing."""
    if scene.tape.text(begin) != "up":
        return False
    started = begin == 0 or scene.tape.lexemes[begin].breath or scene.tape.is_stop(begin - 1)
    return not started and scene.tape.text(begin - 1) not in knowledge().up_to_behind


def is_difference(scene: Scene, draft: Draft) -> bool:
    """ "a thirty-second narrower", "two thou too tight", "drop it by two thou"; not "15 mm by 10"."""
    lists, tape = knowledge().manner["difference"], scene.tape
    if lists["after"].at(tape, draft.end) is not None:
        return True
    begin = lists["before"].before(tape, draft.start)
    return begin is not None and not scene.ends_number(begin)


def tolerance_of(scene: Scene, draft: Draft, other: Draft) -> bool:
    """True where `other` is how far `draft` may be off: "24 mm plus or minus a half"."""
    between = knowledge().manner["tolerance"]["before"].before(scene.tape, other.start)
    return between == draft.end


def _is_verb(scene: Scene, begin: int, end: int) -> bool:
    """True for the "like" of "I like five" and the "say" of "did I say four"."""
    word = scene.tape.text(begin) if end == begin + 1 else ""
    before = scene.tape.text(begin - 1) if begin and not scene.tape.lexemes[begin].breath else ""
    only = knowledge().hedge_only.get(word)
    if only is not None:
        if scene.tag(begin - 1) in _NO_SPEAKER:
            return False
        return before != "" and before not in only and not scene.tape.is_stop(begin - 1)
    return before in knowledge().hedge_unless.get(word, ())


def _said(scene: Scene, draft: Draft) -> bool:
    lists, tape, start = knowledge().manner["hedged"], scene.tape, draft.start
    for _ in range(_MOST_BETWEEN):
        begin = lists["before"].before(tape, start)
        if begin is not None and not _is_verb(scene, begin, start):
            return True
        if tape.text(start - 1) not in _GAP:
            break
        start -= 1
    end = draft.end + 1 if tape.text(draft.end) == "," else draft.end
    return lists["after"].at(tape, end) is not None
