"""What holds for one number of a list holds for the rest: "pins 2 and 7", "400, 600, then 0000", "1000, 4000, 8000"."""

from __future__ import annotations

from dataclasses import replace

from extract.quantities.chains import link
from extract.quantities.draft import Draft
from extract.quantities.knowledge import knowledge
from extract.quantities.scene import Scene

_GRIT_RUN = 3
_COUNTED_REACH = 3
_CONTRAST_MOST = 4
_REPEAT_REACH = 12
_SPREADING = ("name", "count", "year", "price")


def grit_runs(scene: Scene, drafts: tuple[Draft, ...]) -> set[int]:
    """Places of the numbers of "1000, 4000, 8000": three abrasives or more, each finer, and no unit."""
    found: set[int] = set()
    run: list[int] = []
    for place, draft in enumerate(drafts):
        finer = bool(run) and draft.number.value > drafts[run[-1]].number.value
        if draft.unit or draft.number.value not in knowledge().grits:
            run = []
        elif finer and link(scene, drafts[run[-1]], draft):
            run = [*run, place]
        else:
            run = [place]
        if len(run) >= _GRIT_RUN:
            found |= set(run)
    return found


def _named_whole(scene: Scene, draft: Draft) -> Draft:
    """The draft with the word behind that names it: "80 grit"."""
    ends = (phrases.at(scene.tape, draft.end) for phrases in knowledge().after.values())
    end = next((end for end in ends if end is not None), None)
    return draft if end is None or draft.unit else replace(draft, end=end)


_CONTRAST = frozenset(
    ["not", "no", "or", "and", ",", "then", "maybe", "sorry", "wait", "make", "that", "i", "mean", "perhaps"]
)


def _contrasts(scene: Scene, first: Draft, second: Draft) -> bool:
    """ "five tacks, not three": the second counts the same things."""
    gap = range(_counted_whole(scene, first).end, second.start)
    words = {scene.tape.text(at) for at in gap}
    return second.number.value > 0 and 0 < len(gap) <= _CONTRAST_MOST and words <= _CONTRAST


def _counted_whole(scene: Scene, draft: Draft) -> Draft:
    """The draft with the things it counts: "five tacks"."""
    for at in range(draft.end, min(draft.end + _COUNTED_REACH, len(scene.tape))):
        if scene.tag(at) in ("NNS", "NNPS") and draft.unit is None:
            return replace(draft, end=at + 1)
        if scene.tag(at) not in ("JJ", "NN", "VBN", "NNP"):
            break
    return draft


def _repeats(scene: Scene, draft: Draft, other: Draft) -> bool:
    """True for the lone "Three." behind "three strokes of the file." """
    alone = scene.tape.is_stop(draft.start - 1) and scene.ends_clause(draft.end)
    close = 0 < draft.start - other.end <= _REPEAT_REACH
    return alone and close and draft.number.value == other.number.value


def spread(scene: Scene, drafts: tuple[Draft, ...], found: dict[int, str]) -> dict[int, str]:
    """The refused places with those that their lists add."""
    found = found | dict.fromkeys(grit_runs(scene, drafts), "name")
    for order in (range(1, len(drafts)), range(len(drafts) - 2, -1, -1)):
        for place in order:
            other = place - 1 if order.step == 1 else place + 1
            if place in found or found.get(other) not in _SPREADING or drafts[place].unit:
                continue
            if drafts[place].start in scene.sides:
                continue  # "14 inches by 5, ten lugs"
            first, second = (drafts[one] for one in sorted((place, other)))
            joined = any(link(scene, one, second) for one in (first, _named_whole(scene, first)))
            joined = joined or _contrasts(scene, first, second)
            joined = joined or (place > other and _repeats(scene, drafts[place], drafts[other]))
            if drafts[place].number.form == "integer" and joined:
                found[place] = found[other]
    return found
