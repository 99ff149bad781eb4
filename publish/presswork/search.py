"""Prints the files of the site's own search."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from capture.shop import ShopSettings
from publish.presswork.parts import SEARCH, TERMS
from publish.presswork.press import Press, Texts
from publish.presswork.procedures import Procedural
from publish.presswork.reading import Read
from publish.presswork.store import Store, StoreBrokenError
from publish.presswork.sums import sum_of
from publish.render import Renderer
from publish.search import FOLDER, handed_over, items_file, page_of, shards_of, shared_files


def print_search(
    reads: Sequence[Read],
    settings: ShopSettings,
    store: Store,
    renderer: Renderer,
    press: Press,
    procedures: Procedural,
) -> None:
    """The own file of each session and procedure, the index over all, and the page that asks it."""
    # The page looks into the last of them first: procedures over all sessions, then the newest session.
    places = {**{one.slug: one.sums for one in reads}, **procedures.searched}
    for place, sums in places.items():

        def items(place: str = place) -> bytes:
            return handed_over(f"items/{place}", store.parts(SEARCH, (place,))[place])

        press.page(items_file(place), sum_of(place, sums[SEARCH]), items)
    _print_index(places, store, press)
    press.page(f"{FOLDER}/index.html", sum_of("page"), lambda: renderer.search(page_of(settings)))


def _print_index(places: Mapping[str, Mapping[str, str]], store: Store, press: Press) -> None:
    """The index; of its many files only those are written that came out otherwise than the last time."""
    slugs = list(places)
    total = sum_of(*(text for slug, sums in places.items() for text in (slug, sums[TERMS])))
    made: dict[str, bytes] = {}

    def make() -> dict[str, bytes]:
        if not made:
            kept = store.parts(TERMS)
            if not kept.keys() >= places.keys():
                raise StoreBrokenError
            made.update(shared_files(slugs, shards_of((kept[slug]["terms"], kept[slug]["marks"]) for slug in slugs)))
        return made

    def sums() -> tuple[Texts, dict[str, str]]:
        return {}, {name: sum_of(data) for name, data in make().items()}

    for name, own in press.files(f"{FOLDER}/", total, sums).items():
        press.page(name, own, lambda name=name: make()[name])  # type: ignore[misc]
