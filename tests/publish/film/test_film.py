"""Cues of what is right while the wrong is said, the text beneath the film, and stills of what was put right."""

from __future__ import annotations

import re
import unicodedata
from dataclasses import replace
from pathlib import Path
from xml.etree import ElementTree as ET

import pytest
import webvtt
from hypothesis import given, settings
from hypothesis import strategies as st
from markupsafe import Markup
from playwright.sync_api import Browser

from capture.step_stills import tenths_of
from publish.captions import chapter_marks
from publish.context import SessionPage
from publish.film import Slip, beneath, errata_stills, slip_cues, slips_of
from publish.film.beneath import hours
from publish.film.slips import told
from publish.galley import Galley
from publish.gather import Gathered
from publish.note import Note
from publish.page import make_page
from publish.render import Renderer
from publish.session import session_files
from tests.publish.hostile import HOSTILE, hostile_source
from tests.publish.session import SHOP, record, source
from tests.publish.session_figures import span

SVG = "{http://www.w3.org/2000/svg}"


def slips() -> tuple[Slip, ...]:
    return slips_of(Galley(source(), SHOP))


def plain(text: str) -> str:
    return text.replace("\N{NO-BREAK SPACE}", " ")


def a_slip(wrong: str = "3/32 in", right: str = "7/64 in", start: float = 252.0, *, proposed: bool = False) -> Slip:
    return Slip(start, start + 0.8, wrong, right, "", proposed)


def test_each_slip_is_told_while_its_words_are_said() -> None:
    found = {plain(one.wrong): one for one in slips()}
    assert plain(found["7/64 in"].right) == "5/64 in"
    said = span(2, "7/64")
    assert (found["7/64 in"].start, found["7/64 in"].end) == (said["start"], said["end"])
    assert found["“two layers”"].right == "three layers"
    assert "put right in proof" in {one.where for one in slips()}


def test_what_another_session_said_is_no_slip_of_this_one() -> None:
    assert all("20 thou" not in one.wrong for one in slips())
    wanted = sum(one.scope == "this_session" for one in record().corrections)
    assert len(slips()) >= wanted


def test_cues_can_be_read_and_stand_at_the_upper_edge() -> None:
    text = slip_cues(slips())
    captions = list(webvtt.from_string(text, strict=True).captions)
    assert [one.text for one in captions] == [plain(told(one)) for one in slips()]
    for cue, slip in zip(captions, slips(), strict=True):
        assert cue.start_time.in_milliseconds() == round(slip.start * 1000)
        length = cue.end_time.in_milliseconds() - cue.start_time.in_milliseconds()
        assert length == max(round((slip.end - slip.start) * 1000), 2000)
    assert all(line.endswith(" line:0") for line in text.splitlines() if "-->" in line)


@pytest.mark.parametrize("words", [*HOSTILE, "00:01.000 --> 00:02.000", "a\n\nNOTE b"])
def test_a_cue_holds_nothing_but_words(words: str) -> None:
    (cue,) = webvtt.from_string(slip_cues((a_slip(words),)), strict=True).captions
    assert "<script" not in cue.raw_text
    assert cue.raw_text.startswith("For ")


def text_of(page: SessionPage, room: int = 5000, of: tuple[Slip, ...] | None = None) -> str:
    return beneath(page, chapter_marks(record()), slips() if of is None else of, room)


def test_chapters_stand_first_a_line_each_from_nought_on(page: SessionPage) -> None:
    lines = text_of(page).splitlines()
    at = lines.index("Chapters")
    assert re.fullmatch(r"0:00:00 \S.*", lines[at + 1])
    assert lines.index("Errata") > at
    times = [line[:7] for line in lines[at + 1 : lines.index("", at)]]
    assert times == sorted(times)
    assert all(re.fullmatch(r"\d:[0-5]\d:[0-5]\d", one) for one in times)


@pytest.mark.parametrize(
    ("seconds", "shown"), [(0, "0:00:00"), (252.9, "0:04:12"), (3600, "1:00:00"), (36061, "10:01:01")]
)
def test_times_count_hours(seconds: float, shown: str) -> None:
    assert hours(seconds) == shown


@pytest.mark.parametrize("room", [900, 1500, 2500, 5000])
def test_it_keeps_within_its_room_says_what_is_left_out_and_leaves_out_no_erratum(page: SessionPage, room: int) -> None:
    text = text_of(page, room)
    whole = text_of(page, 100_000)
    for slip in slips():
        assert plain(told(slip)) in text
    if len(whole) > room:
        assert "Left out for want of room: " in text
        assert len(text) <= room or "Chapters" not in text
    else:
        assert text == whole


def test_what_is_said_wrong_twice_is_one_erratum_with_both_seconds(page: SessionPage) -> None:
    twice = (a_slip("12 h", "24 h", 182.9), a_slip("3 thou", "4 thou", 185.0), a_slip("12 h", "24 h", 189.9))
    errata = text_of(page, of=twice).split("Errata\n")[1].split("\n\n")[0].splitlines()
    assert errata == ["0:03:02 For 12 h read 24 h (said again at 0:03:09)", "0:03:05 For 3 thou read 4 thou"]
    (still,) = errata_stills("A clamp", twice).values()
    assert still.desc == "said 12 h at 3:02 and 3:09, correct 24 h; said 3 thou at 3:05, correct 4 thou."
    assert "said 12 h, again at 3:09" in " ".join(one.text for one in still.lines)
    assert len(list(webvtt.from_string(slip_cues(twice), strict=True).captions)) == 3


