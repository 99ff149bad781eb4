"""A shop goes into an archive and comes out the same; a broken or hostile archive changes nothing."""

from __future__ import annotations

import hashlib
import zipfile
from datetime import date
from pathlib import Path

import bagit
import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from capture.archive import export_shop, import_shop
from capture.archive.bag import ArchiveError, is_safe, manifest_line, read_manifest
from capture.shop import SessionSettings, Shop, ShopSettings


@pytest.fixture
def shop(tmp_path: Path) -> Shop:
    made = Shop.open_or_create(tmp_path / "shop", ShopSettings(title="Coppice Lane"))
    for number in (1, 2):
        session = made.add_session(SessionSettings(title=f"A lifting bridge {number}", date=date(2031, 5, 14)))
        (session.folder / "rulings.json").write_text('{"act": "stet"}\n')
        (session.folder / "stills").mkdir()
        (session.folder / "stills" / "12.5 — lück.jpg").write_bytes(bytes(range(256)) * 20)
        (session.folder / ".lock").touch()
        (session.folder / ".record.json.x.part").write_text("half")
    made.public.mkdir()
    (made.public / "index.html").write_text("made again at will")
    return made


def contents(root: Path) -> dict[str, str]:
    """Checksum of each file that belongs to a shop."""
    return {
        path.relative_to(root).as_posix(): hashlib.sha256(path.read_bytes()).hexdigest()
        for path in root.rglob("*")
        if path.is_file() and "public" not in path.parts and not path.name.startswith(".")
    }


def test_what_comes_out_is_what_went_in(shop: Shop, tmp_path: Path) -> None:
    packed = export_shop(shop, tmp_path / "shop.zip")
    again = import_shop(tmp_path / "shop.zip", tmp_path / "other" / "place")
    assert contents(again.root) == contents(shop.root)
    assert packed.files == len(contents(shop.root))
    assert again.settings == shop.settings
    assert not list(again.root.rglob(".*"))


def test_the_same_shop_gives_the_same_archive(shop: Shop, tmp_path: Path) -> None:
    export_shop(shop, tmp_path / "a.zip")
    export_shop(shop, tmp_path / "b.zip")
    assert (tmp_path / "a.zip").read_bytes() == (tmp_path / "b.zip").read_bytes()


def test_it_is_a_bag_by_the_library_of_congress_own_library(shop: Shop, tmp_path: Path) -> None:
    # RFC 8493, as the reference implementation `bagit` checks it: completeness, fixity, size.
    export_shop(shop, tmp_path / "shop.zip")
    with zipfile.ZipFile(tmp_path / "shop.zip") as packed:
        packed.extractall(tmp_path / "unpacked")
    assert bagit.Bag(str(tmp_path / "unpacked" / "shop")).is_valid()


def test_recordings_outside_the_shop_are_told(shop: Shop, tmp_path: Path) -> None:
    film = tmp_path / "film.mp4"
    film.write_bytes(b"film")
    shop.add_session(SessionSettings(title="With a film", date=date(2031, 5, 15), recording=str(film)))
    assert export_shop(shop, tmp_path / "shop.zip").outside == (film.resolve(),)


def test_a_recording_in_a_folder_of_the_shop_s_own_goes_with_it(shop: Shop, tmp_path: Path) -> None:
    (shop.root / "films").mkdir()
    (shop.root / "films" / "film.mp4").write_bytes(b"film")
    recording = "../../films/film.mp4"
    made = shop.add_session(SessionSettings(title="With a film", date=date(2031, 5, 15), recording=recording))
    assert export_shop(shop, tmp_path / "shop.zip").outside == ()
    again = import_shop(tmp_path / "shop.zip", tmp_path / "again").session(made.slug).recording_file
    assert again is not None
    assert again.read_bytes() == b"film"


def test_a_shop_is_not_packed_into_itself(shop: Shop) -> None:
    with pytest.raises(ArchiveError, match="outside"):
        export_shop(shop, shop.root / "shop.zip")


