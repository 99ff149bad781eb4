"""Reference figures: what is counted, in which unit, and what is left out."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from extract.record import Finding, Measure
from publish.context.library import Telling
from publish.context.reference import ReferenceIndex, ReferencePage
from publish.library.common import Scale, common_scale
from publish.library.graduations import graduate
from publish.library.usual import bands_for
from publish.render import Renderer
from publish.source import SessionSource
from tests.publish.hostile import HOSTILE, hostile_shop, hostile_source
from tests.publish.in_memory import make_library
from tests.publish.library.sessions import action, later, pages, relief, sessions
from tests.publish.session import SHOP

ACTION = "figures/action-strings.html"


def page(of: tuple[SessionSource, ...], name: str = ACTION) -> ReferencePage:
    made = make_library(of, pages(of), SHOP)[name]
    assert isinstance(made, ReferencePage)
    return made


def plain(text: str) -> str:
    return text.replace("\u00a0", " ")


def with_measures(one: SessionSource, *measures: Measure) -> SessionSource:
    return replace(one, record=one.record.model_copy(update={"measures": measures}))


def bench(number: int, *measures: Measure) -> SessionSource:
    return with_measures(later(f"s-{number}", f"Job {number}", f"2032-01-0{number}", f"lute {number}", 5), *measures)


def test_median_and_range_are_by_phase_and_over_all_in_both_systems() -> None:
    told = page(sessions()).tallies
    assert [
        (one.phase, one.number, *map(plain, (one.median, one.median_other, one.span, one.span_other))) for one in told
    ] == [
        ("as found", 5, "6/64 in", "2.4 mm", "5/64 in to 7/64 in", "2.0 mm to 2.8 mm"),
        ("as left", 5, "5/64 in", "2.0 mm", "4/64 in to 6/64 in", "1.6 mm to 2.4 mm"),
        ("all", 10, "11/128 in", "2.18 mm", "4/64 in to 7/64 in", "1.6 mm to 2.8 mm"),
    ]


def test_figures_of_other_units_are_converted_exactly() -> None:
    metric = action(5).model_copy(
        update={"unit": "millimeter", "value": 2.54, "display": "2.54\u00a0mm", "quote": "2.54"}
    )
    scale = Scale("thou", below=0, decimals=0)
    # NIST SP 811 (2008), B.8: 1 in = 25.4 mm exactly, 1 mil = 0.001 in.
    ends = scale.ends(metric)
    assert ends is not None
    assert ends.value == 100
    heat = action(5).model_copy(
        update={"unit": "degF", "value": 140.0, "display": "140\u00a0°F", "kind": "temperature"}
    )
    warm = Scale("degC", below=0, decimals=0).ends(heat)
    # NIST SP 811 (2008), B.8: t/°C = (t/°F - 32)/1.8.
    assert warm is not None
    assert warm.value == 60


def test_kinds_are_never_mixed() -> None:
    weight = action(5).model_copy(update={"unit": "gram", "value": 5.0, "kind": "mass", "display": "5\u00a0g"})
    assert Scale("inch", below=64, decimals=0).ends(weight) is None
    of = tuple(bench(at, action(5), weight.model_copy(update={"id": "m-weight"})) for at in (1, 2))
    library = make_library(of, pages(of), SHOP)
    assert {name for name in library if name.startswith("figures/")} == {
        ACTION, "figures/action-strings-2.html", "figures/index.html",
    }  # fmt: skip
    assert [one.number for one in page(of).tallies] == [2]


def test_what_has_to_be_settled_is_listed_and_not_counted() -> None:
    wild = action(60).model_copy(update={"id": "m-wild"})
    stop = Finding(
        id="f-1", kind="implausible", severity="stop", cue=3, cues=(3,), start=25.0, quote="60/64",
        measures=("m-wild",), message="60/64 in is far too high", source="common practice, no source",
    )  # fmt: skip
    one = bench(1, action(5), wild)
    one = replace(one, record=one.record.model_copy(update={"findings": (stop,)}))
    made = page((one, bench(2, action(7))))
    assert [(tally.number, plain(tally.span)) for tally in made.tallies] == [(2, "5/64 in to 7/64 in")]
    assert made.left_out == ("1 figure that has to be settled first",)
    assert [telling.settled for telling in made.tellings if isinstance(telling, Telling)] == [True, False, True]
    assert made.plot is not None
    assert len(made.plot.spots) == 2
    html = Renderer().library(made)
    assert "Median and range leave out 1 figure that has to be settled first" in html
    assert "to settle first</span>" in html


def test_a_limit_is_listed_and_not_counted() -> None:
    limit = action(9).model_copy(update={"limit": "at_most"})
    made = page((bench(1, action(5)), bench(2, action(7)), bench(3, limit)))
    assert [tally.number for tally in made.tallies] == [2]
    assert made.left_out == ("1 figure that gives a limit only",)


def test_a_range_counts_with_both_ends() -> None:
    wide = relief().model_copy(update={"value": 0.25, "low": 0.2, "high": 0.3, "display": "0.2 to 0.3\u00a0mm"})
    made = page((bench(1, wide), bench(2, relief())), "figures/relief-neck.html")
    assert plain(made.tallies[0].span) == "0.2 mm to 0.3 mm"
    assert made.plot is not None
    assert made.plot.spots[0].reach > 0


def test_two_sessions_or_three_figures_make_a_page() -> None:
    assert ACTION not in make_library((bench(1, action(5)),), pages((bench(1, action(5)),)), SHOP)
    thrice = bench(1, *(action(at).model_copy(update={"id": f"m-{at}", "start": float(at)}) for at in (4, 5, 6)))
    assert ACTION in make_library((thrice,), pages((thrice,)), SHOP)


def test_the_trade_s_band_is_told_with_its_source_and_drawn() -> None:
    made = page(sessions()[1:])
    assert [(plain(one.text), one.trade, one.source) for one in made.usual] == [
        ("0.5 to 9 mm", "strings", "common practice, no source")
    ]
    assert made.plot is not None
    ((left, _, width, _),) = made.plot.bands
    assert all(left < spot.x < left + width for spot in made.plot.spots), "all lie within 0.5 to 9 mm"


def test_a_band_that_names_the_item_goes_first_and_an_unknown_trade_has_none() -> None:
    ((_, band),) = bands_for(("strings",), "relief", "neck", "length")
    assert (band.low, band.high) == (0.0, 0.5)
    assert bands_for(("plucked strings",), "relief", "neck", "length") == ()
    assert bands_for(("strings",), "relief", "neck", "mass") == ()


def test_every_page_is_in_the_list() -> None:
    library = make_library(sessions(), pages(sessions()), SHOP)
    index = library["figures/index.html"]
    assert isinstance(index, ReferenceIndex)
    assert [one.link.href for one in index.entries] == ["action-strings.html", "relief-neck.html"]


sizes = st.fractions(min_value=Fraction(1, 128), max_value=1000, max_denominator=128)


@given(st.lists(sizes, min_size=1, max_size=20), st.booleans())
def test_a_scale_holds_its_figures_and_has_few_graduations(values: list[Fraction], halved: bool) -> None:
    ruled = graduate(map(float, values), halved=halved)
    assert all(0 <= ruled.part(float(one)) <= 1 for one in values)
    assert 2 <= len(ruled.marks()) <= 9
    assert len({text for _, text in ruled.marks()}) == len(ruled.marks())


@given(st.lists(st.integers(1, 64), min_size=1, max_size=9))
def test_the_common_unit_is_one_that_was_said(numbers: list[int]) -> None:
    scale = common_scale(action(one) for one in numbers)
    assert scale is not None
    assert scale.unit == "inch"
    ends = scale.ends(action(numbers[0]))
    assert ends is not None
    assert ends.value == Fraction(numbers[0], 64)


@pytest.mark.parametrize("text", HOSTILE)
def test_hostile_text_stays_text(text: str) -> None:
    one = hostile_source(text)
    of = (one, replace(one, slug=f"{one.slug}-2"))
    library = make_library(of, pages(of), hostile_shop(text))
    assert {type(made).__name__ for made in library.values()} >= {"ReferencePage", "ReferenceIndex", "KitPage"}
    for name, made in library.items():
        html = Renderer().library(made)
        assert "<script>window" not in html
        assert "<img src=x" not in html
        assert name.isascii()
