"""The HTML itself: valid, whole, and closed to whatever the words try."""

from __future__ import annotations

import json
import re
from collections.abc import Iterator
from dataclasses import replace
from itertools import pairwise
from pathlib import Path
from urllib.parse import unquote, urlsplit
from xml.etree.ElementTree import Element

import html5lib
import pytest

from capture.shop import ShopSettings
from publish.context import SessionPage
from publish.page import make_page
from publish.parts import PARTS
from publish.render import Renderer
from publish.source import SessionSource
from tests.publish.hostile import HOSTILE, hostile_shop, hostile_source
from tests.publish.in_memory import keep_company, make_front
from tests.publish.session import SHOP, record, source


def parse(html: str) -> Element:
    """The tree; the parser is strict and raises at the first error against the HTML standard."""
    parser = html5lib.HTMLParser(strict=True, namespaceHTMLElements=False)
    tree: Element = parser.parse(html)
    return tree


def ids(tree: Element) -> list[str]:
    return [element.attrib["id"] for element in tree.iter() if "id" in element.attrib]


def text_of(element: Element) -> str:
    return " ".join("".join(element.itertext()).split())


def part(tree: Element, name: str) -> Element:
    return next(element for element in tree.iter() if element.attrib.get("id") == name)


def links(tree: Element) -> Iterator[str]:
    for element in tree.iter():
        for attribute in ("href", "src"):
            if attribute in element.attrib and element.attrib.get("rel") != "canonical":
                yield element.attrib[attribute]


def front(shop: ShopSettings = SHOP, *sources: SessionSource) -> str:
    sources = sources or (source(),)
    company = keep_company(sources, shop)
    pages = tuple(make_page(one, shop, company[one.slug]) for one in sources)
    return Renderer().front(make_front(sources, pages, shop))


def test_pages_follow_the_standard(html: str) -> None:
    parse(html)
    parse(front())


def test_ids_are_unique_and_links_within_the_page_resolve(html: str) -> None:
    tree = parse(html)
    found = ids(tree)
    assert len(found) == len(set(found))
    for link in links(tree):
        if link.startswith("#"):
            assert link.removeprefix("#") in found


def test_nothing_is_asked_of_another_host(html: str) -> None:
    for link in links(parse(html)):
        parts = urlsplit(link)
        assert not parts.scheme
        assert not parts.netloc


def test_headings_step_down_one_level_at_a_time(html: str) -> None:
    for page in (html, front()):
        levels = [int(one.tag[1]) for one in parse(page).iter() if re.fullmatch("h[1-6]", str(one.tag))]
        assert levels[0] == 1
        assert levels.count(1) == 1
        assert all(below <= above + 1 for above, below in pairwise(levels))


def test_tables_have_captions_and_every_header_a_scope(html: str) -> None:
    tree = parse(html)
    tables = list(tree.iter("table"))
    assert len(tables) == 2
    for table in tables:
        assert table.find("caption") is not None
        assert all("scope" in header.attrib for header in table.iter("th"))


def test_the_top_says_that_statements_wait_to_be_settled(html: str) -> None:
    header = next(parse(html).iter("header"))
    assert "Not proofed: 2 statements to settle." in text_of(header)


def test_a_page_that_nobody_read_says_so() -> None:
    settled = replace(source(), record=record().model_copy(update={"findings": ()}))
    html = Renderer().session(make_page(settled, SHOP))
    assert "Machine-made, not yet proofed." in html
    passed = Renderer().session(make_page(replace(settled, proofed=True), SHOP))
    assert "Proofed." in passed


@pytest.mark.parametrize(
    ("name", "told"),
    [
        ("summary", "Action, strings, treble side, 12th fret: 5/64 in · 2.0 mm as found, 4/64 in · 1.6 mm as left."),
        ("summary", "Open: 2 statements to settle, 1 statement to check, 1 job left for later, 1 doubt to look up."),
        ("queries", "To settle 16 in is 406 mm, not 250 mm. Said: “16 in, that is 250 mm”."),
        ("found-left", "Relief neck, 7th fret 0.012 in"),
        ("cautions", "Keep the heat at 140 °F or the lacquer blisters."),
        ("cautions", "local codes"),
        ("procedure", "3 Heat the plate to 140 °F (60 °C)."),
        ("procedure", "Planned, not done in this session."),
        ("figures", "withdrawn: 7/64 in (end of withdrawn) read 5/64 in"),
        ("figures", "about 60 °C"),
        ("kit", "palette knife 1:21"),
        ("errata", "For 7/64 [in] at 0:17 read 5/64 in. Concerns this session."),
        ("errata", "For use 20 thou under the bass side read 10 to 12 thou. Concerns an earlier session."),
        ("follow-ups", "Plug the stripped tailpiece screw."),
        ("doubts", "Whether the top is Engelmann spruce."),
        ("transcript", "treble side, is withdrawn: 7/64 (end of withdrawn) [read 5/64 in], no, hang on,"),
        ("making", "Heard by the speech model whisper-base"),
    ],
)
def test_each_part_tells_what_it_is_for(html: str, name: str, told: str) -> None:
    said = text_of(part(parse(html), name)).replace("“", '"').replace("”", '"')
    assert told.replace("“", '"').replace("”", '"').replace('"', "") in said.replace('"', "")


