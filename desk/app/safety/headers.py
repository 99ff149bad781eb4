"""What every answer carries, so that a page can load nothing, run nothing and be framed by nothing but this server.

Content Security Policy Level 3 (W3C), Fetch's `Cross-Origin-Resource-Policy`, HTML's opener and embedder policies,
Referrer Policy, Permissions Policy (all W3C or WHATWG).
"""

from __future__ import annotations

from collections.abc import Iterable

from starlette.datastructures import MutableHeaders
from starlette.types import ASGIApp, Message, Receive, Scope, Send

from desk.app.section import Section

_POLICY = {
    "default-src": "'none'",
    "script-src": "'self'",
    "style-src": "'self'",
    "img-src": "'self'",
    "media-src": "'self' blob:",
    "connect-src": "'self'",
    "frame-src": "'self'",
    "base-uri": "'none'",
    "form-action": "'none'",
    "object-src": "'none'",
    "require-trusted-types-for": "'script'",
}
_FIXED = {
    "x-content-type-options": "nosniff",
    "referrer-policy": "no-referrer",
    "cross-origin-opener-policy": "same-origin",
    "cross-origin-embedder-policy": "require-corp",
    "cross-origin-resource-policy": "same-origin",
}
_FEATURES = ("camera", "display-capture", "geolocation", "microphone", "payment", "usb")


class SafeHeaders:
    """Sets the headers on every answer, refusals among them."""

    def __init__(self, app: ASGIApp, sections: Iterable[Section]) -> None:
        self._app = app
        self._sections = {section.name: section for section in sections}

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Pass the request on, and set the headers of its answer."""
        if scope["type"] != "http":
            return await self._app(scope, receive, send)
        name, _, below = scope["path"].lstrip("/").partition("/")
        section = self._sections.get(name)
        framed = section is not None and any(below.startswith(path) for path in section.framed)
        added = {
            **_FIXED,
            "content-security-policy": content_policy(framed=framed),
            "permissions-policy": _permissions(section),
        }

        async def sending(message: Message) -> None:
            if message["type"] == "http.response.start":
                headers = MutableHeaders(scope=message)
                headers.update(added)
                headers.setdefault("cache-control", "no-store")
            await send(message)

        return await self._app(scope, receive, sending)


def content_policy(*, framed: bool) -> str:
    """The Content-Security-Policy; `framed` lets our own pages show the answer in a frame."""
    rules = {**_POLICY, "frame-ancestors": "'self'" if framed else "'none'"}
    return "; ".join(f"{name} {value}" for name, value in rules.items())


def _permissions(section: Section | None) -> str:
    used = section.features if section else frozenset()
    return ", ".join(f"{name}=({'self' if name in used else ''})" for name in _FEATURES)
