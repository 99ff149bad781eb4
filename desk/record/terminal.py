"""`spokeshave record --mic`: sound from a microphone of this machine, without a browser."""

from __future__ import annotations

import sys
from contextlib import suppress
from pathlib import Path

import click
from rich.live import Live
from rich.text import Text

from capture.errors import ShopError
from capture.recording import Finished, Mark, came_to_nothing, cut_off, finish, keep_marks, kind_of, room_for
from capture.recording.level import WORDS, bounds
from capture.recording.microphone import SoundInput, open_microphone
from capture.recording.room import Free, free_bytes
from capture.recording.sound_file import Heard, record_sound
from capture.shop import Session, Shop
from capture.timecode import clock
from desk.console import console, progress
from desk.record.bench import settings_of
from desk.record.command import tell_cut_off
from desk.record.keyboard import Pressed, keys
from desk.record.section import Prefilled
from desk.record.views import command_for
from desk.work import Hearing

_BAR = 30
"""Characters of the level."""


def record_in_terminal(shop_folder: Path, named: str, prefilled: Prefilled, hearing: Hearing) -> None:
    """Record until Enter or Ctrl-C; the space bar marks. Raises `MicrophoneError`, `ShopError`."""
    with open_microphone(named) as source:
        shop = Shop.open_or_create(shop_folder)
        tell_cut_off(cut_off(shop), shop)
        done = record(shop, source, prefilled)
    if done is None:
        console.print("Nothing was recorded, so nothing was kept.")
        return
    session, finished = done
    click.echo(finished.file)
    console.print(f"Recorded {clock(finished.seconds)}.", markup=False)
    if sys.stdin.isatty() and click.confirm("Write it up now?", default=True, err=True):
        write_up(session, shop, hearing)
    else:
        console.print(f"Write it up: {command_for(session, shop.root)}", markup=False)


def record(
    shop: Shop, source: SoundInput, prefilled: Prefilled, free: Free = free_bytes
) -> tuple[Session, Finished] | None:
    """One session recorded from `source`; null where nothing came. Raises `ShopError`, and what `source` raises."""
    kind = kind_of("audio/wav")
    if kind is None or room_for(shop.root, kind.rate, free).state == "none":
        raise ShopError(shop.root, "the disk has no room for a recording", "make room on it, then begin again")
    settings = settings_of(prefilled.title, prefilled.subject, prefilled.trade)
    session = shop.add_session(settings.model_copy(update={"recording": f"recording{kind.ending}"}))
    with session.writing():
        with keys() as pressed, Live(console=console, refresh_per_second=10, transient=True) as live:
            at_work = _AtWork(session, pressed, live)
            with suppress(KeyboardInterrupt):
                _, why = record_sound(session.folder, source, at_work.go_on, free)
                at_work.why = why
        if at_work.why:
            console.print(at_work.why, markup=False)
        finished = finish(session.folder, free)
        nothing = came_to_nothing(session.folder)
    if nothing or finished is None or not finished.seconds:
        shop.remove(session)
        return None
    return session, finished


def write_up(session: Session, shop: Shop, hearing: Hearing) -> None:
    """Write the session up, with its progress and its report in the terminal."""
    from desk.report import report_session
    from desk.work import write_up_session

    with progress("Hearing") as report:
        done = write_up_session(session, shop, hearing, report)
    report_session(console, done)


class _AtWork:
    """Looks at the keys, keeps the marks, and shows clock and level."""

    def __init__(self, session: Session, pressed: Pressed, live: Live) -> None:
        self._session = session
        self._pressed = pressed
        self._live = live
        self._marks: tuple[Mark, ...] = ()
        self.why = ""

    def go_on(self, heard: Heard) -> bool:
        """False once Enter was pressed."""
        key = self._pressed()
        if key == " ":
            self._marks = (*self._marks, Mark(second=round(heard.second, 1)))
            keep_marks(self._session.folder, self._marks)
        self._live.update(self._line(heard))
        return key not in ("\n", "\r")

    def _line(self, heard: Heard) -> Text:
        share = min(max(1 - heard.power / bounds().scale_from, 0.0), 1.0)
        bar = ("█" * round(share * _BAR)).ljust(_BAR, "·")
        marked = f"  {len(self._marks)} marked" if self._marks else ""
        words = heard.room.line or WORDS[heard.verdict]
        style = "" if heard.verdict == "good" and not heard.room.line else "bold"
        keys_line = "Enter ends, space marks."
        return Text.assemble((f"{clock(heard.second)} ", "bold"), f"▕{bar}▏ ", (words, style), f"{marked}  {keys_line}")
