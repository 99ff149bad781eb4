"""The page as it would be published, with the rulings applied; made anew each time, written nowhere."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

from capture.shop import Session, Shop
from publish.captions import captions, chapters, plain_text
from publish.gather import gather_session
from publish.page import make_page
from publish.render import Renderer


@dataclass(frozen=True, slots=True)
class Galley:
    """What would stand in the session's published folder."""

    texts: dict[str, str]
    """Files made of text, by name."""
    files: dict[str, Path]
    """The recording and pictures, by name, where they lie."""


def galley_of(shop: Shop, session: Session) -> Galley:
    """The session's page and the files beside it."""
    gathered = gather_session(session)
    source = gathered.source
    page = make_page(source, shop.settings)
    texts = {"index.html": Renderer().session(page), "record.json": source.record.to_json()}
    texts["chapters.vtt"] = chapters(source.record)
    if source.transcript is not None:
        texts["captions.vtt"] = captions(page.spoken)
        texts["transcript.txt"] = plain_text(page.spoken)
        texts["transcript.json"] = source.transcript.to_json()
    files = {name: picture for picture, name in gathered.note.pictures}
    if gathered.recording is not None and source.recording is not None:
        files[source.recording] = gathered.recording
    return Galley(texts, files)
