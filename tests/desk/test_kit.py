"""The shop's kit at the terminal: ruled, told, undone; what can't be done is told in a line and changes nothing."""

from __future__ import annotations

from pathlib import Path

import pytest
from click.testing import CliRunner

from capture.shop import Shop
from desk.cli import spokeshave
from tests.desk.test_bad_input import one_line, run
from tests.publish.kit.bench import shop_on_disk


@pytest.fixture
def shop(tmp_path: Path) -> Shop:
    return shop_on_disk(tmp_path)


def kit(shop: Shop, *words: str) -> list[str]:
    done = CliRunner().invoke(spokeshave, ["kit", *words, "--shop", str(shop.root)], catch_exceptions=False)
    assert done.exit_code == 0, done.output
    return done.output.splitlines()


def test_merged_renamed_split_and_undone(shop: Shop) -> None:
    before = kit(shop, "list")
    assert "feeler gauge  (tool, 2 sessions)  said “Feeler Gauges”" in before
    kit(shop, "merge", "feeler gauge", "feeler", "filler gauge", "--by", "Ada")
    (line,) = (one for one in kit(shop, "list") if one.startswith("feeler"))
    assert line == "feeler gauge  (tool, 3 sessions, named by hand)  said “feeler”, “filler gauge”, “Feeler Gauges”"
    assert kit(shop, "show", "filler gauge")[1].endswith("-valves: “feeler” at 0:10, 0:30")
    kit(shop, "rename", "feeler gauge", "feeler set")
    kit(shop, "split", "feeler set", "filler gauge")
    names = [one.partition("  ")[0] for one in kit(shop, "list")]
    assert {"feeler set", "filler gauge"} <= set(names)
    assert "feeler" not in names
    for _ in range(3):
        assert kit(shop, "undo")[0].startswith("undo ")
    assert kit(shop, "list") == before
    assert len(shop.kit_file.read_text().splitlines()) == 6


@pytest.mark.parametrize(
    ("words", "problem"),
    [
        (("rename", "feeler gage", "x"), "near it: “feeler gauge”"),
        (("rename", "feeler", "screwdriver"), "“screwdriver” is called 'screwdriver' already"),
        (("rename", "feeler", "\x1b[31mred"), "can't be printed"),
        (("rename", "feeler", b"\xff\xfe"), "can't be printed"),
        (("rename", "feeler", "gauge", "--by", b"\xff"), "can't be printed"),
        (("merge", "feeler"), "two different things"),
        (("split", "spanner", "spanner"), "one of the two empty"),
        (("undo",), "no ruling on tools and materials"),
        (("show", "tape"), "name one of: tool tape, material tape"),
    ],
)
def test_what_can_t_be_done_is_told_in_a_line_and_changes_nothing(
    shop: Shop, words: tuple[str | bytes, ...], problem: str
) -> None:
    given = [one.decode(errors="surrogateescape") if isinstance(one, bytes) else one for one in words]
    said = one_line(run("kit", *given, "--shop", shop.root))
    assert problem in said
    assert "\x1b" not in said
    assert not shop.kit_file.exists()


def test_a_damaged_log_harms_no_command(shop: Shop) -> None:
    kit(shop, "merge", "feeler gauge", "feeler")
    with shop.kit_file.open("ab") as file:
        file.write(b'{"act": "rename", "of')
    done = CliRunner().invoke(spokeshave, ["kit", "list", "--shop", str(shop.root)])
    assert done.exit_code == 0
    assert "line 2 of kit.json is torn or damaged" in done.output
    kit(shop, "merge", "feeler gauge", "filler gauge")
    assert any(one.startswith("feeler gauge  (tool, 3 sessions, named by hand)") for one in kit(shop, "list"))
