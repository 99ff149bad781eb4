"""A procedure that was done often has a page to work from, and another one with every version in full."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Browser

from capture.shop import Shop
from publish import publish_shop
from publish.procedures import procedures_of
from publish.procedures.every import version_in_full
from publish.procedures.library import MANY
from publish.procedures.pages import figures_of, procedure_page
from publish.render import Renderer
from tests.publish.library.test_links import dead
from tests.publish.likeness import short_film
from tests.publish.presswork.test_editions import anew, set_line
from tests.publish.procedures.invented import BRIDGE, SHOP, temperature, work
from tests.publish.procedures.shop import run, shop_of_many
from tests.publish.test_site import digest

NUMBER = 14
PAGE, EVERY = "procedures/reglue-the-bridge.html", "procedures/every/reglue-the-bridge.html"


@pytest.fixture(scope="module")
def shop(tmp_path_factory: pytest.TempPathFactory) -> Shop:
    """Fourteen bridges; the third one's version is preferred."""
    folder = tmp_path_factory.mktemp("many")
    made = shop_of_many(folder, NUMBER, short_film(folder / "film.webm", seconds=2))
    run(made, "pin", "reglue-the-bridge", "job2")
    publish_shop(made)
    return made


def bridges(number: int, *, other: int = -1) -> str:
    """The page of so many bridges; the one at the place `other` has words of its own."""
    works = [
        work(f"{2031 + at // 12}-{at % 12 + 1:02d}-01-j{at}",
             ("Wash the bridge", *BRIDGE[0]) if at == other else BRIDGE[0],
             measures=[temperature(f"{at}", 140.0 + at)])
        for at in range(number)
    ]  # fmt: skip
    (one,) = procedures_of(works).all
    return Renderer().library(procedure_page(one, SHOP, figures_of(one)))


def test_the_preferred_and_the_newest_version_stand_in_full(shop: Shop) -> None:
    html = (shop.public / PAGE).read_text()
    for name, session in (("preferred", "2031-03-01-job2"), ("newest", "2032-02-01-job13")):
        section = re.search(rf'<section [^>]*"{name}-heading">.*?</section>', html, re.DOTALL)
        assert section is not None
        assert f"../sessions/{session}/index.html" in section[0]
        assert "Clamp the bridge" in section[0]


def test_words_are_told_once_and_the_most_usual_first(shop: Shop) -> None:
    html = (shop.public / PAGE).read_text()
    heat = re.search(r'<li id="step-3".*?</ul>\s*</div>', html, re.DOTALL)
    assert heat is not None
    # Fourteen in three ways: five, five and four.
    assert re.findall(r"in (\d+), last in", heat[0]) == ["5", "5", "4"]
    assert "Warm the bridge with the heat blanket" in heat[0]


def test_every_version_figure_and_second_is_one_page_away(shop: Shop) -> None:
    page, every = ((shop.public / name).read_text() for name in (PAGE, EVERY))
    assert 'href="every/reglue-the-bridge.html"' in page
    for at, session in enumerate(shop.sessions()):
        assert f"../sessions/{session.slug}/index.html" in page
        assert f'id="v-{session.slug}"' in every
        assert f"../../sessions/{session.slug}/film.webm#t=10" in every
        assert re.search(rf"\b{140 + at}\s°F", every)
        assert not re.search(rf"\b{140 + at}\s°F</span></a>", page)
    assert "median 146.5" in page.replace("\u00a0", " ")
    assert every.count("Keep the heat off the lacquer.") == 1
    assert not list(dead(shop.public))


def test_a_page_grows_by_a_line_a_version() -> None:
    few, many = len(bridges(20)), len(bridges(60))
    assert (many - few) / 40 < 520
    assert len(bridges(MANY - 1)) > 0
    assert "every/" not in bridges(MANY - 1)


def test_what_one_session_alone_did_is_told_by_its_number() -> None:
    html = bridges(8, other=3)
    assert "1 other step only one session has" in html
    assert "Wash the bridge" not in re.sub(r"(?s)<section[^>]*newest.*?</section>", "", html)


def test_after_a_change_the_other_versions_are_not_set_again(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    shop = shop_of_many(tmp_path, 9)
    publish_shop(shop)
    for title in ("Bridge", "Another bridge"):
        set_line(shop.sessions()[4], "title", title)
        done: list[str] = []
        monkeypatch.setattr(Renderer, "version", _counted(done))
        publish_shop(shop)
        assert done == [shop.sessions()[4].slug]
        assert digest(shop.public) == anew(shop, tmp_path / "anew")
    shop.remove(shop.sessions()[0])
    done.clear()
    publish_shop(shop)
    assert done == []
    assert digest(shop.public) == anew(shop, tmp_path / "anew")


def _counted(done: list[str]):  # type: ignore[no-untyped-def]
    plain = Renderer.version

    def version(self: Renderer, of):  # type: ignore[no-untyped-def]
        done.append(of.anchor.removeprefix("v-"))
        return plain(self, of)

    return version


def test_where_fewer_are_left_the_page_of_every_version_leads_to_the_procedure(tmp_path: Path) -> None:
    shop = shop_of_many(tmp_path, MANY)
    publish_shop(shop)
    assert (shop.public / EVERY).is_file()
    shop.remove(shop.sessions()[0])
    publish_shop(shop)
    assert 'content="0; url=../reglue-the-bridge.html"' in (shop.public / EVERY).read_text()
    assert digest(shop.public) == anew(shop, tmp_path / "anew")


def test_a_versions_links_lead_from_its_own_folder() -> None:
    (one,) = procedures_of([work(f"2031-0{at}-01-a{at}", BRIDGE[0]) for at in range(1, 3)]).all
    made = version_in_full(one.versions[0])
    assert made.told.session.href.startswith("../../sessions/2031-01-01-a1/")
    assert all(step.moment.href is None or step.moment.href.startswith("../../sessions/") for step in made.steps)


@pytest.mark.browser
@pytest.mark.parametrize(("size", "scheme"), [((1280, 900), "light"), ((390, 844), "dark")])
def test_both_pages_are_open_to_everyone(browser: Browser, shop: Shop, size: tuple[int, int], scheme: str) -> None:
    context = browser.new_context(
        viewport={"width": size[0], "height": size[1]},
        color_scheme=scheme,  # type: ignore[arg-type]
    )
    shown = context.new_page()
    for name in (PAGE, EVERY):
        shown.goto((shop.public / name).as_uri())
        assert Axe().run(shown).response["violations"] == []
        assert shown.evaluate("document.documentElement.scrollWidth <= innerWidth"), f"{name} scrolls sideways"
    context.close()
