"""The same procedure is known again, and what it measured is counted only where it stands."""

from __future__ import annotations

import re

import pytest

from publish.procedures import Procedure, procedures_of
from publish.procedures.deeds import deeds_of
from publish.procedures.measured import of_procedure
from publish.procedures.pages import make_procedures
from publish.procedures.things import terms_of
from publish.render import Renderer
from tests.publish.procedures.invented import BRIDGE, FRETS, SHOP, step, temperature, three_bridges, work


def named(name: str, procedures: tuple[Procedure, ...]) -> Procedure:
    return next(one for one in procedures if name in one.name)


@pytest.mark.parametrize(
    ("text", "acts"),
    [
        ("Tap the nut out, then clean the slot", ["remove", "clean"]),
        ("Brush hot hide glue on the bridge", ["glue"]),
        ("Scrape the old glue off the bridge", ["clean"]),
        ("Desolder the old can, lift it out, then solder in the new one", ["remove", "remove", "solder"]),
        ("Clean the cups with degreaser, rag, old toothbrush", ["clean"]),
    ],
)
def test_a_step_is_read_as_what_is_done_in_it(text: str, acts: list[str]) -> None:
    ((*deeds,),) = deeds_of((step(1, text, "x"),), terms_of("strings"))
    assert [one.act for one in deeds] == acts


def test_a_part_named_by_its_last_word_is_the_one_spoken_of() -> None:
    steps = (step(1, "Rout the saddle slot", "x"), step(2, "File the slot", "x"))
    listed = deeds_of(steps, terms_of("strings"))
    assert [deeds[0].things.parts for deeds in listed] == [("saddle slot",), ("saddle slot",)]


def test_sessions_that_did_the_same_share_a_procedure_and_others_do_not() -> None:
    found = procedures_of(three_bridges()).all
    assert [(one.name, [version.work.slug[11:] for version in one.versions]) for one in found] == [
        ("Reglue the bridge", ["ash", "birch", "cedar"]),
        ("Cut the saddle slot", ["birch", "damson"]),
    ]


def test_steps_are_set_beside_one_another() -> None:
    bridge = procedures_of(three_bridges()).all[0]
    shared = [stage for stage in bridge.stages if stage.versions == 3]
    assert {"heat", "glue", "clamp", "remove"} <= {stage.typical.deed.act for stage in shared}
    assert all(doing.step in bridge.versions[doing.version].steps for stage in bridge.stages for doing in stage.doings)


def test_every_deed_of_every_version_stands_in_one_row() -> None:
    for one in procedures_of(three_bridges()).all:
        told = [(doing.version, doing.step.id, doing.deed.text) for stage in one.stages for doing in stage.doings]
        wanted = [
            (at, step.id, deed.text)
            for at, version in enumerate(one.versions)
            for step in version.steps
            for deed in step.deeds
        ]
        assert sorted(told) == sorted(wanted)


def test_what_was_done_in_another_order_goes_to_the_same_row_and_is_told() -> None:
    turned = (*FRETS[0][:2], FRETS[0][4], *FRETS[0][2:4])
    works = (work("2031-01-01-a", FRETS[0]), work("2031-01-02-b", FRETS[1]), work("2031-01-03-c", turned))
    (frets,) = procedures_of(works).all
    polish = next(stage for stage in frets.stages if stage.typical.deed.act == "polish")
    assert [(doing.version, doing.moved) for doing in polish.doings] == [(0, False), (1, False), (2, True)]


def test_time_is_the_films() -> None:
    (version, *_) = procedures_of(three_bridges()).all[0].versions
    assert version.seconds == 58.0  # six steps, ten seconds apart, the last one said in eight


def test_median_and_range_are_of_what_stands() -> None:
    works = [
        work("2031-01-01-ash", BRIDGE[0], measures=[temperature("ash", 150.0)]),
        work("2031-02-01-birch", BRIDGE[1], measures=[temperature("birch", 999.0, stands=False)]),
        work("2031-03-01-cedar", BRIDGE[2], measures=[temperature("cedar", 170.0)]),
        work("2031-04-01-elm", BRIDGE[0], measures=[temperature("elm", 160.0)]),
    ]
    (bridge,) = procedures_of(works).all
    (heat,) = of_procedure([(one.work, told) for one in bridge.versions for told in one.told], "figure")
    (tally,) = heat.tallies
    # 160 °F is 71.1 °C: (160 - 32) / 1.8.
    assert (tally.number, tally.median, tally.median_other, tally.span) == (
        3, "160\u00a0°F", "71\u00a0°C", "150\u00a0°F to 170\u00a0°F"
    )  # fmt: skip
    assert heat.plot is not None
    assert [one.moment.href for one in heat.tellings] == [
        f"../sessions/2031-{day}/film.webm#t=21" for day in ("01-01-ash", "03-01-cedar", "04-01-elm")
    ]


def test_no_caution_of_a_session_is_lost() -> None:
    pages = make_procedures(procedures_of(three_bridges()), SHOP)
    for name, page in pages.items():
        if not name.endswith("index.html"):
            assert [one.text for one in (*page.cautions, *page.elsewhere)] == ["Keep the heat off the lacquer."]  # type: ignore[union-attr]


def test_what_was_measured_once_stands_in_a_line() -> None:
    works = (
        work("2031-01-01-ash", BRIDGE[0], measures=[temperature("ash", 150.0)]),
        work("2031-02-01-birch", BRIDGE[1], measures=[temperature("birch", 320.0, attribute="iron's heat")]),
        work("2031-03-01-cedar", BRIDGE[2], measures=[temperature("cedar", 170.0)]),
    )
    (name, page), *_ = make_procedures(procedures_of(works), SHOP).items()
    html = Renderer().library(page)
    often, _, once = html.partition("<h3>Measured once</h3>")
    assert often.count('<table class="tellings">') == 1
    assert re.search(r"320\s°F", once)
    assert "<table" not in once
    assert all(f'id="{of.anchor}"' in html for of in page.figures), name  # type: ignore[union-attr]


def test_the_same_sessions_always_give_the_same() -> None:
    assert procedures_of(three_bridges()) == procedures_of(three_bridges())


@pytest.mark.parametrize("text", ["", " ", "<script>alert(1)</script>", "then, then ; then", "¡Œ 🪚 it", "it " * 300])
def test_any_text_can_be_a_step(text: str) -> None:
    works = (work("2031-01-01-a", (text,)), work("2031-01-02-b", (text, "Glue the bridge")))
    found = procedures_of(works)
    assert sum(len(version.steps) for one in found.all for version in one.versions) == 3
    assert make_procedures(found, SHOP)
