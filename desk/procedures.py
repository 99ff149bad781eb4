"""Procedures as the terminal tells them."""

from __future__ import annotations

from collections.abc import Iterator
from statistics import median

from publish.moments import clock
from publish.procedures import Procedure
from publish.procedures.measured import of_step
from publish.procedures.procedure import Stage
from publish.wording import count, with_other


def line_of(one: Procedure) -> str:
    """A procedure in a line."""
    marks = (("pinned", one.pinned is not None), ("named by hand", one.by_hand))
    told = [count(one.sessions, "session"), count(len(one.stages), "step"), *(name for name, holds in marks if holds)]
    return f"{one.name}  ({', '.join(told)})  {one.slug}"


def told(one: Procedure) -> Iterator[str]:
    """A procedure with its steps and sessions, a line each."""
    yield line_of(one)
    yield f"time on film: {clock(median(version.seconds for version in one.versions))} (median)"
    for number, stage in enumerate(one.stages, 1):
        yield from _stage(one, stage, number)
    for at, version in enumerate(one.versions):
        pinned = ", pinned" if at == one.pinned else ""
        steps = ", ".join(str(step.number) for step in version.steps)
        yield f"  {version.work.slug}: its steps {steps}, {clock(version.seconds)} on film{pinned}"


def _stage(one: Procedure, stage: Stage, number: int) -> Iterator[str]:
    share = f"  [{stage.versions} of {len(one.versions)}]" if len(one.versions) > 1 else ""
    yield f"{number:>4}  {stage.typical.deed.text}{share}"
    owned = [(one.versions[doing.version].work, told) for doing in stage.doings for told in doing.told]
    for measured in of_step(owned, "step"):
        for tally in measured.tallies:
            median = with_other(tally.median, tally.median_other)
            span = f", {tally.span}" if tally.number > 1 else ""
            figures = count(tally.number, "figure")
            yield f"        {measured.what}, {tally.phase}: {median}{span}; {figures}"
