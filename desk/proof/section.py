"""The proof page as a section of the local app: its addresses and what answers them."""

from __future__ import annotations

from pathlib import Path

from starlette.requests import Request
from starlette.responses import Response
from starlette.routing import Route

from capture.shop import Shop
from desk.app import Section
from desk.app.pages import Pages
from desk.proof.sessions import sessions_at_work

_HERE = Path(__file__).parent


def proof_section(shop: Shop) -> Section:
    """The proof page over one shop."""
    pages = Pages(_HERE / "templates")

    def sessions(_: Request) -> Response:
        return pages.answer("sessions.html", shop=shop.settings, sessions=sessions_at_work(shop))

    return Section("proof", "Proof", [Route("/", sessions)], _HERE / "assets")
