"""A recording being written: each piece is on the disk before it is answered for."""

from __future__ import annotations

import errno
import os
from contextlib import suppress
from pathlib import Path
from threading import Lock

from capture.errors import ShopError
from capture.files import sync_folder
from capture.recording.journal import (
    NAME,
    Ended,
    Header,
    Journal,
    Piece,
    append_line,
    begin_journal,
    read_journal,
    write_all,
)
from capture.recording.kinds import Kind

_NO_ROOM = frozenset({errno.ENOSPC, errno.EDQUOT, errno.EFBIG})


class TakeError(ShopError):
    """A recording that can't be written on; what was kept of it before stays."""


class Take:
    """The one writer of a session's recording.

    Pieces carry numbers from 0. A piece that comes twice is answered and not written again, one that comes too early is
    not taken: the answer is always the number of the piece that is wanted next. Safe to use from several threads.
    """

    def __init__(self, folder: Path, journal: Journal) -> None:
        self.folder = folder
        self.file = folder / journal.header.file
        self._lock = Lock()
        self._next = journal.pieces
        self._end = journal.end
        self._journal_size = journal.size
        self._second = journal.second
        flags = os.O_RDWR | getattr(os, "O_BINARY", 0)
        self._data = os.open(self.file, flags | os.O_CREAT, 0o666)
        self._lines = os.open(folder / NAME, flags)
        # What lies behind the last line of the journal was never answered for, and comes again.
        self._cut_back()

    @classmethod
    def begin(cls, folder: Path, kind: Kind, port: int = 0) -> Take:
        """A new recording in a session's folder. Raises `TakeError` where the disk refuses."""
        header = Header(file=f"recording{kind.ending}", port=port)
        try:
            begin_journal(folder, header)
            take = cls(folder, Journal(header, (), (folder / NAME).stat().st_size))
            sync_folder(folder)
            sync_folder(folder.parent)
        except OSError as error:
            raise _refused(folder, error) from error
        return take

    @classmethod
    def resume(cls, folder: Path) -> Take:
        """Go on with a recording that was cut off. Raises `TakeError` where there is none, or it was ended."""
        journal = read_journal(folder)
        if journal is None or journal.ended:
            raise TakeError(folder, "its recording was ended", "begin a new session")
        try:
            return cls(folder, journal)
        except OSError as error:
            raise _refused(folder, error) from error

    @property
    def next(self) -> int:
        """Number of the piece that is wanted next."""
        return self._next

    @property
    def size(self) -> int:
        """Bytes on the disk."""
        return self._end

    @property
    def second(self) -> float:
        """Second that the recording reaches, by the recorder's clock."""
        return self._second

    def add(self, number: int, content: bytes, second: float) -> int:
        """Take piece `number`, which reaches up to `second`; gives the number that is wanted next.

        When this returns a number above `number`, the disk has the piece. Raises `TakeError` where the disk refuses:
        the recording is then as it was before, and the piece may come again.
        """
        with self._lock:
            if number != self._next:
                return self._next
            line = Piece(piece=number, end=self._end + len(content), second=max(second, self._second))
            try:
                self._cut_back()
                write_all(self._data, content)
                os.fsync(self._data)
                append_line(self._lines, line)
            except OSError as error:
                # Half a piece takes room that the disk may lack; where even this is refused, the next begins here.
                with suppress(OSError):
                    self._cut_back()
                raise _refused(self.file, error) from error
            self._next, self._end, self._second = number + 1, line.end, line.second
            self._journal_size = os.lseek(self._lines, 0, os.SEEK_CUR)
            return self._next

    def end(self, second: float) -> None:
        """Say in the journal that the person ended it. Raises `TakeError` where the disk refuses."""
        with self._lock:
            try:
                append_line(self._lines, Ended(ended=max(second, self._second)))
            except OSError as error:
                raise _refused(self.file, error) from error

    def close(self) -> None:
        """Let go of the files."""
        with self._lock:
            os.close(self._data)
            os.close(self._lines)

    def _cut_back(self) -> None:
        for file, size in ((self._data, self._end), (self._lines, self._journal_size)):
            os.ftruncate(file, size)
            os.lseek(file, size, os.SEEK_SET)


def _refused(path: Path, error: OSError) -> TakeError:
    if error.errno in _NO_ROOM:
        return TakeError(path, "the disk is full", "make room on it; what was recorded so far is kept")
    return TakeError(path, f"can't be written ({error.strerror})", "mend it; what was recorded so far is kept")
