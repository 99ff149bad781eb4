"""The whole site of the invented session, as it was last looked at: `python -m tests.publish.golden` writes it anew."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from pathlib import Path

from publish.all_errata import found_in
from publish.captions import captions, chapters, plain_text
from publish.card import make_card
from publish.ledger import Ledger, brought_up
from publish.library.comparing import comparisons
from publish.library.statements import statements_of
from publish.page import make_page
from publish.render import Renderer
from tests.publish.in_memory import make_drawings, make_errata, make_front, make_library, shelf_of
from tests.publish.library.sessions import pages as pages_of
from tests.publish.library.sessions import sessions
from tests.publish.session import SHOP, source

FOLDER = Path(__file__).parent / "golden"


def site() -> dict[str, str]:
    """The text of each file that is made from the session, by name."""
    session = source()
    page = make_page(session, SHOP)
    drawings, told = make_drawings(statements_of(sessions(), pages_of(sessions()), SHOP))
    page = replace(page, comparisons=comparisons(statements_of((session,), (page,), SHOP), told))
    renderer = Renderer()
    card = make_card(page, session.record)
    assert card is not None
    ledger = brought_up(Ledger(), found_in((session,), (page,), date(2031, 5, 20)), frozenset(), date(2031, 5, 20))
    library = make_library((session,), (page,), SHOP)
    shelved = {name.replace("/", "-"): renderer.library(one) for name, one in library.items()}
    drawn = {name.replace("/", "-"): renderer.drawing(one) for name, one in drawings.items()}
    return (
        shelved
        | drawn
        | {
            "session.html": renderer.session(page),
            "card.html": renderer.card(card),
            "errata.html": renderer.errata(make_errata(ledger, SHOP, renderer, session.slug)),
            "front.html": renderer.front(make_front((session,), (page,), SHOP, shelf_of(library))),
            "captions.vtt": captions(page.spoken),
            "chapters.vtt": chapters(session.record),
            "transcript.txt": plain_text(page.spoken),
        }
    )


if __name__ == "__main__":
    FOLDER.mkdir(exist_ok=True)
    for name, text in site().items():
        (FOLDER / name).write_text(text, encoding="utf-8")
