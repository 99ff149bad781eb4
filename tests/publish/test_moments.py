"""Seconds as pages show them, and as Media Fragments name them."""

from __future__ import annotations

import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from publish.addresses import absolute, address
from publish.moments import Playback, clock, stamp

# Media Fragments URI 1.0, W3C Recommendation of 25 September 2012, section 4.2.1:
#   timeprefix "t"; npt-sec = 1*DIGIT [ "." *DIGIT ]
_FRAGMENT = re.compile(r"#t=\d+(\.\d*)?")


@pytest.mark.parametrize(
    ("seconds", "shown"), [(0, "0:00"), (83.9, "1:23"), (599.99, "9:59"), (3600, "1:00:00"), (3723.4, "1:02:03")]
)
def test_clock_shows_whole_seconds(seconds: float, shown: str) -> None:
    assert clock(seconds) == shown


@given(st.floats(0, 1e6))
def test_a_link_is_a_media_fragment_at_that_second(seconds: float) -> None:
    href = Playback("film.mp4").at(seconds).href
    assert href is not None
    name, fragment = href.split("#")
    assert name == "film.mp4"
    assert _FRAGMENT.fullmatch(f"#{fragment}")
    assert float(fragment.removeprefix("t=")) == pytest.approx(seconds, abs=0.0006)


@given(st.floats(-1e3, 1e6))
def test_a_stamp_has_no_exponent_and_no_sign(seconds: float) -> None:
    assert re.fullmatch(r"\d+(\.\d+)?", stamp(seconds))


def test_without_a_recording_there_is_no_link() -> None:
    assert Playback(None).at(5).href is None


@pytest.mark.parametrize(
    ("name", "quoted"),
    [
        ("heron bridge #1.webm", "heron%20bridge%20%231.webm"),
        ("javascript:alert(1)", "javascript%3Aalert%281%29"),
        ('"><b>.mp4', "%22%3E%3Cb%3E.mp4"),
        ("a?b&c.mp4", "a%3Fb%26c.mp4"),
        ("../up.mp4", "..%2Fup.mp4"),
    ],
)
def test_no_file_name_changes_where_a_link_leads(name: str, quoted: str) -> None:
    assert address(name) == quoted


@pytest.mark.parametrize(
    ("site", "found"),
    [
        ("https://notes.example/shop", "https://notes.example/shop/sessions/a%20b/"),
        ("https://notes.example/shop/", "https://notes.example/shop/sessions/a%20b/"),
        ("javascript:alert(1)", None),
        ("", None),
    ],
)
def test_full_addresses_stand_under_the_site(site: str, found: str | None) -> None:
    assert absolute(site, "sessions", "a b") == found
