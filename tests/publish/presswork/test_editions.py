"""However a site came to be, edition upon edition, it is byte for byte what making all of it anew gives."""

from __future__ import annotations

import random
import shutil
from collections.abc import Callable
from contextlib import suppress
from pathlib import Path

import pytest

from capture.files import write_atomic
from capture.shop import Session, Shop
from extract.record import Record
from extract.rulings import Hand, RulingError, RulingLog, apply, strike
from publish import publish_shop
from publish.gather import gather
from publish.kit import kit_of
from publish.kit.rulings import giving
from publish.kit.rulings.log import KitLog
from publish.kit.rulings.model import Ruling as KitRuling
from publish.presswork import stamps
from publish.presswork.store import FILE
from tests.publish.library.sessions import shop_of_sessions
from tests.publish.likeness import picture
from tests.publish.test_site import digest

Change = Callable[[Shop, random.Random], None]


def anew(shop: Shop, folder: Path) -> dict[str, str]:
    """The whole site of a copy of the shop that knows nothing of earlier editions."""
    shutil.rmtree(folder, ignore_errors=True)
    shutil.copytree(shop.root, folder, ignore=shutil.ignore_patterns("public", FILE))
    copy = Shop.open(folder)
    publish_shop(copy)
    return digest(copy.public)


def some(shop: Shop, dice: random.Random) -> Session | None:
    sessions = shop.sessions()
    return dice.choice(sessions) if sessions else None


def readable(shop: Shop, dice: random.Random) -> Session | None:
    """Some session; none where its record was broken before."""
    one = some(shop, dice)
    return None if one is None or one.record_file.read_bytes() == b"{" else one


def record_of(session: Session) -> Record:
    return Record.model_validate_json(session.record_file.read_bytes())


def change_a_record(shop: Shop, dice: random.Random) -> None:
    if (one := readable(shop, dice)) is not None:
        record = record_of(one)
        figures = [
            figure.model_copy(update={"hedged": not figure.hedged}) if dice.random() < 0.5 else figure
            for figure in record.measures
        ]
        write_atomic(one.record_file, record.model_copy(update={"measures": tuple(figures)}).to_json())


def lose_figures(shop: Shop, dice: random.Random) -> None:
    if (one := readable(shop, dice)) is not None:
        record = record_of(one)
        bare = record.model_copy(update={"measures": (), "steps": (), "findings": (), "corrections": ()})
        write_atomic(one.record_file, bare.to_json())


def rule(shop: Shop, dice: random.Random) -> None:
    if (one := readable(shop, dice)) is not None and (record := record_of(one)).measures:
        log, figure = RulingLog(one.rulings_file), dice.choice(record.measures)
        log.append(strike(apply(record, log.read().rulings), figure.id, Hand("Wilhelmina Trask")))


def retitle(shop: Shop, dice: random.Random) -> None:
    if (one := some(shop, dice)) is not None:
        set_line(one, "title", f"Title {dice.randint(0, 99)}")


def give_to_another_work(shop: Shop, dice: random.Random) -> None:
    if (one := some(shop, dice)) is not None:
        set_line(one, "subject", dice.choice(["", "Heron", "heron", "tenor ukulele", "*"]))


def set_line(session: Session, key: str, value: str) -> None:
    path = session.folder / "session.toml"
    lines = [f'{key} = "{value}"' if one.startswith(f"{key} =") else one for one in path.read_text().splitlines()]
    path.write_text("\n".join(lines) + "\n")


def add(shop: Shop, dice: random.Random) -> None:
    if (one := some(shop, dice)) is not None:
        day = f"20{dice.randint(30, 40)}-0{dice.randint(1, 9)}-11"
        folder = shop.root / "sessions" / f"{day}-copy-{dice.randint(0, 999)}"
        if not folder.exists():
            shutil.copytree(one.folder, folder)
            set_line(Session(folder), "title", "A copy")


def remove(shop: Shop, dice: random.Random) -> None:
    if (one := some(shop, dice)) is not None:
        shop.remove(one)


def rename(shop: Shop, dice: random.Random) -> None:
    if (one := some(shop, dice)) is not None:
        target = one.folder.with_name(f"{one.folder.name[:10]}-renamed-{dice.randint(0, 999)}")
        if not target.exists():
            one.folder.rename(target)


