"""The trades: every file loads, agrees with the units, names its sources, and guards what must not be softened."""

from __future__ import annotations

import tomllib
from fractions import Fraction
from pathlib import Path
from typing import Any

import pytest

from capture.errors import DataFileError, SpokeshaveError
from extract.trade import Band, Trade, UnknownTradeError, guess_trade, load_trade, trade_names
from extract.units import to_unit, unit_named, unit_rows

HERE = Path(__file__).parent
TRADES = trade_names()


def _rows(name: str, table: str) -> list[dict[str, Any]]:
    rows: list[dict[str, Any]] = tomllib.loads((HERE / f"{name}.toml").read_text(encoding="utf-8"))[table]
    return rows


def _terms(trade: Trade) -> list[tuple[str, tuple[str, ...]]]:
    tables = (trade.subjects, trade.parts, trade.tools, trade.materials)
    return [(term.name, term.said) for table in tables for term in table]


@pytest.fixture(params=TRADES)
def trade(request: pytest.FixtureRequest) -> Trade:
    return load_trade(str(request.param))


def test_the_trades_that_are_built_in() -> None:
    assert TRADES[0] == "general"
    assert set(TRADES) == {"general", "strings", "clock", "cycle", "amplifier", "furniture"}


def test_units_agree_with_the_kind(trade: Trade) -> None:
    kinds = {row.unit.kind for row in unit_rows().values()}
    for attribute in trade.attributes:
        assert attribute.kind in kinds, attribute.name
        units = [band.unit for band in attribute.bands] + ([attribute.unit] if attribute.unit else [])
        assert all(unit_named(unit).kind == attribute.kind for unit in units), attribute.name


def test_every_band_and_hazard_has_a_source(trade: Trade) -> None:
    assert all(band.source and band.low < band.high for one in trade.attributes for band in one.bands)
    assert all(hazard.source and hazard.said and hazard.caution.endswith(".") for hazard in trade.hazards)


def test_names_are_among_what_is_said(trade: Trade) -> None:
    assert all(name == said[0] and len(set(said)) == len(said) for name, said in _terms(trade))
    assert all(one.name == one.said[0] for one in trade.attributes)


def test_no_attribute_has_two_bands_for_one_thing(trade: Trade) -> None:
    for attribute in trade.attributes:
        items = [band.items for band in attribute.bands]
        assert len(set(items)) == len(items), attribute.name


def test_the_general_file_is_part_of_every_trade(trade: Trade) -> None:
    general = load_trade("general")
    assert {one.name for one in general.attributes} <= {one.name for one in trade.attributes}
    assert {one.name for one in general.hazards} <= {one.name for one in trade.hazards}


@pytest.mark.parametrize("row", _rows("cautions", "caution"), ids=lambda row: row["hazard"])
def test_cautions_keep_their_figures(row: dict[str, Any]) -> None:
    caution = {one.name: one.caution for one in load_trade("general").hazards}[row["hazard"]]
    assert [figure for figure in row["figures"] if figure not in caution] == []


def _amount(said: str, unit: str) -> float:
    number, _, own = said.partition(" ")
    return float(to_unit(Fraction(number), own, unit))


def _band(row: dict[str, Any]) -> Band:
    attribute = next(one for one in load_trade(row["trade"]).attributes if one.name == row["attribute"])
    return next(band for band in attribute.bands if (row["item"] in band.items if row["item"] else not band.items))


@pytest.mark.parametrize("row", _rows("bands", "figure"), ids=lambda row: f"{row['attribute']} of {row['item']}")
def test_bands_hold_what_is_printed_and_catch_slips(row: dict[str, Any]) -> None:
    band = _band(row)
    assert [said for said in row["holds"] if not band.low <= _amount(said, band.unit) <= band.high] == []
    assert [said for said in row["slips"] if band.low <= _amount(said, band.unit) <= band.high] == []


@pytest.mark.parametrize("row", _rows("malformed", "file"), ids=lambda row: row["title"])
def test_a_malformed_file_gets_one_line_with_its_place(row: dict[str, Any], tmp_path: Path) -> None:
    path = tmp_path / "own.toml"
    path.write_text(row["text"], encoding="utf-8")
    with pytest.raises(DataFileError) as caught:
        load_trade("strings", path)
    assert caught.value.place == row["place"]
    line = str(caught.value)
    assert "\n" not in line
    assert line.startswith(f"{path}: {row['place']}: ")
    assert row["says"] in line


def test_a_file_that_is_not_there_or_not_text(tmp_path: Path) -> None:
    with pytest.raises(DataFileError, match="file: No such file"):
        load_trade("clock", tmp_path / "none.toml")
    path = tmp_path / "latin.toml"
    path.write_bytes(b'name = "caf\xe9"\n')
    with pytest.raises(DataFileError, match="UTF-8"):
        load_trade("clock", path)


def test_a_shop_adds_and_overrides(tmp_path: Path) -> None:
    path = tmp_path / "own.toml"
    path.write_text(
        """
        name = "our shop"
        [attributes.relief]
        said = ["bellyache"]
        kind = "length"
        unit = "millimeter"
        bands = [
          { low = 0.05, high = 0.3, unit = "millimeter", source = "shop's own" },
          { low = 0.1, high = 0.4, unit = "millimeter", items = ["lute"], source = "shop's own" },
        ]
        [attributes."moon phase"]
        kind = "angle"
        [parts]
        soundboard = ["deck"]
        [hazards."our bandsaw"]
        said = ["big bertha"]
        caution = "Mind the lower guard."
        source = "shop's own"
        """,
        encoding="utf-8",
    )
    built_in, joined = load_trade("strings"), load_trade("strings", path)
    assert joined.name == "strings"
    relief = next(one for one in joined.attributes if one.name == "relief")
    before = next(one for one in built_in.attributes if one.name == "relief")
    assert set(relief.said) == {*before.said, "bellyache"}
    assert relief.unit == "millimeter"
    assert [band.source for band in relief.bands if not band.items] == ["shop's own"]
    assert {band.items for band in before.bands} < {band.items for band in relief.bands}
    assert "moon phase" in {one.name for one in joined.attributes}
    assert "deck" in next(one for one in joined.parts if one.name == "soundboard").said
    assert "our bandsaw" in {one.name for one in joined.hazards}
    assert load_trade("strings") == built_in


def test_an_unknown_trade_is_one_clear_line() -> None:
    with pytest.raises(UnknownTradeError) as caught:
        load_trade("plumbing")
    assert isinstance(caught.value, KeyError)
    assert isinstance(caught.value, SpokeshaveError)
    assert str(caught.value).startswith("no trade is called 'plumbing'; choose one of general, ")


@pytest.mark.parametrize(
    ("text", "name"),
    [
        ("an open back banjo with a torn head and a bridge that leans", "strings"),
        ("this uke has a split and the uke is older than me", "strings"),
        ("mantel clock, the mainspring let go and bent an arbor", "clock"),
        ("rear wheel off the bike, the hub cones are pitted", "cycle"),
        ("the amplifier hums, so the filter cap comes out before the bias", "amplifier"),
        ("a windsor chair with three loose spindles and a cracked stretcher", "furniture"),
        ("a fountain pen whose bridge is loose", "general"),
        ("", "general"),
    ],
)
def test_the_trade_is_guessed_from_its_signs(text: str, name: str) -> None:
    assert guess_trade(text) == name
