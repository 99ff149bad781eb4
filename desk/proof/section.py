"""The proof page as a section of the local app: its addresses and what answers them."""

from __future__ import annotations

from pathlib import Path
from threading import Thread
from urllib.parse import quote

from starlette.routing import Route

from capture.shop import Session, Shop
from desk.app import Section
from desk.app.pages import Pages
from desk.proof.answers import Answers
from desk.proof.work import Bench

_HERE = Path(__file__).parent
_FRAMED = {"galley/": "the page to be published, shown beside the rulings"}


def proof_section(shop: Shop, first: Session | None = None) -> Section:
    """The proof page over one shop. The session that is opened `first` is read while the browser starts."""
    answers = Answers(Bench(shop), Pages(_HERE / "templates"))
    if first is not None:
        Thread(target=answers.read_ahead, args=(first,), daemon=True).start()
    routes = [
        Route("/", answers.sessions),
        Route("/sessions/{slug}/", answers.session),
        Route("/sessions/{slug}/open", answers.open),
        Route("/sessions/{slug}/state", answers.state),
        Route("/sessions/{slug}/rulings", answers.rulings, methods=["POST"]),
        Route("/sessions/{slug}/reads", answers.reads),
        Route("/sessions/{slug}/said", answers.said),
        Route("/sessions/{slug}/film", answers.film),
        Route("/sessions/{slug}/stills/{tenths:int}.jpg", answers.still),
        Route("/galley/sessions/{slug}/{name}", answers.galley),
        Route("/galley/sessions/{slug}/pictures/{name}", answers.picture),
        Route("/galley/sessions/{slug}/stills/{name}", answers.galley_still),
        Route("/galley/assets/{name}", answers.galley_asset),
    ]
    return Section("proof", "Proof", routes, _HERE / "assets", framed=_FRAMED)


def session_path(slug: str) -> str:
    """Where a session's proof page stands in the app."""
    return f"/proof/sessions/{quote(slug, safe='')}/"
