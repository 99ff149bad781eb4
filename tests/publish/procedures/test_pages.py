"""The pages of the procedure library, as they stand on the site, and the command that rules on them."""

from __future__ import annotations

import re
from pathlib import Path

import pypdfium2
import pytest
from axe_playwright_python.sync_playwright import Axe
from click.testing import CliRunner
from playwright.sync_api import Browser

from capture.archive import export_shop, import_shop
from capture.files import write_atomic
from capture.shop import Shop
from desk.cli import spokeshave
from publish import publish_shop
from publish.find import Index, read_query, search
from publish.procedures.rulings.log import ProcedureLog
from tests.publish.library.test_links import dead
from tests.publish.likeness import short_film
from tests.publish.procedures.shop import run, shop_of_bridges

PLAIN = r"\b150\s?°F"
NAME = "<b>Reglue</b> a bridge"


@pytest.fixture(scope="module")
def shop(tmp_path_factory: pytest.TempPathFactory) -> Shop:
    """Four sessions; the bridge has a name that is hostile, and a preferred version."""
    folder = tmp_path_factory.mktemp("procedures")
    made = shop_of_bridges(folder, short_film(folder / "film.webm", seconds=2))
    for words in (["rename", "glue the bridge", NAME], ["pin", "bridge", "job2", "--by", "Ada"]):
        run(made, *words)
    publish_shop(made)
    return made


@pytest.fixture(scope="module")
def page(shop: Shop) -> Path:
    (found,) = shop.public.glob("procedures/*eglue*.html")
    return found


def test_no_address_of_the_site_is_dead(shop: Shop) -> None:
    assert list(dead(shop.public)) == []


def test_names_are_text(page: Path) -> None:
    html = page.read_text()
    assert "&lt;b&gt;Reglue&lt;/b&gt;" in html
    assert "<b>Reglue" not in html


def test_session_work_and_front_pages_lead_to_it(shop: Shop, page: Path) -> None:
    public = shop.public
    assert f"../../procedures/{page.name}" in (public / "sessions/2031-01-01-job1/index.html").read_text()
    assert f"../../procedures/{page.name}" in next(public.glob("work/guitar-job1/index.html")).read_text()
    assert "procedures/index.html" in (public / "index.html").read_text()


def test_the_command_finds_it_by_name_step_and_figure(shop: Shop, page: Path) -> None:
    with Index.of(shop) as index:
        for question, sort in (
            ("reglue bridge", "procedure"),
            ("clean old glue", "step"),
            ("temperature 66 C", "figure"),
        ):
            hit = next(one for one in search(index, read_query(question)) if one.href.startswith("procedures/"))
            assert (hit.sort, hit.start, hit.href.partition("#")[0]) == (sort, None, f"procedures/{page.name}")
            assert f'id="{hit.href.partition("#")[2]}"' in page.read_text()
    told = CliRunner().invoke(spokeshave, ["find", "temperature", "66", "C", "--shop", str(shop.root)]).output
    # 150 to 170 °F are 65.6 to 76.7 °C.
    assert "Temperature, bridge: median 160\u00a0°F" in told


@pytest.mark.browser
def test_the_sites_search_finds_it_first(browser: Browser, shop: Shop, page: Path) -> None:
    with browser.new_context() as window:
        tab = window.new_page()
        tab.goto(f"{(shop.public / 'search/index.html').as_uri()}?q=clean%20old%20glue")
        tab.wait_for_selector("#hits a")
        first = tab.locator("#hits li").first
        assert "step over all sessions, in <b>Reglue</b> a bridge" in (first.text_content() or "")
        first.locator("a").click()
        tab.wait_for_url(f"**/procedures/{page.name}#step-*")


def test_what_a_session_takes_back_is_gone_at_the_next_publish(shop: Shop, page: Path) -> None:
    assert re.search(PLAIN, page.read_text())
    record = shop.session("job1").record_file
    before = record.read_text()
    write_atomic(record, before.replace('"stands": true', '"stands": false'))
    publish_shop(shop)
    assert not re.search(PLAIN, page.read_text())
    write_atomic(record, before)
    again = publish_shop(shop)
    assert re.search(PLAIN, page.read_text())
    assert again.anew > 0
    assert publish_shop(shop).anew == 0


def test_the_log_travels_with_the_shop(shop: Shop, tmp_path: Path) -> None:
    export_shop(shop, tmp_path / "shop.zip")
    there = import_shop(tmp_path / "shop.zip", tmp_path / "there")
    assert ProcedureLog.of(there).read() == ProcedureLog.of(shop).read()


@pytest.mark.browser
@pytest.mark.parametrize(("size", "scheme"), [((1280, 900), "light"), ((390, 844), "dark")])
def test_the_pages_are_open_to_everyone(
    browser: Browser, shop: Shop, page: Path, size: tuple[int, int], scheme: str
) -> None:
    context = browser.new_context(
        viewport={"width": size[0], "height": size[1]},
        color_scheme=scheme,  # type: ignore[arg-type]
    )
    shown = context.new_page()
    for path in (page, shop.public / "procedures/index.html", shop.public / "procedures/cards" / page.name):
        shown.goto(path.as_uri())
        assert Axe().run(shown).response["violations"] == []
        assert shown.evaluate("document.documentElement.scrollWidth <= innerWidth"), f"{path.name} scrolls sideways"
    context.close()


@pytest.mark.browser
@pytest.mark.parametrize("sheet", ["A4", "Letter"])
def test_the_bench_card_fits_its_sheet(browser: Browser, shop: Shop, page: Path, sheet: str) -> None:
    shown = browser.new_page()
    shown.goto((shop.public / "procedures/cards" / page.name).as_uri())
    assert len(pypdfium2.PdfDocument(shown.pdf(format=sheet))) == 1
    assert "Keep the heat off the lacquer" in shown.inner_text("body")
    shown.close()


def test_the_command_lists_shows_and_takes_back(shop: Shop) -> None:
    assert "3 sessions" in run(shop, "list")
    shown = run(shop, "show", "saddle")
    assert "Cut the saddle slot" in shown
    assert "[2 of 2]" in shown
    run(shop, "split", "bridge", "--session", "job3", "--as", "Quick bridge")
    assert "Quick bridge  (1 session" in run(shop, "list")
    run(shop, "merge", "Reglue", "Quick bridge")
    run(shop, "undo")
    run(shop, "undo")
    assert "Quick bridge" not in run(shop, "list")
