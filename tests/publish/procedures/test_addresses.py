"""A procedure's address follows its name, and every address that was once published goes on leading there."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from html.parser import HTMLParser
from pathlib import Path

import pytest
from hypothesis import Phase, given, settings
from hypothesis import strategies as st

from capture.archive import export_shop, import_shop
from capture.errors import ShopError
from capture.shop import Shop
from extract.rulings import Hand
from publish import publish_shop
from publish.library.works import stem_of
from publish.procedures import SessionWork, procedures_of
from publish.procedures.address_book import Book
from publish.procedures.library import Library, brought_up, library_of
from publish.procedures.rulings import giving
from publish.procedures.rulings.model import Ruling
from tests.publish.library.test_links import dead
from tests.publish.presswork.test_editions import anew
from tests.publish.procedures.invented import JOBS, three_bridges, work
from tests.publish.procedures.shop import run, shop_of_bridges
from tests.publish.procedures.test_rulings import ACTS, job, ruled
from tests.publish.test_site import digest


def next_edition(book: Book, works: Sequence[SessionWork], rulings: Sequence[Ruling]) -> tuple[Library, Book]:
    library = library_of(works, rulings, book=book)
    return library, brought_up(book, library, works)


def steps_of(works: Sequence[SessionWork], library: Library, at: int) -> set[tuple[str, str]]:
    of = {work.slug: work.steps for work in works}
    return {(ran.session, of[ran.session][place].id) for ran in library.shelved[at].ran for place in ran.steps}


@settings(max_examples=40, deadline=None, phases=(Phase.explicit, Phase.generate))
@given(
    st.lists(job, min_size=2, max_size=4),
    st.lists(st.tuples(st.sampled_from((*ACTS, "gone")), st.integers(0, 40), job), max_size=10),
)
def test_any_rulings_and_sessions_leave_every_address_leading_to_most_of_what_it_had(
    first: list[list[tuple[str, ...]]], acts: list[tuple[str, int, list[tuple[str, ...]]]]
) -> None:
    works = [work(f"2031-01-{at:02d}-s{at}", *jobs) for at, jobs in enumerate(first, 1)]
    rulings: list[Ruling] = []
    book = next_edition(Book(), works, rulings)[1]
    for number, (act, pick, jobs) in enumerate(acts, 10):
        if act == "session":
            works.append(work(f"2031-02-{number}-s{number}", *jobs))
        elif act == "gone" and len(works) > 1:
            works.pop(pick % len(works))
        elif act != "gone" and (ruling := ruled(works, rulings, act, pick)) is not None:
            rulings.append(ruling)
        library, after = next_edition(book, works, rulings)
        own = [one.slug for one in library.shelved]
        assert len(set(own)) == len(own)
        for one in library.shelved:
            assert re.fullmatch(rf"{re.escape(stem_of(one.name, 'procedure'))}(-\d+)?", one.slug), one
        paged = {one.slug: at for at, one in enumerate(library.shelved) if one.has_page}
        moved = {one.slug: one for one in library.moved if "page" in one.had}
        assert moved.keys().isdisjoint(paged)
        # Every address of the book, and so every one that was ever published, stands or leads on.
        assert {one.slug for one in after.addresses} == paged.keys() | moved.keys()
        assert {one.slug for one in book.addresses} <= {one.slug for one in after.addresses}
        for lodged in book.addresses:
            had = {(session, step) for session, of in lodged.steps.items() for step in of}
            shares = [len(had & steps_of(works, library, at)) for at in range(len(library.shelved))]
            if lodged.slug in moved and max(shares, default=0):
                to = moved[lodged.slug].to
                assert to is not None
                assert shares[to] == max(shares)
        # The same once more changes nothing, so that making all anew gives what edition upon edition gave.
        assert next_edition(after, works, rulings) == (library, after)
        book = after


def test_the_address_follows_the_name_and_comes_back_with_it() -> None:
    works, rulings = three_bridges(), list[Ruling]()
    library, book = next_edition(Book(), works, rulings)
    assert [one.slug for one in library.shelved] == ["reglue-the-bridge", "cut-the-saddle-slot"]
    rulings.append(giving.rename(procedures_of(works).all[0], "Reglue a bridge", Hand()))
    library, book = next_edition(book, works, rulings)
    assert library.shelved[0].slug == "reglue-a-bridge"
    assert [(one.slug, one.to) for one in library.moved] == [("reglue-the-bridge", 0)]
    rulings.append(giving.undo(rulings, None, Hand()))
    library, book = next_edition(book, works, rulings)
    assert library.shelved[0].slug == "reglue-the-bridge"
    assert [(one.slug, one.to) for one in library.moved] == [("reglue-a-bridge", 0)]


def test_no_other_procedure_gets_an_address_that_leads_on() -> None:
    works, rulings = three_bridges(), list[Ruling]()
    book = next_edition(Book(), works, rulings)[1]
    for at, name in ((0, "Reglue a bridge"), (1, "Reglue the bridge")):
        rulings.append(giving.rename(procedures_of(works, rulings).all[at], name, Hand()))
    library, _ = next_edition(book, works, rulings)
    assert [(one.slug, one.name) for one in library.shelved] == [
        ("reglue-a-bridge", "Reglue a bridge"),
        ("reglue-the-bridge-2", "Reglue the bridge"),
    ]
    assert {one.slug: one.to for one in library.moved} == {"reglue-the-bridge": 0, "cut-the-saddle-slot": 1}


def test_two_of_one_name_keep_their_addresses_whatever_comes_before_them() -> None:
    works, rulings = list(three_bridges()), list[Ruling]()
    bridge = procedures_of(works).all[0]
    rulings.append(giving.split_by_sessions(bridge, ["cedar"], "Reglue the bridge", Hand()))
    rulings.append(giving.rename(procedures_of(works, rulings).all[0], "Reglue the bridge", Hand()))
    library, book = next_edition(Book(), works, rulings)
    before = {one.slug: {ran.session for ran in one.ran} for one in library.shelved if one.name == "Reglue the bridge"}
    assert len(before) == 2
    works.insert(0, work("2030-01-01-alder", JOBS[2]))
    after = {one.slug: {ran.session for ran in one.ran} for one in next_edition(book, works, rulings)[0].shelved}
    assert all(sessions <= after[slug] for slug, sessions in before.items())
    # Made one, and taken apart again, both are where they were.
    both = [one for one in procedures_of(works, rulings).all if one.name == "Reglue the bridge"]
    joined, book = next_edition(book, works, [*rulings, giving.merge(both, Hand())])
    assert len([one for one in joined.moved if "page" in one.had]) == 1
    again = {one.slug: {ran.session for ran in one.ran} for one in next_edition(book, works, rulings)[0].shelved}
    assert again == after


class _Page(HTMLParser):
    """Where a page leads."""

    def __init__(self, path: Path) -> None:
        super().__init__()
        self.refresh = self.canonical = ""
        self.links: list[str] = []
        self.feed(path.read_text(encoding="utf-8"))

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        of = {name: value or "" for name, value in attrs}
        if tag == "meta" and of.get("http-equiv") == "refresh":
            self.refresh = of["content"]
        if tag == "link" and of.get("rel") == "canonical":
            self.canonical = of["href"]
        if tag == "a":
            self.links.append(of.get("href", ""))


def leading_from(shop: Shop, name: str) -> str:
    """Where the page at a former address leads: its refresh (WCAG technique H76: at once) and a link that is seen."""
    page = _Page(shop.public / "procedures" / name)
    at_once = re.fullmatch(r"0; url=(.+)", page.refresh)
    assert at_once is not None, name
    assert at_once[1] in page.links
    return at_once[1]


def published(shop: Shop) -> Iterator[str]:
    folder = shop.public / "procedures"
    return (path.relative_to(folder).as_posix() for path in folder.rglob("*.html"))


def test_every_page_and_card_that_was_published_leads_on_and_is_carried_to_another_machine(tmp_path: Path) -> None:
    shop = shop_of_bridges(tmp_path)
    ever: set[str] = set()
    for words in (
        [], ["pin", "reglue-the-bridge", "job2"], ["rename", "reglue-the-bridge", "Reglue a bridge"],
        ["merge", "reglue-a-bridge", "cut-the-saddle-slot"], ["unpin", "reglue-a-bridge"], ["undo"], ["undo"],
        ["rename", "cut-the-saddle-slot", "<i>Slot</i> & saddle"],
        ["split", "reglue-a-bridge", "--session", "job3", "--as", "Reglue the bridge"],
    ):  # fmt: skip
        if words:
            run(shop, *words)
        publish_shop(shop)
        ever |= set(published(shop))
        assert ever == set(published(shop))
        assert digest(shop.public) == anew(shop, tmp_path / "anew"), words
        assert not list(dead(shop.public))
    assert leading_from(shop, "cut-the-saddle-slot.html") == "i-slot-i-saddle.html"
    assert leading_from(shop, "cards/reglue-the-bridge.html") == "reglue-a-bridge.html"
    assert not re.search("http-equiv", (shop.public / "procedures/reglue-the-bridge-2.html").read_text())
    assert leading_from(shop, "reglue-the-bridge.html") == "reglue-a-bridge.html"
    export_shop(shop, tmp_path / "shop.zip")
    other = import_shop(tmp_path / "shop.zip", tmp_path / "elsewhere")
    publish_shop(other)
    assert digest(other.public) == digest(shop.public)


def test_where_all_sessions_of_a_procedure_are_gone_its_address_leads_to_the_list(tmp_path: Path) -> None:
    shop = shop_of_bridges(tmp_path)
    publish_shop(shop)
    for session in shop.sessions()[1:]:
        shop.remove(session)
    publish_shop(shop)
    # One session is left, with a bridge and no saddle.
    assert leading_from(shop, "cut-the-saddle-slot.html") == "index.html"
    assert leading_from(shop, "reglue-the-bridge.html").startswith("../sessions/2031-01-01-job1/index.html#")
    shop.remove(shop.sessions()[0])
    publish_shop(shop)
    assert leading_from(shop, "reglue-the-bridge.html") == "../index.html"
    assert not list(dead(shop.public))
    assert digest(shop.public) == anew(shop, tmp_path / "anew")


def test_the_page_at_a_former_address_names_the_page_that_search_engines_are_to_take(tmp_path: Path) -> None:
    shop = shop_of_bridges(tmp_path)
    publish_shop(shop)
    run(shop, "rename", "reglue-the-bridge", "Reglue a bridge")
    publish_shop(shop)
    former = shop.public / "procedures" / "reglue-the-bridge.html"
    assert _Page(former).canonical == "reglue-a-bridge.html"
    text = shop.settings_file.read_text(encoding="utf-8")
    web = text.replace('site_address = ""', 'site_address = "https://bench.example/notes"')
    shop.settings_file.write_text(web, encoding="utf-8")
    publish_shop(shop)
    assert _Page(former).canonical == "https://bench.example/notes/procedures/reglue-a-bridge.html"


@pytest.mark.parametrize("text", ["{", "[]", '{"addresses": [{"slug": "../../x", "steps": {}}]}'])
def test_a_broken_book_is_told_in_a_line_and_the_site_stands(tmp_path: Path, text: str) -> None:
    shop = shop_of_bridges(tmp_path)
    publish_shop(shop)
    before = digest(shop.public)
    shop.procedure_addresses_file.write_text(text, encoding="utf-8")
    with pytest.raises(ShopError, match="is no book of addresses") as told:
        publish_shop(shop)
    assert "\n" not in str(told.value)
    assert digest(shop.public) == before
