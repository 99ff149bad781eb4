"""Links from other pages to the procedures that a session did."""

from __future__ import annotations

from publish.context import Link
from publish.procedures.pages import page_name
from publish.procedures.procedure import Procedures, VersionDone


def links_of(procedures: Procedures, root: str = "", *, steps: bool = False) -> dict[str, tuple[Link, ...]]:
    """By session, the procedures with a page that it did, in the order of its steps.

    `root` leads to the front page's folder; with `steps` each says which of the session's steps are meant.
    """
    found: dict[str, list[tuple[int, Link]]] = {}
    for one in procedures.all:
        for version in one.versions if one.has_page else ():
            text = f"{one.name} ({_numbers(version)})" if steps else one.name
            link = Link(f"{root}{page_name(one)}", text)
            found.setdefault(version.work.slug, []).append((version.steps[0].number, link))
    return {slug: tuple(link for _, link in sorted(of, key=lambda pair: pair[0])) for slug, of in found.items()}


def _numbers(version: VersionDone) -> str:
    """The numbers of its steps: "step 3", "steps 1 to 4, 9"."""
    runs: list[list[int]] = []
    for step in version.steps:
        if runs and step.number == runs[-1][-1] + 1:
            runs[-1].append(step.number)
        else:
            runs.append([step.number])
    told = ", ".join(f"{run[0]} to {run[-1]}" if len(run) > 1 else f"{run[0]}" for run in runs)
    return f"{'step' if len(version.steps) == 1 else 'steps'} {told}"
