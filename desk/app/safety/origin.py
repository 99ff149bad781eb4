"""Only the app's own pages may ask for anything but a page, and only they may change anything.

Browsers tell who asks: `Sec-Fetch-Site` (W3C Fetch Metadata) on every request, `Origin` (RFC 6454) on those that change
something. A header of our own besides can't be set by a form, and by a script of another site only with a leave that
this server never gives (CORS).
"""

from __future__ import annotations

from starlette.datastructures import Headers
from starlette.types import ASGIApp, Receive, Scope, Send

from desk.app.safety.refusal import refusal

OWN_HEADER = "spokeshave-page"
"""Header that every changing request must carry; any value will do."""

_READING = frozenset({"GET", "HEAD"})


class OwnPagesOnly:
    """Refuses what another site's page asks for, and changes that don't prove to come from our own."""

    def __init__(self, app: ASGIApp, port: int) -> None:
        self._app = app
        self._origins = frozenset({f"http://127.0.0.1:{port}", f"http://localhost:{port}"})

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Pass the request on, or refuse it."""
        if scope["type"] != "http":
            if scope["type"] == "lifespan":
                await self._app(scope, receive, send)
            return None
        headers = Headers(scope=scope)
        allowed = self._may_read(headers) if scope["method"] in _READING else self._may_change(headers)
        if not allowed:
            return await refusal(403, "Only the pages of this server may ask for that.")(scope, receive, send)
        return await self._app(scope, receive, send)

    def _may_read(self, headers: Headers) -> bool:
        site = headers.get("sec-fetch-site", "none")
        return site in ("same-origin", "none") or headers.get("sec-fetch-dest") == "document"

    def _may_change(self, headers: Headers) -> bool:
        if OWN_HEADER not in headers:
            return False
        if headers.get("origin") not in self._origins:
            return False
        return headers.get("sec-fetch-site", "same-origin") == "same-origin"
