"""Everything that a shop can hold goes into its archive and out again: export, import, export gives the same bytes."""

from __future__ import annotations

import os
import zipfile
from pathlib import Path
from typing import Any

import pytest
from click.testing import CliRunner
from pydantic import TypeAdapter

from capture.archive import export_shop, import_shop
from capture.archive.bag import ArchiveError
from capture.files import write_atomic
from capture.recording.marks import Mark, keep_marks
from capture.shop import Session, SessionSettings, Shop
from desk.cli import spokeshave
from extract.record import Record
from extract.retractions import retract
from extract.rulings import (
    Hand,
    Proofed,
    RulingLog,
    add,
    amend,
    merge,
    note,
    pass_for_press,
    redo,
    reorder,
    split,
    stet,
    strike,
    undo,
)
from extract.rulings.line_log import LineLog
from extract.rulings.model import Ruling
from publish import publish_shop
from publish.kit.rulings.log import KitLog
from publish.procedures.rulings.log import ProcedureLog
from publish.standing import Standing
from tests.extract.retractions.bench import FIRST, figure, session, step, taking_back
from tests.publish.kit.bench import BENCH, record
from tests.publish.library.sessions import shop_of_sessions
from tests.publish.likeness import picture
from tests.publish.procedures.invented import BRIDGE, SADDLE
from tests.publish.procedures.invented import source as bridge_source
from tests.publish.test_site import digest

ADA = Hand("Ada Penhaligon (invented)").by


@pytest.fixture(scope="module")
def shop(tmp_path_factory: pytest.TempPathFactory) -> Shop:
    """A published shop with every kind of file, and every kind of ruling, in it."""
    made = shop_of_sessions(tmp_path_factory.mktemp("whole"))
    for of in BENCH:
        keep(made, record(*of))
    keep(made, bridge_source("2034-01-01-ash", BRIDGE[0]).record)
    keep(made, bridge_source("2034-02-01-birch", BRIDGE[1], SADDLE[0]).record)
    bar = figure("m-bar", 3 / 32, "3/32 in")
    keep(made, session(FIRST, bar, steps=(step("Plane the bar to 3/32 in", "m-bar"),)).record)
    back = keep(made, taking_back().record)
    lay_beside(made)
    publish_shop(made)
    rule_on_a_session(made, made.session("the-heron-a-lifting-bridge"))
    stands = Standing(made).of(back)
    RulingLog(back.rulings_file).append(retract(stands.proofed, stands.retractions[0], 0, Hand(ADA)))
    rule_on_the_shop(made)
    publish_shop(made)
    return made


def keep(shop: Shop, one: Record) -> Session:
    facts = one.session
    told = {"title": facts.title, "subject": facts.subject or "", "date": facts.date, "trade": facts.trade or ""}
    kept = shop.add_session(SessionSettings.model_validate(told))
    write_atomic(kept.record_file, one.to_json())
    return kept


def lay_beside(shop: Shop) -> None:
    """Words, pictures, marks, a recording that was cut off, what was heard of one so far, and a person's own files."""
    first, second, *_ = shop.sessions()
    (first.folder / "notes.md").write_text("# A note\n\n![one](pictures/one%20—%20lück.png)\n")
    picture(first.folder / "pictures" / "one — lück.png")
    picture(first.folder / "stills" / "taken-00012.5.jpg")
    keep_marks(second.folder, (Mark(second=12.5, note="here"),))
    (second.folder / "recording.wav").write_bytes(b"RIFF" + bytes(range(256)))
    (second.folder / "recording.journal").write_text("{}\n")
    (second.folder / "hearing.json").write_text("{}")
    (shop.root / "films").mkdir()
    (shop.root / "films" / "door.mp4").write_bytes(b"film")
    (shop.root / "a line\nof its own.txt").write_text("yours")


def rule_on_a_session(shop: Shop, one: Session) -> None:
    """A ruling of every kind that a session's proof has."""
    log = RulingLog(one.rulings_file)

    def proofed() -> Proofed:
        return Standing(shop).of(one).proofed

    def give(ruling: Ruling) -> str:
        return log.append(ruling).id

    give(amend(proofed(), "m-slot-1", {"figure": "0.101 in"}, Hand(ADA), because="said_wrong"))
    give(strike(proofed(), "m-dome", Hand(ADA)))
    give(note(proofed(), "m-margin", "Look at it again", Hand(ADA)))
    give(add(proofed(), "tool", 60.0, 12, "brush", {"text": "glue brush"}, Hand(ADA)))
    give(reorder(proofed(), "s-9", "s-1", Hand(ADA)))
    give(merge(proofed(), ["s-1", "s-2"], Hand(ADA)))
    given = give(split(proofed(), "s-7", ["Glue the bridge", "Clamp it"], Hand(ADA)))
    give(undo(proofed(), given, Hand(ADA)))
    give(redo(given, Hand(ADA)))
    for finding in proofed().record.findings:
        give(stet(proofed(), finding.id, Hand(ADA)))
    give(pass_for_press(proofed(), Hand(ADA)))


