"""The capture page as a section of the local app: its addresses and what answers them."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

from starlette.concurrency import run_in_threadpool
from starlette.requests import Request
from starlette.responses import JSONResponse, Response
from starlette.routing import Route

from capture.recording.kinds import KINDS
from capture.recording.level import WORDS, bounds
from desk.app import Section
from desk.app.pages import Pages
from desk.record.asked import AskedError
from desk.record.bench import Bench
from desk.record.taking import taking_routes
from desk.record.views import cut_off_view, room_view
from desk.record.writing_up import WritingUp
from extract.trade import trade_names

LARGEST_PIECE = 4 * 1024 * 1024
"""Bytes a request: the page cuts what a stalled machine hands it at once into pieces of this size."""

_HERE = Path(__file__).parent


@dataclass(frozen=True, slots=True)
class Prefilled:
    """What the form begins with."""

    title: str = ""
    subject: str = ""
    trade: str = ""


def record_section(bench: Bench, writing_up: WritingUp, prefilled: Prefilled, command: str) -> Section:
    """The capture page over one shop. `command` is what starts this server again, for the person to type."""
    return Section(
        "record",
        "Record",
        [
            *_page_routes(bench, prefilled, command),
            *taking_routes(bench),
            *_write_up_routes(bench, writing_up),
        ],
        _HERE / "assets",
        largest_body=LARGEST_PIECE,
        features=frozenset({"microphone", "camera"}),
    )


def _page_routes(bench: Bench, prefilled: Prefilled, command: str) -> list[Route]:
    pages = Pages(_HERE / "templates")

    def page(_: Request) -> Response:
        sessions = bench.shop.sessions()
        subjects = sorted({one.settings.subject for one in sessions if one.settings.subject}, key=str.casefold)
        facts = {
            "largest": LARGEST_PIECE,
            "bounds": bounds().as_json(),
            "words": WORDS,
            "command": command,
            "kinds": [kind.mime for kind in KINDS],
        }
        return pages.answer(
            "record.html",
            shop=bench.shop.settings,
            subjects=subjects,
            trades=trade_names(),
            prefilled=prefilled,
            facts=facts,
        )

    def standing(_: Request) -> Response:
        film = next(kind for kind in KINDS if kind.film)
        sound = next(kind for kind in KINDS if not kind.film)
        return JSONResponse(
            {
                "cut_off": [cut_off_view(one, bench.shop.root) for one in bench.unended()],
                "room": {"sound": room_view(bench.room(sound)), "film": room_view(bench.room(film))},
            }
        )

    return [Route("/", page), Route("/standing", standing)]


def _write_up_routes(bench: Bench, writing_up: WritingUp) -> list[Route]:
    async def start(request: Request) -> Response:
        session = await run_in_threadpool(bench.session, request.path_params["slug"])
        if bench.is_recording(session.slug):
            raise AskedError("end the recording first")
        return JSONResponse(writing_up.start(session.slug).as_json())

    def progress(request: Request) -> Response:
        now = writing_up.progress(request.path_params["slug"])
        if now is None:
            raise AskedError("nobody asked to write this session up; press the button again")
        return JSONResponse(now.as_json())

    return [
        Route("/sessions/{slug}/writeup", start, methods=["POST"]),
        Route("/sessions/{slug}/writeup", progress, methods=["GET"]),
    ]
