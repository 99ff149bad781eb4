"""The pages of works: which sessions belong together, and what their page tells."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from extract.record import Ruled
from publish.context.library import WorkPage
from publish.library.works import slugs_of
from publish.render import Renderer
from publish.source import SessionSource
from tests.publish.hostile import HOSTILE, hostile_shop, hostile_source
from tests.publish.in_memory import make_library, shelf_of, works_of
from tests.publish.library.sessions import HERON, SLUG, pages, renamed, sessions
from tests.publish.session import SHOP

HOME = "work/octave-mandola-bridge-reglued-and-saddle-replaced/index.html"


def heron(of: tuple[SessionSource, ...] | None = None) -> WorkPage:
    of = of or sessions()
    page = make_library(of, pages(of), SHOP)[HOME]
    assert isinstance(page, WorkPage)
    return page


def test_sessions_that_name_one_subject_are_of_one_work_whatever_the_case_and_spaces() -> None:
    works = works_of(sessions())
    assert [(one.slug, len(one.sources)) for one in works] == [
        ("octave-mandola-bridge-reglued-and-saddle-replaced", 3),
        ("tenor-ukulele", 1),
    ]
    assert works[0].subject == HERON


def test_a_session_without_a_subject_is_of_no_work() -> None:
    assert works_of((renamed(sessions()[0], None), renamed(sessions()[1], "  "))) == ()


@given(st.lists(st.text(), unique=True))
def test_every_work_has_an_address_of_its_own_that_later_works_do_not_change(names: list[str]) -> None:
    slugs = slugs_of(names, "work")
    assert len({slug.casefold() for slug in slugs}) == len(names)
    assert all(slug.replace("-", "").isalnum() and slug.isascii() for slug in slugs)
    assert slugs_of(names[:-1], "work") == slugs[:-1]


def test_the_history_tells_every_session_oldest_first() -> None:
    told = [
        (one.date, [row.first.text for pair in one.pairs for row in pair.found if row.first])
        for one in heron().sittings
    ]
    assert [date for date, _ in told] == ["2031-05-14", "2032-03-02", "2033-06-30"]
    assert told[1] == ("2032-03-02", ["7/64\u00a0in"])


def test_what_was_measured_again_is_told_with_date_and_phase() -> None:
    course = next(one for one in heron().courses if one.what == "Action, strings, treble side, 12th fret")
    assert [
        (one.date, one.phase, one.row.first.text.replace("\u00a0", " ")) for one in course.tellings if one.row.first
    ] == [
        ("2031-05-14", "as found", "5/64 in"),
        ("2031-05-14", "as left", "4/64 in"),
        ("2032-03-02", "as found", "7/64 in"),
        ("2032-03-02", "as left", "6/64 in"),
        ("2033-06-30", "as found", "5/64 in"),
        ("2033-06-30", "as left", "4/64 in"),
    ]
    assert course.plot is not None
    heights = [spot.y for spot in course.plot.spots]
    assert heights[0] == heights[4] > heights[2], "more lies higher, the same lies level"
    assert course.plot.spots[0].x < course.plot.spots[2].x < course.plot.spots[4].x


def test_dates_lie_as_far_apart_as_the_days() -> None:
    course = next(one for one in heron().courses if one.what.startswith("Action, strings, treble"))
    assert course.plot is not None
    first, second, third = (course.plot.spots[at].x for at in (0, 2, 4))
    # 14 May 2031 to 2 March 2032 are 293 days, to 30 June 2033 778 (Gregorian calendar, ISO 8601).
    assert (second - first) / (third - first) == pytest.approx(293 / 778, abs=0.01)


def test_figures_taken_back_or_struck_do_not_stand() -> None:
    plain = heron()
    whats = [one.what for one in plain.courses]
    assert all("7/64" not in str(one.row.first) or one.date != "2031-05-14" for one in plain.courses[0].tellings)
    first, second, *rest = sessions()
    struck = second.record.measures[0].model_copy(update={"ruling": Ruled(verdict="strike", ruling="r")})
    record = second.record.model_copy(update={"measures": (struck, *second.record.measures[1:])})
    of = (first, SessionSource(second.slug, record, second.transcript, second.recording), *rest)
    course = heron(of).courses[0]
    assert whats[0] == course.what
    assert [one.date for one in course.tellings].count("2032-03-02") == 1


def test_what_is_open_is_told_over_all_sessions_and_what_is_not_known_is_said() -> None:
    page = heron()
    assert [one.date for one in page.follow_ups] == ["2031-05-14", "2032-03-02", "2033-06-30"]
    assert len(page.doubts) == 3
    assert len(page.errata) == 5
    assert "Whether a later session did it is not known here" in Renderer().library(page)


def test_front_page_and_session_pages_lead_to_the_work() -> None:
    library = make_library(sessions(), pages(sessions()), SHOP)
    assert [one.href for one in shelf_of(library).works] == [HOME, "work/tenor-ukulele/index.html"]
    assert all(f'href="../../{HOME}"' in Renderer().session(page) for page in pages((sessions()[0], sessions()[1])))


def test_a_second_leads_to_the_recording_beside_its_session() -> None:
    course = heron().courses[0]
    assert course.tellings[2].moment.href == "../../sessions/2032-03-02-the-heron-again/film.webm#t=25"
    assert course.tellings[0].session.href == f"../../sessions/{SLUG}/index.html#m-action-1"


@pytest.mark.parametrize("text", HOSTILE)
def test_hostile_text_stays_text(text: str) -> None:
    one = hostile_source(text)
    shop = hostile_shop(text)
    for name, page in make_library((one,), pages((one,)), shop).items():
        html = Renderer().library(page)
        assert "<script>window" not in html
        assert "<img src=x" not in html
        assert name.replace("/", "").replace("-", "").replace(".html", "").isalnum()
