"""Figures as a person types them, and units that fit what is measured."""

from __future__ import annotations

from pathlib import Path

import pytest

from extract.rulings import FigureError, UnitKindError
from extract.rulings.figures import check_unit, read_figure
from extract.rulings.model import Figure
from extract.trade import load_trade

_ROWS = [
    [cell.strip() for cell in line.split("|")]
    for line in (Path(__file__).parent / "figures.txt").read_text(encoding="utf-8").splitlines()
    if not line.startswith("#")
]
_READ = [row for row in _ROWS if not row[0].startswith("!")]
_REFUSED = [[row[0][1:].strip(), *row[1:]] for row in _ROWS if row[0].startswith("!")]


def _told(figure: Figure) -> str:
    more = [figure.display.replace("\N{NO-BREAK SPACE}", " ")]
    more += ["hedged"] * figure.hedged + [figure.limit or ""]
    more += [f"{figure.low} to {figure.high}"] * (figure.low is not None)
    more += [f"± {figure.tolerance}"] * (figure.tolerance is not None)
    return ", ".join(filter(None, more))


@pytest.mark.parametrize(("typed", "unit", "value", "told"), _READ)
def test_a_figure_is_read_exactly(typed: str, unit: str, value: str, told: str) -> None:
    figure = read_figure(typed, unit or None)
    assert (f"{figure.value} {figure.unit or ''}".strip(), _told(figure)) == (value, told)
    assert figure.text == typed


@pytest.mark.parametrize(("typed", "unit", "problem"), _REFUSED)
def test_what_is_no_figure_is_refused_in_one_line(typed: str, unit: str, problem: str) -> None:
    with pytest.raises(FigureError) as told:
        read_figure(typed, unit)
    assert str(told.value).startswith(f"{problem}; ")
    assert "\n" not in str(told.value)


@pytest.mark.parametrize(
    ("typed", "attribute", "fits"),
    [
        ("7/64 in", "string height", True),
        ("2.8 mm", "string height", True),
        ("5 °C", "string height", False),
        ("5 kg", "string height", False),
        ("140 °F", "temperature", True),
        ("140 mm", "temperature", False),
        ("5 °C", None, True),
        ("5 °C", "something that no trade knows", True),
        ("5", "string height", True),
    ],
)
def test_a_unit_must_be_of_the_kind_that_is_measured(typed: str, attribute: str | None, fits: bool) -> None:
    figure, trade = read_figure(typed), load_trade("strings")
    if fits:
        check_unit(figure, attribute, trade)
        return
    with pytest.raises(UnitKindError, match="mend the unit or what is measured, or give the ruling again as meant"):
        check_unit(figure, attribute, trade)
