"""Seconds of a recording as pages show them, and the links that play from there."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Moment:
    """One second of the recording."""

    seconds: float
    """Seconds from the start of the recording."""
    clock: str
    """As a clock shows it: 1:23, or 1:02:03 after the first hour."""
    href: str | None
    """What plays the recording from here; null where the page has no recording."""
    stamp: str
    """The seconds as a plain number, for `t=` and for anchors: 83.2."""


def clock(seconds: float) -> str:
    """Seconds as minutes and seconds, whole ones: 83.9 is 1:23."""
    whole = max(int(seconds), 0)
    minutes, rest = divmod(whole, 60)
    hours, minutes = divmod(minutes, 60)
    return f"{hours}:{minutes:02d}:{rest:02d}" if hours else f"{minutes}:{rest:02d}"


def stamp(seconds: float) -> str:
    """Seconds as a plain decimal number without an exponent: 83.2, 0, 3600."""
    return f"{abs(max(seconds, 0.0)):.3f}".rstrip("0").rstrip(".")


class Playback:
    """Makes the moments of one recording.

    The links are Media Fragments URI 1.0 (W3C, 2012), section 4.2.1: the temporal dimension in normal play time,
    `film.mp4#t=83.2`. Browsers play them without a script, from a disk as well as from a site.
    """

    def __init__(self, address: str | None) -> None:
        self._address = address

    def at(self, seconds: float) -> Moment:
        """The moment at `seconds`."""
        number = stamp(seconds)
        href = None if self._address is None else f"{self._address}#t={number}"
        return Moment(max(seconds, 0.0), clock(seconds), href, number)
