"""How a request is refused: one line, in plain text, that nothing in the request can shape."""

from __future__ import annotations

from starlette.responses import PlainTextResponse, Response


def refusal(status: int, line: str) -> Response:
    """A short answer that says why, and what to do."""
    return PlainTextResponse(f"{line}\n", status_code=status)
