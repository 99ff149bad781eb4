"""The words that pages use, in one place."""

from __future__ import annotations

import re

from extract.record import Because, Mode, Phase, Scope
from extract.spans import Limit

PHASES: dict[Phase, str] = {
    "as_found": "as found",
    "target": "aim",
    "as_left": "as left",
    "general": "rule of thumb",
}
"""In the order in which pages list them."""

MODES: dict[Mode, str] = {
    "done": "",
    "doing": "",
    "planned": "planned, not done in this session",
    "advice": "advice",
}
"""What stands behind a step that was not simply done."""

SCOPES: dict[Scope, str] = {"this_session": "this session", "earlier_session": "an earlier session"}

AMENDED: dict[Because, str] = {"said_wrong": "said on film:", "heard_wrong": "first heard as", "own_words": "put as"}
"""Before what stood where a person amended a figure."""

LIMITS: dict[Limit, str] = {"at_most": "at most", "at_least": "at least"}

STANDING_CAUTION = (
    "These notes tell what one person did to one piece of work. Follow your local codes, the safety instructions of "
    "the makers of your tools and materials, and leave work that calls for a licence to someone who holds it."
)
"""Stands on every session page, whatever was said."""


def count(number: int, one: str, many: str | None = None) -> str:
    """A number with its noun: `1 statement`, `3 statements`."""
    return f"{number} {one if number == 1 else many or one + 's'}"


def sentence(text: str) -> str:
    """Capital first, full stop last."""
    trimmed = text.strip()
    if not trimmed:
        return ""
    begun = trimmed[0].upper() + trimmed[1:]
    return begun if begun[-1] in ".!?…" else begun + "."


def in_brackets(text: str) -> str:
    """A figure in other units, to stand in brackets: a fraction in brackets of its own goes behind a comma."""
    return _behind_a_comma(text.removeprefix("about "))


def _behind_a_comma(text: str) -> str:
    return text.replace(" (", ", ").replace(")", "")


def with_other(figure: str, other: str | None = None) -> str:
    """A figure with the same in other units behind it, in the only brackets.

    >>> with_other("648 mm", "25.51 in (25 1/2 in)")
    '648 mm (25.51 in, 25 1/2 in)'
    >>> with_other("25.51 in (25 1/2 in)", "648 mm")
    '25.51 in, 25 1/2 in (648 mm)'
    """
    return f"{_behind_a_comma(figure)} ({in_brackets(other)})" if other else figure


_HEADED = re.compile(r"^To be checked: |: left for later(?=\.?$)")


def under_its_heading(text: str) -> str:
    """A doubt or a thing left for later, without what the heading above it says already.

    >>> under_its_heading("The third fret buzzes: left for later.")
    'The third fret buzzes.'
    """
    return sentence(_HEADED.sub("", text.strip()))


def cited(source: str) -> str:
    """Where a rule, a band or a caution comes from, a sentence.

    >>> cited("common practice, no source; sources differ")
    'Common practice, no published source; sources differ.'
    >>> cited("29 CFR 1910.107")
    'Source: 29 CFR 1910.107.'
    """
    if source.casefold().startswith("common practice"):
        told = source[:1].upper() + source[1:]
        return f"{told.replace('no source', 'no published source', 1)}."
    return f"Source: {source}."
