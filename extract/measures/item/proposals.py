"""Every thing that may have a figure's measure, with what proposes it.

The rules of the table propose, each for itself; so do the things of the sentence and of the one before, and the items
of the figures before.
"""

from __future__ import annotations

from extract.measures.figure import Figure, Finding
from extract.measures.item.rules import RULES
from extract.measures.things import Thing

_REACH_BEFORE, _REACH_BEHIND = 45, 10
_MOST = 8
_EARLIER = 3


class Proposal:
    """A thing, the rules that propose it, and where it stands."""

    def __init__(self, thing: Thing) -> None:
        self.thing = thing
        self.rules: list[str] = []


def propose(figure: Figure, finding: Finding) -> list[Proposal]:
    """All proposals, those of the rules first and in their order; none where nothing is named."""
    found: dict[str, Proposal] = {}

    def add(rule: str, thing: Thing) -> None:
        proposal = found.setdefault(thing.name, Proposal(thing))
        if rule not in proposal.rules:
            proposal.rules.append(rule)

    for name, rule in RULES:
        thing = rule(figure, finding)
        if thing:
            add(name, thing)
    scene = figure.scene
    before = scene.things_in(max(0, figure.start - _REACH_BEFORE), figure.start)[::-1]
    for rank, thing in enumerate(before[:_MOST]):
        add("before" if rank else "nearest before", thing)
    for rank, thing in enumerate(scene.things_in(figure.end, figure.end + _REACH_BEHIND)[:2]):
        add("behind" if rank else "nearest behind", thing)
    for rank, earlier in enumerate(list(figure.earlier(_EARLIER * _REACH_BEFORE))[:_EARLIER]):
        if earlier.item:
            add(f"item {rank + 1} back", earlier.item)
    return list(found.values())
