"""A session's figures among the shop's: what is drawn, what stands out, what the words say, and what hangs on what."""

from __future__ import annotations

import re
from dataclasses import replace
from pathlib import Path
from xml.etree import ElementTree as ET

import pytest
from playwright.sync_api import Browser

from capture.files import write_atomic
from capture.shop import SessionSettings, Shop
from extract.record import Measure
from publish import publish_shop
from publish.context import Comparison
from publish.context.plots import ShopPlot
from publish.library.comparing import HEIGHT, WIDTH, comparisons, own_anchor, plot_file
from publish.library.statements import statements_of
from publish.render import Renderer
from publish.source import SessionSource
from tests.publish.hostile import HOSTILE
from tests.publish.in_memory import make_drawings
from tests.publish.library.sessions import action, later, pages, relief
from tests.publish.session import SHOP

SVG = "{http://www.w3.org/2000/svg}"
GAUGE = ("gauge", "spindle", "length")
"""A thing that no trade has a usual range of."""


def bench(number: int, *measures: Measure) -> SessionSource:
    one = later(f"s-{number}", f"Job {number}", f"2032-01-{number:02d}", f"lute {number}", 5)
    return replace(one, record=one.record.model_copy(update={"measures": measures}))


def gauge(sixtyfourths: int, name: str = "m-gauge", **change: object) -> Measure:
    figure = action(sixtyfourths).model_copy(update={"id": name, "attribute": "gauge", "item": "spindle"})
    return figure.model_copy(update=change)


def made(*of: SessionSource) -> tuple[dict[str, ShopPlot], list[tuple[Comparison, ...]]]:
    """The drawings, and what the page of each session shows."""
    statements = statements_of(of, pages(of), SHOP)
    drawings, told = make_drawings(statements)
    return drawings, [comparisons([one for one in statements if one.slug == of_.slug], told) for of_ in of]


def plain(text: str) -> str:
    return text.replace("\u00a0", " ")


def test_each_session_stands_out_in_the_one_drawing_of_all() -> None:
    of = [bench(at, gauge(4 + at)) for at in (1, 2, 3)]
    drawings, shown = made(*of)
    (drawing,) = drawings.values()
    assert [one.anchor for one in drawing.own] == [own_anchor(one.slug) for one in of]
    assert sorted(spot.x for one in drawing.own for spot in one.spots) == sorted(spot.x for spot in drawing.plot.spots)
    assert [one.plot for (one,) in shown] == [f"../../{plot_file(GAUGE)}#{own_anchor(one.slug)}" for one in of]
    assert len({one.plot.split("#")[0] for (one,) in shown}) == 1


def test_a_figure_lies_where_the_scale_says() -> None:
    drawings, _ = made(*(bench(at, gauge(4 * at)) for at in (1, 2, 4)))
    plot = next(iter(drawings.values())).plot
    marks = {one.text: one.x for one in plot.captions if "/" in one.text}
    # Between 1/16 and 1/4 in, 1/8 lies a third of the way.
    assert abs(marks["1/8"] - (marks["1/16"] + (marks["1/4"] - marks["1/16"]) / 3)) < 0.11
    assert {spot.x for spot in plot.spots} == {marks["1/16"], marks["1/8"], marks["1/4"]}


def test_the_numbers_stand_in_words_on_the_page_and_in_the_drawing() -> None:
    drawings, shown = made(*(bench(at, gauge(4 + at)) for at in (1, 2, 3)))
    (one,) = shown[0]
    assert plain(one.shop) == "3 figures of 3 sessions, 5/64 in to 7/64 in, median 6/64 in (2.4 mm)"
    assert [figure.phase for figure in one.own] == ["as found"]
    (drawing,) = drawings.values()
    assert plain(drawing.desc) == "as found: 3 figures, 5/64 in to 7/64 in, median 6/64 in."
    assert plain(drawing.told) == "3 figures, 3 sessions, median 6/64 in"


def test_nothing_is_drawn_where_there_is_nothing_to_compare() -> None:
    assert made(bench(1, gauge(5)), bench(2, gauge(6)))[0] == {}
    assert made(bench(1, gauge(5), gauge(6, "m-2"), gauge(7, "m-3")))[0] == {}


def test_a_usual_range_is_enough_to_be_compared_with() -> None:
    drawings, ((shown,),) = made(bench(1, action(5)))
    (drawing,) = drawings.values()
    assert len(drawing.plot.bands) == 1
    assert (drawing.told, drawing.plot.rule) == ("", "")
    assert shown.shop == ""
    assert shown.page is None
    (usual,) = shown.usual
    assert usual.other
    assert f"usual in the trade “strings”: {usual.text}" in drawing.desc


def test_what_is_not_settled_or_a_limit_only_is_not_drawn() -> None:
    limit = gauge(40, "m-limit", limit="at_most")
    unitless = gauge(50, "m-bare", unit=None)
    drawings, shown = made(*(bench(at, gauge(4 + at), limit, unitless) for at in (1, 2, 3)))
    (drawing,) = drawings.values()
    assert len(drawing.plot.spots) == 3
    assert all(len(one.own) == 1 for (one,) in shown)


