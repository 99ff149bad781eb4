"""Only requests that name this machine by its loopback address and port.

A page elsewhere can have its own name lead to 127.0.0.1 (DNS rebinding); the browser then sends that name as Host, and
is refused here. Status 421 is RFC 9110, section 15.5.20.
"""

from __future__ import annotations

from starlette.datastructures import Headers
from starlette.types import ASGIApp, Receive, Scope, Send

from desk.app.safety.refusal import refusal


class OwnHostOnly:
    """Refuses any Host but `127.0.0.1:PORT` and `localhost:PORT`."""

    def __init__(self, app: ASGIApp, port: int) -> None:
        self._app = app
        self._hosts = frozenset({f"127.0.0.1:{port}", f"localhost:{port}"})

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Pass the request on, or refuse it."""
        if scope["type"] == "lifespan":
            return await self._app(scope, receive, send)
        named = Headers(scope=scope).getlist("host")
        if len(named) != 1 or named[0].lower() not in self._hosts:
            return await refusal(421, "This server answers to its own loopback address alone.")(scope, receive, send)
        return await self._app(scope, receive, send)
