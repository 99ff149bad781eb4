"""A figure and the same in other units: wherever they stand in a line, no bracket stands in a bracket or behind one."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from capture.shop import ShopSettings
from desk.procedures import told
from extract.record import Measure
from publish.card import make_card
from publish.find.items import items_of
from publish.page import make_page
from publish.procedures import procedures_of
from publish.procedures.pages import figures_of
from publish.search.procedures import searched_procedure
from publish.source import SessionSource
from publish.wording import with_other
from tests.publish.procedures.invented import BRIDGE, temperature, work
from tests.publish.session import SHOP, source

DOUBLE = re.compile(r"\([^()]*\(|\) ?\(")


def metric(slug: str, millimetres: float) -> Measure:
    """A length in millimetres, which is told in inches as a decimal and as a fraction."""
    said = f"{millimetres:g}\N{NO-BREAK SPACE}mm"
    return temperature(slug, millimetres).model_copy(
        update={"unit": "millimeter", "kind": "length", "attribute": "length", "display": said, "quote": said}
    )


def session_with(measure: Measure) -> SessionSource:
    """The invented session, with that figure among its own."""
    record = source().record
    return replace(source(), record=record.model_copy(update={"measures": (measure, *record.measures)}))


def lines(millimetres: float, shop: ShopSettings) -> Iterator[str]:
    """Every line that tells the figure: of the search, of the card and the text beneath the film, of a procedure."""
    one = session_with(metric("ash", millimetres))
    yield from (item.told for item in items_of(one))
    page = make_page(one, shop)
    card = make_card(page, one.record)
    assert card is not None
    yield from (figure.text for figure in card.figures)
    yield from page.beneath.splitlines()
    works = [work(f"203{at}-01-01-ash", BRIDGE[0], measures=[metric(f"{at}", millimetres)]) for at in (1, 2)]
    (procedure,) = procedures_of(works).all
    yield from (row[3] for row in searched_procedure(procedure, figures_of(procedure)).items)
    yield from told(procedure)


# 648 mm is 25.51 in by the inch of exactly 25.4 mm (NIST SP 811, appendix B.8).
def test_the_fraction_goes_behind_a_comma() -> None:
    found = [one.replace("\N{NO-BREAK SPACE}", " ") for one in lines(648, SHOP) if "648" in one]
    assert "length, bridge: 648 mm (25.51 in, 25 1/2 in), aim" in found
    assert any("median 648 mm (25.51 in, 25 1/2 in) of 2 figures" in one for one in found)
    assert any("Length, aim: 648 mm (25.51 in, 25 1/2 in)" in one for one in found)


@settings(max_examples=15, deadline=None)
@given(st.integers(1, 4000).map(lambda tenths: tenths / 10), st.sampled_from(["as_said", "metric", "imperial"]))
def test_no_line_has_brackets_within_brackets(millimetres: float, units: str) -> None:
    shop = ShopSettings.model_validate({**SHOP.model_dump(), "units": units})
    assert [one for one in lines(millimetres, shop) if DOUBLE.search(one)] == []


@pytest.mark.parametrize(
    ("figure", "other", "expected"),
    [
        ("648 mm", "25.51 in (25 1/2 in)", "648 mm (25.51 in, 25 1/2 in)"),
        ("25.51 in (25 1/2 in)", "648 mm", "25.51 in, 25 1/2 in (648 mm)"),
        ("about 3 mm", "about 0.12 in (1/8 in)", "about 3 mm (0.12 in, 1/8 in)"),
        ("3 mm", "", "3 mm"),
    ],
)
def test_a_figure_has_the_only_brackets(figure: str, other: str, expected: str) -> None:
    assert with_other(figure, other) == expected
