"""Writes a site beside the last good one, then swaps the two.

Whoever opens the site while it is being made, or after a publish that was cut short, sees the last good one whole.
"""

from __future__ import annotations

import os
import shutil
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from capture.files import sync_folder
from publish.errors import PublishError, WrittenTwiceError

SITE_NAMES = frozenset(
    {
        "index.html", "errata.html", "notes.atom", "errata.atom", "assets", "schema", "sessions", "work", "figures",
        "kit", "search", "procedures",
    }
)  # fmt: skip
"""What stands at the top of a site; anything else there is a person's and is kept."""


class Staging:
    """A site being made in a folder beside `public`."""

    def __init__(self, public: Path) -> None:
        self._public = public
        self._new = public.with_name(f".{public.name}.new")
        self._old = public.with_name(f".{public.name}.old")
        self._taken: set[str] = set()
        self._made: set[str] = set()
        self._carried: list[str] = []

    def write(self, name: str, content: str | bytes) -> None:
        """Write a file of the site. Raises `WrittenTwiceError` where it was written before."""
        data = content.encode() if isinstance(content, str) else content
        with self._claim(name).open("xb") as file:
            file.write(data)
            file.flush()
            os.fsync(file.fileno())

    def place(self, name: str, source: Path) -> None:
        """Put a large file into the site without reading it: by hard link where the disk can.

        Where it can't, the copy of the last publish is carried over if it is unchanged, else the file is copied. Two
        files of the same size and time of change are taken as unchanged.
        """
        target, source = self._claim(name), source.resolve()
        try:
            os.link(source, target)
        except OSError:
            if _unchanged(source, self._public / name):
                self._carried.append(name)
            else:
                shutil.copy2(source, target)

    def keep(self, name: str) -> None:
        """Put a file of the last site into the new one as it is: by hard link where the disk can, else as a copy."""
        target, former = self._claimed(name), f"{self._public}/{name}"
        try:
            os.link(former, target)
        except OSError:
            shutil.copy2(former, target)

    def begin(self) -> None:
        """Mend what a publish that was cut short left behind, and start with an empty folder."""
        if self._old.exists() and not self._public.exists():
            self._old.rename(self._public)
        self._clear_old()
        _remove(self._new)
        self._new.mkdir(parents=True)

    def swap(self) -> None:
        """Put the new site in the place of the old one."""
        sync_folder(self._new)
        if self._public.exists():
            self._public.rename(self._old)
        try:
            self._new.rename(self._public)
        except BaseException:
            if self._old.exists() and not self._public.exists():
                self._old.rename(self._public)
            raise
        sync_folder(self._public.parent)
        for name in self._carried:
            (self._old / name).rename(self._public / name)
        self._clear_old()

    def discard(self) -> None:
        """Take away a site that came to nothing."""
        _remove(self._new)

    def _claim(self, name: str) -> Path:
        return Path(self._claimed(name))

    def _claimed(self, name: str) -> str:
        """The place of a file; as plain text, since there may be thousands."""
        key = name.casefold()
        if key in self._taken:
            raise WrittenTwiceError(self._public / name)
        self._taken.add(key)
        folder = name.rpartition("/")[0]
        if folder not in self._made:
            (self._new / folder).mkdir(parents=True, exist_ok=True)
            self._made.add(folder)
        return f"{self._new}/{name}"

    def _clear_old(self) -> None:
        """Remove the former site, but keep what a person put at its top, such as the file that names a host."""
        if not self._old.exists():
            return
        for entry in self._old.iterdir():
            if entry.name not in SITE_NAMES and not (self._public / entry.name).exists():
                entry.rename(self._public / entry.name)
        _remove(self._old)


@contextmanager
def staged(public: Path) -> Iterator[Staging]:
    """A staging folder that is swapped in at the end, or taken away where anything went wrong.

    Raises `PublishError` where the disk refuses.
    """
    staging = Staging(public)
    try:
        staging.begin()
        yield staging
        staging.swap()
    except OSError as error:
        staging.discard()
        problem = f"can't be written ({error.strerror or error})"
        raise PublishError(
            public, problem, "make room or mend the folder's permissions; the last site stands"
        ) from error
    except BaseException:
        staging.discard()
        raise


def _unchanged(source: Path, former: Path) -> bool:
    if not former.is_file():
        return False
    then, now = former.stat(), source.stat()
    return (then.st_size, then.st_mtime_ns) == (now.st_size, now.st_mtime_ns)


def _remove(folder: Path) -> None:
    if folder.exists():
        shutil.rmtree(folder)
