"""What a person calls a tool or material stands on every page that tells of it, with what was said."""

from __future__ import annotations

import json
from pathlib import Path

import lxml.html
import pytest

from capture.archive import export_shop, import_shop
from capture.shop import Shop
from extract.rulings import Hand
from publish import publish_shop
from publish.find import Hit, Index, read_query, search
from publish.kit.rulings import giving
from publish.kit.rulings.log import KitLog
from publish.kit.rulings.model import Rename, Ruling, Said
from publish.presswork import stamps
from tests.publish.hostile import HOSTILE
from tests.publish.kit.bench import kit, shop_on_disk
from tests.publish.kit.test_rulings import FEELER, FILLER, GAUGE, three_in_one
from tests.publish.presswork.test_editions import anew
from tests.publish.test_site import digest

POINTS = "2031-02-01-points"


@pytest.fixture
def shop(tmp_path: Path) -> Shop:
    made = shop_on_disk(tmp_path)
    publish_shop(made)
    return made


def slug_of(shop: Shop, ending: str) -> str:
    return next(one.slug for one in shop.sessions() if one.slug.endswith(ending))


def rule(shop: Shop, ruling: Ruling) -> None:
    KitLog.of(shop).append(ruling)


def page(shop: Shop, name: str) -> lxml.html.HtmlElement:
    return lxml.html.fromstring((shop.public / name).read_bytes())


def text(element: lxml.html.HtmlElement) -> str:
    return " ".join(element.text_content().split())


def ask(shop: Shop, question: str) -> list[Hit]:
    with Index.of(shop) as index:
        assert index.problems == ()
        return list(search(index, read_query(question)))


def test_the_page_of_all_tools_has_it_once_with_what_was_said(shop: Shop) -> None:
    rule(shop, three_in_one())
    publish_shop(shop)
    things = {text(one.find("h3")): one for one in page(shop, "kit/index.html").find_class("thing")}
    assert FEELER not in things
    assert FILLER not in things
    uses = [text(one) for one in things[GAUGE].iter("li") if one.find("h3") is None]
    assert uses == [
        "1 January 2031, valves, said feeler 0:10 0:30",
        "1 February 2031, points 0:50; said filler gauge 0:10",
        "1 March 2031, nut-slots 0:00",
    ]
    assert [text(one) for one in things[GAUGE].iter("q")] == [FEELER, FILLER]


def test_a_session_has_it_in_its_list_its_steps_and_on_its_card_and_keeps_its_words(shop: Shop) -> None:
    rule(shop, three_in_one())
    publish_shop(shop)
    home = f"sessions/{slug_of(shop, 'points')}"
    (listed,) = page(shop, f"{home}/index.html").xpath("//dl[@class='kit']")
    (named,) = (text(one) for one in listed.iter("li") if GAUGE in text(one))
    assert named == "feeler gauge 0:50; said filler gauge 0:10"
    steps = page(shop, f"{home}/index.html").find_class("stage")
    assert "Use the filler gauge" in text(steps[0])
    assert "Tools: feeler gauge" in text(steps[0])
    card = (shop.public / home / "card.html").read_text()
    assert GAUGE in card
    linked = page(shop, f"{home}/index.html").xpath("//script[@type='application/ld+json']/text()")[0]
    assert GAUGE in [one["name"] for one in json.loads(linked)["tool"]]
    kept = json.loads((shop.public / home / "record.json").read_text())
    assert [one["said"] for one in kept["tools"] if one["name"] == GAUGE] == [
        [{"sort": "tool", "name": FILLER, "cues": [1]}, {"sort": "tool", "name": GAUGE, "cues": [5]}]
    ]


def test_both_searches_find_it_by_its_name_and_by_what_was_said(shop: Shop) -> None:
    before = {hit.session for hit in ask(shop, GAUGE)}
    rule(shop, three_in_one())
    publish_shop(shop)
    hits = [hit for hit in ask(shop, GAUGE) if hit.sort == "tool"]
    assert {slug[-len(end) :] for slug in {hit.session for hit in hits} for end in ("valves", "points", "slots")} >= {
        "valves", "points", "slots",
    }  # fmt: skip
    assert len(before) < len({hit.session for hit in ask(shop, GAUGE)})
    (said,) = (hit for hit in ask(shop, "filler") if hit.sort == "tool")
    assert (said.told, said.start) == ("feeler gauge, said “filler gauge”", 10.0)
    points = [hit for hit in hits if hit.session == slug_of(shop, "points")]
    assert [(hit.told, hit.start, hit.href.rpartition("#")[2]) for hit in points] == [
        ("feeler gauge", 50.0, "t-50"),
        ("feeler gauge, said “filler gauge”", 10.0, "t-10"),
    ]
    steps = [hit for hit in ask(shop, GAUGE) if hit.sort == "step" and hit.session == slug_of(shop, "valves")]
    assert steps
    items = (shop.public / "search" / "items" / f"{slug_of(shop, 'valves')}.js").read_text()
    assert "feeler gauge, said “feeler”" in items


