"""All errata of a shop: none vanishes silently; page and feeds."""

from __future__ import annotations

import io
import xml.etree.ElementTree as ET
from dataclasses import replace
from datetime import date
from pathlib import Path

import feedparser
import pytest
from hypothesis import given
from hypothesis import strategies as st

from capture.errors import ShopError
from capture.shop import Shop
from publish import publish_shop
from publish.all_errata import found_in
from publish.feeds import Announced, errata_feed, sessions_feed
from publish.ledger import Ledger, Listed, brought_up, read_ledger, write_ledger
from publish.page import make_page
from publish.render import Renderer
from tests.publish.hostile import HOSTILE, hostile_source
from tests.publish.in_memory import make_errata
from tests.publish.session import SHOP, SLUG, source

MAY, JUNE, JULY = date(2031, 5, 20), date(2031, 6, 1), date(2031, 7, 1)
ATOM = "{http://www.w3.org/2005/Atom}"


def listed(wrong: str, session: str = SLUG, first: date = MAY) -> Listed:
    return Listed(
        session=session,
        title="The Heron",
        wrong=wrong,
        right="5/64 in",
        how="on_film",
        second=20,
        anchor="c-1",
        first=first,
    )


def found(session: str = SLUG) -> tuple[Listed, ...]:
    one = replace(source(), slug=session)
    return found_in((one,), (make_page(one, SHOP),), MAY)


def test_every_erratum_of_a_session_is_found() -> None:
    assert len(found()) == len(source().record.corrections)
    assert {one.how for one in found()} <= {"on_film", "proof", "later_session"}


def test_a_first_day_stays() -> None:
    before = brought_up(Ledger(), found(), frozenset(), MAY)
    later = tuple(one.model_copy(update={"first": JUNE}) for one in found())
    assert brought_up(before, later, frozenset(), JUNE) == before


def test_what_is_gone_is_told_with_its_day_and_stands_again_when_found_again() -> None:
    before = Ledger(errata=(listed("7/64"), listed("9/64")))
    gone = brought_up(before, (listed("9/64", first=JUNE),), frozenset(), JUNE)
    assert [(one.wrong, one.out) for one in gone.errata] == [("7/64", JUNE), ("9/64", None)]
    assert brought_up(gone, (listed("9/64"),), frozenset(), JULY) == gone
    again = brought_up(gone, (listed("7/64", first=JULY), listed("9/64", first=JULY)), frozenset(), JULY)
    assert again == before


def test_a_session_that_cannot_be_read_takes_nothing_out() -> None:
    before = Ledger(errata=(listed("7/64"),))
    assert brought_up(before, (), frozenset({SLUG}), JUNE) == before


words = st.sampled_from(["7/64", "9/64", "3 thou", "an inch"])


@given(st.lists(st.lists(words, unique=True), min_size=1, max_size=6))
def test_no_erratum_ever_leaves_the_ledger(publishes: list[list[str]]) -> None:
    ledger, ever = Ledger(), set()
    for number, wrongs in enumerate(publishes):
        day = date(2031, 1, 1 + number)
        ledger = brought_up(ledger, tuple(listed(wrong, first=day) for wrong in wrongs), frozenset(), day)
        ever |= set(wrongs)
        assert {one.wrong for one in ledger.errata} == ever
        assert {one.wrong for one in ledger.standing} == set(wrongs)


def test_the_ledger_reads_back_and_is_only_written_when_it_says_something_new(tmp_path: Path) -> None:
    path = tmp_path / "errata.json"
    write_ledger(path, Ledger())
    assert not path.exists()
    ledger = Ledger(errata=(listed("7/64"),))
    write_ledger(path, ledger)
    before = path.stat().st_mtime_ns
    write_ledger(path, ledger)
    assert path.stat().st_mtime_ns == before
    assert read_ledger(path) == ledger


def test_a_broken_ledger_is_told_and_not_begun_anew(tmp_path: Path) -> None:
    path = tmp_path / "errata.json"
    path.write_text("{}x")
    with pytest.raises(ShopError, match="last good copy"):
        read_ledger(path)


def test_a_published_erratum_that_a_record_loses_stays_on_the_page(shop: Shop) -> None:
    publish_shop(shop)
    (session,) = shop.sessions()
    assert "taken out" not in (shop.public / "errata.html").read_text()
    bare = source().record.model_copy(update={"corrections": ()})
    session.record_file.write_text(bare.to_json())
    publish_shop(shop)
    page = (shop.public / "errata.html").read_text()
    assert "Errata taken out" in page
    assert "taken out on" in page


