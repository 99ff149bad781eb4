"""Prints the files of the site's own search."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from capture.shop import ShopSettings
from publish.presswork.parts import SEARCH, TERMS
from publish.presswork.press import Press, Texts
from publish.presswork.reading import Read
from publish.presswork.store import Store
from publish.presswork.sums import sum_of
from publish.render import Renderer
from publish.search import FOLDER, handed_over, items_file, page_of, shards_of, shared_files


def print_search(reads: Sequence[Read], settings: ShopSettings, store: Store, renderer: Renderer, press: Press) -> None:
    """Each session's own file, the index over all, and the page that asks it."""
    kept: dict[str, Any] = {}
    for one in reads:

        def items(slug: str = one.slug) -> bytes:
            if not kept:
                kept.update(store.parts(SEARCH))
            return handed_over(f"items/{slug}", kept[slug])

        press.page(items_file(one.slug), sum_of(one.slug, one.sums.get(SEARCH, "")), items)
    _print_index(reads, store, press)
    press.page(f"{FOLDER}/index.html", sum_of("page"), lambda: renderer.search(page_of(settings)))


def _print_index(reads: Sequence[Read], store: Store, press: Press) -> None:
    slugs = [one.slug for one in reads]
    total = sum_of(*(text for one in reads for text in (one.slug, one.sums.get(TERMS, ""))))

    def make() -> tuple[Texts, None]:
        terms = store.parts(TERMS)
        shards = shards_of((terms[slug]["terms"], terms[slug]["marks"]) for slug in slugs)
        return shared_files(slugs, shards), None

    press.files(f"{FOLDER}/", total, make)