def break_a_record(shop: Shop, dice: random.Random) -> None:
    if (one := some(shop, dice)) is not None:
        one.record_file.write_text("{")


def write_a_note(shop: Shop, dice: random.Random) -> None:
    if (one := some(shop, dice)) is not None:
        picture(one.folder / "stills" / f"{dice.randint(0, 3)}.png")
        (one.folder / "notes.md").write_text(f"# Note\n\n![one](stills/{dice.randint(0, 3)}.png)\n")


def lose_the_film(shop: Shop, dice: random.Random) -> None:
    if (one := some(shop, dice)) is not None:
        set_line(one, "recording", dice.choice(["", "gone.webm"]))


def set_the_shop(shop: Shop, dice: random.Random) -> None:
    path = shop.settings_file
    path.write_text(path.read_text().replace('units = "as_said"', 'units = "metric"').replace("Trask", "Trasker"))


def spoil_the_site(shop: Shop, dice: random.Random) -> None:
    """A person's hand, or a disk, changes files of the site itself."""
    files = sorted(path for path in shop.public.rglob("*.html"))
    for path in dice.sample(files, min(3, len(files))):
        if dice.random() < 0.5:
            path.unlink()
        else:
            path.write_text(path.read_text().replace("a", "b"))


def spoil_the_store(shop: Shop, dice: random.Random) -> None:
    path = shop.root / FILE
    if path.is_file():
        data = bytearray(path.read_bytes())
        for _ in range(40):
            data[dice.randrange(len(data))] ^= 0xFF
        path.write_bytes(data)


def name_the_kit(shop: Shop, dice: random.Random) -> None:
    """A person renames, merges, splits, or takes back, what they can."""
    log = KitLog.of(shop)
    kit = kit_of(one.source for one in gather(shop)[0])
    with suppress(RulingError, IndexError):
        one, other = dice.choice(kit), dice.choice(kit)
        acts: tuple[Callable[[], KitRuling], ...] = (
            lambda: giving.rename(kit, one, f"Name {dice.randint(0, 5)}", Hand()),
            lambda: giving.merge(kit, [one, other], "", Hand()),
            lambda: giving.split(kit, one, [one.said[0].name], "", Hand()),
            lambda: giving.undo(log.read().rulings, None, Hand()),
        )
        log.append(dice.choice(acts)())


def lose_the_store(shop: Shop, dice: random.Random) -> None:
    (shop.root / FILE).unlink(missing_ok=True)


CHANGES: tuple[Change, ...] = (
    change_a_record, lose_figures, rule, retitle, give_to_another_work, add, remove, rename, break_a_record,
    write_a_note, lose_the_film, set_the_shop, spoil_the_site, spoil_the_store, lose_the_store,
    name_the_kit,
)  # fmt: skip


@pytest.fixture(params=[False, True], ids=["read", "stamped"])
def _stamped(request: pytest.FixtureRequest, monkeypatch: pytest.MonkeyPatch) -> None:
    """Sessions are read, since they were changed a moment ago, or known by the stamps of their files."""
    if request.param:
        monkeypatch.setattr(stamps, "COARSEST", -1_000_000_000)


@pytest.mark.usefixtures("_stamped")
@pytest.mark.parametrize("seed", range(4))
def test_any_row_of_editions_gives_what_making_all_anew_gives(tmp_path: Path, seed: int) -> None:
    dice = random.Random(seed)  # noqa: S311 (a row of changes that comes again)
    shop = shop_of_sessions(tmp_path)
    publish_shop(shop)
    for _ in range(6):
        made = [dice.choice(CHANGES) for _ in range(dice.randint(1, 3))]
        for change in made:
            change(shop, dice)
        publish_shop(shop)
        assert digest(shop.public) == anew(shop, tmp_path / "anew"), [one.__name__ for one in made]


@pytest.mark.parametrize("change", CHANGES, ids=lambda one: one.__name__)
def test_each_change_alone_gives_what_making_all_anew_gives(tmp_path: Path, change: Change) -> None:
    shop = shop_of_sessions(tmp_path)
    publish_shop(shop)
    change(shop, random.Random(7))  # noqa: S311 (the same each time)
    publish_shop(shop)
    assert digest(shop.public) == anew(shop, tmp_path / "anew")
