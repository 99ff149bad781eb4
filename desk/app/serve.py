"""Serves the local app on the loopback address until it is told to end."""

from __future__ import annotations

import logging
import socket
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from types import FrameType

import uvicorn
from starlette.types import ASGIApp

from capture.errors import SpokeshaveError
from desk.app.safety.entrance import KEY, new_key

LOOPBACK = "127.0.0.1"

_LAST_ANSWERS = 1
"""Seconds that answers under way get at the end; a film being played never ends by itself."""


class PortError(SpokeshaveError):
    """A port that can't be listened on."""

    def __init__(self, port: int, problem: str) -> None:
        self.port = port
        super().__init__(f"port {port}: {problem}; name another with --port, or none to take a free one")


def serve(build: Callable[[str, int], ASGIApp], port: int, opened: Callable[[str], None]) -> None:
    """Serve `build(key, port)` until SIGTERM or Ctrl-C, then return.

    `port` 0 takes a free one. `opened` is given the address, with this run's key, once the server answers. Raises
    `PortError` where the port is taken or forbidden.
    """
    key = new_key()
    with _listening(port) as listener:
        number = listener.getsockname()[1]
        config = uvicorn.Config(
            build(key, number),
            log_config=None,
            access_log=False,
            server_header=False,
            date_header=False,
            lifespan="off",
            ws="none",
            timeout_graceful_shutdown=_LAST_ANSWERS,
        )
        logging.getLogger("uvicorn.error").addFilter(_worth_telling)
        _Server(config, lambda: opened(f"http://{LOOPBACK}:{number}/?{KEY}={key}")).run(sockets=[listener])


@contextmanager
def _listening(port: int) -> Iterator[socket.socket]:
    listener = socket.socket(socket.AF_INET, socket.SOCK_STREAM)
    try:
        # A page that is open goes on after a restart on the same port, also where the last run was killed.
        listener.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
        try:
            listener.bind((LOOPBACK, port))
        except OSError as error:
            raise PortError(port, (error.strerror or str(error)).lower()) from error
        yield listener
    finally:
        listener.close()


def _worth_telling(entry: logging.LogRecord) -> bool:
    """False for the note that a film was still being played when the server was told to end."""
    return not entry.getMessage().startswith("Cancel ")


class _Server(uvicorn.Server):
    """Tells when it answers, and ends with the command that started it still in charge.

    Uvicorn raises the signal that ended it once more, which would end the command with a signal's exit code.
    """

    def __init__(self, config: uvicorn.Config, opened: Callable[[], None]) -> None:
        super().__init__(config)
        self._opened = opened

    async def startup(self, sockets: list[socket.socket] | None = None) -> None:
        """Begin to listen, then tell."""
        await super().startup(sockets)
        if not self.should_exit:
            self._opened()

    def handle_exit(self, sig: int, frame: FrameType | None) -> None:  # noqa: ARG002
        """End; a second signal does not wait for answers under way."""
        self.force_exit = self.should_exit
        self.should_exit = True
