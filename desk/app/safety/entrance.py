"""The key of this run: in the address once, then in a cookie that scripts can't read and other sites can't send."""

from __future__ import annotations

import secrets
from http.cookies import CookieError, SimpleCookie
from urllib.parse import parse_qsl, urlencode

from starlette.datastructures import Headers
from starlette.responses import RedirectResponse
from starlette.types import ASGIApp, Receive, Scope, Send

from desk.app.safety.refusal import refusal

KEY = "key"
"""Name of the parameter that carries the key in the first address."""


def new_key() -> str:
    """A key that can't be guessed: 256 bits from the system's source."""
    return secrets.token_urlsafe(32)


class Entrance:
    """Lets in who brings the key, and gives a cookie for it; refuses everybody else.

    Other programs of this machine, and other people's accounts on it, can reach a loopback port; they lack the key.
    """

    def __init__(self, app: ASGIApp, key: str, port: int) -> None:
        self._app = app
        self._key = key.encode()
        # Cookies know no ports: two shops proofed at the same time must not overwrite each other's.
        self._cookie = f"spokeshave-{port}"

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Pass the request on, or refuse it."""
        if scope["type"] == "lifespan":
            return await self._app(scope, receive, send)
        asked = parse_qsl(scope.get("query_string", b"").decode("latin-1"), keep_blank_values=True)
        if scope["type"] == "http" and scope["method"] == "GET":
            keys = [value for name, value in asked if name == KEY]
            if keys and self._fits(keys[-1]):
                rest = urlencode([(name, value) for name, value in asked if name != KEY])
                return await self._welcome(scope["path"], rest)(scope, receive, send)
        if not self._fits(_cookie(scope, self._cookie)):
            line = "This page opens by the address that `spokeshave` printed when it was started; open that one."
            return await refusal(403, line)(scope, receive, send)
        return await self._app(scope, receive, send)

    def _fits(self, offered: str) -> bool:
        return secrets.compare_digest(offered.encode("utf-8", "surrogateescape"), self._key)

    def _welcome(self, path: str, query: str) -> RedirectResponse:
        # One slash only: "//elsewhere" would lead to another server.
        target = "/" + path.lstrip("/\\")
        answer = RedirectResponse(f"{target}?{query}" if query else target, status_code=303)
        answer.set_cookie(self._cookie, self._key.decode(), httponly=True, samesite="strict", path="/")
        return answer


def _cookie(scope: Scope, name: str) -> str:
    cookies: SimpleCookie = SimpleCookie()
    try:
        cookies.load("; ".join(Headers(scope=scope).getlist("cookie")))
    except CookieError:
        return ""
    return cookies[name].value if name in cookies else ""