def test_every_item_leads_to_its_second(html: str) -> None:
    tree = parse(html)
    for name in ("queries", "cautions", "procedure", "figures", "errata", "follow-ups", "doubts", "transcript"):
        rows = [one for one in part(tree, name).iter() if one.tag in {"li", "tr"} and one.attrib.get("id")]
        for row in rows:
            hrefs = [one.attrib["href"] for one in row.iter("a") if "data-seconds" in one.attrib]
            assert hrefs, text_of(row)
            assert all(re.fullmatch(r"heron%20bridge%20%231\.webm#t=\d+(\.\d+)?", href) for href in hrefs)


def test_without_a_recording_times_are_plain(page: SessionPage) -> None:
    tree = parse(Renderer().session(make_page(replace(source(), recording=None), SHOP)))
    assert not list(tree.iter("video"))
    assert not [one for one in tree.iter() if "data-seconds" in one.attrib]
    assert "0:17" in text_of(part(tree, "figures"))


def test_a_bare_record_makes_a_page() -> None:
    bare = SessionSource("bare", record().model_copy(
        update={name: () for name in type(record()).model_fields if name not in {"schema_", "session"}}
    ))  # fmt: skip
    tree = parse(Renderer().session(make_page(bare, SHOP)))
    assert [one.attrib["id"] for one in tree.iter("section")] == ["summary", "cautions", "making"]


def test_sound_is_played_by_an_audio_element() -> None:
    tree = parse(Renderer().session(make_page(replace(source(), recording="talk.m4a"), SHOP)))
    assert len(list(tree.iter("audio"))) == 1


def test_linked_data_lists_steps_and_corrections(html: str) -> None:
    script = next(one for one in parse(html).iter("script") if one.attrib.get("type") == "application/ld+json")
    data = json.loads(script.text or "")
    assert data["@type"] == "HowTo"
    assert [step["position"] for step in data["step"]] == list(range(1, 10))
    assert data["correction"][0]["text"] == "For “7/64 [in]” read “5/64\u00a0in”"


def test_the_front_page_leads_to_every_session() -> None:
    older = replace(source(), slug="2030-01-01-before", record=record().model_copy(
        update={"session": record().session.model_copy(update={"title": "Before", "date": "2030-01-01"})}
    ))  # fmt: skip
    tree = parse(front(SHOP, older, source()))
    hrefs = [unquote(link) for link in links(tree) if link.startswith("sessions/")]
    assert hrefs[0] == f"sessions/{source().slug}/index.html", "newest first"
    assert "sessions/2030-01-01-before/index.html" in hrefs
    assert "For use 20 thou under the bass side read 10 to 12 thou." in text_of(tree)


def test_sessions_on_the_same_work_know_of_one_another() -> None:
    older = replace(source(), slug="2030-01-01-before")
    company = keep_company((older, source()), SHOP)
    html = Renderer().session(make_page(older, SHOP, company[older.slug]))
    assert f"../{source().slug}/index.html#m-bass-new" in list(links(parse(html)))
    assert "Taken back in a later session" in html
    assert not company[source().slug].later_errata


def test_the_same_session_gives_the_same_bytes(html: str) -> None:
    assert Renderer().session(make_page(source(), SHOP)) == html


@pytest.mark.parametrize("text", HOSTILE)
def test_hostile_text_is_inert_in_every_field(text: str) -> None:
    hostile = hostile_source(text)
    shop = hostile_shop(text)
    page = make_page(hostile, shop)
    for html in (Renderer().session(page), front(shop, hostile)):
        tree = parse(html)
        scripts = [one for one in tree.iter("script") if one.attrib.get("type") != "application/ld+json"]
        assert all(one.attrib.get("src", "").endswith("assets/player.js") for one in scripts)
        for element in tree.iter():
            assert not [name for name in element.attrib if name.startswith("on") or name == "autofocus"]
            assert element.attrib.get("id") != "broken"
        for link in links(tree):
            assert not urlsplit(link).scheme, link
        assert "7 * 7" in text_of(tree) or "{{" not in text
        found = ids(tree)
        assert len(found) == len(set(found))
        assert all(link.removeprefix("#") in found for link in links(tree) if link.startswith("#"))


def test_every_part_is_reached_from_the_contents(html: str, page: SessionPage) -> None:
    hrefs = set(links(parse(html)))
    assert {f"#{one.name}" for one in PARTS.on(page)} <= hrefs


def test_templates_never_mark_text_as_safe() -> None:
    for template in (Path(__file__).parents[2] / "publish" / "templates").rglob("*.html"):
        source_text = template.read_text(encoding="utf-8")
        assert "|safe" not in source_text.replace(" ", "")
        assert "autoescape" not in source_text