def test_drawings_are_of_one_size_however_many_phases_there_are() -> None:
    one_lane, _ = made(*(bench(at, gauge(4 + at)) for at in (1, 2, 3)))
    four = [
        gauge(5 + at, f"m-{at}", phase=phase) for at, phase in enumerate(("as_found", "target", "as_left", "general"))
    ]
    four_lanes, shown = made(*(bench(at, *four) for at in (1, 2)))
    sizes = {(one.plot.width, one.plot.height) for one in (*one_lane.values(), *four_lanes.values())}
    assert sizes == {(WIDTH, HEIGHT)}
    assert {(one.width, one.height) for of in shown for one in of} == sizes
    for one in four_lanes.values():
        assert all(0 < spot.y < HEIGHT for spot in one.plot.spots)


@pytest.mark.parametrize("sessions", [9, 24])
def test_of_many_sessions_the_words_tell_only_that_they_are_many(sessions: int) -> None:
    words = "more than 8 sessions; the drawing tells how many, and their median"
    _, shown = made(*(bench(at, gauge(4 + at)) for at in range(1, sessions + 1)))
    assert {one.shop for (one,) in shown} == {words}
    _, again = made(*(bench(at, gauge(9 + at)) for at in range(1, sessions + 1)))
    assert {one.shop for (one,) in again} == {words}


@pytest.mark.parametrize("words", HOSTILE)
def test_a_drawing_holds_nothing_but_words(words: str) -> None:
    of = [bench(at, gauge(4 + at, attribute=words, item=words)) for at in (1, 2, 3)]
    drawings, shown = made(*of)
    for name, drawing in drawings.items():
        assert re.fullmatch(r"figures/plot-[a-z0-9-]*\.svg", name)
        root = ET.fromstring(Renderer().drawing(drawing))  # noqa: S314 (our own)
        assert {one.tag for one in root.iter()} <= {
            f"{SVG}{tag}" for tag in ("svg", "title", "desc", "style", "rect", "path", "text", "g")
        }
        assert not [one for one in root.iter() for attribute in one.attrib if attribute.startswith("on")]
    assert all(re.fullmatch(r"\.\./\.\./figures/plot-[a-z0-9-]*\.svg#s-[0-9a-f]+", one.plot) for (one,) in shown)


def shop_of(folder: Path, sessions: int) -> Shop:
    """A shop in which every session measured the same thing, and two of them another as well."""
    shop = Shop.open_or_create(folder / "shop", SHOP)
    for at in range(1, sessions + 1):
        one = bench(at, gauge(4 + at), *((relief(),) if at < 3 else ()))
        facts = one.record.session
        named = {"title": facts.title, "date": facts.date, "subject": f"lute {at}", "trade": "strings"}
        session = shop.add_session(SessionSettings.model_validate(named))
        write_atomic(session.record_file, one.record.to_json())
    return shop


def swap(shop: Shop, at: int, one: str, other: str) -> None:
    path = shop.sessions()[at].record_file
    text = path.read_text()
    assert one in text
    path.write_text(text.replace(one, other))


def inodes(shop: Shop) -> dict[str, int]:
    return {path.parent.name: path.stat().st_ino for path in shop.public.glob("sessions/*/index.html")}


def drawing_of(shop: Shop) -> str:
    return (shop.public / plot_file(GAUGE)).read_text()


def test_one_changed_figure_of_many_makes_its_drawing_anew_and_no_other_session(tmp_path: Path) -> None:
    shop = shop_of(tmp_path, 11)
    publish_shop(shop)
    before, drawn = inodes(shop), drawing_of(shop)
    swap(shop, 4, "0.140625", "0.1875")
    publish_shop(shop)
    after = inodes(shop)
    changed = {name for name in before if before[name] != after[name]}
    assert changed == {shop.sessions()[4].slug}
    assert drawing_of(shop) != drawn


def test_of_few_sessions_the_others_tell_the_new_figure_and_unconcerned_ones_stay(tmp_path: Path) -> None:
    shop = shop_of(tmp_path, 4)
    alone = shop.add_session(SessionSettings.model_validate({"title": "Alone", "date": "2033-01-01", "subject": "a"}))
    write_atomic(alone.record_file, bench(5, relief()).record.to_json())
    publish_shop(shop)
    before = inodes(shop)
    swap(shop, 3, "0.125", "0.25")
    publish_shop(shop)
    after = inodes(shop)
    assert before[alone.slug] == after[alone.slug]
    assert all(before[name] != after[name] for name in before if name != alone.slug)


@pytest.mark.browser
def test_chromium_makes_the_figures_of_the_named_session_stand_out(browser: Browser, tmp_path: Path) -> None:
    shop = shop_of(tmp_path, 3)
    publish_shop(shop)
    file = (shop.public / plot_file(GAUGE)).name
    anchors = ["", *(f"#{own_anchor(one.slug)}" for one in shop.sessions())]
    images = "".join(f'<img src="figures/{file}{anchor}" alt="">' for anchor in anchors)
    (shop.public / "try.html").write_text(f"<!DOCTYPE html>{images}")
    page = browser.new_page()
    page.goto((shop.public / "try.html").as_uri())
    page.wait_for_function("[...document.images].every(one => one.complete && one.naturalWidth)")
    shots = [one.screenshot() for one in page.locator("img").all()]
    page.close()
    assert len(set(shots)) == 4
