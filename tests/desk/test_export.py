"""`spokeshave export` and `import` as a person types them."""

from __future__ import annotations

from datetime import date
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from capture.errors import SpokeshaveError
from capture.shop import SessionSettings, Shop
from desk.cli import spokeshave
from tests.publish.session import record


@pytest.fixture
def shop(tmp_path: Path) -> Shop:
    made = Shop.open_or_create(tmp_path / "shop")
    session = made.add_session(SessionSettings(title="The Heron", date=date(2031, 5, 14)))
    session.record_file.write_text(record().to_json())
    return made


def run(*words: object) -> Result:
    return CliRunner().invoke(spokeshave, [str(word) for word in words])


def test_out_and_in_again(shop: Shop, tmp_path: Path) -> None:
    out = run("export", tmp_path / "shop.zip", "--shop", shop.root)
    assert out.exit_code == 0, out.output
    back = run("import", tmp_path / "shop.zip", "--shop", tmp_path / "again")
    assert back.exit_code == 0, back.output
    (session,) = Shop.open(tmp_path / "again").sessions()
    assert session.record_file.read_text() == record().to_json()


@pytest.mark.parametrize(("name", "begins"), [("a.csv", "session,date"), ("a.json", "[\n"), ("a.md", "# The Heron")])
def test_records_by_the_ending_of_the_file(shop: Shop, tmp_path: Path, name: str, begins: str) -> None:
    done = run("export", tmp_path / name, "--shop", shop.root)
    assert done.exit_code == 0, done.output
    assert (tmp_path / name).read_text().startswith(begins)


def test_one_session_alone(shop: Shop, tmp_path: Path) -> None:
    shop.add_session(SessionSettings(title="Another", date=date(2031, 6, 1)))
    done = run("export", tmp_path / "a.md", "--shop", shop.root, "--session", "heron")
    assert done.exit_code == 0, done.output
    assert (tmp_path / "a.md").read_text().count("\n# ") == 0


@pytest.mark.parametrize(
    ("words", "code"),
    [(("a.odd",), 2), (("a.zip", "--session", "heron"), 2)],
)
def test_what_can_not_be_meant(shop: Shop, tmp_path: Path, words: tuple[str, ...], code: int) -> None:
    name, *rest = words
    assert run("export", tmp_path / name, "--shop", shop.root, *rest).exit_code == code
    assert not (tmp_path / name).exists()


@pytest.mark.parametrize("words", [("export", "no/such/folder/a.csv"), ("export", "no/such/folder/a.zip")])
def test_no_place_to_write_is_one_line(shop: Shop, tmp_path: Path, words: tuple[str, str]) -> None:
    failed = run(words[0], tmp_path / words[1], "--shop", shop.root)
    assert isinstance(failed.exception, SpokeshaveError)
    assert "\n" not in str(failed.exception)
