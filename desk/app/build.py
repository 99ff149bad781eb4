"""Puts the local app together: the sections' routes behind one table of safety rules."""

from __future__ import annotations

from collections.abc import Sequence

from starlette.applications import Starlette
from starlette.middleware import Middleware
from starlette.requests import Request
from starlette.responses import JSONResponse, RedirectResponse, Response
from starlette.routing import BaseRoute, Mount, Route

from capture.errors import SpokeshaveError
from desk.app.files import SHARED, Files, files_in
from desk.app.safety.bounds import BoundedBodies
from desk.app.safety.entrance import Entrance
from desk.app.safety.headers import SafeHeaders
from desk.app.safety.host import OwnHostOnly
from desk.app.safety.origin import OwnPagesOnly
from desk.app.section import Section


def make_app(sections: Sequence[Section], key: str, port: int, start: str = "") -> Starlette:
    """The app with these sections, for one run with `key` on `port`.

    `start` is the path that `/` leads to; the first section's front page where it is empty.
    """
    start = start or f"/{sections[0].name}/"
    safety = [
        Middleware(SafeHeaders, sections=sections),
        Middleware(OwnHostOnly, port=port),
        Middleware(OwnPagesOnly, port=port),
        Middleware(Entrance, key=key, port=port),
        Middleware(BoundedBodies, largest={section.name: section.largest_body for section in sections}),
    ]

    def front(_: Request) -> Response:
        return RedirectResponse(start, status_code=303)

    routes: list[BaseRoute] = [Route("/", front), Mount("/assets", Files(SHARED))]
    for section in sections:
        routes.append(Mount(f"/{section.name}/assets", Files(files_in(section.assets))))
        routes.append(Mount(f"/{section.name}", routes=list(section.routes)))
    return Starlette(routes=routes, middleware=safety, exception_handlers={SpokeshaveError: _one_line})


def _one_line(_: Request, error: Exception) -> Response:
    """What a person can mend is told in the page, in the words that the terminal would use."""
    return JSONResponse({"problem": str(error)}, status_code=409)