def test_one_wrong_figure_put_right_in_two_ways_stays_two_errata(page: SessionPage) -> None:
    two = (a_slip("12 h", "24 h", 1.0), a_slip("12 h", "8 h", 2.0), a_slip("12 h", "24 h", 3.0, proposed=True))
    errata = text_of(page, of=two).split("Errata\n")[1].split("\n\n")[0].splitlines()
    assert len(errata) == 3


def test_a_figure_that_waits_to_be_settled_says_so_and_brackets_stand_once(page: SessionPage) -> None:
    lines = text_of(page, 100_000).split("\n\nFigures\n")[1].splitlines()
    open_ones = [row for group in page.groups for row in group.rows if any(flag.must for flag in row.queries)]
    assert open_ones
    assert sum(line.endswith(", not settled") for line in lines) == len([one for one in open_ones if not one.withdrawn])
    assert not [line for line in lines if "((" in line or "))" in line or line.count("(") > 1]


def test_many_errata_stand_whole_even_where_they_have_no_room(page: SessionPage) -> None:
    many = tuple(a_slip(f"{number}/64 in", start=number) for number in range(200))
    text = text_of(page, 500, many)
    assert all(f"For {number}/64 in read" in text for number in range(200))
    left = re.search(r"Left out for want of room: .*?(\d+) of (\d+) chapters", text)
    assert left is not None
    assert left[1] == left[2]


@pytest.mark.parametrize("words", HOSTILE)
def test_words_stay_on_their_line(words: str) -> None:
    page = make_page(hostile_source(words), SHOP)
    for line in page.beneath.splitlines():
        assert not any(unicodedata.category(one) in ("Cc", "Cf", "Zl", "Zp") for one in line)
    html = Renderer().session(page)
    assert "<script>window.broken" not in html


def test_the_page_offers_what_goes_with_the_film(html: str) -> None:
    for name in ("corrections.vtt", "beneath-the-film.txt", "errata-still-1.svg"):
        assert f'href="{name}"' in html
    assert '<track kind="captions" src="corrections.vtt"' in html


def test_a_session_without_a_recording_has_no_text_for_a_film() -> None:
    page = make_page(replace(source(), recording=None), SHOP)
    assert page.beneath == ""


def test_a_still_tells_all_in_its_alternative() -> None:
    (made,) = errata_stills("The Heron", [a_slip()]).values()
    root = ET.fromstring(Renderer().still(made))  # noqa: S314 (our own)
    assert (root.get("width"), root.get("height")) == ("1920", "1080")
    assert root.findtext(f"{SVG}desc") == "said 3/32 in at 4:12, correct 7/64 in."
    shown = [one.text for one in root.iter(f"{SVG}text")]
    assert {"4:12", "said 3/32 in", "correct 7/64 in"} <= set(shown)


def test_what_no_person_has_confirmed_is_on_no_still() -> None:
    assert errata_stills("The Heron", [a_slip(proposed=True)]) == {}


def test_more_errata_make_more_stills() -> None:
    assert list(errata_stills("The Heron", [a_slip(f"{n}/64 in") for n in range(5)])) == [
        f"errata-still-{n}.svg" for n in (1, 2, 3)
    ]


BOXES = """[...document.querySelectorAll('text')].map(one => {
  const {x, y, width, height} = one.getBBox();
  return [{x, y, width, height}, Number(one.getAttribute('font-size'))];
})"""
LONG = (
    "said of the saddle slot that it is three thirty-seconds wide all the way down to the bottom of the bridge " * 4,
    "W" * 300,
    "弦高は十二フレットで二・五ミリ " * 12,
    "🎸" * 80,
    *HOSTILE,
)


@pytest.mark.browser
def test_every_still_stays_within_its_picture_and_can_be_read_small(browser: Browser, tmp_path: Path) -> None:
    page = browser.new_page(viewport={"width": 1920, "height": 1080})
    for number, words in enumerate(("3/32 in", *LONG)):
        (made, *_) = errata_stills(words, [a_slip(words, words, 40_000.0), a_slip(words, "7/64 in")]).values()
        file = tmp_path / f"{number}.svg"
        file.write_text(Renderer().still(made), "utf-8")
        page.goto(file.as_uri())
        for box, size in page.evaluate(BOXES):
            assert box["x"] >= 0, words
            assert box["x"] + box["width"] <= 1920, words
            assert box["y"] + box["height"] <= 1080, words
            assert size >= 36
        sizes = page.evaluate(
            "[...document.querySelectorAll('text')].slice(1, -1).map(one => one.getAttribute('font-size'))"
        )
        # 36 of 1080 lines is 6 in a thumbnail 320 wide; figures are at least twice that.
        assert max(int(one) for one in sizes) >= 72
    page.close()


@settings(deadline=None)
@given(words=st.lists(st.text(max_size=60), max_size=4), room=st.integers(500, 3000))
def test_the_text_is_bounded_whatever_was_said(page: SessionPage, words: list[str], room: int) -> None:
    of = tuple(a_slip(one, one, 5.0) for one in words)
    text = beneath(page, [(0.0, "Start")], of, room)
    bound = beneath(page, [], of, 1)
    assert len(text) <= max(room, len(bound) + 80)


def test_a_step_shows_its_still_and_the_file_lies_beside_the_page(tmp_path: Path) -> None:
    first = record().steps[0]
    picture = tmp_path / "step.jpg"
    with_still = replace(source(), stills={tenths_of(first.start): picture})
    page = make_page(with_still, SHOP)
    assert page.stages[0].still == f"stills/{tenths_of(first.start)}.jpg"
    assert all(one.still is None for one in page.stages[1:])
    gathered = Gathered(with_still, None, Note(Markup(), (), ()), ())
    assert session_files(gathered) == {page.stages[0].still: picture}
    html = Renderer().session(page)
    assert f'src="{page.stages[0].still}" alt="The film at step 1, near {page.stages[0].moment.clock}"' in html
