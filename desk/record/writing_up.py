"""Writes sessions up in the background, one after the other, each in a process of its own.

A process, so that a recording under way never waits for the speech model, and its memory is given back.
"""

from __future__ import annotations

import multiprocessing
import signal
from concurrent.futures import ThreadPoolExecutor
from contextlib import suppress
from dataclasses import asdict, dataclass
from multiprocessing.connection import Connection
from pathlib import Path
from threading import Lock
from typing import Any, Literal

from capture.errors import SpokeshaveError
from desk.work import Hearing

_TOLD_EVERY = 0.5
"""Seconds of recording between two reports."""


@dataclass(frozen=True, slots=True)
class Progress:
    """How far a session is."""

    state: Literal["waiting", "hearing", "extracting", "done", "failed"]
    done: float = 0.0
    """Seconds of the recording that were heard."""
    total: float = 0.0
    """Seconds of it in all; 0 where that is not known yet."""
    lines: tuple[str, ...] = ()
    """What a person should know: what needs them, or why it failed."""

    def as_json(self) -> dict[str, Any]:
        """For the page."""
        return asdict(self)


class WritingUp:
    """The sessions that wait, are being written up, or are done, by the names of their folders."""

    def __init__(self, shop_folder: Path, hearing: Hearing) -> None:
        self._shop_folder = shop_folder
        self._hearing = hearing
        self._progress: dict[str, Progress] = {}
        self._lock = Lock()
        self._one_by_one = ThreadPoolExecutor(max_workers=1, thread_name_prefix="write-up")
        self._at_work: multiprocessing.process.BaseProcess | None = None
        self._stopped = False

    def start(self, slug: str) -> Progress:
        """Write a session up, unless that is under way; gives how far it is."""
        with self._lock:
            now = self._progress.get(slug)
            if now is None or now.state in ("done", "failed"):
                now = self._progress[slug] = Progress("waiting")
                self._one_by_one.submit(self._write_up, slug)
            return now

    def progress(self, slug: str) -> Progress | None:
        """How far a session is; null where it was not started in this run."""
        with self._lock:
            return self._progress.get(slug)

    def stop(self) -> None:
        """Stop what is under way; the same session goes on from there another time."""
        with self._lock:
            self._stopped = True
            if self._at_work is not None:
                self._at_work.terminate()
        self._one_by_one.shutdown(cancel_futures=True)

    def _write_up(self, slug: str) -> None:
        context = multiprocessing.get_context("spawn")
        here, there = context.Pipe(duplex=False)
        process = context.Process(target=_work, args=(there, self._shop_folder, slug, self._hearing), daemon=True)
        with self._lock:
            if self._stopped:
                return
            process.start()
            self._at_work = process
        there.close()
        last = Progress("hearing")
        try:
            while True:
                self._set(slug, last)
                last = here.recv()
        except (EOFError, OSError):
            process.join()
        if last.state not in ("done", "failed"):
            problem = f"writing up was broken off (exit code {process.exitcode}); start it again to go on from there"
            self._set(slug, Progress("failed", lines=(problem,)))

    def _set(self, slug: str, progress: Progress) -> None:
        with self._lock:
            self._progress[slug] = progress


def _work(there: Connection, shop_folder: Path, slug: str, hearing: Hearing) -> None:
    """The job, in its own process."""
    from capture.recording import read_marks
    from capture.shop import Shop
    from desk.report import marked, needs_a_person
    from desk.work import write_up_session

    # Ctrl-C in the terminal is for the server, which then stops this.
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    told = -_TOLD_EVERY

    def tell(progress: Progress) -> None:
        # Where the server was killed, nobody listens, and the job is done all the same.
        with suppress(OSError):
            there.send(progress)

    def report(done: float, total: float) -> None:
        nonlocal told
        if done - told >= _TOLD_EVERY or done >= total:
            told = done
            tell(Progress("extracting" if done >= total else "hearing", done, total))

    try:
        shop = Shop.open(shop_folder)
        session = shop.session(slug)
        written = write_up_session(session, shop, hearing, report)
        lines = (*written.warnings, *marked(read_marks(session.folder)), *needs_a_person(written.record))
        tell(Progress("done", lines=lines))
    except SpokeshaveError as error:
        tell(Progress("failed", lines=(str(error),)))