def rule_on_the_shop(shop: Shop) -> None:
    """A ruling of every kind on procedures, and on tools and materials, as a person gives them."""
    for words in (
        ("procedure", "rename", "Reglue the bridge", "Reglue a bridge"),
        ("procedure", "merge", "Reglue a bridge", "Glue the bridge"),
        ("procedure", "split", "Reglue a bridge", "--session", "heron", "--as", "The Heron’s bridge"),
        ("procedure", "pin", "Reglue a bridge", "ash"),
        ("procedure", "unpin", "Reglue a bridge"),
        ("procedure", "undo"),
        ("kit", "merge", "feeler gauge", "feeler", "filler gauge"),
        ("kit", "split", "feeler gauge", "filler gauge"),
        ("kit", "rename", "spanner", "ring spanner"),
        ("kit", "undo"),
    ):
        done = CliRunner().invoke(spokeshave, [*words, "--shop", str(shop.root)], catch_exceptions=False)
        assert done.exit_code == 0, done.output


def logs_of(shop: Shop) -> list[LineLog[Any]]:
    return [ProcedureLog.of(shop), KitLog.of(shop), *(RulingLog(one.rulings_file) for one in shop.sessions())]


def acts_of(adapter: TypeAdapter[Any]) -> set[str]:
    return set(adapter.json_schema()["discriminator"]["mapping"])


@pytest.mark.parametrize("kind", [RulingLog, ProcedureLog, KitLog])
def test_the_shop_has_a_ruling_of_every_kind(shop: Shop, kind: type[LineLog[Any]]) -> None:
    given = {one.act for log in logs_of(shop) if isinstance(log, kind) for one in log.read().rulings}
    assert given == acts_of(kind.adapter)


@pytest.mark.parametrize("of", [Shop, Session])
def test_the_shop_has_a_file_of_every_kind(shop: Shop, of: type) -> None:
    names = [name for name, one in vars(of).items() if name.endswith("_file") and isinstance(one, property)]
    assert names
    owners = [shop] if of is Shop else shop.sessions()
    paths = {name: [getattr(one, name) for one in owners] for name in names}
    assert [name for name, of in paths.items() if not any(path is not None and path.is_file() for path in of)] == []


def test_what_comes_out_is_what_went_in_and_packs_into_the_same_archive(shop: Shop, tmp_path: Path) -> None:
    packed = export_shop(shop, tmp_path / "one.zip")
    again = import_shop(tmp_path / "one.zip", tmp_path / "elsewhere" / "shop")
    belonging = {
        name: total
        for name, total in digest(shop.root).items()
        if not any(part.startswith(".") for part in Path(name).parts) and not name.startswith(f"public{os.sep}")
    }
    assert digest(again.root) == belonging
    assert packed.files == len(belonging)
    export_shop(again, tmp_path / "two.zip")
    assert (tmp_path / "two.zip").read_bytes() == (tmp_path / "one.zip").read_bytes()
    for log, other in zip(logs_of(shop), logs_of(again), strict=True):
        assert log.read() == other.read()
    publish_shop(again)
    assert digest(again.public) == digest(shop.public)
    export_shop(again, tmp_path / "three.zip")
    assert (tmp_path / "three.zip").read_bytes() == (tmp_path / "one.zip").read_bytes()


def test_the_command_does_the_same(shop: Shop, tmp_path: Path) -> None:
    one, two, folder = tmp_path / "one.zip", tmp_path / "two.zip", tmp_path / "again"
    for words in (
        ("export", one, "--shop", shop.root),
        ("import", one, "--shop", folder),
        ("export", two, "--shop", folder),
    ):
        done = CliRunner().invoke(spokeshave, [str(word) for word in words], catch_exceptions=False)
        assert done.exit_code == 0, done.output
    assert one.read_bytes() == two.read_bytes()
    assert b"a line\nof its own.txt" in b"".join(name.encode() for name in zipfile.ZipFile(one).namelist())


@pytest.mark.parametrize("name", [b"back\\slash.jpg", b"no-text-\xff.jpg"])
def test_a_name_that_no_archive_can_hold_is_told_before_anything_is_packed(tmp_path: Path, name: bytes) -> None:
    made = shop_of_sessions(tmp_path)
    (made.sessions()[0].folder / os.fsdecode(name)).write_bytes(b"")
    with pytest.raises(ArchiveError, match="has a name that an archive can't hold"):
        export_shop(made, tmp_path / "shop.zip")
    assert not (tmp_path / "shop.zip").exists()
