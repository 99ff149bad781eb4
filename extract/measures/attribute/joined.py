"""Attributes of figures that lean on the figure before them.

Takes "1 1/8 inches, call it 28 and a half in new money", "4.5 on the A and 6 on the C".
"""

from __future__ import annotations

from extract.measures.attribute.near import same_order
from extract.measures.figure import Figure, Finding


def by_restatement(_: Figure, finding: Finding) -> str | None:
    """ "... call it 28 and a half": what the figure before it was."""
    if finding.restates:
        finding.noun = finding.restates.noun
        return finding.restates.attribute
    return None


def by_following(figure: Figure, finding: Finding) -> str | None:
    """ "... and 6 on the C": what the figure before it was."""
    if finding.follows and same_order(figure, finding.follows):
        finding.noun = finding.follows.noun
        return finding.follows.attribute
    return None
