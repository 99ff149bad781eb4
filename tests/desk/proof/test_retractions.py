"""What is taken back of an earlier session is an item of its own, with the statements that may be meant."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import BrowserContext, Page, expect

from capture.files import write_atomic
from capture.shop import Session, SessionSettings, Shop
from extract.retractions import Sitting
from extract.rulings import Retract, RulingLog
from tests.desk.proof.conftest import Asking
from tests.desk.serving import proofing
from tests.extract.retractions.bench import FIRST, figure, taking_back
from tests.extract.retractions.bench import session as sitting
from tests.publish.narration import transcript

BAR = figure("m-bar", 3 / 32, "3/32 in")
EDGE = figure("m-edge", 3 / 32, "3/32 in", 20.0, where="lower end")


def kept(shop: Shop, one: Sitting, film: Path) -> Session:
    facts = one.record.session
    settings = {"title": facts.title, "subject": facts.subject, "date": facts.date, "recording": str(film)}
    made = shop.add_session(SessionSettings.model_validate(settings))
    write_atomic(made.record_file, one.record.to_json())
    write_atomic(made.transcript_file, transcript().to_json())
    return made


@pytest.fixture
def pair(shop: Shop, film: Path) -> tuple[Session, Session]:
    """An earlier session that says the figure of two places, and the one that takes it back."""
    first = kept(shop, sitting(FIRST, BAR, EDGE), film)
    return first, kept(shop, taking_back(), film)


@pytest.fixture
def at_later(asking: Asking, pair: tuple[Session, Session]) -> Asking:
    asking.home = f"/proof/sessions/{pair[1].slug}/"
    return asking


def test_it_is_an_item_with_its_candidates_their_words_and_reasons(
    at_later: Asking, pair: tuple[Session, Session]
) -> None:
    item = at_later.item("c-back")
    assert (item["group"], item["wanted"], item["settled"]) == ("retraction", "say which", False)
    assert [one["item"] for one in item["candidates"]] == ["m-bar", "m-edge"]
    first = item["candidates"][0]
    assert first["session"] == pair[0].slug
    assert first["picture"] == "video"
    assert "the same figure: 3/32 in" in first["reasons"]
    assert first["before"]
    assert at_later.person.get(f"{first['address']}stills/{round(first['start'] * 10)}.jpg").status_code == 200


def test_one_is_confirmed_and_the_earlier_session_shows_it(at_later: Asking, pair: tuple[Session, Session]) -> None:
    first, _ = pair
    assert at_later.rule("retract", "c-back", of="m-edge", text=first.slug)["kept"]
    item = at_later.item("c-back")
    assert item["settled"]
    assert [one["item"] for one in item["candidates"] if one["chosen"]] == ["m-edge"]
    at_later.home = f"/proof/sessions/{first.slug}/"
    edge = at_later.item("m-edge", "figures")
    assert edge["ruled"]["words"] == "read 7/64 in, put right in Session bass-bar-again"
    galley = at_later.person.get(f"/proof/galley/sessions/{first.slug}/index.html").text
    assert "said on film: " in galley


def test_none_of_these_is_kept_and_undo_opens_it_again(at_later: Asking) -> None:
    assert at_later.rule("retract", "c-back")["kept"]
    assert at_later.item("c-back")["ruled"]["words"] == "none of these"
    assert at_later.rule("undo", of=at_later.state()["undo"]["id"])["kept"]
    assert not at_later.item("c-back")["settled"]


def test_what_is_no_candidate_is_refused_in_one_line(at_later: Asking, pair: tuple[Session, Session]) -> None:
    result = at_later.rule("retract", "c-back", of="m-gone", text=pair[0].slug)
    assert (result["kept"], result["problem"].count("\n")) == (False, 0)
    assert "no candidate any more" in result["problem"]
    assert not at_later.rule("retract", "m-right", of="m-bar", text=pair[0].slug)["kept"]


def test_added_errata_and_jobs_stand_on_a_sheet_of_their_own(asking: Asking) -> None:
    before = asking.state()
    assert before["counts"]["errata"] == len(before["errata"])
    added = (
        asking.rule("add", kind="correction", second=60.0, said="two layers", to={"text": "three layers"}),
        asking.rule("add", kind="follow_up", second=70.0, to={"text": "Buy hide glue"}),
        asking.rule("add", kind="doubt", second=80.0, to={"text": "Whether it is spruce"}),
    )
    assert all(one["kept"] for one in added)
    told = {one["title"]: one for one in asking.state()["errata"]}
    assert told["“two layers”: read three layers"]["group"] == "correction"
    assert told["Buy hide glue"]["group"] == "follow_up"
    assert told["Whether it is spruce"]["group"] == "doubt"
    for title in ("“two layers”: read three layers", "Buy hide glue"):
        asking.rule("strike", told[title]["id"])
    assert {one["group"] for one in asking.state()["errata"][-2:]} == {"struck"}
    asking.rule("stet", told["Buy hide glue"]["id"])
    assert asking.item(told["Buy hide glue"]["id"], "errata")["group"] == "follow_up"


@pytest.fixture
def page(shop: Shop, pair: tuple[Session, Session], window: BrowserContext) -> Iterator[Page]:
    with proofing(shop.root, pair[1].slug) as (_, address):
        page = window.new_page()
        page.goto(address)
        yield page


@pytest.mark.browser
def test_in_the_browser_one_key_says_which(page: Page, pair: tuple[Session, Session]) -> None:
    item = page.locator(".entry[data-item=c-back]")
    expect(item.locator(".candidates > li")).to_have_count(2)
    item.locator(".candidates button", has_text="Play").first.click()
    clip = item.locator(".candidates video").first
    expect(clip).to_have_count(1)
    page.wait_for_function("document.querySelector('.candidates video').currentTime > 8")
    page.keyboard.press("Escape")
    item.locator(".turn").focus()
    page.keyboard.press("2")
    expect(item.locator(".ruled")).to_contain_text("takes back 3/32 in")
    (given,) = RulingLog(pair[1].rulings_file).read().rulings
    assert isinstance(given, Retract)
    assert given.statement is not None
    assert given.statement.item.id == "m-edge"


@pytest.mark.browser
def test_in_the_browser_none_of_them_is_a_button(page: Page, pair: tuple[Session, Session]) -> None:
    page.locator(".entry[data-item=c-back] button.none").click()
    expect(page.locator(".entry[data-item=c-back] .ruled")).to_have_text("none of these")
    page.keyboard.press("e")
    expect(page.locator("#errata .entry")).to_have_count(1)
