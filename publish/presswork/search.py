"""Prints the files of the site's own search."""

from __future__ import annotations

from collections.abc import Sequence

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
    for one in reads:

        def items(slug: str = one.slug) -> bytes:
            return handed_over(f"items/{slug}", store.parts(SEARCH, (slug,))[slug])

        press.page(items_file(one.slug), sum_of(one.slug, one.sums[SEARCH]), items)
    _print_index(reads, store, press)
    press.page(f"{FOLDER}/index.html", sum_of("page"), lambda: renderer.search(page_of(settings)))


def _print_index(reads: Sequence[Read], store: Store, press: Press) -> None:
    """The index; of its many files only those are written that came out otherwise than the last time."""
    slugs = [one.slug for one in reads]
    total = sum_of(*(text for one in reads for text in (one.slug, one.sums[TERMS])))
    made: dict[str, bytes] = {}

    def make() -> dict[str, bytes]:
        if not made:
            kept = store.parts(TERMS)
            made.update(shared_files(slugs, shards_of((kept[slug]["terms"], kept[slug]["marks"]) for slug in slugs)))
        return made

    def sums() -> tuple[Texts, dict[str, str]]:
        return {}, {name: sum_of(data) for name, data in make().items()}

    for name, own in press.files(f"{FOLDER}/", total, sums).items():
        press.page(name, own, lambda name=name: make()[name])  # type: ignore[misc]
