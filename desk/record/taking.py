"""Answers of the capture page while a recording is made: begin, pieces, marks, stills, end."""

from __future__ import annotations

from starlette.concurrency import run_in_threadpool
from starlette.requests import Request
from starlette.responses import JSONResponse, Response
from starlette.routing import Route

from capture.recording import keep_marks, keep_still, kind_of
from desk.record.asked import AskedError, Begin, End, Marks, read, second_of
from desk.record.bench import Bench, settings_of
from desk.record.views import finished_view, room_view
from extract.trade import trade_names


def taking_routes(bench: Bench) -> list[Route]:
    """Their addresses."""

    async def begin(request: Request) -> Response:
        asked = await read(request, Begin)
        kind = kind_of(asked.mime)
        if kind is None:
            raise AskedError(f"this browser records {asked.mime!r}, which can't be kept; use another browser")
        if asked.trade and asked.trade not in trade_names():
            raise AskedError(f"there is no trade {asked.trade!r}")
        settings = settings_of(asked.title, asked.subject, asked.trade)
        session = await run_in_threadpool(bench.begin, settings, kind)
        return JSONResponse({"slug": session.slug, "title": settings.title, "next": 0, **_room(bench, session.slug)})

    async def piece(request: Request) -> Response:
        slug, number = request.path_params["slug"], request.path_params["number"]
        content, second = await request.body(), second_of(request)
        wanted = await run_in_threadpool(bench.add, slug, number, content, second)
        return JSONResponse({"next": wanted, **_room(bench, slug)})

    async def marks(request: Request) -> Response:
        asked = await read(request, Marks)
        session = await run_in_threadpool(bench.session, request.path_params["slug"])
        await run_in_threadpool(keep_marks, session.folder, asked.marks)
        return JSONResponse({"marks": len(asked.marks)})

    async def still(request: Request) -> Response:
        session = await run_in_threadpool(bench.session, request.path_params["slug"])
        path = await run_in_threadpool(keep_still, session.folder, await request.body(), second_of(request))
        return JSONResponse({"name": path.name})

    async def end(request: Request) -> Response:
        asked = await read(request, End)
        session = await run_in_threadpool(bench.session, request.path_params["slug"])
        view = await run_in_threadpool(
            lambda: finished_view(session, bench.end(session.slug, asked.second), bench.shop.root)
        )
        return JSONResponse(view)

    one = "/sessions/{slug}"
    return [
        Route("/begin", begin, methods=["POST"]),
        Route(one + "/pieces/{number:int}", piece, methods=["POST"]),
        Route(one + "/marks", marks, methods=["POST"]),
        Route(one + "/stills", still, methods=["POST"]),
        Route(one + "/end", end, methods=["POST"]),
    ]


def _room(bench: Bench, slug: str) -> dict[str, object]:
    return {"room": room_view(bench.room_left(slug))}