@pytest.mark.parametrize("text", HOSTILE)
def test_hostile_text_stays_text(text: str) -> None:
    one = hostile_source(text)
    ledger = brought_up(Ledger(), found_in((one,), (make_page(one, SHOP),), MAY), frozenset(), MAY)
    renderer = Renderer()
    assert "<script>alert" not in renderer.errata(make_errata(ledger, SHOP, renderer, one.slug))
    feed = errata_feed(ledger, SHOP)
    assert feed is not None
    ET.fromstring(feed)  # noqa: S314 (made here)


def announced() -> Announced:
    page = make_page(source(), SHOP)
    return Announced(SLUG, page.title, page.date, page.summary.bench)


def feeds() -> tuple[str, str]:
    gone = listed("11/64").model_copy(update={"out": JUNE})
    ledger = Ledger(errata=(gone, *found()))
    notes, errata = sessions_feed((announced(),), SHOP), errata_feed(ledger, SHOP)
    assert notes is not None
    assert errata is not None
    return notes, errata


@pytest.mark.parametrize("which", [0, 1], ids=["sessions", "errata"])
def test_feeds_keep_the_rules_of_rfc_4287(which: int) -> None:
    root = ET.fromstring(feeds()[which])  # noqa: S314 (made here)
    assert root.tag == f"{ATOM}feed"
    # Section 4.1.1: a feed has one id, title and updated, an author, and a link to itself.
    for name in ("id", "title", "updated"):
        assert len(root.findall(f"{ATOM}{name}")) == 1, name
    assert root.findall(f"{ATOM}author/{ATOM}name")
    assert [link.get("rel") for link in root.findall(f"{ATOM}link")].count("self") == 1
    entries = root.findall(f"{ATOM}entry")
    assert entries
    # Section 4.1.2: an entry has one id, title and updated; section 4.2.6: ids differ and are IRIs.
    ids = [entry.findtext(f"{ATOM}id") for entry in entries]
    assert len(set(ids)) == len(ids)
    assert all(one and one.startswith("tag:notes.example,2031-") for one in ids)
    for entry in entries:
        for name in ("id", "title", "updated"):
            assert len(entry.findall(f"{ATOM}{name}")) == 1, name
        links = [link.get("href") or "" for link in entry.findall(f"{ATOM}link")]
        assert all(link.startswith("https://notes.example/coppice/") for link in links)
        assert links


@pytest.mark.parametrize("which", [0, 1], ids=["sessions", "errata"])
def test_feeds_read_in_a_feed_reader_without_complaint(which: int) -> None:
    read = feedparser.parse(io.BytesIO(feeds()[which].encode()))
    assert read.bozo == 0
    assert read.version == "atom10"
    days = [entry.updated_parsed for entry in read.entries]
    assert max(days) == read.feed.updated_parsed


def test_an_erratum_taken_out_is_told_in_the_feed() -> None:
    read = feedparser.parse(io.BytesIO(feeds()[1].encode()))
    assert [entry.title for entry in read.entries if "Taken out" in entry.title] == ["Taken out: “11/64”"]


def test_a_shop_without_an_address_has_no_feeds() -> None:
    home = SHOP.model_copy(update={"site_address": ""})
    assert errata_feed(Ledger(), home) is None
    assert sessions_feed((), home) is None


def test_a_unit_that_was_left_out_is_put_in_in_square_brackets() -> None:
    one = source()
    spoken = one.record.corrections[0]
    bare = tuple(
        measure.model_copy(update={"unit_said": False}) if measure.id == spoken.withdraws.measure else measure
        for measure in one.record.measures
    )
    one = replace(one, record=one.record.model_copy(update={"measures": bare}))
    assert make_page(one, SHOP).errata[0].wrong == "7/64 [in]"


def test_parts_that_were_left_out_are_put_in_too() -> None:
    one = source()
    spoken = one.record.corrections[0]
    said = {"quote": "seven", "unit_said": False}
    bare = tuple(
        measure.model_copy(update=said) if measure.id == spoken.withdraws.measure else measure
        for measure in one.record.measures
    )
    withdraws = spoken.withdraws.model_copy(update={"text": "seven"})
    corrections = (spoken.model_copy(update={"withdraws": withdraws}), *one.record.corrections[1:])
    one = replace(one, record=one.record.model_copy(update={"measures": bare, "corrections": corrections}))
    assert make_page(one, SHOP).errata[0].wrong == "seven [7/64\N{NO-BREAK SPACE}in]"


def test_what_is_put_in_makes_no_other_erratum() -> None:
    assert listed("7/64 [in]").key == listed("7/64").key
    assert listed("7/64 [in] and more").key != listed("7/64").key
