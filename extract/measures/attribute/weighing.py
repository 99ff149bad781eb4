"""The attribute whose signs weigh most.

The weights stand in data/attribute_weights.toml with how they were fitted; adding them up is all that is done here.
"""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache

from extract.measures.attribute.near import Rule
from extract.measures.attribute.proposals import propose
from extract.measures.attribute.signs import signs_of
from extract.measures.figure import Figure, Finding
from extract.weights import heaviest, weight_file

_SURE = frozenset({"unlike word", "adjective behind", "noun before", "noun behind", "verb before", "of"})
"""Rules that were right nearly always in talks that they were not written from."""

Table = tuple[tuple[str, Rule], ...]


def weigh_attribute(figure: Figure, finding: Finding, said: Table, inferred: Table) -> None:
    """Gives a finding the name for which most speaks; what was said beside it stays."""
    if is_sure(finding):
        return
    weights, known = attribute_weights()
    proposals = propose(figure, finding, said, inferred)
    best = heaviest(proposals, signs_of(figure, finding, proposals, known), weights)
    finding.attribute, finding.attribute_rule = best.name, best.rules[0]
    finding.noun, finding.word = best.noun, best.word


def is_sure(finding: Finding) -> bool:
    """True where the attribute was said right beside the figure, or is that of a figure said again."""
    return bool(finding.attribute) and (finding.restates is not None or finding.attribute_rule in _SURE)


@cache
def attribute_weights() -> tuple[Mapping[str, float], frozenset[str]]:
    """Sign -> weight, and the names that have signs of their own; read once."""
    data = weight_file("attribute")
    return data["weights"], frozenset(data["names"])
