"""Writes a site beside the last good one, then swaps the two.

Whoever opens the site while it is being made, or after a publish that was cut short, sees the last good one whole.
Where the disk has hard links, the folder that was swapped out stays beside the site as a spare, the same file for file:
the next site is made in it, so that only what changed is touched.
"""

from __future__ import annotations

import os
import shutil
from collections.abc import Iterator, Sequence
from contextlib import contextmanager, suppress
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
        self._found: dict[str, tuple[str, int]] = {}
        """What the spare has and nobody claimed yet, by folded name: name and number on the disk."""
        self._fresh: list[str] = []
        """Files that the spare had otherwise, or not at all."""
        self._unsynced: list[str] = []
        self._links = True
        """The disk has hard links, as far as is known."""

    def write(self, name: str, content: str | bytes) -> None:
        """Write a file of the site. Raises `WrittenTwiceError` where it was written before."""
        data = content.encode() if isinstance(content, str) else content
        self._claim(name)
        with self._cleared(name).open("xb") as file:
            file.write(data)
        self._unsynced.append(name)

    def place(self, name: str, source: Path) -> None:
        """Put a large file into the site without reading it: by hard link where the disk can.

        Where it can't, the copy of the last publish is carried over if it is unchanged, else the file is copied. Two
        files of the same size and time of change are taken as unchanged.
        """
        known = self._claim(name)
        if known and known == source.stat().st_ino:
            return
        target, source = self._cleared(name), source.resolve()
        try:
            os.link(source, target)
        except OSError:
            self._links = False
            if _unchanged(source, self._public / name):
                self._carried.append(name)
            else:
                shutil.copy2(source, target)

    def keep(self, name: str, number: int = 0) -> None:
        """Put a file of the last site into the new one as it is: by hard link where the disk can, else as a copy.

        `number` is its number on the disk, where that is known.
        """
        known, former = self._claim(name), f"{self._public}/{name}"
        if known and known == (number or os.lstat(former).st_ino):
            return
        target = self._cleared(name)
        try:
            os.link(former, target)
        except OSError:
            self._links = False
            shutil.copy2(former, target)

    def begin(self) -> None:
        """Mend what a publish that was cut short left behind, and start with the spare, or with an empty folder."""
        if self._old.exists() and not self._public.exists():
            self._old.rename(self._public)
        _remove(self._new)
        if self._old.exists():
            self._give_back()
            self._old.rename(self._new)
            self._found = {name.casefold(): (name, number) for name, number in _files(self._new)}
        else:
            self._new.mkdir(parents=True)

    def swap(self) -> None:
        """Put the new site in the place of the old one."""
        gone = [name for name, _ in self._found.values()]
        _take_away(self._new, gone)
        # One behind the other at the end: the disk's journal then takes them together.
        for name in self._unsynced:
            _sync(self._new / name)
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
        self._give_back()
        self._keep_spare(gone)

    def discard(self) -> None:
        """Take away a site that came to nothing."""
        _remove(self._new)

    def _claim(self, name: str) -> int:
        """The number on the disk of the file of this name that the spare has; 0 where it has none."""
        key = name.casefold()
        if key in self._taken:
            raise WrittenTwiceError(self._public / name)
        self._taken.add(key)
        known, number = self._found.pop(key, ("", 0))
        if known in ("", name):
            return number
        _take_away(self._new, [known])
        return 0

    def _cleared(self, name: str) -> Path:
        """The place of a file, where nothing stands."""
        self._fresh.append(name)
        return _cleared(self._new, name, self._made)

    def _give_back(self) -> None:
        """Give the new site what a person put at the top of the former one, such as the file that names a host."""
        for entry in self._old.iterdir() if self._old.exists() else ():
            if entry.name not in SITE_NAMES and not (self._public / entry.name).exists():
                entry.rename(self._public / entry.name)

    def _keep_spare(self, gone: list[str]) -> None:
        """Make of the former site a spare of the new one; there is none where the disk has no hard links."""
        try:
            if not self._links:
                raise OSError
            _take_away(self._old, gone)
            made: set[str] = set()
            for name in self._fresh:
                os.link(f"{self._public}/{name}", _cleared(self._old, name, made))
        except OSError:
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


def _files(folder: Path) -> Iterator[tuple[str, int]]:
    """Every file below a folder by its name from there, with its number on the disk."""
    left = [("", str(folder))]
    while left:
        name, path = left.pop()
        with os.scandir(path) as found:
            for entry in found:
                if entry.is_dir(follow_symlinks=False):
                    left.append((f"{name}{entry.name}/", entry.path))
                else:
                    yield f"{name}{entry.name}", entry.inode()


def _take_away(folder: Path, names: Sequence[str]) -> None:
    """Take files away, and folders that are empty then."""
    for name in names:
        path = folder / name
        with suppress(FileNotFoundError, NotADirectoryError, IsADirectoryError):
            path.unlink()
        with suppress(OSError):
            while (path := path.parent) != folder:
                path.rmdir()


def _cleared(folder: Path, name: str, made: set[str]) -> Path:
    """The place of a file below a folder, its own folder made and what stood there taken away."""
    path = folder / name
    above = name.rpartition("/")[0]
    if above not in made:
        _make(folder, path.parent)
        made.add(above)
    try:
        path.unlink()
    except FileNotFoundError:
        pass
    except OSError:
        if not path.is_dir():
            raise
        shutil.rmtree(path)
    return path


def _make(folder: Path, wanted: Path) -> None:
    """Make a folder below another one, a file that stands in its way taken away."""
    try:
        wanted.mkdir(parents=True, exist_ok=True)
    except (FileExistsError, NotADirectoryError):
        for one in (*wanted.parents, wanted):
            if one.is_relative_to(folder) and one.is_file():
                one.unlink()
        wanted.mkdir(parents=True, exist_ok=True)


def _sync(path: Path) -> None:
    file = os.open(path, os.O_RDONLY)
    try:
        os.fsync(file)
    finally:
        os.close(file)
