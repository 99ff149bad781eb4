"""The page as it would be published, with the rulings applied; made anew each time, written nowhere."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

from capture.shop import Session, Shop
from publish.gather import gather_session
from publish.page import make_page
from publish.render import Renderer
from publish.session import session_files, session_texts
from publish.standing import Standing


@dataclass(frozen=True, slots=True)
class Galley:
    """What would stand in the session's published folder."""

    texts: dict[str, str]
    """Files made of text, by name."""
    files: dict[str, Path]
    """The recording and pictures, by name, where they lie."""


def galley_of(shop: Shop, session: Session, standing: Standing) -> Galley:
    """The session's page and the files beside it. Links to other sessions of the same work are left out."""
    gathered = gather_session(session, standing)
    page = make_page(gathered.source, shop.settings)
    return Galley(session_texts(gathered, page, Renderer()), session_files(gathered))
