"""After the next publish every page shows what a later session took back, and no erratum vanishes silently."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from capture.files import write_atomic
from capture.shop import Session, SessionSettings, Shop
from extract.retractions import Sitting, retract
from extract.rulings import Hand, RulingLog
from publish import publish_shop
from publish.find import Hit, Index, read_query, search
from publish.gather import gather
from publish.ledger import read_ledger
from publish.standing import Standing
from tests.extract.retractions.bench import FIRST, SECOND, figure, session, step, taking_back
from tests.publish.hostile import HOSTILE
from tests.publish.session import SHOP


def kept(shop: Shop, one: Sitting) -> Session:
    facts = one.record.session
    settings = {"title": facts.title, "subject": facts.subject, "date": facts.date, "trade": facts.trade}
    made = shop.add_session(SessionSettings.model_validate(settings))
    write_atomic(made.record_file, one.record.to_json())
    return made


@pytest.fixture
def pair(tmp_path: Path) -> tuple[Shop, Session, Session]:
    """A shop of three sessions: the bar at 3/32 in, which the second takes back, and twice at a figure of its own."""
    shop = Shop.open_or_create(tmp_path / "shop", SHOP)
    bar = figure("m-bar", 3 / 32, "3/32 in")
    first = kept(shop, session(FIRST, bar, steps=(step("Plane the bar to 3/32 in", "m-bar"),)))
    second = kept(shop, taking_back())
    kept(shop, session("2031-05-01-viola", figure("m-other", 1 / 8, "1/8 in"), subject="a viola"))
    return shop, first, second


def text(shop: Shop, name: str) -> str:
    return (shop.public / name).read_text("utf-8").replace("\N{NO-BREAK SPACE}", " ")


def rule(shop: Shop, session: Session, candidate: int | None) -> None:
    stands = Standing(shop).of(session)
    RulingLog(session.rulings_file).append(retract(stands.proofed, stands.retractions[0], candidate, Hand()))


def found(shop: Shop, question: str) -> tuple[Hit, ...]:
    with Index.of(shop) as index:
        return search(index, read_query(question))


def test_every_page_shows_it(pair: tuple[Shop, Session, Session]) -> None:
    shop, first, second = pair
    publish_shop(shop)
    page = text(shop, f"sessions/{first.slug}/index.html")
    assert "said on film: " in page
    assert f"../{second.slug}/index.html#c-back" in page
    assert "no person has confirmed that" in page
    card = re.sub(r"<[^>]+>", "", text(shop, f"sessions/{first.slug}/card.html"))
    assert "7/64 in" in card
    assert "3/32 in" not in card
    assert f"../{first.slug}/index.html#m-bar" in text(shop, f"sessions/{second.slug}/index.html")
    assert "put right in" in text(shop, "errata.html")
    assert f"Said in {gathered_title(shop, 0)} and put right in" in text(shop, "errata.atom")


def gathered_title(shop: Shop, at: int) -> str:
    return gather(shop)[0][at].source.record.session.title


def test_the_right_figure_counts_once_and_the_wrong_one_not_at_all(pair: tuple[Shop, Session, Session]) -> None:
    shop, _, second = pair
    publish_shop(shop)
    page = text(shop, "figures/height-bass-bar.html")
    # 7/64 and 1/8 in: their middle is 15/128 in, which is worked out by hand.
    assert "15</span>/<span>128" in page
    rule(shop, second, None)
    publish_shop(shop)
    # Said to be of none of these: 3/32, 7/64 and 1/8 in, whose middle is 7/64.
    assert "15</span>/<span>128" not in text(shop, "figures/height-bass-bar.html")


def test_find_knows_the_right_figure_and_where_it_was_put_right(pair: tuple[Shop, Session, Session]) -> None:
    shop, first, second = pair
    hits = found(shop, "bass bar 7/64")
    told = {one.session: one.told for one in hits if one.sort == "figure"}
    assert "said was 3/32 in, put right in" in told[first.slug].replace("\N{NO-BREAK SPACE}", " ")
    hits = found(shop, "3/32")
    assert first.slug not in {one.session for one in hits if one.sort == "figure"}
    rule(shop, second, None)
    hits = found(shop, "3/32")
    assert first.slug in {one.session for one in hits if one.sort == "figure"}


def test_confirmed_it_is_no_longer_marked_as_proposed(pair: tuple[Shop, Session, Session]) -> None:
    shop, first, second = pair
    rule(shop, second, 0)
    published = publish_shop(shop)
    assert "no person has confirmed" not in text(shop, f"sessions/{first.slug}/index.html")
    assert not [one for one in published.warnings if "confirm it" in one]


def test_undone_it_is_listed_as_taken_out(pair: tuple[Shop, Session, Session]) -> None:
    shop, first, second = pair
    published = publish_shop(shop)
    assert [one for one in published.warnings if "is taken to mean height, bass bar: 3/32 in" in one]
    assert [one.session for one in read_ledger(shop.errata_file).told_once] == [first.slug]
    rule(shop, second, None)
    publish_shop(shop)
    ledger = read_ledger(shop.errata_file)
    assert [one.session for one in ledger.taken_out] == [first.slug]
    assert [one.session for one in ledger.told_once] == [second.slug]
    assert "Errata taken out" in text(shop, "errata.html")


def test_a_session_that_cannot_be_read_harms_no_other(pair: tuple[Shop, Session, Session]) -> None:
    shop, first, second = pair
    second.record_file.write_text("{")
    publish_shop(shop)
    assert "said on film" not in text(shop, f"sessions/{first.slug}/index.html")


@pytest.mark.parametrize("words", HOSTILE)
def test_words_of_another_session_stay_words(tmp_path: Path, words: str) -> None:
    shop = Shop.open_or_create(tmp_path / "shop", SHOP)
    first = kept(shop, session(FIRST, figure("m-bar", 3 / 32, "3/32 in")))
    back = taking_back()
    facts = back.record.session.model_copy(update={"title": f"{words} again"})
    second = kept(shop, Sitting(SECOND, back.record.model_copy(update={"session": facts})))
    publish_shop(shop)
    for name in (f"sessions/{first.slug}/index.html", f"sessions/{second.slug}/index.html", "errata.html"):
        page = text(shop, name)
        assert "<script>window.broken" not in page
        assert "<img src=x" not in page
        assert "onfocus='window" not in page.replace("&#39;", "’")
