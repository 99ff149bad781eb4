"""Dates in words."""

from __future__ import annotations

from datetime import date

# Fixed words: the name of a month must not follow the machine's locale.
_MONTHS = (
    "January",
    "February",
    "March",
    "April",
    "May",
    "June",
    "July",
    "August",
    "September",
    "October",
    "November",
    "December",
)


def in_words(iso: str | None) -> str:
    """`3 March 2025` for `2025-03-03`; what is no ISO 8601 date is given back as it is."""
    if not iso:
        return ""
    try:
        day = date.fromisoformat(iso)
    except ValueError:
        return iso
    return f"{day.day} {_MONTHS[day.month - 1]} {day.year}"
