"""What a person sees in the terminal: all on standard error, so that standard output stays clean for data."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from contextlib import contextmanager

from rich.console import Console
from rich.progress import BarColumn, Progress, TaskProgressColumn, TextColumn, TimeRemainingColumn

Report = Callable[[float, float], None]
"""Called with seconds done and seconds in all."""

console = Console(stderr=True, highlight=False, soft_wrap=True)


@contextmanager
def progress(what: str) -> Iterator[Report]:
    """A bar with the time left, for work that is counted in seconds of recording."""
    columns = (
        TextColumn("{task.description}"),
        BarColumn(),
        TaskProgressColumn(),
        TextColumn("of {task.fields[length]},"),
        TimeRemainingColumn(),
        TextColumn("left"),
    )
    with Progress(*columns, console=console, transient=True, disable=not console.is_terminal) as bar:
        task = bar.add_task(what, total=None, length="…")

        def report(done: float, total: float) -> None:
            bar.update(task, completed=done, total=total, length=clock(total))

        yield report


@contextmanager
def sized(what: str) -> Iterator[Report]:
    """A bar for work that is counted in bytes."""
    columns = (
        TextColumn("{task.description}"),
        BarColumn(),
        TaskProgressColumn(),
        TimeRemainingColumn(),
        TextColumn("left"),
    )
    with Progress(*columns, console=console, transient=True, disable=not console.is_terminal) as bar:
        task = bar.add_task(what, total=None)

        def report(done: float, total: float) -> None:
            bar.update(task, completed=done, total=total)

        yield report


def printable(line: str) -> str:
    """A line with nothing in it that a terminal would obey."""
    return "".join(one if one.isprintable() else "\N{REPLACEMENT CHARACTER}" for one in line)


def clock(seconds: float) -> str:
    """Seconds as a person reads them on a player: 3:07, 1:02:40."""
    minutes, rest = divmod(int(seconds), 60)
    hours, minutes = divmod(minutes, 60)
    return f"{hours}:{minutes:02}:{rest:02}" if hours else f"{minutes}:{rest:02}"
