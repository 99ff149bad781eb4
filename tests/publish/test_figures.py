"""The table of figures, and the same thing before and after."""

from __future__ import annotations

from typing import Any

import pytest

from capture.shop import ShopSettings
from extract.record import Correction, Finding, Measure, Record, SessionFacts, Withdrawn
from publish.context import Pair, Row, RowGroup, SessionPage
from publish.galley import Galley
from publish.pairs import pair_up
from publish.rows import Rows
from publish.source import SessionSource


def a_measure(key: str, value: float = 1.0, unit: str | None = "inch", **more: Any) -> Measure:
    shared: dict[str, Any] = {
        "cue": 0, "start": 1.0, "end": 2.0, "quote": key, "unit_said": True, "attribute": "action", "phase": "as_found",
        "hedged": False, "display": key,
    }  # fmt: skip
    return Measure(id=f"m-{key}", value=value, unit=unit, **shared | more)


def galley(*measures: Measure, units: str = "as_said", **more: Any) -> Galley:
    facts = SessionFacts(title="t", source="s", duration=60)
    record = Record(session=facts, measures=measures, **more)
    return Galley(SessionSource("slug", record), ShopSettings.model_validate({"units": units}))


def rows(*measures: Measure, **more: Any) -> tuple[Row, ...]:
    return tuple(row for _, row in Rows(galley(*measures, **more)).all)


def pairs(*measures: Measure) -> tuple[Pair, ...]:
    return pair_up(Rows(galley(*measures)))


def told(pair: Pair) -> tuple[list[str], list[str], list[str]]:
    def figures(side: tuple[Row, ...]) -> list[str]:
        return [row.first.text for row in side if row.first]

    return figures(pair.found), figures(pair.aim), figures(pair.left)


def test_every_figure_of_the_session_has_its_row(page: SessionPage) -> None:
    by_phase = {group.phase: len(group.rows) for group in page.groups}
    assert by_phase == {"as found": 9, "aim": 9, "as left": 6, "rule of thumb": 3}


def test_a_restatement_stands_beside_what_it_restates() -> None:
    (row,) = rows(a_measure("a"), a_measure("b", 25.4, "millimeter", same_as="m-a"))
    assert row.first is not None
    assert row.second is not None
    assert (row.first.text, row.second.text, row.second.said, row.second.anchor) == ("a", "b", True, "m-b")


@pytest.mark.parametrize(
    "more",
    [
        {"phase": "as_left"},
        {"stands": False},
        {"unit": "inch"},
    ],
)
def test_a_restatement_that_differs_in_kind_keeps_its_own_row(more: dict[str, Any]) -> None:
    restating = {"value": 25.4, "unit": "millimeter", "same_as": "m-a", **more}
    assert len(rows(a_measure("a"), a_measure("b", **restating))) == 2


def test_a_restatement_in_question_keeps_its_own_row() -> None:
    finding = Finding(
        id="f", kind="conversion", severity="stop", cue=0, cues=(0,), start=1, quote="q", measures=("m-b",),
        message="wrong", source="s",
    )  # fmt: skip
    first, second = rows(a_measure("a"), a_measure("b", 20, "millimeter", same_as="m-a"), findings=(finding,))
    assert first.second is not None
    assert not first.second.said
    assert [flag.text for flag in second.queries] == ["to settle"]


@pytest.mark.parametrize(
    ("units", "first", "second"),
    [("as_said", "inch", "mm"), ("imperial", "inch", "mm"), ("metric", "mm", "inch")],
)
def test_the_shop_says_which_units_stand_first(units: str, first: str, second: str) -> None:
    (row,) = rows(a_measure("1\u00a0inch"), units=units)
    assert row.first is not None
    assert row.second is not None
    assert row.first.text.endswith(first)
    assert row.second.text.endswith(second)


def test_a_unit_of_neither_system_stands_first_and_alone() -> None:
    (row,) = rows(a_measure("48\u00a0%", 48, "percent"), units="metric")
    assert row.first is not None
    assert row.first.text == "48\u00a0%"
    assert row.second is None


def test_a_withdrawn_figure_says_what_to_read_and_where() -> None:
    taken = Correction(
        id="c", cue=0, start=3, end=4, quote="no", scope="this_session", replacement="b",
        withdraws=Withdrawn(measure="m-a", text="a"), replacement_measure="m-b",
    )  # fmt: skip
    first, second = rows(a_measure("a", stands=False, corrected_by="c"), a_measure("b"), corrections=(taken,))
    assert first.withdrawn is not None
    assert (first.withdrawn.read, first.withdrawn.href) == ("b", "#m-b")
    assert first.second is None, "what was taken back is not worked out in other units"
    assert second.withdrawn is None


def test_limits_and_tolerances_are_told() -> None:
    at_most, within = rows(a_measure("2 thou", limit="at_most"), a_measure("5 mm", tolerance=0.1))
    assert at_most.first is not None
    assert within.first is not None
    assert (at_most.first.text, within.first.text) == ("at most 2 thou", "5 mm ± 0.1")


def test_a_figure_without_a_name_is_called_by_its_words() -> None:
    (row,) = rows(a_measure("sixteen inches", attribute=None))
    assert row.what == "“sixteen inches”"


def test_phases_are_told_in_the_words_of_the_bench(page: SessionPage) -> None:
    groups: tuple[RowGroup, ...] = page.groups
    assert [group.phase for group in groups] == ["as found", "aim", "as left", "rule of thumb"]


def test_the_same_thing_is_paired_with_its_aim() -> None:
    side: dict[str, Any] = {"item": "string", "where": "treble side"}
    (pair,) = pairs(
        a_measure("7/64", **side),
        a_measure("4/64", phase="target", **side),
        a_measure("5/64", phase="as_left", **side),
        a_measure("9/64", item="string", where="bass side"),
    )
    assert told(pair) == (["7/64"], ["4/64"], ["5/64"])


def test_a_less_exact_name_is_paired_where_nothing_else_could_be_meant() -> None:
    (pair,) = pairs(
        a_measure("7/64", item="string", where="treble side, 12th fret"),
        a_measure("5/64", phase="as_left", item="string", where="treble side"),
    )
    assert pair.part == "string, treble side, 12th fret"


def test_a_less_exact_name_is_not_paired_where_two_could_be_meant() -> None:
    assert not pairs(
        a_measure("7/64", item="string", where="treble side"),
        a_measure("9/64", item="string", where="bass side"),
        a_measure("5/64", phase="as_left", item="string"),
    )


@pytest.mark.parametrize("more", [{"stands": False}, {"difference": True}, {"attribute": "relief"}, {"item": "nut"}])
def test_other_things_are_not_paired(more: dict[str, Any]) -> None:
    left: dict[str, Any] = {"phase": "as_left", "item": "string", **more}
    assert not pairs(a_measure("a", item="string"), a_measure("b", **left))


def test_figures_that_no_work_brings_to_one_another_are_no_pair() -> None:
    chain = {"attribute": "length", "item": "chain"}
    found = a_measure("a", 12.125, "inch", **chain)
    assert pairs(found, a_measure("b", 12.0, "inch", phase="as_left", **chain))
    assert not pairs(found, a_measure("c", 50.0, "mile", phase="as_left", **chain))
    assert pairs(a_measure("d", 2.0, "mm", **chain), a_measure("e", 0.0, "mm", phase="as_left", **chain))
