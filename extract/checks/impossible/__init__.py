"""What can't be at any bench, by the words and figures alone: one rule a module, `IMPOSSIBLE` is the table of them."""

from __future__ import annotations

from extract.checks.impossible.bores import find_too_large_for_hole
from extract.checks.impossible.cuts import find_too_deep
from extract.checks.impossible.negative import find_negative
from extract.checks.impossible.rings import find_inside_out
from extract.checks.impossible.shares import find_more_than_all

__all__ = ["IMPOSSIBLE"]

IMPOSSIBLE = (
    ("more than all", find_more_than_all),
    ("negative size", find_negative),
    ("inside out", find_inside_out),
    ("too large for its hole", find_too_large_for_hole),
    ("deeper than it is thick", find_too_deep),
)
