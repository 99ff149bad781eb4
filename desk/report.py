"""Records and results as a person reads them in a terminal."""

from __future__ import annotations

from collections.abc import Iterable
from typing import TYPE_CHECKING

from rich.console import Console
from rich.table import Table
from rich.text import Text

from capture.recording.marks import read_marks
from desk.console import clock

if TYPE_CHECKING:
    from capture.recording.marks import Mark
    from desk.work import WrittenUp
    from extract.record import Finding, Measure, Record
    from extract.rulings import Proofed

_SCREEN = 20
"""Lines of a terminal that are left for what needs a person."""
_PHASES = {"as_found": "as found", "target": "aim", "as_left": "as left", "general": "rule of thumb"}


def report_session(console: Console, done: WrittenUp) -> None:
    """Where the page is, and what needs a person. Goes to standard error."""
    record = done.record
    console.print(Text(record.session.title, style="bold"))
    console.print(
        f"  {len(record.measures)} measures, {len(record.steps)} steps, {len(record.corrections)} corrections"
    )
    if done.proofed.in_force:
        console.print(f"  {rulings_line(done.proofed)}")
    for warning in done.warnings:
        console.print(f"  {warning}", markup=False)
    for line in (*marked(read_marks(done.session.folder)), *needs_a_person(record)):
        console.print(f"  {line}", markup=False)
    console.print(f"  page: {done.page}", markup=False)


def rulings_line(proofed: Proofed) -> str:
    """How many rulings of earlier proofing hold on to their items."""
    counts = ((proofed.kept, "kept"), (proofed.moved, "moved to where their words are now"))
    told = [f"{number} {what}" for number, what in counts if number]
    told += [f"{len(proofed.unplaced)} without a place"] if proofed.unplaced else []
    return f"rulings: {', '.join(told)}"


def marked(marks: Iterable[Mark]) -> list[str]:
    """One line for each moment that was marked while recording."""
    return [f"marked  {clock(one.second)}  {one.note or 'while recording'}" for one in marks]


def needs_a_person(record: Record) -> list[str]:
    """One line for each thing to settle or look up, the gravest first, each with its second."""
    stops = [one for one in record.findings if one.severity == "stop"]
    looks = [one for one in record.findings if one.severity == "look"]
    lines = [f"settle  {clock(one.start)}  {one.message}" for one in stops]
    lines += [f"look at {clock(one.start)}  {one.message}" for one in looks]
    lines += [f"look up {clock(one.start)}  {one.text}" for one in record.doubts]
    lines = list(dict.fromkeys(lines))
    # What must be settled is always told whole; the rest only as far as one screen goes.
    room = max(_SCREEN, len(stops))
    if len(lines) > room:
        lines[room:] = [f"and {len(lines) - room} more to look at on the proof page"]
    return lines or ["nothing needs you; read it through all the same"]


def print_record(record: Record) -> None:
    """A record as tables on standard output."""
    console = Console(highlight=False)
    console.print(_measures(record.measures))
    for title, rows in (
        ("Corrections", [(one.start, f"{one.withdraws.text} → {one.replacement}") for one in record.corrections]),
        ("Steps", [(one.start, f"{one.number}. {one.text}") for one in record.steps]),
        ("To settle or look at", [(one.start, _finding(one)) for one in record.findings]),
        ("Cautions", [(one.start, f"{one.text} [{one.source}]") for one in record.cautions]),
        ("To look up", [(one.start, one.text) for one in record.doubts]),
        ("Left for later", [(one.start, one.text) for one in record.follow_ups]),
    ):
        _list(console, title, rows)
    for title, named in (("Tools", record.tools), ("Materials", record.materials)):
        if named:
            console.print(Text(title, style="bold"), Text(", ".join(one.name for one in named)))


def _measures(measures: Iterable[Measure]) -> Table:
    table = Table(title="Measures", title_justify="left")
    for name in ("at", "figure", "what", "phase", "as said"):
        table.add_column(name)
    for one in measures:
        what = ", ".join(filter(None, (" of ".join(filter(None, (one.attribute, one.item))), one.where)))
        figure = Text(("about " if one.hedged else "") + one.display, style="" if one.stands else "strike")
        table.add_row(clock(one.start), figure, Text(what), _PHASES[one.phase], Text(one.quote))
    return table


def _finding(one: Finding) -> str:
    return f"{'settle' if one.severity == 'stop' else 'look'}: {one.message}"


def _list(console: Console, title: str, rows: list[tuple[float, str]]) -> None:
    if not rows:
        return
    console.print(Text(title, style="bold"))
    for start, text in rows:
        console.print(Text(f"  {clock(start):>7}  {text}"))
