"""Reasons why a number is no measure, one small rule each, in a visible order."""

from __future__ import annotations

from collections.abc import Callable

from extract.quantities.draft import Draft
from extract.quantities.refusals.counts import is_count, is_pronoun, is_wrap
from extract.quantities.refusals.lists import spread
from extract.quantities.refusals.names import (
    goes_by_name,
    is_abrasive,
    is_called,
    is_cone,
    is_part_number,
    is_size_by_name,
    is_stamped,
    is_thread,
    is_thread_count,
)
from extract.quantities.refusals.shares import in_idiom, is_bare_half, is_ratio, is_share
from extract.quantities.refusals.time_and_money import is_clock, is_past, is_price, is_year
from extract.quantities.scene import Scene

Rule = Callable[[Scene, Draft], bool]

RULES: tuple[tuple[str, Rule], ...] = (
    ("idiom", in_idiom),
    ("name", goes_by_name),
    ("clock", is_clock),
    ("price", is_price),
    ("cone", is_cone),
    ("thread", is_thread),
    ("thread count", is_thread_count),
    ("stamped", is_stamped),
    ("abrasive", is_abrasive),
    ("size by name", is_size_by_name),
    ("past", is_past),
    ("ratio", is_ratio),
    ("wrap", is_wrap),
    ("digits", is_part_number),
    ("called", is_called),
    ("year", is_year),
    ("pronoun", is_pronoun),
    ("count", is_count),
    ("half", is_bare_half),
    ("share", is_share),
)
"""The first rule that holds names the reason."""


def refused(scene: Scene, draft: Draft) -> str | None:
    """Name of the first rule that makes the number no measure, None where none does."""
    return next((name for name, rule in RULES if rule(scene, draft)), None)


def refuse_all(scene: Scene, drafts: tuple[Draft, ...]) -> dict[int, str]:
    """Places of the numbers that are no measures, with the rule's name; lists are taken as a whole."""
    found = {place: name for place, draft in enumerate(drafts) if (name := refused(scene, draft))}
    return spread(scene, drafts, found)
