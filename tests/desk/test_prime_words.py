"""What the ear keeps in mind: names from the trade and from past sessions of the same work, and no figure of them."""

from __future__ import annotations

import re
from datetime import date
from pathlib import Path

from capture.shop import Session, SessionSettings, Shop
from desk.prime_words import MOST, past_words, prime_for
from extract.record import Measure
from tests.publish.session import record as past_record

SLOT = tuple(one.model_copy(update={"item": "saddle slot", "attribute": "width"}) for one in past_record().measures)


def _session(shop: Shop, subject: str, day: int, measures: tuple[Measure, ...] = ()) -> Session:
    session = shop.add_session(SessionSettings(title=f"Day {day}", date=date(2025, 3, day), subject=subject))
    if measures:
        session.record_file.write_text(
            past_record().model_copy(update={"measures": measures}).model_dump_json(), "utf-8"
        )
    return session


def test_names_of_the_same_work_are_kept_in_mind_and_no_figure(tmp_path: Path) -> None:
    shop = Shop.open_or_create(tmp_path / "shop")
    _session(shop, "Old Bustard", 1, SLOT)
    words = past_words(shop, _session(shop, "Old Bustard", 2))
    assert "saddle slot" in words
    assert len(words) <= MOST
    assert not re.search(r"\d|thirty-second|sixty-fourth", " ".join(words))
    assert "the saddle slot" in prime_for("", words).lower()


def test_other_work_adds_nothing(tmp_path: Path) -> None:
    shop = Shop.open_or_create(tmp_path / "shop")
    _session(shop, "Old Bustard", 1, SLOT)
    assert past_words(shop, _session(shop, "Another", 2)) == ()
    assert past_words(shop, _session(shop, "", 3)) == ()


def test_a_past_session_that_cannot_be_read_is_passed_over(tmp_path: Path) -> None:
    shop = Shop.open_or_create(tmp_path / "shop")
    _session(shop, "Old Bustard", 1).record_file.write_text("{", "utf-8")
    assert past_words(shop, _session(shop, "Old Bustard", 2)) == ()


def test_the_trade_s_own_words_stand_behind() -> None:
    prime = prime_for("strings", ("saddle slot",))
    assert prime.index("fret height") < prime.lower().index("the saddle slot") < prime.index("five sixty-fourths")
