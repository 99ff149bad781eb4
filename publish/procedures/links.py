"""Links from other pages to the procedures that a session did."""

from __future__ import annotations

from collections.abc import Mapping

from publish.context import Link
from publish.procedures.library import Library
from publish.procedures.outline import Course
from publish.procedures.places import page_name


def links_of(library: Library, courses: Mapping[str, Course], *, steps: bool = False) -> dict[str, tuple[Link, ...]]:
    """By session, the procedures with a page that it did, in the order of its steps; from the front page's folder.

    With `steps` each says which of the session's steps are meant.
    """
    found: dict[str, list[tuple[int, Link]]] = {}
    for one in library.shelved:
        for ran in one.ran if one.has_page else ():
            numbers = [courses[ran.session].steps[at].number for at in ran.steps]
            text = f"{one.name} ({_told(numbers)})" if steps else one.name
            found.setdefault(ran.session, []).append((numbers[0], Link(page_name(one.slug), text)))
    return {slug: tuple(link for _, link in sorted(of, key=lambda pair: pair[0])) for slug, of in found.items()}


def _told(numbers: list[int]) -> str:
    """The numbers of its steps: "step 3", "steps 1 to 4, 9"."""
    runs: list[list[int]] = []
    for number in numbers:
        if runs and number == runs[-1][-1] + 1:
            runs[-1].append(number)
        else:
            runs.append([number])
    told = ", ".join(f"{run[0]} to {run[-1]}" if len(run) > 1 else f"{run[0]}" for run in runs)
    return f"{'step' if len(numbers) == 1 else 'steps'} {told}"