def test_an_older_archive_stays_until_the_new_one_is_whole(
    shop: Shop, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    target = tmp_path / "shop.zip"
    target.write_bytes(b"the older one")

    def full(*_: object) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr("capture.archive.pack._write", full)
    with pytest.raises(ArchiveError, match="No space left"):
        export_shop(shop, target)
    assert target.read_bytes() == b"the older one"
    assert [path.name for path in tmp_path.iterdir() if path.suffix == ".part"] == []


def test_nothing_is_unpacked_over_something(shop: Shop, tmp_path: Path) -> None:
    export_shop(shop, tmp_path / "shop.zip")
    with pytest.raises(ArchiveError, match="not an empty folder"):
        import_shop(tmp_path / "shop.zip", shop.root)


@pytest.mark.parametrize("cut", [0, 10, 200, -30])
def test_a_cut_off_archive_changes_nothing(shop: Shop, tmp_path: Path, cut: int) -> None:
    export_shop(shop, tmp_path / "shop.zip")
    whole = (tmp_path / "shop.zip").read_bytes()
    (tmp_path / "cut.zip").write_bytes(whole[:cut])
    with pytest.raises(ArchiveError, match="can be read"):
        import_shop(tmp_path / "cut.zip", tmp_path / "new")
    assert not (tmp_path / "new").exists()


def repacked(source: Path, target: Path, change: dict[str, bytes | None], more: dict[str, bytes] | None = None) -> Path:
    """The archive with some files changed or left out (None), and others added."""
    with zipfile.ZipFile(source) as old, zipfile.ZipFile(target, "w") as new:
        for info in old.infolist():
            content = change.get(info.filename, old.read(info))
            if content is not None:
                new.writestr(info.filename, content)
        for name, content in (more or {}).items():
            new.writestr(name, content)
    return target


@pytest.mark.parametrize(
    ("change", "more", "complaint"),
    [
        ({"shop/data/shop.toml": b'title = "another"\n'}, {}, "not what was packed"),
        ({"shop/data/shop.toml": None}, {}, "lacking"),
        ({}, {"shop/data/one-too-many.txt": b"x"}, "one too many"),
        ({}, {"shop/../../outside.txt": b"x"}, "lead outside"),
        ({}, {"/outside.txt": b"x"}, "lead outside"),
        ({}, {"shop/data/sub\\..\\..\\outside.txt": b"x"}, "lead outside"),
        ({"shop/bagit.txt": None}, {}, "holds no shop"),
        ({"shop/manifest-sha256.txt": b"no manifest"}, {}, "list of its files"),
        ({"shop/bag-info.txt": b"other"}, {}, "not what was packed"),
    ],
)
def test_a_tampered_archive_changes_nothing(
    shop: Shop, tmp_path: Path, change: dict[str, bytes | None], more: dict[str, bytes], complaint: str
) -> None:
    export_shop(shop, tmp_path / "shop.zip")
    odd = repacked(tmp_path / "shop.zip", tmp_path / "odd.zip", change, more)
    before = sorted(path.name for path in tmp_path.iterdir())
    with pytest.raises(ArchiveError, match=complaint):
        import_shop(odd, tmp_path / "new")
    assert sorted(path.name for path in tmp_path.iterdir()) == before


def test_what_is_no_archive_is_told_in_one_line(tmp_path: Path) -> None:
    (tmp_path / "notes.txt").write_text("no archive")
    for path, complaint in ((tmp_path / "notes.txt", "no archive"), (tmp_path / "absent.zip", "no such file")):
        with pytest.raises(ArchiveError, match=complaint) as told:
            import_shop(path, tmp_path / "new")
        assert "\n" not in str(told.value)


names = st.text(st.characters(codec="utf-8", exclude_characters="\0"), min_size=1, max_size=40)


@given(st.dictionaries(names.filter(lambda name: name.lstrip(" *") == name), st.binary(), max_size=5))
def test_manifests_keep_every_name(files: dict[str, bytes]) -> None:
    sums = {name: hashlib.sha256(content).hexdigest() for name, content in files.items()}
    if sums:
        assert read_manifest("".join(manifest_line(value, name) for name, value in sums.items())) == sums


@settings(suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(names)
def test_a_safe_name_stays_inside(tmp_path: Path, name: str) -> None:
    if is_safe(name):
        assert (tmp_path / name).resolve().is_relative_to(tmp_path.resolve())
