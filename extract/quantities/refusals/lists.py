"""What holds for one number of a list holds for the rest: "pins 2 and 7", "400, 600, then 0000", "1000, 4000, 8000"."""

from __future__ import annotations

from dataclasses import replace

from extract.quantities.chains import link
from extract.quantities.draft import Draft
from extract.quantities.knowledge import knowledge
from extract.quantities.scene import Scene

_GRIT_RUN = 3
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
            joined = link(scene, first, second) or link(scene, _named_whole(scene, first), second)
            if drafts[place].number.form == "integer" and joined:
                found[place] = found[other]
    return found
