"""The thing whose signs weigh most.

The weights stand in data/item_weights.toml with how they were fitted; adding them up is all that is done here.
"""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache

from extract.measures.figure import Figure, Finding
from extract.measures.item.proposals import propose
from extract.measures.item.rules import RULES
from extract.measures.item.signs import signs_of
from extract.measures.knowledge import knowledge
from extract.weights import heaviest, weight_file

_SURE = frozenset({"restated", "usual owner"})
"""Rules that were right more often than the weights in talks that neither was made from."""


def find_item(figure: Figure, finding: Finding) -> None:
    """Gives a finding the thing for which most speaks; without weights the first that a rule proposes."""
    for name, rule in RULES:
        finding.item = rule(figure, finding)
        if finding.item:
            finding.item_rule = name
            break
    weights = item_weights()
    if not weights or finding.item_rule in _SURE:
        return
    proposals = propose(figure, finding)
    # A side is where a thing was measured; it is the thing itself only where nothing else is named.
    proposals = [one for one in proposals if tuple(one.thing.name.split()) not in knowledge().sides] or proposals
    if proposals:
        best = heaviest(proposals, signs_of(figure, finding, proposals), weights)
        finding.item, finding.item_rule = best.thing, best.rules[0]


@cache
def item_weights() -> Mapping[str, float]:
    """Sign -> weight, read once."""
    weights: Mapping[str, float] = weight_file("item")["weights"]
    return weights
