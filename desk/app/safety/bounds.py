"""No request may carry more than its page has use for."""

from __future__ import annotations

from collections.abc import Mapping

from starlette.datastructures import Headers
from starlette.exceptions import HTTPException
from starlette.types import ASGIApp, Message, Receive, Scope, Send

from desk.app.safety.refusal import refusal
from desk.app.section import SMALL_BODY


class BoundedBodies:
    """Refuses a body that is too large: by its declared length at once, else as soon as it has grown too large."""

    def __init__(self, app: ASGIApp, largest: Mapping[str, int]) -> None:
        self._app = app
        self._largest = largest
        """Bytes by the first part of the path."""

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Pass the request on, or refuse it."""
        if scope["type"] != "http":
            return await self._app(scope, receive, send)
        bound = self._largest.get(scope["path"].lstrip("/").split("/")[0], SMALL_BODY)
        declared = Headers(scope=scope).get("content-length", "0")
        if not declared.isascii() or not declared.isdigit() or int(declared) > bound:
            return await refusal(413, f"At most {bound} bytes a request.")(scope, receive, send)
        came = 0

        async def bounded() -> Message:
            nonlocal came
            message = await receive()
            came += len(message.get("body", b""))
            if came > bound:
                raise HTTPException(413, f"At most {bound} bytes a request.")
            return message

        return await self._app(scope, bounded, send)
