"""What stands, told from the store, is what reading every session gives: over random shops, and change upon change."""

from __future__ import annotations

import random
from pathlib import Path

import pytest

from capture.files import write_atomic
from capture.shop import SessionSettings, Shop
from extract.retractions import Sitting, retract
from extract.rulings import Hand, RulingLog
from publish import publish_shop
from publish.presswork.standing import EditionStanding
from publish.presswork.store import FILE, opened
from publish.presswork.sums import session_sum
from publish.standing import Standing
from tests.extract.retractions.bench import CELLO, VIOLA, figure, session, step, taking_back
from tests.publish.presswork.test_editions import add, anew, give_to_another_work, remove, rename, retitle, set_line
from tests.publish.session import SHOP
from tests.publish.test_site import digest


def keep(shop: Shop, one: Sitting, number: int) -> None:
    facts = one.record.session
    settings = {"title": f"{facts.title} {number}", "subject": facts.subject, "date": facts.date, "trade": facts.trade}
    made = shop.add_session(SessionSettings.model_validate(settings))
    write_atomic(made.record_file, one.record.to_json())


def some_session(dice: random.Random) -> Sitting:
    day = f"20{dice.randint(31, 33)}-0{dice.randint(1, 9)}-{dice.randint(10, 28)}-bar"
    subject = dice.choice([CELLO, VIOLA, "", CELLO.upper()])
    if dice.random() < 0.4:
        said, right = dice.sample(["3/32 in", "7/64 in", "1/8 in", "5/32 in"], 2)
        named = dice.choice(["in the first film", "in the last film", "once", "in the viola film"])
        return taking_back(day, said, right, f"{named} I said the bass bar was {said}", subject=subject)
    inches, display = dice.choice([(3 / 32, "3/32 in"), (7 / 64, "7/64 in"), (1 / 8, "1/8 in"), (0.125, "0.125 in")])
    bar = figure("m-bar", inches, display, item="sound post" if dice.random() < 0.3 else "bass bar")
    return session(day, bar, subject=subject, steps=(step(f"Plane the bar to {display}", "m-bar"),))


def say_which(shop: Shop, dice: random.Random) -> None:
    standing = Standing(shop)
    for one in shop.sessions():
        stands = standing.of(one)
        if stands.retractions and dice.random() < 0.5:
            candidates = range(len(stands.retractions[0].candidates))
            choice = dice.choice([None, *candidates])
            RulingLog(one.rulings_file).append(retract(stands.proofed, stands.retractions[0], choice, Hand()))


def redate(shop: Shop, dice: random.Random) -> None:
    sessions = shop.sessions()
    if sessions:
        path = dice.choice(sessions).folder / "session.toml"
        lines = path.read_text().splitlines()
        day = f"date = 20{dice.randint(31, 33)}-05-05"
        path.write_text("\n".join(day if line.startswith("date =") else line for line in lines) + "\n")


def new(shop: Shop, dice: random.Random) -> None:
    keep(shop, some_session(dice), dice.randint(0, 999))


CHANGES = (say_which, redate, new, add, remove, rename, retitle, give_to_another_work)


@pytest.mark.parametrize("seed", range(12))
def test_it_is_what_reading_everything_gives(tmp_path: Path, seed: int) -> None:
    dice = random.Random(seed)  # noqa: S311 (a row of changes that comes again)
    shop = Shop.open_or_create(tmp_path / "shop", SHOP)
    for number in range(8):
        keep(shop, some_session(dice), number)
    last: dict[str, str] = {}
    for _ in range(6):
        dice.choice(CHANGES)(shop, dice)
        sums = {one.slug: session_sum(one.folder, "") for one in shop.sessions()}
        untouched = {slug for slug, total in sums.items() if last.get(slug) == total}
        last = sums
        with opened(shop.root / FILE) as store:
            kept = EditionStanding(shop, store, shop.sessions(), untouched)
            whole = Standing(shop)
            for one in shop.sessions():
                assert kept.of(one) == whole.of(one), one.slug
                assert bool(kept.bearing(one)) == bool(whole.bearing(one)), one.slug
            store.commit()


@pytest.mark.parametrize("seed", range(3))
def test_sites_with_retractions_are_what_making_all_anew_gives(tmp_path: Path, seed: int) -> None:
    dice = random.Random(seed)  # noqa: S311 (a row of changes that comes again)
    shop = Shop.open_or_create(tmp_path / "shop", SHOP)
    for number in range(7):
        keep(shop, some_session(dice), number)
    publish_shop(shop)
    for _ in range(5):
        dice.choice(CHANGES)(shop, dice)
        publish_shop(shop)
        assert digest(shop.public) == anew(shop, tmp_path / "anew")


def test_a_retraction_is_not_traced_again_for_what_has_nothing_to_do_with_it(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    shop = Shop.open_or_create(tmp_path / "shop", SHOP)
    keep(shop, session("2031-02-03-bar", figure("m-bar", 3 / 32, "3/32 in")), 1)
    keep(shop, taking_back(), 2)
    drying = figure("m-dry", 0.5, "1/2 h", attribute="drying time", item="varnish", kind="time", unit="hour")
    keep(shop, session("2031-02-01-varnish", drying, subject="a table"), 3)
    publish_shop(shop)
    monkeypatch.setattr("publish.presswork.standing.trace", lambda *_: pytest.fail("traced again"))
    set_line(shop.sessions()[0], "title", "Varnishing")
    publish_shop(shop)
