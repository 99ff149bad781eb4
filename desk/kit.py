"""Tools and materials as the terminal tells them."""

from __future__ import annotations

from collections.abc import Iterator

from desk.console import printable
from publish.kit import Thing
from publish.moments import clock
from publish.rulings.naming import same_letters
from publish.wording import count


def line_of(one: Thing) -> str:
    """A thing in a line."""
    said = [f"“{of.name}”" for of in one.said if same_letters(of.name) != same_letters(one.name)]
    told = [one.sort, count(one.sessions, "session"), *(["named by hand"] if one.by_hand else [])]
    return printable("  ".join((one.name, f"({', '.join(told)})", *([f"said {', '.join(said)}"] if said else []))))


def told(one: Thing) -> Iterator[str]:
    """A thing with its sessions and seconds, a line each."""
    yield line_of(one)
    for spoken in one.spoken:
        at = ", ".join(clock(second) for second in spoken.seconds) or "no second"
        yield printable(f"  {spoken.session}: “{spoken.said.name}” at {at}")
