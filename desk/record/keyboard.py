"""Single keys from the terminal, without waiting for Enter and without stopping for them."""

from __future__ import annotations

import sys
from collections.abc import Callable, Iterator
from contextlib import contextmanager

Pressed = Callable[[], str]
"""The key that was pressed since it was last asked; empty where there was none."""

if sys.platform == "win32":
    import msvcrt

    @contextmanager
    def keys() -> Iterator[Pressed]:
        """Keys, as they are pressed."""
        yield lambda: msvcrt.getwch() if msvcrt.kbhit() else ""

else:
    import os
    import select
    import termios
    import tty

    @contextmanager
    def keys() -> Iterator[Pressed]:
        """Keys, as they are pressed; Ctrl-C stays what it is."""
        source = sys.stdin.fileno()

        def pressed() -> str:
            ready, _, _ = select.select([source], [], [], 0)
            return os.read(source, 1).decode(errors="replace") if ready else ""

        if not sys.stdin.isatty():
            yield pressed
            return
        before = termios.tcgetattr(source)
        try:
            tty.setcbreak(source)
            yield pressed
        finally:
            termios.tcsetattr(source, termios.TCSADRAIN, before)