def test_undoing_gives_the_site_that_was(shop: Shop) -> None:
    before = digest(shop.public)
    ruling = three_in_one()
    rule(shop, ruling)
    publish_shop(shop)
    assert digest(shop.public) != before
    rule(shop, giving.undo([ruling], None, Hand()))
    publish_shop(shop)
    assert digest(shop.public) == before
    assert {hit.sort for hit in ask(shop, "filler")} == {"procedure", "tool", "step", "said"}


@pytest.mark.parametrize("stamped", [False, True])
def test_only_pages_that_tell_of_it_are_made_anew(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, stamped: bool
) -> None:
    if stamped:
        monkeypatch.setattr(stamps, "COARSEST", -1_000_000_000)
    shop = shop_on_disk(tmp_path)
    publish_shop(shop)
    times = {path: path.stat().st_mtime_ns for path in shop.public.rglob("*") if path.is_file()}
    sums = digest(shop.public)
    rule(shop, giving.rename(kit(), giving.called(kit(), "spanner"), "ring spanner", Hand()))
    publish_shop(shop)
    after = digest(shop.public)
    changed = {name for name in after if after[name] != sums.get(name)}
    valves = slug_of(shop, "valves")
    pages = {name for name in changed if not name.startswith("search/")}
    assert {"kit/index.html", f"sessions/{valves}/index.html", f"sessions/{valves}/card.html"} <= pages
    assert all(name.startswith((f"sessions/{valves}/", "kit/", "procedures/", "work/")) for name in pages)
    others = [slug_of(shop, ending) for ending in ("points", "nut-slots", "door")]
    kept = [path for path in times if any(slug in path.parts for slug in others) or path.name == "notes.css"]
    assert kept
    assert all(path.stat().st_mtime_ns == times[path] for path in kept)
    assert after == anew(shop, tmp_path / "anew")


@pytest.mark.parametrize("words", HOSTILE)
def test_a_hostile_name_stays_words_on_every_page(tmp_path: Path, words: str) -> None:
    shop = shop_on_disk(tmp_path)
    # As another program, or a newer version, may have written it: what is typed here is checked before it is kept.
    rule(shop, Rename(of=(Said(sort="tool", name=FEELER), Said(sort="tool", name=FILLER)), name=words))
    publish_shop(shop)
    shown = " ".join(words.replace("\u2028", " ").split())
    for name in ("kit/index.html", f"sessions/{slug_of(shop, 'valves')}/index.html"):
        root = page(shop, name)
        assert shown in " ".join(text(root).replace("\u2028", " ").split())
        assert not root.xpath("//*[@onerror or @onfocus or @id='broken']")
        assert not root.xpath("//script[not(@type='application/ld+json') and contains(text(), 'window.broken')]")
    assert digest(shop.public) == anew(shop, tmp_path / "anew")


def test_a_ruling_that_no_session_meets_and_a_line_that_is_none_are_told(shop: Shop) -> None:
    rule(shop, three_in_one())
    shop.remove(next(one for one in shop.sessions() if one.slug.endswith("valves")))
    with KitLog.of(shop).path.open("a") as file:
        file.write("no ruling\n")
    told = publish_shop(shop).warnings
    assert [line for line in told if "kit.json" in line] == [
        "a ruling on “feeler gauge” has no place any more for the tool “feeler” (no session names it); it stays in "
        "kit.json",
        "line 2 of kit.json is torn or damaged; it stays there, and does nothing",
    ]


def test_it_goes_with_the_archive(shop: Shop, tmp_path: Path) -> None:
    rule(shop, three_in_one())
    export_shop(shop, tmp_path / "shop.zip")
    again = import_shop(tmp_path / "shop.zip", tmp_path / "again")
    assert again.kit_file.read_bytes() == shop.kit_file.read_bytes()
    publish_shop(shop)
    publish_shop(again)
    assert digest(again.public) == digest(shop.public)
