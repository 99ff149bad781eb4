"""The demo sessions, written up like anybody's own."""

from __future__ import annotations

import shutil
from importlib.resources import as_file, files
from pathlib import Path
from typing import TYPE_CHECKING

import tomlkit

from capture.errors import ShopError
from capture.shop import SessionSettings, Shop, ShopSettings
from desk.work import Hearing, WrittenUp, write_up_session

if TYPE_CHECKING:
    from collections.abc import Iterator
    from importlib.resources.abc import Traversable

    from desk.console import Report
    from extract.pipeline import Extractor

DEMO_SHOP = ShopSettings(
    title="Demo shop notes",
    author="invented repairers",
    licence="none needed: the people, the instruments and their mistakes are made up",
)


def demo_titles() -> list[tuple[str, str]]:
    """Folder name and title of each demo session, by date."""
    return [(folder.name, settings.title) for folder, settings in _demo_sessions()]


def write_up_demo(
    slug: str, shop_folder: Path, hearing: Hearing, report: Report | None = None, extractor: Extractor | None = None
) -> WrittenUp:
    """Copy one demo session into the shop and do the whole job for it.

    Raises `ShopError` for a shop that is no demo.
    """
    folder, settings = next((f, s) for f, s in _demo_sessions() if f.name == slug)
    shop = Shop.open_or_create(shop_folder, DEMO_SHOP)
    if shop.settings.title != DEMO_SHOP.title:
        raise ShopError(shop_folder, "is a shop of your own", "name another folder for the demo with --shop")
    session = next((one for one in shop.sessions() if one.settings.title == settings.title), None)
    if session is None:
        session = shop.add_session(settings)
        for name in (settings.recording, "notes.md"):
            with as_file(folder / name) as source:
                shutil.copyfile(source, session.folder / name)
    return write_up_session(session, shop, hearing, report, extractor)


def _demo_sessions() -> Iterator[tuple[Traversable, SessionSettings]]:
    found = []
    for folder in files("demo_sessions").iterdir():
        facts = folder / "session.toml"
        if folder.is_dir() and facts.is_file():
            found.append((folder, SessionSettings.model_validate(tomlkit.parse(facts.read_text("utf-8")).unwrap())))
    yield from sorted(found, key=lambda one: one[1].date)
