"""The table of page parts: ordered, changed by name, with cautions on every page."""

from __future__ import annotations

from dataclasses import replace

import pytest

from publish.context import SessionPage
from publish.errors import LostCautionError
from publish.parts import PARTS, PageParts, Part
from publish.render import TEMPLATES, Renderer

JIGS = Part("jigs", "Jigs", lambda page: True)


def names(parts: PageParts) -> list[str]:
    return [part.name for part in parts.all]


def test_every_part_has_its_template() -> None:
    assert {f"{name}.html" for name in names(PARTS)} == {path.name for path in (TEMPLATES / "parts").iterdir()}


def test_cautions_come_before_the_procedure() -> None:
    assert names(PARTS).index("cautions") < names(PARTS).index("procedure")


def test_a_part_is_put_in_by_name() -> None:
    assert names(PARTS.before("procedure", JIGS))[names(PARTS).index("procedure")] == "jigs"
    assert names(PARTS.after("procedure", JIGS))[names(PARTS).index("procedure") + 1] == "jigs"


def test_a_part_is_left_out_by_name(page: SessionPage) -> None:
    html = Renderer(PARTS.without("kit")).session(page)
    assert 'id="kit"' not in html
    assert 'href="#kit"' not in html


@pytest.mark.parametrize("change", [lambda: PARTS.before("nut", JIGS), lambda: PARTS.without("nut")])
def test_an_unknown_name_raises(change: object) -> None:
    assert callable(change)
    with pytest.raises(KeyError, match="nut"):
        change()


def test_cautions_cannot_be_left_out() -> None:
    with pytest.raises(ValueError, match="cautions"):
        PARTS.without("cautions")


def test_a_template_that_drops_a_caution_stops_the_page(page: SessionPage) -> None:
    without = PageParts(tuple(part for part in PARTS.all if part.name != "cautions"))
    with pytest.raises(LostCautionError, match="lacks a caution"):
        Renderer(without).session(page)


def test_a_page_without_cautions_still_defers_to_codes_and_licences(page: SessionPage) -> None:
    html = Renderer().session(replace(page, cautions=()))
    assert "local codes" in html
    assert "licence" in html
