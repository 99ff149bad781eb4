"""Prints files anew where what they are made from has changed, and puts the last edition's in place elsewhere."""

from __future__ import annotations

import os
import stat
from collections.abc import Callable, Mapping
from pathlib import Path
from typing import Any

from publish.presswork.store import Printed, Store
from publish.presswork.sums import sum_of
from publish.staging import Staging

Texts = Mapping[str, str | bytes]
"""Files by their name on the site."""


class Press:
    """One edition of the site, from the store's knowledge of the last one."""

    def __init__(self, staging: Staging, store: Store, public: Path) -> None:
        self._staging = staging
        self._store = store
        self._public = public
        self._last = store.printed()
        self._now: dict[str, Printed] = {}
        self.anew = 0
        """Files that were printed anew."""

    def files(self, name: str, total: str, make: Callable[[], tuple[Texts, Any]]) -> Any:
        """Files that are made together from what `total` is the sum of; gives what is to be known of them.

        `make` is only called where that is another sum than the last time, or where a file of the last edition is gone
        or was changed by hand. It gives the files and what to know of them.
        """
        last = self._last.get(name)
        if last is not None and last.sum == total:
            numbers = [self._stands(*one) for one in last.files.items()]
            if all(numbers):
                for file, number in zip(last.files, numbers, strict=True):
                    self._staging.keep(file, number)
                self._now[name] = last
                return last.more
        texts, more = make()
        files = {file: self._print(file, text) for file, text in texts.items()}
        self._now[name] = Printed(total, files, more)
        return more

    def page(self, name: str, total: str, make: Callable[[], str | bytes]) -> None:
        """One file that is made from what `total` is the sum of."""
        self.files(name, total, lambda: ({name: make()}, None))

    def close(self) -> None:
        """Tell the store what stands now, once the new site is in its place."""
        changed = {name: self._stamped(one) for name, one in self._now.items() if self._last.get(name) is not one}
        self._store.put_printed(changed, self._last.keys() - self._now.keys())

    def _print(self, file: str, text: str | bytes) -> tuple[int, int, str]:
        data = text.encode() if isinstance(text, str) else text
        self._staging.write(file, data)
        self.anew += 1
        return len(data), 0, sum_of(data)

    def _stamped(self, one: Printed) -> Printed:
        """With the times at which the files were written, by which they are known again without being read."""
        files = {file: (size, self._time(file), total) for file, (size, _, total) in one.files.items()}
        return Printed(one.sum, files, one.more)

    def _time(self, file: str) -> int:
        return (self._public / file).stat().st_mtime_ns

    def _stands(self, file: str, known: tuple[int, int, str]) -> int:
        """The number on the disk of the last edition's file, where it is as it was printed; else 0.

        By size and time, or, at another time, by its bytes.
        """
        path, (size, time, total) = f"{self._public}/{file}", known
        try:
            seen = os.lstat(path)
            if seen.st_size != size or not stat.S_ISREG(seen.st_mode):
                return 0
            return seen.st_ino if seen.st_mtime_ns == time or sum_of(Path(path).read_bytes()) == total else 0
        except OSError:
            return 0
